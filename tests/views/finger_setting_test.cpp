#include "fingerturn/finger_setting.hpp"

#include "catch.hpp"
#include "views/made_plans.hpp"

#include <string>
#include <vector>

/// Fingers to try: the small grammar, and what it sets.
namespace fingerturn {
namespace {

using Fingers = std::vector<std::vector<Finger>>;

FingerSetting parsed(const std::string& text) {
  const FingerSettingResult result = parse_finger_setting(text);
  INFO(text << ": " << result.problem);
  REQUIRE(result.value);
  CHECK(result.problem.empty());
  return *result.value;
}

FingersSet set_in(const std::string& music, const std::vector<std::string>& texts) {
  std::vector<FingerSetting> settings;
  for (const std::string& text : texts) settings.push_back(parsed(text));
  return set_fingers(score_from(music), settings);
}

constexpr const char* kBothHands =
    "meter: 4/4\nRH: 1/4 C5:1 D:2 E:3 F:4 | 1/4 C5:1+E:3+G:5 1/8 D:2 E:3 1/2 F:4 |\n"
    "LH: 1/2 C3:5 D:4 | 1/4 r G:1 1/2 r |";

}  // namespace

TEST_CASE("a finger setting names a hand, a bar, a beat and fingers", "[finger-setting]") {
  const FingerSetting plain = parsed("4:1.5=2");
  CHECK_FALSE(plain.hand);
  CHECK(plain.moment.bar == 4);
  CHECK(plain.moment.beat == 1.5);
  CHECK(plain.fingers == Fingers{{2}});
  CHECK(parsed("RH 4:1=1").hand == Hand::right);
  CHECK(parsed("lh 0:1=1").hand == Hand::left);
  CHECK(parsed("3:1=1+3+5").fingers == Fingers{{1}, {3}, {5}});
  CHECK(parsed("3:1=2>1").fingers == Fingers{{2, 1}});
  CHECK(parsed("3:1=1+4>3+?").fingers == Fingers{{1}, {4, 3}, {}});
}

TEST_CASE("what is no finger setting is refused with what was found", "[finger-setting]") {
  for (const char* text :
       {"",       "4",      "4:1",     "4:1=",     "4:1=6",          "4:1=0",     "4:1=1+",
        "4:1=+1", "4:1=1>", "4:0.5=1", "-1:1=1",   "RH4:1=1",        "RH  4:1=1", "XX 4:1=1",
        "4:1=1 ", "4:x=1",  "4:nan=1", "4:1=1++2", "9999999999:1=1", "4:1=12"}) {
    INFO(text);
    const FingerSettingResult result = parse_finger_setting(text);
    CHECK_FALSE(result.value);
    CHECK(result.problem.starts_with("expected a hand where it is needed, a bar, a beat"));
    CHECK(result.problem.find('\n') == std::string::npos);
  }
  CHECK(parse_finger_setting(std::string(1000, 'x')).problem.size() < 200);
}

TEST_CASE("fingers are set where they are meant", "[finger-setting]") {
  const FingersSet set = set_in(kBothHands, {"RH 1:1=3", "2:2.5=1", "RH 2:1=2>1+?+4", "LH 1:1=4"});
  REQUIRE(set.problem.empty());
  CHECK(set.score == score_from("meter: 4/4\nRH: 1/4 C5:3 D:2 E:3 F:4 | 1/4 C5:2>1+E+G:4 1/8 D:2 "
                                "E:1 1/2 F:4 |\nLH: 1/2 C3:4 D:4 | 1/4 r G:1 1/2 r |"));
}

TEST_CASE("fingers that cannot be set are told, and nothing is set", "[finger-setting]") {
  struct Case {
    std::vector<std::string> settings;
    std::string problem;
  };
  const std::vector<Case> cases{
      {{"1:1=1"}, "bar 1, beat 1: both hands strike something there; begin with RH or LH"},
      {{"RH 1:2=1", "9:1=1"},
       "bar 9, beat 1: nothing is struck there; beats are known where there are a meter and note "
       "values"},
      {{"LH 2:1=1"},
       "bar 2, beat 1: nothing is struck there by the left hand; beats are known where there are a "
       "meter and note values"},
      {{"RH 2:1=1"}, "bar 2, beat 1: 3 notes are struck there, and 1 finger is given"},
      {{"RH 1:2=1+2"}, "bar 1, beat 2: 1 note is struck there, and 2 fingers are given"},
  };
  for (const Case& each : cases) {
    const FingersSet set = set_in(kBothHands, each.settings);
    CHECK(set.problem == each.problem);
    CHECK(set.score == score_from(kBothHands));
  }
  CHECK(set_fingers(Score{}, {}).problem == "fingers are tried in one passage, and there are 0");
}

}  // namespace fingerturn
