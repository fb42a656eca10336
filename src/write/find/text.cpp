#include "fingerturn/find.hpp"
#include "fingerturn/report.hpp"
#include "text/utf8.hpp"
#include "text/wrap.hpp"
#include "write/passage/bar_text.hpp"
#include "write/shared/demand_words.hpp"
#include "write/shared/note_words.hpp"
#include "write/shared/place_lines.hpp"

#include <algorithm>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// "C5:1 double left (thumb under)"
std::string played_words(const AnalysedLine& line, std::size_t number) {
  const EventAnalysis& entry = line[number].found;
  std::string words =
      fmt::format("{} {}", event_words(line.written(), entry.event), name_of(entry.rotation));
  if (entry.side) words += fmt::format(" {}", name_of(direction_of(line.hand(), *entry.side)));
  if (entry.crossing != Crossing::none) words += fmt::format(" ({})", name_of(entry.crossing));
  return words;
}

/// All events of a place; of a long one the first of them.
std::string events_words(const AnalysedLine& line, const FoundPlace& place) {
  constexpr std::size_t kMostShown = 12;
  const std::size_t shown = place.count > kMostShown + 1 ? kMostShown : place.count;
  std::string words;
  for (std::size_t number = place.first; number < place.first + shown; ++number) {
    words += (words.empty() ? "" : ", ") + played_words(line, number);
  }
  if (shown < place.count) words += fmt::format(" and {} more", place.count - shown);
  return words;
}

std::string place_line(const AnalysedScore& score, const FoundPlace& place) {
  std::string words = printable(score.name());
  if (place.place) words += fmt::format(":{}:{}", place.place->line, place.place->column);
  words += ": ";
  if (score.size() > 1) {
    words += passage_words(place.passage, score[place.passage].written().title) + ", ";
  }
  return words + to_string(place.where) + ": " +
         events_words(score[place.passage][place.line], place);
}

/// The events of a place with those of the bars around it that follow without a gap; of bars
/// without end not all of them.
Line events_around(const AnalysedLine& line, const FoundPlace& place, std::int32_t around) {
  const std::vector<Event>& all = line.written().events;
  std::size_t begin = line[place.first].found.event;
  std::size_t end = line[place.first + place.count - 1].found.event + 1;
  const BarRange bars{all[begin].bar - around, all[end - 1].bar + around};
  constexpr std::size_t kMostAround = 200;
  const std::size_t first = begin - std::min(begin, kMostAround);
  const std::size_t last = end + std::min(all.size() - end, kMostAround);
  while (begin > first && bars.contains(all[begin - 1].bar)) --begin;
  while (end < last && bars.contains(all[end].bar)) ++end;
  const auto at = [&](std::size_t event) {
    return all.begin() + static_cast<std::vector<Event>::difference_type>(event);
  };
  return {line.hand(), {at(begin), at(end)}, {}};
}

std::string bars_around(const AnalysedScore& score, const FoundPlace& place,
                        const FoundStyle& style) {
  const Line line = events_around(score[place.passage][place.line], place, *style.around);
  std::string text;
  // Without a key above it every sign is written.
  for (const BarText& bar : bar_texts(line, {})) {
    text += "  " + continued(fmt::format("bar {}: {}", bar.bar, bar.text), style.columns);
  }
  return text;
}

double share_of(const FoundCounts& file) {
  constexpr double kAll = 100;
  return file.events == 0
             ? 0
             : kAll * static_cast<double>(file.found) / static_cast<double>(file.events);
}

}  // namespace

std::string write_found(const AnalysedScore& score, std::span<const FoundPlace> places,
                        const FoundStyle& style) {
  std::string text;
  for (const FoundPlace& place : places) {
    text += continued(place_line(score, place), style.columns);
    if (style.around) text += bars_around(score, place, style);
  }
  return text;
}

std::string write_found_counts(std::span<const FoundCounts> files, bool ranked) {
  std::vector<FoundCounts> rows;
  std::ranges::copy_if(files, std::back_inserter(rows),
                       [](const FoundCounts& file) { return file.places > 0; });
  if (ranked) {
    std::ranges::stable_sort(rows, std::greater<>(), share_of);
  }
  std::string text = ranked ? "  share  places  file\n" : "places  file\n";
  for (const FoundCounts& row : rows) {
    if (ranked) text += fmt::format("{:>5.1f} %  ", share_of(row));
    text += fmt::format("{:>6}  {}\n", row.places, printable(row.source));
  }
  return rows.empty() ? "" : text;
}

std::string write_found_sum(const AllFound& all, int columns) {
  if (all.places == 0) return {};
  const std::string sum = fmt::format(
      "{} in {} of {}, {} of {}", counted(all.places, "place", "places"), all.with_places,
      counted(all.read, "file", "files"), all.found, counted(all.events, "event", "events"));
  return '\n' + sum + '\n' + wrapped("caution  ", brief_caution(), columns);
}

}  // namespace fingerturn
