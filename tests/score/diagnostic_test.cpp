#include "fingerturn/diagnostic.hpp"

#include "catch.hpp"
#include "fingerturn/source.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>

using namespace fingerturn;
using namespace std::string_literals;

namespace {

/// Where a word stands in the source, so that no test has to count bytes.
Span span_of(const Source& source, std::string_view word) {
  const std::size_t begin = source.text().find(word);
  REQUIRE(begin != std::string_view::npos);
  return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(begin + word.size())};
}

Diagnostic error_at(Span span, std::string hint = {}) {
  return {Severity::error, "finger-range", span, "expected this, found that", std::move(hint)};
}

/// What is drawn for the marked word: the line and the mark below it.
std::string drawn(const std::string& text, std::string_view word) {
  const Source source("name", text);
  const std::string rendered = render(source, error_at(span_of(source, word)));
  return rendered.substr(rendered.find('\n') + 1);
}

Diagnostic numbered(Severity severity, std::uint32_t place) {
  return {severity, "code", {place, place}, std::to_string(place), {}};
}

std::size_t kept_warnings(const Diagnostics& diagnostics) {
  std::size_t count = 0;
  for (const Diagnostic& kept : diagnostics.kept) {
    if (kept.severity == Severity::warning) ++count;
  }
  return count;
}

}  // namespace

TEST_CASE("a diagnostic shows file, place, message, code, the marked line and the hint") {
  const Source source("demo/lantern.passage", "hand: left\nC4:1 D:2 F:6 |\n");
  const Diagnostic diagnostic{Severity::error, "finger-range", span_of(source, "6"),
                              "expected a finger from 1 to 5, found \"6\"", "write F:4"};
  CHECK(render(source, diagnostic) ==
        "demo/lantern.passage:2:12: error: expected a finger from 1 to 5, found \"6\" "
        "[finger-range]\n"
        "  C4:1 D:2 F:6 |\n"
        "             ^\n"
        "  hint: write F:4\n");
}

TEST_CASE("a diagnostic without a hint has no line for it, a warning says that it is one") {
  const Source source("name", "C4:1~");
  CHECK(render(source, {Severity::warning, "tie-to-nothing", {0, 5}, "expected a note", {}}) ==
        "name:1:1: warning: expected a note [tie-to-nothing]\n"
        "  C4:1~\n"
        "  ^^^^^\n");
}

TEST_CASE("a place in the music stands behind the message, what the reader did at its end") {
  Diagnostic diagnostic{Severity::warning, "finger-range", {0, 1}, "found no finger", {}};
  diagnostic.where = {1, Hand::left, 12, Fraction{5, 2}};
  CHECK(full_message(diagnostic) == "found no finger, in bar 12, left hand, beat 2.5");
  CHECK(render(Source("name", "x"), diagnostic) ==
        "name:1:1: warning: found no finger, in bar 12, left hand, beat 2.5 [finger-range]\n"
        "  x\n"
        "  ^\n");
  diagnostic.code = "musicxml-pitch";
  diagnostic.where = {1, std::nullopt, 12, std::nullopt};
  CHECK(full_message(diagnostic) == "found no finger, in bar 12; the note is left out");
  diagnostic.where = {};
  CHECK(full_message(diagnostic) == "found no finger; the note is left out");
}

TEST_CASE("the mark stands under the place") {
  CHECK(drawn("C4:1 zz D:2", "zz") == "  C4:1 zz D:2\n       ^^\n");
  CHECK(drawn("zz", "zz") == "  zz\n  ^^\n");
  // Code points are counted, not bytes.
  CHECK(drawn("B\u266D3:1 \u00E4\u00E4 D", "\u00E4\u00E4") ==
        "  B\u266D3:1 \u00E4\u00E4 D\n        ^^\n");
}

TEST_CASE("the mark stands under the place where letters are wide or take no room") {
  CHECK(drawn("C4:1 \u6708 zz", "zz") == "  C4:1 \u6708 zz\n          ^^\n");
  CHECK(drawn("C4:1 \u6708\u5149 D", "\u6708\u5149") == "  C4:1 \u6708\u5149 D\n       ^^^^\n");
  CHECK(drawn("e\u0301 zz", "zz") == "  e\u0301 zz\n    ^^\n");
  CHECK(drawn("\u6708\te\u0301\tzz", "zz") == "  \u6708\te\u0301\tzz\n    \t \t^^\n");
}

TEST_CASE("tabs before the mark stay tabs") {
  CHECK(drawn("C4:1\tD:2\tzz", "zz") == "  C4:1\tD:2\tzz\n      \t   \t^^\n");
}

TEST_CASE("a mark has at least one caret and stays in its line") {
  const Source source("name", "C4:1\nD:2\n");
  CHECK(render(source, error_at({4, 4})).ends_with("  C4:1\n      ^\n"));
  CHECK(render(source, error_at({3, 7})).ends_with("  C4:1\n     ^\n"));
  CHECK(render(source, error_at({9, 9}))
            .ends_with("name:3:1: error: expected this, found that "
                       "[finger-range]\n  \n  ^\n"));
}

TEST_CASE("a span past the end or the wrong way round is shown at the end of the text") {
  const Source source("name", "C4:1");
  CHECK(render(source, error_at({90, 99})).ends_with("  C4:1\n      ^\n"));
  CHECK(render(source, error_at({3, 1})).ends_with("  C4:1\n     ^\n"));
}

TEST_CASE("an empty text has no line to mark") {
  CHECK(render(Source("name", ""), error_at({0, 0})) ==
        "name:1:1: error: expected this, found that [finger-range]\n");
}

