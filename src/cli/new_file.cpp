#include "cli/new_file.hpp"

#include <array>
#include <atomic>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <initializer_list>
#include <string_view>
#include <system_error>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace fingerturn::cli {
namespace {

namespace files = std::filesystem;

constexpr mode_t kReadWrite = 0666;
constexpr mode_t kPermissions = 0777;

/// Where a path leads in the end, also where nothing is there yet.
std::string end_of_links(const std::string& path) {
  constexpr int kMostLinks = 40;
  files::path at = path;
  std::error_code problem;
  for (int links = 0; links < kMostLinks && files::is_symlink(at, problem); ++links) {
    const files::path to = files::read_symlink(at, problem);
    if (problem) break;
    at = to.is_absolute() ? to : at.parent_path() / to;
  }
  return at.string();
}

/// The permissions that a new file gets.
mode_t usual_mode() {
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return kReadWrite & ~mask;
}

/// The hidden file that has to go when a signal ends the run; null where there is none. A handler
/// gets nothing but the number of its signal, so this cannot be handed to it.
// NOLINTNEXTLINE(cppcoreguidelines-avoid-non-const-global-variables)
std::atomic<const char*> to_be_taken_away = nullptr;

extern "C" void end_by_signal(int number) {
  take_away_hidden_file();
  // The handler was for one time; now the signal ends the run.
  ::raise(number);
}

void take_away_on_signals(const char* name) {
  to_be_taken_away = name;
  struct sigaction action {};
  action.sa_handler = end_by_signal;
  action.sa_flags = static_cast<int>(SA_RESETHAND | SA_NODEFER);
  for (const int number : {SIGHUP, SIGINT, SIGPIPE, SIGQUIT, SIGTERM, SIGXCPU}) {
    struct sigaction before {};
    // A signal that is ignored, as under nohup, stays so.
    if (::sigaction(number, nullptr, &before) == 0 && before.sa_handler == SIG_IGN) continue;
    ::sigaction(number, &action, nullptr);
  }
}

/// What a file without a name is called among the open files of the process.
std::string name_by_number(int descriptor) { return "/proc/self/fd/" + std::to_string(descriptor); }

/// A file without a name, where the system has such and can give it one later; else -1.
int open_nameless(const std::string& folder) {
  const int descriptor = ::open(folder.c_str(), O_TMPFILE | O_RDWR | O_CLOEXEC, S_IRUSR | S_IWUSR);
  if (descriptor < 0 || ::access(name_by_number(descriptor).c_str(), F_OK) == 0) return descriptor;
  ::close(descriptor);
  return -1;
}

/// Gives a file without a name a hidden one that is free.
std::string hidden_link(int descriptor, const std::string& folder) {
  constexpr int kTries = 1000;
  const std::string begin = folder + "/.fingerturn-" + std::to_string(::getpid()) + '-';
  for (int number = 0; number < kTries; ++number) {
    std::string name = begin + std::to_string(number);
    if (::linkat(AT_FDCWD, name_by_number(descriptor).c_str(), AT_FDCWD, name.c_str(),
                 AT_SYMLINK_FOLLOW) == 0) {
      return name;
    }
    if (errno != EEXIST) break;
  }
  return {};
}

}  // namespace

void take_away_hidden_file() noexcept {
  const char* name = to_be_taken_away.exchange(nullptr);
  if (name != nullptr) ::unlink(name);
}

NewFile::NewFile(const std::string& path) : target_(end_of_links(path)) {
  folder_ = files::path(target_).parent_path().string();
  if (folder_.empty()) folder_ = ".";
  // Replacing a file that may not be written would be writing it all the same.
  struct stat replaced {};
  if (::stat(target_.c_str(), &replaced) == 0 && ::access(target_.c_str(), W_OK) != 0) return;
  open_beside();
}

NewFile::~NewFile() {
  const int error_number = errno;
  if (!hidden_name_.empty()) {
    ::unlink(hidden_name_.c_str());
    to_be_taken_away = nullptr;
  }
  errno = error_number;
}

void NewFile::open_beside() {
  int descriptor = open_nameless(folder_);
  if (descriptor < 0) {
    hidden_name_ = folder_ + "/.fingerturn-XXXXXX";
    descriptor = ::mkstemp(hidden_name_.data());
    if (descriptor < 0) {
      hidden_name_.clear();
      return;
    }
    take_away_on_signals(hidden_name_.c_str());
  }
  stream_.reset(::fdopen(descriptor, "w+b"));
}

bool NewFile::cut_to(long size) const {
  return std::fflush(stream()) == 0 && ::ftruncate(::fileno(stream()), size) == 0 &&
         std::fseek(stream(), size, SEEK_SET) == 0;
}

bool NewFile::take_after_replaced() {
  const int descriptor = ::fileno(stream());
  struct stat replaced {};
  if (::stat(target_.c_str(), &replaced) != 0) return ::fchmod(descriptor, usual_mode()) == 0;
  struct stat own {};
  if (::fstat(descriptor, &own) != 0) return false;
  // Each for itself: who may not give a file away may still leave it to one of their groups.
  if (own.st_gid != replaced.st_gid && ::fchown(descriptor, -1U, replaced.st_gid) != 0) {
    owner_error_ = errno;
  }
  if (own.st_uid != replaced.st_uid && ::fchown(descriptor, replaced.st_uid, -1U) != 0) {
    owner_error_ = errno;
  }
  return ::fchmod(descriptor, replaced.st_mode & kPermissions) == 0;
}

bool NewFile::give_name() {
  const int descriptor = ::fileno(stream());
  if (hidden_name_.empty()) {
    if (::linkat(AT_FDCWD, name_by_number(descriptor).c_str(), AT_FDCWD, target_.c_str(),
                 AT_SYMLINK_FOLLOW) == 0) {
      return true;
    }
    // A name that is taken can only be renamed to, and what is renamed has one.
    if (errno != EEXIST) return false;
    hidden_name_ = hidden_link(descriptor, folder_);
    if (hidden_name_.empty()) return false;
  }
  if (std::rename(hidden_name_.c_str(), target_.c_str()) != 0) return false;
  to_be_taken_away = nullptr;
  hidden_name_.clear();
  return true;
}

bool NewFile::put_in_place() {
  if (std::fflush(stream()) != 0 || std::ferror(stream()) != 0) return false;
  // Some of what was written may fail no earlier than here.
  if (!take_after_replaced() || ::fsync(::fileno(stream())) != 0) return false;
  // A second descriptor keeps a file without a name alive when the first is closed to hear of
  // errors.
  const int kept = ::dup(::fileno(stream()));
  if (kept < 0) return false;
  const bool closed = std::fclose(stream_.release()) == 0;
  stream_.reset(::fdopen(kept, "r+b"));
  return closed && is_open() && give_name();
}

}  // namespace fingerturn::cli
