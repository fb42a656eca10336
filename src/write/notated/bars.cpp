#include "write/notated/bars.hpp"

#include "score/timeline.hpp"
#include "write/notated/grouping.hpp"
#include "write/notated/signs_needed.hpp"
#include "write/notated/ticks.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <utility>

namespace fingerturn {
namespace {

/// The events of a line in one bar.
using BarEvents = std::vector<ShownEvent>;

BarEvents events_of(const BarColumns& columns, std::size_t line) {
  BarEvents events;
  for (const Column& column : columns.columns) {
    if (column.events[line]) events.push_back(*column.events[line]);
  }
  return events;
}

Fraction first_onset(const BarColumns& columns) {
  const auto& [first, second] = columns.columns.front().events;
  return *(first ? first : second)->event->onset;
}

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

BarLineStyle bar_line_at(const Line& line, std::size_t event) {
  const auto found = std::ranges::lower_bound(line.bar_lines, event, {}, &BarLine::before_event);
  const bool is_there = found != line.bar_lines.end() && found->before_event == event;
  return is_there ? found->style : BarLineStyle::single;
}

/// The keys that go down in a bar. A key may be struck in a voice while it sounds in another, but
/// not more than that, so that keys cannot pile up.
class KeysDown {
 public:
  explicit KeysDown(const std::vector<Sounding>& going_on) {
    for (const Sounding& head : going_on) add(head);
  }

  void add(const Sounding& head) {
    const auto [strokes, is_new] =
        strokes_.try_emplace(midi_number(head.pitch), Strokes{found_.size(), found_.size()});
    if (!is_new) {
      Sounding& earlier = found_[strokes->second.before];
      if (strokes->second.before != strokes->second.last && earlier.end > head.onset) {
        earlier.end = head.onset;
        earlier.tied_on = false;
      }
      strokes->second = {strokes->second.last, found_.size()};
    }
    found_.push_back(head);
  }

  /// What sounds in a bar of that length; what sounds on is tied, and goes on from the beginning of
  /// the next: of each key that was struck last.
  std::vector<Sounding> until(Ticks length, std::vector<Sounding>& going_on) {
    for (std::size_t i = 0; i < found_.size(); ++i) {
      Sounding& head = found_[i];
      if (head.end <= length) continue;
      const bool is_last = strokes_.at(midi_number(head.pitch)).last == i;
      if (is_last) {
        going_on.push_back({head.place, head.pitch, 0, head.end - length, true, head.tied_on});
      }
      head.end = length;
      head.tied_on = is_last;
    }
    std::erase_if(found_, [](const Sounding& head) { return head.end <= head.onset; });
    return std::move(found_);
  }

 private:
  /// The last two strokes of a key, in `found_`.
  struct Strokes {
    std::size_t before = 0;
    std::size_t last = 0;
  };

  std::vector<Sounding> found_;
  std::map<int, Strokes> strokes_;
};

/// A hand in a bar.
class BarHand {
 public:
  BarHand(const Line& line, BarEvents events, Ticks start, std::optional<Ticks> ticks)
      : line_(&line), events_(std::move(events)), start_(start), ticks_(ticks) {}

  [[nodiscard]] Ticks length() const {
    Ticks length = 0;
    for (const ShownEvent& shown : events_) {
      length = std::max(length, onset_of(*shown.event) + duration_of(*shown.event));
    }
    return length;
  }

  /// What is written in a bar of that length. `going_on` sounds from the bar before, and takes what
  /// goes on into the next, where that follows.
  NotatedHand written(Ticks length, bool is_followed, std::vector<Sounding>& going_on) const {
    if (!ticks_) return in_a_row();
    NotatedHand hand = voices_of(sounding(length, is_followed, going_on));
    for (const ShownEvent& shown : events_) take_signs(*shown.event, shown.place, hand);
    for (NotatedVoice& voice : hand.voices) set_values(voice);
    add_rests(length, hand);
    add_grace_notes(hand);
    return hand;
  }

 private:
  [[nodiscard]] Ticks onset_of(const Event& event) const {
    return ticks_ ? in_ticks(*event.onset, *ticks_) - start_ : 0;
  }
  [[nodiscard]] Ticks duration_of(const Event& event) const {
    return ticks_ ? in_ticks(*event.duration, *ticks_) : 0;
  }

  /// How long the chord is to which a struck event belongs: what is rolled has the length of the
  /// note that ends the roll.
  [[nodiscard]] Ticks chord_length(std::size_t event) const {
    while (line_->events[event].rolls_on && event + 1 < line_->events.size()) ++event;
    return duration_of(line_->events[event]);
  }

