#include "turns.hpp"

#include "fingering/line_fingering.hpp"
#include "fingerturn/analysis.hpp"
#include "fingerturn/fingering.hpp"

#include <cstddef>
#include <optional>
#include <random>
#include <utility>
#include <vector>

namespace fingerturn::bench {
namespace {

bool is_dense(const Line& line) {
  std::size_t struck = 0;
  std::size_t printed = 0;
  for (const Event& event : line.events) {
    struck += event.struck_count();
    for (const Note& note : event.notes) {
      if (is_printed(note)) ++printed;
    }
  }
  return printed > 0 && 2 * printed >= struck;
}

/// Where the forearm turns at each stroke of a line whose missing fingers are filled in.
std::vector<std::optional<Side>> sides(const Line& line, const Model& model) {
  Passage passage;
  passage.lines.push_back(with_fingering(line, finger_line(line, model, {}).front()));
  const Analysis analysis = analyse(Score{{std::move(passage)}});
  std::vector<std::optional<Side>> found;
  for (const EventAnalysis& event : analysis.passages.front().lines.front().events) {
    found.push_back(event.side);
  }
  return found;
}

Met alike(const std::vector<std::optional<Side>>& printed,
          const std::vector<std::optional<Side>>& found) {
  Met met;
  for (std::size_t at = 0; at < printed.size(); ++at) {
    if (!printed[at]) continue;
    ++met.hidden;
    if (found.at(at) == printed[at]) ++met.met;
  }
  return met;
}

}  // namespace

TurnsMet& TurnsMet::operator+=(const TurnsMet& other) noexcept {
  none += other.none;
  some += other.some;
  return *this;
}

TurnsMet turns_met(const Piece& piece, const Model& model) {
  TurnsMet met;
  std::mt19937 random(1);
  for (const Passage& passage : piece.score.passages) {
    for (const Line& line : passage.lines) {
      if (!is_dense(line)) continue;
      const auto printed = sides(line, model);
      met.none += alike(printed, sides(with_printed(line, [] { return false; }), model));
      met.some +=
          alike(printed, sides(with_printed(line, [&] { return random() % 10 < 3; }), model));
    }
  }
  return met;
}

}  // namespace fingerturn::bench
