#pragma once

#include "fingerturn/report.hpp"

#include <string>

namespace fingerturn {

/// What to watch in each hand, bar by bar; empty where there is nothing.
std::string watch_text(const AnalysedPassage& passage, const TextStyle& style);

}  // namespace fingerturn
