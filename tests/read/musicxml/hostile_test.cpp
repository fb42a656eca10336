#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"

#include <cstddef>
#include <string>
#include <string_view>

/// MusicXML that nobody would write: read, judged and reported in time and memory in proportion.
/// No time is measured; work that grows with the square of the input would run for hours.
using namespace fingerturn;

namespace {

constexpr std::size_t kMany = 300000;
constexpr std::string_view kHead =
    "<score-partwise><part-list><score-part id=\"P1\"><part-name>Piano</part-name></score-part>"
    "</part-list><part id=\"P1\"><measure number=\"1\"><attributes><staves>2</staves></attributes>";
constexpr std::string_view kFoot = "</measure></part></score-partwise>";

std::string repeated(std::string_view part, std::size_t count) {
  std::string text;
  text.reserve(part.size() * count);
  for (std::size_t i = 0; i < count; ++i) text += part;
  return text;
}

std::string note_with(std::string_view inside) {
  return "<note><pitch><step>C</step><octave>4</octave></pitch><duration>1</duration>" +
         std::string(inside) + "</note>";
}

ReadResult read_bar(const std::string& inside) {
  return read(Source("hostile.musicxml", std::string(kHead) + inside + std::string(kFoot)));
}

std::size_t events_in(const ReadResult& result) {
  return result.score.passages.at(0).lines.at(0).events.size();
}

}  // namespace

TEST_CASE("hostile musicxml: very many notes in one bar") {
  const ReadResult result = read_bar(repeated(note_with("<voice>1</voice>"), kMany));
  CHECK(result.diagnostics.errors > 0);  // past 10,000 quarter notes
  CHECK(result.score.passages.size() == 1);
  const ReadResult short_notes = read_bar("<attributes><divisions>100</divisions></attributes>" +
                                          repeated(note_with("<voice>1</voice>"), kMany));
  CHECK(short_notes.ok());
  CHECK(events_in(short_notes) == kMany);
  const Analysis analysis = analyse(short_notes.score);
  CHECK(analysis.passages.at(0).lines.at(0).totals.events == kMany);
}

TEST_CASE("hostile musicxml: very many notes at one moment") {
  const ReadResult result = read_bar(note_with("") + repeated(note_with("<chord/>"), kMany));
  CHECK(result.ok());
  CHECK(events_in(result) >= 1);
}

TEST_CASE("hostile musicxml: very many voices, parts and measures") {
  std::string voices;
  for (std::size_t i = 0; i < kMany / 10; ++i) {
    voices += note_with("<voice>v" + std::to_string(i) + "</voice>") +
              "<backup><duration>1</duration></backup>";
  }
  CHECK(read_bar(voices).ok());
  std::string parts = "<score-partwise>";
  for (std::size_t i = 0; i < kMany / 10; ++i) {
    parts +=
        "<part id=\"P" + std::to_string(i) + "\"><measure>" + note_with("") + "</measure></part>";
  }
  CHECK(read(Source("parts.musicxml", parts + "</score-partwise>")).ok());
  const std::string measures = std::string(kHead) + "</measure>" +
                               repeated("<measure>" + note_with("") + "</measure>", kMany / 3) +
                               "</part></score-partwise>";
  const ReadResult result = read(Source("measures.musicxml", measures));
  CHECK(result.ok());
  CHECK(events_in(result) == kMany / 3);
}

TEST_CASE("hostile musicxml: divisions that change all the time") {
  std::string text;
  for (std::size_t i = 1; i <= kMany / 10; ++i) {
    text +=
        "<attributes><divisions>" + std::to_string(i) + "</divisions></attributes>" + note_with("");
  }
  const ReadResult result = read_bar(text);
  CHECK_FALSE(result.ok());
  CHECK(result.diagnostics.kept.size() == kMostDiagnostics);
}

