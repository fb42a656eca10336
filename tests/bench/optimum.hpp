#pragma once

#include "fingering/terms.hpp"
#include "soft_line.hpp"

#include <functional>
#include <vector>

namespace fingerturn::bench {

/// Which lines to fit to.
using Chosen = std::function<bool(const SoftLine&)>;

/// The numbers that make the printed fingers of the chosen lines most likely, pulled toward 0; no
/// weight is below 0, and what habits weigh stays as it is in use. In each block of the tables the
/// least is 0, which changes nothing: a situation is not chosen.
Model fitted(const std::vector<SoftLine>& lines, const Chosen& chosen);

/// Lets each composer count by the root of its printed fingers, so that one with very many does
/// not decide for all.
void weigh_composers(std::vector<SoftLine>& lines);

}  // namespace fingerturn::bench
