#pragma once

#include "corpus.hpp"
#include "fingering/terms.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

/// A stretch of a line around printed fingers, as the fit sees it: every fingering of it has a
/// probability that falls exponentially with its difficulty.
namespace fingerturn::bench {

/// A number for each term and behind them for each entry of the tables.
inline constexpr std::size_t kNumberCount = kTermCount + kTableSize;
using RealWeights = std::vector<double>;

/// How often a number counts in one choice, or in a row of choices.
struct Amount {
  std::uint16_t number = 0;
  float amount = 0;
};

/// The amounts of a row of possibilities, one after another.
struct AmountRows {
  std::vector<Amount> amounts;
  std::vector<std::size_t> begins{0};

  [[nodiscard]] std::size_t count() const noexcept { return begins.size() - 1; }
};

/// The possibilities that end at one grip. `steps` holds each choice after each before it; `threes`
/// each choice after each two before it (empty where nothing is counted over three grips).
struct SoftGrip {
  std::size_t choices = 0;
  std::vector<bool> agrees;          ///< for each choice, whether it has the printed fingers
  std::vector<std::uint8_t> misses;  ///< for each choice, how many printed fingers it misses
  AmountRows alone;
  AmountRows steps;
  AmountRows threes;
};

struct SoftLine {
  std::string composer;
  std::size_t printed = 0;  ///< how many printed fingers there are
  double weight = 1;        ///< how much it counts
  std::vector<SoftGrip> grips;
};

/// The stretches of all pieces.
std::vector<SoftLine> soft_lines(const std::vector<Piece>& pieces);

/// How the probabilities of a line's printed fingers answer to the weights.
struct Likelihood {
  double logarithm = 0;
  RealWeights gradient = RealWeights(kNumberCount);
};

/// Adds the log likelihood of a line's printed fingers, and its gradient. For each printed finger
/// that a fingering misses it counts as easier by `margin`, so that the fit drives wrong
/// fingerings at least so far off.
void add_likelihood(const SoftLine& line, const RealWeights& weights, double margin,
                    Likelihood& sum);

}  // namespace fingerturn::bench
