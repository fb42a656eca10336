#include "fingering/fitted_weights.hpp"
#include "fingering/line_fingering.hpp"
#include "fingerturn/fingering.hpp"

#include <algorithm>
#include <utility>

namespace fingerturn {
namespace {

void take_finger_off(Note& note) {
  note.finger.reset();
  note.changes_to.clear();
  note.set_aside.reset();
  note.suggested = false;
}

}  // namespace

std::vector<PassageFingerings> suggest(const Score& score, const FingeringOptions& options) {
  std::vector<PassageFingerings> fingerings;
  fingerings.reserve(score.passages.size());
  for (const Passage& passage : score.passages) {
    LineOptions of_line;
    of_line.reach_semitones =
        options.reach_semitones ? options.reach_semitones : passage.reach_semitones;
    of_line.wishes = options.wishes;
    of_line.most = std::clamp<std::size_t>(options.most, 1, kMostFingerings);
    PassageFingerings& lines = fingerings.emplace_back();
    for (const Line& line : passage.lines) {
      lines.lines.push_back(finger_line(line, kFitted, of_line));
    }
  }
  return fingerings;
}

Line with_fingering(Line line, const LineFingering& fingering) {
  std::size_t at = 0;
  for (Event& event : line.events) {
    for (Note& note : event.notes) {
      const Finger added = at < fingering.added.size() ? fingering.added[at] : Finger{0};
      ++at;
      if (added == 0) continue;
      note.set_aside = std::exchange(note.finger, added);
      note.changes_to.clear();
      note.suggested = true;
    }
  }
  line.usual = fingering.usual;
  return line;
}

Score without_suggestions_outside(Score score, const BarRange& kept) {
  for (Passage& passage : score.passages) {
    for (Line& line : passage.lines) {
      for (Event& event : line.events) {
        if (kept.contains(event.bar)) continue;
        for (Note& note : event.notes) {
          if (note.suggested) take_finger_off(note);
        }
      }
    }
  }
  return score;
}

Score without_fingers(Score score) {
  for (Passage& passage : score.passages) {
    for (Line& line : passage.lines) {
      for (Event& event : line.events) {
        for (Note& note : event.notes) take_finger_off(note);
      }
      line.usual.clear();
    }
  }
  return score;
}

Score with_suggestions(Score score, const FingeringOptions& options) {
  FingeringOptions easiest = options;
  easiest.most = 1;
  const std::vector<PassageFingerings> fingerings = suggest(score, easiest);
  for (std::size_t p = 0; p < score.passages.size(); ++p) {
    std::vector<Line>& lines = score.passages[p].lines;
    for (std::size_t l = 0; l < lines.size(); ++l) {
      lines[l] = with_fingering(std::move(lines[l]), fingerings[p].lines[l].front());
    }
  }
  return score;
}

std::vector<DifficultyTerm> difficulty_terms() {
  std::vector<DifficultyTerm> terms;
  terms.reserve(kTermCount);
  for (std::size_t at = 0; at < kTermCount; ++at) {
    const TermWords& words = term_words()[at];
    terms.push_back({words.id, words.counts, words.source, kFitted.weights.at(at) / 1000.0});
  }
  return terms;
}

}  // namespace fingerturn
