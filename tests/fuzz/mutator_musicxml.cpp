#include "xml_mutation.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <random>
#include <string>

// NOLINTBEGIN(readability-identifier-naming): the fuzzer's own names
extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t largest);
extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size,
                                               std::size_t largest, unsigned int seed);

/// What the fuzzer calls in place of its own changes of bytes: half of the time a score stays XML,
/// so that what is behind the parser is reached.
extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size,
                                               std::size_t largest, unsigned int seed) {
  std::mt19937_64 engine(seed);
  std::optional<std::string> changed;
  if (engine() % 2 > 0) changed = fingerturn::tests::change_xml({data, data + size}, engine);
  if (!changed || changed->size() > largest) return LLVMFuzzerMutate(data, size, largest);
  std::copy(changed->begin(), changed->end(), data);
  return changed->size();
}
// NOLINTEND(readability-identifier-naming)
