#pragma once

#include "fingerturn/practice.hpp"

namespace fingerturn {

/// Shares minutes among the places of a plan by what they ask, whole minutes and three at least, of
/// the time that is left beside two minutes to rest after each twenty (our convention). The places
/// that get none leave the plan, the last first.
void share_minutes(PracticePlan& plan, int minutes);

}  // namespace fingerturn
