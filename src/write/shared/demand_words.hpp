#pragma once

#include "fingerturn/places.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace fingerturn {

/// "1 passing", "2 passings".
std::string counted(std::size_t count, std::string_view one, std::string_view many);

/// Adds what is counted, unless there is none.
void add_counted(std::vector<std::string>& parts, std::size_t count, std::string_view one,
                 std::string_view many);

/// Whether it is said what a part comes to, where that is not its number: "2 leaps for 4".
enum class DemandWorth : std::uint8_t { told, left_out };

/// What is asked, in words: "4 doubles in rows", "1 passing".
std::vector<std::string> demand_parts(const BarDemand& demand, DemandWorth worth);

}  // namespace fingerturn
