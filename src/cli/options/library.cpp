#include "cli/options/library.hpp"

#include "cli/messages.hpp"
#include "cli/options/files.hpp"
#include "cli/options/value.hpp"

#include <algorithm>
#include <iterator>
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

InputFiles LibraryFiles::inputs_for(const std::string& output) const {
  if (output.empty() || output == "-") return {};
  std::vector<std::string> inputs = beside;
  for (const LibraryFile& file : files) inputs.push_back(file.path);
  return InputFiles(inputs);
}

LibraryFiles files_of(const Library& library, std::vector<std::string> beside) {
  if (library.paths.empty() && library.list.empty()) {
    say("name files or folders, or a list of them with --files-from");
    return {ExitStatus::wrong_usage, {}};
  }
  std::vector<std::string> paths = library.paths;
  if (!library.list.empty()) {
    std::optional<std::vector<std::string>> listed = paths_in_list(library.list);
    if (!listed) return {ExitStatus::input_failed, {}};
    std::ranges::move(*listed, std::back_inserter(paths));
  }
  beside.push_back(library.list);
  if (!can_be_read(paths, beside)) return {ExitStatus::wrong_usage, {}};
  return {ExitStatus::done, files_of(std::move(paths)), std::move(beside)};
}

}  // namespace fingerturn::cli
