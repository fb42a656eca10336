#include "fingerturn/check.hpp"

#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"
#include "write/check/counted_files.hpp"
#include "write/json/json_reading.hpp"
#include "write/random_score.hpp"

#include <cstdint>
#include <string>
#include <vector>

/// What `check` gathers of a file and how it is written.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

/// Every rule asked for by its name, so that each row of missing fingers is a finding.
CheckChoice every_rule(std::optional<Hand> hand = std::nullopt) {
  CheckChoice choice{hand, {"finger-range"}, {}};
  for (const Rule& rule : rules()) choice.only.emplace_back(rule.id);
  return choice;
}

FileCheck check_text(const std::string& text, const std::string& name = "test.passage",
                     std::optional<Hand> hand = std::nullopt) {
  const Source source(name, text);
  return check(source, read_notation(source), {}, every_rule(hand));
}

std::string findings_in(const std::string& text) {
  return write_findings(check_text(text), std::nullopt);
}

/// A check with findings that were placed by hand, as in a score.
FileCheck check_with(std::vector<PlacedFinding> findings, std::vector<std::string> titles) {
  FileCheck found;
  found.file.source = "etude.musicxml";
  found.placing = Placing::bar_and_beat;
  found.titles = std::move(titles);
  found.findings = std::move(findings);
  return found;
}

PlacedFinding finding_at(std::optional<Hand> hand, std::optional<std::int32_t> bar,
                         std::optional<Fraction> beat) {
  PlacedFinding finding;
  finding.code = "missing-finger";
  finding.level = WatchLevel::caution;
  finding.where = {bar ? std::optional<std::size_t>(0) : std::nullopt, hand, bar, beat};
  finding.place = {7, 9};
  finding.message = "Look here.";
  return finding;
}

}  // namespace

TEST_CASE("a finding in the notation is told by line and column") {
  CHECK(findings_in("meter: 2/4\nC4:1+E:1 D:2\n") ==
        "test.passage:2:1: bar 1, right hand: caution: One finger, the thumb, stands on two notes "
        "struck together, "
        "C4 and E4. [one-finger-twice]\n");
  CHECK(findings_in("C4:1 D:2\n") == "");
  // Columns count code points, tabs and all.
  CHECK(findings_in("passage: \xC3\xA9\nB\xE2\x99\xAD"
                    "4:1\t \xE2\x99\xAE")
            .find("test.passage") == std::string::npos);
  CHECK(findings_in("B\xE2\x99\xAD"
                    "4:1 C:2 D E:3") ==
        "test.passage:1:11: bar 1, right hand: info: The finger is missing. [missing-finger]\n");
}

TEST_CASE("findings come in the order of the source, both hands together") {
  const FileCheck found = check_text(
      "RH: C4 D:2 | E:3 F\nLH: C3 D:4 | E:2 F\nRH: C4:2 D\nLH: C3:5 E:5+G\npassage: second\nC4\n");
  std::vector<Place> places;
  for (const PlacedFinding& finding : found.findings) places.push_back(finding.place);
  const std::vector<Place> in_order{{1, 5}, {1, 18}, {2, 5}, {2, 18}, {3, 10}, {4, 10}, {6, 1}};
  CHECK(places == in_order);
}

TEST_CASE("a finding knows its passage, hand, bar and beat") {
  const FileCheck found = check_text(
      "passage: one\nmeter: 6/8\nRH: 1/8 C4:1 D:2 E:3 r r r | \n"
      "passage: two\nmeter: 3/4\nRH: 1/4 C4:1 1/8t D:2 E:3 F | 1/4 G:1 A:2 B |\n"
      "LH: 1/2. C3:5 | 1/2 C3:5 r 1/4 |\npassage: three\nLH: C3:5 D\n");
  REQUIRE(found.file.error.empty());
  CHECK(found.titles == std::vector<std::string>{"one", "two", "three"});
  REQUIRE(found.findings.size() == 3);
  CHECK(found.findings[0].where == MusicalPlace{1, Hand::right, 1, Fraction{8, 3}});
  CHECK(found.findings[1].where == MusicalPlace{1, Hand::right, 2, Fraction{3, 1}});
  // Without note values there is no beat.
  CHECK(found.findings[2].where == MusicalPlace{2, Hand::left, 1, std::nullopt});
}

