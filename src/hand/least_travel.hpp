#pragma once

#include <optional>
#include <span>
#include <vector>

namespace fingerturn {

/// The places that one strike leaves to the hand, in quarters of a white key, and those where its
/// outer fingers are at home. A tie between places goes to the lower, so they are counted the same
/// way in either hand: toward the fifth finger, or into the keys.
struct Allowed {
  bool known = false;  ///< false where a finger is missing: any place will do
  int low = 0;
  int high = 0;
  int home_low = 0;
  int home_high = 0;  ///< the same as `home_low` where one finger strikes
};

/// Leaves only the places that one more finger allows as well, whose home is `home`.
void narrow(Allowed& allowed, int low, int high, int home) noexcept;

/// Where the fingers leave no place at all, takes the middle of the gap: the hand is as far from
/// the one as from the other.
void close_gap(Allowed& allowed) noexcept;

/// The path through the places allowed that travels least and, of all such paths, keeps nearest to
/// where the fingers are at home: the sum of the distances from the homes is the least. There is
/// one place for each strike; with a finger missing it is that of a neighbour. `from` is where the
/// hand is before them; where it is not known, the path may begin anywhere.
///
/// It takes time in proportion to the strikes, and to how far their places lie apart.
std::vector<int> least_travel(std::span<const Allowed> strikes,
                              std::optional<int> from = std::nullopt);

}  // namespace fingerturn
