#include "fingerturn/compare.hpp"
#include "score/timeline.hpp"
#include "text/numbers.hpp"
#include "text/utf8.hpp"
#include "text/wrap.hpp"
#include "write/compare/agreement.hpp"
#include "write/compare/legend.hpp"
#include "write/compare/places.hpp"
#include "write/compare/table.hpp"
#include "write/shared/note_words.hpp"
#include "write/shared/passage_words.hpp"
#include "write/text/foot.hpp"
#include "write/text/head.hpp"
#include "write/text/signs.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

using Comparisons = std::span<const Comparison>;

std::string names_text(std::span<const NamedPassage> fingerings, const TextStyle& style) {
  std::string text;
  const std::size_t width = fingering_label(fingerings.size() - 1).size();
  for (std::size_t i = 0; i < fingerings.size(); ++i) {
    text += wrapped(padded(fingering_label(i), width) + "  ", printable(fingerings[i].name),
                    style.columns);
  }
  return text;
}

std::string comparison_text(const Comparison& comparison, const TextStyle& style) {
  std::string text = title_line(comparison.title, style);
  text += joined_lines(head_parts(comparison.fingerings.front().passage), style);
  text += '\n' + names_text(comparison.fingerings, style);
  for (const HandComparison& hand : comparison.hands) text += results_table(hand, style);
  if (comparison.hands.empty()) return text + "\nNothing is played here.\n";
  text += agreement_table(comparison, style);
  for (const HandComparison& hand : comparison.hands) text += places_text(hand, style);
  if (!comparison.all_alike()) return text;
  return text + '\n' + wrapped("", all_alike_words(comparison), style.columns);
}

/// The beat of an event; where there is no meter, in quarter notes, as most would count.
std::optional<Fraction> counted_beat(const Passage& passage, const Line& line, std::size_t event) {
  const std::vector<std::size_t> beginnings = bar_beginnings(line);
  if (const auto beat = beat_of(passage, line, event, beginnings)) return beat;
  const std::optional<Fraction>& begin = line.events[bar_beginning(beginnings, event)].onset;
  const std::optional<Fraction>& onset = line.events[event].onset;
  return begin && onset ? beat_at(Meter{}, *begin, *onset) : std::nullopt;
}

/// "C4+E4 on beat 2" or "nothing more"; with its bar where that is not the one that is told.
std::string event_text(const Passage& passage, Hand hand, std::optional<std::size_t> event,
                       std::int32_t told_bar) {
  const Line* line = line_of_hand(passage, hand);
  if (line == nullptr) return "nothing";
  if (!event) return "nothing more";
  std::string words = struck_notes_words(line->events[*event]);
  const std::optional<Fraction> beat = counted_beat(passage, *line, *event);
  if (beat) words += fmt::format(" on beat {}", beat_text(*beat));
  const std::int32_t bar = line->events[*event].bar;
  return bar == told_bar ? words : fmt::format("{} of bar {}", words, bar);
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
                     event_text(first, differ.hand, differ.in_first, bar), passages.front().name,
                     event_text(other, differ.hand, differ.in_other, bar),
                     passages[differ.other].name);
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
  for (const LegendEntry& entry : comparison_legend(comparisons)) {
    text += labelled(entry.label, entry.words, settled);
  }
  text += '\n' + emphasised("caution", Emphasis::strong, style.colour) + '\n';
  return text + wrapped("", caution(), settled.columns);
}

}  // namespace fingerturn
