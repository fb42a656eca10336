#include "cli/output.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <filesystem>
#include <system_error>
#include <utility>

#include "cli/messages.hpp"

namespace fingerturn::cli {
namespace {

namespace files = std::filesystem;

bool is_one_of(const std::string& path, const std::vector<std::string>& inputs) {
  for (const std::string& input : inputs) {
    std::error_code ignored;
    if (input != "-" && files::equivalent(path, input, ignored)) return true;
  }
  return false;
}

/// The permissions that a new file of this name would have, or has already.
mode_t mode_for(const std::string& path) {
  struct stat existing {};
  constexpr mode_t kPermissions = 07777;
  constexpr mode_t kReadWrite = 0666;
  if (::stat(path.c_str(), &existing) == 0) return existing.st_mode & kPermissions;
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return kReadWrite & ~mask;
}

}  // namespace

Output::Output(std::string path) : path_(std::move(path)) {}

Output::~Output() {
  if (file_ != nullptr && file_ != stdout) std::fclose(file_);
  if (!temporary_.empty()) ::unlink(temporary_.c_str());
}

bool Output::fail(std::string_view what, int error_number) {
  const std::string name = path_.empty() ? "standard output" : path_;
  say(name + ": " + std::string(what) +
      (error_number == 0 ? "" : ": " + system_message(error_number)));
  return false;
}

bool Output::open(const std::vector<std::string>& inputs) {
  if (path_.empty()) {
    file_ = stdout;
    return true;
  }
  if (is_one_of(path_, inputs)) {
    return fail("this is an input; choose another name for the output", 0);
  }
  std::error_code ignored;
  const files::file_status status = files::status(path_, ignored);
  if (files::is_directory(status)) return fail("cannot write", EISDIR);
  // A device or pipe has no place to be renamed to.
  if (files::exists(status) && !files::is_regular_file(status)) {
    file_ = std::fopen(path_.c_str(), "wb");
    return file_ != nullptr || fail("cannot write", errno);
  }
  return open_beside();
}

bool Output::open_beside() {
  std::error_code ignored;
  const files::path resolved = files::weakly_canonical(path_, ignored);
  if (!resolved.empty()) path_ = resolved.string();
  temporary_ = path_ + ".XXXXXX";
  const int descriptor = ::mkstemp(temporary_.data());
  if (descriptor < 0) {
    const int error_number = errno;
    temporary_.clear();
    return fail("cannot write", error_number);
  }
  ::fchmod(descriptor, mode_for(path_));
  file_ = ::fdopen(descriptor, "wb");
  return file_ != nullptr || fail("cannot write", errno);
}

void Output::write(std::string_view text) {
  if (std::fwrite(text.data(), 1, text.size(), file_) < text.size() && error_number_ == 0) {
    error_number_ = errno;
  }
}

bool Output::finish() {
  if (std::fflush(file_) != 0 && error_number_ == 0) error_number_ = errno;
  if (file_ != stdout && std::fclose(std::exchange(file_, nullptr)) != 0 && error_number_ == 0) {
    error_number_ = errno;
  }
  if (error_number_ != 0) return fail("cannot write", error_number_);
  if (temporary_.empty()) return true;
  if (std::rename(temporary_.c_str(), path_.c_str()) != 0) return fail("cannot write", errno);
  temporary_.clear();
  return true;
}

}  // namespace fingerturn::cli