TEST_CASE("hostile musicxml: two parts whose times together go beyond what can be counted") {
  const auto part = [](const std::string& id, const std::string& divisions, std::size_t bars) {
    const std::string whole_bar =
        repeated("<note><pitch><step>C</step><octave>4</octave></pitch><duration>" + divisions +
                     "000</duration></note>",
                 10);
    return "<part id=\"" + id + "\"><measure><attributes><divisions>" + divisions +
           "</divisions></attributes>" + whole_bar + "</measure>" +
           repeated("<measure>" + whole_bar + "</measure>", bars - 1) + "</part>";
  };
  const auto read_parts = [&part](std::size_t bars) {
    const std::string list =
        "<part-list><score-part id=\"R\"><part-name>Piano right</part-name></score-part>"
        "<score-part id=\"L\"><part-name>Piano left</part-name></score-part></part-list>";
    return read(Source("parts.musicxml", "<score-partwise>" + list + part("R", "999983", bars) +
                                             part("L", "999979", bars) + "</score-partwise>"));
  };
  const ReadResult short_piece = read_parts(400);
  CHECK(short_piece.ok());
  CHECK(short_piece.score.passages.at(0).lines.size() == 2);
  const ReadResult long_piece = read_parts(1000);
  REQUIRE_FALSE(long_piece.ok());
  CHECK(long_piece.diagnostics.kept.at(0).message ==
        "expected parts whose times can be counted together exactly, found quarter notes in 999983 "
        "and in 999979 divisions");
  CHECK(long_piece.score.passages.at(0).lines.empty());
}

TEST_CASE("hostile musicxml: a bar of very many measures, finely counted in two parts") {
  // Where a measure stands in its bar is then beyond 64 bits, as sanitizers would tell.
  const auto part = [](const std::string& id, const std::string& divisions) {
    return "<part id=\"" + id + R"("><measure number="1"><attributes><divisions>)" + divisions +
           "</divisions></attributes>" + note_with("") +
           "<attributes><divisions>1</divisions></attributes></measure>" +
           repeated(R"(<measure number="X"><forward><duration>9999</duration></forward></measure>)",
                    kMany / 10) +
           "</part>";
  };
  const ReadResult result = read(
      Source("bar.musicxml",
             "<score-partwise><part-list><score-part id=\"R\"><part-name>Piano right</part-name>"
             "</score-part><score-part id=\"L\"><part-name>Piano left</part-name></score-part>"
             "</part-list>" +
                 part("R", "999983") + part("L", "999979") + "</score-partwise>"));
  REQUIRE(result.diagnostics.errors == 1);
  CHECK(result.diagnostics.kept[0].code == "musicxml-time");
}

TEST_CASE("hostile musicxml: deep nesting") {
  const std::string deep = repeated("<a>", kMany) + repeated("</a>", kMany);
  CHECK(read_bar(deep).ok());
  CHECK_FALSE(read(Source("deep.musicxml", repeated("<a>", kMany))).ok());
}

TEST_CASE("hostile musicxml: very many wrong things keep to the most that are shown") {
  const ReadResult result = read_bar(
      repeated(note_with("<notations><technical><fingering>x</fingering></technical></notations>"),
               kMany / 100));
  CHECK(result.diagnostics.warnings == kMany / 100);
  CHECK(result.diagnostics.kept.size() == kMostDiagnostics);
}

TEST_CASE("hostile musicxml: every beginning of a score is read or refused") {
  const std::string whole = std::string(kHead) + note_with("<voice>1</voice>") + std::string(kFoot);
  for (std::size_t length = 0; length < whole.size(); ++length) {
    const ReadResult result = read_musicxml(Source("cut.musicxml", whole.substr(0, length)));
    CHECK_FALSE(result.ok());
    CHECK(result.diagnostics.kept.at(0).code == "xml");
  }
  CHECK(read_musicxml(Source("whole.musicxml", whole)).ok());
}

TEST_CASE("hostile musicxml: a source that is larger than a reader takes") {
  const ReadResult result =
      read(Source("large.musicxml", "<" + std::string(kLargestMusicXml, ' ')));
  REQUIRE_FALSE(result.ok());
  CHECK(result.diagnostics.kept.at(0).code == "too-large");
}
