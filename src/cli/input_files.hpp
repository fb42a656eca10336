#pragma once

#include <cstdint>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace fingerturn::cli {

/// The files that a run reads, as the system knows them, whatever they are called.
class InputFiles {
 public:
  InputFiles() = default;
  /// "-" is standard input, which may be a file as well; what is not there is left out.
  explicit InputFiles(const std::vector<std::string>& paths);

  /// Whether a path leads to one of them.
  [[nodiscard]] bool have(const std::string& path) const;

 private:
  std::set<std::pair<std::uint64_t, std::uint64_t>> numbers_;  ///< of its device and within it
};

}  // namespace fingerturn::cli
