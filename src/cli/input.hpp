#pragma once

#include "fingerturn/source.hpp"

#include <optional>
#include <string>

namespace fingerturn::cli {

/// Reads a file, or standard input where the path is "-". Where that fails it says so on standard
/// error and gives nothing. Of an input larger than a reader takes only as much is read as shows
/// that it is.
std::optional<Source> read_input(const std::string& path);

}  // namespace fingerturn::cli
