#pragma once

#include "fingering/grips.hpp"
#include "fingerturn/score.hpp"

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace fingerturn {

/// A group of grips that comes again: what begins at `begin` is what began at `from`.
struct GroupAgain {
  std::size_t begin = 0;
  std::size_t from = 0;
  std::size_t length = 0;
};

/// The groups of a line that bring again, in the same rhythm, the steps and key colours of an
/// earlier one; they need not lie on the same keys. Each begins on a beat. Rising and apart.
std::vector<GroupAgain> groups_again(const Line& line, const std::vector<Grip>& grips);

/// For each grip of a line the one that it is where its group came first; empty where no group
/// comes again.
std::vector<std::size_t> first_places(const std::vector<GroupAgain>& groups, std::size_t grips);

/// Sets GripKey::printed of what has no finger where the same key of the group has one elsewhere,
/// always the same.
void mark_printed(const std::vector<std::size_t>& first, std::vector<Grip>& grips);

/// The fingers that were found on the keys of a grip; 0 where none was.
using FoundFingers = std::array<Finger, kMostKeys>;

/// Sets GripKey::again wherever a group comes to the finger that was found in most of its places,
/// of several to the one found first.
void mark_again(const std::vector<std::size_t>& first, std::span<const FoundFingers> found,
                std::vector<Grip>& grips);

}  // namespace fingerturn
