#include "write/page/music.hpp"

#include <fmt/core.h>

namespace fingerturn {

std::vector<MusicPart> music_parts(const AnalysedPassage& passage, const PageWatchList& list) {
  const SharedLines lines = lines_of(passage);
  if (lines.empty()) return {};
  if (lines.size() < 2 || all_onsets_known(passage.written())) {
    return {{lines, list.numbers_of_lines}};
  }
  std::vector<MusicPart> parts;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    parts.push_back({{lines[i]}, {list.numbers_of_lines[i]}});
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
