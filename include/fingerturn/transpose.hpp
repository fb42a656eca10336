#pragma once

#include "fingerturn/pitch.hpp"
#include "fingerturn/score.hpp"

#include <optional>
#include <string>
#include <string_view>

/// Music in another key, spelled as a musician would, with the fingers that it has.
///
///     const TranspositionResult up = parse_transposition("up a minor third");
///     const Transposed music = transpose(read.score, *up.value);
namespace fingerturn {

/// How far music is moved: so many letters and so many semitones, both above 0 upward. A minor
/// third up is 2 letters and 3 semitones.
struct Interval {
  int letters = 0;
  int semitones = 0;

  friend bool operator==(const Interval&, const Interval&) = default;
};

/// What is asked for; exactly one of them.
struct Transposition {
  std::optional<Interval> interval{};
  /// So many semitones, spelled in the key with the fewest signs.
  std::optional<int> semitones{};
  /// To the key on this note, whatever its octave, by the shorter way; of two equal ones upward.
  std::optional<Pitch> tonic{};
};

struct TranspositionResult {
  std::optional<Transposition> value;
  std::string problem;  ///< what was expected and found, one line, where there is no value
};

/// Reads "up a minor third", "down an octave", "up 3 semitones", "-2", "to E-flat". An interval is
/// of two octaves at most. Any bytes may come in.
TranspositionResult parse_transposition(std::string_view text);

/// A score in another key, or why there is none.
struct Transposed {
  Score score;
  std::string problem;  ///< for a person, one line; else empty
};

/// Moves each passage. Its title says so, and a remark in it where fingers put thumbs on black keys
/// that were on white ones. A key of more than seven signs is spelled as its other name, and so is
/// a note that would have more than two. Music that would leave the piano is refused, and a way to
/// a key where no key signature is written.
Transposed transpose(const Score& score, const Transposition& by);

/// The score in all twelve keys, from five semitones below to six above, a passage for each.
Transposed in_all_keys(const Score& score);

/// "up a minor third", "down 2 semitones" where it has no name.
std::string to_string(const Interval& interval);

}  // namespace fingerturn
