#pragma once

#include "fingerturn/score.hpp"

#include <string>
#include <vector>

namespace fingerturn {

/// "4>1": the striking finger and its silent changes; empty where there is none.
inline std::string finger_text(const std::vector<Finger>& fingers) {
  std::string text;
  for (const Finger finger : fingers) text += (text.empty() ? "" : ">") + std::to_string(finger);
  return text;
}

}  // namespace fingerturn
