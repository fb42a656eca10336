#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

/// Input that nobody would write: it must be read, judged and reported in time and memory in
/// proportion to its size. No time is measured. The sizes are such that work which grows with the
/// square of the input would run for hours, so that it is noticed at once.
using namespace fingerturn;

namespace {

constexpr std::size_t kMany = 500000;
constexpr std::size_t kHundredThousand = 100000;

std::string repeated(std::string_view part, std::size_t count) {
  std::string text;
  text.reserve(part.size() * count);
  for (std::size_t i = 0; i < count; ++i) text += part;
  return text;
}

struct Read {
  Source source;
  ReadResult result;
};

Read read_text(std::string text) {
  Source source("hostile.passage", std::move(text));
  ReadResult result = read_notation(source);
  return {std::move(source), std::move(result)};
}

std::string messages_of(const Read& read) { return render(read.source, read.result.diagnostics); }

const Line& first_line(const Read& read) { return read.result.score.passages.at(0).lines.at(0); }

/// All that comes after reading must come to an end, too. Gives the totals of the first line.
Totals totals_after_all_reports(const Score& score) {
  const AnalysedScore report("hostile.passage", score);
  CHECK(write_text(report, {.detail = true}).ends_with('\n'));
  CHECK(write_json(report).ends_with("}\n"));
  CHECK(write_jsonl(report).ends_with("}\n"));
  CHECK(write_passage(score).ends_with('\n'));
  return report[0][0].found().totals;
}

}  // namespace

TEST_CASE("hostile: a source that is larger than a reader takes") {
  const Read read = read_text(std::string(kLargestNotation + 1, '|'));
  CHECK(messages_of(read) ==
        "hostile.passage:1:1: error: expected at most 16777216 bytes, found 16777217 [too-large]\n"
        "  " +
            std::string(76, '|') +
            "...\n"
            "  ^\n"
            "  hint: divide the passages among several files\n");
  CHECK(read.result.score.passages.empty());
}

TEST_CASE("hostile: the largest source, of nothing but bar lines") {
  const Read read = read_text(std::string(kLargestNotation, '|'));
  CHECK(read.result.ok());
  CHECK(read.result.diagnostics.warnings == 1);
  CHECK(read.result.score.passages.at(0).lines.empty());
}

TEST_CASE("hostile: a megabyte of each byte") {
  for (int byte = 0; byte < 256; ++byte) {
    CAPTURE(byte);
    const Read read = read_text(std::string(kMany / 16, static_cast<char>(byte)));
    CHECK(read.result.diagnostics.kept.size() <= kMostDiagnostics);
    CHECK(messages_of(read).size() < 100 * kMostDiagnostics * 4);
  }
}

TEST_CASE("hostile: NUL bytes between blanks are told one by one") {
  const Read read = read_text(repeated(std::string_view("\0 ", 2), kMany));
  CHECK(read.result.diagnostics.errors == kMany);
  CHECK(messages_of(read).ends_with(" more\n"));
}

TEST_CASE("hostile: bytes that are not UTF-8 on one line") {
  const Read read = read_text(repeated("\xFF ", kMany));
  CHECK(read.result.diagnostics.errors == kMany);
  CHECK(read.result.diagnostics.kept.size() == kMostDiagnostics);
}

TEST_CASE("hostile: a million words that are no notes") {
  CHECK(read_text(repeated("zz ", kMany)).result.diagnostics.errors == kMany);
  CHECK(read_text(repeated("zz\n", kMany)).result.diagnostics.errors == kMany);
}

TEST_CASE("hostile: a line of a megabyte with an error at its end") {
  const Read read = read_text(repeated("C4:1 ", kMany / 5) + "zz");
  CHECK(read.result.diagnostics.errors == 1);
  CHECK(read.source.place_of(read.result.diagnostics.kept[0].span.begin) == Place{1, kMany + 1});
  CHECK(messages_of(read).size() < 400);
}

