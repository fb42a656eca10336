#include "cli/paths.hpp"

#include "cli/input.hpp"
#include "cli/messages.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <filesystem>
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

/// A folder, or something in it, that is still to be looked at; where a folder could not be read to
/// its end, why.
struct Pending {
  files::directory_entry entry;
  std::string problem;
};

/// Puts what lies in a folder before all that is pending already, the next of it last.
void add_pending(const files::path& folder, std::vector<Pending>& pending) {
  std::error_code problem;
  std::vector<files::directory_entry> entries = entries_of(folder, problem);
  std::error_code ignored;
  if (problem) pending.push_back({files::directory_entry(folder, ignored), problem.message()});
  for (; !entries.empty(); entries.pop_back()) pending.push_back({std::move(entries.back()), {}});
}

/// Folders may be nested deeper than functions can be.
void add_folder(const files::path& folder, std::vector<LibraryFile>& found) {
  std::vector<Pending> pending;
  add_pending(folder, pending);
  while (!pending.empty()) {
    const auto [entry, problem] = std::move(pending.back());
    pending.pop_back();
    std::error_code ignored;
    if (!problem.empty()) {
      found.push_back({entry.path().string(), problem});
    } else if (entry.is_directory(ignored) && !entry.is_symlink(ignored)) {
      // A link to a folder may lead back to where it stands.
      add_pending(entry.path(), pending);
    } else if (entry.is_regular_file(ignored) && has_known_ending(entry.path())) {
      found.push_back({entry.path().string(), {}});
    }
  }
}

/// The names in a list, a line each; or, where there are such, each up to a NUL, as programs write
/// names that may have line ends in them.
std::vector<std::string> names_in(const std::string& list) {
  const bool by_line = list.find('\0') == std::string::npos;
  std::vector<std::string> names;
  for (std::size_t begin = 0; begin < list.size();) {
    const std::size_t end = std::min(list.find(by_line ? '\n' : '\0', begin), list.size());
    std::string name = list.substr(begin, end - begin);
    if (by_line && name.ends_with('\r')) name.pop_back();
    if (!name.empty()) names.push_back(std::move(name));
    begin = end + 1;
  }
  return names;
}

}  // namespace

std::span<const std::string_view> known_endings() noexcept { return kEndings; }

std::vector<LibraryFile> files_of(std::vector<std::string> paths) {
  std::vector<LibraryFile> found;
  for (std::string& path : paths) {
    std::error_code ignored;
    if (path == "-" || !files::is_directory(path, ignored)) {
      found.push_back({std::move(path), {}});
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
  const std::optional<std::string> text = read_list(list);
  if (text) return names_in(*text);
  say(input_name(list) + ": " + system_message(errno));
  return std::nullopt;
}

}  // namespace fingerturn::cli
