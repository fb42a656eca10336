#include "soft_line.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>

/// The sum over all fingerings of a stretch, forward from its beginning and backward from its end.
namespace fingerturn::bench {
namespace {

constexpr double kNegligible = 1e-9;  // a chance
constexpr double kImpossible = -std::numeric_limits<double>::infinity();

double logarithm_of_sum(std::span<const double> logarithms) {
  const double most = *std::max_element(logarithms.begin(), logarithms.end());
  if (most == kImpossible) return most;
  double sum = 0;
  for (const double logarithm : logarithms) sum += std::exp(logarithm - most);
  return most + std::log(sum);
}

double cost(const AmountRows& rows, std::size_t row, const RealWeights& weights) {
  double sum = 0;
  for (std::size_t i = rows.begins[row]; i < rows.begins[row + 1]; ++i) {
    sum += weights[rows.amounts[i].number] * double{rows.amounts[i].amount};
  }
  return sum;
}

std::vector<double> costs(const AmountRows& rows, const RealWeights& weights) {
  std::vector<double> all(rows.count());
  for (std::size_t row = 0; row < all.size(); ++row) all[row] = cost(rows, row, weights);
  return all;
}

/// Where every fingering is allowed, or only those with the printed fingers.
enum class Allowed { all, printed };

/// The chances of a stretch's fingerings. A state is the choices of two neighbouring grips; the
/// first grip has one imagined choice before it.
class Chances {
 public:
  Chances(const SoftLine& line, const RealWeights& weights, double margin, Allowed allowed)
      : line_(line), allowed_(allowed), margin_(margin) {
    for (const SoftGrip& grip : line.grips) {
      alone_.push_back(costs(grip.alone, weights));
      steps_.push_back(costs(grip.steps, weights));
      threes_.push_back(costs(grip.threes, weights));
    }
    go_forward();
  }

  [[nodiscard]] double logarithm() const { return logarithm_of_sum(forward_.back()); }

  /// Adds how much of each term is expected, times `sign`.
  void add_expected(double sign, RealWeights& sum) {
    const double whole = logarithm();
    std::vector<double> backward(forward_.back().size(), 0.0);
    for (std::size_t at = line_.grips.size(); at-- > 0;) {
      backward = add_grip(at, backward, sign, whole, sum);
    }
  }

 private:
  [[nodiscard]] std::size_t count(std::size_t at) const { return line_.grips[at].choices; }
  [[nodiscard]] std::size_t count_before(std::size_t at, std::size_t back) const {
    return at >= back ? count(at - back) : 1;
  }

  /// The gain of a choice after another, without what is counted over three grips.
  [[nodiscard]] double gain(std::size_t at, std::size_t middle, std::size_t last) const {
    const SoftGrip& grip = line_.grips[at];
    if (allowed_ == Allowed::printed && !grip.agrees[last]) return kImpossible;
    double gained = -alone_[at][last];
    if (allowed_ == Allowed::all) gained += margin_ * grip.misses[last];
    if (at > 0) gained -= steps_[at][middle * grip.choices + last];
    return gained;
  }

  [[nodiscard]] double over_three(std::size_t at, std::size_t first, std::size_t middle,
                                  std::size_t last) const {
    if (threes_[at].empty()) return 0;
    return -threes_[at][(first * count(at - 1) + middle) * count(at) + last];
  }

  void go_forward() {
    for (std::size_t at = 0; at < line_.grips.size(); ++at) {
      std::vector<double> next(count_before(at, 1) * count(at), kImpossible);
      for (std::size_t middle = 0; middle < count_before(at, 1); ++middle) {
        for (std::size_t last = 0; last < count(at); ++last) {
          const double gained = gain(at, middle, last);
          if (gained == kImpossible) continue;
          next[middle * count(at) + last] = gained + arriving(at, middle, last);
        }
      }
      forward_.push_back(std::move(next));
    }
  }

  [[nodiscard]] double arriving(std::size_t at, std::size_t middle, std::size_t last) {
    if (at == 0) return 0;
    ways_.resize(count_before(at, 2));
    for (std::size_t first = 0; first < ways_.size(); ++first) {
      ways_[first] =
          forward_[at - 1][first * count(at - 1) + middle] + over_three(at, first, middle, last);
    }
    return logarithm_of_sum(ways_);
  }

  static void add_row(const AmountRows& rows, std::size_t row, double chance, RealWeights& sum) {
    for (std::size_t i = rows.begins[row]; i < rows.begins[row + 1]; ++i) {
      sum[rows.amounts[i].number] += chance * double{rows.amounts[i].amount};
    }
  }

  /// Adds what is expected at one grip and gives the chances of what follows the grip before.
  std::vector<double> add_grip(std::size_t at, const std::vector<double>& backward, double sign,
                               double whole, RealWeights& sum) {
    const SoftGrip& grip = line_.grips[at];
    for (std::size_t state = 0; state < backward.size(); ++state) {
      const double chance = sign * std::exp(forward_[at][state] + backward[state] - whole);
      if (std::abs(chance) < kNegligible) continue;
      add_row(grip.alone, state % grip.choices, chance, sum);
      if (at > 0) add_row(grip.steps, state, chance, sum);
    }
    if (at == 0) return {};
    std::vector<double> before(count_before(at, 2) * count(at - 1));
    ways_.resize(grip.choices);
    for (std::size_t state = 0; state < before.size(); ++state) {
      const std::size_t first = state / count(at - 1);
      const std::size_t middle = state % count(at - 1);
      for (std::size_t last = 0; last < grip.choices; ++last) {
        ways_[last] = backward[middle * grip.choices + last] + gain(at, middle, last) +
                      over_three(at, first, middle, last);
        const double chance = std::exp(forward_[at - 1][state] + ways_[last] - whole);
        if (chance < kNegligible || grip.threes.count() == 0) continue;
        add_row(grip.threes, state * grip.choices + last, sign * chance, sum);
      }
      before[state] = logarithm_of_sum(ways_);
    }
    return before;
  }

  const SoftLine& line_;
  Allowed allowed_;
  double margin_;
  std::vector<std::vector<double>> alone_;
  std::vector<std::vector<double>> steps_;
  std::vector<std::vector<double>> threes_;
  std::vector<std::vector<double>> forward_;
  std::vector<double> ways_;
};

}  // namespace

void add_likelihood(const SoftLine& line, const RealWeights& weights, double margin,
                    Likelihood& sum) {
  Chances printed(line, weights, margin, Allowed::printed);
  Chances all(line, weights, margin, Allowed::all);
  sum.logarithm += line.weight * (printed.logarithm() - all.logarithm());
  printed.add_expected(-line.weight, sum.gradient);
  all.add_expected(line.weight, sum.gradient);
}

}  // namespace fingerturn::bench
