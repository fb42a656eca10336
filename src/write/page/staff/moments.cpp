#include "write/page/staff/moments.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace fingerturn {
namespace {

/// When something begins; grace notes come before what they lead to.
using MomentKey = std::pair<Ticks, int>;
using MomentsByKey = std::map<MomentKey, Moment>;

StaffChord staff_chord(const NotatedChord& chord, std::size_t voice, Reading reading) {
  StaffChord drawn;
  drawn.chord = &chord;
  drawn.voice = voice;
  for (const NotatedHead& head : chord.heads) {
    drawn.positions.push_back(staff_position(head.pitch, reading));
  }
  return drawn;
}

bool is_whole_bar_rest(const NotatedChord& chord, const NotatedBar& bar) {
  return chord.is_rest() && chord.onset == 0 && chord.length == bar.length;
}

/// Sets the ways of the stems in a voice: of each beam, or of each chord alone.
void set_stems(std::vector<StaffChord>& voice, bool two_voices) {
  for (std::size_t begin = 0; begin < voice.size(); ++begin) {
    StaffChord& first = voice[begin];
    const BeamPart part = first.chord->beam;
    if (part == BeamPart::inside || part == BeamPart::ends) continue;
    std::vector<std::size_t> together{begin};
    for (std::size_t i = begin + 1; part == BeamPart::begins && i < voice.size(); ++i) {
      if (voice[i].chord->grace != first.chord->grace) continue;
      together.push_back(i);
      if (voice[i].chord->beam == BeamPart::ends) break;
    }
    std::vector<StaffChord> chords;
    chords.reserve(together.size());
    for (const std::size_t i : together) chords.push_back(voice[i]);
    bool up = first.chord->grace || stems_up(chords);
    if (two_voices) up = first.voice == 0;
    for (const std::size_t i : together) voice[i].stem_up = up;
  }
}

void add_voice(const NotatedBar& bar, std::size_t hand, std::size_t voice, Reading reading,
               MomentsByKey& moments) {
  std::vector<StaffChord> chords;
  for (const NotatedChord& chord : bar.hands[hand].voices[voice]) {
    if (is_whole_bar_rest(chord, bar)) continue;
    chords.push_back(staff_chord(chord, voice, reading));
  }
  set_stems(chords, bar.hands[hand].has_two_voices());
  int graces = 0;
  for (auto chord = chords.rbegin(); chord != chords.rend(); ++chord) {
    graces = chord->chord->grace ? graces - 1 : 0;
    Moment& moment = moments[{chord->chord->onset, graces}];
    moment.onset = chord->chord->onset;
    moment.grace = chord->chord->grace;
    std::vector<StaffChord>& at = moment.hands[hand].chords;
    at.insert(voice == 0 ? at.begin() : at.end(), std::move(*chord));
  }
}

/// The number of a struck event among those of its line; none where it is none.
std::optional<std::size_t> number_of(const AnalysedLine& line, std::size_t event) {
  const std::vector<EventAnalysis>& events = line.found().events;
  const auto entry = std::ranges::lower_bound(events, event, {}, &EventAnalysis::event);
  if (entry == events.end() || entry->event != event) return std::nullopt;
  return static_cast<std::size_t>(entry - events.begin());
}

/// The room of a node in all its ribbons.
NodeRoom widest_room(const std::vector<AnalysedLine>& ribbons, std::size_t number) {
  NodeRoom room;
  for (const AnalysedLine& line : ribbons) {
    const NodeRoom here = room_of(line, number);
    room = {std::max(room.left, here.left), std::max(room.right, here.right)};
  }
  return room;
}

/// The struck events of a moment, in their order.
std::vector<MomentNode> nodes_of(const std::vector<AnalysedLine>& ribbons,
                                 const std::vector<StaffChord>& chords) {
  std::set<std::size_t> numbers;
  for (const StaffChord& chord : chords) {
    for (const NotatedHead& head : chord.chord->heads) {
      const auto number =
          head.tied_to ? std::nullopt : number_of(ribbons.front(), head.place.event);
      if (number) numbers.insert(*number);
    }
  }
  std::vector<MomentNode> nodes;
  nodes.reserve(numbers.size());
  for (const std::size_t number : numbers) nodes.push_back({number, widest_room(ribbons, number)});
  return nodes;
}

/// A flag reaches beyond the head, an arpeggio stands before it.
void add_room_beside(const HandMoment& hand, Box& reach) {
  constexpr double kFlag = 1.1;
  constexpr double kArpeggio = 1.1;
  for (const StaffChord& chord : hand.chords) {
    const bool is_free = chord.chord->beam == BeamPart::none && chord.chord->value;
    if (is_free && chord.stem_up && chord.chord->value->halvings > 2 && chord.has_stem()) {
      reach.right = std::max(reach.right, chord.stem_x() + kFlag * chord.scale());
    }
    if (chord.chord->rolled) reach.left -= kArpeggio;
  }
}

void measure(HandMoment& hand, const std::vector<AnalysedLine>& ribbons) {
  if (hand.chords.empty()) return;
  set_apart(hand.chords);
  hand.heads = draw_moment(hand.chords);
  hand.nodes = nodes_of(ribbons, hand.chords);
  Box reach = box_of(hand.heads);
  reach.left = std::min(reach.left, 0.0);
  add_room_beside(hand, reach);
  hand.reach = reach;
}

}  // namespace

MeasuredBar measured(NotatedBar bar, const RibbonsOfHands& hands,
                     const std::vector<Reading>& readings, std::optional<Ticks> ticks) {
  MeasuredBar found;
  found.bar = std::make_shared<const NotatedBar>(std::move(bar));
  found.readings = readings;
  MomentsByKey moments;
  for (std::size_t hand = 0; hand < found.bar->hands.size(); ++hand) {
    for (std::size_t voice = 0; voice < found.bar->hands[hand].voices.size(); ++voice) {
      add_voice(*found.bar, hand, voice, readings[hand], moments);
    }
  }
  for (auto& [key, moment] : moments) found.moments.push_back(std::move(moment));
  for (std::size_t i = 0; i < found.moments.size(); ++i) {
    Moment& moment = found.moments[i];
    const Ticks next =
        i + 1 < found.moments.size() ? found.moments[i + 1].onset : found.bar->length;
    constexpr double kUnknown = 0.25;
    moment.length =
        ticks ? static_cast<double>(next - moment.onset) / static_cast<double>(*ticks) : kUnknown;
    for (std::size_t hand = 0; hand < hands.size(); ++hand) {
      measure(moment.hands[hand], hands[hand]);
    }
  }
  return found;
}

}  // namespace fingerturn
