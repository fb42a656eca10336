#include "catch.hpp"
#include "fingerturn/compare.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/read.hpp"
#include "read/score_written.hpp"
#include "text/cells.hpp"
#include "text/utf8.hpp"
#include "write/json/json_reading.hpp"
#include "write/random_score.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

/// Passages with their analyses, the first of each score, ready to be compared.
class Compared {
 public:
  explicit Compared(const std::vector<Score>& scores) {
    for (const Score& score : scores) {
      scores_.push_back(with_difficulties(
          AnalysedScore("fingering " + std::to_string(scores_.size() + 1), score)));
    }
    for (const AnalysedScore& score : scores_) fingerings_.push_back({score.name(), score[0]});
    comparisons_.push_back(compare(scores_[0][0].written().title, fingerings_));
  }
  ~Compared() = default;
  Compared(const Compared&) = delete;
  Compared& operator=(const Compared&) = delete;

  [[nodiscard]] const std::vector<NamedPassage>& fingerings() const { return fingerings_; }
  [[nodiscard]] const Comparison& comparison() const { return comparisons_.front(); }
  [[nodiscard]] std::string text(const TextStyle& style) const {
    return write_comparison_text(comparisons_, style);
  }
  [[nodiscard]] std::string markdown() const { return write_comparison_markdown(comparisons_); }
  [[nodiscard]] std::string html() const { return write_comparison_html(comparisons_); }
  [[nodiscard]] Json json() const { return parsed_json(write_comparison_json(comparisons_)); }

 private:
  std::vector<AnalysedScore> scores_;
  std::vector<NamedPassage> fingerings_;
  std::vector<Comparison> comparisons_;
};

std::size_t occurrences(std::string_view text, std::string_view part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string_view::npos;
       at = text.find(part, at + part.size())) {
    ++count;
  }
  return count;
}

/// The events that differ in the first hand, by their numbers.
std::vector<std::size_t> differing(std::string_view one, std::string_view other) {
  const Compared compared({score_written(one), score_written(other)});
  std::vector<std::size_t> numbers;
  for (const DifferingEvent& event : compared.comparison().hands.at(0).differing) {
    numbers.push_back(event.number);
  }
  return numbers;
}

std::string notes_differ_text(std::string_view one, std::string_view other) {
  const Compared compared({score_written(one), score_written(other)});
  const auto differ = notes_differ(compared.fingerings());
  return differ ? render(compared.fingerings(), *differ) : "";
}

/// What differs, found by looking at everything: the notes and all that is said of their turns.
std::set<std::size_t> found_by_looking(const Compared& compared, Hand hand) {
  std::vector<std::vector<std::string>> said;
  for (const NamedPassage& fingering : compared.fingerings()) {
    std::vector<std::string>& words = said.emplace_back();
    const std::optional<AnalysedLine> line = fingering.passage.of_hand(hand);
    if (!line) continue;
    for (const auto& [event, entry] : *line) {
      std::string word(name_of(entry.rotation));
      word += entry.side ? name_of(*entry.side) : "no side";
      word += name_of(entry.crossing);
      for (const Note& note : event.notes) {
        if (note.held) continue;
        word += '/';
        for (const Finger finger : fingers_on_key(line->written(), entry.event, note)) {
          word += std::to_string(finger);
        }
      }
      words.push_back(word);
    }
  }
  std::set<std::size_t> differing;
  for (std::size_t number = 0; number < said[0].size(); ++number) {
    for (const auto& words : said) {
      if (words.at(number) != said[0][number]) differing.insert(number);
    }
  }
  return differing;
}

Score one_passage(Score score) {
  score.passages.resize(1);
  return score;
}

/// Three fingerings of a passage made by chance: as it is, completed, and suggested alone.
std::vector<Score> three_fingerings(std::uint64_t seed) {
  const Score score = one_passage(random_score(seed));
  return {score, with_suggestions(score), with_suggestions(without_fingers(score))};
}

std::size_t widest_line(const std::string& text) {
  std::size_t widest = 0;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = text.find('\n', begin);
    widest = std::max(widest, count_cells(std::string_view(text).substr(begin, end - begin)));
    begin = end + 1;
  }
  return widest;
}

}  // namespace

