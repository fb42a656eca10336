#pragma once

#include <string_view>

namespace fingerturn {

/// The rules for the classes of the pictures, for a light and a dark page.
std::string_view picture_style() noexcept;

}  // namespace fingerturn
