#pragma once

#include "fingerturn/analysis.hpp"

#include <string>

namespace fingerturn {

/// One short line for practising, made of what was found about an event: "swing right, play left;
/// thumb passes under; arm carries two keys up".
std::string cue_of(const EventAnalysis& entry, Hand hand);

}  // namespace fingerturn
