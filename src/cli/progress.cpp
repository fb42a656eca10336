#include "cli/progress.hpp"

#include "cli/input.hpp"
#include "cli/messages.hpp"
#include "cli/terminal.hpp"
#include "text/cells.hpp"
#include "text/utf8.hpp"

#include <algorithm>
#include <exception>
#include <system_error>
#include <utility>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

constexpr std::chrono::milliseconds kPatience{500};
constexpr std::chrono::milliseconds kBetween{100};

/// "etude.passage, 3 s", as much of the words as fits into a line, the last column left free so
/// that it never wraps.
std::string line_of(const std::string& words, std::chrono::seconds worked, int columns) {
  const std::string time = worked.count() == 0 ? "" : fmt::format(", {} s", worked.count());
  const int room = std::max(columns - 1 - static_cast<int>(time.size()), 0);
  return std::string(first_cells(words, static_cast<std::size_t>(room))) + time;
}

}  // namespace

Progress::Progress(bool wanted) : columns_(wanted ? message_columns() : std::nullopt) {
  if (!columns_) return;
  try {
    ticking_ = std::jthread([this](const std::stop_token& stop) { tick(stop); });
  } catch (const std::system_error&) {
    columns_.reset();  // the system gives no thread for it
  }
}

Progress::~Progress() { rub_out(); }

void Progress::turn_to(std::string words) {
  const std::lock_guard lock(mutex_);
  words_ = std::move(words);
}

void Progress::turn_to(std::size_t number, std::size_t inputs, std::string_view path) {
  const std::string name = printable(input_name(std::string(path)));
  turn_to(inputs == 1 ? name : fmt::format("{} of {} files: {}", number, inputs, name));
}

void Progress::show() {
  const std::lock_guard lock(mutex_);
  if (!columns_ || is_shown_) return;
  is_shown_ = true;
  since_ = Clock::now();
  // At once, so that between short pieces of a long work it is not away for most of the time.
  if (before_ >= kPatience) draw();
}

void Progress::rub_out() {
  const std::lock_guard lock(mutex_);
  if (!is_shown_) return;
  before_ = worked();
  is_shown_ = false;
  if (!drawn_.empty()) say_text("\r\x1B[K");
  drawn_.clear();
}

Progress::Clock::duration Progress::worked() const { return before_ + (Clock::now() - since_); }

void Progress::draw() {
  std::string text =
      line_of(words_, std::chrono::duration_cast<std::chrono::seconds>(worked()), *columns_);
  if (text == drawn_) return;
  say_text("\r" + text + "\x1B[K");
  drawn_ = std::move(text);
}

void Progress::tick(const std::stop_token& stop) {
  std::unique_lock lock(mutex_);
  try {
    while (!stop.stop_requested()) {
      ended_.wait_for(lock, stop, kBetween, [] { return false; });
      if (is_shown_ && worked() >= kPatience) draw();
    }
  } catch (const std::exception&) {
    // Without memory for the line the work goes on without it.
  }
}

bool leaves_room_for_progress(const std::string& output) noexcept {
  return (!output.empty() && output != "-") || !writes_to_pipe();
}

}  // namespace fingerturn::cli
