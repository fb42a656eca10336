#include "catch.hpp"
#include "fingerturn/find.hpp"

#include <string>
#include <utility>
#include <vector>

/// The small grammar of patterns.
namespace fingerturn {
namespace {

FindPattern parsed(const std::string& text) {
  const FindPatternResult result = parse_find_pattern(text);
  INFO(text << ": " << result.problem);
  REQUIRE(result.ok());
  CHECK(result.problem.empty());
  return *result.pattern;
}

/// What a word asks for by itself.
WantedEvent wanted(const std::string& word) {
  const FindPattern pattern = parsed(word);
  REQUIRE(pattern.runs.size() == 1);
  REQUIRE(pattern.runs.front().events.size() == 1);
  return pattern.runs.front().events.front();
}

}  // namespace

TEST_CASE("a word of a pattern asks for one thing", "[find]") {
  const std::vector<std::pair<std::string, WantedEvent>> words{
      {".", {}},
      {"preparatory", {.rotation = Rotation::preparatory}},
      {"single", {.rotation = Rotation::single_rotation}},
      {"Double", {.rotation = Rotation::double_rotation}},
      {"level", {.rotation = Rotation::level}},
      {"undetermined", {.rotation = Rotation::undetermined}},
      {"left", {.turn = Direction::left}},
      {"right", {.turn = Direction::right}},
      {"toward-thumb", {.side = Side::toward_thumb}},
      {"toward-fifth", {.side = Side::toward_fifth}},
      {"thumb-under", {.crossing = Crossing::thumb_under}},
      {"finger-over-thumb", {.crossing = Crossing::finger_over_thumb}},
      {"finger-crossing", {.crossing = Crossing::finger_crossing}},
      {"passing", {.passes = true}},
      {"in", {.in_out = InOut::in}},
      {"out", {.in_out = InOut::out}},
      {"white", {.keys = KeyColour::white}},
      {"black", {.keys = KeyColour::black}},
      {"note", {.notes = 1}},
      {"double-note", {.notes = 2}},
      {"chord", {.notes = 3}},
      {"up", {.move = {.way = 1}}},
      {"down", {.move = {.way = -1}}},
      {"same-key", {.move = {.semitones = 0}}},
      {"hands-differ", {.hands_differ = true}},
      {"4", {.fingers = {4}}},
      {"1+3+5", {.fingers = {1, 3, 5}}},
      {"1+.", {.fingers = {1, std::nullopt}}},
      {"third", {.move = {.letters = 2}}},
      {"up-third", {.move = {.letters = 2, .way = 1}}},
      {"down-minor-third", {.move = {.letters = 2, .semitones = 3, .way = -1}}},
      {"augmented-fourth", {.move = {.letters = 3, .semitones = 6}}},
      {"diminished-seventh", {.move = {.letters = 6, .semitones = 9}}},
      {"perfect-octave", {.move = {.letters = 7, .semitones = 12}}},
      {"thirds", {.shape = std::vector{2}}},
      {"octaves", {.shape = std::vector{7}}},
      {"twist", {.rules = {"twist"}}},
      {"same-finger", {.rules = {"same-finger"}}},
      {"double,left,1,black",
       {.rotation = Rotation::double_rotation,
        .turn = Direction::left,
        .fingers = {1},
        .keys = KeyColour::black}},
      {"up,third", {.move = {.letters = 2, .way = 1}}},
      {"twist,leap", {.rules = {"twist", "leap"}}},
  };
  for (const auto& [word, event] : words) {
    INFO(word);
    CHECK(wanted(word) == event);
  }
  for (const FindWord& known : find_words()) {
    CHECK_FALSE(known.meaning.empty());
    CHECK(parse_find_pattern(known.word).ok());
  }
}

TEST_CASE("a pattern is events in a row, with a hand and repetitions", "[find]") {
  const WantedEvent two = wanted("double");
  const WantedEvent four{.fingers = {4}};
  const WantedEvent five{.fingers = {5}};
  CHECK(parsed("4 5 4") == FindPattern{{}, {{{four}}, {{five}}, {{four}}}});
  CHECK(parsed("LH: double x5+") == FindPattern{Hand::left, {{{two}, 5, true}}});
  CHECK(parsed("rh:  4  x2 5\tx1+") == FindPattern{Hand::right, {{{four}, 2}, {{five}, 1, true}}});
  CHECK(parsed("(4 5) x3 4") == FindPattern{{}, {{{four, five}, 3}, {{four}}}});
  CHECK(parsed("( 4 5 )double") == FindPattern{{}, {{{four, five}}, {{two}}}});
  CHECK(parsed("double x500").runs.front().times == 500);
}

TEST_CASE("what is no pattern is refused with its column and a cure", "[find]") {
  const std::vector<std::pair<std::string, std::string>> problems{
      {"", R"(expected events to look for, as in "double x5+" or "4 5 4")"},
      {"LH:", R"(expected events to look for, as in "double x5+" or "4 5 4")"},
      {"dubble",
       "column 1: expected a word of the reports, fingers, an interval or a rule, found "
       "\"dubble\"; did you mean \"double\"?"},
      {"4 qqqqqq",
       "column 3: expected a word of the reports, fingers, an interval or a rule, found "
       "\"qqqqqq\"; fingerturn find --help lists them"},
      {"4 5,white,black",
       "column 11: expected words that can hold of one event, and \"black\" cannot with those "
       "before it; leave a blank between events"},
      {"x4", "column 1: expected an event, or a group in brackets, before x and a number"},
      {"4 x2 x3", "column 6: expected an event, or a group in brackets, before x and a number"},
      {"(4 x2)", "column 4: expected an event, or a group in brackets, before x and a number"},
      {"(4 (5))", "column 4: expected no group within a group"},
      {"4 ) 5", "column 3: expected an opening bracket before it"},
      {"4 ()", "column 4: expected events in the group"},
      {"(4 5", "column 4: expected a closing bracket behind the events that come again"},
      {"(", "column 1: expected a closing bracket behind the events that come again"},
      {"4 RH: 5", "column 3: expected the hand at the beginning"},
      {"4 x501", "column 3: expected a number from 1 to 500 behind x"},
      {"4 x300 5 x201", "expected 500 events at most, found 501"},
  };
  for (const auto& [text, problem] : problems) {
    INFO(text);
    const FindPatternResult result = parse_find_pattern(text);
    CHECK_FALSE(result.ok());
    CHECK(result.problem == problem);
  }
  for (const char* word : {"6",
                           "0",
                           "1+",
                           "+1",
                           "1++2",
                           "1+6",
                           "x0",
                           "x501",
                           "x",
                           "x+",
                           "4x2",
                           "up-",
                           "up-up-third",
                           "minor-fourth",
                           "perfect-third",
                           "diminished-unison",
                           "unisons",
                           "thirdss",
                           "4,",
                           ",4",
                           "up,down",
                           "up-third,fifth",
                           "1,2",
                           "thirds,sixths",
                           "minor-third,major-third",
                           "same-key,up-minor-third",
                           "note,chord",
                           "single,double",
                           "left,right",
                           "in,out"}) {
    INFO(word);
    const FindPatternResult result = parse_find_pattern(word);
    CHECK_FALSE(result.ok());
    CHECK_FALSE(result.problem.empty());
  }
  CHECK(parse_find_pattern(std::string(5000, 'q')).problem.size() < 200);
}

}  // namespace fingerturn
