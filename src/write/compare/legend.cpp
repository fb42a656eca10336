#include "write/compare/legend.hpp"

#include "text/words.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

using Comparisons = std::span<const Comparison>;

std::string all_labels(std::size_t count) {
  std::vector<std::string> labels;
  for (std::size_t i = 0; i < count; ++i) labels.push_back(fingering_label(i));
  return enumerated(labels);
}

/// Whether no finger is missing.
bool is_fingered(const Comparison& comparison) {
  return std::all_of(comparison.hands.begin(), comparison.hands.end(), [](const auto& hand) {
    return std::all_of(hand.results.begin(), hand.results.end(), [](const HandResult& result) {
      return result.totals.fingered == result.totals.events;
    });
  });
}

std::vector<AnalysedPassage> all_passages(Comparisons comparisons) {
  std::vector<AnalysedPassage> passages;
  for (const Comparison& comparison : comparisons) {
    for (const NamedPassage& fingering : comparison.fingerings) {
      passages.push_back(fingering.passage);
    }
  }
  return passages;
}

bool any_result(Comparisons comparisons, bool (*holds)(const HandResult&)) {
  return std::any_of(comparisons.begin(), comparisons.end(), [holds](const Comparison& comparison) {
    const std::vector<HandComparison>& hands = comparison.hands;
    return std::any_of(hands.begin(), hands.end(), [holds](const HandComparison& hand) {
      return std::any_of(hand.results.begin(), hand.results.end(), holds);
    });
  });
}

/// What the rows of the tables say that is not plain from their names.
std::string results_words(Comparisons comparisons) {
  const auto carries = [](const HandResult& result) { return result.totals.carried > 0; };
  const auto moves = [](const HandResult& result) {
    return result.totals.moves_in + result.totals.moves_out > 0;
  };
  const auto watched = [](const HandResult& result) { return result.watch.total() > 0; };
  const auto swings = [](const HandResult& result) {
    return result.totals.full_swing_tempo.has_value();
  };
  const auto unknown = [](const HandResult& result) { return !result.difficulty; };
  const bool some_bars =
      std::any_of(comparisons.begin(), comparisons.end(), [](const Comparison& comparison) {
        return comparison.fingerings.front().passage.found().bars.has_value();
      });
  std::string words = fmt::format(
      "difficulty = how hard a model finds the fingering{}: the mean over its strokes, the lower "
      "the "
      "easier (docs/fingering.md)",
      some_bars ? " of these bars by themselves" : "");
  if (any_result(comparisons, unknown)) words += ", - where a finger is missing";
  if (any_result(comparisons, carries)) {
    words += "; carried = white keys that the arm carries the hand, both ways (our model)";
  }
  if (any_result(comparisons, moves)) {
    words += "; moves in, out = further in between the black keys, and back (our model)";
  }
  if (any_result(comparisons, watched)) {
    words += "; info, caution, strain = findings of the watch list";
  }
  if (any_result(comparisons, swings)) {
    words +=
        "; full swings to = the tempo, in quarter notes a minute, up to which every swing can be "
        "full";
  }
  return words;
}

std::string agreement_words(Comparisons comparisons) {
  std::string words =
      "the share of events with the same fingers, or none, in all, and with the same turns (and "
      "what "
      "passes); "
      "bars that agree in both are left out";
  const bool some_events = std::ranges::any_of(comparisons, [](const Comparison& comparison) {
    return comparison.events == ComparedEvents::fingered_in_all;
  });
  if (some_events) words += "; only events that have all their fingers in all are compared";
  return words;
}

bool all_alike(Comparisons comparisons) {
  return std::all_of(comparisons.begin(), comparisons.end(),
                     [](const Comparison& comparison) { return comparison.all_alike(); });
}

}  // namespace

std::string all_alike_words(const Comparison& comparison) {
  const std::string_view how = comparison.events == ComparedEvents::fingered_in_all
                                   ? "the same fingers wherever all have them"
                               : is_fingered(comparison)
                                   ? "the same fingers throughout"
                                   : "the same fingers, and the same ones missing";
  return fmt::format("{} are alike: {}.", all_labels(comparison.fingerings.size()), how);
}

std::vector<LegendEntry> comparison_legend(Comparisons comparisons) {
  constexpr std::array<std::string_view, 4> kShown{"finger", "rotation", "play", "crossing"};
  std::vector<LegendEntry> legend{{"totals", results_words(comparisons)},
                                  {"agreement", agreement_words(comparisons)}};
  if (all_alike(comparisons)) return legend;
  for (LegendEntry& entry : legend_of(all_passages(comparisons))) {
    if (std::find(kShown.begin(), kShown.end(), entry.label) == kShown.end()) continue;
    legend.push_back(std::move(entry));
  }
  return legend;
}

}  // namespace fingerturn
