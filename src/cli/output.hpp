#pragma once

#include <cstdio>
#include <string>
#include <string_view>
#include <vector>

namespace fingerturn::cli {

/// Where results go: standard output, or a file that appears whole or not at all. The file is
/// written under another name beside its place and renamed when it is complete.
class Output {
 public:
  /// An empty path is standard output.
  explicit Output(std::string path);
  ~Output();
  Output(const Output&) = delete;
  Output& operator=(const Output&) = delete;

  /// Opens it; false, and a message, where it cannot be written or would overwrite an input.
  bool open(const std::vector<std::string>& inputs);
  void write(std::string_view text);
  /// Puts the file in its place; false, and a message, where anything went wrong since `open`.
  bool finish();

 private:
  bool fail(std::string_view what, int error_number);
  bool open_beside();

  std::string path_;
  std::string temporary_;  ///< the name it has until it is complete; empty where it has none
  std::FILE* file_ = nullptr;
  int error_number_ = 0;
};

}  // namespace fingerturn::cli
