#include "cli/options/files.hpp"

#include "cli/messages.hpp"

#include <algorithm>

namespace fingerturn::cli {

void add_files(CLI::App& command, std::vector<std::string>& files, const std::string& description) {
  command.add_option("FILE", files, description)->required()->type_name("");
}

bool can_be_read(const std::vector<std::string>& files, const std::vector<std::string>& beside) {
  if (std::ranges::count(files, "-") + std::ranges::count(beside, "-") <= 1) return true;
  say("standard input can be read once only");
  return false;
}

}  // namespace fingerturn::cli
