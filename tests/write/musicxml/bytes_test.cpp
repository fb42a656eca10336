#include "catch.hpp"
#include "fingerturn/read.hpp"
#include "write/musicxml/marking.hpp"

#include <algorithm>
#include <random>
#include <string>

/// That nothing of a user's MusicXML is lost, however it is written, and that no text does harm.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

const std::string kNotation = "C4:1 D:2 | E:3 F:1";

std::string fingering(const std::string& finger) {
  return "<notations><technical><fingering>" + finger + "</fingering></technical></notations>";
}

/// What the notation says, and a word under the second note.
std::string four_quarters() {
  return partwise({"<attributes><divisions>1</divisions></attributes>\n" +
                       quarter("C4", fingering("1")) +
                       quarter("D4", fingering("2") + "<lyric><text>la</text></lyric>"),
                   quarter("E4", fingering("3")) + quarter("F4", fingering("1"))});
}

/// The MusicXML with its own analysis written into it.
std::string marked_by_itself(const std::string& musicxml) {
  const Source source("score.musicxml", musicxml);
  const ReadResult read = read_musicxml(source);
  REQUIRE(render(text_read(read, source), read.diagnostics) == "");
  return write_musicxml(text_read(read, source), AnalysedScore(source.name(), read.score), {});
}

std::string replaced(std::string text, const std::string& old, const std::string& now) {
  for (std::size_t at = text.find(old); at != std::string::npos; at = text.find(old, at)) {
    text.replace(at, old.size(), now);
    at += now.size();
  }
  return text;
}

void check_bytes(const std::string& score) {
  CAPTURE(score);
  const std::string once = marked_by_itself(score);
  CHECK(count_of(once, "name=\"fingerturn\"") == 4);
  for (const char* const sign : {"←|", "→", "⇒", "←"}) {
    CHECK(count_of(once, "<text>" + std::string(sign) + "</text></lyric>") == 1);
  }
  CHECK(count_of(once, "en-x-forearm") == 1);
  CHECK(without_own_marks(once) == score);
  CHECK(without_own_marks(score) == score);
  CHECK(marked_by_itself(once) == once);
}

std::size_t events_in(const AnalysedScore& analysed) {
  std::size_t events = 0;
  for (const AnalysedPassage passage : analysed) {
    for (const AnalysedLine line : passage) events += line.size();
  }
  return events;
}

}  // namespace

TEST_CASE("every way to lay a score out keeps its bytes") {
  const std::string score = four_quarters();
  check_bytes(score);
  check_bytes(replaced(score, "\n", "\r\n"));
  check_bytes(replaced(score, "\n", "\r"));
  check_bytes(replaced(score, "\n", ""));
  check_bytes(replaced(score, "\n", "\n\n   "));
  check_bytes(replaced(score, "><", ">\n\t<"));
  check_bytes(replaced(score, "><", ">\r\n\r\n  <"));
  check_bytes(replaced(score, "><", "> <"));
  check_bytes(replaced(score, "><", "><!-- <note><lyric name=\"x\"/> --><"));
  check_bytes(replaced(score, "\n<", "<?p <measure> ?><"));
  check_bytes(replaced(score, "\"", "'"));
  check_bytes("\xEF\xBB\xBF" + score);
  check_bytes(replaced(score, "?>\n", "?>\n<!DOCTYPE score-partwise [<!ENTITY e \"<note>\">]>\n"));
  check_bytes(replaced(score, "</measure>", "<![CDATA[</measure><note>]]></measure>"));
  check_bytes(replaced(score, "</score-partwise>\n", "</score-partwise>"));
}

TEST_CASE("inserted lines are laid out like their neighbours") {
  const std::string score = replaced(replaced(four_quarters(), "\n", ""), "><", ">\r\n  <");
  const std::string out = marked(score, kNotation);
  CHECK(count_of(out, "\n") == count_of(score, "\n") + 5);
  CHECK(count_of(out, "\r\n  <lyric number") == 4);
  CHECK(count_of(out, "\r\n  <credit page") == 1);
  const std::string one_line = marked(replaced(score, "\r\n  ", ""), kNotation);
  CHECK(count_of(one_line, "\n") == 0);
}

TEST_CASE("a user's lyrics and words are not ours") {
  const std::string score = partwise(
      {"<direction><direction-type><words xml:lang=\"en\">fingerturn</words></direction-type>"
       "</direction>\n" +
       quarter("C4", "<lyric name=\"fingerturns\"><text>→</text></lyric>") + quarter("D4") +
       "<!-- <lyric name=\"fingerturn\"/> -->"});
  CHECK(without_own_marks(score) == score);
  CHECK(without_own_marks(marked(score, "C4:1 D:2")) == score);
}

TEST_CASE("marks that another program has laid out anew are known again") {
  const std::string saved = partwise(
      {"<direction>\n <direction-type>\n  <words font-size='8' xml:lang='en-x-forearm'>x</words>\n"
       " </direction-type>\n</direction>\n" +
       quarter("C4",
               "\n <lyric default-y=\"-80\" name='fingerturn' number='1'>\n  <text>x</text>\n"
               " </lyric>") +
       quarter("D4", "<lyric name=\"fingerturn\"/><lyric><text>la</text></lyric>")});
  const std::string clean =
      partwise({quarter("C4") + quarter("D4", "<lyric><text>la</text></lyric>")});
  CHECK(without_own_marks(saved) == clean);
  CHECK(marked(saved, "C4:1 D:2") == marked(clean, "C4:1 D:2"));
}