TEST_CASE("without a meter there is no beat") {
  const FileCheck found = check_text("1/4 C4 D:1");
  REQUIRE(found.findings.size() == 1);
  CHECK(found.findings[0].where == MusicalPlace{0, Hand::right, 1, std::nullopt});
}

TEST_CASE("a finger number out of range that was only warned of is for caution") {
  const Source source("etude.musicxml", R"(<?xml version="1.0"?>
<score-partwise><part-list><score-part id="P"><part-name>Piano</part-name></score-part></part-list>
<part id="P"><measure number="3">
<attributes><divisions>2</divisions><time><beats>3</beats><beat-type>8</beat-type></time>
<staves>2</staves></attributes>
<note><pitch><step>C</step><octave>5</octave></pitch><duration>1</duration><staff>1</staff></note>
<note><pitch><step>D</step><octave>5</octave></pitch><duration>1</duration><staff>1</staff>
<notations><technical><fingering>6</fingering></technical></notations></note>
<backup><duration>2</duration></backup>
<note><pitch><step>C</step><octave>3</octave></pitch><duration>2</duration><staff>2</staff>
<notations><technical><fingering>7</fingering></technical></notations></note>
</measure></part></score-partwise>
)");
  const ReadResult result = read(source);
  REQUIRE(result.ok());
  const auto lines = [&](std::optional<Hand> hand) {
    return write_findings(check(source, result, {}, {.hand = hand}), std::nullopt);
  };
  const std::string right =
      "etude.musicxml: bar 3, right hand, beat 1: info: Fingers are missing at 2 of 2 events of "
      "this hand (100 %), first here. "
      "[missing-finger]\n"
      "etude.musicxml: bar 3, right hand, beat 2: caution: Expected a finger from 1 to 5, found "
      "\"6\". [finger-range]\n";
  const std::string left =
      "etude.musicxml: bar 3, left hand, beat 1: info: The finger is missing. [missing-finger]\n"
      "etude.musicxml: bar 3, left hand, beat 1: caution: Expected a finger from 1 to 5, found "
      "\"7\". [finger-range]\n";
  CHECK(lines(std::nullopt) == right + left);
  CHECK(lines(Hand::right) == right);
  CHECK(lines(Hand::left) == left);
  const CheckCounts counts = check(source, result).file.counts;
  CHECK(counts.watch.info == 2);
  CHECK(counts.watch.caution == 2);
  CHECK(counts.watch.strain == 0);
}

TEST_CASE("a finger out of range has the place of its own note") {
  // The second voice doubles the first note of the first, which is read as one note with it.
  const std::string attributes = "<divisions>1</divisions><staves>2</staves>";
  const std::string meter = "<time><beats>2</beats><beat-type>4</beat-type></time>";
  const auto score = [](const std::string& with) {
    return R"(<score-partwise><part-list><score-part id="P"><part-name>Piano</part-name></score-part>
</part-list><part id="P"><measure number="1"><attributes>)" +
           with + R"(</attributes>
<note><pitch><step>C</step><octave>5</octave></pitch><duration>1</duration><voice>1</voice></note>
<note><pitch><step>D</step><octave>5</octave></pitch><duration>1</duration><voice>1</voice></note>
<backup><duration>2</duration></backup>
<note><pitch><step>C</step><octave>5</octave></pitch><duration>2</duration><voice>2</voice>
<notations><technical><fingering>8</fingering></technical></notations></note>
</measure></part></score-partwise>
)";
  };
  const auto place_in = [](const std::string& text) {
    const Source source("etude.musicxml", text);
    const ReadResult result = read(source);
    REQUIRE(result.diagnostics.kept.size() == 1);
    CHECK(result.diagnostics.kept[0].where == MusicalPlace{0, Hand::right, 1, Fraction{1, 1}});
    for (const PlacedFinding& finding : check(source, result).findings) {
      if (finding.code == "finger-range") return finding.where;
    }
    return MusicalPlace{};
  };
  CHECK(place_in(score(attributes + meter)) == MusicalPlace{0, Hand::right, 1, Fraction{1, 1}});
  // A reader counts quarter notes where there is no meter; a finding has no beat.
  CHECK(place_in(score(attributes)) == MusicalPlace{0, Hand::right, 1, std::nullopt});
}

