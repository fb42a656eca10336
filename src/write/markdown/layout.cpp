#include "write/markdown/layout.hpp"

#include "write/text/rows.hpp"

#include <algorithm>
#include <cstdlib>
#include <span>

namespace fingerturn {
namespace {

constexpr int kColumn = 44;
constexpr int kStep = 14;
constexpr int kMostSteps = 3;
constexpr int kLetter = 7;

/// A bar in PageLayout::columns.
struct BarPlace {
  std::int32_t number = 0;
  std::size_t begin = 0;
  std::size_t end = 0;
};

const Event* first_event(const Column& column) {
  for (const auto& shown : column.events) {
    if (shown) return shown->event;
  }
  return nullptr;
}

std::optional<Fraction> onset_of(const Column& column) {
  const Event* event = first_event(column);
  return event == nullptr ? std::nullopt : event->onset;
}

/// From the onset of each column to the next; the last column of all lasts as long as its event.
std::vector<std::optional<Fraction>> times_of(const std::vector<Column>& columns) {
  std::vector<std::optional<Fraction>> times;
  times.reserve(columns.size());
  for (std::size_t i = 0; i + 1 < columns.size(); ++i) {
    const std::optional<Fraction> begin = onset_of(columns[i]);
    const std::optional<Fraction> end = onset_of(columns[i + 1]);
    times.push_back(begin && end ? sum(*end, {-begin->numerator, begin->denominator})
                                 : std::nullopt);
  }
  if (!columns.empty()) times.push_back(first_event(columns.back())->duration);
  return times;
}

/// The shortest of some times that is above 0.
std::optional<Fraction> shortest_of(std::span<const std::optional<Fraction>> times) {
  std::optional<Fraction> shortest;
  for (const std::optional<Fraction>& time : times) {
    if (time && time->numerator > 0 && (!shortest || *time < *shortest)) shortest = time;
  }
  return shortest;
}

/// How often the shortest time can be doubled without getting longer than this one.
int steps_of(Fraction time, Fraction shortest) {
  int steps = 0;
  for (std::optional<Fraction> doubled = product(shortest, {2, 1});
       doubled && *doubled <= time && steps < kMostSteps; doubled = product(*doubled, {2, 1})) {
    ++steps;
  }
  return steps;
}

/// The room that the words of a column take in a table below the picture.
int room_for_words(const Column& column, const SharedLines& lines) {
  std::size_t letters = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (column.events[i]) letters = std::max(letters, width_of(*column.events[i], lines[i]));
  }
  return std::min(kWidestPiece, kLetter * static_cast<int>(std::min<std::size_t>(letters, 60)));
}

/// The widths of the columns of a bar, given how long each lasts.
void add_widths(std::span<const Column> columns, std::span<const std::optional<Fraction>> times,
                const SharedLines& lines, std::vector<int>& edges) {
  const std::optional<Fraction> shortest = shortest_of(times);
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const int steps = times[i] && shortest ? steps_of(*times[i], *shortest) : 0;
    const int width = std::max(kColumn + kStep * steps, room_for_words(columns[i], lines));
    edges.push_back(edges.back() + width);
  }
}

/// Sets where the columns begin, bar by bar.
void set_edges(const std::vector<BarPlace>& bars, const SharedLines& lines, PageLayout& layout) {
  const std::vector<std::optional<Fraction>> times = times_of(layout.columns);
  const bool all_known =
      std::all_of(times.begin(), times.end(), [](const auto& time) { return time.has_value(); });
  const std::vector<std::optional<Fraction>> unknown(all_known ? 0 : times.size());
  const std::span<const std::optional<Fraction>> used = all_known ? times : unknown;
  layout.edges.reserve(layout.columns.size() + 1);
  layout.edges.push_back(0);
  const std::span<const Column> columns = layout.columns;
  for (const BarPlace& bar : bars) {
    const std::size_t size = bar.end - bar.begin;
    add_widths(columns.subspan(bar.begin, size), used.subspan(bar.begin, size), lines,
               layout.edges);
  }
}

/// The columns of one bar in the layout.
struct BarRoom {
  const PageLayout& layout;
  std::size_t begin = 0;
  std::size_t end = 0;

  [[nodiscard]] int width(std::size_t from, std::size_t to) const {
    return layout.edges[to] - layout.edges[from];
  }
};

