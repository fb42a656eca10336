#include "catch.hpp"
#include "write/musicxml/marking.hpp"

#include <string>
#include <vector>

/// The writer of MusicXML: signs, their places, and that nothing else changes. The element order
/// and the attributes are those of the MusicXML 3.0 schema, against which tests/write_back/
/// validates; the signs are a convention of this project.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

using Signs = std::vector<std::string>;

const std::string kFourQuarters = quarter("C4") + quarter("D4") + quarter("E4") + quarter("F4");

std::string lyric(const std::string& number, const std::string& text) {
  return R"(<lyric number=")" + number + R"(" name="fingerturn" placement="below">)" +
         "<syllabic>single</syllabic><text>" + text + "</text></lyric>";
}

/// Marks a score, and checks what holds of every marked score.
std::string checked(const std::string& musicxml, const std::string& notation,
                    const MusicXmlStyle& style = {}) {
  std::string once = marked(musicxml, notation, style);
  CHECK(once != musicxml);
  CHECK(without_own_marks(once) == musicxml);
  CHECK(marked(once, notation, style) == once);
  CHECK(marked(once, notation, {.words = !style.words}) ==
        marked(musicxml, notation, {.words = !style.words}));
  CHECK(count_of(once, "en-x-forearm") == 1);
  return once;
}

}  // namespace

TEST_CASE("a sign for each kind and direction") {
  const std::string score = partwise({kFourQuarters + quarter("G4")});
  CHECK(signs_under(checked(score, "C4:1 D:2 E:3 F:1 G:2")) ==
        Signs{"1:←|", "1:→", "1:⇒", "1:←", "1:→"});
  CHECK(signs_under(checked(score, "G4:5 F:4 E:3 D:4 C:1")) ==
        Signs{"1:|→", "1:←", "1:⇐", "1:→", "1:←"});
  CHECK(signs_under(checked(score, "LH: C4:1 D:2 E:3 F:1 G:2")) ==
        Signs{"1:|→", "1:←", "1:⇐", "1:→", "1:←"});
  CHECK(signs_under(checked(score, "C4 D:2 E:1 F:5 G:?")) ==
        Signs{"1:?", "1:?", "1:←?", "1:→", "1:?"});
}

TEST_CASE("a sign where the side is open, and where both sides go down") {
  const std::string score =
      partwise({quarter("D4") + quarter("C4") + quarter("+E4") + quarter("+G4") + quarter("D4")});
  CHECK(signs_under(checked(score, "D4:3 C4:1+E4:3+G4:5 D4:3")) ==
        Signs{"1:|?", "1:=", "", "", "1:|?"});
}

TEST_CASE("words instead of arrows") {
  const std::string score = partwise({kFourQuarters + quarter("G4")});
  CHECK(signs_under(checked(score, "C4:1 D:2 E:3 F:1 G:2", {.words = true})) ==
        Signs{"1:prep left", "1:right", "1:double right", "1:left", "1:right"});
  const std::string alone = partwise({quarter("D4") + quarter("C4")});
  CHECK(signs_under(checked(alone, "D4:3 , C:2", {.words = true})) ==
        Signs{"1:prep ?", "1:prep ?"});
}

TEST_CASE("words for what is level or open") {
  const std::string chord = quarter("D4") + quarter("+F4");
  const std::string score = partwise({quarter("C4") + chord + quarter("E4") + quarter("F4")});
  CHECK(signs_under(checked(score, "C4:? D:1+F:5 E:? F4:5", {.words = true})) ==
        Signs{"1:?", "1:level", "", "1:?", "1:right ?"});
}

TEST_CASE("the whole of a marked score") {
  const std::string score = "<score-partwise version=\"3.0\">";
  const std::string begin =
      "\n  <part id=\"P1\">\n    <measure number=\"1\">\n"
      "      <attributes>\n        <divisions>1</divisions>\n      </attributes>";
  const std::string first =
      "\n      <note>\n        <pitch><step>C</step><octave>4</octave></pitch>\n"
      "        <duration>1</duration>";
  const std::string second =
      "\n      </note>\n      <note>\n        <pitch><step>D</step><octave>4</octave></pitch>\n"
      "        <duration>1</duration>";
  const std::string end = "\n      </note>\n    </measure>\n  </part>\n</score-partwise>\n";
  const std::string legend =
      "<credit page=\"1\"><credit-words xml:lang=\"en-x-forearm\" default-x=\"80\" "
      "default-y=\"60\" font-size=\"7\" valign=\"bottom\">Under the notes: how the forearm turns "
      "to play each, as the player "
      "sees it.&#10;←| |→ preparatory: the first of a gesture, with a swing of its own to the&#10;"
      "other side before it&#10;← → single: the side changes, the note before has prepared it&#10;"
      "This describes a way of moving at the piano and is no medical advice. Stop&#10;"
      "at pain, numbness or tingling. Learn rotation with a qualified teacher, and&#10;"
      "see a clinician about symptoms that stay. The swings are shown large so that&#10;"
      "they can be learned; at speed they shrink. The sound and the music come&#10;"
      "first.</credit-words></credit>";
  CHECK(checked(score + begin + first + second + end, "C4:1 D:2") ==
        score + "\n  " + legend + begin + first + "\n        " + lyric("1", "←|") + second +
            "\n        " + lyric("1", "→") + end);
}

