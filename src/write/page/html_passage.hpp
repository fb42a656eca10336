#pragma once

#include "fingerturn/analysed.hpp"
#include "write/page/html_music.hpp"
#include "write/shared/used.hpp"

#include <string>
#include <string_view>

/// What an HTML page says below its headings.
namespace fingerturn {

/// All that is said of a passage below its heading; headings in it begin at this level.
void add_passage_body(HtmlPage& page, const AnalysedPassage& passage, int level);

/// What the page shows, in a line or two of samples.
void add_legend(HtmlPage& page, const Used& used);

/// The sources of the rules that the watch lists name; nothing where they name none.
void add_sources(HtmlPage& page, const AnalysedScore& analysed);

}  // namespace fingerturn
