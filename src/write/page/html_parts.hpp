#pragma once

#include "fingerturn/report.hpp"
#include "write/page/part.hpp"

#include <cstddef>
#include <string>
#include <string_view>

/// The pieces of the HTML page.
namespace fingerturn {

/// A page that grows, and the counters that make its ids unique.
struct HtmlPage {
  std::string out;
  std::size_t pictures = 0;
  bool unfolded = false;  ///< PageStyle::unfolded
};

/// The rules of the page, the picture's left out.
std::string_view page_style() noexcept;

/// Text between the tags of an element, escaped.
void add_element(std::string& out, std::string_view tag, std::string_view text);

/// The systems of a part: for each piece a table whose first row is the picture.
void add_systems(HtmlPage& page, const PagePart& part);

/// All that is said of a passage below its heading; headings in it begin at this level.
void add_passage_body(HtmlPage& page, const AnalysedPassage& passage, int level);

/// What the picture and the rows mean.
void add_legend(HtmlPage& page, const AnalysedScore& analysed);

/// The sources of the rules that the watch lists name; nothing where they name none.
void add_sources(HtmlPage& page, const AnalysedScore& analysed);

}  // namespace fingerturn
