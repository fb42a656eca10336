#include "fingering/fitted_weights.hpp"
#include "fingering/line_fingering.hpp"
#include "fingerturn/fingering.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

void add_difficulties(const Score& score, Analysis& analysis) {
  for (std::size_t p = 0; p < analysis.passages.size(); ++p) {
    PassageAnalysis& passage = analysis.passages[p];
    for (LineAnalysis& found : passage.lines) {
      const Line* line = line_of_hand(score.passages[p], found.hand);
      if (line != nullptr) found.difficulty = difficulty_of(*line, passage.reach_semitones);
    }
  }
}

}  // namespace

std::optional<double> difficulty_of(const Line& line, std::optional<int> reach_semitones) noexcept {
  const bool complete = std::all_of(line.events.begin(), line.events.end(),
                                    [](const Event& event) { return event.is_fingered(); });
  if (!complete) return std::nullopt;
  return finger_line(line, kFittedWeights, {reach_semitones, 1}).front().difficulty;
}

Analysis with_difficulties(Analysis analysis, const Score& score) noexcept {
  if (analysis.bars) {
    add_difficulties(only_bars(score, *analysis.bars), analysis);
  } else {
    add_difficulties(score, analysis);
  }
  return analysis;
}

}  // namespace fingerturn
