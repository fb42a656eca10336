#pragma once

#include "scales/task.hpp"

#include <span>
#include <string>
#include <vector>

namespace fingerturn {

/// Where the fingers come from and what other handbooks have, in whole sentences.
std::vector<std::string> remarks_of(const ScaleTask& task, std::span<const HandTask> hands);

}  // namespace fingerturn
