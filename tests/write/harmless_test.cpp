#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"
#include "write/json/json_reading.hpp"

#include <array>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// No document holds a character that acts on a terminal or an editor; as values all come back.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

/// Characters that act, one or more of each kind.
constexpr std::array<std::string_view, 26> kActing{
    "\x1B",   "\r",     "\b",     "\x7F",   "\u0085", "\u009B", "\u061C",     "\u200E",    "\u200F",
    "\u2028", "\u2029", "\u202A", "\u202B", "\u202C", "\u202D", "\u202E",     "\u2066",    "\u2067",
    "\u2068", "\u2069", "\u206A", "\u206F", "\uFFF9", "\uFFFB", "\U000E0041", "\U000E007F"};

/// What others can write into a document: names of files and titles.
std::vector<std::string> acting_texts() {
  std::vector<std::string> texts{"a\u009B31mb", "\x1B[31m\r\n\b", "\"\\\u202E", "\u05E9\u200F!"};
  for (const std::string_view character : kActing) texts.push_back("a" + std::string(character));
  return texts;
}

void check_harmless(const std::string& document) {
  for (const std::string_view character : kActing) {
    REQUIRE(document.find(character) == std::string::npos);
  }
}

Score score_titled(const std::string& title) {
  Score score = read_notation(Source("a", "C4:1 D:2")).score;
  score.passages[0].title = title;
  score.passages[0].composer = title;
  score.passages[0].remarks.push_back(title);
  return score;
}

std::vector<Comparison> compared(const std::string& name, const AnalysedScore& analysed) {
  return {compare(name, {{name, analysed[0]}, {name, analysed[0]}})};
}

/// What is found in a passage under this name and title.
FileCheck checked_under(const std::string& name) {
  const Source source(name, "C4:1 D:2 E:8");
  ReadResult read{score_titled(name), {}, {}};
  read.score.passages[0].lines[0].events[0].notes[0].finger.reset();
  return check(source, std::move(read));
}

}  // namespace

TEST_CASE("an analysis as JSON has every title and name, and none that acts") {
  for (const std::string& text : acting_texts()) {
    CAPTURE(text);
    const AnalysedScore analysed(text, score_titled(text));
    for (const std::string& document : {write_json(analysed), write_jsonl(analysed)}) {
      check_harmless(document);
      const Json json = parsed_json(document);
      CHECK(json["source"] == text);
      CHECK(json["passages"][0]["title"] == text);
      CHECK(json["passages"][0]["composer"] == text);
      CHECK(json["passages"][0]["remarks"][0] == text);
    }
  }
}

TEST_CASE("a comparison and a check as JSON have every title and name, and none that acts") {
  for (const std::string& text : acting_texts()) {
    CAPTURE(text);
    const AnalysedScore analysed(text, score_titled(text));
    const std::string comparison = write_comparison_json(compared(text, analysed));
    check_harmless(comparison);
    CHECK(parsed_json(comparison)["passages"][0]["fingerings"][1] == text);
    const std::string found = write_check_jsonl(checked_under(text));
    check_harmless(found);
    CHECK(parsed_json(found)["source"] == text);
  }
}

TEST_CASE("no report to read, no page and no message has a character that acts") {
  for (const std::string& text : acting_texts()) {
    CAPTURE(text);
    const AnalysedScore analysed(text, score_titled(text));
    const FileCheck found = checked_under(text);
    const Source wrong(text, text + " " + text);
    for (const std::string& document :
         {write_text(analysed, {.columns = 30, .detail = true}), write_html(analysed),
          write_svg(analysed), write_markdown(analysed, {}), write_passage(analysed.written()),
          write_comparison_text(compared(text, analysed), {}),
          write_comparison_markdown(compared(text, analysed)), write_findings(found, 30),
          write_counts(std::vector{found.file, found.file}, {}, 80),
          write_excerpt(analysed.written(), excerpt(analysed.written(), {1, 1})),
          render(wrong, read_notation(wrong).diagnostics)}) {
      check_harmless(document);
    }
  }
}

TEST_CASE("no new score has a character that acts") {
  for (const std::string& text : acting_texts()) {
    CAPTURE(text);
    Score score = read_notation(Source("a", "1/4 C4:1 D:2")).score;
    score.passages[0].title = score.passages[0].composer = score.passages[0].source = text;
    score.passages[0].notes.push_back({1, text});
    check_harmless(write_musicxml(AnalysedScore(text, score), {}));
  }
}

TEST_CASE("characters that act are escaped in one unit of UTF-16 or two, all else stays") {
  const AnalysedScore analysed("\u009B\u202E\U000E0041\u00E9\u6708\U0001F3B9\u200D\t",
                               score_titled(""));
  const std::string json = write_json(analysed);
  const std::string expected = R"("source":"\u009b\u202e\udb40\udc41)"
                               "\u00E9\u6708\U0001F3B9\u200D\\t\"";
  CHECK(json.find(expected) != std::string::npos);
}
