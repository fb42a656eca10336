#pragma once

#include "read/musicxml/written_note.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

namespace fingerturn {

/// How many of a voice's moments stand on the staves of each hand; a chord on both counts for both.
using MomentsByHand = std::array<std::uint32_t, 2>;

/// The hand with more moments; none where both have as many.
std::optional<Hand> hand_with_most(const MomentsByHand& moments);

/// The stretches of a part's voices in which a voice stays with its hand when it visits the other
/// staff: the notes under one beam or one slur, and where there is no beam those of one beat.
struct BeatGroups {
  std::vector<std::size_t> of_note;  ///< the group of each note, as its place in `groups`
  std::vector<MomentsByHand> groups;
};
BeatGroups beat_groups(const WrittenPart& part,
                       const std::function<Hand(const WrittenNote&)>& hand_of_staff);

}  // namespace fingerturn
