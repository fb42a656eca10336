#pragma once

#include "cli/exit_status.hpp"
#include "fingerturn/scale.hpp"

#include <string>
#include <vector>

namespace fingerturn::cli {

/// What the command line of `scale` asks for.
struct ScaleCommandOptions {
  std::vector<std::string> name_words;  ///< the name, in one word or several
  bool list = false;                    ///< all names instead
  ScaleOptions scale;
  std::string output;  ///< empty for standard output
};

/// A handbook scale in the passage notation.
ExitStatus scale(const ScaleCommandOptions& options);

}  // namespace fingerturn::cli
