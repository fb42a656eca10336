#include "cli/options/output.hpp"

namespace fingerturn::cli {

CLI::Option* add_output(CLI::App& command, std::string& output) {
  return command.add_option("-o,--output", output, "Write to this file instead of the screen")
      ->type_name("FILE");
}

}  // namespace fingerturn::cli
