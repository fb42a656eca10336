#include "catch.hpp"
#include "fingerturn/analysis.hpp"
#include "read/score_written.hpp"

#include <string>
#include <string_view>
#include <vector>

/// Which keys a hand keeps down while it strikes, and with which finger.
namespace fingerturn {
namespace {

/// "1: C3 5, 2: C3 5": by the number of the struck event.
std::string held_in(std::string_view notation) {
  const Score score = tests::score_written(notation);
  const Line& line = score.passages.at(0).lines.at(0);
  const LineAnalysis analysis = analyse(score).passages.at(0).lines.at(0);
  std::string words;
  for (const HeldKey& held : analysis.held) {
    std::size_t number = 0;
    while (analysis.events.at(number).event != held.event) ++number;
    CHECK(line.events.at(held.event).struck_count() > 0);
    words += (words.empty() ? "" : ", ") + std::to_string(number) + ": " + to_string(held.pitch) +
             ' ' + (held.finger ? std::to_string(*held.finger) : "?");
  }
  return words;
}

TEST_CASE("keys that are held while others are struck", "[rules][turn]") {
  struct HeldCase {
    std::string_view what;
    std::string_view notation;
    std::string_view held;
  };
  const std::vector<HeldCase> cases{
      {"nothing held", "1/4 C4:1 D:2 E:3", ""},
      {"a tie", "1/4 C4:1~+E4:3 C4+F4:4 G4:5", "1: C4 1"},
      {"a tie without times", "C4:1~+E4:3 C4+F4:4 G4:5", "1: C4 1"},
      {"a slower voice", "1/8 C4:1=3/8 E:3 G:5 E:3", "1: C4 1, 2: C4 1"},
      {"two slower voices", "1/8 C4:1=1/4+E4:2=3/8 G:5 A:5", "1: C4 1, 1: E4 2, 2: E4 2"},
      {"no finger written", "1/8 C4=1/4 E:3", "1: C4 ?"},
      {"after a silent change", "1/8 C4:1>2=1/4 E:3", "1: C4 2"},
      {"a finger on the continuation", "1/4 C4:1~+E4:3 C4:2~+F4:4 C4+G4:5", "1: C4 2, 2: C4 2"},
      {"struck again", "1/8 C4:1=1/2 C4:2 E:3", ""},
      {"a rest lets go", "1/8 C4:1=1/2 r E:3", ""},
      {"a slower voice without times", "C4:1=1/2 E:3", ""},
      {"nineteen semitones are in reach", "1/8 C3:5=1/2 G4:1", "1: C3 5"},
      {"twenty are the pedal's, and stay so", "1/8 C3:5=1/2 Ab4:1 E3:3", ""},
      {"so below", "1/8 Ab4:1=1/2 C3:5", ""},
      {"of a chord one key is out of reach", "1/8 C3:5=1/2 E3:3+Ab4:1", ""},
      {"the finger plays another key", "1/8 C4:2=1/2 D4:2 E:3", ""},
      {"the finger of another key plays it", "1/8 C4:2=1/2+E4:4=1/2 F4:4", "1: C4 2"},
      {"the thumb holds one neighbour and strikes the other", "1/8 C4:1=1/2 D4:1", "1: C4 1"},
      {"and no key further away", "1/8 C4:1=1/2 D#4:1", ""},
      {"a tie is the pedal's too", "1/4 C3:5~+E3:3 C3+Ab4:1", ""},
      {"a finger that is not known may be any", "1/8 C4=1/2 D4:2", "1: C4 ?"},
      {"a tied note over other notes", "1/8 C4:1=1/4~ E:3 C4:1=1/4 G:5", "1: C4 1, 2: C4 1"},
  };
  for (const HeldCase& each : cases) {
    INFO(each.what);
    CHECK(held_in(each.notation) == each.held);
  }
}

TEST_CASE("no swing around a held key is full, so it has no rate", "[rules][turn]") {
  const auto events_of = [](std::string_view notation) {
    return analyse(tests::score_written(notation)).passages.at(0).lines.at(0);
  };
  const LineAnalysis free = events_of("tempo: 60\n1/8 C4:1 E:3 G:5 E:3");
  const LineAnalysis held = events_of("tempo: 60\n1/8 C4:1=1/4 E:3 G:5 E:3");
  REQUIRE(free.events.size() == held.events.size());
  CHECK(free.events[1].swing_rate.has_value());
  CHECK_FALSE(held.events[1].swing_rate.has_value());
  CHECK_FALSE(held.events[1].full_swing_tempo.has_value());
  CHECK(held.events[2].swing_rate == free.events[2].swing_rate);
  for (std::size_t i = 0; i < free.events.size(); ++i) {
    CHECK(held.events[i].rotation == free.events[i].rotation);
    CHECK(held.events[i].side == free.events[i].side);
  }
}

}  // namespace
}  // namespace fingerturn
