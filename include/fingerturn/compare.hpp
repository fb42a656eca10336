#pragma once

#include "fingerturn/analysed.hpp"
#include "fingerturn/fraction.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/score.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

/// Fingerings of the same notes side by side: what each comes to, and where they differ.
///
///     const AnalysedScore printed("printed", one.score);
///     const AnalysedScore mine("mine", other.score);
///     const std::vector<NamedPassage> fingerings{{"printed", printed[0]}, {"mine", mine[0]}};
///     if (const auto differ = notes_differ(fingerings)) fail(render(fingerings, *differ));
///     const std::vector<Comparison> comparisons{compare("etude", fingerings)};
///     std::cout << write_comparison_text(comparisons, {});
namespace fingerturn {

/// A passage under the name of its fingering. What it views must outlive it.
struct NamedPassage {
  std::string name;
  AnalysedPassage passage;
};

/// The first place at which a passage is not one of the same notes as the first.
struct NotesDiffer {
  std::size_t other = 0;  ///< the place of the passage that differs from the first
  Hand hand = Hand::right;
  /// The events that should be the same, by their places in Line::events; none where the hand
  /// plays nothing more.
  std::optional<std::size_t> in_first;
  std::optional<std::size_t> in_other;
};

/// Whether all have the same notes: in each hand the same keys, struck in the same order and, where
/// both are known, at the same onsets. None where they have, or there is one only. A note that is
/// held over into some bars is not struck in them, but is in an excerpt of them.
std::optional<NotesDiffer> notes_differ(std::span<const NamedPassage> passages);

/// "bar 2, right hand: E5 in printed, F5 in mine"; for what `notes_differ` found in the same
/// passages.
std::string render(std::span<const NamedPassage> passages, const NotesDiffer& differ);

/// What one fingering of one hand comes to.
struct HandResult {
  Totals totals;
  std::optional<double> difficulty;  ///< as in its analysis (`with_difficulties`)
  WatchCounts watch;
};

/// An event that is not played alike in all fingerings: by other fingers, as another kind, toward
/// another side, or with another crossing.
struct DifferingEvent {
  std::size_t number = 0;        ///< among the events that are struck, from 0
  std::int32_t bar = 0;          ///< in the first fingering
  std::optional<Fraction> beat;  ///< the same; from 1, none where not known
};

/// Which events of fingerings are compared.
enum class ComparedEvents : std::uint8_t {
  all,
  fingered_in_all  ///< those whose every struck note has a finger in all, and no suggested one
};

/// How far fingerings agree.
struct Agreement {
  std::size_t events = 0;   ///< that are compared
  std::size_t fingers = 0;  ///< of these, with the same fingers in all
  std::size_t turns = 0;    ///< with the same kind, side and crossing in all

  /// Whether all that is compared is the same.
  [[nodiscard]] bool is_full() const noexcept { return fingers == events && turns == events; }
  void add(const Agreement& other) noexcept;
  friend bool operator==(const Agreement&, const Agreement&) = default;
};

struct BarAgreement {
  std::int32_t bar = 0;
  Agreement agreement;

  friend bool operator==(const BarAgreement&, const BarAgreement&) = default;
};

struct HandComparison {
  Hand hand = Hand::right;
  std::vector<AnalysedLine> lines;      ///< one for each fingering
  std::vector<std::size_t> compared;    ///< the events that are compared, by their numbers among
                                        ///< those that are struck, rising
  std::vector<BarAgreement> agreement;  ///< of each bar with such events, in their order
  std::vector<HandResult> results;      ///< one for each fingering, of all events
  std::vector<DifferingEvent> differing;

  /// The bar of a struck event, in the first fingering.
  [[nodiscard]] std::int32_t bar_of(std::size_t number) const noexcept {
    return lines.front()[number].written.bar;
  }
  [[nodiscard]] Agreement in_all() const noexcept;
};

/// Fingerings of the same notes, of which there is one or more, and what comes of comparing them.
struct Comparison {
  std::string title;
  std::vector<NamedPassage> fingerings;
  std::vector<HandComparison> hands;  ///< those that play, the right hand first
  ComparedEvents events = ComparedEvents::all;

  /// Whether nothing differs.
  [[nodiscard]] bool all_alike() const noexcept;
};

/// Compares fingerings of the same notes; where notes differ (`notes_differ`), up to there.
Comparison compare(std::string title, std::vector<NamedPassage> fingerings,
                   ComparedEvents events = ComparedEvents::all);

/// The fingerings that a score offers beside its own (`Note::alternatives`): in the first each note
/// has the first finger that is offered for it, in the second the second, and so on up to four;
/// where none is offered, its own. None where none is offered at all.
std::vector<Score> alternate_fingerings(const Score& score);

/// Why scores cannot be compared.
struct PairingProblem {
  enum class Kind : std::uint8_t {
    no_passage,     ///< `score` holds none
    one_passage,    ///< there is but one score, with one passage
    counts_differ,  ///< the first and `score` hold several passages, but not as many
    notes_differ    ///< as `words` say
  };
  Kind kind = Kind::no_passage;
  std::size_t score = 0;  ///< its place among the scores
  std::string words;
};

/// What was compared with what, or why nothing was.
struct PairedScores {
  std::vector<Comparison> comparisons;
  std::optional<PairingProblem> problem;
};

/// Pairs the passages of scores and compares them: those of one score with each other, those of
/// several passage by passage or, where one of them holds only one, all in one comparison. Beside
/// them stands a suggestion where there is one, a single score then being named by what is given
/// in it. The scores, of which there is one or more, and the suggestion must outlive the result.
PairedScores compare_scores(std::span<const AnalysedScore> scores, const AnalysedScore* suggestion,
                            ComparedEvents events = ComparedEvents::all);

/// Compares each run of passages of a score that have the same notes, as `with_fingerings` sets
/// fingerings one after another. The score must outlive the result.
std::vector<Comparison> compare_neighbours(const AnalysedScore& of);

/// A report to read: for each comparison a table with a column for each fingering, and the places
/// where they differ.
std::string write_comparison_text(std::span<const Comparison> comparisons, const TextStyle& style);
/// The same to keep, in Markdown (CommonMark with tables): the places as a list.
std::string write_comparison_markdown(std::span<const Comparison> comparisons);
/// The same for the stand, as one HTML page without a script: the bars that differ on one staff,
/// with a ribbon for each fingering.
std::string write_comparison_html(std::span<const Comparison> comparisons);
/// One JSON document, described by docs/comparison.schema.json.
std::string write_comparison_json(std::span<const Comparison> comparisons);

/// What stands for the fingering of this number, from 0: "A" to "Z", then "AA".
std::string fingering_label(std::size_t number);

}  // namespace fingerturn
