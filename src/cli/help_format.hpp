#pragma once

#include <string>

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

namespace fingerturn::cli {

/// The width that help keeps to.
inline constexpr int kHelpColumns = 80;

/// A name with its description beside it; below it where the name is too long.
std::string described(const std::string& name, const std::string& description,
                      int columns = kHelpColumns);

/// Help that fits a terminal of 80 columns: names in one column, what they do wrapped beside them.
class HelpFormat : public CLI::Formatter {
 public:
  std::string make_option(const CLI::Option* option, bool is_positional) const override;
  std::string make_subcommand(const CLI::App* command) const override;
};

}  // namespace fingerturn::cli
