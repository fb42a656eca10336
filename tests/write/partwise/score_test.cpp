#include "catch.hpp"
#include "fingerturn/read.hpp"
#include "fingerturn/report.hpp"
#include "write/musicxml/marking.hpp"

#include <string>

/// How the signs of a passage are written in a new MusicXML score.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

Score score_of(const std::string& notation) {
  const ReadResult read = read_notation(Source("a.passage", notation));
  REQUIRE(read.ok());
  return read.score;
}

/// Without the blanks between tags.
std::string compact(const std::string& musicxml) {
  std::string text;
  for (const char each : musicxml) {
    if (each == '\n' || (each == ' ' && text.ends_with('>'))) continue;
    text += each;
  }
  return text;
}

std::string written(const std::string& notation) {
  return compact(write_musicxml(score_of(notation)));
}

}  // namespace

TEST_CASE("what a new score holds") {
  const auto [notation, part] = GENERATE(table<std::string, std::string>({
      {"composer: a & b\nsource: c\n1/4 C4", "<creator type=\"composer\">a &amp; b</creator>"},
      {"source: c\n1/4 C4", "</encoding><source>c</source>"},
      {"key: B minor\nmeter: 3/8\n1/8 C4",
       "<key><fifths>2</fifths><mode>minor</mode></key><time><beats>3</beats>"
       "<beat-type>8</beat-type></time>"},
      {"1/4 F#4 C#4", "<key><fifths>2</fifths></key>"},
      {"tempo: 1/8. = 60\n1/4 C4",
       "<metronome><beat-unit>eighth</beat-unit><beat-unit-dot/><per-minute>60</per-minute>"
       "</metronome></direction-type><sound tempo=\"45\"/>"},
      {"tempo: 1/12 = 60\n1/4 C4",
       "<words>1/12 = 60</words></direction-type><sound tempo=\"20\"/>"},
      {"note: r.h. alone\n1/4 C4", "<words xml:lang=\"x-note\">r.h. alone</words>"},
      {"meter: 4/4\n1/4 C4 | 1/1 D", "<measure number=\"1\" implicit=\"yes\">"},
      {"meter: 4/4\nbar: 7\n1/1 C4", "<measure number=\"7\"><attributes>"},
      {"1/4 C4 ||", "<barline location=\"right\"><bar-style>light-light</bar-style></barline>"},
      {"|: 1/4 C4 :|",
       "<barline location=\"left\"><bar-style>heavy-light</bar-style>"
       "<repeat direction=\"forward\"/></barline>"},
      {"1/4 C4:4>1",
       "<fingering>4</fingering><fingering substitution=\"yes\">1</fingering></technical>"},
      {"1/4 C4:1 r", "<rest/><duration>1</duration><voice>1</voice><type>quarter</type>"},
      {"1/4 C4:1 | r", "<rest measure=\"yes\"/><duration>1</duration><voice>1</voice></note>"},
      {"1/4 C4 ,", "<notations><articulations><breath-mark/></articulations></notations>"},
      {"1/4 C4 tr", "<ornaments><trill-mark/></ornaments>"},
      {"1/4 C4 trem", "<ornaments><tremolo type=\"single\">3</tremolo></ornaments>"},
      {"1/4 ^D4 C", "<note><grace slash=\"yes\"/><pitch>"},
      {"1/4 ^D4 ^E C", "<type>16th</type><beam number=\"1\">begin</beam><beam number=\"2\">begin"},
      {"1/8. C4 1/16 D", "<type>eighth</type><dot/><beam number=\"1\">begin</beam>"},
      {"1/8. C4 1/16 D", "<beam number=\"1\">end</beam><beam number=\"2\">backward hook</beam>"},
      {"1/8t C4 D E",
       "<time-modification><actual-notes>3</actual-notes><normal-notes>2</normal-notes>"
       "</time-modification><beam number=\"1\">begin</beam><notations>"
       "<tuplet type=\"start\" bracket=\"no\"/></notations>"},
      {"1/4t C4 D E", "<tuplet type=\"start\" bracket=\"yes\"/>"},
      {"5/8 C4", "<duration>4</duration><tie type=\"start\"/><voice>1</voice><type>half</type>"},
      {"1/17 C4 D", "<duration>4</duration><voice>1</voice></note>"},
      {"key: none\n1/4 Fb4 F#4 F F##4",
       "<type>quarter</type><accidental>double-sharp</accidental>"},
      {"key: none\n1/4 F#4 F", "<accidental>natural</accidental>"},
      {"hand: left\n1/4 C3", "<clef><sign>F</sign><line>4</line></clef>"},
      {"hand: left\n1/4 C3 | C6", "<measure number=\"2\"><attributes><clef><sign>G</sign>"},
      {"RH: 1/4 C4\nLH: 1/4 C6", "<clef number=\"2\"><sign>G</sign><line>2</line></clef>"},
      {"RH: 1/4 C4\nLH: 1/2 C3",
       "<rest/><duration>1</duration><voice>1</voice><type>quarter</type><staff>1</staff>"},
      {"RH: 1/4 C4\nLH: 1/4 C3", "<backup><duration>1</duration></backup>"},
      {"hand: left\n1/4 C3=1/2 C4 D4", "<forward><duration>1</duration><voice>1</voice></forward>"},
  }));
  CAPTURE(notation);
  const std::string text = written(notation);
  CAPTURE(text);
  CHECK(count_of(text, part) > 0);
}

