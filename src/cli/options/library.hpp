#pragma once

#include "cli/exit_status.hpp"
#include "cli/input_files.hpp"
#include "cli/paths.hpp"

#include <optional>
#include <string>
#include <vector>

#include <CLI/App.hpp>

namespace fingerturn::cli {

/// The files that a command goes through, however many they are.
struct Library {
  std::vector<std::string> paths;
  std::string list;         ///< a file of further paths; empty for none
  std::optional<int> jobs;  ///< how many files at a time; none for one for each core
};

/// A list of paths, and how many files at a time; the paths themselves are the command's.
void add_library(CLI::App& command, Library& library);

/// What a library comes to; where `status` is not done, what was wrong has been said already.
struct LibraryFiles {
  ExitStatus status = ExitStatus::done;
  std::vector<LibraryFile> files;
  std::vector<std::string> beside{};  ///< the names of all else that is read

  /// Those that this output must not be. Where it is standard output, that is not looked for: of
  /// millions of files it takes long.
  [[nodiscard]] InputFiles inputs_for(const std::string& output) const;
};

/// The files of a library in their order, those of the list last; `beside` are other files that the
/// command reads, of which an empty name is none.
LibraryFiles files_of(const Library& library, std::vector<std::string> beside);

}  // namespace fingerturn::cli
