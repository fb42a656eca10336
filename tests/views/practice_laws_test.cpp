#include "catch.hpp"
#include "fingerturn/practice.hpp"
#include "rules/made_lines.hpp"
#include "views/made_plans.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <set>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

/// Laws of the plan of what to practise, over made music. What a plan is made of is our convention
/// and common practice, as docs/practice.md says; no book is compared with.
namespace fingerturn {
namespace {

/// What must be the same where the plan is the same, whatever the keys.
std::vector<std::string> outline_of(const PracticePlan& plan) {
  std::vector<std::string> outline;
  for (const PlannedPlace& place : plan.places) {
    outline.push_back(to_string(place.stretch.bars) + " " +
                      std::to_string(place.stretch.asks.points));
    for (const PracticeStep& step : place.steps) {
      outline.push_back(std::to_string(static_cast<int>(step.kind)));
      for (const PracticeMusic& music : step.music) outline.push_back(music.words);
      for (const TempoStep& tempo : step.tempos) {
        outline.push_back(std::to_string(tempo.quarters_per_minute));
      }
    }
  }
  return outline;
}

bool same_turn(const EventAnalysis& one, const EventAnalysis& other) {
  return std::tie(one.rotation, one.side, one.prepare, one.crossing) ==
         std::tie(other.rotation, other.side, other.prepare, other.crossing);
}

}  // namespace

TEST_CASE("practice: every note of a cell stands in the piece, with its finger", "[practice]") {
  std::size_t cells = 0;
  for_plans([&](const AnalysedScore& analysed, const PracticePlan& plan) {
    for (const PlannedPlace& place : plan.places) {
      for (const PracticeStep& step : place.steps) {
        for (const PracticeMusic& music : step.music) {
          if (music.events.empty()) continue;
          const Line& cut = music.music.lines.at(0);
          const Line& line = *line_of_hand(analysed.written().passages[place.passage], cut.hand);
          REQUIRE(cut.events.size() == music.events.size());
          for (std::size_t i = 0; i < cut.events.size(); ++i) {
            const Event& event = line.events[music.events[i]];
            REQUIRE(cut.events[i].notes.size() == event.notes.size());
            for (std::size_t n = 0; n < event.notes.size(); ++n) {
              CHECK(cut.events[i].notes[n].pitch == event.notes[n].pitch);
              if (event.notes[n].finger) {
                CHECK(cut.events[i].notes[n].finger == event.notes[n].finger);
              }
            }
          }
          ++cells;
        }
      }
    }
  });
  CHECK(cells > 200);
}

TEST_CASE("practice: what is cut out turns as in the piece, or says how it differs", "[practice]") {
  std::size_t same = 0;
  for_plans([&](const AnalysedScore& analysed, const PracticePlan& plan) {
    for (const PlannedPlace& place : plan.places) {
      for (const PracticeStep& step : place.steps) {
        for (const PracticeMusic& music : step.music) {
          if (music.events.empty()) continue;
          const AnalysedScore alone("cell", Score{{music.music}});
          const AnalysedLine cell = alone[0][0];
          const AnalysedLine piece = *analysed[place.passage].of_hand(cell.hand());
          for (const EventAnalysis& here : cell.found().events) {
            const std::size_t place_in_piece = music.events[here.event];
            const auto there =
                std::ranges::find(piece.found().events, place_in_piece, &EventAnalysis::event);
            const bool told = std::ranges::any_of(music.changed, [&](const ChangedTurn& changed) {
              return changed.event_in_score == place_in_piece;
            });
            const bool is_same = there != piece.found().events.end() && same_turn(*there, here);
            same += is_same ? 1 : 0;
            CHECK((is_same || told));
          }
        }
      }
    }
  });
  CHECK(same > 200);
}

TEST_CASE("practice: a ladder rises from full swings to the goal", "[practice]") {
  std::size_t ladders = 0;
  for_plans([&](const AnalysedScore& /*analysed*/, const PracticePlan& plan) {
    for (const PlannedPlace& place : plan.places) {
      if (!place.full_swing_tempo) {
        CHECK(place.ladder.empty());
        continue;
      }
      REQUIRE(place.ladder.size() >= 5);
      CHECK(std::ranges::is_sorted(place.ladder, std::less<>{}, &TempoStep::quarters_per_minute));
      CHECK(place.ladder.front().quarters_per_minute <= *place.full_swing_tempo);
      CHECK(place.ladder.front().swing_size == 1);
      const double last = place.ladder.back().quarters_per_minute;
      CHECK(last == place.goal.value_or(*place.full_swing_tempo));
      for (const TempoStep& tempo : place.ladder) {
        // Rule 6.3: the share of a full swing that there is time for.
        const double size = std::min(1.0, *place.full_swing_tempo / tempo.quarters_per_minute);
        CHECK(tempo.swing_size == Approx(size));
        CHECK(tempo.swing_size >= place.ladder.back().swing_size);
      }
      ++ladders;
    }
  });
  CHECK(ladders > 20);
}

TEST_CASE("practice: places do not overlap and have four bars at most", "[practice]") {
  for_plans([](const AnalysedScore& /*analysed*/, const PracticePlan& plan) {
    std::set<std::pair<std::size_t, std::int32_t>> taken;
    for (const std::vector<PlannedPlace>* places : {&plan.places, &plan.left_out}) {
      for (const PlannedPlace& place : *places) {
        std::vector<BarRange> all = place.stretch.again;
        all.push_back(place.stretch.bars);
        for (const BarRange& bars : all) {
          CHECK(bars.last - bars.first < 4);
          for (std::int32_t bar = bars.first; bar <= bars.last; ++bar) {
            CHECK(taken.emplace(place.passage, bar).second);
          }
        }
      }
    }
  });
}

TEST_CASE("practice: the bars that --places names are those that are worked at", "[practice]") {
  for_plans([](const AnalysedScore& analysed, const PracticePlan& plan) {
    std::set<std::pair<std::size_t, std::int32_t>> asking;
    const AnalysedScore shown = only_places(analysed);
    for (std::size_t p = 0; p < shown.size(); ++p) {
      for (const PracticePlace& place : *shown[p].found().places) {
        for (const BarDemand& demand : place.asking) asking.emplace(p, demand.bar);
      }
    }
    for (const std::vector<PlannedPlace>* places : {&plan.places, &plan.left_out}) {
      for (const PlannedPlace& place : *places) {
        std::vector<BarRange> all = place.stretch.again;
        all.push_back(place.stretch.bars);
        for (const BarRange& bars : all) {
          for (std::int32_t bar = bars.first; bar <= bars.last; ++bar) {
            CHECK(asking.erase({place.passage, bar}) == 1);
          }
        }
      }
    }
    CHECK(asking.empty());
  });
}

TEST_CASE("practice: more doubles never lower a place", "[practice]") {
  const auto rank_of_bar = [](const std::string& text, std::int32_t bar) {
    const PracticePlan plan = plan_practice(analysed_from(text), {.top = 100});
    for (std::size_t i = 0; i < plan.places.size(); ++i) {
      if (plan.places[i].stretch.bars.contains(bar)) return i;
    }
    return plan.places.size();
  };
  const std::string doubles = " D5:2 C:1 D:2 E:3 F:4 G:5";
  std::string more;
  std::size_t rank = 100;
  for (int times = 0; times < 4; ++times) {
    const std::string text = "RH:" + easy(3) + " 1/4 C4:1 D:2 E:3 F:4" + more + " |" + easy(3) +
                             kScale + easy(3) + " 1/4 C4:1 D:2 E:3 F:4 G:5 |" + easy(8);
    const std::size_t now = rank_of_bar(text, 4);
    CHECK(now <= rank);
    rank = now;
    more += doubles;
  }
  CHECK(rank == 0);
}

TEST_CASE("practice: an octave higher the plan is the same", "[practice]") {
  const std::string music = "tempo: 90\nRH:" + easy(3) + kScale + easy(2) + kRow + easy(4);
  Score score = score_from(music);
  const std::vector<std::string> low = outline_of(plan_practice(AnalysedScore("a", score)));
  REQUIRE(low.size() > 10);
  for (Event& event : score.passages[0].lines[0].events) {
    for (Note& note : event.notes) ++note.pitch.octave;
  }
  CHECK(outline_of(plan_practice(AnalysedScore("a", score))) == low);
}

TEST_CASE("practice: the mirror image in the other hand has the same plan", "[practice]") {
  const std::uint64_t seed = seed_of_this_run();
  INFO("repeat with " << kSeedVariable << "=" << seed);
  Chance chance(seed);
  for (int i = 0; i < 30; ++i) {
    Passage passage = random_piece(chance).passages.at(0);
    passage.lines.resize(1);
    Passage image = passage;
    image.lines[0] = mirror_image(passage.lines[0]);
    CHECK(outline_of(plan_practice(AnalysedScore("a", Score{{passage}}))) ==
          outline_of(plan_practice(AnalysedScore("a", Score{{image}}))));
  }
}

TEST_CASE("practice: the same input gives the same bytes", "[practice]") {
  for_plans([](const AnalysedScore& analysed, const PracticePlan& plan) {
    const PracticePlan again = plan_practice(analysed, {.top = 8});
    if (plan.places.size() != again.places.size()) return;  // a scale was asked for with five
    CHECK(write_practice_json(analysed, plan) == write_practice_json(analysed, again));
  });
}

TEST_CASE("practice: what it writes as passages is read without a word", "[practice]") {
  for_plans([](const AnalysedScore& analysed, const PracticePlan& plan) {
    const std::string text = write_practice_passages(analysed, plan);
    if (text.empty()) {
      CHECK(plan.places.empty());
      return;
    }
    const Source source("plan.passage", text);
    const ReadResult result = read_notation(source);
    CHECK(result.ok());
    std::size_t music = 0;
    for (const PlannedPlace& place : plan.places) {
      for (const PracticeStep& step : place.steps) music += step.music.size();
    }
    CHECK(result.score.passages.size() == music);
  });
}

}  // namespace fingerturn
