#include "catch.hpp"
#include "fingerturn/read.hpp"
#include "growth/growing_score.hpp"
#include "growth/work.hpp"
#include "score/file_reading.hpp"

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

/// What the readers hold at most is in proportion to what they read, as include/fingerturn/read.hpp
/// says: the smallest elements and signs take the most for their bytes.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

/// Vectors double as they grow. Just past a power of two they take the most.
constexpr std::size_t kMany = 65536 + 16;
/// What is held however little is read.
constexpr std::size_t kAlways = std::size_t{256} * 1024;

constexpr std::string_view kHead =
    "<score-partwise><part-list><score-part id=\"P1\"><part-name>Piano</part-name></score-part>"
    "</part-list><part id=\"P1\"><measure number=\"1\"><attributes><divisions>100</divisions>"
    "<staves>2</staves></attributes>";
constexpr std::string_view kFoot = "</measure></part></score-partwise>";
constexpr std::string_view kPitch = "<pitch><step>C</step><octave>4</octave></pitch>";

/// A name of few letters for each number.
std::string short_name(std::size_t number) {
  constexpr std::size_t kLetters = 26;
  std::string name;
  do {
    name += static_cast<char>('a' + number % kLetters);
    number /= kLetters;
  } while (number > 0);
  return name;
}

/// So many of a piece; an @ in it becomes a short name of its own.
std::string repeated(std::string_view piece, std::size_t count) {
  std::string text;
  const std::size_t at = piece.find('@');
  for (std::size_t i = 0; i < count; ++i) {
    text += piece.substr(0, at);
    if (at != std::string_view::npos) text += short_name(i) + std::string(piece.substr(at + 1));
  }
  return text;
}

std::string in_bar(const std::string& inside) {
  return std::string(kHead) + inside + std::string(kFoot);
}

std::string in_note(const std::string& inside) {
  return in_bar("<note>" + std::string(kPitch) + "<duration>1</duration>" + inside + "</note>");
}

std::size_t most_held(const Source& source) {
  return work_of([&source] { read(source); }).most_bytes;
}

void check_musicxml(const std::string& text) {
  CAPTURE(text.substr(0, kHead.size() + 80), text.size());
  CHECK(most_held(Source("small.musicxml", text)) <
        kMemoryForByteOfMusicXml * text.size() + kAlways);
}

}  // namespace

TEST_CASE("memory: musicxml: very many of the smallest elements") {
  for (const std::string_view piece :
       {"<a/>", "x<a/>", "<a b=''/>", "<![CDATA[]]>", "<note/>", "x<note/>", "<sound tempo='9'/>",
        "<barline/>", "<backup/>", " ", "\n", "\r\n"}) {
    check_musicxml(in_bar(repeated(piece, kMany)));
  }
  for (const std::string_view piece : {"<fingering/>", "x<fingering/>", "<fingering>1</fingering>",
                                       "<fingering alternate='yes'>1</fingering>"}) {
    check_musicxml(
        in_note("<notations><technical>" + repeated(piece, kMany) + "</technical></notations>"));
  }
}

TEST_CASE("memory: musicxml: very many small measures and parts") {
  const std::string note = "<note>" + std::string(kPitch) + "<duration>1</duration></note>";
  const std::string meter =
      "<attributes><time><beats>1</beats><beat-type>1</beat-type></time></attributes>";
  for (const std::string& measure :
       {std::string("<measure/>"), std::string("x<measure/>"),
        std::string("<measure><sound tempo='9'/></measure>"), "<measure>" + meter + "</measure>",
        std::string("<measure><forward><duration>1</duration></forward></measure>")}) {
    const std::string measures = repeated(measure, kMany);
    check_musicxml(in_bar(note + "</measure>" + measures + "<measure>"));
    const std::string two =
        "<score-partwise><part-list><score-part id='a'><part-name>organ"
        "</part-name></score-part><score-part id='b'><part-name>organ"
        "</part-name></score-part></part-list><part id='a'>";
    const std::string next = "</part><part id='b'>";
    const std::string end = "</part></score-partwise>";
    check_musicxml(two + "<measure/>" + next + measures + end);
    check_musicxml(two + measures + next + "<measure/>" + end);
    check_musicxml(two + measures + next + measures + end);
  }
  check_musicxml("<score-timewise><measure>" + repeated("<part id='@'/>", kMany) +
                 "</measure></score-timewise>");
  check_musicxml("<score-timewise><measure>" + repeated("x<part id='@'/>", kMany) +
                 "</measure></score-timewise>");
  check_musicxml("<score-partwise><part-list>" + repeated("<score-part id='@'/>", kMany) +
                 "</part-list></score-partwise>");
}

