#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string_view>

namespace fingerturn::cli {

/// A line on the terminal that says how far the work is. It is rubbed out before anything else is
/// written there, and when the work ends. Where messages go to no terminal it does nothing.
class Progress {
 public:
  Progress(std::size_t files, bool wanted);
  ~Progress();
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  /// Says that `done` files are done, the last of them this one; several times a second at most.
  void show(std::size_t done, std::string_view name);
  void rub_out();

 private:
  std::size_t files_;
  std::optional<int> columns_;  ///< none where nothing is shown
  bool shown_ = false;
  std::chrono::steady_clock::time_point last_{};
};

}  // namespace fingerturn::cli
