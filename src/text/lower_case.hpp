#pragma once

#include <string>
#include <string_view>

namespace fingerturn {

/// The text with the letters A to Z in lower case.
std::string lower_case(std::string_view text);

}  // namespace fingerturn
