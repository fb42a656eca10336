#pragma once

#include "fingerturn/fraction.hpp"
#include "fingerturn/key_signature.hpp"
#include "fingerturn/pitch.hpp"
#include "fingerturn/source.hpp"

#include <compare>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

/// The score: plain data, made by a reader, looked at by the rules, printed by the writers.
///
///     Score score = read_notation(source).score;
///     const Line& right = score.passages.at(0).lines.at(0);
///     right.events.at(0).notes.at(0).finger;   // 2
///
/// Two scores are equal when they say the same music. The spans, which only say where it was
/// written, and what a reader remarked take no part in the comparison.
namespace fingerturn {

enum class Hand : std::uint8_t { right, left };

/// A finger number, 1 (the thumb) to 5 (the fifth).
using Finger = std::uint8_t;
inline constexpr Finger kThumb = 1;
inline constexpr Finger kFifth = 5;

struct Note {
  Pitch pitch;
  std::optional<Finger> finger;    ///< the finger that strikes; none where none is written
  std::vector<Finger> changes_to;  ///< silent changes on the held key, in their order
  /// Other fingers that the source offers for the striking one. They are kept for the reports and
  /// not analysed, and take no part in comparisons.
  std::vector<Finger> alternatives;
  /// A written finger that a suggestion took the place of, since it is probably meant for another
  /// note of its chord (docs/rules.md, 5.2). It takes no part in comparisons.
  std::optional<Finger> set_aside;
  /// How many slurs end and begin at it, for those who set the music. They take no part in
  /// comparisons, as the passage notation has none.
  std::uint8_t slurs_end = 0;
  std::uint8_t slurs_begin = 0;
  bool fermata = false;    ///< the same of a fermata over it
  bool suggested = false;  ///< the fingering is a suggestion, not one that was given
  bool tied = false;       ///< tied to the next note on the same key
  bool held = false;       ///< a tied continuation: the key is down already, not struck
  /// How long the key is written to stay down, in whole notes, where that is longer than the
  /// event: a slow voice beneath a quick one in the same hand.
  std::optional<Fraction> lasts;
  Span span;

  friend bool operator==(const Note& left, const Note& right) noexcept;
};

/// A sign above a note after whose stroke the hand goes to and fro.
enum class Ornament : std::uint8_t { none, trill, tremolo };

/// What one hand does at one moment: notes, lowest key first, or a rest (no notes).
struct Event {
  std::vector<Note> notes;
  std::optional<Fraction> onset;     ///< whole notes from the start of the passage, where known
  std::optional<Fraction> duration;  ///< the written value in whole notes, where known; 0 for grace
  std::int32_t bar = 1;              ///< the number of the bar, 0 or above
  bool grace = false;                ///< a grace note: no time of its own, before its main note
  bool breath_after = false;         ///< a breath mark or caesura follows
  /// A note of a rolled chord that is not its last: the next event joins it at the same onset.
  bool rolls_on = false;
  Ornament ornament = Ornament::none;  ///< the sign of a trill or tremolo
  Span span;

  [[nodiscard]] bool is_rest() const noexcept { return notes.empty(); }
  /// The notes that are struck here: those that are not merely held.
  [[nodiscard]] std::size_t struck_count() const noexcept;
  /// Whether every note that is struck here has a finger.
  [[nodiscard]] bool is_fingered() const noexcept;

  friend bool operator==(const Event& left, const Event& right) noexcept;
};

/// Whether a gesture has ended between two neighbouring events of a line, of which either may be a
/// rest: by a rest, a breath or bars that are skipped (docs/rules.md, 1.2).
bool ends_gesture(const Event& before, const Event& after) noexcept;

enum class BarLineStyle : std::uint8_t {
  single,
  double_bar,
  repeat_start,
  repeat_end,
  repeat_both
};

/// A bar line and its place among the events of its line: it stands before `events[before_event]`
/// (the number of events is the place after the last).
struct BarLine {
  std::size_t before_event = 0;
  BarLineStyle style = BarLineStyle::single;

