#include "catch.hpp"
#include "text/utf8.hpp"
#include "write/page/pages.hpp"
#include "write/random_score.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <set>
#include <string>
#include <vector>

/// Pages to hand out: what stands in them, and that no title can become anything but text.
using namespace fingerturn;
using namespace fingerturn::tests;
using namespace std::string_literals;

namespace {

const std::array kHostileTitles{
    "</title><script>alert(1)</script>"s,
    "\"><img src=x onerror=alert(1)>"s,
    "'; --> <!-- ]]> &lt;b&gt; &amp;"s,
    "</style><svg onload=alert(1)>"s,
    "`code` | *a* | [b](javascript:c) | # d"s,
    "line one\n# line two\n\n<hr>"s,
    "\u202Egnimraf\u202C \u2066x"s,
    "nothing \0 here \xFF"s,
};

AnalysedScore with_title(const std::string& title) {
  Score score = analysed("passage: a\ncomposer: b\n1/4 C4:1 D:2 E:3 F | G:2").written();
  score.passages[0].title = title;
  score.passages[0].composer = title;
  score.passages[0].remarks = {title};
  return AnalysedScore("test.passage", std::move(score));
}

/// The names of all elements and attributes, in order.
std::string shape_of(const pugi::xml_node& node) {
  std::string shape;
  for (const pugi::xml_node& element : all_of(node, "//*")) {
    shape += element.name();
    for (const pugi::xml_attribute& attribute : element.attributes()) {
      shape += std::string(" ") + attribute.name();
    }
    shape += '\n';
  }
  return shape;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

std::string long_passage(std::size_t bars) {
  std::string text = "passage: long\nmeter: 4/4\n1/8\n";
  for (std::size_t i = 0; i < bars; ++i) text += "C4:1 D4:2 E4:3 F4:1 G4:2 A4:3 B4:4 C5:5 |\n";
  return text;
}

}  // namespace

TEST_CASE("hostile titles stay text in pages and pictures") {
  for (const std::string& title : kHostileTitles) {
    CAPTURE(title);
    const AnalysedScore music = with_title(title);
    const pugi::xml_document page = parsed(write_html(music));
    CHECK(text_in(page.select_node("//h1").node()) == printable(title));
    CHECK(text_in(page.select_node("//head/title").node()) == printable(title));
    CHECK(all_of(page, "//script").empty());
  }
}

TEST_CASE("a hostile title changes no element of a page") {
  const AnalysedScore plain = with_title("plain");
  for (const std::string& title : kHostileTitles) {
    CAPTURE(title);
    const AnalysedScore music = with_title(title);
    CHECK(shape_of(parsed(write_html(music))) == shape_of(parsed(write_html(plain))));
  }
}

TEST_CASE("pages and pictures of scores made by chance are well-formed") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    const Score score = random_score(seed);
    const AnalysedScore report("test.passage", score);
    const pugi::xml_document page = parsed(write_html(report));
    std::size_t events = 0;
    for (const AnalysedPassage passage : report) {
      for (const AnalysedLine line : passage) events += line.size();
    }
    // Every struck event has a row in the tables for study.
    CHECK(all_of(page, "//table[@class='study']/tbody/tr").size() == events);
    CHECK(parsed(write_svg(report)).document_element().name() == "svg"s);
    CHECK(has(write_markdown(report, {}), std::string(caution().substr(0, 40))));
  }
}

TEST_CASE("a page needs nothing else and has no script") {
  std::string page = write_html(analysed(long_passage(2)));
  // What the page itself has is referred to by a name alone.
  for (std::size_t at = page.find("url(#"); at != std::string::npos; at = page.find("url(#")) {
    page.erase(at, 5);
  }
  for (const char* part : {"<script", "http", "url(", "@import", "src=", "javascript"}) {
    CAPTURE(part);
    CHECK_FALSE(has(page, part));
  }
}

TEST_CASE("the title that runs along the printed pages ends neither its string nor the sheet") {
  const std::string page = write_html(analysed("passage: a\"}</style> \u00fcber 2, no. 1\nC4:1"));
  CHECK(has(page,
            "@page{@bottom-left{content:\"a\\22 \\7d \\3c \\2f style\\3e  "
            "\u00fcber 2, no. 1\"}}\n</style>\n"));
}

