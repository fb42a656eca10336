#pragma once

#include "cli/exit_status.hpp"
#include "fingerturn/analysis.hpp"
#include "fingerturn/score.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace fingerturn::cli {

enum class CheckFormat : std::uint8_t { text, jsonl };

/// What the command line of `check` asks for.
struct CheckOptions {
  std::vector<std::string> paths;
  std::string list;  ///< a file of further paths; empty for none
  CheckFormat format = CheckFormat::text;
  std::string output;                  ///< empty for standard output
  std::optional<Hand> hand;            ///< none for both
  WatchLevel show = WatchLevel::info;  ///< findings below it are counted only
  std::optional<WatchLevel> fail_on;   ///< none for no level
  std::optional<int> jobs;             ///< none for one for each core
  AnalyseOptions analysis;
  std::optional<int> columns;  ///< none for the terminal's width, and one line for each finding
                               ///< where there is no terminal
  bool suggest = false;        ///< fill in missing fingers first
};

/// What deserves a look in many files, and their counts.
ExitStatus check(const CheckOptions& options);

}  // namespace fingerturn::cli
