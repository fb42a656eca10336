#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"
#include "read/score_written.hpp"
#include "score/timeline.hpp"
#include "text/cells.hpp"
#include "text/utf8.hpp"
#include "write/random_score.hpp"
#include "write/text/rows_reading.hpp"

#include <algorithm>
#include <cstdint>
#include <map>
#include <string>
#include <utility>
#include <vector>

/// The text report: what stands in it, where it stands, and how wide it is.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

constexpr std::uint64_t kSeeds = 60;

std::string text_of(const Score& score, const TextStyle& style = {}) {
  return write_text(AnalysedScore("test.passage", score), style);
}

/// A passage made by chance, alone in its score, of which all note values are known.
Score random_passage_in_time(std::uint64_t seed) {
  Score score;
  score.passages.push_back(random_score(seed).passages.front());
  Passage& passage = score.passages.front();
  for (Line& line : passage.lines) {
    for (Event& event : line.events) {
      if (!event.duration) event.duration = event.grace ? Fraction{} : Fraction{1, 8};
    }
  }
  set_onsets(passage);
  return score;
}

/// Where something stands: the system, then the column.
using Position = std::pair<std::size_t, std::size_t>;

/// Where each event of a hand stands. All notes stand on the lowest row of the notes.
std::vector<Position> positions_of_events(const std::vector<ReportBlock>& blocks, Hand hand) {
  std::vector<Position> positions;
  for (const ReportBlock& block : blocks) {
    if (block.hand != to_string(hand)) continue;
    for (const ReportCell& cell : block.rows_of("note").back().entries()) {
      positions.emplace_back(block.system, cell.column);
    }
  }
  return positions;
}

std::vector<std::string> words_of(const std::vector<ReportBlock>& blocks, Hand hand,
                                  std::string_view label) {
  std::vector<std::string> words;
  for (const ReportBlock& block : blocks) {
    if (block.hand != to_string(hand)) continue;
    for (const ReportRow& row : block.rows_of(label)) {
      for (const ReportCell& cell : row.entries()) words.push_back(cell.text);
    }
  }
  return words;
}

std::vector<std::string> rotations_of(const LineAnalysis& analysis) {
  static const std::map<Rotation, std::string> kWords{{Rotation::preparatory, "prep"},
                                                      {Rotation::single_rotation, "single"},
                                                      {Rotation::double_rotation, "double"},
                                                      {Rotation::level, "level"},
                                                      {Rotation::undetermined, "?"}};
  std::vector<std::string> words;
  for (const EventAnalysis& found : analysis.events) words.push_back(kWords.at(found.rotation));
  return words;
}

/// When the notes of a line that take time begin, and where they stand.
std::map<Fraction, Position> positions_by_onset(const Line& line,
                                                const std::vector<Position>& positions) {
  std::map<Fraction, Position> by_onset;
  REQUIRE(positions.size() == line.events.size());
  for (std::size_t i = 0; i < positions.size(); ++i) {
    if (!line.events[i].grace) by_onset[line.events[i].onset.value()] = positions[i];
  }
  return by_onset;
}

/// A line that may be wider than was asked for: a single word, which cannot be broken.
bool holds_one_word(const std::string& line) {
  const std::size_t label = line.starts_with(' ') ? 0 : 10;
  const std::string words = line.size() > label ? line.substr(label) : line;
  const std::size_t begin = words.find_first_not_of(' ');
  return begin == std::string::npos || words.find(' ', begin) == std::string::npos;
}

void check_widths(const Score& score, const TextStyle& style) {
  CAPTURE(style.columns, style.ascii, style.detail);
  for (const std::string& line : lines_of(text_of(score, style))) {
    CAPTURE(line);
    const bool fits = count_cells(line) <= static_cast<std::size_t>(style.columns);
    REQUIRE((fits || holds_one_word(line)));
    REQUIRE_FALSE(line.ends_with(' '));
  }
}

bool is_ascii(const std::string& text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

}  // namespace

TEST_CASE("no line of the text report is wider than was asked for") {
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    CAPTURE(seed);
    for (const int columns : {32, 40, 60, 80, 120}) {
      const Score score = random_score(seed);
      check_widths(score, {.columns = columns});
      check_widths(score, {.columns = columns, .ascii = true, .detail = true});
    }
  }
}

