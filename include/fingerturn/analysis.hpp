#pragma once

#include "fingerturn/places.hpp"
#include "fingerturn/rule.hpp"
#include "fingerturn/score.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What the rules find in a score: one EventAnalysis for every event that is struck, in the order
/// of the line. Rests and tied continuations have none.
///
///     Analysis analysis = analyse(score);
///     analysis.passages[0].lines[0].events[3].rotation;   // Rotation::double_rotation
namespace fingerturn {

/// How a note is prepared (docs/rules.md, 2.2 to 2.4 and 2.8).
enum class Rotation : std::uint8_t {
  preparatory,
  single_rotation,
  double_rotation,
  level,
  undetermined
};

/// A side of the hand, the same word for both hands.
enum class Side : std::uint8_t { toward_fifth, toward_thumb };

/// A direction as the player sees it.
enum class Direction : std::uint8_t { left, right };

/// Fingers that pass one another (docs/rules.md, 3).
enum class Crossing : std::uint8_t { none, thumb_under, finger_over_thumb, finger_crossing };

/// A move of the hand further in between the black keys, or out again.
enum class InOut : std::uint8_t { in, out };

/// How loudly a finding speaks: for information, to be careful with, or likely to strain the hand.
enum class WatchLevel : std::uint8_t { info, caution, strain };

/// The outer fingers of what is struck; the same finger twice for a single note, 0 where a finger
/// is missing.
struct OuterFingers {
  Finger lowest = 0;
  Finger highest = 0;

  [[nodiscard]] bool known() const noexcept { return lowest != 0; }
  /// Twice the middle of the fingers, so that it stays a whole number.
  [[nodiscard]] int doubled_middle() const noexcept { return lowest + highest; }
  friend bool operator==(const OuterFingers&, const OuterFingers&) = default;
};

/// Why an event is what it is: the form of its sentence and what goes into it besides what was
/// decided. `reason_of` puts it into words.
struct Reason {
  enum class Form : std::uint8_t {
    level_pair,
    level_octave,
    level_repeated,
    level_chord,
    finger_missing,
    first_alone,   ///< the first of its gesture, with no known step to follow
    first,         ///< the first of its gesture; the fingers are those of the step that decides
    first_change,  ///< the same, where a silent change on a held key is that step
    after_missing,
    same_finger,
    step
  };
  Form form = Form::finger_missing;
  bool single_notes = true;     ///< what is struck is a single note; in a step what it leaves, too
  bool same_key = false;        ///< a step that stays on its key
  OuterFingers struck_by;       ///< the fingers that struck what a step leaves
  OuterFingers before;          ///< the fingers that a step leaves from
  OuterFingers now;             ///< the fingers that strike
  std::optional<Side> changed;  ///< where the last silent change on what a step leaves turns
  bool goes_on = false;         ///< a trill or tremolo: the sides alternate after the stroke
  bool after_ornament = false;  ///< the first of its gesture since a trill or tremolo is before it
};

struct EventAnalysis {
  std::size_t event = 0;    ///< the event's place in Line::events
  std::size_t index = 0;    ///< its number among the struck events of the line, from 0
  std::size_t gesture = 0;  ///< the number of its gesture in the line, from 0
  std::size_t arc = 0;      ///< the number of its arc in the line, from 0
  Rotation rotation = Rotation::undetermined;
  Basis basis = Basis::none;
  Crossing crossing = Crossing::none;  ///< between the event before and this one
  std::optional<Side> side;            ///< none where level or not known
  std::optional<Side> change;          ///< to which its last silent change turns, if it has one
  std::optional<Direction> prepare;    ///< the swing before it, in preparatory and double ones
  std::optional<InOut> in_out;         ///< the move to its depth, where there is one
  std::optional<int> swings;           ///< 0 (level), 1 or 2; none where undetermined
  /// White keys that the arm carries the hand to reach it, above 0 to the right; none where a
  /// finger is missing.
  std::optional<double> carry;
  std::optional<double> depth;       ///< how far in the hand is, from 0 to 2; none as for carry
  std::optional<double> swing_rate;  ///< swings a second, where swings, time and tempo are known
  /// The fastest tempo, in quarters a minute, at which its swings can be full; none where it has
  /// none or the time is not known.
  std::optional<double> full_swing_tempo;
  std::string_view rule;  ///< the id of the rule that decided
  Reason reason;
};

/// One thing in a line that deserves a look (docs/rules.md, 5). It makes no medical claim.
struct Finding {
  std::string_view rule;  ///< the id of the rule that found it; its sources are the rule's
  WatchLevel level = WatchLevel::info;
  std::size_t event = 0;  ///< the event's place in Line::events
  std::size_t index = 0;  ///< its number among the struck events of the line, from 0
  std::string message;    ///< one sentence for the player

  friend bool operator==(const Finding&, const Finding&) = default;
};

/// Findings counted by their levels.
struct WatchCounts {
  std::size_t info = 0;
  std::size_t caution = 0;
  std::size_t strain = 0;

