#include "fingering/made_tasks.hpp"

#include "fingering/figures.hpp"
#include "fingering/repeats.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/read.hpp"
#include "rules/made_lines.hpp"

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace fingerturn {

std::vector<Grip> marked_grips(const Line& line, const SpanTable& spans) {
  std::vector<Grip> grips = grips_of(line, spans);
  mark_figures(figures_of(line.hand, grips), grips);
  mark_octaves(grips);
  const std::vector<std::size_t> first = first_places(groups_again(line, grips), grips.size());
  mark_printed(first, grips);
  std::vector<FoundFingers> given(grips.size());
  for (std::size_t at = 0; at < grips.size(); ++at) {
    for (std::size_t i = 0; i < grips[at].count; ++i) given[at].at(i) = grips[at].keys.at(i).given;
  }
  mark_again(first, given, grips);
  return grips;
}

std::int64_t difficulty_of(const LineCosts& costs, const std::vector<std::uint8_t>& path) {
  std::int64_t sum = 0;
  for (std::size_t at = 0; at < path.size(); ++at) {
    const std::size_t first = at >= 2 ? path[at - 2] : 0;
    const std::size_t middle = at >= 1 ? path[at - 1] : 0;
    sum += costs.added(at, first, middle, path[at]);
  }
  return sum;
}

Line line_written(std::string_view notation) {
  ReadResult result = read_notation(Source("test", std::string(notation)));
  if (!result.ok()) throw std::invalid_argument("not notation: " + std::string(notation));
  return std::move(result.score.passages.at(0).lines.at(0));
}

std::string fingers_of(const Line& line) {
  std::string words;
  for (const Event& event : line.events) {
    if (event.is_rest()) continue;
    if (!words.empty()) words += ' ';
    for (const Note& note : event.notes) {
      words += note.finger ? std::to_string(int{*note.finger}) : ".";
    }
  }
  return words;
}

Line completed(const Line& line) {
  return with_suggestions(score_of({line})).passages.at(0).lines.at(0);
}

Line without_fingers(Line line) {
  return without_fingers(score_of({std::move(line)})).passages.at(0).lines.at(0);
}

std::vector<Finger> struck_fingers(const Event& event) {
  std::vector<Finger> fingers;
  for (const Note& note : event.notes) {
    if (!note.held) fingers.push_back(note.finger.value_or(0));
  }
  return fingers;
}

}  // namespace fingerturn
