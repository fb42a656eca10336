#include "cli/terminal.hpp"

#include <cstdlib>
#include <string_view>

#include <sys/ioctl.h>
#include <sys/stat.h>
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

int columns_of(int descriptor) noexcept {
  winsize size{};
  if (::ioctl(descriptor, TIOCGWINSZ, &size) != 0 || size.ws_col == 0) return kDefaultColumns;
  return size.ws_col;
}

}  // namespace

int terminal_columns() noexcept { return columns_of(STDOUT_FILENO); }

bool writes_to_terminal() noexcept { return ::isatty(STDOUT_FILENO) == 1; }

bool reads_from_terminal() noexcept { return ::isatty(STDIN_FILENO) == 1; }

bool writes_to_pipe() noexcept {
  struct stat status {};
  return ::fstat(STDOUT_FILENO, &status) == 0 &&
         (S_ISFIFO(status.st_mode) || S_ISSOCK(status.st_mode));
}

std::optional<int> message_columns() noexcept {
  if (::isatty(STDERR_FILENO) != 1 || is_dumb()) return std::nullopt;
  return columns_of(STDERR_FILENO);
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
  return writes_to_terminal() && !is_set("NO_COLOR") && !is_dumb();
}

}  // namespace fingerturn::cli
