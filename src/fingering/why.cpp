#include "fingerturn/why.hpp"

#include "fingering/fitted_weights.hpp"
#include "fingering/line_fingering.hpp"
#include "score/timeline.hpp"
#include "text/numbers.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace fingerturn {
namespace {

/// The event of a line that is struck at a moment, with its beat; a grace note only where nothing
/// else is.
struct StruckAt {
  std::size_t event = 0;
  Fraction beat;
};

std::optional<StruckAt> struck_at(const Passage& passage, const Line& line,
                                  const BeatInBar& moment) {
  constexpr double kNear = 0.001;
  const std::vector<std::size_t> beginnings = bar_beginnings(line);
  std::optional<StruckAt> found;
  for (std::size_t at = 0; at < line.events.size(); ++at) {
    const Event& event = line.events[at];
    if (event.bar != moment.bar || event.struck_count() == 0) continue;
    const std::optional<Fraction> beat = beat_of(passage, line, at, beginnings);
    if (!beat || std::abs(to_double(*beat) - moment.beat) > kNear) continue;
    if (!found || line.events[found->event].grace) found = {at, *beat};
  }
  return found;
}

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
