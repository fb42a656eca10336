#include "fingerturn/compare.hpp"
#include "text/escape.hpp"
#include "text/words.hpp"
#include "write/compare/agreement.hpp"
#include "write/compare/blocks.hpp"
#include "write/compare/legend.hpp"
#include "write/compare/names.hpp"
#include "write/compare/table.hpp"
#include "write/shared/passage_words.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

/// A comparison to keep: a table of what each fingering comes to, and a list of the places where
/// they differ.
namespace fingerturn {
namespace {

std::string section(int level, std::string_view words) {
  return fmt::format("\n{} {}\n\n", std::string(static_cast<std::size_t>(level), '#'), words);
}

std::string names_list(std::span<const NamedPassage> fingerings) {
  std::string list = "\n";
  for (std::size_t i = 0; i < fingerings.size(); ++i) {
    list += fmt::format("- **{}**: {}\n", fingering_label(i),
                        escaped_markdown(shown_name(fingerings[i].name, fingerings[i].passage)));
  }
  return list;
}

std::string results_table(const HandComparison& hand) {
  std::string names = fmt::format("| {} hand |", to_string(hand.hand));
  std::string rule = "|---|";
  for (std::size_t i = 0; i < hand.results.size(); ++i) {
    names += fmt::format(" {} |", fingering_label(i));
    rule += "--:|";
  }
  std::string table = '\n' + names + '\n' + rule + '\n';
  for (const ResultsRow& row : results_rows(hand)) {
    table += fmt::format("| {} |", row.label);
    for (const std::string& cell : row.cells) table += fmt::format(" {} |", cell);
    table += '\n';
  }
  return table;
}

std::string agreement_table(const Comparison& comparison) {
  std::string table =
      fmt::format("\n| {} |\n|---|--:|--:|--:|\n", fmt::join(kAgreementHead, " | "));
  for (const HandComparison& hand : comparison.hands) {
    for (const AgreementRow& row : agreement_rows(hand)) {
      table += fmt::format("| {} |\n", fmt::join(row, " | "));
    }
  }
  return table;
}

std::string entry_words(const Entry& entry) {
  if (entry.alike > 0) return alike_words(entry.alike);
  std::string words = entry.beat.empty() ? "" : fmt::format("beat {}, ", entry.beat);
  words += fmt::format("**{}**", escaped_markdown(entry.notes));
  std::string_view mark = ": ";
  for (const Group& group : groups_of(entry)) {
    words +=
        fmt::format("{}{} = {}", mark, group.labels, escaped_markdown(way_words(*group.parts)));
    mark = "; ";
  }
  return words;
}

std::string places_list(const HandComparison& hand) {
  std::string list;
  for (const Block& block : blocks_of(hand, kUnicodeSigns)) {
    std::string bars = to_string(block.bars);
    bars.front() = 'B';
    if (block.entries.empty()) list += fmt::format("- {}: {}\n", bars, whole_bar_words(block));
    for (const Entry& entry : block.entries) {
      list += fmt::format("- {}{}{}\n", bars, entry.alike > 0 ? ": " : ", ", entry_words(entry));
    }
  }
  return list;
}

void add_comparison(std::string& out, const Comparison& comparison, int level) {
  out += escaped_markdown(head_line(comparison.fingerings.front().passage)) + '\n';
  out += names_list(comparison.fingerings);
  if (comparison.hands.empty()) {
    out += "\nNothing is played here.\n";
    return;
  }
  for (const HandComparison& hand : comparison.hands) out += results_table(hand);
  out += agreement_table(comparison);
  for (const HandComparison& hand : comparison.hands) {
    if (hand.differing.empty()) continue;
    out += section(level, fmt::format("Where they differ, {} hand", to_string(hand.hand)));
    out += places_list(hand);
  }
  if (comparison.all_alike()) out += '\n' + all_alike_words(comparison) + '\n';
}

void add_all(std::string& out, std::span<const Comparison> comparisons) {
  out += "# Fingerings compared\n\n";
  for (std::size_t i = 0; i < comparisons.size(); ++i) {
    out += fmt::format("{}. {}\n", i + 1, escaped_markdown(title_of(comparisons[i])));
  }
  for (const Comparison& comparison : comparisons) {
    out += section(2, escaped_markdown(title_of(comparison)));
    add_comparison(out, comparison, 3);
  }
}

}  // namespace

std::string write_comparison_markdown(std::span<const Comparison> comparisons) {
  std::string out;
  if (comparisons.size() == 1) {
    out += fmt::format("# {}\n\n", escaped_markdown(title_of(comparisons.front())));
    add_comparison(out, comparisons.front(), 2);
  } else {
    add_all(out, comparisons);
  }
  out += section(2, "Legend");
  for (const LegendEntry& entry : comparison_legend(comparisons)) {
    out += fmt::format("- {}: {}\n", entry.label, escaped_markdown(entry.words));
  }
  return out + section(2, "Caution") + escaped_markdown(caution()) + '\n';
}

}  // namespace fingerturn
