#pragma once

#include "fingerturn/analysis.hpp"

#include <CLI/App.hpp>

namespace fingerturn::cli {

/// Who plays, and how fast: what is taken instead of what the music says.
void add_player(CLI::App& command, AnalyseOptions& player);

}  // namespace fingerturn::cli