  friend bool operator==(const BarLine&, const BarLine&) = default;
};

/// A stretch of a line whose suggested fingers are taken over: from a figure that is fingered by
/// habit, or from where they are given to the same group of notes.
struct UsualFingers {
  std::size_t first_event = 0;  ///< places in Line::events
  std::size_t last_event = 0;
  std::string words;  ///< "E-flat major scale, fingers of the handbook", "as given in bar 4"
};

/// All that one hand plays in a passage, in time order.
struct Line {
  Hand hand = Hand::right;
  std::vector<Event> events;
  std::vector<BarLine> bar_lines;
  /// Of suggestions, in the order of their ends. They take no part in comparisons.
  std::vector<UsualFingers> usual{};

  [[nodiscard]] bool is_fingered() const noexcept;  ///< whether every struck note has a finger
  friend bool operator==(const Line& left, const Line& right) noexcept;
};

/// What a suggested finger of an event is taken over from, the one that leads on where two meet;
/// null where there is none.
const UsualFingers* usual_fingers_at(const Line& line, std::size_t event) noexcept;

/// A time signature: `beats` notes of the value 1/`beat_type` fill a bar.
struct Meter {
  std::int32_t beats = 4;
  std::int32_t beat_type = 4;

  friend bool operator==(const Meter&, const Meter&) = default;
};

/// `per_minute` (above 0) notes of the value `beat_unit` (in whole notes) in a minute.
struct Tempo {
  Fraction beat_unit{1, 4};
  double per_minute = 0;

  [[nodiscard]] double quarters_per_minute() const noexcept;
  friend bool operator==(const Tempo&, const Tempo&) = default;
};

/// A meter, tempo or key that holds from the beginning of bar `bar` on, or words that stand before
/// it.
template <typename Value>
struct FromBar {
  std::int32_t bar = 1;
  Value value;

  friend bool operator==(const FromBar&, const FromBar&) = default;
};

/// A moment of a passage, whatever other bars are left out: a bar, and the whole notes from its
/// beginning.
struct BarMoment {
  std::int32_t bar = 1;
  Fraction time{};

  friend bool operator==(const BarMoment&, const BarMoment&) = default;
  friend auto operator<=>(const BarMoment& left, const BarMoment& right) noexcept {
    return std::tie(left.bar, left.time) <=> std::tie(right.bar, right.time);
  }
};

/// How loud it is from a moment on, in the letters of the trade: "mf".
struct Dynamic {
  BarMoment at;
  Hand hand = Hand::right;  ///< the one whose staff it stands at
  std::string letters;
};

/// Gradually louder or softer.
struct Hairpin {
  BarMoment from;
  BarMoment to;
  Hand hand = Hand::right;
  bool louder = false;
};

/// A fermata over a rest; that of a note is the note's.
struct RestFermata {
  BarMoment at;
  Hand hand = Hand::right;
};

/// Bars that end a repeat the first time, or another.
struct RepeatEnding {
  std::int32_t first_bar = 0;
  std::int32_t last_bar = 0;
  std::string numbers;   ///< "1." or "1, 2."
  bool is_open = false;  ///< its bracket does not come down at its end
};

/// What a score says beside its notes and no rule looks at, for those who set the music: each in
/// the order of its moments.
struct ScoreSigns {
  std::vector<Dynamic> dynamics;
  std::vector<Hairpin> hairpins;
  std::vector<RestFermata> rest_fermatas;
  std::vector<RepeatEnding> endings;  ///< no two of them share a bar
};

/// Whether a time signature is one that is read: 1 to 99 beats of a value from 1/1 to 1/128.
bool is_plausible(const Meter& meter) noexcept;
/// Whether so many notes in a minute are a tempo that is read: 1 to 2000.
bool is_plausible_tempo(double per_minute) noexcept;

/// The reaches that are believed of a hand, in semitones.
inline constexpr int kSmallestReach = 7;
inline constexpr int kWidestReach = 24;

/// A passage: one or two lines, the right hand's first. A hand that plays nothing has no line.
struct Passage {
  std::string title;
  std::string composer;
  std::string source;                  ///< where the music was taken from, as its user wrote it
  std::optional<int> reach_semitones;  ///< widest interval 1-5 takes comfortably
  std::vector<FromBar<Meter>> meters;  ///< in the order of their bars
  std::vector<FromBar<Tempo>> tempos;  ///< in the order of their bars
  std::vector<FromBar<KeySignature>> keys;  ///< the same; the pitches say themselves what sounds
  std::vector<FromBar<std::string>> notes;  ///< what somebody wrote above a bar, for the reports
  /// What is said in comments above a bar, line by line; of no bar that is there, at the end. They
  /// take no part in comparisons.
  std::vector<FromBar<std::string>> comments;
  ScoreSigns signs;  ///< they take no part in comparisons, as the passage notation has none
  std::vector<Line> lines;
  /// What its reader decided where the source left a choice, such as which staff is which hand:
  /// whole sentences for the reports.
  std::vector<std::string> remarks;
  /// Of several fingerings that were asked for, what sets this one apart from the first; else
  /// empty.
  std::string apart;

