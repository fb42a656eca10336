#pragma once

#include "fingerturn/report.hpp"
#include "text/text_out.hpp"
#include "write/page/ink/ink_svg.hpp"
#include "write/page/music.hpp"

namespace fingerturn {

/// A page that grows.
struct HtmlPage : TextFlow {
  GlyphsUsed used;        ///< the outlines that it refers to
  bool unfolded = false;  ///< PageStyle::unfolded
  bool detail = false;    ///< PageStyle::detail
  MusicStyle music{};     ///< PageStyle::music
};

/// The systems of a part, once for sheets and screens and once for telephones: the style sheet
/// shows one of the two.
void add_music(HtmlPage& page, const AnalysedPassage& passage, const MusicPart& part);

/// The same of the bars that a passage shows, with all ribbons of the hands and no numbers.
void add_ribbons(HtmlPage& page, const AnalysedPassage& passage, const RibbonsOfHands& hands);

}  // namespace fingerturn
