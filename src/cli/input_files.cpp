#include "cli/input_files.hpp"

#include <sys/stat.h>
#include <unistd.h>

namespace fingerturn::cli {

InputFiles::InputFiles(const std::vector<std::string>& paths) {
  for (const std::string& path : paths) {
    struct stat status {};
    const bool found =
        path == "-" ? ::fstat(STDIN_FILENO, &status) == 0 : ::stat(path.c_str(), &status) == 0;
    // Devices, such as a terminal, may be read and written by one run.
    if (found && S_ISREG(status.st_mode)) numbers_.emplace(status.st_dev, status.st_ino);
  }
}

bool InputFiles::have(const std::string& path) const {
  struct stat status {};
  return ::stat(path.c_str(), &status) == 0 && numbers_.contains({status.st_dev, status.st_ino});
}

}  // namespace fingerturn::cli