TEST_CASE("marks of more bars than are asked for go") {
  const std::string score = four_quarters();
  const std::string all = marked(score, kNotation);
  const Score read = score_at(all, "C4:1 D:2 | E:3 F:1");
  const AnalysedScore bar = only_bars(AnalysedScore("a", read), {2, 2});
  const std::string out = write_musicxml(Source("a", all), bar, {});
  CHECK(signs_under(out) == std::vector<std::string>{"", "", "2:⇒", "2:←"});
  CHECK(without_own_marks(out) == score);
}

TEST_CASE("without a sign there is no legend") {
  const std::string score = four_quarters();
  const std::string all = marked(score, kNotation);
  CHECK(write_musicxml(Source("a", all), AnalysedScore("a", Score{}), {}) == score);
}

TEST_CASE("notes whose spans lead elsewhere have no sign") {
  const std::string text = four_quarters();
  Score score = score_at(text, kNotation);
  std::vector<Event>& events = score.passages[0].lines[0].events;
  events[0].notes[0].span = {events[0].notes[0].span.begin + 1, 0};
  events[1].notes[0].span = {4000000000U, 4000000005U};
  events[2].notes[0].span = {0, 5};
  const std::string out = write_musicxml(Source("a", text), AnalysedScore("a", score), {});
  CHECK(signs_under(out) == std::vector<std::string>{"", "", "", "2:←"});
  CHECK(without_own_marks(out) == text);
}

TEST_CASE("an analysed score of another text does no harm") {
  const std::string text = four_quarters();
  const Score shorter = score_at(partwise({quarter("C4")}), "C4:1");
  const std::string out = write_musicxml(Source("a", text), AnalysedScore("a", shorter), {});
  CHECK(without_own_marks(out) == text);
}

TEST_CASE("a text that is no XML comes back as it is") {
  for (const std::string text : {"", "C4:1 D:2", "<", "<note", "<note><lyric name='fingerturn'",
                                 "\xFF\xFE<\0n\0", "</a></a></a>", "<note/>"}) {
    CAPTURE(text);
    CHECK(without_own_marks(text) == text);
    CHECK(write_musicxml(Source("a", text), AnalysedScore("a", Score{}), {}) == text);
  }
}

TEST_CASE("spoiled scores do no harm, and what can be read has all its signs") {
  constexpr int kRuns = 5000;
  const std::string sign = "<syllabic>single</syllabic>";
  const std::string whole = marked(four_quarters(), kNotation);
  const Score score = score_at(whole, kNotation);
  const AnalysedScore of_whole("a", score);
  int could_be_read = 0;
  std::mt19937 random(1905);
  const auto below = [&](std::size_t most) { return static_cast<std::size_t>(random() % most); };
  for (int run = 0; run < kRuns; ++run) {
    std::string text = whole;
    for (std::size_t i = 0; i <= below(3); ++i) {
      const std::size_t from = below(text.size());
      const std::string piece = whole.substr(below(whole.size()), below(60));
      text.replace(from, below(60), below(2) == 0 ? piece : "");
    }
    CAPTURE(run, text);
    const std::string once = write_musicxml(Source("a", text), of_whole, {});
    const std::string clean = without_own_marks(text);
    REQUIRE(without_own_marks(clean) == clean);
    REQUIRE(without_own_marks(once) == clean);
    const Source source("a", text);
    const ReadResult read = read_musicxml(source);
    if (!read.ok()) continue;
    ++could_be_read;
    const AnalysedScore spoiled("a", read.score);
    const std::string out = write_musicxml(text_read(read, source), spoiled, {});
    const std::string unmarked = without_own_marks(text_read(read, source).text());
    REQUIRE(without_own_marks(out) == unmarked);
    REQUIRE(count_of(out, sign) == count_of(unmarked, sign) + events_in(spoiled));
  }
  CHECK(could_be_read > kRuns / 20);
}

TEST_CASE("deep nesting and a chord without end take time in proportion") {
  constexpr std::size_t kMany = 200000;
  std::string deep;
  for (std::size_t i = 0; i < kMany; ++i) deep += "<measure>";
  CHECK(without_own_marks(deep) == deep);
  std::string chord = quarter("C4");
  for (std::size_t i = 0; i < kMany; ++i) chord += "<note><chord/><pitch/></note>";
  const std::string text = partwise({chord});
  Score score;
  score.passages.emplace_back().lines.emplace_back();
  std::vector<Event>& events = score.passages[0].lines[0].events;
  for (std::size_t at = text.find("<note"); at != std::string::npos;
       at = text.find("<note", at + 1)) {
    Note note;
    note.finger = 1;
    note.span = {static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at + 5)};
    events.emplace_back().notes.push_back(note);
  }
  const std::string out = write_musicxml(Source("a", text), AnalysedScore("a", score), {});
  CHECK(count_of(out, "name=\"fingerturn\"") == 1);
  CHECK(without_own_marks(out) == text);
}
