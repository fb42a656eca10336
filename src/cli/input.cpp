#include "cli/input.hpp"

#include "cli/messages.hpp"
#include "cli/open_input.hpp"
#include "fingerturn/read.hpp"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <limits>
#include <system_error>
#include <utility>

#include <sys/stat.h>

namespace fingerturn::cli {
namespace {

/// The size that a file has now, as far as it has one and a reader would take it.
std::size_t expected_size(std::FILE* file) {
  struct stat status {};
  if (::fstat(::fileno(file), &status) != 0 || !S_ISREG(status.st_mode)) return 0;
  return std::min(static_cast<std::size_t>(status.st_size), kLargestMusicXml);
}

/// Reads up to the end, or until it is more than so much.
std::optional<std::string> read_all(std::FILE* file, std::size_t most) {
  constexpr std::size_t kBlock = 65536;
  std::string text(expected_size(file) + kBlock, '\0');
  std::size_t size = 0;
  for (;;) {
    size += std::fread(text.data() + size, 1, text.size() - size, file);
    if (size < text.size() || size > most) break;
    text.resize(text.size() + text.size() / 2);
  }
  if (std::ferror(file) != 0) return std::nullopt;
  text.resize(size);
  return text;
}

std::optional<std::string> read_path(const std::string& path, std::size_t most) {
  const OpenFile file = open_input(path);
  return file ? read_all(file.get(), most) : std::nullopt;
}

}  // namespace

std::string input_name(const std::string& path) { return path == "-" ? "standard input" : path; }

Input load_input(const std::string& path) {
  Input input;
  input.name = input_name(path);
  std::optional<std::string> text = read_path(path, kLargestMusicXml);
  if (text) {
    input.source.emplace(input.name, std::move(*text));
  } else {
    input.problem = system_message(errno);
  }
  return input;
}

std::optional<std::string> read_list(const std::string& path) {
  return read_path(path, std::numeric_limits<std::size_t>::max());
}

std::optional<Source> read_input(const std::string& path) {
  Input input = load_input(path);
  if (!input.source) {
    std::error_code ignored;
    const bool is_folder = path != "-" && std::filesystem::is_directory(path, ignored);
    say(input.name + ": " + input.problem +
        (is_folder ? "; fingerturn check and find go through folders" : ""));
  }
  return std::move(input.source);
}

}  // namespace fingerturn::cli
