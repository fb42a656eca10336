#pragma once

#include "fingerturn/fraction.hpp"
#include "fingerturn/score.hpp"
#include "fingerturn/source.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// Fingers that were worked out in a passage put back into the score that it came from.
///
///     const FingersBack back = fingers_back(score.score, edited.score);
///     if (back.problem.empty()) std::cout << write_fingers(source, score.score, back.score);
namespace fingerturn {

/// A note whose fingers are other ones afterwards.
struct FingerChange {
  Hand hand = Hand::right;
  std::int32_t bar = 0;
  std::optional<Fraction> beat;  ///< as reports count it, where known
  Pitch pitch;
  std::vector<Finger> before;  ///< the striking finger first; none where none was written
  std::vector<Finger> after;   ///< none where the passage has none any more
};

struct FingersBack {
  Score score;                        ///< with the fingers of the passage
  std::vector<FingerChange> added;    ///< on notes that had none
  std::vector<FingerChange> changed;  ///< on notes that had others, or have none any more
  std::size_t suggestions = 0;        ///< fingers marked as such in the passage, which stay out
  /// Where the notes first differ, for a person, one line; then `score` is as it was.
  std::string problem;
};

/// Puts the fingers of a passage, or of several, into the one passage of a score. Notes are matched
/// hand by hand and bar by bar: a bar of the passage must have all that the hand plays in that bar
/// of the score, at the same times where both are known.
FingersBack fingers_back(const Score& score, const Score& edited);

/// "bar 3, right hand, beat 2: 4 instead of 5 on C5"
std::string render(const FingerChange& change);

/// The text of a MusicXML score with the fingers of `after` where these differ from those of
/// `before`, which was read from it. Every other byte stays; of a chord of which one finger changes
/// all are written anew, each on its own note.
std::string write_fingers(const Source& original, const Score& before, const Score& after);

}  // namespace fingerturn
