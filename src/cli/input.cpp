#include "cli/input.hpp"

#include "cli/messages.hpp"
#include "fingerturn/read.hpp"

#include <array>
#include <cerrno>
#include <cstdio>
#include <memory>
#include <utility>

namespace fingerturn::cli {
namespace {

struct CloseFile {
  void operator()(std::FILE* file) const noexcept {
    if (file != stdin) std::fclose(file);
  }
};
using OpenFile = std::unique_ptr<std::FILE, CloseFile>;

OpenFile open_input(const std::string& path) {
  return OpenFile(path == "-" ? stdin : std::fopen(path.c_str(), "rb"));
}

std::optional<std::string> read_all(std::FILE* file) {
  std::string text;
  std::array<char, 65536> block{};
  while (text.size() <= kLargestMusicXml) {
    const std::size_t count = std::fread(block.data(), 1, block.size(), file);
    text.append(block.data(), count);
    if (count < block.size()) break;
  }
  if (std::ferror(file) != 0) return std::nullopt;
  return text;
}

}  // namespace

Input load_input(const std::string& path) {
  Input input;
  input.name = path == "-" ? "standard input" : path;
  const OpenFile file = open_input(path);
  std::optional<std::string> text = file ? read_all(file.get()) : std::nullopt;
  if (text) {
    input.source.emplace(input.name, std::move(*text));
  } else {
    input.problem = system_message(errno);
  }
  return input;
}

std::optional<Source> read_input(const std::string& path) {
  Input input = load_input(path);
  if (!input.source) say(input.name + ": " + input.problem);
  return std::move(input.source);
}

}  // namespace fingerturn::cli
