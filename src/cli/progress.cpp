#include "cli/progress.hpp"

#include "cli/messages.hpp"
#include "cli/terminal.hpp"
#include "text/cells.hpp"
#include "text/utf8.hpp"

#include <algorithm>
#include <string>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

/// As much of the text as fits into a line, the last column left free so that it never wraps.
std::string cut(const std::string& text, int columns) {
  return std::string(first_cells(text, static_cast<std::size_t>(std::max(columns - 1, 0))));
}

}  // namespace

Progress::Progress(std::size_t files, bool wanted)
    : files_(files), columns_(wanted && files > 1 ? message_columns() : std::nullopt) {}

Progress::~Progress() { rub_out(); }

void Progress::show(std::size_t done, std::string_view name) {
  constexpr std::chrono::milliseconds kBetween{100};
  const auto now = std::chrono::steady_clock::now();
  if (!columns_ || now - last_ < kBetween) return;
  last_ = now;
  const std::string text = fmt::format("{} of {} files: {}", done, files_, printable(name));
  say_text("\r" + cut(text, *columns_) + "\x1B[K");
  shown_ = true;
}

void Progress::rub_out() {
  if (!shown_) return;
  say_text("\r\x1B[K");
  shown_ = false;
}

}  // namespace fingerturn::cli
