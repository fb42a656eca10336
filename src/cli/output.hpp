#pragma once

#include <cstdio>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace fingerturn::cli {

/// Where results go: standard output, or a file that appears whole or not at all. What goes into
/// a file is kept until it is complete, then written under another name beside its place, brought
/// to the disk and renamed; so a run that is ended from outside leaves nothing behind. What is kept
/// lies in memory as long as it is small, then in a file without a name.
class Output {
 public:
  /// An empty path, or "-", is standard output.
  explicit Output(std::string path);
  ~Output() = default;
  Output(const Output&) = delete;
  Output& operator=(const Output&) = delete;

  /// Opens it; false, and a message, where it cannot be written or would overwrite an input.
  bool open(const std::vector<std::string>& inputs);
  void write(std::string_view text);
  /// Puts the file in its place; false, and a message, where anything went wrong since `open`.
  bool finish();

 private:
  bool fail(std::string_view what, int error_number);
  void keep(std::string_view text);
  bool flush();
  bool put_in_place();

  std::string path_;
  std::string kept_;  ///< the end of what is written so far, where it goes into a file
  std::unique_ptr<std::FILE, int (*)(std::FILE*)> begun_{nullptr, std::fclose};  ///< what precedes
  std::FILE* file_ = nullptr;  ///< null while what is written is kept
  int error_number_ = 0;
};

}  // namespace fingerturn::cli
