#include "cli/terminal.hpp"

#include <cstdlib>
#include <string_view>

#include <sys/ioctl.h>
#include <unistd.h>

namespace fingerturn::cli {
namespace {

constexpr int kDefaultColumns = 80;

bool is_set(const char* name) noexcept {
  const char* value = std::getenv(name);
  return value != nullptr && *value != '\0';
}

bool is_dumb() noexcept {
  const char* terminal = std::getenv("TERM");
  return terminal != nullptr && std::string_view(terminal) == "dumb";
}

}  // namespace

int terminal_columns() noexcept {
  winsize size{};
  if (::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 || size.ws_col == 0) return kDefaultColumns;
  return size.ws_col;
}

bool wants_colour(Colour colour) noexcept {
  switch (colour) {
    case Colour::always:
      return true;
    case Colour::never:
      return false;
    case Colour::automatic:
      break;
  }
  return ::isatty(STDOUT_FILENO) == 1 && !is_set("NO_COLOR") && !is_dumb();
}

}  // namespace fingerturn::cli
