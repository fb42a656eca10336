#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include <CLI/App.hpp>

/// The commands and options of the program as plain data, from which its guides are written: the
/// manual pages and what shells complete.
namespace fingerturn::cli {

/// What stands for a value on the command line, as far as it is known beforehand.
struct KnownValues {
  std::vector<std::string> words;  ///< that it may be, such as the names of formats
  std::string list;       ///< of words that several options share: a key of `lists`; or empty
  bool is_file = false;   ///< any
  bool is_score = false;  ///< a file with one of the known endings, or a folder
  bool is_row = false;    ///< several, parted by commas

  [[nodiscard]] bool are_files() const noexcept { return is_file || is_score; }
};

/// An option, or a word that a command takes.
struct OptionEntry {
  std::vector<std::string> names;  ///< "-o" and "--output"; "FILE"
  std::string value;               ///< what help calls the value of an option; empty for a flag
  std::string words;               ///< what it does
  std::string group;               ///< the heading over it in help
  std::vector<std::string> needs;
  std::vector<std::string> excludes;
  bool is_required = false;
  bool is_repeated = false;  ///< it may be given more than once
  KnownValues values;
};

struct CommandEntry {
  std::string name;  ///< "annotate"
  std::string words;
  std::vector<OptionEntry> arguments;
  std::vector<OptionEntry> options;
  std::string footer;
};

struct ProgramTable {
  CommandEntry program;
  std::vector<CommandEntry> commands;
  std::map<std::string, std::vector<std::string>> lists;
  std::vector<std::string_view> endings;  ///< of scores and passages, such as ".passage"
};

ProgramTable table_of(const CLI::App& program);

}  // namespace fingerturn::cli