TEST_CASE("a warning before all notes is told by line and column") {
  const Source source("etude.musicxml", "<score>\n <note/> </score>");
  ReadResult result;
  result.diagnostics.add({Severity::warning, "finger-range", {9, 11}, "6 is no finger", ""});
  result.diagnostics.add({Severity::warning, "other", {9, 11}, "something else", ""});
  CHECK(write_findings(check(source, result), std::nullopt) ==
        "etude.musicxml:2:2: caution: 6 is no finger. [finger-range]\n");
}

TEST_CASE("of one hand only its own findings and counts are gathered") {
  const std::string text = "RH: C5 D:1 E:2\nLH: C3:5 D:4 E F\n";
  const FileCheck left = check_text(text, "a", Hand::left);
  CHECK(write_findings(left, std::nullopt) ==
        "a:2:14: bar 1, left hand: info: Fingers are missing in 2 events running. "
        "[missing-finger]\n");
  CHECK(left.file.counts.events == 4);
  CHECK(check_text(text, "a", Hand::right).file.counts.events == 3);
  CHECK(check_text(text).file.counts.events == 7);
}

TEST_CASE("fingers that are missing are one finding for each hand, unless asked for by name") {
  const std::string text = "RH: C5 D:1 E F:2 G\nLH: C3:5 D E:3 F:2\npassage: two\nRH: C5 D:1\n";
  const Source source("a", text);
  const auto found = [&](const CheckChoice& choice) {
    return write_findings(check(source, read_notation(source), {}, choice), std::nullopt);
  };
  CHECK(found({}) ==
        "a:1:5: passage 1, bar 1, right hand: info: Fingers are missing at 4 of 7 events of this "
        "hand (57 %), first here. [missing-finger]\n"
        "a:2:10: passage 1, bar 1, left hand: info: The finger is missing. [missing-finger]\n");
  CHECK(check(source, read_notation(source), {}, {}).file.counts.watch.info == 2);
  CHECK(check(source, read_notation(source), {}, {.only = {"missing-finger"}}).findings.size() ==
        5);
}

TEST_CASE("only what was chosen is found and counted") {
  const Source source("a", "C4:1+E:1 C4:2 D:2 E\n");
  const auto codes = [&](const CheckChoice& choice) {
    const FileCheck found = check(source, read_notation(source), {}, choice);
    std::string words;
    for (const PlacedFinding& finding : found.findings) words += finding.code + ' ';
    CHECK(found.file.counts.watch.info + found.file.counts.watch.caution == found.findings.size());
    CHECK(found.file.counts.events == 4);
    return words;
  };
  CHECK(codes({}) == "one-finger-twice finger-moved missing-finger ");
  CHECK(codes({.only = {"finger-moved"}}) == "finger-moved ");
  CHECK(codes({.only = {"finger-moved", "one-finger-twice"}}) == "one-finger-twice finger-moved ");
  CHECK(codes({.leave_out = {"finger-moved"}}) == "one-finger-twice missing-finger ");
  CHECK(codes({.only = {"finger-moved"}, .leave_out = {"finger-moved"}}).empty());
}

