#include "graded.hpp"

#include "fingerturn/fingering.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <regex>
#include <utility>

namespace fingerturn::bench {
namespace {

struct Collection {
  const char* name;
  const char* file;  ///< of a piece, its number first of all
};

constexpr std::array kCollections{
    Collection{"Czerny op. 821", "op-821-no-0*([0-9]+)"},
    Collection{"Czerny op. 840", "op840-([0-9]+)-"},
    Collection{"Burgmüller op. 100", "o100-25ef-0*([0-9]+)"},
    Collection{"Diabelli op. 149", "op149-([0-9]+)-"},
};

/// The rank of each value, those of equal ones in the middle.
std::vector<double> ranks(const std::vector<double>& values) {
  std::vector<double> found;
  for (const double value : values) {
    const auto less = std::ranges::count_if(values, [&](double other) { return other < value; });
    const auto equal = std::ranges::count(values, value);
    found.push_back(static_cast<double>(less) + static_cast<double>(equal - 1) / 2);
  }
  return found;
}

double correlation(const std::vector<double>& left, const std::vector<double>& right) {
  const auto mean = [](const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
  };
  double both = 0;
  double of_left = 0;
  double of_right = 0;
  for (std::size_t i = 0; i < left.size(); ++i) {
    const double a = left[i] - mean(left);
    const double b = right[i] - mean(right);
    both += a * b;
    of_left += a * a;
    of_right += b * b;
  }
  return both / std::sqrt(of_left * of_right);
}

}  // namespace

double difficulty_told(const Piece& piece) {
  double sum = 0;
  for (const PassageFingerings& passage : suggest(piece.score)) {
    for (const std::vector<LineFingering>& line : passage.lines) sum += line.front().difficulty;
  }
  return sum;
}

std::vector<Graded> graded_collections(const std::vector<Piece>& pieces) {
  std::vector<Graded> graded;
  for (const Collection& collection : kCollections) {
    std::vector<double> numbers;
    std::vector<double> difficulties;
    for (const Piece& piece : pieces) {
      std::smatch match;
      if (!std::regex_search(piece.name, match, std::regex(collection.file))) continue;
      numbers.push_back(std::stod(match[1]));
      difficulties.push_back(difficulty_told(piece));
    }
    if (numbers.size() < 3) continue;
    graded.push_back(
        {collection.name, numbers.size(), correlation(ranks(numbers), ranks(difficulties))});
  }
  return graded;
}

}  // namespace fingerturn::bench
