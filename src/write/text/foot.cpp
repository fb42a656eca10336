#include "write/text/foot.hpp"

#include "text/utf8.hpp"
#include "text/wrap.hpp"
#include "write/shared/cues.hpp"
#include "write/shared/note_words.hpp"
#include "write/shared/passage_words.hpp"
#include "write/text/grid.hpp"
#include "write/text/rows.hpp"
#include "write/text/signs.hpp"
#include "write/text/trace.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// The room that the names of the events take beside their reasons.
std::size_t width_for_events(const AnalysedLine& line, const TextStyle& style) {
  constexpr std::size_t kPartOfLine = 4;
  const std::size_t widest = static_cast<std::size_t>(style.columns) / kPartOfLine;
  std::size_t width = 0;
  for (const AnalysedEvent event : line) {
    const std::size_t length = event_words(line.written(), event.found.event).size();
    if (length <= widest) width = std::max(width, length);
  }
  return width;
}

/// An event with a sentence beside it, or below it where the event's name is too long.
std::string sentence_text(const std::string& event, std::size_t width, std::string_view sentence,
                          const TextStyle& style) {
  if (event.size() <= width) {
    return wrapped("  " + padded(event, width) + "  ", sentence, style.columns);
  }
  return "  " + event + '\n' + wrapped(std::string(width + 4, ' '), sentence, style.columns);
}

/// What is said of one event under --detail and --cues.
std::vector<std::string> sentences_of(const AnalysedLine& line, const EventAnalysis& found,
                                      const TextStyle& style) {
  std::vector<std::string> sentences;
  if (style.cues) sentences.push_back(cue_of(found, line.hand()));
  if (style.detail) sentences.push_back(reason_with_suggestion(line, found));
  return sentences;
}

/// Whether a row is left out where there are few (grid.cpp).
bool is_left_out_of_few(std::string_view label) noexcept {
  constexpr std::array kLeftOut{Row::prepare, Row::forearm, Row::held, Row::carry, Row::depth};
  return std::ranges::any_of(kLeftOut, [label](Row row) { return label_of(row) == label; });
}

/// Whether the drawing of the swing stands for the row.
bool is_drawn(std::string_view label) {
  return label == "prepare" || label == "play" || label == "forearm";
}

}  // namespace

std::string labelled(std::string_view label, std::string_view words, const TextStyle& style) {
  if (words.empty()) return {};
  const std::string opening = padded(label, kLabelWidth);
  return emphasised(opening, Emphasis::faint, style.colour) +
         wrapped(opening, words, style.columns).substr(opening.size());
}

std::string totals_text(const LineAnalysis& analysis, const TextStyle& style) {
  return labelled(to_string(analysis.hand), totals_words(analysis.totals), style);
}

void add_reasons(TextOut& out, const AnalysedLine& line, const TextStyle& style) {
  const std::size_t width = width_for_events(line, style);
  std::optional<std::int32_t> bar;
  for (const auto& [event, found] : line) {
    if (bar != event.bar) {
      bar = event.bar;
      out.add(emphasised(fmt::format("{} hand, bar {}", to_string(line.hand()), event.bar),
                         Emphasis::strong, style.colour));
      out.add('\n');
    }
    std::string name = event_words(line.written(), found.event);
    for (const std::string& sentence : sentences_of(line, found, style)) {
      out.add(sentence_text(name, width, sentence, style));
      name.clear();
    }
  }
}

std::string together_text(const AnalysedPassage& passage, const TextStyle& style) {
  return labelled("tempo", full_swing_words(passage), style) +
         labelled("together", together_words(passage), style);
}

std::string legend_text(const std::vector<LegendEntry>& entries, const TextStyle& style) {
  std::string text;
  bool left_out = false;
  for (const LegendEntry& entry : entries) {
    if (!entry.label.empty()) {
      left_out = (style.trace && is_drawn(entry.label)) ||
                 (style.few_rows && is_left_out_of_few(entry.label));
    }
    if (!left_out) text += labelled(entry.label, entry.words, style);
    if (style.trace && entry.label == "rotation") {
      text += labelled("swing", trace_legend(style.ascii), style);
    }
  }
  return text;
}

}  // namespace fingerturn