TEST_CASE("hostile: one word of a megabyte") {
  CHECK(read_text(std::string(kMany, 'z')).result.diagnostics.errors == 1);
  CHECK(messages_of(read_text("C4:" + std::string(kMany, '1'))).size() < 1000);
  CHECK(messages_of(read_text("C4" + std::string(kMany, '~'))).size() < 1000);
  CHECK(messages_of(read_text("C" + std::string(kMany, '#'))).size() < 1000);
  CHECK(messages_of(read_text("C" + std::string(kMany, '4'))).size() < 1000);
  CHECK(messages_of(read_text(std::string(kMany, '1') + "/4")).size() < 1000);
  CHECK(messages_of(read_text(std::string(kMany, 'x') + ": y")).size() < 1000);
  CHECK(read_text(std::string(kMany, '^')).result.diagnostics.errors == 1);
  CHECK(read_text(std::string(kMany, '+')).result.diagnostics.errors == 1);
}

TEST_CASE("hostile: a title of a megabyte") {
  const Read read = read_text("passage: " + repeated("la ", kMany) + "\nC4:1\n");
  REQUIRE(read.result.ok());
  CHECK(read.result.score.passages[0].title.size() == 3 * kMany - 1);
  CHECK(totals_after_all_reports(read.result.score).events == 1);
}

TEST_CASE("hostile: a silent change through a million fingers") {
  const Read read = read_text("C4:1" + repeated(">2>1", kMany / 2) + " D:2");
  REQUIRE(read.result.ok());
  CHECK(first_line(read).events[0].notes[0].changes_to.size() == kMany);
  CHECK(totals_after_all_reports(read.result.score).single_rotations == 1);
}

TEST_CASE("hostile: a chord of a hundred thousand notes") {
  const Read read = read_text("C4:1" + repeated("+D:2+C:1", kHundredThousand / 2) + " E:3");
  // The hand has two keys to strike; of each the first note counts.
  CHECK(read.result.diagnostics.kept.size() == kMostDiagnostics);
  REQUIRE(read.result.ok());
  CHECK(first_line(read).events[0].notes.size() == 2);
  CHECK(totals_after_all_reports(read.result.score).events == 2);
}

TEST_CASE("hostile: a chord of a hundred thousand notes, one changed as often") {
  const Read read = read_text("C4:1" + repeated(">2>1", kHundredThousand / 2) +
                              repeated("+D:2+C:1", kHundredThousand / 2) + " E:3");
  // The hand has two keys to strike; of each the first note counts.
  CHECK(read.result.diagnostics.kept.size() == kMostDiagnostics);
  REQUIRE(read.result.ok());
  CHECK(first_line(read).events[0].notes.size() == 2);
  CHECK(totals_after_all_reports(read.result.score).events == 2);
}

TEST_CASE("hostile: a chord of one key again and again, tied over many events") {
  // Each note of the chord stands with each finger of the events after it, unless a key stands in
  // a chord but once.
  constexpr std::size_t kNotes = 3000;
  constexpr std::size_t kBytesOfReportForEachByte = 200;
  const Read read =
      read_text("C4:1~" + repeated("+C:1~", kNotes) + " " + repeated("C4:1>2~ ", kNotes));
  const std::string json = write_json(AnalysedScore("hostile.passage", read.result.score));
  CHECK(json.size() < kBytesOfReportForEachByte * read.source.text().size());
}

TEST_CASE("hostile: a tie over a million events") {
  SECTION("from note to note, with a change of finger on each") {
    const Read read = read_text(repeated("C4:1>2~ ", kMany) + "C4");
    REQUIRE(read.result.ok());
    CHECK(read.result.diagnostics.warnings == 0);
    CHECK(totals_after_all_reports(read.result.score).events == 1);
  }
  SECTION("past other notes") {
    const Read read = read_text("C4:1~ " + repeated("D4:2 ", kMany) + "C4");
    REQUIRE(read.result.ok());
    CHECK(read.result.diagnostics.warnings == 0);
    CHECK(first_line(read).events.back().notes[0].held);
  }
  SECTION("all keys of the piano, each to nothing") {
    const Read read =
        read_text(repeated("C2:1~ D:2~ E:3~ F:4~ G:5~ A:5~ B:5~ r ", kHundredThousand));
    CHECK(read.result.diagnostics.warnings == 7 * kHundredThousand);
  }
}

