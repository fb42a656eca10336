#include "fingerturn/score.hpp"

#include "text/numbers.hpp"

#include <algorithm>
#include <bit>
#include <iterator>

namespace fingerturn {
namespace {

/// The first note of an event on a key; null where there is none.
const Note* note_on_key(const Event& event, int key) {
  const auto note = std::lower_bound(
      event.notes.begin(), event.notes.end(), key,
      [](const Note& lower, int wanted) { return midi_number(lower.pitch) < wanted; });
  const bool found = note != event.notes.end() && midi_number(note->pitch) == key;
  return found ? &*note : nullptr;
}

void add_continued_fingers(const Note& held, std::vector<Finger>& fingers) {
  if (held.finger && *held.finger != fingers.back()) fingers.push_back(*held.finger);
  for (const Finger finger : held.changes_to) fingers.push_back(finger);
}

}  // namespace

bool operator==(const Note& left, const Note& right) noexcept {
  return left.pitch == right.pitch && left.finger == right.finger &&
         left.changes_to == right.changes_to && left.suggested == right.suggested &&
         left.tied == right.tied && left.held == right.held && left.lasts == right.lasts;
}

bool operator==(const Event& left, const Event& right) noexcept {
  return left.notes == right.notes && left.onset == right.onset &&
         left.duration == right.duration && left.bar == right.bar && left.grace == right.grace &&
         left.breath_after == right.breath_after && left.rolls_on == right.rolls_on &&
         left.ornament == right.ornament;
}

bool ends_gesture(const Event& before, const Event& after) noexcept {
  const bool skipped_bar = after.bar > before.bar + 1;
  return before.is_rest() || before.breath_after || skipped_bar;
}

bool operator==(const Line& left, const Line& right) noexcept {
  return left.hand == right.hand && left.events == right.events &&
         left.bar_lines == right.bar_lines;
}

const UsualFingers* usual_fingers_at(const Line& line, std::size_t event) noexcept {
  const auto& notes = line.events[event].notes;
  if (std::ranges::none_of(notes, [](const Note& note) { return note.suggested; })) return nullptr;
  const auto after = std::ranges::upper_bound(line.usual, event, {}, &UsualFingers::first_event);
  if (after == line.usual.begin()) return nullptr;
  const UsualFingers& last = *std::prev(after);
  return event <= last.last_event ? &last : nullptr;
}

bool operator==(const Passage& left, const Passage& right) noexcept {
  return left.title == right.title && left.composer == right.composer &&
         left.source == right.source && left.reach_semitones == right.reach_semitones &&
         left.meters == right.meters && left.tempos == right.tempos && left.keys == right.keys &&
         left.notes == right.notes && left.lines == right.lines;
}

std::size_t Event::struck_count() const noexcept {
  return static_cast<std::size_t>(
      std::count_if(notes.begin(), notes.end(), [](const Note& note) { return !note.held; }));
}

bool Event::is_fingered() const noexcept {
  return std::all_of(notes.begin(), notes.end(),
                     [](const Note& note) { return note.held || note.finger; });
}

bool Line::is_fingered() const noexcept { return std::ranges::all_of(events, &Event::is_fingered); }

double Tempo::quarters_per_minute() const noexcept { return per_minute * 4 * to_double(beat_unit); }

bool is_plausible(const Meter& meter) noexcept {
  constexpr std::int32_t kMostBeats = 99;
  constexpr std::int32_t kShortestBeat = 128;
  return meter.beats >= 1 && meter.beats <= kMostBeats && meter.beat_type >= 1 &&
         meter.beat_type <= kShortestBeat &&
         std::has_single_bit(static_cast<std::uint32_t>(meter.beat_type));
}

bool is_plausible_tempo(double per_minute) noexcept {
  constexpr double kSlowest = 1;
  constexpr double kFastest = 2000;
  return per_minute >= kSlowest && per_minute <= kFastest;
}

std::vector<Finger> written_fingers(const Note& note) {
  std::vector<Finger> fingers;
  if (!note.finger) return fingers;
  fingers.reserve(1 + note.changes_to.size());
  fingers.push_back(*note.finger);
  for (const Finger finger : note.changes_to) fingers.push_back(finger);
  return fingers;
}

std::vector<Finger> fingers_on_key(const Line& line, std::size_t event, const Note& note) {
  std::vector<Finger> fingers = written_fingers(note);
  if (fingers.empty() || !note.tied) return fingers;
  const int key = midi_number(note.pitch);
  // Where one key stands twice in a chord, only the first of the two is followed.
  const bool followed = note_on_key(line.events[event], key) == &note;
  const Note* current = &note;
  while (followed && current->tied && ++event < line.events.size()) {
    const Event& next = line.events[event];
    if (next.is_rest() || next.struck_count() > 0) break;
    const Note* held = note_on_key(next, key);
    if (held == nullptr) continue;
    add_continued_fingers(*held, fingers);
    current = held;
  }
  return fingers;
}

const Line* line_of_hand(const Passage& passage, Hand hand) noexcept {
  const auto line = std::find_if(passage.lines.begin(), passage.lines.end(),
                                 [hand](const Line& other) { return other.hand == hand; });
  return line == passage.lines.end() ? nullptr : &*line;
}

std::string to_string(Hand hand) { return hand == Hand::right ? "right" : "left"; }

std::string to_string(BarRange bars) {
  if (bars.first == bars.last) return "bar " + std::to_string(bars.first);
  return "bars " + std::to_string(bars.first) + " to " + std::to_string(bars.last);
}

std::string to_string(const MusicalPlace& place) {
  std::string words;
  const auto add = [&words](const std::string& part) {
    words += (words.empty() ? "" : ", ") + part;
  };
  if (place.bar) add("bar " + std::to_string(*place.bar));
  if (place.hand) add(to_string(*place.hand) + " hand");
  if (place.beat) add("beat " + beat_text(*place.beat));
  return words;
}

std::string to_string(const Meter& meter) {
  return std::to_string(meter.beats) + "/" + std::to_string(meter.beat_type);
}

}  // namespace fingerturn
