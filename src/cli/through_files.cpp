#include "cli/through_files.hpp"

#include "cli/terminal.hpp"

#include <algorithm>
#include <thread>

namespace fingerturn::cli {

std::size_t jobs_for(std::size_t files, const Library& library) {
  const std::size_t wanted =
      library.jobs ? static_cast<std::size_t>(*library.jobs) : std::thread::hardware_concurrency();
  return std::clamp<std::size_t>(wanted, 1, std::max<std::size_t>(files, 1));
}

bool has_room_for_progress(const std::vector<LibraryFile>& files, const Output& output,
                           bool is_read) {
  const bool is_typed =
      reads_from_terminal() &&
      std::ranges::any_of(files, [](const LibraryFile& file) { return file.path == "-"; });
  const bool is_apart = is_read || !output.path().empty() || !writes_to_terminal();
  return is_apart && !is_typed && leaves_room_for_progress(output.path());
}

}  // namespace fingerturn::cli
