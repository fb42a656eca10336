#pragma once

#include "catch.hpp"
#include "fingerturn/score.hpp"

#include <cstddef>
#include <cstdint>
#include <random>

/// Passages made by chance, with everything that may stand in a line: single and double notes,
/// chords, missing fingers, silent changes, ties, rests, breaths, grace notes and skipped bars.
namespace fingerturn {

/// The environment variable that repeats a run.
inline constexpr const char* kSeedVariable = "FINGERTURN_SEED";

/// The seed from the environment, another one at every run where none is given.
std::uint64_t seed_of_this_run();

/// Chance that comes out alike on every machine for the same seed.
class Chance {
 public:
  explicit Chance(std::uint64_t seed) : engine_(seed) {}

  /// A number from `low` to `high`, both included.
  int between(int low, int high) {
    const auto count = static_cast<std::uint64_t>(high - low) + 1;
    return low + static_cast<int>(engine_() % count);
  }
  bool percent(int chance) { return between(1, 100) <= chance; }

 private:
  std::mt19937_64 engine_;
};

/// The keys of these passages; their mirror images about D4 lie between the same two.
inline constexpr int kLowestRandomKey = 21;
inline constexpr int kHighestRandomKey = 103;

/// A line of `events` events.
Line random_line(Chance& chance, Hand hand, std::size_t events);

/// Calls `check` with lines of both hands, so many of each.
template <typename Check>
void for_random_lines(int passages, std::size_t events, const Check& check) {
  const std::uint64_t seed = seed_of_this_run();
  INFO("repeat with " << kSeedVariable << "=" << seed);
  Chance chance(seed);
  for (int passage = 0; passage < passages; ++passage) {
    for (const Hand hand : {Hand::right, Hand::left}) check(random_line(chance, hand, events));
  }
}

/// A passage for both hands.
Score random_score(Chance& chance, std::size_t events);

}  // namespace fingerturn
