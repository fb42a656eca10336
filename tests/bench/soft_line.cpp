#include "soft_line.hpp"

#include "fingering/choices.hpp"
#include "fingering/difficulty.hpp"
#include "fingering/figures.hpp"
#include "fingering/grips.hpp"

#include <algorithm>
#include <span>

/// Making the stretches: which grips they hold, and the amounts of every term in them.
namespace fingerturn::bench {
namespace {

constexpr Model kNothing{};

template <typename Add>
void add_row(AmountRows& rows, const Add& add) {
  Counted counted;
  Tally tally(kNothing.weights, kNothing.tables, {}, &counted);
  add(tally);
  for (std::size_t term = 0; term < kTermCount; ++term) {
    const std::int32_t amount = counted.amounts.at(term);
    if (amount == 0) continue;
    rows.amounts.push_back({static_cast<std::uint16_t>(term), static_cast<float>(amount) / kOne});
  }
  for (const Counted::Entry& entry : counted.entries) {
    rows.amounts.push_back({static_cast<std::uint16_t>(kTermCount + entry.at),
                            1.0F / static_cast<float>(entry.parts)});
  }
  rows.begins.push_back(rows.amounts.size());
}

/// A line without its fingers, and what was printed.
struct BareLine {
  explicit BareLine(const Line& line)
      : printed(line),
        spans(std::nullopt),
        grips(grips_with_figures(with_printed(line, [] { return false; }), spans)),
        choices(grips, spans) {}

  static std::vector<Grip> grips_with_figures(const Line& line, const SpanTable& spans) {
    std::vector<Grip> grips = grips_of(line, spans);
    mark_figures(figures_of(line.hand, grips), grips);
    mark_octaves(grips);
    return grips;
  }

  const Line& printed;
  SpanTable spans;
  std::vector<Grip> grips;
  Choices choices;

  [[nodiscard]] Finger finger_printed(std::size_t grip, std::size_t key) const {
    for (const Note& note : printed.events[grips[grip].event].notes) {
      const bool here =
          across(printed.hand, midi_number(note.pitch)) == grips[grip].keys.at(key).across;
      if (here && is_printed(note)) return *note.finger;
    }
    return 0;
  }

  [[nodiscard]] std::size_t printed_count(std::size_t grip) const {
    std::size_t count = 0;
    for (std::size_t key = 0; key < grips[grip].count; ++key) {
      if (finger_printed(grip, key) != 0) ++count;
    }
    return count;
  }

  [[nodiscard]] std::uint8_t misses(std::size_t grip, const Choice& choice) const {
    std::uint8_t count = 0;
    for (std::size_t key = 0; key < grips[grip].count; ++key) {
      const Finger printed_finger = finger_printed(grip, key);
      if (printed_finger != 0 && printed_finger != choice.strikes.at(key)) ++count;
    }
    return count;
  }
};

/// The grips from some before a printed finger to some after it.
std::vector<bool> near_printed(const BareLine& line) {
  constexpr std::size_t kBefore = 10;
  constexpr std::size_t kAfter = 8;
  std::vector<bool> near(line.grips.size());
  for (std::size_t grip = 0; grip < near.size(); ++grip) {
    if (line.printed_count(grip) == 0) continue;
    const std::size_t begin = grip - std::min(grip, kBefore);
    const std::size_t end = std::min(near.size(), grip + kAfter + 1);
    std::fill(near.begin() + static_cast<std::ptrdiff_t>(begin),
              near.begin() + static_cast<std::ptrdiff_t>(end), true);
  }
  return near;
}

void add_threes(const BareLine& line, std::size_t at, SoftGrip& soft) {
  const std::vector<Grip>& grips = line.grips;
  if (!belong_together(grips[at - 1], grips[at])) return;
  const bool single = are_single(grips[at - 2], grips[at - 1], grips[at]);
  for (const Choice& first : line.choices.of(at - 2)) {
    for (const Choice& middle : line.choices.of(at - 1)) {
      for (const Choice& last : line.choices.of(at)) {
        add_row(soft.threes, [&](Tally& tally) {
          add_over_two({grips[at - 2], first}, {grips[at], last}, tally);
          if (!single) return;
          add_three({grips[at - 2], first}, {grips[at - 1], middle}, {grips[at], last}, line.spans,
                    tally);
        });
      }
    }
  }
}

SoftGrip soft_grip(const BareLine& line, std::size_t at, std::size_t before) {
  SoftGrip soft;
  const std::span<const Choice> choices = line.choices.of(at);
  soft.choices = choices.size();
  for (const Choice& choice : choices) {
    soft.misses.push_back(line.misses(at, choice));
    soft.agrees.push_back(soft.misses.back() == 0);
    add_row(soft.alone, [&](Tally& tally) {
      add_grip({line.grips[at], choice}, line.spans, tally);
    });
  }
  // Fingers that no choice has, as where a print puts one over another, say nothing.
  if (std::find(soft.agrees.begin(), soft.agrees.end(), true) == soft.agrees.end()) {
    soft.agrees.assign(soft.choices, true);
    soft.misses.assign(soft.choices, 0);
  }
  if (before == 0) return soft;
  for (const Choice& from : line.choices.of(at - 1)) {
    for (const Choice& to : choices) {
      add_row(soft.steps, [&](Tally& tally) {
        add_step({line.grips[at - 1], from}, {line.grips[at], to}, line.spans, tally);
      });
    }
  }
  if (before >= 2) add_threes(line, at, soft);
  return soft;
}

void add_stretches(const Piece& piece, const Line& printed, std::vector<SoftLine>& lines) {
  const BareLine line(printed);
  const std::vector<bool> near = near_printed(line);
  std::size_t before = 0;
  for (std::size_t at = 0; at < near.size(); ++at) {
    if (!near[at]) {
      before = 0;
      continue;
    }
    if (before == 0) lines.push_back({piece.composer, 0, 1, {}});
    lines.back().printed += line.printed_count(at);
    lines.back().grips.push_back(soft_grip(line, at, before));
    ++before;
  }
}

}  // namespace

std::vector<SoftLine> soft_lines(const std::vector<Piece>& pieces) {
  std::vector<SoftLine> lines;
  for (const Piece& piece : pieces) {
    for (const Passage& passage : piece.score.passages) {
      for (const Line& line : passage.lines) add_stretches(piece, line, lines);
    }
  }
  return lines;
}

}  // namespace fingerturn::bench
