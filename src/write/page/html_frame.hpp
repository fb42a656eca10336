#pragma once

#include "write/page/html_music.hpp"

#include <string>
#include <string_view>

/// What stands around the content of every HTML page.
namespace fingerturn {

/// Everything before the body's content: what the page is called, how it looks, and where it leads
/// back to. In print each page has the title at its foot.
std::string page_head(std::string_view title, std::string_view index = {});

/// The end of what is said, the caution and what closes the page.
std::string page_foot();

/// Adds the outlines that a page uses, in print lines to write on, and its foot; hands it all on.
void end_page(HtmlPage& page);

/// Text between the tags of an element, escaped.
void add_element(std::string& out, std::string_view tag, std::string_view text);

}  // namespace fingerturn