TEST_CASE("errors are no findings") {
  CHECK_FALSE(is_finding({Severity::error, "finger-range", {}, "", ""}));
  CHECK_FALSE(is_finding({Severity::warning, "no-notes", {}, "", ""}));
  CHECK(is_finding({Severity::warning, "finger-range", {}, "", ""}));
}

TEST_CASE("a place in a score leaves out what is not known") {
  const std::vector<std::string> one{""};
  const auto line = [](const FileCheck& found) { return write_findings(found, std::nullopt); };
  CHECK(line(check_with({finding_at(Hand::right, 12, Fraction{5, 2})}, one)) ==
        "etude.musicxml: bar 12, right hand, beat 2.5: caution: Look here. [missing-finger]\n");
  CHECK(line(check_with({finding_at(Hand::left, 0, std::nullopt)}, one)) ==
        "etude.musicxml: bar 0, left hand: caution: Look here. [missing-finger]\n");
  CHECK(line(check_with({finding_at(std::nullopt, std::nullopt, std::nullopt)}, one)) ==
        "etude.musicxml:7:9: caution: Look here. [missing-finger]\n");
}

TEST_CASE("of several passages in a score each is named") {
  const PlacedFinding finding = finding_at(Hand::right, 2, Fraction{1, 1});
  CHECK(write_findings(check_with({finding}, {"The\x1B ferry", "b"}), std::nullopt) ==
        "etude.musicxml: passage 1 (The\xEF\xBF\xBD ferry), bar 2, right hand, beat 1: caution: "
        "Look here. [missing-finger]\n");
  CHECK(write_findings(check_with({finding}, {"", "b"}), std::nullopt) ==
        "etude.musicxml: passage 1, bar 2, right hand, beat 1: caution: Look here. "
        "[missing-finger]\n");
}

TEST_CASE("beats have at most three decimals") {
  const auto beat = [](Fraction value) {
    const std::string text =
        write_findings(check_with({finding_at(Hand::right, 1, value)}, {""}), std::nullopt);
    const std::size_t begin = text.find("beat ") + 5;
    return text.substr(begin, text.find(':', begin) - begin);
  };
  CHECK(beat({1, 1}) == "1");
  CHECK(beat({10, 1}) == "10");
  CHECK(beat({5, 2}) == "2.5");
  CHECK(beat({7, 4}) == "1.75");
  CHECK(beat({9, 8}) == "1.125");
  CHECK(beat({4, 3}) == "1.333");
  CHECK(beat({5, 3}) == "1.667");
}

TEST_CASE("a long line is continued, indented, where a width is given") {
  CHECK(write_findings(check_text("C4:1+E:1"), 50) ==
        "test.passage:1:1: bar 1, right hand: caution:\n"
        "  One finger, the thumb, stands on two notes\n"
        "  struck together, C4 and E4. [one-finger-twice]\n");
}

TEST_CASE("the counts of a file are those of its hands together") {
  const FileCheck found = check_text(
      "RH: C4:1 D:2 E:3 F:1+A:1 G:3\nLH: C3 E:1+F:1 C3:5\npassage: b\nC4:1+E:3+G:5 C4:1\n");
  const CheckCounts& counts = found.file.counts;
  CHECK(counts.passages == 2);
  CHECK(counts.events == 10);
  CHECK(counts.fingered == 9);
  CHECK(counts.preparatory + counts.single_rotations + counts.double_rotations +
            counts.level_events + counts.undetermined ==
        10);
  CHECK(counts.watch.info == 2);
  CHECK(counts.watch.caution == 1);
  CHECK(counts.watch.total() == found.findings.size());
}

TEST_CASE("the counts of files add up number by number") {
  const CheckCounts one{1, 2, 3, 4, 5, 6, 7, 8, 9, {10, 11, 12}};
  CheckCounts all = one;
  all.add(one);
  CHECK(all == CheckCounts{2, 4, 6, 8, 10, 12, 14, 16, 18, {20, 22, 24}});
}