TEST_CASE("a page holds totals, watch list with sources, reasons, legend and caution") {
  const AnalysedScore music = analysed("passage: Lantern Street\n1/4 C4:1 D:2 E F:1 | G:2 A:3");
  const std::string page = write_html(music, {.unfolded = true, .detail = true});
  CHECK(has(page, "Right hand: 6 events, "));
  CHECK(has(page, "The finger is missing. <a href=\"#source-missing-finger\">"));
  CHECK(has(page, "<dt id=\"source-missing-finger\">"));
  CHECK(has(page, "<dd>Our convention.</dd>"));
  for (const EventAnalysis& entry : music[0][0].found().events) {
    CHECK(has(page, reason_of(entry, Hand::right)));
    CHECK_FALSE(has(write_html(music), reason_of(entry, Hand::right)));
  }
  CHECK(has(page, "aria-label=\"Legend\""));
  CHECK(has(page, "<span>double: swing back first, then play</span>"));
  CHECK(has(page, std::string(caution())));
}

TEST_CASE("a page of several passages begins with its contents") {
  const pugi::xml_document page =
      parsed(write_html(analysed("passage: first\nC4:1\npassage: second\nD4:2")));
  const std::vector<pugi::xml_node> links = all_of(page, "//nav//a");
  REQUIRE(links.size() == 2);
  for (const pugi::xml_node& link : links) {
    const std::string id = std::string(link.attribute("href").value()).substr(1);
    const pugi::xml_node heading = page.select_node(("//h2[@id='" + id + "']").c_str()).node();
    CHECK(text_in(heading) == text_in(link));
  }
  CHECK(all_of(parsed(write_html(analysed("C4:1"))), "//nav").empty());
}

TEST_CASE("some bars of an analysis make a page of these bars") {
  const AnalysedScore bars = only_bars(analysed(long_passage(4)), {2, 3});
  const pugi::xml_document page = parsed(write_html(bars));
  for (const pugi::xml_node& number : all_of(page, "//*[contains(@class,'slant')]/text")) {
    CAPTURE(text_in(number));
    CHECK((text_in(number) == "2" || text_in(number) == "3"));
  }
  CHECK(all_of(page, "//table[@class='study']/tbody/tr").size() == 16);
}

TEST_CASE("a page is set once for sheets and once for telephones, each system with a name") {
  const pugi::xml_document page = parsed(write_html(analysed(long_passage(6))));
  for (const char* name : {"wide", "narrow"}) {
    const std::string path = "//div[@class='systems " + std::string(name) + "']/*[@role='img']";
    const std::vector<pugi::xml_node> systems = all_of(page, path.c_str());
    REQUIRE(systems.size() > 1);
    CHECK(std::string(systems.front().attribute("aria-label").value()).starts_with("Bar"));
  }
  const auto systems_in = [&](const std::string& name) {
    return all_of(page, ("//div[@class='systems " + name + "']/*").c_str()).size();
  };
  CHECK(systems_in("narrow") > systems_in("wide"));
}

TEST_CASE("a page has the outline of every sign that it shows, and no other") {
  for (const std::string& text :
       {write_html(analysed(long_passage(2))), write_svg(analysed("1/4 C#4:1 r 1/1 D:2 |"))}) {
    const pugi::xml_document page = parsed(text);
    std::set<std::string> used;
    for (const pugi::xml_node& use : all_of(page, "//use")) {
      used.insert(std::string(use.attribute("href").value()).substr(1));
    }
    for (const pugi::xml_node& corners : all_of(page, "//path[@style]")) {
      const std::string style = corners.attribute("style").value();
      CHECK(style.starts_with("marker:url(#m-"));
      used.insert(style.substr(12, style.size() - 13));
    }
    std::set<std::string> there;
    for (const pugi::xml_node& outline : all_of(page, "//defs/*")) {
      there.insert(outline.attribute("id").value());
    }
    CHECK_FALSE(used.empty());
    CHECK(used == there);
  }
}

TEST_CASE("a picture is paged: each sheet has its title and number") {
  const pugi::xml_document picture = parsed(write_svg(analysed(long_passage(60))));
  const std::vector<pugi::xml_node> sheets = all_of(picture, "/svg/g");
  REQUIRE(sheets.size() > 1);
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const std::vector<pugi::xml_node> words = all_of(sheets[i], ".//text");
    CHECK(text_in(words[words.size() - 2]) == "long");
    CHECK(text_in(words.back()) == std::to_string(i + 1));
  }
}

TEST_CASE("hands of unknown note values stand one after the other, and the page says so") {
  const std::string page = write_html(analysed("RH: C5:1 D:2\nLH: C4:1 B3:2"));
  CHECK(has(page, "Not all note values are known, so the hands stand one after the other"));
  CHECK(has(page, "<h2>Left hand</h2>"));
}

