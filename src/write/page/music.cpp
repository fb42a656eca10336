#include "write/page/music.hpp"

#include <fmt/core.h>

namespace fingerturn {

std::vector<MusicPart> music_parts(const AnalysedPassage& passage, const PageWatchList& list) {
  std::vector<MusicPart> parts;
  auto numbers = list.numbers_of_lines.begin();
  for (const SharedLines& lines : lines_together(passage)) {
    const auto end = numbers + static_cast<std::ptrdiff_t>(lines.size());
    parts.push_back({lines, {numbers, end}});
    numbers = end;
  }
  return parts;
}

std::vector<RibbonsOfHands> ribbons_in_parts(const Passage& written, const RibbonsOfHands& hands) {
  if (hands.size() < 2 || all_onsets_known(written)) return {hands};
  std::vector<RibbonsOfHands> parts;
  for (const std::vector<AnalysedLine>& ribbons : hands) parts.push_back({ribbons});
  return parts;
}

std::string words_of(const System& system) {
  if (system.first_bar == system.last_bar) return fmt::format("Bar {}", system.first_bar);
  return fmt::format("Bars {} to {}", system.first_bar, system.last_bar);
}

}  // namespace fingerturn
