#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

/// Containers as those of packed scores, made with the zip library.
namespace fingerturn::tests {

/// The names of files and what is in them.
using PackedFiles = std::vector<std::pair<std::string, std::string>>;

/// A zip file of these files. Throws std::runtime_error where the library fails.
std::string packed(const PackedFiles& files);

/// The same zip file with its end so many times, each as good as the others.
std::string with_ends(const std::string& container, std::size_t count);

}  // namespace fingerturn::tests
