#pragma once

#include <string_view>

namespace fingerturn {

/// The name of a file without its folders and without the ending of the files that are read: what
/// music without a title is called. Titles never show a path.
///
///     name_without_path("etudes/no-1.musicxml")   // "no-1"
std::string_view name_without_path(std::string_view name) noexcept;

}  // namespace fingerturn
