#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"
#include "read/score_written.hpp"

#include <string>
#include <utility>

/// What the text report says around the notes: head, totals, legend, reasons, caution.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

std::string text_of(const std::string& notation, const TextStyle& style = {}) {
  const Score score = score_written(notation);
  return write_text(AnalysedScore("test.passage", score), style);
}

/// From the legend's heading to the caution's.
std::string legend_of(const std::string& notation) {
  const std::string text = text_of(notation, {.columns = 1000});
  const std::size_t begin = text.find("\nlegend\n");
  if (begin == std::string::npos) return {};
  return text.substr(begin + 8, text.find("\n\ncaution\n") - begin - 7);
}

std::string head_of(const std::string& notation) {
  const std::string text = text_of(notation);
  return text.substr(0, text.find("\n\n") + 1);
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("the head names the passage, its composer, source, hands, meter and tempo") {
  CHECK(head_of("passage: Lantern Street\ncomposer: invented\nsource: a drawer\nmeter: 3/4\n"
                "tempo: 72\nC4:1") ==
        "Lantern Street\ninvented \u00B7 a drawer \u00B7 right hand \u00B7 3/4 \u00B7 quarter = "
        "72\n");
  CHECK(head_of("hand: left\ntempo: 1/4. = 60.5\nC4:1") ==
        "test\nleft hand \u00B7 dotted quarter = 60.5\n");
  CHECK(head_of("RH: C5:1\nLH: C3:1").ends_with("both hands\n"));
  CHECK(has(text_of("passage: nothing"), "nothing\nno notes\n"));
}

TEST_CASE("a tempo is named as a musician says it") {
  struct Case {
    const char* value;
    const char* words;
  };
  const Case c = GENERATE(
      Case{"1/1", "whole"}, Case{"1/2", "half"}, Case{"1/4", "quarter"}, Case{"1/8", "eighth"},
      Case{"1/16", "sixteenth"}, Case{"1/32", "thirty-second"}, Case{"1/2.", "dotted half"},
      Case{"1/4..", "1/4.."}, Case{"1/8t", "1/8t"}, Case{"5/7", "5/7"}, Case{"1/64", "1/64"});
  CHECK(has(head_of("tempo: " + std::string(c.value) + " = 60\nC4:1"),
            std::string(c.words) + " = 60\n"));
}

TEST_CASE("the totals count what the analysis counts") {
  const std::string text =
      text_of("C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C:5 C4:1+E:3+G:5", {.columns = 200});
  CHECK(has(text,
            "\ntotals\nright     9 events, 1 preparatory, 3 single, 4 double, 1 level, "
            "13 swings, 1 crossing, longest run of doubles 3, carried 2 white keys, at most "
            "1 at once, 2 arcs\n"));
  CHECK(has(text_of("C4:1 C5:1 C6:1 C4:1", {.columns = 200}),
            ", carried 21 white keys, at most 10.5 at once, 2 arcs\n"));
  CHECK(has(text_of("C4:1 D:2 E:3 F:1", {.columns = 200}), ", carried 1 white key\n"));
  CHECK(has(text_of("C4:1 D:2 Eb:1 F:2 E:1", {.columns = 200}), ", 1 move in, 1 move out"));
}

TEST_CASE("a brief report has no legend, and the caution in one sentence") {
  const std::string text = text_of("C4:1 D:2", {.columns = 200, .brief = true});
  CHECK_FALSE(has(text, "legend"));
  CHECK(has(text, "\ntotals\n"));
  CHECK(text.ends_with("\n\ncaution   " + std::string(brief_caution()) + "\n"));
  CHECK(text_of("", {.columns = 200, .brief = true}) ==
        "caution   " + std::string(brief_caution()) + "\n");
}

TEST_CASE("of a passage without any finger only that is said") {
  const std::string text = text_of("C4 D E+G | A", {.columns = 200});
  CHECK(has(text,
            "\nNo finger is written at any of 4 events, so no turn is known. Write fingers, "
            "or have some suggested: --suggest fills them in.\n"));
  CHECK_FALSE(has(text, "legend"));
  CHECK_FALSE(has(text, "\nrotation"));
  CHECK(has(text, "\ncaution\n"));
  CHECK(has(text_of("C4", {.columns = 200}), "\nNo finger is written at the one event, so"));
  // One finger is enough, and so is a chord, whose kind is known without.
  CHECK(has(text_of("C4 D:2 E"), "\nrotation"));
  CHECK(has(text_of("C4+E+G"), "\nrotation"));
}

TEST_CASE("the foot tells the tempo of full swings and how the hands go together") {
  CHECK(has(text_of("1/16 C4:1 G:5 C:1", {.columns = 200}),
            "\ntempo     full swings up to quarter = 150 (G3 in bar 1); faster, they shrink\n"));
  const std::string both =
      text_of("RH: 1/16 G5:5 F:4 E:3\nLH: 1/16 C3:5 G:1 C:5", {.columns = 200});
  CHECK(has(both,
            "\ntempo     full swings up to quarter = 75 (right hand, E5 in bar 1; left hand up to "
            "150); faster, they shrink\n"));
  CHECK(has(both,
            "\ntogether  of 3 notes struck together with a side in both hands, the forearms "
            "turn parallel at 1 and contrary at 2; one hand is single and the other double in "
            "bar 1\n"));
  CHECK_FALSE(has(text_of("C4:1 D:2"), "\ntempo "));
  CHECK_FALSE(has(text_of("1/16 C4:1 D:2"), "\ntogether "));
}

TEST_CASE("many places where the kinds differ are told by their bars, and not endlessly") {
  std::string right = "RH: 1/4";
  std::string left = "LH: 1/4";
  for (int bar = 0; bar < 20; ++bar) {
    right += " C5:1 D:2 E:3 r |";
    left += " C3:5 G:1 C:5 r |";
  }
  const std::string text = text_of(right + "\n" + left, {.columns = 1000});
  CHECK(has(text, "double in bars 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12 and 8 more\n"));
}

TEST_CASE("what is watched in several places is told once, with the bars of the others") {
  std::string notes;
  for (int bar = 0; bar < 12; ++bar) notes += "C4:2 r F#4:2 r C4:2 F#:4 r | ";
  CHECK(has(text_of(notes, {.columns = 1000}),
            "\nbar 1     info      2-4 over 6 semitones (C4 to F#4), comfortable up to 5. Again in "
            "bars 2, 3, 4, 5, 6, 7, 8, 9 and 3 more. [stretch]\n"));
  CHECK(has(text_of("C4:2 F#:4 r C4:2 F#:4", {.columns = 1000}), " Again in bar 1. [stretch]\n"));
  CHECK_FALSE(has(text_of("C4:2 F#:4", {.columns = 1000}), "Again"));
}

TEST_CASE("the head tells the tempo and the reach that hold") {
  const Score score = score_written("tempo: 60\nreach: 12\nC4:1");
  const auto text = [&score](const AnalyseOptions& options) {
    return write_text(AnalysedScore("test.passage", score, options), {});
  };
  CHECK(has(text({}), " quarter = 60 \u00B7 reach 12 semitones\n"));
  CHECK(has(text({.reach_semitones = 15, .quarters_per_minute = 90}),
            " quarter = 90, as asked for \u00B7 reach 15 semitones\n"));
}

TEST_CASE("the rows of the arm stand only where they have something to say") {
  const std::string still = text_of("C4:1 D:2 E:3");
  CHECK_FALSE(has(still, "\ncarry "));
  CHECK_FALSE(has(still, "\ndepth "));
  CHECK_FALSE(has(legend_of("C4:1 D:2 E:3"), "our model"));
  const std::string moved = text_of("C4:1 D:2 E:3 F:1 Eb:2 Eb:1 F:2");
  CHECK(has(moved, "\ncarry                          \u21921 "));
  CHECK(has(moved, "\ndepth                                        in     out\n"));
  CHECK(has(legend_of("C4:1 D:2 E:3 F:1"), "carry     the way the arm"));
  CHECK(has(legend_of("C4:1 Eb:1 F:2"), "depth     in = "));
  CHECK(has(text_of("E4:3 F:1", {.ascii = true}), "\ncarry            >1\n"));
}

TEST_CASE("cues are short lines made of the facts, and only given when they are asked for") {
  const std::string notation = "C4:1 D:2 E:3 F:1 Eb:2 Eb:1 | F:2 C4:1+E:3+G:5 E:2 F C:3 E:3";
  const std::string text = text_of(notation, {.columns = 200, .cues = true});
  const std::string expected =
      "\nright hand, bar 1\n"
      "  C4:1            swing right, play left\n"
      "  D4:2            play right\n"
      "  E4:3            swing left, play right\n"
      "  F4:1            play left; thumb passes under; arm carries one key up\n";
  CHECK(has(text, expected));
  CHECK(has(text, "  Eb4:1           play left; hand goes in\n"));
  CHECK(has(text, "  C4:1+E4:3+G4:5  both sides of the hand go down together"));
  CHECK(has(text, "  F4:?            find the finger first\n"));
  CHECK_FALSE(has(text_of(notation), "swing right"));
  CHECK_FALSE(has(text, "First of its gesture"));
}

TEST_CASE("cues and details stand together where both are asked for") {
  const std::string text = text_of("C4:1 D:2", {.columns = 200, .detail = true, .cues = true});
  CHECK(has(text, "  C4:1  swing right, play left\n        First of its gesture: "));
}

TEST_CASE("the legend explains what the report uses, and nothing else") {
  const std::string plain = legend_of("C4:1 D:2");
  CHECK(has(plain, "prep = "));
  CHECK(has(plain, "single = "));
  CHECK(has(plain, "sup = "));
  for (const std::string word : {"double", "level", "undetermined", "grace", "rest", "breath",
                                 "held", "changed", "suggested", "under", "over =", "cross ="}) {
    CAPTURE(word);
    CHECK_FALSE(has(plain, word));
  }
  CHECK(has(legend_of("C4:1 D:2 E:3"), "double = "));
  CHECK(has(legend_of("C4:1+E:3+G:5"), "level = "));
  CHECK(has(legend_of("C4 D:2"), "? = undetermined"));
  CHECK(has(legend_of("^C4:1 D:2"), "^ = grace note"));
  CHECK(has(legend_of("C4:1 r"), "r = rest"));
  CHECK(has(legend_of("C4:1 , D:2"), "comma = breath"));
  CHECK(has(legend_of("C4:1~ C4"), "~ = held over"));
  CHECK(has(legend_of("C4:4>1 D:2"), "4>1 = changed"));
  CHECK(has(legend_of("C4:2? D:3"), "2? = suggested"));
  CHECK(has(legend_of("E4:3 F:1"), "under = "));
  CHECK(has(legend_of("F4:1 E:3"), "over = "));
  CHECK(has(legend_of("F4:5 G:3"), "cross = "));
}

TEST_CASE("the details give every reason, and only when they are asked for") {
  const std::string notation = "C4:1 D:2 E4:3+G:5 | F:1";
  const Score score = score_written(notation);
  const Analysis analysis = analyse(score);
  const std::string text = text_of(notation, {.columns = 1000, .detail = true});
  for (const EventAnalysis& found : analysis.passages[0].lines[0].events) {
    const std::string reason = reason_of(found, Hand::right);
    CAPTURE(reason);
    CHECK(has(text, "  " + reason + "\n"));
    CHECK_FALSE(has(text_of(notation, {.columns = 1000}), reason));
  }
  CHECK(has(text, "\nright hand, bar 1\n"));
  CHECK(has(text, "\nright hand, bar 2\n"));
  CHECK(has(text, "\n  E4:3+G4:5  "));
}

TEST_CASE("only the chosen bars are shown, and counted") {
  const Score score = score_written("1/4 C4:1 D:2 | E:3 F:1 | G:2 A:3");
  const AnalysedScore bar = only_bars(AnalysedScore("test.passage", score), {2, 2});
  const std::string text = write_text(bar, {.detail = true});
  CHECK(has(text, "bar 2"));
  CHECK_FALSE(has(text, "bar 1"));
  CHECK_FALSE(has(text, "bar 3"));
  CHECK(has(text, "2 events"));
  CHECK_FALSE(has(text, "C4"));
}

TEST_CASE("the caution stands at the end of every report, once") {
  const std::string text = text_of("passage: a\nC4:1\npassage: b\nD4:2", {.columns = 1000});
  CHECK(text.ends_with("\ncaution\n" + std::string(caution()) + "\n"));
  CHECK(text.find("caution\n") == text.rfind("caution\n"));
  for (const std::string word :
       {"medical", "pain", "numbness", "tingling", "teacher", "clinician", "shrink", "music"}) {
    CAPTURE(word);
    CHECK(has(std::string(caution()), word));
  }
}