TEST_CASE("a sign stands after notations and lyrics, and before play and listen") {
  const std::string notations =
      "<notations><technical><fingering>1</fingering></technical></notations>";
  const std::string verse = "<lyric number=\"1\"><text>la</text></lyric>";
  const std::string play = "<play><mute>on</mute></play>";
  const std::string listen = "<listen><wait/></listen>";
  const std::string score = partwise({quarter("C4", notations + verse + play + listen) +
                                      quarter("D4", notations + listen) + quarter("E4", play) +
                                      quarter("F4", notations)});
  const std::string out = checked(score, "C4:1 D:2 E:3 F:4");
  CHECK(count_of(out, notations + verse + lyric("2", "←|") + play + listen) == 1);
  CHECK(count_of(out, notations + lyric("2", "→") + listen) == 1);
  CHECK(count_of(out, "<type>quarter</type>" + lyric("2", "⇒") + play) == 1);
  CHECK(count_of(out, notations + lyric("2", "⇒") + "</note>") == 1);
}

TEST_CASE("the next free lyric line of the part") {
  struct Case {
    std::string attributes;
    std::string number;
  };
  const Case tested = GENERATE(values<Case>({
      {"", "2"},
      {" number=\"1\"", "2"},
      {" number='3' name='verse'", "4"},
      {" number=\"verse7\"", "8"},
      {" number=\"chorus\"", "1"},
      {" number=\"99999999999\"", "1"},
      {" number=\"\"", "1"},
  }));
  CAPTURE(tested.attributes);
  const std::string score = partwise(
      {quarter("C4"), quarter("D4", "<lyric" + tested.attributes + "><text>la</text></lyric>")});
  CHECK(signs_under(checked(score, "C4:1 | D:2")) ==
        Signs{tested.number + ":←|", tested.number + ":→"});
}

TEST_CASE("a chord carries its sign under its first note") {
  const std::string score =
      partwise({quarter("C4") + quarter("+E4") + quarter("D4") + quarter("+F4") + quarter("+A4")});
  CHECK(signs_under(checked(score, "C4:1+E:3 D:1+F:3+A:5")) == Signs{"1:|?", "", "1:=", "", ""});
}

TEST_CASE("a rolled chord carries the signs of its notes under its first one") {
  const std::string score =
      partwise({quarter("G4") + quarter("+C4") + quarter("+E4") + quarter("D4") + quarter("C4")});
  const std::string out = checked(score, "C4:1/E:3/G:5 D:2 C:1");
  CHECK(signs_under(out) == Signs{"1:←|/→/⇒", "", "", "1:←", "1:⇐"});
  CHECK(count_of(legend_in(out), "those of a rolled chord") == 1);
  CHECK(count_of(legend_in(checked(score, "C4:1+E:3+G:5 D:2 C:1")), "rolled") == 0);
}

TEST_CASE("a rolled chord in two voices carries its signs under each of their chords") {
  const std::string score = partwise({quarter("C4") + quarter("+E4") +
                                      "<backup><duration>1</duration></backup>\n" + quarter("G4")});
  CHECK(signs_under(checked(score, "C4:1/E:3/G:5")) == Signs{"1:←|/→", "", "1:⇒"});
}

TEST_CASE("a chord whose first note is held carries the sign of the struck one") {
  const std::string score = partwise({quarter("C4") + quarter("C4") + quarter("+E4")});
  CHECK(signs_under(checked(score, "C4:1~ C4:1+E4:3")) == Signs{"1:←|", "1:→", ""});
}

TEST_CASE("held notes and rests have no sign, grace notes have one") {
  const std::string grace =
      "<note><grace/><pitch><step>E</step><octave>4</octave></pitch></note>\n";
  const std::string rest = "<note><rest/><duration>1</duration></note>\n";
  const std::string score =
      partwise({quarter("C4") + quarter("C4") + rest + grace + quarter("D4")});
  CHECK(signs_under(checked(score, "C4:1~ C4 r ^E4:3 D:2")) ==
        Signs{"1:←|", "", "", "1:|→", "1:←"});
}

TEST_CASE("two staves have one line, and visitors the line below it") {
  const std::string upper = "<staff>1</staff>";
  const std::string lower = "<staff> 2</staff>";
  const std::string back = "<backup><duration>3</duration></backup>\n";
  const std::string score =
      partwise({quarter("E4", upper) + quarter("D4", upper) + quarter("C4", lower) + back +
                quarter("C3", lower) + quarter("D3", lower) + quarter("E3", lower)});
  const std::string out = checked(score, "RH: E4:3 D:2 C:1\nLH: C3:3 D:2 E:1\n");
  CHECK(signs_under(out) == Signs{"1:|→", "1:←", "2:⇐", "1:←|", "1:→", "1:⇒"});
  CHECK(count_of(legend_in(out), "one line lower") == 1);
}