TEST_CASE("comparison: what differs is the finger, the kind, the side or the crossing") {
  CHECK(differing("C4:1 D:2 E:3", "C4:1 D:2 E:3").empty());
  CHECK(differing("C4:1 D:2 E:3", "C4:1 D:2 E:4") == std::vector<std::size_t>{2});
  // The finger of the first note is another, and so the second is another kind.
  CHECK(differing("C4:1 D:2 E:3", "C4:3 D:2 E:3") == std::vector<std::size_t>{0, 1, 2});
  CHECK(differing("C4:1 D:2 E:3", "C4:1 , D:2 E:3") == std::vector<std::size_t>{1, 2});
  CHECK(differing("C4:4>1 D:2", "C4:1 D:2") == std::vector<std::size_t>{0});
  CHECK(differing("C4:4~ C:1 D:2", "C4:4~ C D:5") == std::vector<std::size_t>{0, 1});
  CHECK(differing("C4:1+E:3+G:5", "C4:1+E:2+G:5") == std::vector<std::size_t>{0});
  CHECK(differing("C4:1 D E:3", "C4:1 D:2 E:3") == std::vector<std::size_t>{1, 2});
  // That a finger is a suggestion is no difference.
  CHECK(differing("C4:1 D:2", "C4:1? D:2?").empty());
}

TEST_CASE("comparison: the notes must be the same") {
  CHECK(notes_differ_text("C4:1 D:2", "C4:3 D:4") == "");
  CHECK(notes_differ_text("C#4:1", "Db4:1") == "");
  CHECK(notes_differ_text("1/4 C4:1 D:2", "C4:1 D:2") == "");
  CHECK(notes_differ_text("bar: 5\n1/4 C4:1 D:2", "1/4 C4:1 D:2") == "");
  CHECK(notes_differ_text("1/4 C4:1 r D:2", "1/2 C4:1 1/4 D:2") == "");
  CHECK(notes_differ_text("C4:1+E:3", "E4:3+C:1") == "");
  CHECK(notes_differ_text("C4:1 D:2", "C4:1 E:2") ==
        "bar 1, right hand: D4 in fingering 1, E4 in fingering 2");
  CHECK(notes_differ_text("C4:1 D:2", "C4:1") ==
        "bar 1, right hand: D4 in fingering 1, nothing more in fingering 2");
  CHECK(notes_differ_text("C4:1", "C4:1 | D:2") ==
        "bar 2, right hand: nothing more in fingering 1, D4 in fingering 2");
  CHECK(notes_differ_text("RH: C5:1\nLH: C3:1", "RH: C5:1") ==
        "bar 1, left hand: C3 in fingering 1, nothing in fingering 2");
  CHECK(notes_differ_text("1/4 C4:1 D:2", "1/8 C4:1 D:2") ==
        "bar 1, right hand: D4 on beat 2 in fingering 1, D4 on beat 1.5 in fingering 2");
  CHECK(notes_differ_text("RH: 1/4 C5:1 D:2\nLH: 1/4 r C3:1", "RH: 1/4 C5:1 D:2\nLH: 1/4 C3:1") ==
        "bar 1, left hand: C3 on beat 2 in fingering 1, C3 on beat 1 in fingering 2");
  CHECK(notes_differ_text("C4:1 r", "C4:1") == "");
  CHECK(notes_differ_text("r", "r r") == "");
}

TEST_CASE("comparison: of three fingerings the one that differs is named") {
  const Compared compared(
      {score_written("C4:1 D:2"), score_written("C4:1 D:3"), score_written("C4:1 E:3")});
  const auto differ = notes_differ(compared.fingerings());
  REQUIRE(differ.has_value());
  CHECK(differ->other == 2);
  CHECK(differ->in_first == 1);
  // What is the same up to there is compared all the same.
  CHECK(compared.comparison().hands.at(0).compared.size() == 2);
}

TEST_CASE("comparison: fingerings made by chance differ where one sees that they do") {
  std::size_t found = 0;
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    CAPTURE(seed);
    const Compared compared(three_fingerings(seed));
    REQUIRE_FALSE(notes_differ(compared.fingerings()).has_value());
    for (const HandComparison& hand : compared.comparison().hands) {
      std::set<std::size_t> numbers;
      for (const DifferingEvent& event : hand.differing) numbers.insert(event.number);
      CHECK(numbers == found_by_looking(compared, hand.hand));
      found += numbers.size();
    }
  }
  CHECK(found > 1000);
}

TEST_CASE("comparison: a fingering is like itself") {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    CAPTURE(seed);
    const Score score = one_passage(random_score(seed));
    const Compared compared({score, score});
    CHECK(compared.comparison().all_alike());
    CHECK(compared.text({}).find("where they differ") == std::string::npos);
  }
}

