#include "cli/built_with.hpp"
#include "cli/commands.hpp"
#include "cli/empty_value.hpp"
#include "cli/faults.hpp"
#include "cli/output.hpp"
#include "cli/program.hpp"
#include "cli/streams.hpp"

#include <algorithm>
#include <exception>
#include <new>
#include <span>
#include <sstream>
#include <vector>

#include <CLI/App.hpp>
#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace fingerturn::cli {
namespace {

using Words = std::span<const char* const>;

/// What CLI11 takes for no value at all is refused before it reads the words of a command.
void watch_for_empty_values(const std::vector<Command>& commands, Words words) {
  for (const Command& command : commands) {
    command.line->preparse_callback([line = command.line, words](std::size_t following) {
      refuse_empty_values(*line, words.last(following));
    });
  }
}

/// What one file is done with serves the next. Else the memory of most would go back to the system,
/// which clears each page of it anew.
void keep_memory_between_files() {
#ifdef __GLIBC__
  constexpr int kMebibyte = 1 << 20;
  mallopt(M_MMAP_THRESHOLD, 32 * kMebibyte);
  mallopt(M_TRIM_THRESHOLD, 64 * kMebibyte);
#endif
}

/// Does what the words ask for.
ExitStatus run(Words words) {
  // CLI11 would leave out what it has no memory for.
  std::set_new_handler(end_without_memory);
  CLI::App program;
  const std::vector<Command> commands = describe(program, words.size() > 1 ? words[1] : "");
  watch_for_empty_values(commands, words);
  try {
    program.parse(static_cast<int>(words.size()), words.data());
  } catch (const CLI::ParseError& problem) {
    // Being asked for help is one of them.
    std::ostringstream help;
    if (program.exit(problem, help) != 0) return ExitStatus::wrong_usage;
    return write_whole("", help.str());
  }
  std::set_new_handler(nullptr);
  const auto is_chosen = [](const Command& command) { return command.line->parsed(); };
  return std::ranges::find_if(commands, is_chosen)->action();
}

}  // namespace
}  // namespace fingerturn::cli

int main(int count, char** words) {
  using fingerturn::cli::ExitStatus;
  fingerturn::cli::prepare_streams();
  fingerturn::cli::keep_memory_between_files();
  fingerturn::cli::prepare_for_faults();
  ExitStatus status = ExitStatus::input_failed;
  try {
    status = fingerturn::cli::run({words, static_cast<std::size_t>(count)});
  } catch (const std::exception& fault) {
    fingerturn::cli::say_fault(fault);
  }
  return static_cast<int>(status);
}
