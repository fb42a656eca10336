#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace fingerturn::cli {

/// A file that is read line by line, however long it is.
class InputLines {
 public:
  /// Standard input where the path is "-".
  explicit InputLines(const std::string& path);
  ~InputLines();
  InputLines(const InputLines&) = delete;
  InputLines& operator=(const InputLines&) = delete;

  /// The next line without its end, which holds until the next call; none after the last, or where
  /// the file cannot be read.
  std::optional<std::string_view> next();
  /// The number of the line that came last, from 1.
  [[nodiscard]] std::size_t number() const noexcept { return number_; }
  /// What the system says where the file could not be opened or read to its end; else empty.
  [[nodiscard]] const std::string& problem() const noexcept { return problem_; }

 private:
  struct File;
  std::unique_ptr<File> file_;
  std::size_t number_ = 0;
  std::string problem_;
};

}  // namespace fingerturn::cli
