#include "cli/output.hpp"

#include "cli/messages.hpp"

#include <array>
#include <cerrno>
#include <cstdlib>
#include <filesystem>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

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

/// A file beside another, gone again unless it was renamed. Where a step fails, errno says why.
class TemporaryFile {
 public:
  explicit TemporaryFile(const std::string& target)
      : name_(target + ".XXXXXX"), descriptor_(::mkstemp(name_.data())) {
    if (descriptor_ >= 0) ::fchmod(descriptor_, mode_for(target));
  }
  ~TemporaryFile() {
    const int error_number = errno;
    if (is_open()) ::close(descriptor_);
    if (is_there_) ::unlink(name_.c_str());
    errno = error_number;
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;

  [[nodiscard]] bool is_open() const { return descriptor_ >= 0; }
  [[nodiscard]] bool write(std::string_view text) const {
    while (!text.empty()) {
      const ssize_t count = ::write(descriptor_, text.data(), text.size());
      if (count < 0) return false;
      text.remove_prefix(static_cast<std::size_t>(count));
    }
    return true;
  }
  /// Brings what was written to the disk: some of it may fail no earlier.
  bool close() {
    if (::fsync(descriptor_) != 0) return false;
    return ::close(std::exchange(descriptor_, -1)) == 0;
  }
  bool rename_to(const std::string& target) {
    is_there_ = std::rename(name_.c_str(), target.c_str()) != 0;
    return !is_there_;
  }

 private:
  std::string name_;
  int descriptor_;
  bool is_there_ = is_open();
};

/// Copies a file that was just written.
bool copy(std::FILE* from, const TemporaryFile& to) {
  if (std::fflush(from) != 0 || std::fseek(from, 0, SEEK_SET) != 0) return false;
  std::array<char, 65536> block{};
  for (std::size_t count = block.size(); count == block.size();) {
    count = std::fread(block.data(), 1, block.size(), from);
    if (!to.write({block.data(), count})) return false;
  }
  return std::ferror(from) == 0;
}

}  // namespace

Output::Output(std::string path) : path_(path == "-" ? std::string() : std::move(path)) {}

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
  return true;
}

void Output::write(std::string_view text) {
  if (file_ == nullptr) {
    keep(text);
  } else if (std::fwrite(text.data(), 1, text.size(), file_) < text.size() && error_number_ == 0) {
    error_number_ = errno;
  }
}

void Output::keep(std::string_view text) {
  constexpr std::size_t kMostInMemory = std::size_t{1} << 20U;
  kept_ += text;
  if (kept_.size() < kMostInMemory) return;
  if (!begun_) begun_.reset(std::tmpfile());
  // Where there is no room for such a file, memory has to do.
  if (!begun_) return;
  if (std::fwrite(kept_.data(), 1, kept_.size(), begun_.get()) < kept_.size()) {
    error_number_ = errno;
  }
  kept_.clear();
}

bool Output::flush() {
  if (std::fflush(file_) != 0 && error_number_ == 0) error_number_ = errno;
  if (file_ != stdout && std::fclose(file_) != 0 && error_number_ == 0) error_number_ = errno;
  file_ = nullptr;
  return error_number_ == 0 || fail("cannot write", error_number_);
}

bool Output::put_in_place() {
  std::error_code ignored;
  // A link stays a link: the file that it leads to is the one to replace.
  const files::path resolved = files::weakly_canonical(path_, ignored);
  const std::string target = resolved.empty() ? path_ : resolved.string();
  if (error_number_ != 0) return fail("cannot write", error_number_);
  TemporaryFile beside(target);
  const bool done = beside.is_open() && (!begun_ || copy(begun_.get(), beside)) &&
                    beside.write(kept_) && beside.close() && beside.rename_to(target);
  return done || fail("cannot write", errno);
}

bool Output::finish() { return file_ == nullptr ? put_in_place() : flush(); }

}  // namespace fingerturn::cli