TEST_CASE("a bar that holds only a rest, or one of a high number, keeps to the width, too") {
  const std::string text =
      GENERATE("1/4 C4:1 | r | D:2 | r | r | r | r | r | r | r | r | E:3",
               "bar: 123456\n1/4 C4:1 | D:2 | r | E:3 | r | F:4 | r | r | r",
               "RH: 1/4 C5:1 | r | r | r | r | r\nLH: 1/4 C3:1 | D:2 | r | r | r | r");
  for (const int columns : {32, 40, 80}) check_widths(score_written(text), {.columns = columns});
}

TEST_CASE("long titles, composers and sources are wrapped") {
  std::string words = "Lantern";
  for (int i = 0; i < 30; ++i) words += " Street number " + std::to_string(i);
  const Score score = score_written("passage: " + words + "\ncomposer: " + words +
                                    "\nsource: " + words + "\nC4:1 D:2");
  for (const int columns : {32, 80}) check_widths(score, {.columns = columns});
}

TEST_CASE("fewer columns than the fewest count as the fewest") {
  const Score score = score_written("1/4 C4:1 D:2 E:3 F:4 G:5 F:4 E:3 D:2 C:1");
  for (const int columns : {31, 1, 0, -5}) {
    CHECK(text_of(score, {.columns = columns}) == text_of(score, {.columns = kFewestColumns}));
  }
}

TEST_CASE("each hand's rotations stand in their order") {
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    CAPTURE(seed);
    const Score score = random_passage_in_time(seed);
    const Analysis analysis = analyse(score);
    for (const int columns : {32, 80}) {
      const auto blocks = blocks_of(text_of(score, {.columns = columns}));
      for (const LineAnalysis& line : analysis.passages[0].lines) {
        std::vector<std::string> shown = words_of(blocks, line.hand, "rotation");
        std::vector<std::string> found = rotations_of(line);
        CHECK(shown.size() <= found.size());
        // Rows in which nothing is known are left out.
        std::erase(shown, "?");
        std::erase(found, "?");
        CHECK(shown == found);
      }
    }
  }
}

TEST_CASE("rows that could only say that fingers are missing are left out") {
  const std::string text =
      text_of(score_written("1/4 C4:1 D:2 E F | G A B C5 | D5:1 E:2 F G"), {.columns = 45});
  const auto blocks = blocks_of(text);
  CHECK(words_of(blocks, Hand::right, "finger").size() == 12);
  CHECK(words_of(blocks, Hand::right, "rotation") ==
        std::vector<std::string>{"prep", "single", "?", "?", "?", "single", "?", "?"});
  CHECK(text.find("(66 %)") != std::string::npos);
}

TEST_CASE("what belongs to a note stands below it") {
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    CAPTURE(seed);
    for (const ReportBlock& block : blocks_of(text_of(random_passage_in_time(seed)))) {
      std::vector<std::size_t> columns;
      for (const ReportCell& cell : block.rows_of("note").back().entries()) {
        columns.push_back(cell.column);
      }
      for (std::size_t row = 1; row < block.rows.size(); ++row) {
        for (const ReportCell& cell : block.rows[row].entries()) {
          CAPTURE(block.rows[row].label, cell.text, cell.column);
          REQUIRE(std::find(columns.begin(), columns.end(), cell.column) != columns.end());
        }
      }
    }
  }
}

TEST_CASE("bar lines stand below one another, in both hands") {
  const auto check = [](const Score& score, const TextStyle& style) {
    std::map<std::size_t, std::vector<std::size_t>> columns_of_systems;
    for (const ReportBlock& block : blocks_of(text_of(score, style))) {
      for (const ReportRow& row : block.rows) {
        const auto columns = row.bar_line_columns();
        const auto& expected = columns_of_systems.try_emplace(block.system, columns).first->second;
        CAPTURE(block.system, block.hand, row.label);
        REQUIRE(columns == expected);
      }
    }
  };
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    CAPTURE(seed);
    check(random_passage_in_time(seed), {});
    check(random_passage_in_time(seed), {.columns = 120, .ascii = true});
  }
  check(score_written("1/4 C4:1 | r | D:2 | r | r | E:3"), {});
  check(score_written("bar: 123456\n1/4 C4:1 | D:2 | E:3"), {});
}

