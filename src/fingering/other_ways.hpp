#pragma once

#include "fingering/costs.hpp"
#include "fingering/paths.hpp"
#include "fingerturn/score.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace fingerturn {

/// A way to finger a line that differs from the first one where it matters.
struct OtherWay {
  Path path;
  std::string apart;  ///< what sets it apart: "thumb on G4 instead of F4, bar 2"
};

/// Ways that are told beside the first: the easiest with another finger somewhere, the easiest
/// first. Any two of them, and each and the first, differ in more than one stroke or pass the thumb
/// elsewhere; in a line of one or two strokes another finger is enough. The same change in another
/// place of a group that comes again is left out. Only so many are looked at for each that is
/// wanted, so that there may be fewer.
std::vector<OtherWay> other_ways(const Line& line, const LineCosts& costs, const Path& first,
                                 std::span<const std::size_t> first_places, std::size_t most);

}  // namespace fingerturn
