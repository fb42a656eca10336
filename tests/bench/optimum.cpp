#include "optimum.hpp"

#include "fingering/fitted_weights.hpp"
#include "fingering/tables.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <future>
#include <limits>
#include <map>
#include <string>

#include <nlopt.hpp>

/// The search itself is a library's (limited-memory BFGS within bounds).
namespace fingerturn::bench {
namespace {

bool is_table(std::size_t term) {
  return std::ranges::find(kTableTerms, static_cast<Term>(term)) != kTableTerms.end();
}

/// What figures and repeats decide, which are looked at by themselves, and the tables, whose
/// entries are fitted instead.
bool is_fixed(std::size_t term) {
  return term >= static_cast<std::size_t>(Term::off_handbook) || is_table(term);
}

/// How strongly a number is pulled toward 0: the more the fewer notes an entry speaks of.
double pull_of(std::size_t number) {
  if (number < kTermCount) return 0.5;
  const std::size_t entry = number - kTermCount;
  return entry < kOpeningTable.end() ? 3 : 30;
}

/// The log likelihood of some lines, worked out in two threads.
class Objective {
 public:
  explicit Objective(std::vector<const SoftLine*> lines) : lines_(std::move(lines)) {}

  [[nodiscard]] Likelihood at(const RealWeights& numbers) const {
    std::future<Likelihood> half =
        std::async(std::launch::async, [&] { return of_every_second(1, numbers); });
    Likelihood sum = of_every_second(0, numbers);
    const Likelihood other = half.get();
    sum.logarithm += other.logarithm;
    for (std::size_t i = 0; i < kNumberCount; ++i) sum.gradient[i] += other.gradient[i];
    for (std::size_t i = 0; i < kNumberCount; ++i) {
      sum.logarithm -= pull_of(i) * numbers[i] * numbers[i] / 2;
      sum.gradient[i] -= pull_of(i) * numbers[i];
    }
    return sum;
  }

  static double value(const RealWeights& numbers, RealWeights& gradient, void* self) {
    const Likelihood found = static_cast<const Objective*>(self)->at(numbers);
    if (!gradient.empty()) gradient = found.gradient;
    return found.logarithm;
  }

 private:
  [[nodiscard]] Likelihood of_every_second(std::size_t first, const RealWeights& numbers) const {
    constexpr double kMargin = 3;
    Likelihood sum;
    for (std::size_t i = first; i < lines_.size(); i += 2) {
      add_likelihood(*lines_[i], numbers, kMargin, sum);
    }
    return sum;
  }

  std::vector<const SoftLine*> lines_;
};

RealWeights numbers_in_use() {
  RealWeights numbers(kNumberCount);
  for (std::size_t term = 0; term < kTermCount; ++term) {
    if (!is_table(term)) numbers[term] = kFitted.weights.at(term) / 1000.0;
  }
  return numbers;
}

Model model_of(const RealWeights& numbers) {
  Model model;
  for (std::size_t term = 0; term < kTermCount; ++term) {
    const double weight = is_table(term) ? 1 : numbers[term];
    model.weights.at(term) = static_cast<std::int32_t>(std::lround(weight * 1000));
  }
  for (const TableBlocks& table : kAllTables) {
    for (std::size_t begin = table.begin; begin < table.end(); begin += table.block_size) {
      const auto first = numbers.begin() + static_cast<std::ptrdiff_t>(kTermCount + begin);
      const double least =
          *std::min_element(first, first + static_cast<std::ptrdiff_t>(table.block_size));
      for (std::size_t i = 0; i < table.block_size; ++i) {
        const double amount = numbers[kTermCount + begin + i] - least;
        model.tables.at(begin + i) = static_cast<std::int16_t>(std::lround(amount * kOne));
      }
    }
  }
  return model;
}

}  // namespace

Model fitted(const std::vector<SoftLine>& lines, const Chosen& chosen) {
  constexpr int kMostRounds = 100;
  std::vector<const SoftLine*> used;
  for (const SoftLine& line : lines) {
    if (chosen(line)) used.push_back(&line);
  }
  Objective objective(std::move(used));
  RealWeights numbers = numbers_in_use();
  RealWeights least(kNumberCount, -std::numeric_limits<double>::infinity());
  RealWeights most(kNumberCount, std::numeric_limits<double>::infinity());
  for (std::size_t term = 0; term < kTermCount; ++term) {
    least[term] = is_fixed(term) ? numbers[term] : 0;  // nothing makes a passage easier
    if (is_fixed(term)) most[term] = numbers[term];
  }
  nlopt::opt search(nlopt::LD_LBFGS, kNumberCount);
  search.set_lower_bounds(least);
  search.set_upper_bounds(most);
  search.set_max_objective(Objective::value, &objective);
  search.set_maxeval(kMostRounds);
  search.set_ftol_rel(1e-7);
  double reached = 0;
  search.optimize(numbers, reached);
  std::fprintf(stderr, "after %d rounds: %.1f\n", search.get_numevals(), reached);
  return model_of(numbers);
}

void weigh_composers(std::vector<SoftLine>& lines) {
  constexpr double kCountsOne = 1000;  // printed fingers
  std::map<std::string, double> printed;
  for (const SoftLine& line : lines) printed[line.composer] += static_cast<double>(line.printed);
  for (SoftLine& line : lines) {
    line.weight = std::sqrt(kCountsOne / std::max(1.0, printed[line.composer]));
  }
}

}  // namespace fingerturn::bench
