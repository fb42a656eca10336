#pragma once

#include <optional>
#include <span>
#include <vector>

namespace fingerturn {

/// The places from `low` to `high` that one strike leaves to the hand, in quarters of a white key.
struct Allowed {
  bool known = false;  ///< false where a finger is missing: any place will do
  bool opens = false;  ///< a rest, breath or skipped bar before it frees the hand
  int low = 0;
  int high = 0;
  int unmoved = 0;  ///< where the hand would be if nothing else were played
};

/// Leaves only the places that one more finger allows as well.
void narrow(Allowed& allowed, int low, int high) noexcept;

/// Where the fingers leave no place at all, takes the middle of the gap: the hand is as far from
/// the one as from the other.
void close_gap(Allowed& allowed) noexcept;

/// The path through the places allowed that travels least and, of all such paths, moves least
/// often: the hand stays while it can, and goes no further than it must. Its first place is
/// chosen with regard to what follows up to the first rest; where no move is needed up to there,
/// the hand begins unmoved. There is one place for each strike; with a finger missing it is that of
/// a neighbour. A line may be given in parts that begin at rests, each with the place `from` where
/// the part before it has left the hand, if it has one.
std::vector<int> least_travel(std::span<const Allowed> strikes,
                              std::optional<int> from = std::nullopt);

}  // namespace fingerturn
