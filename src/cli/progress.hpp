#pragma once

#include <chrono>
#include <condition_variable>
#include <cstddef>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <thread>

namespace fingerturn::cli {

/// A line on the terminal that says what is being worked at, once that has taken half a second. It
/// stands only while `during` works or between `show` and `rub_out`, where nothing else may be
/// written there. Where messages go to no terminal it does nothing.
class Progress {
 public:
  explicit Progress(bool wanted);
  ~Progress();
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  /// From now on it is about this; the line stands or not as before.
  void turn_to(std::string words);
  /// The same, of one input among several: "3 of 60 files: etude.passage".
  void turn_to(std::size_t number, std::size_t inputs, std::string_view path);

  void show();
  void rub_out();

  /// Works, and lets the line stand meanwhile. What the work writes goes by an output that knows
  /// the line, or not to the terminal.
  template <typename Work>
  auto during(const Work& work) {
    const RubOut at_end{*this};
    show();
    return work();
  }

 private:
  using Clock = std::chrono::steady_clock;

  struct RubOut {
    Progress& progress;
    explicit RubOut(Progress& of) : progress(of) {}
    RubOut(const RubOut&) = delete;
    RubOut& operator=(const RubOut&) = delete;
    ~RubOut() { progress.rub_out(); }
  };

  void tick(const std::stop_token& stop);
  void draw();
  [[nodiscard]] Clock::duration worked() const;

  std::optional<int> columns_;  ///< none where nothing is shown
  std::string words_;
  std::string drawn_;  ///< what stands on the terminal; empty for nothing
  bool is_shown_ = false;
  Clock::time_point since_{};  ///< when it was shown last
  Clock::duration before_{};   ///< how long work had gone on by then
  std::mutex mutex_;
  std::condition_variable_any ended_;
  std::jthread ticking_;
};

/// Whether the line may stand while results go to this output, empty for standard output: what goes
/// into a pipe may come to the terminal after all, by another program.
bool leaves_room_for_progress(const std::string& output) noexcept;

}  // namespace fingerturn::cli
