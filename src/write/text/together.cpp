#include "write/shared/passage_words.hpp"
#include "write/text/foot.hpp"

namespace fingerturn {

std::string together_text(const Passage& passage, const PassageAnalysis& analysis,
                          const TextStyle& style) {
  return labelled("tempo", full_swing_words(analysis), style) +
         labelled("together", together_words(passage, analysis), style);
}

}  // namespace fingerturn
