#include "corpus.hpp"
#include "fingering/fitted_weights.hpp"
#include "soft_line.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <set>
#include <string>
#include <string_view>
#include <vector>

/// Measures how many printed fingers the model meets, and fits its weights to them.
///
///     fit FILE...                 measures with the weights in use and with all weights 1
///     fit --held-out FILE...      fits without each composer in turn and measures on that one
///     fit --write OUT FILE...     fits to all and writes the weights
namespace fingerturn::bench {
namespace {

/// What figures and repeats decide, which are looked at by themselves.
constexpr bool is_fixed(std::size_t term) {
  return term >= static_cast<std::size_t>(Term::off_handbook);
}

/// Each weight moves by its own step against the last change of its gradient's sign: longer while
/// the sign stays, shorter after it has changed.
class Climb {
 public:
  Climb() {
    weights_.fill(kStart);
    for (std::size_t term = 0; term < kTermCount; ++term) {
      if (is_fixed(term)) weights_.at(term) = kFittedWeights.at(term) / 1000.0;
    }
    steps_.fill(kFirstStep);
  }

  void move(const RealWeights& gradient) {
    for (std::size_t term = 0; term < kTermCount; ++term) {
      if (is_fixed(term)) continue;
      double slope = gradient.at(term) - kPull * weights_.at(term);
      const double turned = slope * before_.at(term);
      double& step = steps_.at(term);
      if (turned > 0) step = std::min(step * 1.2, kLongestStep);
      if (turned < 0) {
        step = std::max(step * 0.5, kShortestStep);
        slope = 0;
      }
      if (slope != 0) weights_.at(term) += slope > 0 ? step : -step;
      weights_.at(term) = std::max(weights_.at(term), 0.0);  // nothing makes a passage easier
      before_.at(term) = slope;
    }
  }
  [[nodiscard]] const RealWeights& weights() const { return weights_; }

 private:
  static constexpr double kStart = 0.3;
  static constexpr double kFirstStep = 0.1;
  static constexpr double kLongestStep = 0.5;
  static constexpr double kShortestStep = 1e-4;
  static constexpr double kPull = 0.5;  // toward 0

  RealWeights weights_{};
  RealWeights steps_{};
  RealWeights before_{};
};

Weights fitted(const std::vector<SoftLine>& lines, std::string_view without) {
  constexpr int kRounds = 60;
  constexpr double kMargin = 3;
  Climb climb;
  for (int round = 0; round < kRounds; ++round) {
    Likelihood sum;
    for (const SoftLine& line : lines) {
      if (line.composer != without) add_likelihood(line, climb.weights(), kMargin, sum);
    }
    climb.move(sum.gradient);
    if (round % 10 == 9) std::fprintf(stderr, "round %d: %.1f\n", round + 1, sum.logarithm);
  }
  Weights weights{};
  for (std::size_t term = 0; term < kTermCount; ++term) {
    weights.at(term) = static_cast<std::int32_t>(std::lround(climb.weights().at(term) * 1000));
  }
  return weights;
}

/// The printed fingers met, none given and half given.
struct Score2 {
  Met none;
  Met half;
};

Score2 measured(const std::vector<Piece>& pieces, const Weights& weights,
                std::string_view composer) {
  Score2 score;
  for (const Piece& piece : pieces) {
    if (!composer.empty() && piece.composer != composer) continue;
    score.none += met_with_none(piece, weights);
    score.half += met_with_half(piece, weights);
  }
  return score;
}

void print_row(std::string_view name, const Score2& score) {
  std::printf("%-24.*s %8lld %9.1f %% %9.1f %%\n", static_cast<int>(name.size()), name.data(),
              static_cast<long long>(score.none.hidden), score.none.percent(),
              score.half.percent());
}

std::set<std::string> composers(const std::vector<Piece>& pieces) {
  std::set<std::string> names;
  for (const Piece& piece : pieces) names.insert(piece.composer);
  return names;
}

void print_head() {
  std::printf("%-24s %8s %11s %11s\n", "", "printed", "none given", "half given");
}

void measure(const std::vector<Piece>& pieces) {
  Weights ones{};
  ones.fill(1000);
  print_head();
  for (const std::string& composer : composers(pieces)) {
    print_row(composer, measured(pieces, kFittedWeights, composer));
  }
  print_row("all, weights in use", measured(pieces, kFittedWeights, ""));
  print_row("all, all weights 1", measured(pieces, ones, ""));
}

void measure_held_out(const std::vector<Piece>& pieces) {
  const std::vector<SoftLine> lines = soft_lines(pieces);
  Score2 sum;
  print_head();
  for (const std::string& composer : composers(pieces)) {
    const Score2 score = measured(pieces, fitted(lines, composer), composer);
    print_row(composer, score);
    sum.none += score.none;
    sum.half += score.half;
  }
  print_row("all, each held out", sum);
}

void write_weights(const std::string& path, const Weights& weights) {
  std::ofstream out(path);
  out << "#pragma once\n\n#include \"fingering/terms.hpp\"\n\n"
         "/// Written by tests/bench/fit; docs/fingering.md tells how they were fitted.\n"
         "namespace fingerturn {\n\ninline constexpr Weights kFittedWeights{\n";
  for (std::size_t term = 0; term < kTermCount; ++term) {
    const std::string number = std::to_string(weights.at(term)) + ",";
    out << "    " << number << std::string(7 - std::min<std::size_t>(number.size(), 5), ' ')
        << "// " << term_words()[term].id << '\n';
  }
  out << "};\n\n}  // namespace fingerturn\n";
}

}  // namespace
}  // namespace fingerturn::bench

int main(int count, char** words) {
  using namespace fingerturn::bench;
  std::vector<std::string> paths(words + 1, words + count);
  std::string written;
  bool held_out = false;
  if (paths.size() >= 2 && paths[0] == "--write") {
    written = paths[1];
    paths.erase(paths.begin(), paths.begin() + 2);
  } else if (!paths.empty() && paths[0] == "--held-out") {
    held_out = true;
    paths.erase(paths.begin());
  }
  const std::vector<Piece> pieces = read_corpus(paths);
  if (pieces.empty()) {
    std::cerr << "usage: fit [--held-out | --write OUT] FILE...\n";
    return 2;
  }
  if (!written.empty()) {
    write_weights(written, fitted(soft_lines(pieces), ""));
  } else if (held_out) {
    measure_held_out(pieces);
  } else {
    measure(pieces);
  }
}
