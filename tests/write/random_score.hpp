#pragma once

#include "fingerturn/score.hpp"

#include <cstdint>
#include <random>

/// Scores made by chance, such as a reader could have made: every form of the notation occurs.
namespace fingerturn::tests {

/// Chance that gives the same on every machine.
class Chance {
 public:
  explicit Chance(std::uint64_t seed) : engine_(seed) {}

  /// A number from 0 to `limit` - 1.
  std::size_t below(std::size_t limit) { return static_cast<std::size_t>(engine_() % limit); }
  std::int32_t between(std::int32_t least, std::int32_t most) {
    return least + static_cast<std::int32_t>(below(static_cast<std::size_t>(most - least) + 1));
  }
  bool one_in(std::size_t count) { return below(count) == 0; }

  template <typename Values>
  const auto& one_of(const Values& values) {
    return values[below(std::size(values))];
  }

 private:
  std::mt19937_64 engine_;
};

/// A score of one to three passages.
Score random_score(std::uint64_t seed);

}  // namespace fingerturn::tests
