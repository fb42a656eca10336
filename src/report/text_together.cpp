#include "report/passage_words.hpp"
#include "report/text_foot.hpp"

namespace fingerturn {

std::string together_text(const Passage& passage, const PassageAnalysis& analysis,
                          const TextStyle& style) {
  return labelled("tempo", full_swing_words(analysis), style) +
         labelled("together", together_words(passage, analysis), style);
}

}  // namespace fingerturn
