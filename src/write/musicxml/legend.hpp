#pragma once

#include <string>
#include <string_view>

namespace fingerturn {

/// The credit at the foot of the first page that holds the legend, whose lines end with line feeds:
/// there it takes no room in the music.
std::string legend_credit(std::string_view legend);

}  // namespace fingerturn
