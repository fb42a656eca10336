#include "fingerturn/report.hpp"

namespace fingerturn {

std::string_view caution() noexcept {
  return "This describes a way of moving at the piano and is no medical advice. Stop at pain, "
         "numbness or tingling. Learn rotation with a qualified teacher, and see a clinician about "
         "symptoms that stay. The swings are shown large so that they can be learned; at speed "
         "they shrink. The sound and the music come first.";
}

}  // namespace fingerturn
