#include "fingerturn/compare.hpp"
#include "score/timeline.hpp"
#include "text/numbers.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"
#include "text/wrap.hpp"
#include "write/compare/places.hpp"
#include "write/compare/table.hpp"
#include "write/shared/note_words.hpp"
#include "write/shared/passage_words.hpp"
#include "write/text/foot.hpp"
#include "write/text/head.hpp"
#include "write/text/legend.hpp"
#include "write/text/signs.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

using Comparisons = std::span<const Comparison>;

std::string all_labels(std::size_t count) {
  std::vector<std::string> labels;
  for (std::size_t i = 0; i < count; ++i) labels.push_back(fingering_label(i));
  return enumerated(labels);
}

std::string names_text(std::span<const NamedPassage> fingerings, const TextStyle& style) {
  std::string text;
  const std::size_t width = fingering_label(fingerings.size() - 1).size();
  for (std::size_t i = 0; i < fingerings.size(); ++i) {
    text += wrapped(padded(fingering_label(i), width) + "  ", printable(fingerings[i].name),
                    style.columns);
  }
  return text;
}

/// Whether no finger is missing.
bool is_fingered(const Comparison& comparison) {
  return std::all_of(comparison.hands.begin(), comparison.hands.end(), [](const auto& hand) {
    return std::all_of(hand.results.begin(), hand.results.end(), [](const HandResult& result) {
      return result.totals.fingered == result.totals.events;
    });
  });
}

std::string comparison_text(const Comparison& comparison, const TextStyle& style) {
  std::string text = title_line(comparison.title, style);
  text += joined_lines(head_parts(comparison.fingerings.front().passage), style);
  text += '\n' + names_text(comparison.fingerings, style);
  for (const HandComparison& hand : comparison.hands) text += results_table(hand, style);
  for (const HandComparison& hand : comparison.hands) text += places_text(hand, style);
  if (comparison.hands.empty()) return text + "\nNothing is played here.\n";
  if (!comparison.all_alike()) return text;
  const std::string alike =
      fmt::format("{} are alike: {}.", all_labels(comparison.fingerings.size()),
                  is_fingered(comparison) ? "the same fingers throughout"
                                          : "the same fingers, and the same ones missing");
  return text + '\n' + wrapped("", alike, style.columns);
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
std::string results_legend(Comparisons comparisons, const TextStyle& style) {
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
      "difficulty = how hard a model finds the fingering{}, the lower the easier "
      "(docs/fingering.md)",
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
  return labelled("totals", words, style);
}

/// The signs of the places that differ.
std::string places_legend(Comparisons comparisons, const TextStyle& style) {
  constexpr std::array<std::string_view, 4> kShown{"finger", "rotation", "play", "crossing"};
  std::string text;
  for (const LegendEntry& entry : legend_of(all_passages(comparisons))) {
    if (std::find(kShown.begin(), kShown.end(), entry.label) == kShown.end()) continue;
    text += labelled(entry.label, entry.words, style);
  }
  return text;
}

std::string legend_of_all(Comparisons comparisons, const TextStyle& style) {
  std::string text = results_legend(comparisons, style);
  const bool all_alike =
      std::all_of(comparisons.begin(), comparisons.end(),
                  [](const Comparison& comparison) { return comparison.all_alike(); });
  return all_alike ? text : text + places_legend(comparisons, style);
}

/// The beat of an event; where there is no meter, in quarter notes, as most would count.
std::optional<Fraction> counted_beat(const Passage& passage, const Line& line, std::size_t event) {
  const std::vector<std::size_t> beginnings = bar_beginnings(line);
  if (const auto beat = beat_of(passage, line, event, beginnings)) return beat;
  const std::optional<Fraction>& begin = line.events[bar_beginning(beginnings, event)].onset;
  const std::optional<Fraction>& onset = line.events[event].onset;
  return begin && onset ? beat_at(Meter{}, *begin, *onset) : std::nullopt;
}

/// "C4+E4 on beat 2" or "nothing more".
std::string event_text(const Passage& passage, Hand hand, std::optional<std::size_t> event) {
  const Line* line = line_of_hand(passage, hand);
  if (line == nullptr) return "nothing";
  if (!event) return "nothing more";
  std::string words = struck_notes_words(line->events[*event]);
  const std::optional<Fraction> beat = counted_beat(passage, *line, *event);
  if (beat) words += fmt::format(" on beat {}", beat_text(*beat));
  return words;
}

std::int32_t bar_of(const Passage& passage, Hand hand, std::size_t event) {
  return line_of_hand(passage, hand)->events[event].bar;
}

}  // namespace

std::string fingering_label(std::size_t number) {
  constexpr std::size_t kLetters = 26;
  std::string label;
  for (++number; number > 0; number = (number - 1) / kLetters) {
    label.insert(label.begin(), static_cast<char>('A' + (number - 1) % kLetters));
  }
  return label;
}

std::string render(std::span<const NamedPassage> passages, const NotesDiffer& differ) {
  const Passage& first = passages.front().passage.written();
  const Passage& other = passages[differ.other].passage.written();
  const std::int32_t bar = differ.in_first ? bar_of(first, differ.hand, *differ.in_first)
                                           : bar_of(other, differ.hand, *differ.in_other);
  return fmt::format("bar {}, {} hand: {} in {}, {} in {}", bar, to_string(differ.hand),
                     event_text(first, differ.hand, differ.in_first), passages.front().name,
                     event_text(other, differ.hand, differ.in_other), passages[differ.other].name);
}

std::string write_comparison_text(Comparisons comparisons, const TextStyle& style) {
  TextStyle settled = style;
  settled.columns = std::max(style.columns, kFewestColumns);
  std::string text;
  for (const Comparison& comparison : comparisons) {
    if (!text.empty()) text += '\n';
    text += comparison_text(comparison, settled);
  }
  if (!text.empty()) text += '\n';
  if (style.brief) return text + labelled("caution", brief_caution(), settled);
  text += emphasised("legend", Emphasis::strong, style.colour) + '\n';
  text += legend_of_all(comparisons, settled);
  text += '\n' + emphasised("caution", Emphasis::strong, style.colour) + '\n';
  return text + wrapped("", caution(), settled.columns);
}

}  // namespace fingerturn
