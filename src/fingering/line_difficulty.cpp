#include "fingering/fitted_weights.hpp"
#include "fingering/line_fingering.hpp"
#include "fingerturn/fingering.hpp"

namespace fingerturn {
namespace {

void add_difficulties(const Passage& passage, PassageAnalysis& found) {
  for (LineAnalysis& of_hand : found.lines) {
    const Line* line = line_of_hand(passage, of_hand.hand);
    if (line != nullptr) of_hand.difficulty = difficulty_of(*line, found.reach_semitones);
  }
}

}  // namespace

std::optional<double> difficulty_of(const Line& line, std::optional<int> reach_semitones) {
  if (!line.is_fingered()) return std::nullopt;
  return finger_line(line, kFitted, {reach_semitones, 1}).front().difficulty;
}

AnalysedScore with_difficulties(AnalysedScore analysed) {
  for (std::size_t p = 0; p < analysed.size(); ++p) {
    PassageAnalysis& found = analysed.analysis_.passages[p];
    const Passage& passage = analysed.score_.passages[p];
    // Places apart from one another are no line that could be fingered.
    if (found.places) continue;
    add_difficulties(found.bars ? only_bars(passage, *found.bars) : passage, found);
  }
  return analysed;
}

}  // namespace fingerturn
