#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace fingerturn {

/// The rule that finds rows of missing fingers (docs/rules.md, 2.8).
inline constexpr std::string_view kMissingFinger = "missing-finger";

/// "Fingers are missing at 5 of 8 events of this hand (62 %), first here."
std::string missing_share_words(std::size_t missing, std::size_t events);

}  // namespace fingerturn
