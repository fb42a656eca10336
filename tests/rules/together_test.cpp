#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"

#include <optional>
#include <string>

/// Both hands: how they turn together (docs/rules.md, 4.5), and the tempo for both (6.2). The
/// figures follow from the turns, counted by hand.
namespace fingerturn {
namespace {

PassageAnalysis analysis_of(const std::string& text, const AnalyseOptions& options = {}) {
  const Source source("test", text);
  const ReadResult result = read_notation(source);
  REQUIRE(render(source, result.diagnostics) == "");
  return analyse(result.score, options).passages.at(0);
}

TEST_CASE("five fingers in contrary motion mirror each other", "[rules][together]") {
  const auto found = analysis_of("RH: 1/8 C5:1 D:2 E:3 F:4 G:5\nLH: 1/8 C4:1 B3:2 A:3 G:4 F:5");
  REQUIRE(found.together);
  CHECK(found.together->onsets == 5);
  CHECK(found.together->contrary == 5);
  CHECK(found.together->parallel == 0);
  CHECK(found.together->kinds_differ.empty());
}

TEST_CASE("five fingers in parallel motion turn the same way", "[rules][together]") {
  const auto found = analysis_of("RH: 1/8 C5:1 D:2 E:3 F:4 G:5\nLH: 1/8 C3:5 D:4 E:3 F:2 G:1");
  REQUIRE(found.together);
  CHECK(found.together->onsets == 5);
  CHECK(found.together->parallel == 5);
  CHECK(found.together->contrary == 0);
}

TEST_CASE("where one hand is single and the other double is listed", "[rules][together]") {
  // Right: preparatory, single, double, single. Left: preparatory, single, single, single.
  const auto found = analysis_of("RH: 1/4 C5:1 D:2 | E:3 F:1\nLH: 1/4 C3:5 G2:1 | C:5 G:1");
  REQUIRE(found.together);
  REQUIRE(found.together->kinds_differ.size() == 1);
  CHECK(found.together->kinds_differ[0] ==
        KindsDiffer{2, 2, Rotation::double_rotation, Rotation::single_rotation});
}

TEST_CASE("only onsets that both hands share count, and grace notes share none",
          "[rules][together]") {
  const auto found = analysis_of("RH: 1/8 C5:1 D:2 ^E:3 E:4 F:5\nLH: 1/4 C3:5 1/8 E:3 r");
  REQUIRE(found.together);
  CHECK(found.together->onsets == 2);
}

TEST_CASE("level events have no side and do not count", "[rules][together]") {
  const auto found = analysis_of("RH: 1/4 C5:1+E:3+G:5 C6:1 D:2\nLH: 1/4 C3:5 C:5 D:4");
  REQUIRE(found.together);
  CHECK(found.together->onsets == 2);
}

TEST_CASE("one hand, or no note values, has nothing together", "[rules][together]") {
  CHECK_FALSE(analysis_of("1/4 C4:1 D:2").together);
  CHECK_FALSE(analysis_of("RH: C5:1 D:2\nLH: C3:5 D:4").together);
}

TEST_CASE("bars taken out are counted anew together", "[rules][together]") {
  const Source source("test",
                      "tempo: 120\nRH: 1/16 C5:1 D:2 | E:3 F:4 1/4 G:5\n"
                      "LH: 1/8 C3:5 | 1/8 E:3 1/4 F:1");
  const Score score = read_notation(source).score;
  const PassageAnalysis whole = analyse(score).passages.at(0);
  const AnalysedScore bars = only_bars(AnalysedScore("test", score), {2, 2});
  const PassageAnalysis& bar = bars[0].found();
  REQUIRE((whole.together && bar.together));
  CHECK(whole.together->onsets == 3);
  CHECK(bar.together->onsets == 2);
  CHECK(whole.full_swing_tempo == 75.0);
  CHECK(bar.lines[1].totals.full_swing_tempo == 150.0);
}

TEST_CASE("the tempo of full swings is that of the slower hand", "[rules][tempo]") {
  // Right: sixteenths doubled; left: eighths single but for the first.
  const auto found = analysis_of("RH: 1/16 G5:5 F:4 E:3 D:2\nLH: 1/8 C3:5 G2:1");
  CHECK(found.lines[0].totals.full_swing_tempo == 75.0);
  CHECK(found.lines[1].totals.full_swing_tempo == 300.0);
  CHECK(found.full_swing_tempo == 75.0);
}

TEST_CASE("sixteenths all single make full swings up to quarter = 150", "[rules][tempo]") {
  const auto found = analysis_of("1/16 C4:1 G3:5 C:1 G:5 C:1 G:5");
  CHECK(found.full_swing_tempo == 150.0);
  CHECK(found.lines[0].totals.full_swing_tempo == 150.0);
  CHECK_FALSE(found.lines[0].events[1].swing_rate);
}

TEST_CASE("a tempo that is asked for goes before the written ones", "[rules][tempo]") {
  const std::string text = "tempo: 60\n1/16 C4:1 G3:5 C:1 |\ntempo: 30\nG:5 C:1 G:5";
  const auto rates_of = [&](const AnalyseOptions& options) {
    std::string rates;
    const PassageAnalysis found = analysis_of(text, options);
    for (const EventAnalysis& entry : found.lines[0].events) {
      rates += entry.swing_rate ? std::to_string(*entry.swing_rate).substr(0, 3) + " " : "- ";
    }
    return rates;
  };
  CHECK(rates_of({}) == "- 4.0 4.0 4.0 2.0 2.0 ");
  CHECK(rates_of({.quarters_per_minute = 120}) == "- 8.0 8.0 8.0 8.0 8.0 ");
  CHECK(rates_of({.quarters_per_minute = 0}) == "- - - - - - ");
}

TEST_CASE("no tempo is told for what has no swings or no time", "[rules][tempo]") {
  CHECK_FALSE(analysis_of("C4:1 D:2").full_swing_tempo);
  CHECK_FALSE(analysis_of("1/4 C4:1+E:3+G:5 C4:1+E:3+G:5").full_swing_tempo);
  CHECK_FALSE(analysis_of("1/4 C4:1").full_swing_tempo);
}

}  // namespace
}  // namespace fingerturn
