#include "cli/faults.hpp"

#include <new>

namespace fingerturn::cli {

std::string fault_words(const std::exception& fault) {
  const bool wants_memory = dynamic_cast<const std::bad_alloc*>(&fault) != nullptr;
  return wants_memory ? "there is not enough memory for this" : fault.what();
}

}  // namespace fingerturn::cli
