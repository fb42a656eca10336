#include "catch.hpp"
#include "fingerturn/analysis.hpp"
#include "read/score_written.hpp"

#include <string>
#include <string_view>
#include <vector>

/// Both hands on one key, and a hand that reaches past the other.
namespace fingerturn {
namespace {

/// "right bar 2: Both hands are on E4."
std::vector<std::string> hands_findings(std::string_view notation) {
  const Score score = tests::score_written(notation);
  const Analysis analysis = analyse(score);
  std::vector<std::string> found;
  for (std::size_t i = 0; i < score.passages.at(0).lines.size(); ++i) {
    const Line& line = score.passages[0].lines[i];
    for (const Finding& finding : analysis.passages.at(0).lines.at(i).watch) {
      if (finding.rule != "hands") continue;
      CHECK(finding.level == WatchLevel::info);
      CHECK(analysis.passages[0].lines[i].events.at(finding.index).event == finding.event);
      found.push_back(to_string(line.hand) + " bar " +
                      std::to_string(line.events.at(finding.event).bar) + ": " + finding.message);
    }
  }
  return found;
}

struct HandsCase {
  std::string_view what;
  std::string_view notation;
  std::vector<std::string> found;
};

TEST_CASE("where the hands are in each other's way", "[rules][watch]") {
  const std::vector<HandsCase> cases{
      {"apart", "RH: 1/4 C5:1 D:2\nLH: 1/4 C3:5 D:4", {}},
      {"one key together", "RH: 1/4 C4:1\nLH: 1/4 C4:1", {"right bar 1: Both hands are on C4."}},
      {"one key, held by the other hand",
       "RH: 1/2 C4:1\nLH: 1/4 r C4:1",
       {"left bar 1: Both hands are on C4."}},
      {"one key, one hand after the other", "RH: 1/4 C4:1 r\nLH: 1/4 r C4:1", {}},
      {"past the left hand",
       "RH: 1/4 C5:1 C3:1\nLH: 1/2 C4:1",
       {"right bar 1: The right hand reaches past the left to C3."}},
      {"past the right hand",
       "RH: 1/2 C4:1\nLH: 1/4 r C5:1",
       {"left bar 1: The left hand reaches past the right to C5."}},
      {"the left hand comes over from further away, both strike",
       "RH: 1/4 C4:1 E4:3\nLH: 1/4 C4:5 G5:2",
       {"right bar 1: Both hands are on C4.",
        "left bar 1: The left hand reaches past the right to G5."}},
      {"the right hand comes under from further away, both strike",
       "RH: 1/4 C5:1 G3:3\nLH: 1/4 C4:5 D4:4",
       {"right bar 1: The right hand reaches past the left to G3."}},
      {"between the keys of the other hand", "RH: 1/4 D4:1\nLH: 1/4 C4:5+E4:1", {}},
      {"the other hand has let go", "RH: 1/4 r C3:1\nLH: 1/4 C4:1 r", {}},
      {"once for a bar",
       "RH: 1/4 C3:1 C3:1 | C3:1 r\nLH: 1/2 C4:1 | C4:1",
       {"right bar 1: The right hand reaches past the left to C3.",
        "right bar 2: The right hand reaches past the left to C3."}},
      {"a slower voice",
       "RH: 1/4 r E4:1\nLH: 1/8 E4:1=1/2 C4:3 D:2 C:3",
       {"right bar 1: Both hands are on E4."}},
      {"no times", "RH: C4:1\nLH: C4:1", {}},
      {"one hand alone", "C4:1 C3:1", {}},
  };
  for (const HandsCase& each : cases) {
    INFO(each.what);
    CHECK(hands_findings(each.notation) == each.found);
  }
}

}  // namespace
}  // namespace fingerturn