TEST_CASE("memory: musicxml: very many notes") {
  const std::string pitch(kPitch);
  for (const std::string& piece :
       {"<note><grace/>" + pitch + "</note>", "<note>" + pitch + "<duration>1</duration></note>",
        "<note><chord/><grace/>" + pitch + "</note>",
        "<note><grace/>" + pitch + "<voice>@</voice></note>",
        "<note><grace/>" + pitch + "<tie type='start'/></note>",
        "<note>" + pitch + "<duration>1</duration></note><forward><duration>1</duration></forward>",
        "</measure><measure><note>" + pitch + "<duration>1</duration></note>"}) {
    check_musicxml(in_bar(repeated(piece, kMany)));
  }
}

TEST_CASE("memory: musicxml: the most keyboards, with the longest names") {
  // Letters of four bytes, of which the readers keep two hundred.
  const std::string wide = repeated("\xF0\x9D\x84\x9E", 200);
  std::string list;
  std::string parts;
  for (std::size_t i = 0; i < 2 * kMostKeyboards; ++i) {
    const std::string id = "id='" + short_name(i) + "'>";
    list += "<score-part " + id + "<part-name>organ " + wide + "</part-name></score-part>";
    parts += "<part " + id + "<measure/></part>";
  }
  for (std::size_t i = 0; i < 6; ++i) {
    const std::string id = "id='left out " + short_name(i) + "'>";
    list += "<score-part " + id + "<part-name>" + wide + "</part-name></score-part>";
    parts += "<part " + id + "<measure/></part>";
  }
  const std::string text = "<score-partwise><work><work-title>" + wide +
                           "</work-title></work><movement-title>a" + wide +
                           "</movement-title><identification><creator type='composer'>" + wide +
                           "</creator><source>" + wide + "</source></identification><part-list>" +
                           list + "</part-list>" + parts + "</score-partwise>";
  const Source source("keyboards.musicxml", text);
  CHECK(read(source).score.passages.size() == kMostKeyboards);
  constexpr std::size_t kForNames = std::size_t{16} * 1024 * 1024;
  const std::size_t held = most_held(source);
  CAPTURE(held);
  CHECK(held < kMemoryForByteOfMusicXml * text.size() + kForNames);
  CHECK(held < 4 * text.size() + kForNames);
}

TEST_CASE("memory: musicxml: letters of another encoding") {
  check_musicxml(R"(<?xml version="1.0" encoding="windows-1252"?>)" +
                 in_bar(std::string(kMany, '\x80')));
  std::string wide = "\xFF\xFE";
  for (const char letter : in_bar(repeated("x<a/>", kMany))) wide += {letter, '\0'};
  check_musicxml(wide);
}

TEST_CASE("memory: musicxml: very many of each thing that the reader looks at") {
  constexpr std::size_t kTimes = 4096 + 16;
  for (const std::string file : {"by_parts.xml", "by_measures.xml"}) {
    const GrowingScore score(
        text_of_file(std::filesystem::path(FINGERTURN_TESTS_DIR) / "growth" / file), false);
    for (std::size_t thing = 0; thing < score.things(); ++thing) {
      INFO(score.name(thing));
      check_musicxml(score.text({thing, kTimes}, {thing, 1}));
    }
  }
}

TEST_CASE("memory: notation: very many of the smallest words") {
  for (const std::string_view piece : {"C ",          "C|",
                                       "C",           "+C",
                                       "r ",          "r|",
                                       "|",           "^C ",
                                       "C~ ",         "C:1>2 ",
                                       ">1",          "zz ",
                                       "\xFF ",       "\n",
                                       "passage:\n",  "passage:@\nC4\n",
                                       "composer:\n", "meter:1/1\nC|",
                                       "tempo:9\nC|", "RH:C|\nLH:C|\n",
                                       "#\n",         "#\nC|\n",
                                       "note:x\n",    "key:none\n",
                                       "Cn "}) {
    const std::string text = "LH: C4 \nRH: C4 " + repeated(piece, kMany);
    CAPTURE(piece);
    CHECK(most_held(Source("small.passage", text)) <
          kMemoryForByteOfNotation * text.size() + kAlways);
  }
}
