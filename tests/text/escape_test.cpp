#include "text/escape.hpp"

#include "catch.hpp"

#include <string>

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
  CHECK(escaped_markdown("www.a.b https://c d@e") == "www\\.a.b https\\://c d\\@e");
  CHECK(escaped_markdown("C4:1") == "C4:1");
  CHECK(escaped_markdown("  ").empty());
}
