#include "write/page/places_map.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// How dark a cell is: 0 without doubles, else by its share of the most.
constexpr std::size_t kShades = 5;

/// The cells of each shade as a path, and the line under what is shown.
struct Map {
  std::array<std::string, kShades> cells;
  std::string shown;
};

std::size_t shade_of(std::size_t doubles, std::size_t most) {
  if (doubles == 0) return 0;
  return 1 + (doubles - 1) * (kShades - 1) / most;
}

Map map_of(const PassageAnalysis& found, std::size_t most) {
  Map map;
  for (std::size_t i = 0; i < found.doubles.size(); ++i) {
    const BarDoubles& bar = found.doubles[i];
    map.cells.at(shade_of(bar.doubles, most)) += fmt::format("M{}.05 0h.9v1h-.9z", i);
    if (found.shows(bar.bar)) map.shown += fmt::format("M{} 1.15h1v.25h-1z", i);
  }
  return map;
}

}  // namespace

void add_places_map(std::string& out, const AnalysedPassage& passage) {
  const PassageAnalysis& found = passage.found();
  if (!found.places || found.doubles.empty()) return;
  const auto& fullest = *std::ranges::max_element(found.doubles, {}, &BarDoubles::doubles);
  const Map map = map_of(found, std::max<std::size_t>(fullest.doubles, 1));
  const std::int32_t first = found.doubles.front().bar;
  const std::int32_t last = found.doubles.back().bar;
  out += fmt::format(
      R"(<figure class="map"><svg role="img" aria-label="Doubles in bars {} to {}: most in bar {}" )"
      R"(viewBox="0 0 {} 1.4" preserveAspectRatio="none">)",
      first, last, fullest.bar, found.doubles.size());
  for (std::size_t shade = 0; shade < kShades; ++shade) {
    if (map.cells.at(shade).empty()) continue;
    out += fmt::format(R"(<path class="m{}" d="{}"/>)", shade, map.cells.at(shade));
  }
  if (!map.shown.empty()) out += fmt::format(R"(<path class="shown" d="{}"/>)", map.shown);
  out += fmt::format(
      "</svg><figcaption>Bars {} to {}, darker where there are more doubles; underlined is what is "
      "shown.</figcaption></figure>\n",
      first, last);
}

}  // namespace fingerturn
