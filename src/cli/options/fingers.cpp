#include "cli/options/fingers.hpp"

#include "cli/options/value.hpp"
#include "fingerturn/fingering.hpp"

namespace fingerturn::cli {

void add_suggest(CLI::App& command, bool& suggest) {
  command.add_flag("--suggest", suggest,
                   "Fill in missing fingers first; what is filled in is marked with ?");
}

void add_alternatives(CLI::App& command, int& alternatives) {
  command
      .add_option("--alternatives", alternatives,
                  "Give this many fingerings of each passage, the easiest first")
      ->check(number_from(1, static_cast<int>(kMostFingerings)))
      ->type_name("N");
}

}  // namespace fingerturn::cli