TEST_CASE("the legend explains what is there") {
  const std::string score = partwise({quarter("C4") + quarter("D4")});
  const std::string turning = legend_in(checked(score, "C4:1 D:2"));
  for (const char* const there : {"preparatory:", "single:", "no medical advice"}) {
    CHECK(count_of(turning, there) == 1);
  }
  for (const char* const absent : {"double", "level:", "?", "one line lower"}) {
    CHECK(count_of(turning, absent) == 0);
  }
  const std::string open = legend_in(checked(score, "C4 D:1"));
  CHECK(count_of(open, "undetermined: a finger is missing") == 1);
  CHECK(count_of(open, "←? →? the way it turns is known, its kind is not") == 1);
  CHECK(count_of(open, "single:") == 0);
  const std::string words = legend_in(checked(score, "C4:3 , D:3", {.words = true}));
  CHECK(count_of(words, "prep ? preparatory, the side is left open") == 1);
}

TEST_CASE("the legend is the last credit, before the list of parts or what stands in its place") {
  const std::string credit = "<credit page=\"1\"><credit-words>ours</credit-words></credit>";
  const std::string parts =
      "<part-list><score-part id=\"P1\"><part-name>Piano</part-name></score-part></part-list>";
  const std::string score = partwise({quarter("C4") + quarter("D4")});
  const auto [head, before] = GENERATE_COPY(table<std::string, std::string>({
      {parts, "<score-partwise version=\"3.0\">"},
      {"<defaults/>\n" + parts, "<defaults/>"},
      {credit + "\n" + parts, credit},
      {"<identification>\n</identification>\n" + credit + "\n" + parts, credit},
      {"<movement-title/>", "<movement-title/>"},
      {"<!-- no parts are listed -->", "<score-partwise version=\"3.0\">"},
  }));
  CAPTURE(head);
  std::string with_head = score;
  with_head.replace(score.find(parts), parts.size(), head);
  const std::string out = checked(with_head, "C4:1 D:2");
  CHECK(count_of(out, before + "\n<credit page=\"1\"><credit-words xml:lang") == 1);
}

TEST_CASE("a legend of older runs, in a direction of the first bar, goes") {
  const std::string notes = quarter("C4") + quarter("D4");
  const std::string older =
      "<direction placement=\"above\"><direction-type><words xml:lang=\"en-x-forearm\" "
      "font-size=\"8\">Under the notes</words></direction-type></direction>\n";
  const std::string score = partwise({notes});
  CHECK(without_own_marks(partwise({older + notes})) == score);
  CHECK(marked(partwise({older + notes}), "C4:1 D:2") == marked(score, "C4:1 D:2"));
}

TEST_CASE("the legend stands once for all parts") {
  const std::string other =
      "<part id=\"P0\"><measure number=\"1\"><note><rest/></note></measure></part>\n";
  std::string score = partwise({quarter("C4") + quarter("D4")});
  score.insert(score.find("<part id"), other);
  const std::string out = checked(score, "C4:1 D:2");
  CHECK(count_of(out, other) == 1);
  CHECK(legend_in(out) != "");
}

TEST_CASE("each part has lyric lines of its own") {
  const std::string verse = "<lyric number=\"2\"><text>la</text></lyric>";
  std::string score = partwise({quarter("E4") + quarter("D4", verse)});
  score.insert(score.find("</score-partwise>"), R"(<part id="P2"><measure number="1">)" +
                                                    quarter("C3") + quarter("D3") +
                                                    "</measure></part>");
  CHECK(signs_under(checked(score, "RH: E4:3 D:2\nLH: C3:3 D:2\n")) ==
        Signs{"3:|→", "3:←", "1:←|", "1:→"});
}

TEST_CASE("a score by time instead of by part") {
  const std::string verse = "<lyric number=\"1\"><text>la</text></lyric>";
  const std::string score =
      R"(<score-timewise version="3.0"><measure number="1"><part id="P1"><print/>)" +
      quarter("E4", verse) + "</part><part id=\"P2\">" + quarter("C3") +
      R"(</part></measure><measure number="2"><part id="P1"><attributes/>)" + quarter("D4") +
      "</part><part id=\"P2\">" + quarter("D3") + "</part></measure></score-timewise>";
  const std::string notation = "RH: E4:3 | D:2\nLH: C3:3 | D:2\n";
  // The notes of a hand lie apart here.
  Score placed = score_at(score, notation);
  std::swap(placed.passages[0].lines[0].events[1].notes[0].span,
            placed.passages[0].lines[1].events[0].notes[0].span);
  const Source source("score.musicxml", score);
  const std::string out = write_musicxml(source, AnalysedScore("score.musicxml", placed), {});
  CHECK(signs_under(out) == Signs{"2:|→", "1:←|", "2:←", "1:→"});
  CHECK(count_of(out, "<score-timewise version=\"3.0\"><credit page=\"1\">") == 1);
  CHECK(without_own_marks(out) == score);
}
