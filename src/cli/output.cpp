#include "cli/output.hpp"

#include "cli/messages.hpp"

#include <cerrno>
#include <filesystem>
#include <system_error>
#include <utility>

#include <unistd.h>

namespace fingerturn::cli {

namespace files = std::filesystem;

Output::Output(std::string path) : path_(path == "-" ? std::string() : std::move(path)) {}

bool Output::fail(std::string_view what, int error_number) const {
  const std::string name = path_.empty() ? "standard output" : path_;
  say(name + ": " + std::string(what) +
      (error_number == 0 ? "" : ": " + system_message(error_number)));
  return false;
}

bool Output::spares(const InputFiles& inputs) const {
  if (path_.empty() || !inputs.have(path_)) return true;
  return fail("this is an input; choose another name for the output", 0);
}

bool Output::open(const InputFiles& inputs) {
  if (path_.empty()) {
    stream_ = stdout;
    return true;
  }
  return spares(inputs) && open_file();
}

bool Output::open_file() {
  std::error_code ignored;
  const files::file_status status = files::status(path_, ignored);
  if (files::is_directory(status)) return fail("cannot write", EISDIR);
  // A device or pipe has no place that a new file could take.
  if (files::exists(status) && !files::is_regular_file(status)) {
    stream_ = std::fopen(path_.c_str(), "wb");
    return stream_ != nullptr || fail("cannot write", errno);
  }
  new_file_ = std::make_unique<NewFile>(path_);
  if (!new_file_->is_open()) return fail("cannot write", errno);
  stream_ = new_file_->stream();
  return true;
}

void Output::write(std::string_view text) {
  if (std::fwrite(text.data(), 1, text.size(), stream_) < text.size() && error_number_ == 0) {
    error_number_ = errno;
  }
  size_ += static_cast<long>(text.size());
}

TextSink Output::sink(Progress& progress) {
  return [this, &progress, on_terminal = ::isatty(::fileno(stream_)) == 1](auto text) {
    if (on_terminal) progress.rub_out();
    write(text);
  };
}

bool Output::cut_to(long size) {
  if (size == size_) return true;
  if (!new_file_ || !new_file_->cut_to(size)) return false;
  size_ = size;
  return true;
}

bool Output::flush() {
  if (std::fflush(stream_) != 0 && error_number_ == 0) error_number_ = errno;
  if (stream_ != stdout && std::fclose(stream_) != 0 && error_number_ == 0) error_number_ = errno;
  return error_number_ == 0 || fail("cannot write", error_number_);
}

bool Output::finish() {
  if (!new_file_) return flush();
  if (error_number_ != 0) return fail("cannot write", error_number_);
  if (!new_file_->put_in_place()) return fail("cannot write", errno);
  if (new_file_->owner_error() != 0) {
    fail("written, but its owner could not be kept", new_file_->owner_error());
  }
  return true;
}

ExitStatus write_whole(const std::string& path, std::string_view text, const InputFiles& inputs) {
  Output output(path);
  if (!output.open(inputs)) return ExitStatus::wrong_usage;
  output.write(text);
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
}

}  // namespace fingerturn::cli
