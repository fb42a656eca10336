#include "write/page/html_music.hpp"

#include <string_view>

#include <fmt/core.h>

namespace fingerturn {
namespace {

void add_systems(HtmlPage& page, SystemMaker maker, double width, std::string_view name) {
  page.out += fmt::format("<div class=\"systems {}\">\n", name);
  while (const std::optional<System> system = maker.next()) {
    page.out +=
        fmt::format(R"(<svg class="music" role="img" aria-label="{}" viewBox="0 0 {} {:.2f}">)",
                    words_of(*system), width, system->height);
    add_inks(page.out, system->inks, page.used, Repeats::corners);
    page.out += "</svg>\n";
    page.hand_on();
  }
  page.out += "</div>\n";
}

}  // namespace

void add_music(HtmlPage& page, const AnalysedPassage& passage, const MusicPart& part) {
  const auto maker = [&](double width) {
    return SystemMaker(passage, part.lines, part.watch, width, page.music);
  };
  add_systems(page, maker(kSheetWidth), kSheetWidth, "wide");
  add_systems(page, maker(kNarrowWidth), kNarrowWidth, "narrow");
}

void add_ribbons(HtmlPage& page, const AnalysedPassage& passage, const RibbonsOfHands& hands) {
  const WatchNumbersOfLines none(hands.size());
  add_systems(page, {passage, hands, none, kSheetWidth}, kSheetWidth, "wide");
  add_systems(page, {passage, hands, none, kNarrowWidth}, kNarrowWidth, "narrow");
}

}  // namespace fingerturn
