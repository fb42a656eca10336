#include "cli/streams.hpp"

#include <cerrno>
#include <csignal>
#include <initializer_list>

#include <fcntl.h>
#include <unistd.h>

namespace fingerturn::cli {
namespace {

bool is_closed(int descriptor) noexcept {
  return ::fcntl(descriptor, F_GETFD) < 0 && errno == EBADF;
}

}  // namespace

void prepare_streams() noexcept {
  // In this order each gets the lowest number that is free, its own. None is open the way it is
  // used, so that reading or writing it fails as it would without a file.
  for (const int descriptor : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
    const int mode = descriptor == STDIN_FILENO ? O_WRONLY : O_RDONLY;
    if (is_closed(descriptor)) static_cast<void>(::open("/dev/null", mode));
  }
  static_cast<void>(std::signal(SIGXFSZ, SIG_IGN));
}

}  // namespace fingerturn::cli
