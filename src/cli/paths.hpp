#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace fingerturn::cli {

/// A file to go through, or a path that led to none.
struct LibraryFile {
  std::string path;
  std::string problem;  ///< why it cannot be read, where that is known already; else empty
};

/// The endings of names, such as ".passage", by which passages and scores in folders are known.
std::span<const std::string_view> known_endings() noexcept;

/// The files that paths lead to, in the order of the paths. A folder stands for the files with a
/// known ending in it and in its folders, in the order of their names; what is hidden and folders
/// behind links are passed over. Says so where a folder holds no such file.
std::vector<LibraryFile> files_of(std::vector<std::string> paths);

/// The paths in a list, one a line, from a file or from standard input where it is "-". Says so and
/// gives nothing where the list cannot be read.
std::optional<std::vector<std::string>> paths_in_list(const std::string& list);

}  // namespace fingerturn::cli
