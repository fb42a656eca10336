#pragma once

#include "fingerturn/compare.hpp"

#include <string>
#include <string_view>

namespace fingerturn {

/// What a fingering or a comparison is called on a page: a title as it was written, a file without
/// its folders.
std::string_view shown_name(std::string_view name, const AnalysedPassage& passage) noexcept;
std::string_view title_of(const Comparison& comparison) noexcept;

}  // namespace fingerturn
