#include "text/escape.hpp"

#include "catch.hpp"

#include <array>
#include <cstddef>
#include <random>
#include <string>
#include <string_view>

/// Text that others wrote stays text, whatever stands in it.
using namespace fingerturn;
using namespace std::string_literals;

TEST_CASE("text is made safe for markup (XML 1.0, sections 2.2 and 2.4)") {
  CHECK(escaped_markup("Ravel & Co. <b> \"a\" 'b'") ==
        "Ravel &amp; Co. &lt;b&gt; &quot;a&quot; &#39;b&#39;");
  CHECK(escaped_markup("caf\u00E9 \u266D") == "caf\u00E9 \u266D");
  CHECK(escaped_markup("a\tb") == "a b");
  CHECK(escaped_markup("a\nb\0c\x1B"s) == "a\uFFFDb\uFFFDc\uFFFD");
  CHECK(escaped_markup("\xEF\xBF\xBE|\xEF\xBF\xBF") == "\uFFFD|\uFFFD");
  CHECK(escaped_markup("bad \xFF byte") == "bad \uFFFD byte");
  CHECK(escaped_markup("\u202Eback\u2066") == "\uFFFDback\uFFFD");
  CHECK(escaped_markup("]]>") == "]]&gt;");
  CHECK(escaped_markup("").empty());
}

TEST_CASE("text is made safe for Markdown (CommonMark, backslash escapes)") {
  CHECK(escaped_markdown("*a* _b_ `c` [d](e) <f> g|h") ==
        "\\*a\\* \\_b\\_ \\`c\\` \\[d\\](e) \\<f\\> g\\|h");
  CHECK(escaped_markdown("# a #") == "\\# a \\#");
  CHECK(escaped_markdown("back\\slash &amp;") == "back\\\\slash \\&amp;");
  CHECK(escaped_markdown("- a") == "\\- a");
  CHECK(escaped_markdown("a - b + c") == "a - b + c");
  CHECK(escaped_markdown("===") == "\\===");
  CHECK(escaped_markdown("12. a") == "12\\. a");
  CHECK(escaped_markdown("12) a") == "12\\) a");
  CHECK(escaped_markdown("op. 12") == "op. 12");
  CHECK(escaped_markdown("    a  ") == "a");
  CHECK(escaped_markdown("a\nb") == "a\uFFFDb");
  CHECK(escaped_markdown("a\tb") == "a b");
  CHECK(escaped_markdown("W. A. M.") == "W\\. A. M.");
  CHECK(escaped_markdown(" @ d @ ") == "\\@ d \\@");
  CHECK(escaped_markdown("C4:1") == "C4:1");
  CHECK(escaped_markdown("  ").empty());
}

namespace {

/// What CommonMark shows of a line of escaped signs and of code in single strokes.
std::string shown(std::string_view markdown) {
  std::string text;
  bool code = false;
  for (std::size_t at = 0; at < markdown.size(); ++at) {
    if (markdown[at] == '`') {
      code = !code;
      continue;
    }
    if (markdown[at] == '\\' && !code) ++at;
    text += markdown.substr(at, 1);
  }
  CHECK_FALSE(code);
  return text;
}

}  // namespace

TEST_CASE("addresses stand as code, so that no renderer of Markdown makes links of them") {
  struct Case {
    const char* text;
    const char* markdown;
  };
  const Case c = GENERATE(
      Case{"www.a.b, or so", "`www.a.b`, or so"}, Case{"WWW.x", "`WWW.x`"},
      Case{"(https://c/d?e_f)", "(`https://c/d`?e\\_f)"}, Case{"ftp://c", "`ftp://c`"},
      Case{"//localhost", "`//localhost`"}, Case{"d@e", "`d@e`"}, Case{"@name", "`@name`"},
      Case{"mailto:a.b+c@d.e.", "`mailto:a.b+c@d.e`."}, Case{"x.org", "`x.org`"},
      Case{"-X.ORG:80/a", "`-X.ORG:80/a`"}, Case{"See sub.x.co.uk: a", "See `sub.x.co.uk`: a"},
      Case{"1.de", "`1.de`"}, Case{"m\u00FCller.de", "`m\u00FCller.de`"},
      Case{"x.xn--p1ai", "`x.xn--p1ai`"}, Case{"a.\u0440\u0444", "`a.\u0440\u0444`"},
      Case{"\\x.org`", "\\\\`x.org`\\`"}, Case{"*x.org*", "\\*`x.org`\\*"},
      Case{"notes.md", "`notes.md`"}, Case{"No.VI", "`No.VI`"}, Case{"bwv.com_x", "`bwv.com_x`"},
      Case{"a~.de", "`a~.de`"}, Case{"a/+x.de", "`a/+x.de`"}, Case{"www.?a", "`www.`?a"},
      Case{"http://*a", "`http://`\\*a"}, Case{"://", "`://`"}, Case{"a|.de", "a\\|`.de`"},
      // What no renderer takes for an address stays as it is.
      Case{"J.S.Bach", "J.S.Bach"}, Case{"op.12 no.3", "op.12 no.3"}, Case{"No.II", "No.II"},
      Case{"etude.passage", "etude.passage"}, Case{"docs/fingering.md", "docs/fingering.md"},
      Case{"n.d.", "n.d."}, Case{"x.orgs", "x.orgs"}, Case{"a//", "a//"},
      Case{"a.de.Liszt", "a.de.Liszt"});
  CAPTURE(c.text);
  CHECK(escaped_markdown(c.text) == c.markdown);
  CHECK(shown(escaped_markdown(c.text)) == c.text);
}

TEST_CASE("CommonMark shows any line as it is, but for blanks at its ends") {
  constexpr std::array<std::string_view, 24> kPieces{
      "www.", "a",  "b.org", "@", "://", "/", ".", ":", "-", "_", "`",      "\\",
      " ",    "de", "1",     ")", "*",   "#", "<", "&", "+", "w", "\u00E9", "mailto:"};
  std::mt19937 random(1);
  for (int run = 0; run < 20000; ++run) {
    std::string text = "x";
    for (std::size_t count = random() % 9; count > 0; --count) {
      text += kPieces.at(random() % kPieces.size());
    }
    text += 'x';
    CAPTURE(text, escaped_markdown(text));
    REQUIRE(shown(escaped_markdown(text)) == text);
  }
}

TEST_CASE("a line of any signs is made safe in time in proportion to it") {
  // With work that grows with the square these would take hours.
  constexpr std::size_t kMany = 1000000;
  const std::string numbers = std::string(kMany, '1') + std::string(kMany, '.');
  CHECK(escaped_markdown(numbers).size() == 2 * kMany + 1);
  std::string names;
  for (std::size_t i = 0; i < kMany; ++i) names += "a.";
  CHECK(escaped_markdown(names) == names);
  CHECK(escaped_markdown(std::string(kMany, '@')) == '`' + std::string(kMany, '@') + '`');
}
