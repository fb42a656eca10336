#include "cli/faults.hpp"
#include "cli/guides/completions.hpp"
#include "cli/guides/manual.hpp"
#include "cli/guides/table.hpp"
#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "cli/program.hpp"

#include <algorithm>
#include <exception>
#include <filesystem>
#include <string>

/// Writes the manual pages and what shells complete into a folder, each where it belongs below
/// share/. It is run when the program is built.
namespace fingerturn::cli {
namespace {

namespace files = std::filesystem;

ExitStatus write_into(const files::path& folder, const std::string& name, const std::string& text) {
  files::create_directories(folder);
  return write_whole((folder / name).string(), text);
}

ExitStatus write_guides(const files::path& share) {
  CLI::App program;
  const std::vector<Command> commands = describe(program);
  const ProgramTable table = table_of(program);
  const std::string& name = table.program.name;
  const files::path manual = share / "man" / "man1";
  ExitStatus worst = std::max(
      {write_into(share / "bash-completion" / "completions", name, write_bash(table)),
       write_into(share / "zsh" / "site-functions", '_' + name, write_zsh(table)),
       write_into(share / "fish" / "vendor_completions.d", name + ".fish", write_fish(table)),
       write_into(manual, name + ".1", write_manual(table))});
  for (const CommandEntry& command : table.commands) {
    worst = std::max(worst, write_into(manual, manual_name(table, command) + ".1",
                                       write_manual(table, command)));
  }
  return worst;
}

}  // namespace
}  // namespace fingerturn::cli

int main(int count, char** words) {
  using namespace fingerturn::cli;
  ExitStatus status = ExitStatus::wrong_usage;
  try {
    if (count == 2) status = write_guides(words[1]);
  } catch (const std::exception& fault) {
    say(fault_words(fault));
  }
  return static_cast<int>(status);
}
