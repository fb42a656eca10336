#include "write/shared/used.hpp"

#include <algorithm>

namespace fingerturn {

void Used::see(const EventAnalysis& found) noexcept {
  kinds[static_cast<std::size_t>(found.rotation)][found.side ? 1 : 0] = true;
  crossings[static_cast<std::size_t>(found.crossing)] = true;
  turning_changes |= found.change.has_value();
  carries |= found.carry.value_or(0) != 0;
  moves |= found.in_out.has_value();
  depths |= found.depth.value_or(0) > 0;
}

void Used::see(const Event& event) noexcept {
  rests |= event.is_rest();
  breaths |= event.breath_after;
  graces |= event.grace;
  rolled |= event.rolls_on;
  trills |= event.ornament == Ornament::trill;
  tremolos |= event.ornament == Ornament::tremolo;
  held |= !event.is_rest() && event.struck_count() == 0;
  for (const Note& note : event.notes) suggestions |= !note.held && note.suggested;
}

void Used::see(const AnalysedLine& line, const PassageAnalysis& shown) {
  const Line& written = line.written();
  for (std::size_t place = 0; place < written.events.size(); ++place) {
    const Event& event = written.events[place];
    if (!shown.shows(event.bar)) continue;
    see(event);
    for (const Note& note : event.notes) {
      changes = changes || (!note.held && fingers_on_key(written, place, note).size() > 1);
    }
  }
  pinned |= !line.found().held.empty();
  for (const EventAnalysis& found : line.found().events) see(found);
}

bool Used::has_sides() const noexcept {
  return std::any_of(kRotations.begin(), kRotations.end(),
                     [this](Rotation rotation) { return has(rotation, true); });
}

bool Used::has_open_sides() const noexcept {
  return std::any_of(kRotations.begin(), kRotations.end(), [this](Rotation rotation) {
    return rotation != Rotation::level && has(rotation, false);
  });
}

Used used_in(const AnalysedScore& analysed) {
  Used used;
  for (const AnalysedPassage passage : analysed) {
    for (const AnalysedLine line : passage) used.see(line, passage.found());
  }
  return used;
}

}  // namespace fingerturn
