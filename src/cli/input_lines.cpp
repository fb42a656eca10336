#include "cli/input_lines.hpp"

#include "cli/messages.hpp"
#include "cli/open_input.hpp"

#include <cerrno>
#include <cstdlib>

#include <stdio.h>  // NOLINT(modernize-deprecated-headers): getline is POSIX's

namespace fingerturn::cli {
struct InputLines::File {
  struct FreeLetters {
    void operator()(char* line) const noexcept {
      std::free(line);  // NOLINT(*-no-malloc,*-owning-memory): getline allocates so
    }
  };
  OpenFile stream;
  std::unique_ptr<char, FreeLetters> letters;
  std::size_t room = 0;
};

InputLines::InputLines(const std::string& path) : file_(std::make_unique<File>()) {
  file_->stream = open_input(path);
  if (!file_->stream) problem_ = system_message(errno);
}

InputLines::~InputLines() = default;

std::optional<std::string_view> InputLines::next() {
  if (!file_->stream) return std::nullopt;
  char* letters = file_->letters.release();
  errno = 0;
  const ssize_t size = ::getline(&letters, &file_->room, file_->stream.get());
  file_->letters.reset(letters);
  if (size < 0) {
    // For want of memory glibc's getline fails as it does at the end.
    if (std::ferror(file_->stream.get()) != 0 || errno == ENOMEM) problem_ = system_message(errno);
    return std::nullopt;
  }
  ++number_;
  std::string_view line(letters, static_cast<std::size_t>(size));
  if (line.ends_with('\n')) line.remove_suffix(1);
  return line;
}

}  // namespace fingerturn::cli
