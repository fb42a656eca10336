#pragma once

#include "fingerturn/analysed.hpp"
#include "fingerturn/excerpt.hpp"
#include "fingerturn/places.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/score.hpp"
#include "fingerturn/source.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What to practise first, and how: a plan made of what the rules found. The order of the steps is
/// common practice, the sums and numbers are our convention (docs/practice.md).
///
///     const AnalysedScore analysed("etude.passage", read.score);
///     const PracticePlan plan = plan_practice(analysed, {.minutes = 30});
///     std::cout << write_practice_text(analysed, plan, TextStyle{});
namespace fingerturn {

/// Bars to work at by themselves: neighbours that ask most, four at most (docs/rules.md, 6.4).
struct AskingStretch {
  BarRange bars;
  std::vector<BarRange> again;  ///< later bars with the same music, rising
  BarDemand asks;               ///< of all its bars; `bar` is the first of them
  std::size_t most_points = 0;  ///< of the one of its bars that asks most

  friend bool operator==(const AskingStretch&, const AskingStretch&) = default;
};

/// The stretches of a passage that ask most, of the bars that it shows: first the one with the bar
/// that asks most; of equal ones the one that asks more as a whole, then the earlier.
std::vector<AskingStretch> asking_stretches(const AnalysedPassage& passage);

/// What is practised, in the order in which it is.
enum class PracticeStepKind : std::uint8_t {
  note_by_note,
  cells,
  full_swings,
  smaller_swings,
  rhythms,
  hands_together,
  joining
};

/// A few notes cut out of the piece, or put into another rhythm.
struct PracticeMusic {
  std::string words;                ///< what they are: "double", "long-short", "beat 2"
  std::vector<std::size_t> events;  ///< of one hand alone: places in Line::events of the piece
  std::size_t lesson = 0;           ///< of a cell: the place of the event that it is about
  std::size_t times = 1;            ///< how often the same comes in the place
  Passage music;
  std::vector<ChangedTurn> changed;  ///< notes that turn otherwise than in the piece
};

/// A tempo to practise at.
struct TempoStep {
  double quarters_per_minute = 0;
  double swing_size = 1;  ///< the share of a full swing that there is time for, above 0 to 1

  friend bool operator==(const TempoStep&, const TempoStep&) = default;
};

struct PracticeStep {
  PracticeStepKind kind = PracticeStepKind::note_by_note;
  std::vector<PracticeMusic> music;
  std::vector<TempoStep> tempos;  ///< rising
};

/// What became of a place since an earlier plan.
struct PlaceProgress {
  bool is_new = true;
  bool was_done = false;                     ///< the player has marked it
  bool is_reached = false;                   ///< done at the last of its tempos
  std::vector<std::string> changed_fingers;  ///< "C5 in bar 3: 4, before 5"
};

/// A place to work at.
struct PlannedPlace {
  std::size_t passage = 0;  ///< its place in the score
  AskingStretch stretch;
  std::vector<Hand> hands;  ///< those that ask something by themselves, or else all that play
  std::size_t notes = 0;    ///< struck events of these hands
  /// The fastest tempo, in quarters a minute, at which all its swings can be full, where known.
  std::optional<double> full_swing_tempo;
  std::optional<double> goal;  ///< the tempo to reach, where known
  std::vector<PracticeStep> steps;
  /// All tempos of its steps, rising, and the number of the one for now.
  std::vector<TempoStep> ladder;
  std::size_t now = 0;
  std::optional<int> minutes;
  std::optional<PlaceProgress> progress;  ///< where there was an earlier plan
};

struct PracticePlan {
  std::vector<PlannedPlace> places;    ///< in the order in which to work at them
  std::vector<PlannedPlace> left_out;  ///< for want of time or room: only where they lie
  std::optional<int> minutes;          ///< that were to be shared
  int rest_minutes = 0;                ///< of these, to rest
  std::vector<std::string> settled;    ///< what an earlier plan had and this one has no more
};

/// A place of an earlier plan, as its JSON document tells it.
struct RememberedPlace {
  std::size_t passage = 0;
  BarRange bars;
  std::vector<std::string> notes;    ///< "R C4", a hand and a pitch for each note that is struck
  std::vector<std::string> fingers;  ///< "4", "4>1" or "?", one for each of these
  double tempo_now = 0;              ///< in quarters a minute; 0 where none was given
  bool done = false;
};

/// The notes that are struck in some bars and their fingers; else as it is made.
RememberedPlace remembered_place(const Passage& passage, BarRange bars);

struct PracticeMemory {
  std::vector<RememberedPlace> places;
};

/// An earlier plan, or why there is none.
struct PracticeMemoryResult {
  PracticeMemory memory;
  std::string problem;  ///< "3:14: expected ...", for a person, one line; else empty

  [[nodiscard]] bool ok() const noexcept { return problem.empty(); }
};

/// Reads what `write_practice_json` wrote, and a person may have edited: of each place where it
/// lies, its notes and fingers, the tempo of `now`, and whether it is `done`. Any bytes may come
/// in; more than kLargestNotation are refused.
PracticeMemoryResult read_practice(const Source& source);

struct PracticeOptions {
  std::size_t top = 5;                        ///< the most places
  std::optional<int> minutes = std::nullopt;  ///< to share among them
  const PracticeMemory* since = nullptr;      ///< an earlier plan, or none
};

/// Minutes that can be shared.
inline constexpr int kMostPracticeMinutes = 600;

/// Any score is taken. Where fingers are missing, what asks most may be there.
PracticePlan plan_practice(const AnalysedScore& analysed, const PracticeOptions& options = {});

/// The plan to lay on the music stand.
std::string write_practice_text(const AnalysedScore& analysed, const PracticePlan& plan,
                                const TextStyle& style);
/// The same to keep, in Markdown, and as a page with the music of each place.
std::string write_practice_markdown(const AnalysedScore& analysed, const PracticePlan& plan);
std::string write_practice_html(const AnalysedScore& analysed, const PracticePlan& plan);
/// One JSON document, described by docs/practice.schema.json, which `read_practice` reads.
std::string write_practice_json(const AnalysedScore& analysed, const PracticePlan& plan);
/// Everything to be played, each as a passage in the notation. Their titles say place and step, and
/// comments which notes turn otherwise than in the piece. Nothing where there is nothing to play.
std::string write_practice_passages(const AnalysedScore& analysed, const PracticePlan& plan);
/// The same as one MusicXML score, one after the other, in bars counted from 1 with words above;
/// empty where there is nothing to play, or not all note values are known.
std::string write_practice_musicxml(const AnalysedScore& analysed, const PracticePlan& plan);

}  // namespace fingerturn
