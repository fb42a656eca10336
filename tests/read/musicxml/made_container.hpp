#pragma once

#include <string>
#include <utility>
#include <vector>

/// Containers as those of packed scores, made with the zip library.
namespace fingerturn::tests {

/// The names of files and what is in them.
using PackedFiles = std::vector<std::pair<std::string, std::string>>;

/// A zip file of these files. Throws where the library or the disk fails.
std::string packed(const PackedFiles& files);

}  // namespace fingerturn::tests
