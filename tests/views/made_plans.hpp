#pragma once

#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"
#include "rules/random_passage.hpp"

#include <cstddef>
#include <cstdint>
#include <string>

/// Music that is made to be practised, and plans of it.
namespace fingerturn {

inline Score score_from(const std::string& text) {
  const Source source("test", text);
  const ReadResult result = read_notation(source);
  REQUIRE(render(source, result.diagnostics) == "");
  return result.score;
}

inline AnalysedScore analysed_from(const std::string& text) {
  return AnalysedScore("test", score_from(text));
}

/// Nothing in a row, nothing passed: a bar that asks nothing.
inline constexpr const char* kEasy = " 1/4 C4:1 E:3 C:1 E:3 |";
/// Three doubles in a row.
inline constexpr const char* kRow = " 1/4 C4:1 D:2 E:3 F:4 G:5 |";
/// Six doubles in rows and a passing of the thumb.
inline constexpr const char* kScale = " 1/8 C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C5:5 |";

inline std::string easy(std::size_t bars) {
  std::string text;
  for (std::size_t i = 0; i < bars; ++i) text += kEasy;
  return text;
}

/// Random music in 1/16, in bars of a few notes, so that there is time and something to practise.
inline Score random_piece(Chance& chance) {
  Score score = random_score(chance, 60);
  for (Passage& passage : score.passages) {
    passage.tempos = {{1, {{1, 4}, static_cast<double>(chance.between(40, 200))}}};
    for (Line& line : passage.lines) {
      line.bar_lines.clear();
      for (std::size_t i = 0; i < line.events.size(); ++i) {
        Event& event = line.events[i];
        event.bar = static_cast<std::int32_t>(i / 8) + 1;
        event.grace = false;
        event.duration = Fraction{1, 16};
        event.onset = Fraction{static_cast<std::int64_t>(i), 16};
      }
    }
  }
  return score;
}

/// Calls `check` with plans of made music.
template <typename Check>
void for_plans(const Check& check) {
  const std::uint64_t seed = seed_of_this_run();
  INFO("repeat with " << kSeedVariable << "=" << seed);
  Chance chance(seed);
  for (int i = 0; i < 40; ++i) {
    const AnalysedScore analysed("random", random_piece(chance));
    check(analysed, plan_practice(analysed, {.top = 8}));
  }
  for (const char* name : {"B-flat major", "F# harmonic minor", "E major arpeggio"}) {
    const ScaleResult scale =
        handbook_scale(name, {.octaves = 3, .direction = ScaleDirection::up_and_down});
    const AnalysedScore analysed("scale", scale.score);
    check(analysed, plan_practice(analysed));
  }
}

}  // namespace fingerturn
