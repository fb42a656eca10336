#pragma once

#include <cstdio>
#include <memory>
#include <string>

namespace fingerturn::cli {

struct CloseFile {
  void operator()(std::FILE* file) const noexcept {
    if (file != stdin) std::fclose(file);
  }
};
using OpenFile = std::unique_ptr<std::FILE, CloseFile>;

/// A file, or standard input where the path is "-"; null where it cannot be opened, and errno says
/// why.
inline OpenFile open_input(const std::string& path) {
  return OpenFile(path == "-" ? stdin : std::fopen(path.c_str(), "rb"));
}

}  // namespace fingerturn::cli
