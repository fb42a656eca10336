#include "read/musicxml/hand_line.hpp"

#include "read/bar_lines.hpp"

#include <algorithm>
#include <compare>
#include <span>
#include <tuple>
#include <utility>

namespace fingerturn {
namespace {

using Notes = std::span<WrittenNote>;

/// What the order of the notes goes by: small, so that sorting moves little.
struct Turn {
  Ticks tick = 0;
  std::uint32_t measure = 0;
  std::uint32_t written = 0;  ///< the place of the note as it is written
  std::int16_t key = 0;       ///< 0 for a grace note

  /// By time, of one moment first the grace notes as they are written, then what is struck
  /// together, lowest first.
  friend auto operator<=>(const Turn& left, const Turn& right) {
    return std::tie(left.measure, left.tick, left.key, left.written) <=>
           std::tie(right.measure, right.tick, right.key, right.written);
  }
};

std::vector<WrittenNote> in_playing_order(std::vector<WrittenNote> notes) {
  std::vector<Turn> turns;
  turns.reserve(notes.size());
  for (const WrittenNote& note : notes) {
    const int key = note.grace ? 0 : midi_number(note.note.pitch);
    turns.push_back({note.tick, note.measure, static_cast<std::uint32_t>(turns.size()),
                     static_cast<std::int16_t>(key)});
  }
  std::sort(turns.begin(), turns.end());
  std::vector<WrittenNote> ordered;
  ordered.reserve(notes.size());
  for (const Turn& turn : turns) ordered.push_back(std::move(notes[turn.written]));
  return ordered;
}

void sort_by_key(Notes notes) {
  std::stable_sort(notes.begin(), notes.end(),
                   [](const WrittenNote& left, const WrittenNote& right) {
                     return midi_number(left.note.pitch) < midi_number(right.note.pitch);
                   });
}

void add_slurs(std::uint8_t more, std::uint8_t& slurs) {
  constexpr int kMost = 99;
  slurs = static_cast<std::uint8_t>(std::min(kMost, slurs + more));
}

/// Of two notes on one key, what the second adds to the first.
void merge(const WrittenNote& second, WrittenNote& first) {
  first.duration = std::max(first.duration, second.duration);
  first.note.tied |= second.note.tied;
  first.breath_after |= second.breath_after;
  first.note.fermata |= second.note.fermata;
  first.rolled |= second.rolled;
  add_slurs(second.note.slurs_end, first.note.slurs_end);
  add_slurs(second.note.slurs_begin, first.note.slurs_begin);
  first.rolls_down |= second.rolls_down;
  if (first.ornament == Ornament::none) first.ornament = second.ornament;
  if (first.note.finger) return;
  first.note.finger = second.note.finger;
  first.note.changes_to = second.note.changes_to;
  first.note.suggested = second.note.suggested;
  if (first.note.alternatives.empty()) first.note.alternatives = second.note.alternatives;
}

class HandLine {
 public:
  HandLine(Hand hand, Ticks ticks_per_quarter) : ticks_per_whole_(4 * ticks_per_quarter) {
    line_.hand = hand;
  }

  void add_measure(const WrittenMeasure& measure, Notes notes) {
    measure_ = &measure;
    time_ = 0;
    while (!notes.empty()) notes = notes.subspan(add_moment(notes));
    add_rest_until(measure.length);
    start_ += measure.length;
  }

  void add_bar_line(BarLineStyle style) { append_bar_line(line_, style); }
  Line take() { return std::move(line_); }

 private:
  /// Adds the next struck moment and the grace notes before it; gives the number of notes used.
  std::size_t add_moment(Notes notes) {
    const auto is_struck = [](const WrittenNote& note) { return !note.grace; };
    const auto struck = std::find_if(notes.begin(), notes.end(), is_struck);
    const auto grace_count = static_cast<std::size_t>(struck - notes.begin());
    const Ticks tick = struck == notes.end() ? measure_->length : struck->tick;
    add_grace_notes(notes.first(grace_count), tick);
    if (struck == notes.end()) return grace_count;
    const auto is_later = [tick](const WrittenNote& note) { return note.tick != tick; };
    const auto after = std::find_if(struck, notes.end(), is_later);
    const auto next = std::find_if(after, notes.end(), is_struck);
    add_struck(notes.subspan(grace_count, static_cast<std::size_t>(after - struck)),
               next == notes.end() ? measure_->length : next->tick);
    return static_cast<std::size_t>(after - notes.begin());
  }

  /// Grace notes stand before the silence that follows them, not after it.
  void add_grace_notes(Notes graces, Ticks until) {
    for (std::size_t begin = 0; begin < graces.size();) {
      std::size_t end = begin + 1;
      while (end < graces.size() && graces[end].in_chord) ++end;
      add_rest_until(graces[begin].tick);
      add_notes(graces.subspan(begin, end - begin), 0, true);
      begin = end;
    }
    add_rest_until(until);
  }

