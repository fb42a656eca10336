#pragma once

#include "cli/exit_status.hpp"
#include "cli/input_files.hpp"
#include "cli/new_file.hpp"
#include "cli/progress.hpp"
#include "fingerturn/report.hpp"

#include <cstdio>
#include <memory>
#include <string>
#include <string_view>

namespace fingerturn::cli {

/// Where results go as they are made: standard output, or a file that appears whole or not at all.
class Output {
 public:
  /// An empty path, or "-", is standard output.
  explicit Output(std::string path);

  /// Empty for standard output.
  [[nodiscard]] const std::string& path() const noexcept { return path_; }
  /// Whether it is none of the inputs; says so where it is.
  [[nodiscard]] bool spares(const InputFiles& inputs) const;
  /// Opens it; false, and a message, where it cannot be written or would overwrite an input.
  bool open(const InputFiles& inputs);
  void write(std::string_view text);
  /// Writes what it is given, for as long as this output lives where it is; where that goes to the
  /// terminal, the line of progress leaves it first.
  [[nodiscard]] TextSink sink(Progress& progress);

  /// How much has been written; what comes after it can be taken back, but not from standard output
  /// or a device: false there.
  [[nodiscard]] long size() const noexcept { return size_; }
  bool cut_to(long size);

  /// Puts the file in its place; false, and a message, where anything went wrong since `open`.
  bool finish();

 private:
  bool fail(std::string_view what, int error_number) const;
  bool open_file();
  bool flush();

  std::string path_;
  std::unique_ptr<NewFile> new_file_;  ///< none for standard output and devices
  std::FILE* stream_ = nullptr;
  long size_ = 0;
  int error_number_ = 0;  ///< of the first write that failed
};

/// A text that is there whole, to its place.
ExitStatus write_whole(const std::string& path, std::string_view text,
                       const InputFiles& inputs = {});

}  // namespace fingerturn::cli
