#include "views/missing_share.hpp"

#include <fmt/core.h>

namespace fingerturn {

std::string missing_share_words(std::size_t missing, std::size_t events) {
  constexpr std::size_t kPercent = 100;
  return fmt::format("Fingers are missing at {} of {} events of this hand ({} %), first here.",
                     missing, events, missing * kPercent / events);
}

}  // namespace fingerturn