  void add(WatchLevel level) noexcept;
  void add(const WatchCounts& other) noexcept;
  [[nodiscard]] std::size_t total() const noexcept;
  /// Whether there is a finding of this level or a graver one.
  [[nodiscard]] bool reaches(WatchLevel level) const noexcept;
  friend bool operator==(const WatchCounts&, const WatchCounts&) = default;
};

/// Counts over the events of a line.
struct Totals {
  std::size_t events = 0;
  std::size_t fingered = 0;  ///< events whose every struck note has a finger
  std::size_t preparatory = 0;
  std::size_t single_rotations = 0;
  std::size_t double_rotations = 0;
  std::size_t level_events = 0;
  std::size_t undetermined = 0;
  std::size_t swings = 0;  ///< of the events where they are known
  std::size_t crossings = 0;
  std::size_t longest_double_run = 0;  ///< most double rotations one after another
  double carried = 0;                  ///< white keys that the arm carries the hand, both ways
  double largest_carry = 0;            ///< the furthest move of them
  std::size_t moves_in = 0;
  std::size_t moves_out = 0;
  std::size_t arcs = 0;
  /// The fastest tempo, in quarters a minute, at which every swing can be full, where known.
  std::optional<double> full_swing_tempo;
  std::size_t full_swing_event = 0;        ///< the place in Line::events of the event that sets it
  std::optional<double> least_swing_size;  ///< of its events, where the tempo is known
  std::size_t least_swing_event = 0;       ///< the place of the first event with that size

  friend bool operator==(const Totals&, const Totals&) = default;
};

/// The most swings a second that can be full (docs/rules.md, 6).
inline constexpr double kFullSwings = 10;

/// The share of a full swing that there is time for, above 0 and at most 1; none where the swing
/// rate is not known.
std::optional<double> swing_size(const EventAnalysis& entry) noexcept;

/// A key that the hand keeps down while it strikes others: tied, or of a slower voice.
struct HeldKey {
  std::size_t event = 0;  ///< the struck event's place in Line::events
  Pitch pitch;
  std::optional<Finger> finger;  ///< that holds it, where known

  friend bool operator==(const HeldKey&, const HeldKey&) = default;
};

struct LineAnalysis {
  Hand hand = Hand::right;
  std::vector<EventAnalysis> events;
  std::vector<HeldKey> held;   ///< what the hand keeps down while it strikes, by event
  std::vector<Finding> watch;  ///< in the order of the events
  Totals totals;
  /// How difficult a model finds the fingering (`with_difficulties`), 0 or above; none where that
  /// was not asked for or a finger is missing.
  std::optional<double> difficulty;
};

/// Two events struck together of which one is single and the other double.
struct KindsDiffer {
  std::size_t right_event = 0;  ///< places in Line::events
  std::size_t left_event = 0;
  Rotation right = Rotation::undetermined;
  Rotation left = Rotation::undetermined;

  friend bool operator==(const KindsDiffer&, const KindsDiffer&) = default;
};

/// How the hands go together (docs/rules.md, 4.5).
struct Together {
  std::size_t onsets = 0;    ///< onsets that both hands share and where both have a side
  std::size_t parallel = 0;  ///< of these, where both forearms turn the same way
  std::size_t contrary = 0;  ///< and where they turn opposite ways
  std::vector<KindsDiffer> kinds_differ;  ///< in the order of time

  friend bool operator==(const Together&, const Together&) = default;
};

/// Bars that bring again what earlier ones had: notes, rhythm, fingers, turns and findings.
struct BarsAgain {
  BarRange bars;
  BarRange as;

  friend bool operator==(const BarsAgain&, const BarsAgain&) = default;
};

struct PassageAnalysis {
  std::vector<LineAnalysis> lines;   ///< one for each line of the passage, in the same order
  std::optional<Together> together;  ///< none where not both hands play or no onsets are known
  std::optional<double> full_swing_tempo;     ///< of the hand for which it is slower
  std::optional<int> reach_semitones;         ///< the reach that the watch list was fitted to
  std::optional<double> quarters_per_minute;  ///< the tempo taken instead of the written ones
  std::optional<BarRange> bars;               ///< where only these bars were asked for
  /// Where only the places that ask most were asked for, of these bars: rising and apart.
  std::optional<std::vector<PracticePlace>> places;
  std::vector<BarDoubles> doubles;  ///< of every bar that those were chosen from, rising
  /// Where bars that come again are to be named instead of shown: rising and apart.
  std::vector<BarsAgain> again;

  /// Whether a bar is among those that were asked for.
  [[nodiscard]] bool shows(std::int32_t bar) const noexcept;
};

struct Analysis {
  std::vector<PassageAnalysis> passages;  ///< one for each passage of the score
};

/// What may be said beside the score.
struct AnalyseOptions {
  /// The reach of the hand instead of what the passages say.
  std::optional<int> reach_semitones = std::nullopt;
  /// A tempo instead of those that are written.
  std::optional<double> quarters_per_minute = std::nullopt;
};

/// Applies all rules. Any score is taken: what the rules cannot decide is undetermined.
Analysis analyse(const Score& score, const AnalyseOptions& options = {});

/// Where the forearm goes when it turns to this side of this hand.
Direction direction_of(Hand hand, Side side) noexcept;
std::optional<Direction> direction_of(Hand hand, std::optional<Side> side) noexcept;
Direction opposite(Direction direction) noexcept;
Side opposite(Side side) noexcept;

/// One sentence for the player: why an event of this hand is what it is.
///
///     reason_of(entry, Hand::right);   // "The finger is missing: undetermined."
std::string reason_of(const EventAnalysis& entry, Hand hand);
/// Adds that sentence to a text. Its letters are ASCII, without quotes.
void add_reason(std::string& out, const EventAnalysis& entry, Hand hand);

/// The words of the reports: "single", "toward fifth", "thumb under", "rule" and so on.
std::string_view name_of(Rotation rotation) noexcept;
std::string_view name_of(Side side) noexcept;
std::string_view name_of(Direction direction) noexcept;
std::string_view name_of(Crossing crossing) noexcept;  ///< "none" where nothing crosses
std::string_view name_of(Basis basis) noexcept;
std::string_view name_of(WatchLevel level) noexcept;
std::string_view name_of(InOut move) noexcept;
/// What the forearm does: "supination" toward the fifth finger, "pronation" toward the thumb.
std::string_view forearm_of(Side side) noexcept;

}  // namespace fingerturn
