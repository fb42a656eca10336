#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>

/// What work takes, counted: the same input gives the same numbers on every run and machine, since
/// no clock is asked.
namespace fingerturn::tests {

struct Work {
  /// The blocks of the readers' own code that were gone through, the bytes that the C library
  /// copied, compared or searched for them and for the libraries they use, and those allocated.
  std::uint64_t steps = 0;
  /// The most bytes that were held at once, beyond what was held before.
  std::size_t most_bytes = 0;
};

Work work_of(const std::function<void()>& action);

}  // namespace fingerturn::tests