TEST_CASE("what could not be read says the first error with its place and has no counts") {
  const FileCheck found = check_text("C4:1\nD4:6 H4\n");
  CHECK(found.file.error ==
        "line 2, column 4: expected a finger from 1 to 5, found \"6\" [finger-range]");
  CHECK(found.findings.empty());
  CHECK(found.file.counts == CheckCounts{});
  CHECK(write_findings(found, std::nullopt).empty());
  CHECK(parsed_json(write_check_jsonl(found)) == Json{{"format", "fingerturn-check"},
                                                      {"version", 1},
                                                      {"source", "test.passage"},
                                                      {"error", found.file.error}});
}

TEST_CASE("the JSONL of a file says all that was found") {
  const Json line = parsed_json(write_check_jsonl(
      check_text("passage: one\nmeter: 2/4\n1/8 C4:1 D \"\n", "a \"b\"\n.passage")));
  CHECK(line["error"] != nullptr);
  CHECK(line["source"] == "a \"b\"\n.passage");
  const std::string text = write_check_jsonl(check_text("meter: 2/4\n1/8 C4:1 D\n"));
  CHECK(text ==
        R"({"format":"fingerturn-check","version":1,"source":"test.passage","error":null,)"
        R"("passages":1,"events":2,"fingered":1,"preparatory":1,"single":0,"double":0,"level":0,)"
        R"("undetermined":1,"crossings":0,"watch":{"info":1,"caution":0,"strain":0},)"
        R"("told_by":"line","titles":[""],)"
        R"("findings":[{"code":"missing-finger","level":"info","passage":1,"hand":"right",)"
        R"("bar":1,"beat":1.5,"line":2,"column":10,"message":"The finger is missing."}]})"
        "\n");
}

TEST_CASE("the JSONL for all files counts those that were read and those that were not") {
  FileCounts broken;
  broken.error = "no";
  const std::vector<FileCounts> files{counts_named("a", 3, 2), broken, counts_named("b", 4, 4)};
  const Json line = parsed_json(write_check_jsonl(all_of(files)));
  CHECK(line["source"] == nullptr);
  CHECK(line["error"] == nullptr);
  CHECK(line["read"] == 2);
  CHECK(line["failed"] == 1);
  CHECK(line["events"] == 7);
  CHECK(line["fingered"] == 6);
  CHECK(line["caution"] == caution());
}

TEST_CASE("a check finds what the analysis found, whatever the score") {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    CAPTURE(seed);
    const Source source("test.passage", write_passage(random_score(seed)));
    const ReadResult read = read_notation(source);
    REQUIRE(read.ok());
    const Analysis analysis = analyse(read.score);
    std::size_t findings = 0;
    std::size_t events = 0;
    for (const PassageAnalysis& passage : analysis.passages) {
      for (const LineAnalysis& line : passage.lines) {
        findings += line.watch.size();
        events += line.totals.events;
      }
    }
    const FileCheck found = check(source, read, {}, every_rule());
    CHECK(found.findings.size() == findings);
    CHECK(found.file.counts.events == events);
    for (const PlacedFinding& finding : found.findings) {
      const std::string_view line = source.line_text(finding.place.line);
      CHECK(finding.place.column <= line.size());
      if (finding.where.beat) CHECK(*finding.where.beat >= Fraction{1, 1});
    }
  }
}

TEST_CASE("one long line with many findings takes no time out of proportion") {
  constexpr std::size_t kEvents = 200000;
  std::string text;
  for (std::size_t i = 0; i < kEvents; ++i) text += "C4:1+E4:1 ";
  const FileCheck found = check_text(text);
  REQUIRE(found.findings.size() == kEvents);
  CHECK(found.findings.back().place == Place{1, 10 * (kEvents - 1) + 1});
}
