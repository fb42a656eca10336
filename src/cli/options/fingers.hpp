#pragma once

#include "fingerturn/fingering.hpp"
#include "fingerturn/why.hpp"

#include <optional>

#include <CLI/App.hpp>

namespace fingerturn::cli {

/// Which missing fingers are filled in.
struct FingerOptions {
  bool suggest = false;  ///< any at all
  int alternatives = 1;  ///< how many fingerings of each passage, where they are filled in
  FingerWishes wishes;
  std::optional<BarRange> kept;  ///< outside of these, suggestions that are read are found anew
  std::optional<BeatInBar> why;  ///< instead of a report: what decided there
};

void add_suggest(CLI::App& command, bool& suggest);
void add_alternatives(CLI::App& command, int& alternatives);
void add_wishes(CLI::App& command, FingerOptions& fingers);
void add_why(CLI::App& command, std::optional<BeatInBar>& why);

}  // namespace fingerturn::cli
