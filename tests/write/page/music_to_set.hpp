#pragma once

#include "fingerturn/fingerturn.hpp"

#include <string>
#include <vector>

namespace fingerturn::tests {

struct MusicToSet {
  std::string name;
  AnalysedScore music;
};

/// The demos and, where they are there, the real scores: their missing fingers suggested, so that
/// all is drawn.
std::vector<MusicToSet> music_to_set();

}  // namespace fingerturn::tests
