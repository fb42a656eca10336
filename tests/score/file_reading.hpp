#pragma once

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <vector>

/// Files that tests read: cases, the sources themselves.
namespace fingerturn::tests {

inline std::string text_of_file(const std::filesystem::path& path) {
  std::ifstream stream(path, std::ios::binary);
  if (!stream) throw std::runtime_error("cannot read " + path.string());
  return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
}

/// All files below a folder that end so, in the order of their names.
inline std::vector<std::filesystem::path> files_below(const std::filesystem::path& folder,
                                                      const std::string& extension) {
  std::vector<std::filesystem::path> found;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (entry.path().extension() == extension) found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  return found;
}

/// The folder of real scores, where there is one: named by the environment, else beside the
/// checkout.
inline std::filesystem::path corpus_folder() {
  const char* named = std::getenv("FINGERTURN_CORPUS");
  return named != nullptr ? std::filesystem::path(named)
                          : std::filesystem::path(FINGERTURN_SOURCE_DIR) / "../shared/corpus";
}

}  // namespace fingerturn::tests
