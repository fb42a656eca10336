#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/fraction.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/score.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Fingerings of the same notes side by side: what each comes to, and where they differ.
///
///     const std::vector<Fingering> fingerings{{"printed", one.passages[0], first.passages[0]},
///                                             {"mine", other.passages[0], second.passages[0]}};
///     if (const auto differ = notes_differ(fingerings)) fail(render(fingerings, *differ));
///     const Comparison comparison = compare(fingerings);
///     const std::vector<ComparisonReport> reports{{"etude", fingerings, comparison}};
///     std::cout << write_comparison_text(reports, {});
namespace fingerturn {

/// One fingering: a passage and its analysis, which must outlive it, under a name.
struct Fingering {
  std::string name;
  const Passage& passage;
  const PassageAnalysis& analysis;
};

/// The first place at which a fingering is not one of the same notes as the first fingering.
struct NotesDiffer {
  std::size_t other = 0;  ///< the place of the fingering that differs from the first
  Hand hand = Hand::right;
  /// The events that should be the same, by their places in Line::events; none where the hand
  /// plays nothing more.
  std::optional<std::size_t> in_first;
  std::optional<std::size_t> in_other;
};

/// Whether all are fingerings of the same notes: in each hand the same keys, struck in the same
/// order and, where both are known, at the same onsets. None where they are, or there is one only.
/// A note that is held over into some bars is not struck in them, but is in an excerpt of them.
std::optional<NotesDiffer> notes_differ(std::span<const Fingering> fingerings) noexcept;

/// "bar 2, right hand: E5 in printed, F5 in mine"; for what `notes_differ` found in the same
/// fingerings.
std::string render(std::span<const Fingering> fingerings, const NotesDiffer& differ);

/// What one fingering of one hand comes to.
struct FingeringResult {
  Totals totals;
  std::optional<double> difficulty;  ///< as in its analysis (`with_difficulties`)
  std::size_t info = 0;              ///< findings of the watch list by their levels
  std::size_t caution = 0;
  std::size_t strain = 0;
};

/// An event that is not played alike in all fingerings: by other fingers, as another kind, toward
/// another side, or with another crossing.
struct DifferingEvent {
  std::size_t number = 0;             ///< its place among the events that are compared, from 0
  std::int32_t bar = 0;               ///< of the first fingering
  std::optional<Fraction> beat;       ///< the same; from 1, none where not known
  std::vector<EventAnalysis> played;  ///< one for each fingering
};

struct HandComparison {
  Hand hand = Hand::right;
  std::vector<std::int32_t> bars;        ///< the bar of each event that is compared
  std::vector<FingeringResult> results;  ///< one for each fingering
  std::vector<DifferingEvent> differing;
};

/// The hands that play, the right hand first.
struct Comparison {
  std::vector<HandComparison> hands;

  /// Whether nothing differs.
  [[nodiscard]] bool all_alike() const noexcept;
};

/// Compares fingerings of the same notes; where notes differ (`notes_differ`), up to there.
Comparison compare(std::span<const Fingering> fingerings) noexcept;

/// What a report on a comparison is made from, all of which must outlive it. There is one fingering
/// or more.
struct ComparisonReport {
  std::string_view title;
  std::span<const Fingering> fingerings;
  const Comparison& comparison;
  std::optional<BarRange> bars = std::nullopt;  ///< where only these were asked for
};

/// A report to read: for each passage a table with a column for each fingering, and the places
/// where they differ.
std::string write_comparison_text(std::span<const ComparisonReport> reports,
                                  const TextStyle& style) noexcept;
/// One JSON document, described by docs/comparison.schema.json.
std::string write_comparison_json(std::span<const ComparisonReport> reports) noexcept;

/// What stands for the fingering of this number, from 0: "A" to "Z", then "AA".
std::string fingering_label(std::size_t number);

}  // namespace fingerturn
