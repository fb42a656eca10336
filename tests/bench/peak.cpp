#include <cstdio>

#include <fcntl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

/// Runs a command with its output thrown away and prints the most memory that it held at once, in
/// KiB. It is a program of its own because what starts the command counts as well, so it must be
/// small.
///
///     fingerturn_peak COMMAND...
int main(int count, char** words) {
  if (count < 2) return 2;
  const pid_t child = ::fork();
  if (child == 0) {
    const int nowhere = ::open("/dev/null", O_WRONLY);
    ::dup2(nowhere, STDOUT_FILENO);
    ::execvp(words[1], words + 1);
    ::_exit(127);
  }
  int status = 0;
  if (child < 0 || ::waitpid(child, &status, 0) != child || status != 0) return 1;
  rusage usage{};
  if (::getrusage(RUSAGE_CHILDREN, &usage) != 0) return 1;
  std::printf("%ld\n", usage.ru_maxrss);
  return 0;
}