TEST_CASE("hostile: a million events in one bar, both hands against each other") {
  const Read read = read_text("RH: 1/4 " + repeated("C5:1 ", kHundredThousand) + "\nLH: 1/3 " +
                              repeated("C4:1 ", kHundredThousand));
  REQUIRE(read.result.ok());
  CHECK(read.result.score.passages[0].lines.size() == 2);
  CHECK(totals_after_all_reports(read.result.score).events == kHundredThousand);
}

TEST_CASE("hostile: grace notes without end") {
  const Read read = read_text("RH: 1/4 " + repeated("^C5:1 ", kHundredThousand) + "\nLH: 1/3 " +
                              repeated("^C4:1 ", kHundredThousand));
  REQUIRE(read.result.ok());
  CHECK(totals_after_all_reports(read.result.score).events == kHundredThousand);
}

TEST_CASE("hostile: breaths and bar lines without end") {
  CHECK(read_text("C4:1" + repeated(", ", kMany)).result.score.passages[0].lines[0].events.size() ==
        1);
  const Read read = read_text("C4:1" + repeated(" :| |:", kMany) + " D:2");
  CHECK(first_line(read).bar_lines.size() == 1);
  CHECK(first_line(read).bar_lines[0].style == BarLineStyle::repeat_both);
}

TEST_CASE("hostile: a hundred thousand passages") {
  SECTION("without notes") {
    const Read read = read_text(repeated("passage: x\n", kHundredThousand));
    CHECK(read.result.score.passages.size() == kHundredThousand);
    CHECK(read.result.diagnostics.warnings == kHundredThousand);
    CHECK(write_passage(read.result.score).size() > kHundredThousand);
  }
  SECTION("with a note each") {
    const Read read = read_text(repeated("passage: x\nC4:1\n", kHundredThousand));
    CHECK(read.result.score.passages.size() == kHundredThousand);
    CHECK(totals_after_all_reports(read.result.score).events == 1);
  }
}

TEST_CASE("hostile: a meter and a tempo with each of a hundred thousand bars") {
  const Read read = read_text(
      repeated("meter: 1/4\ntempo: 60\nRH: 1/4 C5:1 |\nLH: 1/4 C3:5 |\n", kHundredThousand));
  REQUIRE(read.result.ok());
  CHECK(read.result.diagnostics.warnings == 0);
  CHECK(read.result.score.passages[0].meters.size() == kHundredThousand);
  CHECK(totals_after_all_reports(read.result.score).events == kHundredThousand);
}

TEST_CASE("hostile: a million headers before the first note") {
  for (const std::string_view header :
       {"meter: 4/4\n", "tempo: 60\n", "bar: 1\n", "hand: left\n", "reach: 12\n", "composer: x\n",
        "allegro: x\n", "RH:\n", "# comment\n", "\n"}) {
    CAPTURE(header);
    const Read read = read_text(repeated(header, kMany) + "C4:1\n");
    CHECK(read.result.diagnostics.kept.size() <= kMostDiagnostics);
    CHECK(first_line(read).events.size() == 1);
  }
}

TEST_CASE("hostile: bar numbers far apart take no room") {
  const Read read = read_text("bar: 0\n1/4 C4:1 |\nbar: 999999\nD:2 | E:3 |\n");
  REQUIRE(read.result.ok());
  CHECK(first_line(read).events.back().bar == 1000000);
  CHECK(first_line(read).events.back().onset == Fraction{1, 2});
  CHECK(totals_after_all_reports(read.result.score).events == 3);
}

TEST_CASE("hostile: values whose sums cannot be exact") {
  std::string text;
  for (int denominator = 999999; denominator > 990000; --denominator) {
    text += "1/" + std::to_string(denominator) + " C4:1 ";
  }
  const Read read = read_text(text);
  CHECK_FALSE(read.result.ok());
  CHECK(read.result.diagnostics.errors == 1);
  CHECK(first_line(read).events.size() == 9999);
}