TEST_CASE("the notes of a rolled chord have the sign, and what is struck with the first has none") {
  const auto [notation, up, down] = GENERATE(table<std::string, std::size_t, std::size_t>({
      {"1/4 C4/E/G", 3, 0},
      {"1/4 G4/E/C", 0, 3},
      {"1/4 C4+E/G", 2, 0},
      {"1/4 C4+E+G", 0, 0},
      {"1/4 C4/E/G D4", 3, 0},
  }));
  CAPTURE(notation);
  const std::string text = written(notation);
  CHECK(count_of(text, "<arpeggiate/>") == up);
  CHECK(count_of(text, "<arpeggiate direction=\"down\"/>") == down);
}

TEST_CASE("a note above a bar that begins as the name of a hand names none") {
  const Score score = score_of("note: l.h. over\nRH: 1/4 C5:1 D:2\nLH: 1/4 C3:5 D:4");
  const ReadResult again = read_musicxml(Source("a.musicxml", write_musicxml(score)));
  REQUIRE(again.score.passages.size() == 1);
  for (const Line& line : score.passages[0].lines) {
    const Line* const found = line_of_hand(again.score.passages[0], line.hand);
    REQUIRE(found != nullptr);
    CHECK(found->events == line.events);
  }
  CHECK(again.score.passages[0].notes == score.passages[0].notes);
}

TEST_CASE("two hands have the bar lines of either") {
  const std::string text = written("RH: |: 1/4 C5:1 | D:2 ||\nLH: 1/4 C3:5 | D:4 :|");
  CHECK(count_of(text, "<repeat direction=\"forward\"/>") == 1);
  CHECK(count_of(text, "<repeat direction=\"backward\"/>") == 1);
}

TEST_CASE("what cannot be a score is told, and nothing is written") {
  const auto [notation, problem] = GENERATE(table<std::string, std::string>({
      {"1/4 C4\npassage: b\n1/4 C4",
       "a MusicXML score holds one passage, and here are 2; --passage takes one"},
      {"C4:1 D:2",
       "how long the notes of the right hand are is not known in bar 1; write a note value before "
       "them, as in 1/4 C4:1"},
      {"RH: 1/4 C4 | D\nLH: 1/4 r | D3\nhand: left\n", ""},
      {"1/999983 C4 1/999979 D4",
       "its note values are too small, or its bars too long, for a MusicXML score"},
      {"9999/4 C4 2/4 D4",
       "its note values are too small, or its bars too long, for a MusicXML score"},
  }));
  CAPTURE(notation);
  const Score score = score_of(notation);
  CHECK(musicxml_problem(score) == problem);
  CHECK(write_musicxml(score).empty() == !problem.empty());
  CHECK(write_musicxml(AnalysedScore("a", score), {}).empty() == !problem.empty());
  CHECK(musicxml_problem({}) == "a MusicXML score needs notes, and there are none");
}
