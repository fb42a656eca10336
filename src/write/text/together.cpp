#include "write/shared/passage_words.hpp"
#include "write/text/foot.hpp"

namespace fingerturn {

std::string together_text(const AnalysedPassage& passage, const TextStyle& style) {
  return labelled("tempo", full_swing_words(passage.found()), style) +
         labelled("together", together_words(passage), style);
}

}  // namespace fingerturn