/// The column at which a part should end that begins at `from`: the beat, or else the column,
/// nearest to the place where equal parts would end.
std::size_t nearest_end(const BarRoom& bar, std::size_t from, int place, bool at_beats) {
  std::size_t best = bar.end;
  for (std::size_t i = from + 1; i < bar.end; ++i) {
    if (at_beats && !bar.layout.columns[i].begins_beat) continue;
    const int distance = std::abs(bar.layout.edges[i] - place);
    if (distance < std::abs(bar.layout.edges[best] - place)) best = i;
  }
  return best;
}

/// Where the parts end when the bar is divided into so many; nothing where one is too wide.
std::optional<std::vector<std::size_t>> ends_of_parts(const BarRoom& bar, int parts,
                                                      bool at_beats) {
  std::vector<std::size_t> ends;
  std::size_t from = bar.begin;
  for (int part = 1; from < bar.end; ++part) {
    const int place = bar.layout.edges[bar.begin] + bar.width(bar.begin, bar.end) * part / parts;
    const std::size_t end = part < parts ? nearest_end(bar, from, place, at_beats) : bar.end;
    if (bar.width(from, end) > kWidestPiece && end > from + 1) return std::nullopt;
    ends.push_back(end);
    from = end;
  }
  return ends;
}

/// As many columns as fit, one part after another.
std::vector<std::size_t> ends_as_they_fit(const BarRoom& bar) {
  std::vector<std::size_t> ends;
  for (std::size_t from = bar.begin, i = from + 1; i <= bar.end; ++i) {
    if (i < bar.end && bar.width(from, i + 1) <= kWidestPiece) continue;
    ends.push_back(i);
    from = i;
  }
  return ends;
}

std::vector<std::size_t> ends_in(const BarRoom& bar) {
  constexpr int kTries = 3;
  constexpr int kMostParts = 24;
  const int fewest = (bar.width(bar.begin, bar.end) + kWidestPiece - 1) / kWidestPiece;
  if (fewest > kMostParts) return ends_as_they_fit(bar);
  for (const bool at_beats : {true, false}) {
    for (int parts = fewest; parts < fewest + kTries; ++parts) {
      if (auto ends = ends_of_parts(bar, parts, at_beats)) return *ends;
    }
  }
  return ends_as_they_fit(bar);
}

PageSystem pieces_of(std::int32_t number, const BarRoom& bar) {
  PageSystem pieces;
  std::size_t from = bar.begin;
  for (const std::size_t end : ends_in(bar)) {
    pieces.push_back({number, from > bar.begin, end == bar.end, from, end - from});
    from = end;
  }
  return pieces;
}

/// Adds the pieces of a bar to the last system where they fit; a bar that is wider than a system
/// fills several.
void add_to_systems(const PageSystem& pieces, PageLayout& layout, int& used) {
  int width = 0;
  for (const Piece& piece : pieces) width += layout.end_of(piece) - layout.begin_of(piece);
  bool fresh = layout.systems.empty() || used + width > kWidestSystem;
  for (const Piece& piece : pieces) {
    const int part = layout.end_of(piece) - layout.begin_of(piece);
    if (fresh || used + part > kWidestSystem) {
      layout.systems.emplace_back();
      used = 0;
      fresh = false;
    }
    layout.systems.back().push_back(piece);
    used += part;
  }
}

std::size_t most_columns(const SharedLines& lines) {
  std::size_t events = 0;
  for (const AnalysedLine& line : lines) events += line.written().events.size();
  return events;
}

}  // namespace

PageLayout layout_of(const AnalysedPassage& passage, const SharedLines& lines) {
  const BarSequence sequence(passage, lines);
  PageLayout layout;
  // Growing by steps would hold a long layout twice.
  layout.columns.reserve(most_columns(lines));
  std::vector<BarPlace> bars;
  for (std::size_t i = 0; i < sequence.size(); ++i) {
    const BarColumns bar = sequence[i];
    bars.push_back({bar.bar, layout.columns.size(), layout.columns.size() + bar.columns.size()});
    layout.columns.insert(layout.columns.end(), bar.columns.begin(), bar.columns.end());
  }
  set_edges(bars, lines, layout);
  int used = 0;
  for (const BarPlace& bar : bars) {
    add_to_systems(pieces_of(bar.number, {layout, bar.begin, bar.end}), layout, used);
  }
  return layout;
}

}  // namespace fingerturn