TEST_CASE("notes that sound together stand in one column, later notes to the right") {
  std::size_t together = 0;
  for (std::uint64_t seed = 1; seed <= 3 * kSeeds; ++seed) {
    const Score score = random_passage_in_time(seed);
    const auto& lines = score.passages[0].lines;
    if (lines.size() < 2) continue;
    CAPTURE(seed);
    const auto blocks = blocks_of(text_of(score));
    std::map<Fraction, Position> all =
        positions_by_onset(lines[0], positions_of_events(blocks, Hand::right));
    for (const auto& [onset, position] :
         positions_by_onset(lines[1], positions_of_events(blocks, Hand::left))) {
      const auto [found, is_new] = all.try_emplace(onset, position);
      CAPTURE(to_string(onset));
      CHECK(found->second == position);
      together += is_new ? 0 : 1;
    }
    CHECK(std::is_sorted(all.begin(), all.end(), [](const auto& left, const auto& right) {
      return left.second < right.second;
    }));
  }
  CHECK(together > 100);
}

TEST_CASE("the hands stand one after the other where not all values are known") {
  const std::string text = text_of(score_written("RH: C5:1 D:2 | E:3\nLH: 1/4 C3:5 | D:4"));
  CHECK(text.find("Not all note values are known") != std::string::npos);
  const auto blocks = blocks_of(text);
  REQUIRE(blocks.size() == 2);
  CHECK(blocks[0].hand == "right");
  CHECK(blocks[1].hand == "left");
  CHECK(blocks[1].system > blocks[0].system);
}

TEST_CASE("the ASCII report is ASCII") {
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    CAPTURE(seed);
    Score score = random_score(seed);
    for (Passage& passage : score.passages) {
      for (std::string* text : {&passage.title, &passage.composer, &passage.source}) {
        if (!is_ascii(*text)) *text = "Lantern Street";
      }
      for (auto& note : passage.notes) note.value = "loose";
    }
    CHECK(is_ascii(text_of(score, {.ascii = true, .detail = true})));
  }
}

TEST_CASE("the ASCII report has as many lines, and its signs at the same places") {
  const std::map<std::string, std::string> signs{
      {"\u2190", "<"}, {"\u2192", ">"}, {"\u00B7", "-"}, {"\u2502", "|"}};
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    CAPTURE(seed);
    std::string text = text_of(random_passage_in_time(seed));
    for (const auto& [sign, plain] : signs) {
      for (auto at = text.find(sign); at != std::string::npos; at = text.find(sign)) {
        text.replace(at, sign.size(), plain);
      }
    }
    CHECK(text == text_of(random_passage_in_time(seed), {.ascii = true}));
  }
}

TEST_CASE("colours come only when they are asked for, and change nothing else") {
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    CAPTURE(seed);
    const Score score = random_score(seed);
    for (const bool detail : {false, true}) {
      const std::string plain = text_of(score, {.detail = detail});
      const std::string coloured = text_of(score, {.detail = detail, .colour = true});
      CHECK(plain.find('\x1B') == std::string::npos);
      CHECK(coloured.find("\x1B[") != std::string::npos);
      CHECK(without_colours(coloured) == plain);
      for (const std::string& line : lines_of(coloured)) {
        const bool ends_plain =
            line.find('\x1B') == std::string::npos || line.rfind("\x1B[0m") == line.rfind('\x1B');
        CHECK(ends_plain);
      }
    }
  }
}

TEST_CASE("no text of a score or name of a source makes a terminal act") {
  const std::string evil = "\x1B]0;owned\x07\x1B[2J\r\n\x9B\u202Eabc\u2028";
  Score score = score_written("C4:1 D:2");
  score.passages[0].title = evil;
  score.passages[0].composer = evil;
  score.passages[0].source = evil;
  for (const bool named : {true, false}) {
    if (!named) score.passages[0].title.clear();
    const std::string text = write_text(AnalysedScore(evil, score), {.detail = true});
    CHECK(text.find("abc") != std::string::npos);
    for (const std::string& line : lines_of(text)) CHECK_FALSE(find_bad_byte(line).has_value());
    CHECK(text.find("\u202E") == std::string::npos);
    CHECK(text.find("\u2028") == std::string::npos);
  }
}
