#include "text/escape.hpp"
#include "write/page/html_frame.hpp"
#include "write/page/html_passage.hpp"
#include "write/shared/passage_words.hpp"

#include <string>
#include <string_view>
#include <vector>

#include <fmt/core.h>

/// The handout: one page that needs nothing else, with no script.
namespace fingerturn {
namespace {

void add_contents(std::string& out, const AnalysedScore& analysed) {
  out +=
      "<nav aria-labelledby=\"contents\">\n<h2 id=\"contents\">Contents</h2>\n"
      "<ol class=\"contents\">\n";
  std::size_t number = 0;
  for (const Passage& passage : analysed.written().passages) {
    out += fmt::format("<li><a href=\"#passage-{}\"><bdi>{}</bdi></a></li>\n", ++number,
                       escaped_markup(title_of(analysed, passage)));
  }
  out += "</ol>\n</nav>\n";
}

/// Each passage under a heading of its own.
void add_passages(HtmlPage& page, const AnalysedScore& analysed) {
  std::size_t number = 0;
  for (const AnalysedPassage passage : analysed) {
    page.out += fmt::format(
        "<section class=\"passage\" aria-labelledby=\"passage-{0}\">\n"
        "<h2 id=\"passage-{0}\"><bdi>{1}</bdi></h2>\n",
        ++number, escaped_markup(title_of(analysed, passage.written())));
    add_passage_body(page, passage, 3);
    page.out += "</section>\n";
  }
}

}  // namespace

std::string write_html(const AnalysedScore& analysed, const PageStyle& style) {
  return text_of(0, [&](TextOut& out) {
    write_html(analysed, style, [&](std::string_view piece) { out.add(piece); });
  });
}

void write_html(const AnalysedScore& analysed, const PageStyle& style, const TextSink& sink) {
  HtmlPage page{{sink, page_head(title_of(analysed), style.index)}, {}};
  page.unfolded = style.unfolded;
  page.detail = style.detail;
  page.music = style.music;
  if (analysed.size() > 1) add_contents(page.out, analysed);
  page.out += "<main>\n";
  if (analysed.size() == 1) {
    add_passage_body(page, analysed[0], 2);
  } else {
    add_passages(page, analysed);
  }
  add_legend(page, used_in(analysed));
  add_sources(page, analysed);
  end_page(page);
}

std::string write_html_index(std::span<const PageLink> links, IndexOf what) {
  std::string out = page_head("Contents") + "<main>\n<ol class=\"contents\">\n";
  for (const PageLink& link : links) {
    const std::string name = escaped_markup(link.file_name);
    const std::string title = escaped_markup(link.title);
    out += fmt::format(R"(<li><a href="{}"><bdi>{}</bdi></a>)", name, title);
    if (what == IndexOf::pictures) {
      out += fmt::format(R"(<br/><img src="{}" alt="Picture of the swings: {}"/>)", name, title);
    }
    if (!link.detail.empty()) {
      out += fmt::format(R"(<br/><span class="quiet"><bdi>{}</bdi></span>)",
                         escaped_markup(link.detail));
    }
    out += "</li>\n";
  }
  return out + "</ol>\n" + page_foot();
}

}  // namespace fingerturn
