#include "cli/paths.hpp"

#include "cli/messages.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <string_view>
#include <system_error>

#include <fmt/format.h>

namespace fingerturn::cli {
namespace {

namespace files = std::filesystem;

constexpr std::array<std::string_view, 4> kEndings{".passage", ".musicxml", ".xml", ".mxl"};

bool has_known_ending(const files::path& path) {
  const std::string ending = lower_case(path.extension().string());
  return std::ranges::find(kEndings, ending) != kEndings.end();
}

bool is_hidden(const files::path& path) { return path.filename().string().starts_with('.'); }

/// What lies in a folder, in the order of its names.
std::vector<files::directory_entry> entries_of(const files::path& folder,
                                               std::error_code& problem) {
  std::vector<files::directory_entry> entries;
  files::directory_iterator at(folder, problem);
  for (; !problem && at != files::directory_iterator(); at.increment(problem)) {
    if (!is_hidden(at->path())) entries.push_back(*at);
  }
  std::ranges::sort(
      entries, {}, [](const auto& entry) -> const auto& { return entry.path().native(); });
  return entries;
}

void add_folder(const files::path& folder, std::vector<FileToCheck>& found) {
  std::error_code problem;
  const std::vector<files::directory_entry> entries = entries_of(folder, problem);
  for (const files::directory_entry& entry : entries) {
    std::error_code ignored;
    // A link to a folder may lead back to where it stands.
    if (entry.is_directory(ignored) && !entry.is_symlink(ignored)) {
      add_folder(entry.path(), found);
    } else if (entry.is_regular_file(ignored) && has_known_ending(entry.path())) {
      found.push_back({entry.path().string(), {}});
    }
  }
  if (problem) found.push_back({folder.string(), problem.message()});
}

std::vector<std::string> lines_of(std::istream& stream) {
  std::vector<std::string> lines;
  for (std::string line; std::getline(stream, line);) {
    if (line.ends_with('\r')) line.pop_back();
    if (!line.empty()) lines.push_back(line);
  }
  return lines;
}

}  // namespace

std::vector<FileToCheck> files_of(const std::vector<std::string>& paths) {
  std::vector<FileToCheck> found;
  for (const std::string& path : paths) {
    std::error_code ignored;
    if (path == "-" || !files::is_directory(path, ignored)) {
      found.push_back({path, {}});
      continue;
    }
    const std::size_t before = found.size();
    add_folder(path, found);
    if (found.size() == before) {
      say(fmt::format("{}: there is no file here that ends in {}", path,
                      fmt::join(kEndings, ", ")));
    }
  }
  return found;
}

std::optional<std::vector<std::string>> paths_in_list(const std::string& list) {
  if (list == "-") return lines_of(std::cin);
  std::ifstream stream(list);
  std::error_code ignored;
  // A folder opens like a file and only fails to be read.
  if (!stream || files::is_directory(list, ignored)) {
    say(list + ": " + system_message(stream ? EISDIR : errno));
    return std::nullopt;
  }
  return lines_of(stream);
}

}  // namespace fingerturn::cli
