#include "write/page/html_frame.hpp"

#include "text/escape.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"
#include "text/wrap.hpp"
#include "write/page/html_style.hpp"
#include "write/page/ink/ink_svg.hpp"
#include "write/shared/passage_words.hpp"

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// The empty picture keeps browsers from asking a server for one of the site.
constexpr std::string_view kHead =
    "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n"
    "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"/>\n"
    "<meta name=\"color-scheme\" content=\"light dark\"/>\n"
    "<link rel=\"icon\" href=\"data:,\"/>\n";

std::string way_back(std::string_view index) {
  if (index.empty()) return {};
  return fmt::format(R"(<p class="way"><a href="{}">Contents</a></p>)", escaped_markup(index));
}

/// The outlines that the music refers to.
std::string outlines_of(const GlyphsUsed& used) {
  std::string out = R"(<svg class="music outlines" aria-hidden="true" width="0" height="0"><defs>)";
  add_outlines(out, used);
  return out + "</defs></svg>\n";
}

/// A text as a string of a style sheet; nothing in it ends the string or the sheet.
std::string style_string(std::string_view text) {
  std::string out = "\"";
  for (const char letter : printable(text)) {
    constexpr std::string_view kPlain = " ,.";
    const bool is_ascii = static_cast<unsigned char>(letter) < 0x80;
    const bool is_letter = lower_case_of(letter) >= 'a' && lower_case_of(letter) <= 'z';
    const bool is_digit = letter >= '0' && letter <= '9';
    const bool is_plain =
        !is_ascii || is_letter || is_digit || kPlain.find(letter) != std::string_view::npos;
    if (is_plain) {
      out += letter;
    } else {
      out += fmt::format("\\{:x} ", static_cast<unsigned char>(letter));
    }
  }
  return out + '"';
}

/// The title at the foot of each printed page, beside its number.
std::string running_title(std::string_view title) {
  constexpr int kLongest = 60;
  const std::string lines = wrapped("", title, kLongest);
  return fmt::format("@page{{@bottom-left{{content:{}}}}}\n",
                     style_string(std::string_view(lines).substr(0, lines.find('\n'))));
}

}  // namespace

std::string page_head(std::string_view title, std::string_view index) {
  const std::string shown = escaped_markup(title);
  return fmt::format("{}<title>{}</title>\n<style>\n{}{}{}</style>\n</head>\n<body>\n", kHead,
                     shown, page_style(), ink_style(), running_title(title)) +
         fmt::format("<header>{}<h1><bdi>{}</bdi></h1></header>\n", way_back(index), shown);
}

std::string page_foot() {
  std::string foot = "</main>\n<footer class=\"caution\">\n<h2>Caution</h2>\n";
  add_element(foot, "p", caution());
  return foot + "</footer>\n</body>\n</html>\n";
}

void add_element(std::string& out, std::string_view tag, std::string_view text) {
  out += fmt::format("<{0}>{1}</{0}>\n", tag, escaped_markup(text));
}

void end_page(HtmlPage& page) {
  page.out += outlines_of(page.used);
  page.out += R"(<div class="lines" aria-hidden="true"><div></div><div></div></div>)";
  page.out += '\n' + page_foot();
  page.finish();
}

}  // namespace fingerturn
