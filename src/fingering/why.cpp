#include "fingerturn/why.hpp"

#include "fingering/fitted_weights.hpp"
#include "fingering/line_fingering.hpp"
#include "score/timeline.hpp"
#include "text/numbers.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace fingerturn {
namespace {

/// The pitches and fingers of what is struck, without what is merely held.
void keep_struck(const Event& event, const FingersInstead& instead, WhyFingers& why) {
  const auto struck = [&](const std::vector<Finger>& fingers) {
    std::vector<Finger> kept;
    for (std::size_t i = 0; i < fingers.size(); ++i) {
      if (!event.notes[i].held) kept.push_back(fingers[i]);
    }
    return kept;
  };
  for (const Note& note : event.notes) {
    if (!note.held) why.pitches.push_back(note.pitch);
  }
  why.fingers = struck(instead.taken);
  for (const OtherFingers& other : instead.others) {
    why.others.push_back({struck(other.fingers), other.harder, other.terms});
  }
}

bool is_all_given(const Event& event) {
  return std::ranges::all_of(
      event.notes, [](const Note& note) { return note.held || (note.finger && !note.suggested); });
}

}  // namespace

std::vector<WhyFingers> why_fingers(const Score& score, const BeatInBar& moment,
                                    const FingeringOptions& options) {
  std::vector<WhyFingers> all;
  for (std::size_t p = 0; p < score.passages.size(); ++p) {
    const Passage& passage = score.passages[p];
    LineOptions of_line;
    of_line.reach_semitones =
        options.reach_semitones ? options.reach_semitones : passage.reach_semitones;
    of_line.wishes = options.wishes;
    for (const Line& line : passage.lines) {
      const std::optional<StruckAt> at = struck_at(passage, line, moment);
      if (!at) continue;
      const Event& event = line.events[at->event];
      WhyFingers why{p,  passage.title, line.hand, event.bar, beat_text(at->beat), {},
                     {}, false,         {}};
      why.all_given = is_all_given(event);
      keep_struck(event, fingers_instead(line, kFitted, of_line, at->event), why);
      all.push_back(std::move(why));
    }
  }
  return all;
}

}  // namespace fingerturn
