#pragma once

#include <string_view>

namespace fingerturn {

/// The rules of an HTML page, the picture's left out.
std::string_view page_style() noexcept;

}  // namespace fingerturn