TEST_CASE("comparison: results are those of the analyses") {
  for (std::uint64_t seed = 1; seed <= 50; ++seed) {
    CAPTURE(seed);
    const Compared compared(three_fingerings(seed));
    for (const HandComparison& hand : compared.comparison().hands) {
      for (std::size_t i = 0; i < compared.fingerings().size(); ++i) {
        const auto line = compared.fingerings()[i].passage.of_hand(hand.hand);
        const HandResult& result = hand.results.at(i);
        CHECK(result.totals == line->found().totals);
        CHECK(result.difficulty == line->found().difficulty);
        CHECK(result.watch.total() == line->found().watch.size());
      }
    }
  }
}

TEST_CASE("comparison: nothing at all can be compared") {
  CHECK(compare({}, {}).hands.empty());
  CHECK_FALSE(notes_differ({}).has_value());
  const Compared silent({score_written("r r"), score_written("r")});
  CHECK(silent.comparison().hands.empty());
  CHECK(silent.text({}).find("Nothing is played here.") != std::string::npos);
  CHECK(write_comparison_text({}, {}).find("legend") == 0);
  CHECK(parsed_json(write_comparison_json({}))["passages"].empty());
}

TEST_CASE("comparison: the text keeps to its width, as far as words allow") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    for (const int columns : {32, 40, 80}) {
      CAPTURE(seed, columns);
      std::vector<Score> scores = three_fingerings(seed);
      for (Score& score : scores) {
        score.passages[0].title = "title";
        score.passages[0].composer = score.passages[0].source = "";
      }
      const Compared compared(scores);
      const std::string text = compared.text({.columns = columns});
      // Chords of many notes are words that stand whole.
      const bool has_chords = text.find('+') != std::string::npos;
      if (!has_chords || columns == 80)
        CHECK(widest_line(text) <= static_cast<std::size_t>(columns));
    }
  }
}

TEST_CASE("comparison: the JSON says what the comparison says") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    const Compared compared(three_fingerings(seed));
    const Json passage = compared.json()["passages"].at(0);
    CHECK(passage["fingerings"].size() == 3);
    CHECK(passage["alike"] == compared.comparison().all_alike());
    REQUIRE(passage["hands"].size() == compared.comparison().hands.size());
    for (std::size_t h = 0; h < passage["hands"].size(); ++h) {
      const HandComparison& hand = compared.comparison().hands[h];
      const Json& said = passage["hands"][h];
      CHECK(said["hand"] == to_string(hand.hand));
      CHECK(said["events"] == hand.compared.size());
      CHECK(said["agreement"]["fingers"] == hand.in_all().fingers);
      CHECK(said["agreement"]["turns"] == hand.in_all().turns);
      CHECK(said["agreement"]["bars"].size() == hand.agreement.size());
      CHECK(said["results"].size() == 3);
      REQUIRE(said["differences"].size() == hand.differing.size());
      for (std::size_t d = 0; d < hand.differing.size(); ++d) {
        CHECK(said["differences"][d]["event"] == hand.differing[d].number);
        for (std::size_t i = 0; i < 3; ++i) {
          const EventAnalysis& entry = hand.lines[i][hand.differing[d].number].found;
          CHECK(said["differences"][d]["played"][i]["rotation"] == name_of(entry.rotation));
          CHECK(said["differences"][d]["played"][i]["side"].is_null() == !entry.side);
        }
      }
    }
  }
}

TEST_CASE("comparison: titles and names cannot change the rest") {
  const std::string title = GENERATE(as<std::string>{}, "\x1B[31m", "a\nb", "\"", "\\", "\xFF",
                                     std::string("\0", 1), "\u202E", "{}", "%s");
  Score score = score_written("C4:1 D:2");
  score.passages[0].title = title;
  const AnalysedScore analysed(title, score);
  const std::vector<Comparison> reports{
      compare(title, {{title, analysed[0]}, {title, analysed[0]}})};
  const std::string text = write_comparison_text(reports, {});
  CHECK(text.find('\x1B') == std::string::npos);
  CHECK_FALSE(find_bad_byte(text.substr(0, text.find('\n'))).has_value());
  const Json json = parsed_json(write_comparison_json(reports));
  CHECK(json["passages"][0]["fingerings"].size() == 2);
}

TEST_CASE("comparison: fingerings have letters") {
  CHECK(fingering_label(0) == "A");
  CHECK(fingering_label(25) == "Z");
  CHECK(fingering_label(26) == "AA");
  CHECK(fingering_label(27) == "AB");
  CHECK(fingering_label(51) == "AZ");
  CHECK(fingering_label(52) == "BA");
  CHECK(fingering_label(701) == "ZZ");
  CHECK(fingering_label(702) == "AAA");
}

