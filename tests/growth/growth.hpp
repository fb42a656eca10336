#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>

/// Whether work grows in proportion to what it is done on, or with its square.
namespace fingerturn::tests {

/// The steps of reading a text in which one thing stands so many times.
using Steps = std::function<std::uint64_t(std::size_t times)>;
/// The same of two things.
using StepsOfTwo = std::function<std::uint64_t(std::size_t times, std::size_t other_times)>;

/// Eight times as much takes less than sixteen times the steps, counted without those for the
/// least. Sorting takes eleven times as many; work that goes with the square takes 64 times.
bool grows_in_proportion(const Steps& steps, std::size_t few = 500);

/// How often each of two things stands where it is first seen whether they are looked at each with
/// each: few times, since all pairs of things are tried.
inline constexpr std::size_t kTogether = 200;

/// The steps where two things stand once, and where one of them stands kTogether times.
struct StepsApart {
  std::uint64_t once = 0;
  std::uint64_t one = 0;
  std::uint64_t other = 0;
};

/// Many of two things take what many of each take, or a share more; not the one times the other.
bool meet_in_proportion(const StepsOfTwo& steps, const StepsApart& apart);

}  // namespace fingerturn::tests
