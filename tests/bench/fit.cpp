#include "corpus.hpp"
#include "fingering/fitted_weights.hpp"
#include "graded.hpp"
#include "handbook.hpp"
#include "optimum.hpp"
#include "soft_line.hpp"
#include "turns.hpp"

#include <algorithm>
#include <fstream>
#include <iostream>
#include <map>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

/// Measures how many printed fingers the model meets, and fits its numbers to them.
///
///     fit FILE...                 measures with the numbers in use
///     fit --held-out FILE...      for each composer fits to the others and measures on that one
///     fit --write OUT FILE...     fits and writes the numbers
///
/// Nothing is fitted to the pieces that are set aside; --held-out leaves them alone altogether.
namespace fingerturn::bench {
namespace {

/// The printed fingers of one piece that were met, none given and half given.
struct Result {
  std::string composer;
  bool is_set_aside = false;
  MetByKind none;
  MetByKind half;
  TurnsMet turns;
};

Result measured(const Piece& piece, const Model& model) {
  return {piece.composer, piece.is_set_aside, met_with_none(piece, model),
          met_with_half(piece, model), turns_met(piece, model)};
}

/// What a row is about: which pieces, and which of their notes.
struct Row {
  std::string name;
  std::vector<const Result*> results;
  Met (*of)(const MetByKind&) = [](const MetByKind& met) { return met.all(); };
};

Met sum_of(const Row& row, MetByKind Result::*given) {
  Met sum;
  for (const Result* result : row.results) sum += row.of(result->*given);
  return sum;
}

/// Half the width of the interval that the share lies in with 95 %, if other pieces of the kind
/// had been taken: from 1000 draws of as many pieces, with a fixed seed.
/// None for a single piece.
std::string half_width(const Row& row, MetByKind Result::*given) {
  if (row.results.size() < 2) return "";
  constexpr std::size_t kDraws = 1000;
  std::mt19937 random(1);
  std::vector<double> shares;
  for (std::size_t draw = 0; draw < kDraws; ++draw) {
    Met sum;
    for (std::size_t i = 0; i < row.results.size(); ++i) {
      sum += row.of(row.results[random() % row.results.size()]->*given);
    }
    shares.push_back(sum.percent());
  }
  std::ranges::sort(shares);
  return fmt::format("+- {:.1f}", (shares[kDraws * 39 / 40] - shares[kDraws / 40]) / 2);
}

void print_head() {
  fmt::print("{:<20} {:>8} {:>11} {:>18}\n", "", "printed", "none given", "half given");
}

void print_row(const Row& row) {
  const Met none = sum_of(row, &Result::none);
  const Met half = sum_of(row, &Result::half);
  if (none.hidden == 0) return;
  fmt::print("{:<20} {:8} {:9.1f} % {:8} {:7.1f} % {}\n", row.name, none.hidden, none.percent(),
             half_width(row, &Result::none), half.percent(), half_width(row, &Result::half));
}

void print_turns(const std::vector<const Result*>& results) {
  TurnsMet sum;
  for (const Result* result : results) sum += result->turns;
  if (sum.none.hidden == 0) return;
  fmt::print(
      "turns of {} strokes, half printed or more: none given {:.1f} %, three in ten {:.1f} %\n",
      sum.none.hidden, sum.none.percent(), sum.some.percent());
}

/// The rows by composer and by kind of note, and the sum.
void print_rows(const std::vector<const Result*>& results) {
  std::map<std::string, std::vector<const Result*>> by_composer;
  for (const Result* result : results) by_composer[result->composer].push_back(result);
  for (const auto& [composer, of_composer] : by_composer) print_row({composer, of_composer});
  print_row({"right hand", results, [](const MetByKind& met) { return met.of_hand(0); }});
  print_row({"left hand", results, [](const MetByKind& met) { return met.of_hand(1); }});
  print_row({"single notes", results, [](const MetByKind& met) { return met.of_kind(0); }});
  print_row({"in chords", results, [](const MetByKind& met) { return met.of_kind(1); }});
  print_row({"all", results});
  print_turns(results);
}

void measure(const std::vector<Piece>& pieces) {
  std::vector<Result> all;
  all.reserve(pieces.size());
  for (const Piece& piece : pieces) all.push_back(measured(piece, kFitted));
  for (const bool set_aside : {false, true}) {
    std::vector<const Result*> results;
    for (const Result& result : all) {
      if (result.is_set_aside == set_aside) results.push_back(&result);
    }
    fmt::print("\n{}\n", set_aside ? "pieces set aside, which nothing was fitted to"
                                   : "pieces that the numbers were fitted to");
    print_head();
    print_rows(results);
  }
  print_handbook();
  fmt::print("\ndifficulty against the printed order of graded collections\n");
  for (const Graded& graded : graded_collections(pieces)) {
    fmt::print("{:<20} {:3} pieces, rank correlation {:.2f}\n", graded.name, graded.pieces,
               graded.rank_correlation);
  }
}

/// The stretches of all pieces that are not set aside.
std::vector<SoftLine> lines_to_fit(const std::vector<Piece>& pieces) {
  std::vector<Piece> open;
  std::ranges::copy_if(pieces, std::back_inserter(open),
                       [](const Piece& piece) { return !piece.is_set_aside; });
  std::vector<SoftLine> lines = soft_lines(open);
  weigh_composers(lines);
  return lines;
}

void measure_held_out(const std::vector<Piece>& pieces) {
  const std::vector<SoftLine> lines = lines_to_fit(pieces);
  std::map<std::string, std::vector<const Piece*>> by_composer;
  for (const Piece& piece : pieces) {
    if (!piece.is_set_aside) by_composer[piece.composer].push_back(&piece);
  }
  std::vector<Result> all;
  for (const auto& [composer, of_composer] : by_composer) {
    const Model model =
        fitted(lines, [&name = composer](const SoftLine& line) { return line.composer != name; });
    for (const Piece* piece : of_composer) all.push_back(measured(*piece, model));
  }
  std::vector<const Result*> results;
  results.reserve(all.size());
  for (const Result& result : all) results.push_back(&result);
  fmt::print("each composer by numbers fitted to the others\n");
  print_head();
  print_rows(results);
}

void write_tables(std::ostream& out, const Tables& tables) {
  constexpr std::size_t kInALine = 20;
  for (std::size_t at = 0; at < tables.size(); ++at) {
    out << (at % kInALine == 0 ? "\n    " : " ") << tables.at(at) << ',';
  }
}

void write_model(const std::string& path, const Model& model) {
  std::ofstream out(path);
  out << "#pragma once\n\n#include \"fingering/terms.hpp\"\n\n"
         "/// Written by tests/bench/fit; docs/fingering.md tells how they were fitted.\n"
         "namespace fingerturn {\n\n// clang-format off\ninline constexpr Model kFitted{{\n";
  for (std::size_t term = 0; term < kTermCount; ++term) {
    const std::string number = std::to_string(model.weights.at(term)) + ",";
    out << "    " << number << std::string(7 - std::min<std::size_t>(number.size(), 5), ' ')
        << "// " << term_words()[term].id << '\n';
  }
  out << "}, {";
  write_tables(out, model.tables);
  out << "\n}};\n// clang-format on\n\n}  // namespace fingerturn\n";
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
    write_model(written, fitted(lines_to_fit(pieces), [](const SoftLine&) { return true; }));
  } else if (held_out) {
    measure_held_out(pieces);
  } else {
    measure(pieces);
  }
}