TEST_CASE("Markdown has every place that JSON has", "[compare]") {
  for (const auto& [one, other] : std::vector<std::pair<std::string, std::string>>{
           {"meter: 4/4\n1/4 G4:1 A:2 B:3 C5:4 | D:5 C:4 B:3 A:2 |",
            "meter: 4/4\n1/4 G4:1 A:2 B:1 C5:2 | D:3 C:2 B:1 A:2 |"},
           {"meter: 4/4\n1/4 C4:1 D:2 E:3 F:4 |", "meter: 4/4\n1/4 C4:1 D:2 E:3 F:5 |"}}) {
    CAPTURE(one, other);
    const Compared compared({score_written(one), score_written(other)});
    const std::string page = compared.markdown();
    std::size_t places = 0;
    const Json document = compared.json();
    for (const auto& hand : document["passages"][0]["hands"]) {
      for (const auto& place : hand["differences"]) {
        const std::string begin = "- Bar " + std::to_string(place["bar"].get<int>()) + ", beat " +
                                  std::to_string(place["beat"].get<int>()) + ", **";
        CAPTURE(begin);
        CHECK(page.find(begin) != std::string::npos);
        ++places;
      }
    }
    CHECK(places > 0);
    std::size_t listed = 0;
    for (std::size_t at = 0; (at = page.find(", **", at)) != std::string::npos; ++at) ++listed;
    CHECK(listed == places);
  }
}

TEST_CASE("Markdown has no place where fingerings are equal", "[compare]") {
  const Score score = score_written("meter: 4/4\n1/4 G4:1 A:2 B:3 C5:4 |");
  const std::string page = Compared({score, score}).markdown();
  CHECK(page.find("Where they differ") == std::string::npos);
  CHECK(page.find("A and B are alike: the same fingers throughout.") != std::string::npos);
  CHECK(page.find(caution().substr(0, 30)) != std::string::npos);
}

TEST_CASE("every place of the JSON document is in the page of a comparison, and no other") {
  const std::vector<std::pair<std::string, std::string>> pairs{
      {"passage: Etude\nRH: 1/8 C4:1 D:2 E:3 F:4 | C4:1 D:2 E:3 F:4 | G4:5 F:4 E:3 D:2\nLH: 1/4 "
       "C3:5 "
       "G:1 | C3:5 G:1 | C3:5 G:1",
       "passage: Etude\nRH: 1/8 C4:1 D:2 E:3 F:1 | C4:1 D:2 E:3 F:4 | G4:5 F:4 E:2 D:1\nLH: 1/4 "
       "C3:5 "
       "G:1 | C3:5 G:1 | C3:4 G:1"},
      {"C4:1 D:2 r E:3", "C4:2 D:3 r E:4"}};
  for (const auto& [one, other] : pairs) {
    const Compared compared({score_written(one), score_written(other)});
    const std::string page = compared.html();
    const Json document = compared.json();
    std::size_t places = 0;
    for (const Json& hand : document["passages"][0]["hands"]) {
      places += hand["differences"].size();
      for (const Json& place : hand["differences"]) {
        const std::string row = "<tr><td>" + std::to_string(place["bar"].get<int>()) + "</td>";
        CHECK(page.find(row) != std::string::npos);
      }
    }
    CHECK(places > 0);
    CHECK(occurrences(page, "<tr><td>") == places);
    // Each width has the ribbons of both fingerings.
    CHECK(occurrences(page, ">A</text>") == occurrences(page, ">B</text>"));
    CHECK(occurrences(page, ">A</text>") >= 2);
  }
}

TEST_CASE("bars that are played alike are named on the page and not shown") {
  const Compared compared({score_written("C4:1 | D:2 | E:3 | F:4 | G:5"),
                           score_written("C4:1 | D:2 | E:2 | F:4 | G:5")});
  const std::string page = compared.html();
  CHECK(page.find("<p>Bars 1 to 2 and bars 4 to 5: played alike, not shown.</p>") !=
        std::string::npos);
  CHECK(page.find("aria-label=\"Bar 3\"") != std::string::npos);
}

TEST_CASE("two equal fingerings have a page without music") {
  const Score score = score_written("1/4 C4:1 D:2 E:3");
  const std::string page = Compared({score, score}).html();
  CHECK(page.find("A and B are alike: the same fingers throughout.") != std::string::npos);
  CHECK(page.find("class=\"systems") == std::string::npos);
}
