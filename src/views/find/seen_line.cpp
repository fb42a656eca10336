#include "views/find/seen_line.hpp"

#include "views/find/measures.hpp"

#include <algorithm>
#include <cstdlib>

namespace fingerturn {
namespace {

template <typename Value>
bool agrees(const std::optional<Value>& wanted, const Value& found) {
  return !wanted || *wanted == found;
}

template <typename Value>
bool agrees(const std::optional<Value>& wanted, const std::optional<Value>& found) {
  return !wanted || wanted == found;
}

bool turns(const WantedEvent& wanted, const EventAnalysis& found, Hand hand) {
  return agrees(wanted.rotation, found.rotation) && agrees(wanted.side, found.side) &&
         agrees(wanted.crossing, found.crossing) && agrees(wanted.in_out, found.in_out) &&
         agrees(wanted.turn, direction_of(hand, found.side)) &&
         (!wanted.passes || found.crossing != Crossing::none);
}

bool has_fingers(const std::vector<std::optional<Finger>>& wanted, const StruckNotes& struck) {
  if (wanted.empty()) return true;
  return std::ranges::equal(wanted, struck, [](const auto& finger, const Note* note) {
    return !finger || finger == note->finger;
  });
}

bool has_notes(const WantedEvent& wanted, const Event& written, const StruckNotes& struck) {
  constexpr std::size_t kChord = 3;
  if (!agrees(wanted.notes, static_cast<int>(std::min(struck.size(), kChord)))) return false;
  if (wanted.shape && *wanted.shape != shape_of(struck)) return false;
  if (!wanted.midi.empty() && wanted.midi != struck_keys(written)) return false;
  return !wanted.keys || std::ranges::all_of(struck, [&](const Note* note) {
    return key_colour(midi_number(note->pitch)) == *wanted.keys;
  });
}

}  // namespace

SeenLine::SeenLine(const AnalysedPassage& passage, const AnalysedLine& line) : line_(line) {
  if (!passage.found().together) return;
  for (const KindsDiffer& differ : passage.found().together->kinds_differ) {
    hands_differ_.push_back(line.hand() == Hand::right ? differ.right_event : differ.left_event);
  }
}

bool SeenLine::shows_rule(std::string_view rule, std::size_t number) const {
  if (line_[number].found.rule == rule) return true;
  const std::vector<Finding>& watch = line_.found().watch;
  auto finding = std::ranges::lower_bound(watch, number, {}, &Finding::index);
  while (finding != watch.end() && finding->index == number && finding->rule != rule) ++finding;
  return finding != watch.end() && finding->index == number;
}

std::optional<Fraction> SeenLine::pace_at(std::size_t number) const {
  if (number < 2) return std::nullopt;
  return pace_of(line_[number - 2].written, line_[number - 1].written, line_[number].written);
}

bool SeenLine::moves(const WantedMove& wanted, std::size_t number) const {
  if (wanted == WantedMove{}) return true;
  if (number == 0) return false;
  const Pitch before = struck_notes(line_[number - 1].written).front()->pitch;
  const Pitch now = struck_notes(line_[number].written).front()->pitch;
  const WantedMove move = move_between(before, now);
  return agrees(wanted.letters, move.letters) && agrees(wanted.semitones, move.semitones) &&
         agrees(wanted.way, move.way);
}

bool SeenLine::shows(const WantedEvent& wanted, std::size_t number) const {
  const auto [written, found] = line_[number];
  if (!turns(wanted, found, line_.hand())) return false;
  const StruckNotes struck = struck_notes(written);
  if (!has_fingers(wanted.fingers, struck) || !has_notes(wanted, written, struck)) return false;
  if (!moves(wanted.move, number)) return false;
  if (wanted.pace && pace_at(number) != wanted.pace) return false;
  if (wanted.hands_differ && !std::ranges::binary_search(hands_differ_, found.event)) return false;
  return std::ranges::all_of(wanted.rules,
                             [&](std::string_view rule) { return shows_rule(rule, number); });
}

}  // namespace fingerturn
