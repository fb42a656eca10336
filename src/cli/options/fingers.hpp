#pragma once

#include <CLI/App.hpp>

namespace fingerturn::cli {

/// Which missing fingers are filled in.
struct FingerOptions {
  bool suggest = false;  ///< any at all
  int alternatives = 1;  ///< how many fingerings of each passage, where they are filled in
};

void add_suggest(CLI::App& command, bool& suggest);
void add_alternatives(CLI::App& command, int& alternatives);

}  // namespace fingerturn::cli
