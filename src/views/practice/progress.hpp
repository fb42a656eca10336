#pragma once

#include "fingerturn/practice.hpp"

namespace fingerturn {

/// Says of each place of a plan what became of it since an earlier one, takes it from there, and
/// names what is settled. A place is the same where it has the same notes in the same bars.
void add_progress(PracticePlan& plan, const AnalysedScore& analysed, const PracticeMemory& memory);

}  // namespace fingerturn
