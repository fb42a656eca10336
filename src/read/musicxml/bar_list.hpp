#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace fingerturn {

/// Bars in words, in their order and each once: "bar 3", "bars 3, 5 to 8 and 12". Of very many the
/// first ones, then how many more there are: "bars 1, 3, 5 and 20 more".
std::string bar_list(std::vector<std::int32_t> bars);

}  // namespace fingerturn
