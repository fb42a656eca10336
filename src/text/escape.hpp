#pragma once

#include <string>
#include <string_view>

/// The one place where text that others wrote is made safe for a document. Characters that act
/// (`acts_on_text`) and bytes that are not UTF-8 become U+FFFD.
namespace fingerturn {

/// For the text and the attribute values of XML, SVG and HTML.
std::string escaped_markup(std::string_view text);

/// For a line or a table cell of Markdown (CommonMark with tables). Addresses stand as code, since
/// renderers make links of them wherever else they find them.
std::string escaped_markdown(std::string_view text);

}  // namespace fingerturn
