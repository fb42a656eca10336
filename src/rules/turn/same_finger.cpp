#include "rules/turn/same_finger.hpp"

namespace fingerturn {

bool repeats_key(const Strike& from, const Strike& to) noexcept {
  return from.is_single_note() && to.is_single_note() && from.key == to.key;
}

}  // namespace fingerturn
