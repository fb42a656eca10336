#pragma once

#include "fingerturn/analysed.hpp"
#include "fingerturn/score.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Completes missing fingers. What is given stays, unless it is probably meant for another note of
/// its chord; what is added is the easiest that a model of difficulty finds (docs/fingering.md),
/// and is marked as a suggestion. It is one way to play, not the right one.
///
///     Score complete = with_suggestions(read.score);
///     Analysis analysis = analyse(complete);
namespace fingerturn {

/// The most fingerings of a line that can be asked for.
inline constexpr std::size_t kMostFingerings = 20;

/// Two fingers, from 1 to 5.
struct FingerPair {
  Finger one = 0;
  Finger other = 0;
};

/// What a player would rather have, where there is a choice: given fingers stay, and a wish that
/// costs more than it is worth gives way (docs/fingering.md says how much each weighs).
struct FingerWishes {
  /// Not one after the other on different keys; others than fingers of a hand are passed over.
  std::vector<FingerPair> avoid{};
  bool thumb_on_white = false;  ///< the thumb on no black key
};

struct FingeringOptions {
  std::optional<int> reach_semitones;  ///< instead of what the passages say
  std::size_t most = 1;                ///< how many fingerings, from 1 to kMostFingerings
  FingerWishes wishes{};
};

/// The widest interval, in semitones, that a small hand takes comfortably with 1-5: an octave it
/// can just reach. Our convention.
inline constexpr int kSmallHandReach = 10;

/// The fingers that are added to a line.
struct LineFingering {
  /// For each note of the line, event by event and the lowest first, the finger that is added; 0
  /// where one is given, where the key is merely held, and in a chord that no hand can take. A
  /// given finger that is probably meant for another note of its chord (docs/rules.md, 5.2) counts
  /// as none.
  std::vector<Finger> added;
  /// The mean over all strokes, given fingers included; 0 or above (docs/fingering.md).
  double difficulty = 0;
  std::size_t suggested = 0;  ///< how many notes get a finger
  /// The scales, arpeggios and parts of them that have their usual fingers throughout.
  std::vector<UsualFingers> usual{};
  /// What sets it apart from the first: "thumb on G4 instead of F4, bar 2"; empty for the first.
  std::string apart{};
};

/// For each line of a passage its easiest fingering and others that differ where it matters, in the
/// order of their difficulty: one or more, fewer than were asked for where no more are found
/// (docs/fingering.md). The first follows what is usual (figures and groups of notes that come
/// again), and may be more difficult for it than the others, for which it counts for little.
struct PassageFingerings {
  std::vector<std::vector<LineFingering>> lines;
};

/// The easiest fingerings of each passage of a score. Of equally easy ones the first is the one
/// with the lower finger where they first differ, counted from the thumb's side of a chord; the
/// further ones come in an order that is always the same.
std::vector<PassageFingerings> suggest(const Score& score, const FingeringOptions& options = {});

/// The line with the fingers of a fingering that was made for it, marked as suggestions. A given
/// finger that one takes the place of is kept as Note::set_aside.
Line with_fingering(Line line, const LineFingering& fingering);

/// The score with no finger on any note.
Score without_fingers(Score score);

/// The score without the suggestions that were read with it (`C4:2?`), but for these bars.
Score without_suggestions_outside(Score score, const BarRange& kept);

/// The score with its easiest fingering.
Score with_suggestions(Score score, const FingeringOptions& options = {});

/// The score with its missing fingers, and a remark in each passage on how hard the model finds
/// it. Where more than one fingering is asked for, a passage stands there once for each, the
/// easiest first; a hand that has no further one keeps its last. Where only some bars are to be
/// shown the rest keeps its easiest fingering, so that they are what differs.
Score with_fingerings(const Score& score, const FingeringOptions& options,
                      const std::optional<BarRange>& bars = std::nullopt);

/// How difficult the model finds a line with all its fingers, as `suggest` counts it; none where
/// the finger of a struck note is missing.
///
///     difficulty_of(read.score.passages[0].lines[0]);   // 5.57
std::optional<double> difficulty_of(const Line& line,
                                    std::optional<int> reach_semitones = std::nullopt);

/// With the difficulty of each hand, for the reach that the analysis was made for. Where the
/// analysis is of some bars, it is that of these bars by themselves.
AnalysedScore with_difficulties(AnalysedScore analysed);

/// A part of the difficulty: its name, what it counts, where that comes from, and how much one of
/// it weighs.
struct DifficultyTerm {
  std::string_view id;
  std::string_view counts;
  std::string_view source;
  double weight = 0;
};

/// All parts of the difficulty.
std::vector<DifficultyTerm> difficulty_terms();

}  // namespace fingerturn