TEST_CASE("pages grow in proportion to their notes") {
  const auto sizes = [](std::size_t bars) {
    const AnalysedScore music = analysed(long_passage(bars));
    return std::array{write_html(music).size(), write_svg(music).size(),
                      write_markdown(music, {}).size()};
  };
  const auto once = sizes(100);
  const auto twice = sizes(200);
  constexpr std::array<std::size_t, 3> kMostBytesANote{1600, 800, 100};
  for (std::size_t i = 0; i < once.size(); ++i) {
    CAPTURE(i);
    const std::size_t added = twice[i] - once[i];
    CHECK(added <= once[i] * 11 / 10);
    CHECK(added / 800 <= kMostBytesANote[i]);
  }
}

TEST_CASE("with the places a page has a map of all bars") {
  std::string text = "meter: 4/4\n1/4\n";
  for (int i = 0; i < 6; ++i) text += "C4:1 E4:3 C4:1 E4:3 |\n";
  text += "C4:1 D4:2 E4:3 F4:4 |\nG4:5 F4:4 E4:3 D4:2 |\n";
  const pugi::xml_document page = parsed(write_html(only_places(analysed(text))));
  const std::vector<pugi::xml_node> maps = all_of(page, "//figure[@class='map']/svg");
  REQUIRE(maps.size() == 1);
  CHECK(maps.front().attribute("aria-label").value() == "Doubles in bars 1 to 8: most in bar 8"s);
  std::size_t cells = 0;
  for (const pugi::xml_node& path : all_of(maps.front(), "path[starts-with(@class,'m')]")) {
    const std::string cell = path.attribute("d").value();
    cells += static_cast<std::size_t>(std::ranges::count(cell, 'M'));
  }
  CHECK(cells == 8);
  CHECK(all_of(maps.front(), "path[@class='shown']").size() == 1);
  CHECK(all_of(parsed(write_html(analysed(text))), "//figure").empty());
}

TEST_CASE("a page of a folder leads back to its contents") {
  const AnalysedScore music = analysed("C4:1 D:2");
  const auto way_back = [&](const PageStyle& style) {
    return all_of(parsed(write_html(music, style)), "//header//a");
  };
  CHECK(way_back({}).empty());
  REQUIRE(way_back({.index = "index.html"}).size() == 1);
  const pugi::xml_document page = parsed(write_html(music, {.index = "index.html"}));
  CHECK(all_of(page, "//header//a").front().attribute("href").value() == "index.html"s);
}

TEST_CASE("an index links to every page and says what is in it") {
  const std::vector<PageLink> links{{"01-a.html", "A & <B>", "both hands, 3 bars"},
                                    {"02-c.html", "C|D"}};
  const pugi::xml_document page = parsed(write_html_index(links, IndexOf::pages));
  CHECK(all_of(page, "//main//a").size() == 2);
  CHECK(text_in(all_of(page, "//main//a").front()) == "A & <B>");
  CHECK(text_in(all_of(page, "//main//li").front()) == "A & <B>both hands, 3 bars");
  CHECK(all_of(page, "//img").empty());
  CHECK(all_of(parsed(write_html_index(links, IndexOf::pictures)), "//img[@alt]").size() == 2);
  CHECK(has(write_markdown_index(links), "1. [A \\& \\<B\\>](01-a.html)\n2. [C\\|D](02-c.html)\n"));
}

TEST_CASE("study notes hold the rows, totals, watch list and caution as Markdown") {
  const AnalysedScore music =
      analysed("passage: Lantern Street\n1/4 C4:1 D:2 E:3 F:1 | G4:1+B4:3 A");
  CHECK(has(write_markdown(music, {}),
            "# Lantern Street\n\nright hand\n\n"
            "| bar | 1 | | | | 2 | |\n"
            "|---|:-:|:-:|:-:|:-:|:-:|:-:|\n"
            "| note | C4 | D4 | E4 | F4 | G4+B4 | A4 |\n"
            "| finger | 1 | 2 | 3 | 1 | 1+3 | ? |\n"));
  CHECK(has(write_markdown(music, {}), "\n- `missing-finger`: Our convention.\n"));
  CHECK_FALSE(has(write_markdown(music, {}), "note for note"));
  CHECK(has(write_markdown(music, {.cues = true}), "- **C4:1** swing right, play left.\n"));
  CHECK(has(write_markdown(music, {.detail = true}), "- **C4:1** First of its gesture"));
}

TEST_CASE("hostile titles add no line to study notes") {
  const auto lines = [](const std::string& title) {
    const std::string text = write_markdown(with_title(title), {});
    return std::count(text.begin(), text.end(), '\n');
  };
  for (const std::string& title : kHostileTitles) {
    CAPTURE(title);
    CHECK(lines(title) == lines("plain"));
  }
}
