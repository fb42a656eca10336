#include "write/notated/bar_hand.hpp"

#include "write/notated/ticks.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <map>
#include <utility>

namespace fingerturn {
namespace {

/// A length that no note says stays one chord without a value. Of several the first has the signs
/// of its stroke, and the last what follows it.
void add_values(NotatedVoice& written, NotatedChord chord, Ticks ticks) {
  const std::optional<Fraction> length = reduced(chord.length, ticks);
  const std::vector<NoteValue> values = length ? values_of(*length) : std::vector<NoteValue>();
  if (values.empty()) {
    written.push_back(std::move(chord));
    return;
  }
  for (std::size_t i = 0; i < values.size(); ++i) {
    NotatedChord piece = chord;
    piece.value = values[i];
    piece.length = in_ticks(length_of(values[i]), ticks);
    piece.breath_after &= i + 1 == values.size();
    piece.rolled &= i == 0;
    if (i > 0) piece.ornament = Ornament::none;
    for (NotatedHead& head : piece.heads) {
      head.tied_to |= i > 0;
      head.tied_on |= i + 1 < values.size();
    }
    chord.onset += piece.length;
    written.push_back(std::move(piece));
  }
}

/// The signs that stand on an event rather than on its heads.
void take_signs_of(const Event& event, bool rolled, NotatedChord& chord) {
  chord.breath_after |= event.breath_after;
  chord.rolled |= rolled;
  if (event.ornament != Ornament::none) chord.ornament = event.ornament;
}

/// Puts chords into a voice, before those that begin at the same time; both rise.
void put_into(NotatedVoice& voice, NotatedVoice chords) {
  if (chords.empty()) return;
  NotatedVoice both;
  both.reserve(voice.size() + chords.size());
  std::merge(
      std::move_iterator(chords.begin()), std::move_iterator(chords.end()),
      std::move_iterator(voice.begin()), std::move_iterator(voice.end()), std::back_inserter(both),
      [](const NotatedChord& left, const NotatedChord& right) { return left.onset < right.onset; });
  voice = std::move(both);
}

/// The events that a voice has something of, rising.
std::vector<std::size_t> events_in(const NotatedVoice& voice) {
  std::vector<std::size_t> events;
  for (const NotatedChord& chord : voice) {
    events.push_back(chord.event);
    for (const NotatedHead& head : chord.heads) events.push_back(head.place.event);
  }
  std::ranges::sort(events);
  return events;
}

/// Those that lead to one note: one is an eighth, several are sixteenths.
void set_grace_values(NotatedVoice& graces) {
  const std::int8_t halvings = graces.size() > 1 ? 4 : 3;
  for (NotatedChord& grace : graces) grace.value = NoteValue{halvings};
}

}  // namespace

BarHand::BarHand(const Line& line, BarEvents events, Ticks start, std::optional<Ticks> ticks)
    : line_(&line), events_(std::move(events)), start_(start), ticks_(ticks) {}

Ticks BarHand::length() const {
  Ticks length = 0;
  for (const ShownEvent& shown : events_) {
    length = std::max(length, onset_of(*shown.event) + duration_of(*shown.event));
  }
  return length;
}

NotatedHand BarHand::written(Ticks length, bool is_followed,
                             std::vector<Sounding>& going_on) const {
  if (!ticks_) return in_a_row();
  NotatedHand hand = voices_of(sounding(length, is_followed, going_on));
  for (NotatedVoice& voice : hand.voices) {
    take_signs(voice);
    set_values(voice);
  }
  add_rests(length, hand.voices[0]);
  add_grace_notes(hand);
  return hand;
}

Ticks BarHand::onset_of(const Event& event) const {
  return ticks_ ? in_ticks(*event.onset, *ticks_) - start_ : 0;
}

Ticks BarHand::duration_of(const Event& event) const {
  return ticks_ ? in_ticks(*event.duration, *ticks_) : 0;
}

/// How long the chords are to which the events belong: what is rolled has the length of the note
/// that ends the roll.
std::vector<Ticks> BarHand::chord_lengths() const {
  std::vector<Ticks> lengths(events_.size());
  for (std::size_t i = events_.size(); i-- > 0;) {
    const bool ends_later = events_[i].event->rolls_on && i + 1 < events_.size();
    lengths[i] = ends_later ? lengths[i + 1] : duration_of(*events_[i].event);
  }
  return lengths;
}

/// What sounds already, and what is struck in the bar. A key that is struck again ends there.
std::vector<Sounding> BarHand::struck(std::vector<Sounding> sounding) const {
  std::map<int, std::size_t> last;  // by key, in `sounding`
  for (std::size_t i = 0; i < sounding.size(); ++i) last[midi_number(sounding[i].pitch)] = i;
  const std::vector<Ticks> lengths = chord_lengths();
  for (std::size_t i = 0; i < events_.size(); ++i) {
    const Event& event = *events_[i].event;
    if (event.grace) continue;
    const Ticks onset = onset_of(event);
    for (std::size_t n = 0; n < event.notes.size(); ++n) {
      const Note& note = event.notes[n];
      const Ticks lasts = note.lasts ? in_ticks(*note.lasts, *ticks_) : lengths[i];
      if (lasts <= 0) continue;
      const auto before = last.find(midi_number(note.pitch));
      if (before != last.end() && sounding[before->second].end > onset) {
        sounding[before->second].end = onset;
        sounding[before->second].tied_on = note.held;
      }
      last[midi_number(note.pitch)] = sounding.size();
      sounding.push_back(
          {{events_[i].place, n}, note.pitch, onset, onset + lasts, note.held, note.tied});
    }
  }
  std::erase_if(sounding, [](const Sounding& head) { return head.end <= head.onset; });
  return sounding;
}

std::vector<Sounding> BarHand::sounding(Ticks length, bool is_followed,
                                        std::vector<Sounding>& going_on) const {
  std::vector<Sounding> found = struck(std::exchange(going_on, {}));
  for (Sounding& head : found) {
    if (head.end <= length) continue;
    if (is_followed) {
      going_on.push_back({head.place, head.pitch, 0, head.end - length, true, head.tied_on});
    }
    head.end = length;
    head.tied_on = is_followed;
  }
  return found;
}

/// Of what is tied on only the first has the signs.
void BarHand::take_signs(NotatedVoice& voice) const {
  for (NotatedChord& chord : voice) {
    for (const NotatedHead& head : chord.heads) {
      const Event& event = line_->events[head.place.event];
      if (onset_of(event) == chord.onset) take_signs_of(event, is_rolled(head.place.event), chord);
    }
  }
}

/// Whether an event is of a rolled chord, the last one too.
bool BarHand::is_rolled(std::size_t event) const {
  return line_->events[event].rolls_on || (event > 0 && line_->events[event - 1].rolls_on);
}

void BarHand::set_values(NotatedVoice& voice) const {
  NotatedVoice written;
  for (NotatedChord& chord : voice) add_values(written, std::move(chord), *ticks_);
  voice = std::move(written);
}

/// No rest stands where something is held.
void BarHand::add_rests(Ticks length, NotatedVoice& voice) const {
  NotatedVoice rests;
  auto chord = voice.begin();
  for (const auto& [event, place, entry] : events_) {
    if (!event->is_rest()) continue;
    NotatedChord rest{.event = place, .onset = onset_of(*event), .length = duration_of(*event)};
    while (chord != voice.end() && chord->onset + chord->length <= rest.onset) ++chord;
    const bool is_sounding = chord != voice.end() && chord->onset < rest.onset + rest.length;
    if (rest.length <= 0 || is_sounding) continue;
    if (rest.onset == 0 && rest.length == length) {
      rest.value = NoteValue{};
      rests.push_back(rest);
    } else {
      add_values(rests, rest, *ticks_);
    }
  }
  put_into(voice, std::move(rests));
}

/// Grace notes stand before the note that they lead to, in its voice.
void BarHand::add_grace_notes(NotatedHand& hand) const {
  const std::vector<std::size_t> upper = events_in(hand.voices[0]);
  const std::vector<std::size_t> lower = events_in(hand.voices[1]);
  std::array<NotatedVoice, 2> all;
  NotatedVoice graces;
  const auto add = [&](std::size_t voice) {
    set_grace_values(graces);
    std::ranges::move(graces, std::back_inserter(all.at(voice)));
    graces.clear();
  };
  for (const auto& [event, place, entry] : events_) {
    if (event->grace) {
      graces.push_back(chord_of(*event, place));
      graces.back().grace = true;
      graces.back().onset = onset_of(*event);
    } else if (!graces.empty()) {
      const bool is_lower =
          !std::ranges::binary_search(upper, place) && std::ranges::binary_search(lower, place);
      add(is_lower ? 1 : 0);
    }
  }
  add(0);
  for (std::size_t voice = 0; voice < all.size(); ++voice) {
    put_into(hand.voices.at(voice), std::move(all.at(voice)));
  }
}

NotatedChord BarHand::chord_of(const Event& event, std::size_t place) const {
  NotatedChord chord{.event = place};
  for (std::size_t i = 0; i < event.notes.size(); ++i) {
    const Note& note = event.notes[i];
    chord.heads.push_back({{place, i}, note.pitch, {}, note.held, note.tied});
  }
  take_signs_of(event, is_rolled(place), chord);
  return chord;
}

/// Without times, one chord after another.
NotatedHand BarHand::in_a_row() const {
  NotatedHand hand;
  for (const auto& [event, place, entry] : events_) {
    NotatedChord& chord = hand.voices[0].emplace_back(chord_of(*event, place));
    chord.grace = event->grace;
    chord.onset = static_cast<Ticks>(hand.voices[0].size()) - 1;
    chord.length = 1;
  }
  return hand;
}

}  // namespace fingerturn
