#include "cli/help_format.hpp"

#include "text/wrap.hpp"

namespace fingerturn::cli {

std::string described(const std::string& name, const std::string& description, int columns) {
  constexpr std::size_t kNameWidth = 24;
  const std::string opening = "  " + name;
  if (opening.size() + 2 <= kNameWidth) {
    return wrapped(padded(opening, kNameWidth), description, columns);
  }
  return opening + '\n' + wrapped(std::string(kNameWidth, ' '), description, columns);
}

std::string HelpFormat::make_option(const CLI::Option* option, bool is_positional) const {
  const std::string value = is_positional ? "" : make_option_opts(option);
  return described(make_option_name(option, is_positional) + value, make_option_desc(option));
}

std::string HelpFormat::make_subcommand(const CLI::App* command) const {
  return described(command->get_name(), command->get_description());
}

}  // namespace fingerturn::cli