  void add_struck(Notes notes, Ticks next) {
    for (const WrittenNote& note : notes) {
      sounding_ = std::max(sounding_, start_ + note.tick + note.duration);
    }
    const Ticks silence = std::min(next, sounding_ - start_);
    add_notes(notes, silence - time_, false);
    time_ = silence;
  }

  /// Adds what begins at one moment; `grace`: as grace notes.
  void add_notes(Notes notes, Ticks duration, bool grace) {
    // Of what is struck the lowest comes first already; grace notes come as they are written.
    if (grace) sort_by_key(notes);
    notes = notes.first(merge_keys(notes));
    for (WrittenNote& note : notes) {
      if (note.duration > duration) note.note.lasts = value_of(note.duration);
    }
    const std::size_t first = line_.events.size();
    Notes rest = notes;
    for (std::size_t rolled = gather_roll(notes); rolled > 1; --rolled) {
      const bool begins = line_.events.size() == first;
      const std::size_t count = begins ? rest.size() - (rolled - 1) : 1;
      if (begins) sort_by_key(rest.first(count));
      add_event(rest.first(count), 0).rolls_on = true;
      rest = rest.subspan(count);
    }
    add_event(rest, duration);
    for (std::size_t i = first; i < line_.events.size(); ++i) line_.events[i].grace = grace;
    for (const WrittenNote& note : notes) {
      line_.events.back().breath_after |= note.breath_after;
      if (note.ornament != Ornament::none) line_.events.back().ornament = note.ornament;
    }
  }

  /// Of notes on one key only one is left; gives how many notes are.
  static std::size_t merge_keys(Notes notes) {
    std::size_t count = 1;
    for (std::size_t i = 1; i < notes.size(); ++i) {
      if (midi_number(notes[i].note.pitch) == midi_number(notes[count - 1].note.pitch)) {
        merge(notes[i], notes[count - 1]);
      } else if (i != count++) {
        notes[count - 1] = std::move(notes[i]);
      }
    }
    return count;
  }

  /// Puts the notes of a rolled chord behind what is struck with its first one, in the order in
  /// which they are rolled; gives how many they are.
  static std::size_t gather_roll(Notes notes) {
    const auto is_rolled = [](const WrittenNote& note) { return note.rolled && !note.continues; };
    if (std::ranges::count_if(notes, is_rolled) < 2) return 1;
    const auto roll = std::stable_partition(notes.begin(), notes.end(),
                                            [&](const auto& note) { return !is_rolled(note); });
    const bool down =
        std::any_of(roll, notes.end(), [](const auto& note) { return note.rolls_down; });
    if (down) std::reverse(roll, notes.end());
    return static_cast<std::size_t>(notes.end() - roll);
  }

  Event& add_event(Notes notes, Ticks duration) {
    Event& event = add_timed(duration, notes.front().note.span);
    event.notes.reserve(notes.size());
    for (WrittenNote& note : notes) event.notes.push_back(std::move(note.note));
    return event;
  }

  void add_rest_until(Ticks tick) {
    if (tick <= time_) return;
    add_timed(tick - time_, measure_->span);
    time_ = tick;
  }

  Event& add_timed(Ticks duration, Span span) {
    Event& event = line_.events.emplace_back();
    event.onset = reduced(start_ + time_, ticks_per_whole_);
    event.duration = value_of(duration);
    event.bar = measure_->bar;
    event.span = span;
    return event;
  }

  /// Most values come many times running.
  std::optional<Fraction> value_of(Ticks duration) {
    if (duration != last_duration_) {
      last_duration_ = duration;
      last_value_ = reduced(duration, ticks_per_whole_);
    }
    return last_value_;
  }

  Line line_;
  Ticks ticks_per_whole_;
  const WrittenMeasure* measure_ = nullptr;
  Ticks start_ = 0;     ///< of the measure, from the beginning of the line
  Ticks time_ = 0;      ///< within the measure: up to where the line is made
  Ticks sounding_ = 0;  ///< from the beginning of the line: when all that was struck has ended
  Ticks last_duration_ = 0;
  std::optional<Fraction> last_value_ = Fraction{};
};

}  // namespace

Line line_of_notes(Hand hand, std::vector<WrittenNote> notes,
                   const std::vector<WrittenMeasure>& measures, Ticks ticks_per_quarter) {
  notes = in_playing_order(std::move(notes));
  HandLine line(hand, ticks_per_quarter);
  std::size_t begin = 0;
  for (std::size_t i = 0; i < measures.size(); ++i) {
    if (!measures[i].continues_bar) {
      if (i > 0) line.add_bar_line(measures[i - 1].right);
      line.add_bar_line(measures[i].left);
    }
    std::size_t end = begin;
    while (end < notes.size() && notes[end].measure == i) ++end;
    line.add_measure(measures[i], Notes(notes).subspan(begin, end - begin));
    begin = end;
  }
  if (!measures.empty()) line.add_bar_line(measures.back().right);
  return line.take();
}

}  // namespace fingerturn
