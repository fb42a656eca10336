#pragma once

#include "fingerturn/finger_setting.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/why.hpp"

#include <optional>
#include <string>
#include <vector>

#include <CLI/App.hpp>

namespace fingerturn::cli {

/// Which missing fingers are filled in.
struct FingerOptions {
  bool suggest = false;   ///< any at all
  bool refinger = false;  ///< all of them, whatever is given
  int alternatives = 1;   ///< how many fingerings of each passage, where they are filled in
  FingerWishes wishes;
  std::optional<BarRange> kept;  ///< outside of these, suggestions that are read are found anew
  std::optional<BeatInBar> why;  ///< instead of a report: what decided there
  std::string from;              ///< instead: a passage whose fingers go into the score; or empty
  bool replace = false;          ///< and in the place of others
  std::vector<FingerSetting> settings;  ///< to be tried
};

void add_suggest(CLI::App& command, bool& suggest);
void add_alternatives(CLI::App& command, int& alternatives);
void add_wishes(CLI::App& command, FingerOptions& fingers);
void add_why(CLI::App& command, std::optional<BeatInBar>& why);
void add_from(CLI::App& command, FingerOptions& fingers);
void add_settings(CLI::App& command, std::vector<FingerSetting>& settings);

}  // namespace fingerturn::cli
