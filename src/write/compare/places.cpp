#include "write/compare/places.hpp"

#include "text/cells.hpp"
#include "text/wrap.hpp"
#include "write/compare/blocks.hpp"
#include "write/text/signs.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

using PartWidths = std::array<std::size_t, kParts>;

std::string bar_numbers(const BarRange& bars) {
  return bars.first == bars.last ? std::to_string(bars.first)
                                 : fmt::format("{}-{}", bars.first, bars.last);
}

std::string without_end_blanks(std::string text) {
  text.erase(text.find_last_not_of(' ') + 1);
  return text;
}

void widen(std::size_t& width, std::string_view text) {
  width = std::max(width, count_cells(text));
}

void widen(PartWidths& widths, const Parts& parts) {
  for (std::size_t part = 0; part < kParts; ++part) widen(widths[part], parts[part].text);
}

/// The width of the parts with a blank between those that are there.
std::size_t width_of(const PartWidths& widths) {
  std::size_t width = 0;
  for (const std::size_t part : widths) width += part > 0 ? part + 1 : 0;
  return width;
}

/// The parts in columns, a blank behind each.
std::string parts_text(const Parts& parts, const PartWidths& widths, const TextStyle& style) {
  std::string text;
  for (std::size_t part = 0; part < kParts; ++part) {
    if (widths[part] == 0) continue;
    const std::string blanks(widths[part] + 1 - count_cells(parts[part].text), ' ');
    text += emphasised(parts[part].text, parts[part].emphasis, style.colour) + blanks;
  }
  return text;
}

/// A table of the places. The fingerings stand beside one another, a column for each, or below one
/// another, a row for each way to play.
class PlacesTable {
 public:
  PlacesTable(const std::vector<Block>& blocks, std::size_t fingerings, bool beside)
      : blocks_(blocks), beside_(beside), played_(beside ? fingerings : 1) {
    for (const Block& block : blocks) {
      widen(bar_, bar_numbers(block.bars));
      for (const Entry& entry : block.entries) make_room_for(entry);
    }
    bar_ += kGap;
    notes_ += kGap;
    if (beat_ > 0) beat_ = std::max(beat_, kBeat.size()) + kGap;
    if (labels_ > 0) labels_ += kGap;
  }

  [[nodiscard]] bool fits(int columns) const {
    std::size_t width = bar_ + beat_ + notes_ + labels_;
    for (const PartWidths& widths : played_) width += width_of(widths) + 1;
    return width - kGap <= static_cast<std::size_t>(columns);
  }

  [[nodiscard]] std::string write(const TextStyle& style) const {
    std::string text = head(style);
    for (const Block& block : blocks_) {
      std::string bar = bar_numbers(block.bars);
      if (block.entries.empty()) text += plain_row(bar, whole_bar_words(block));
      for (const Entry& entry : block.entries) {
        text +=
            entry.alike > 0 ? plain_row(bar, alike_words(entry.alike)) : rows(bar, entry, style);
        bar.clear();
      }
    }
    return text;
  }

 private:
  static constexpr std::string_view kBeat = "beat";

  void make_room_for(const Entry& entry) {
    widen(beat_, entry.beat);
    widen(notes_, entry.notes);
    for (std::size_t i = 0; i < entry.played.size(); ++i) {
      widen(played_[beside_ ? i : 0], entry.played[i]);
    }
    if (beside_) return;
    for (const Group& group : groups_of(entry)) widen(labels_, group.labels);
  }

  [[nodiscard]] std::string opening(const std::string& bar, std::string_view beat,
                                    std::string_view notes) const {
    return padded(bar, bar_) + padded(beat, beat_) + padded(notes, notes_);
  }

  [[nodiscard]] std::string plain_row(const std::string& bar, const std::string& words) const {
    return padded(bar, bar_) + std::string(beat_, ' ') + words + '\n';
  }

  [[nodiscard]] std::string head(const TextStyle& style) const {
    std::string row = opening("bar", beat_ > 0 ? kBeat : "", "note");
    for (std::size_t i = 0; beside_ && i < played_.size(); ++i) {
      row += padded(fingering_label(i), width_of(played_[i]) + 1);
    }
    return emphasised(without_end_blanks(std::move(row)), Emphasis::faint, style.colour) + '\n';
  }

  [[nodiscard]] std::string rows(const std::string& bar, const Entry& entry,
                                 const TextStyle& style) const {
    std::string row = opening(bar, entry.beat, entry.notes);
    if (beside_) {
      for (std::size_t i = 0; i < entry.played.size(); ++i) {
        row += parts_text(entry.played[i], played_[i], style) + ' ';
      }
      return without_end_blanks(std::move(row)) + '\n';
    }
    std::string text;
    for (const Group& group : groups_of(entry)) {
      row += padded(group.labels, labels_) + parts_text(*group.parts, played_[0], style);
      text += without_end_blanks(std::move(row)) + '\n';
      row.assign(bar_ + beat_ + notes_, ' ');
    }
    return text;
  }

  const std::vector<Block>& blocks_;
  bool beside_;
  std::size_t bar_ = 3;
  std::size_t beat_ = 0;
  std::size_t notes_ = 4;
  std::size_t labels_ = 0;
  std::vector<PartWidths> played_;
};

/// A way to play, and behind it the fingerings that have it, in as many lines as they need.
std::string listed_way(const Group& group, const PartWidths& widths, const TextStyle& style) {
  const std::string indent(kGap + kGap, ' ');
  const std::string opening = indent + parts_text(*group.parts, widths, {}) + ' ';
  const std::string text = wrapped(opening, group.labels, style.columns);
  return indent + parts_text(*group.parts, widths, style) + ' ' + text.substr(opening.size());
}

std::string listed_entry(const Entry& entry, const TextStyle& style) {
  const std::string indent(kGap, ' ');
  if (entry.alike > 0) return indent + alike_words(entry.alike) + '\n';
  const std::string beat = entry.beat.empty() ? "" : fmt::format("beat {}  ", entry.beat);
  std::string text = indent + beat + entry.notes + '\n';
  PartWidths widths{};
  for (const Parts& parts : entry.played) widen(widths, parts);
  for (const Group& group : groups_of(entry)) text += listed_way(group, widths, style);
  return text;
}

/// The places one below another, where there is no room for a table.
std::string listed(const std::vector<Block>& blocks, const TextStyle& style) {
  std::string text;
  for (const Block& block : blocks) {
    const std::string bars = to_string(block.bars);
    text += block.entries.empty() ? bars + ": " + whole_bar_words(block) + '\n' : bars + '\n';
    for (const Entry& entry : block.entries) text += listed_entry(entry, style);
  }
  return text;
}

std::string laid_out(const std::vector<Block>& blocks, std::size_t fingerings,
                     const TextStyle& style) {
  for (const bool beside : {true, false}) {
    const PlacesTable table(blocks, fingerings, beside);
    if (table.fits(style.columns)) return table.write(style);
  }
  return listed(blocks, style);
}

}  // namespace

std::string places_text(const HandComparison& hand, const TextStyle& style) {
  if (hand.differing.empty()) return {};
  const Signs& signs = style.ascii ? kAsciiSigns : kUnicodeSigns;
  const std::string head = fmt::format("where they differ, {} hand", to_string(hand.hand));
  return '\n' + emphasised(head, Emphasis::strong, style.colour) + '\n' +
         laid_out(blocks_of(hand, signs), hand.lines.size(), style);
}

}  // namespace fingerturn
