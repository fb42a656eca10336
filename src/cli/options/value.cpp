#include "cli/options/value.hpp"

namespace fingerturn::cli {

CLI::Validator number_from(int least, int most) {
  const auto check = [least, most](const std::string& text) {
    const std::optional<int> number = number_in<int>(text);
    return number && *number >= least && *number <= most
               ? std::string()
               : fmt::format("expected a number from {} to {}, found \"{}\"", least, most, text);
  };
  return {check, ""};
}

}  // namespace fingerturn::cli