TEST_CASE("line endings are not shown") {
  CHECK(drawn("C4:1 zz\r\nD:2", "zz") == "  C4:1 zz\n       ^^\n");
  CHECK(drawn("C4:1 zz\rD:2", "zz") == "  C4:1 zz\n       ^^\n");
}

TEST_CASE("of a long line a window around the mark is shown") {
  const std::string before(100, 'a');
  const std::string after(100, 'b');
  CHECK(drawn("zz" + after, "zz") == "  zz" + std::string(74, 'b') + "...\n  ^^\n");
  CHECK(drawn(before + "zz" + after, "zz") == "  ..." + std::string(40, 'a') + "zz" +
                                                  std::string(34, 'b') + "...\n" +
                                                  std::string(45, ' ') + "^^\n");
  CHECK(drawn(before + "zz", "zz") ==
        "  ..." + std::string(40, 'a') + "zz\n" + std::string(45, ' ') + "^^\n");
  CHECK(drawn(std::string(74, 'a') + "zz", "zz") ==
        "  " + std::string(74, 'a') + "zz\n" + std::string(76, ' ') + "^^\n");
}

TEST_CASE("a mark that is longer than the window is cut with it") {
  CHECK(drawn(std::string(1000, 'z'), std::string(1000, 'z')) ==
        "  " + std::string(76, 'z') + "...\n  " + std::string(76, '^') + "\n");
}

TEST_CASE("the window counts code points") {
  std::string before;
  for (int i = 0; i < 100; ++i) before += "\u266D";
  const std::string rendered = drawn(before + "zz", "zz");
  CHECK(rendered.starts_with("  ...\u266D"));
  CHECK(rendered.ends_with("\u266Dzz\n" + std::string(45, ' ') + "^^\n"));
}

TEST_CASE("the window is no wider where its letters are") {
  std::string wide;
  for (int i = 0; i < 100; ++i) wide += "\u6708";
  const std::string shown = wide.substr(0, 3 * 20);
  CHECK(drawn(wide + "zz" + wide, "zz") ==
        "  ..." + shown + "zz" + wide.substr(0, 3 * 17) + "...\n" + std::string(45, ' ') + "^^\n");
  std::string marks;
  for (int i = 0; i < 100000; ++i) marks += "\u0301";
  CHECK(drawn("a" + marks + "zz", "zz") == "  ..." + marks.substr(0, 2 * 40) + "zz\n     ^^\n");
}

TEST_CASE("control characters never reach the terminal") {
  const Source source("a\x1B]0;name\nb", "C4:1 \x1B[31m zz \xFF");
  const Diagnostic diagnostic{Severity::error, "code", span_of(source, "zz"), "found \x1B[31m",
                              "not \x07 this"};
  CHECK(render(source, diagnostic) ==
        "a\uFFFD]0;name\uFFFDb:1:12: error: found \uFFFD[31m [code]\n"
        "  C4:1 \uFFFD[31m zz \uFFFD\n"
        "             ^^\n"
        "  hint: not \uFFFD this\n");
}

TEST_CASE("no more than fifty diagnostics are kept, all are counted") {
  Diagnostics diagnostics;
  for (std::uint32_t i = 0; i < 70; ++i) diagnostics.add(numbered(Severity::error, i));
  CHECK(diagnostics.kept.size() == kMostDiagnostics);
  CHECK(diagnostics.kept.back().message == "49");
  CHECK(diagnostics.errors == 70);
  const std::string rendered = render(Source("name", std::string(100, ' ')), diagnostics);
  CHECK(rendered.ends_with("name: 20 more\n"));
}

TEST_CASE("fifty diagnostics are shown without more") {
  Diagnostics diagnostics;
  for (std::uint32_t i = 0; i < 50; ++i) diagnostics.add(numbered(Severity::warning, i));
  CHECK(render(Source("name", ""), diagnostics).find("more") == std::string::npos);
}

TEST_CASE("errors push warnings out, the last warning first") {
  Diagnostics diagnostics;
  for (std::uint32_t i = 0; i < 60; ++i) diagnostics.add(numbered(Severity::warning, i));
  for (std::uint32_t i = 100; i < 120; ++i) diagnostics.add(numbered(Severity::error, i));
  CHECK(diagnostics.kept.size() == kMostDiagnostics);
  CHECK(diagnostics.errors == 20);
  CHECK(diagnostics.warnings == 60);
  CHECK(kept_warnings(diagnostics) == 30);
  CHECK(diagnostics.kept[29].message == "29");
  CHECK(diagnostics.kept[30].message == "100");

  for (std::uint32_t i = 200; i < 300; ++i) diagnostics.add(numbered(Severity::error, i));
  CHECK(kept_warnings(diagnostics) == 0);
  diagnostics.add(numbered(Severity::warning, 1));
  CHECK(kept_warnings(diagnostics) == 0);
  CHECK(diagnostics.kept.size() == kMostDiagnostics);
  CHECK(diagnostics.errors == 120);
  CHECK(diagnostics.warnings == 61);
}

TEST_CASE("diagnostics are sorted by their place, those of one place keep their order") {
  Diagnostics diagnostics;
  diagnostics.add({Severity::error, "third", {5, 6}, "", ""});
  diagnostics.add({Severity::warning, "first", {1, 9}, "", ""});
  diagnostics.add({Severity::error, "fourth", {5, 5}, "", ""});
  diagnostics.add({Severity::error, "second", {2, 3}, "", ""});
  diagnostics.sort();
  std::string codes;
  for (const Diagnostic& kept : diagnostics.kept) codes += std::string(kept.code) + " ";
  CHECK(codes == "first second third fourth ");
}

TEST_CASE("no diagnostics are no text") {
  CHECK(render(Source("name", ""), Diagnostics{}).empty());
}