  friend bool operator==(const Passage& left, const Passage& right) noexcept;
};

struct Score {
  std::vector<Passage> passages;

  friend bool operator==(const Score&, const Score&) = default;
};

/// The fingers that are written on a note, the striking one first; empty where none is.
std::vector<Finger> written_fingers(const Note& note);

/// Every finger that stands on the key of a struck note before the hand plays on: the striking
/// finger, its silent changes, and those written on tied continuations that stand alone. Empty
/// where the striking finger is missing.
///
///     C4:4~ C4:1 D4:2      the first note has the fingers 4, 1
std::vector<Finger> fingers_on_key(const Line& line, std::size_t event, const Note& note);

/// No reader gives a bar a higher number; the notation says any from 0 to this.
inline constexpr std::int32_t kHighestBar = 999'999'999;

/// The bars from `first` to `last`, both included.
struct BarRange {
  std::int32_t first = 0;
  std::int32_t last = 0;

  [[nodiscard]] bool contains(std::int32_t bar) const noexcept {
    return bar >= first && bar <= last;
  }
  friend bool operator==(const BarRange&, const BarRange&) = default;
};

/// Where in the music something stands, as a musician finds it; each is none where it is not known.
struct MusicalPlace {
  std::optional<std::size_t> passage;  ///< its place in Score::passages
  std::optional<Hand> hand;
  std::optional<std::int32_t> bar;
  std::optional<Fraction> beat;  ///< from 1, the beginning of the bar, in the beats of the meter

  friend bool operator==(const MusicalPlace&, const MusicalPlace&) = default;
};

/// A moment in a passage: a bar's number, and a beat as reports count it, from 1.
struct BeatInBar {
  std::int32_t bar = 1;
  double beat = 1;  ///< 2.5 is half a beat after the second; within 1/1000
};

/// The line of a hand; null where that hand has none.
const Line* line_of_hand(const Passage& passage, Hand hand) noexcept;

/// The numbers of the bars of a passage in which a hand has an event, rising.
std::vector<std::int32_t> bars_of(const Passage& passage);

/// The score with only the line of one hand in each passage.
Score only_hand(Score score, Hand hand);
/// The passage with only the events of these bars, its onsets counted from the first of them. A
/// tied continuation whose beginning is left out becomes a note to strike, with the finger that was
/// on its key; a tie that leads to nothing is dropped.
Passage only_bars(Passage passage, BarRange bars);
/// The same of every passage.
Score only_bars(Score score, BarRange bars);
/// A line with only the events from one place to another, both included. Ties that lead into them
/// or out of them are treated as by `only_bars`.
Line only_events(Line line, std::size_t first, std::size_t last);

std::string to_string(Hand hand);
std::string to_string(const Meter& meter);
std::string to_string(BarRange bars);  ///< "bar 5" or "bars 5 to 8"
/// "bar 12, right hand, beat 2.5": what is known of hand, bar and beat.
std::string to_string(const MusicalPlace& place);

}  // namespace fingerturn