  [[nodiscard]] std::vector<Sounding> sounding(Ticks length, bool is_followed,
                                               std::vector<Sounding>& going_on) const {
    KeysDown keys(std::exchange(going_on, {}));
    for (const auto& [event, place, entry] : events_) {
      if (event->grace) continue;
      const Ticks onset = onset_of(*event);
      const Ticks of_chord = chord_length(place);
      for (std::size_t i = 0; i < event->notes.size(); ++i) {
        const Note& note = event->notes[i];
        const Ticks lasts = note.lasts ? in_ticks(*note.lasts, *ticks_) : of_chord;
        if (lasts <= 0) continue;
        keys.add({{place, i}, note.pitch, onset, onset + lasts, note.held, note.tied});
      }
    }
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
  void take_signs(const Event& event, std::size_t place, NotatedHand& hand) const {
    for (NotatedVoice& voice : hand.voices) {
      for (NotatedChord& chord : voice) {
        const bool is_of_event = std::ranges::any_of(
            chord.heads, [&](const NotatedHead& head) { return head.place.event == place; });
        if (is_of_event && chord.onset == onset_of(event)) {
          take_signs_of(event, is_rolled(place), chord);
        }
      }
    }
  }

  /// Whether an event is of a rolled chord, the last one too.
  [[nodiscard]] bool is_rolled(std::size_t event) const {
    return line_->events[event].rolls_on || (event > 0 && line_->events[event - 1].rolls_on);
  }

  void set_values(NotatedVoice& voice) const {
    NotatedVoice written;
    for (NotatedChord& chord : voice) add_values(written, std::move(chord), *ticks_);
    voice = std::move(written);
  }

  void add_rests(Ticks length, NotatedHand& hand) const {
    NotatedVoice rests;
    for (const auto& [event, place, entry] : events_) {
      if (!event->is_rest()) continue;
      NotatedChord rest{.event = place, .onset = onset_of(*event), .length = duration_of(*event)};
      if (rest.length <= 0 || is_sounding(voice, rest)) continue;
      NotatedVoice rests;
      if (rest.onset == 0 && rest.length == length) {
        rest.value = NoteValue{};
        rests.push_back(std::move(rest));
      } else {
        add_values(rests, std::move(rest), *ticks_);
      }
    }
    NotatedVoice& voice = hand.voices[0];
    const auto first_rest = static_cast<std::ptrdiff_t>(voice.size());
    append_all(voice, rests);
    std::ranges::inplace_merge(voice, voice.begin() + first_rest, {}, &NotatedChord::onset);
  }

  /// Whether something is held in the time of a rest.
  static bool is_sounding(const NotatedVoice& voice, const NotatedChord& rest) {
    return std::ranges::any_of(voice, [&](const NotatedChord& chord) {
      return chord.onset < rest.onset + rest.length && rest.onset < chord.onset + chord.length;
    });
  }

  /// Grace notes stand before the note that they lead to, in its voice.
  void add_grace_notes(NotatedHand& hand) const {
    std::map<std::size_t, NotatedVoice> graces;  // by the event that they lead to
    NotatedVoice waiting;
    for (const auto& [event, place, entry] : events_) {
      if (event->grace) {
        waiting.push_back(chord_of(*event, place));
        waiting.back().grace = true;
        waiting.back().onset = onset_of(*event);
      } else if (!waiting.empty()) {
        graces.emplace(place, with_grace_values(std::exchange(waiting, {})));
      }
    }
    if (!graces.empty()) {
      for (NotatedVoice& voice : hand.voices) insert_graces(graces, voice);
    }
    NotatedVoice left = with_grace_values(std::move(waiting));
    for (auto& [event, group] : graces) append_all(left, group);
    append_all(hand.voices[0], left);
    std::ranges::stable_sort(hand.voices[0], {}, &NotatedChord::onset);
  }

  static NotatedVoice with_grace_values(NotatedVoice graces) {
    constexpr std::int8_t kEighth = 3;
    constexpr std::int8_t kSixteenth = 4;
    for (NotatedChord& grace : graces) {
      grace.value = NoteValue{graces.size() > 1 ? kSixteenth : kEighth};
    }
    return graces;
  }

  static void append_all(NotatedVoice& voice, NotatedVoice& more) {
    voice.insert(voice.end(), std::make_move_iterator(more.begin()),
                 std::make_move_iterator(more.end()));
  }

  /// Takes the groups of grace notes whose event the voice has.
  static void insert_graces(std::map<std::size_t, NotatedVoice>& graces, NotatedVoice& voice) {
    NotatedVoice written;
    const auto take = [&](std::size_t event) {
      const auto group = graces.find(event);
      if (group == graces.end()) return;
      append_all(written, group->second);
      graces.erase(group);
    };
    for (NotatedChord& chord : voice) {
      take(chord.event);
      for (const NotatedHead& head : chord.heads) {
        if (!head.tied_to) take(head.place.event);
      }
      written.push_back(std::move(chord));
    }
    voice = std::move(written);
  }

  [[nodiscard]] NotatedChord chord_of(const Event& event, std::size_t place) const {
    NotatedChord chord{.event = place};
    for (std::size_t i = 0; i < event.notes.size(); ++i) {
      const Note& note = event.notes[i];
      chord.heads.push_back({{place, i}, note.pitch, {}, note.held, note.tied});
    }
    take_signs_of(event, is_rolled(place), chord);
    return chord;
  }

  /// Without times, one chord after another.
  [[nodiscard]] NotatedHand in_a_row() const {
    NotatedHand hand;
    for (const auto& [event, place, entry] : events_) {
      NotatedChord& chord = hand.voices[0].emplace_back(chord_of(*event, place));
      chord.grace = event->grace;
      chord.onset = static_cast<Ticks>(hand.voices[0].size()) - 1;
      chord.length = 1;
    }
    return hand;
  }

  const Line* line_;
  BarEvents events_;
  Ticks start_;
  std::optional<Ticks> ticks_;
};

}  // namespace

NotatedBars::NotatedBars(const AnalysedPassage& passage, SharedLines lines)
    : passage_(&passage.written()),
      sequence_(passage, std::move(lines)),
      ticks_(fingerturn::ticks_in_whole(passage.written())),
      going_on_(sequence_.lines().size()) {
  if (passage_->keys.empty()) chosen_key_ = key_with_fewest_signs(*passage_);
}

std::optional<NotatedBar> NotatedBars::next() {
  if (number_ == sequence_.size()) return std::nullopt;
  const BarColumns columns = sequence_[number_];
  NotatedBar bar{.bar = columns.bar};
  bar.follows = number_ == 0 || columns.bar <= last_bar_ + 1;
  if (!bar.follows) going_on_.assign(going_on_.size(), {});
  const bool is_followed =
      number_ + 1 < sequence_.size() && sequence_.bar(number_ + 1) == bar.bar + 1;
  std::vector<BarHand> hands;
  if (ticks_) bar.start = in_ticks(first_onset(columns), *ticks_);
  for (std::size_t line = 0; line < lines().size(); ++line) {
    hands.emplace_back(lines()[line].written(), events_of(columns, line), bar.start, ticks_);
    bar.length = std::max(bar.length, hands.back().length());
  }
  set_changes(bar);
  const BeamGroups groups = beam_groups(meter_ ? &*meter_ : nullptr, bar.length, number_ == 0,
                                        ticks_.value_or(Ticks{1} << (kMostHalvings + 2)));
  for (std::size_t line = 0; line < hands.size(); ++line) {
    NotatedHand& hand =
        bar.hands.emplace_back(hands[line].written(bar.length, is_followed, going_on_[line]));
    for (NotatedVoice& voice : hand.voices) group_voice(voice, groups);
    set_signs(hand, *key_);
    set_bar_lines(line, columns, hand);
  }
  last_bar_ = columns.bar;
  ++number_;
  return bar;
}

void NotatedBars::set_changes(NotatedBar& bar) {
  const Meter* const meter = meter_in_bar(*passage_, bar.bar);
  if (meter != nullptr && meter_ != *meter) bar.meter = meter_ = *meter;
  const KeySignature key = passage_->keys.empty() ? chosen_key_ : key_in_bar(*passage_, bar.bar);
  if (!key_ || key_->fifths != key.fifths) bar.key = key;
  key_ = key;
}

void NotatedBars::set_bar_lines(std::size_t line, const BarColumns& columns,
                                NotatedHand& hand) const {
  const BarEvents events = events_of(columns, line);
  if (events.empty()) return;
  hand.left = bar_line_at(lines()[line].written(), events.front().place);
  hand.right = bar_line_at(lines()[line].written(), events.back().place + 1);
}

}  // namespace fingerturn
