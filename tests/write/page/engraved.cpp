#include "write/page/engraved.hpp"

#include <algorithm>
#include <array>
#include <iterator>

namespace fingerturn::tests {

std::vector<System> systems_of(const AnalysedScore& analysed, double width) {
  std::vector<System> systems;
  for (const AnalysedPassage passage : analysed) {
    const PageWatchList list = watch_list_of(passage);
    for (const MusicPart& part : music_parts(passage, list)) {
      SystemMaker maker(passage, part.lines, part.watch, width);
      while (std::optional<System> system = maker.next()) systems.push_back(std::move(*system));
    }
  }
  return systems;
}

std::vector<System> systems_of(const AnalysedPassage& passage, const RibbonsOfHands& hands,
                               double width) {
  std::vector<System> systems;
  for (const RibbonsOfHands& part : ribbons_in_parts(passage.written(), hands)) {
    const WatchNumbersOfLines none(part.size());
    SystemMaker maker(passage, part, none, width);
    while (std::optional<System> system = maker.next()) systems.push_back(std::move(*system));
  }
  return systems;
}

Inks of_kind(const std::vector<System>& systems, InkKind kind) {
  Inks found;
  for (const System& system : systems) {
    std::ranges::copy_if(system.inks, std::back_inserter(found),
                         [kind](const Ink& ink) { return ink.kind == kind; });
  }
  return found;
}

Inks of_kind(const std::vector<System>& systems, InkKind kind, InkStyle style) {
  Inks found = of_kind(systems, kind);
  std::erase_if(found, [style](const Ink& ink) { return ink.style != style; });
  return found;
}

std::vector<std::string> words_in(const Inks& inks) {
  std::vector<std::string> words;
  for (const Ink& ink : inks) {
    if (const auto* text = std::get_if<TextInk>(&ink.shape)) words.push_back(text->words);
  }
  return words;
}

std::string name_of(InkKind kind) {
  constexpr std::array<const char*, kInkKinds> kNames{
      "staff line", "bar line", "brace",  "clef",     "key sign",   "meter",       "head",
      "stem",       "flag",     "beam",   "sign",     "dot",        "ledger",      "rest",
      "tie",        "slur",     "tuplet", "ottava",   "ornament",   "breath",      "fermata",
      "dynamic",    "hairpin",  "ending", "arpeggio", "bar number", "ribbon line", "ribbon name",
      "swing",      "turn",     "node",   "finger",   "carry",      "bow",         "watch flag",
      "key",        "words"};
  return kNames.at(static_cast<std::size_t>(kind));
}

}  // namespace fingerturn::tests
