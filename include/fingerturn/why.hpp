#pragma once

#include "fingerturn/fingering.hpp"
#include "fingerturn/score.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

/// What decided between the fingers of a moment and others that could have been there.
///
///     for (const WhyFingers& why : why_fingers(read.score, {.bar = 3, .beat = 2.5})) {
///       std::cout << write_why_text(why, 80);
///     }
namespace fingerturn {

/// How much more (above 0) or less (below 0) of a term, in difficulty, there is with other fingers.
struct TermDifference {
  std::string_view id;
  std::string_view counts;  ///< what it counts, in words
  double harder = 0;
};

/// Other fingers for a moment, with the easiest fingers for all the rest of the line.
struct OtherFingers {
  std::vector<Finger> fingers;  ///< one for each note, the lowest first
  double harder = 0;            ///< than the fingers taken; below 0 where given ones are harder
  std::vector<TermDifference> terms;  ///< they add up to it; the largest first
};

/// The fingers of one hand at a moment.
struct WhyFingers {
  std::size_t passage = 0;  ///< its place in the score
  std::string title;        ///< of the passage
  Hand hand = Hand::right;
  std::int32_t bar = 1;
  std::string beat;                  ///< as reports write it: "2.5"
  std::vector<Pitch> pitches;        ///< of the struck notes, the lowest first
  std::vector<Finger> fingers;       ///< that are taken, one for each
  bool all_given = false;            ///< they stand in the music; what others would ask is told
  std::vector<OtherFingers> others;  ///< the easiest first, at most kMostOthers
};
inline constexpr std::size_t kMostOthers = 4;

/// For each hand that strikes something at a moment, in each passage, what decided there; empty
/// where nothing is struck, or where no meter or no time tells the beats. A grace note shares its
/// moment with the note that it leads to, which is meant.
std::vector<WhyFingers> why_fingers(const Score& score, const BeatInBar& moment,
                                    const FingeringOptions& options = {});

/// As lines of at most so many columns, without legend and caution.
std::string write_why_text(const WhyFingers& why, int columns);
/// What the terms that are named there count.
std::string write_why_legend(const std::vector<WhyFingers>& all, int columns);
/// As a JSON document, with the caution.
std::string write_why_json(std::string_view source, const std::vector<WhyFingers>& all);

}  // namespace fingerturn
