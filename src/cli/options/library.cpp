#include "cli/options/library.hpp"

#include "cli/messages.hpp"
#include "cli/options/files.hpp"
#include "cli/options/value.hpp"

#include <utility>

namespace fingerturn::cli {

void add_library(CLI::App& command, Library& library) {
  constexpr int kMostJobs = 1000;
  command
      .add_option("--files-from", library.list,
                  "Go through the files named in this list too, one a line; - is standard input")
      ->type_name("LIST");
  command
      .add_option("--jobs", library.jobs,
                  "Work at this many files at a time; as many as the computer has cores if not "
                  "given. The result is the same")
      ->check(number_from(1, kMostJobs))
      ->type_name("N");
}

LibraryFiles files_of(const Library& library, const std::vector<std::string>& beside) {
  if (library.paths.empty() && library.list.empty()) {
    say("name files or folders, or a list of them with --files-from");
    return {ExitStatus::wrong_usage, {}};
  }
  std::vector<std::string> paths = library.paths;
  if (!library.list.empty()) {
    const auto listed = paths_in_list(library.list);
    if (!listed) return {ExitStatus::input_failed, {}};
    paths.insert(paths.end(), listed->begin(), listed->end());
  }
  std::vector<std::string> inputs = beside;
  inputs.push_back(library.list);
  std::vector<std::string> named = paths;
  named.insert(named.end(), inputs.begin(), inputs.end());
  if (!can_be_read(named)) return {ExitStatus::wrong_usage, {}};
  LibraryFiles found{ExitStatus::done, files_of(paths), std::move(inputs)};
  for (const LibraryFile& file : found.files) found.inputs.push_back(file.path);
  return found;
}

}  // namespace fingerturn::cli
