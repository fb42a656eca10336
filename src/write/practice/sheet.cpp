#include "write/practice/sheet.hpp"

#include "write/excerpt/changed_comments.hpp"
#include "write/practice/plan_words.hpp"
#include "write/shared/note_words.hpp"
#include "write/shared/passage_words.hpp"

#include <cmath>
#include <optional>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// The slowest of the tempos at which swings are full; in other rhythms half of the fastest, since
/// their quick notes are half as long.
std::optional<double> tempo_of(const PlannedPlace& place, PracticeStepKind kind) {
  if (kind == PracticeStepKind::note_by_note || !place.full_swing_tempo) return std::nullopt;
  constexpr double kHalf = 2;
  return kind == PracticeStepKind::rhythms ? *place.full_swing_tempo / kHalf
                                           : place.ladder.front().quarters_per_minute;
}

void set_tempo(Passage& passage, std::optional<double> quarters_per_minute) {
  passage.tempos.clear();
  if (!quarters_per_minute || passage.lines.empty()) return;
  const Tempo tempo{{1, 4}, std::floor(*quarters_per_minute)};
  if (is_plausible_tempo(tempo.per_minute)) {
    passage.tempos = {{bars_of(passage).front(), tempo}};
  }
}

/// "Bb6 A6"
std::string notes_of(const Passage& whole, const PracticeMusic& cell) {
  const Line& line = *line_of_hand(whole, cell.music.lines.front().hand);
  std::string words;
  for (const std::size_t event : cell.events) {
    const std::string notes = struck_notes_words(line.events[event]);
    if (!notes.empty()) words += (words.empty() ? "" : " ") + notes;
  }
  return words;
}

class SheetWriter {
 public:
  explicit SheetWriter(const AnalysedScore& analysed) : analysed_(analysed) {}

  void add(const PlannedPlace& place, std::size_t number) {
    char letter = 'a';
    for (const PracticeStep& step : place.steps) {
      for (const PracticeMusic& music : step.music) add(place, step, music, number, letter);
      ++letter;
    }
  }

  std::vector<PracticeSheet> take() { return std::move(sheets_); }

 private:
  void add(const PlannedPlace& place, const PracticeStep& step, const PracticeMusic& music,
           std::size_t number, char letter) {
    const Passage& whole = analysed_.written().passages[place.passage];
    PracticeSheet sheet;
    sheet.passage = music.music;
    std::string what = music.words.substr(0, music.words.find(':'));
    if (step.kind == PracticeStepKind::cells) what += ' ' + notes_of(whole, music);
    sheet.passage.title =
        fmt::format("{}, place {} ({}), {}: {}", title_of(analysed_, whole), number,
                    to_string(place.stretch.bars), explained(step.kind).name, what);
    set_tempo(sheet.passage, tempo_of(place, step.kind));
    sheet.comments = changed_comments(whole, sheet.passage, music.changed);
    sheet.words = fmt::format("{}{} {}", number, letter, what);
    sheets_.push_back(std::move(sheet));
  }

  const AnalysedScore& analysed_;
  std::vector<PracticeSheet> sheets_;
};

}  // namespace

std::vector<PracticeSheet> sheets_of(const AnalysedScore& analysed, const PracticePlan& plan) {
  SheetWriter writer(analysed);
  for (std::size_t i = 0; i < plan.places.size(); ++i) writer.add(plan.places[i], i + 1);
  return writer.take();
}

}  // namespace fingerturn
