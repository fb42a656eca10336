#pragma once

#include "cli/options/fingers.hpp"
#include "cli/options/look.hpp"
#include "cli/options/notes.hpp"
#include "fingerturn/analysis.hpp"

#include <string>
#include <vector>

#include <CLI/App.hpp>

namespace fingerturn::cli {

struct Format;

/// What a command that reports on every note is asked for.
struct ReportOptions {
  std::vector<std::string> files;
  const Format* format = nullptr;  ///< one of `formats()`
  std::string output;              ///< empty for standard output
  ChosenNotes notes;
  AnalyseOptions player;
  FingerOptions fingers;
  ReportLook look;
  bool places = false;  ///< only those that ask most
};

/// The options that all such commands have; which fingers are filled in each adds for itself.
void add_report(CLI::App& command, ReportOptions& options);

}  // namespace fingerturn::cli
