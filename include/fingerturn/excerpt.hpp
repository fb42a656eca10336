#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/score.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// Some bars out of a score, to be worked on by themselves. All turns stay what they were but for
/// those of notes that lose what came before them or what follows; these are named.
///
///     const Excerpt part = excerpt(read.score, {5, 8});
///     std::cout << write_excerpt(read.score, part);
namespace fingerturn {

/// A note that turns in the excerpt otherwise than in the score.
struct ChangedTurn {
  Hand hand = Hand::right;
  EventAnalysis here;              ///< in the excerpt
  std::size_t event_in_score = 0;  ///< its place in Line::events there
  /// In the score; none where it is only held there.
  std::optional<EventAnalysis> in_score;
  /// The event of the score, by its place in Line::events, after which it is played; none where it
  /// begins a gesture there too.
  std::optional<std::size_t> after;
};

struct PassageExcerpt {
  std::size_t of = 0;                ///< the place of its passage in the score
  std::vector<ChangedTurn> changed;  ///< hand by hand in the order of time
};

struct Excerpt {
  /// The passages that play something in the bars. Their titles tell the bars: "Etude, bars 5 to
  /// 8".
  Score score;
  std::vector<PassageExcerpt> passages;  ///< one for each passage of `score`
};

/// Cuts these bars out of a score, as `only_bars` does; without any passage where nothing is played
/// in them.
Excerpt excerpt(const Score& score, BarRange bars);

/// The excerpt of a score in the passage notation, with a comment for each turn that changes:
///
///     # In the score C5:5 at the beginning of bar 5 is single, turning right, prepared by B4:4 in
///     # bar 4. Here it is preparatory, swinging left and turning right.
std::string write_excerpt(const Score& score, const Excerpt& excerpt);

}  // namespace fingerturn
