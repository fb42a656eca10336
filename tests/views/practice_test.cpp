#include "fingerturn/practice.hpp"

#include "catch.hpp"
#include "views/made_plans.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

/// Plans of what to practise, worked out by hand from what docs/practice.md states: our convention
/// and common practice.
namespace fingerturn {
namespace {

const PracticeStep* step_of(const PlannedPlace& place, PracticeStepKind kind) {
  const auto found = std::ranges::find(place.steps, kind, &PracticeStep::kind);
  return found == place.steps.end() ? nullptr : &*found;
}

std::vector<BarRange> bars_of(const PracticePlan& plan) {
  std::vector<BarRange> bars;
  for (const PlannedPlace& place : plan.places) bars.push_back(place.stretch.bars);
  return bars;
}

}  // namespace

TEST_CASE("practice: the same music is named once", "[practice]") {
  const PracticePlan plan =
      plan_practice(analysed_from("RH:" + easy(3) + kScale + easy(3) + kScale + easy(9)));
  REQUIRE(plan.places.size() == 1);
  CHECK(plan.places[0].stretch.bars == BarRange{4, 4});
  CHECK(plan.places[0].stretch.again == std::vector{BarRange{8, 8}});
}

TEST_CASE("practice: what comes again is parted from what stands around it", "[practice]") {
  const PracticePlan plan = plan_practice(
      analysed_from("RH:" + easy(3) + kScale + easy(3) + kRow + kScale + kRow + easy(20)));
  REQUIRE(plan.places.size() == 2);
  CHECK(plan.places[0].stretch.bars == BarRange{4, 4});
  CHECK(plan.places[0].stretch.again == std::vector{BarRange{9, 9}});
  CHECK(plan.places[1].stretch.bars == BarRange{8, 8});
  CHECK(plan.places[1].stretch.again == std::vector{BarRange{10, 10}});
}

TEST_CASE("practice: many bars that ask are parted", "[practice]") {
  std::string text = "RH:";
  for (int i = 0; i < 6; ++i)
    text += " 1/8 C4:1 D:2 E:3 F:4 G:5 F:4 E:3 " + std::string(i % 2 == 1 ? "D:2 |" : "r |");
  const PracticePlan plan = plan_practice(analysed_from(text + easy(30)));
  // Six bars evenly: three and three; bars that go on are not parted where the next but one begins
  // anew.
  std::vector<BarRange> bars = bars_of(plan);
  std::ranges::sort(bars, {}, &BarRange::first);
  REQUIRE(bars.size() == 2);
  CHECK(bars[0] == BarRange{1, 3});
  CHECK(bars[1] == BarRange{4, 6});
}

TEST_CASE("practice: cells of doubles, passings, carries and leaps", "[practice]") {
  const AnalysedScore analysed = analysed_from("RH:" + easy(3) + kScale + easy(4));
  const PracticePlan plan = plan_practice(analysed);
  REQUIRE(plan.places.size() == 1);
  const PracticeStep* cells = step_of(plan.places[0], PracticeStepKind::cells);
  REQUIRE(cells != nullptr);
  std::vector<std::pair<std::string, std::size_t>> found;
  for (const PracticeMusic& cell : cells->music) found.emplace_back(cell.words, cell.events.size());
  // E is double, F passes under, and A, B and C are double; so is C, after the thumb of bar 3.
  CHECK(std::ranges::count(found, std::pair{std::string("thumb under"), std::size_t{3}}) == 1);
  CHECK(std::ranges::count(found, std::pair{std::string("double"), std::size_t{2}}) >= 4);

  const PracticePlan leaps =
      plan_practice(analysed_from("RH:" + easy(3) + " 1/4 C4:1 C:1 C6:1 C:1 C4:1 |" + easy(3)));
  REQUIRE(leaps.places.size() == 1);
  const PracticeStep* leap = step_of(leaps.places[0], PracticeStepKind::cells);
  REQUIRE(leap != nullptr);
  CHECK(std::ranges::any_of(leap->music, [](const PracticeMusic& cell) {
    return cell.words.starts_with("leap: first without its last note") && cell.events.size() == 2;
  }));
}

TEST_CASE("practice: hands together where one is single and the other double", "[practice]") {
  const std::string still = " 1/4 C3:1 A2:3 C:1 A:3 |";
  const PracticePlan plan =
      plan_practice(analysed_from("meter: 4/4\nRH:" + easy(2) + " 1/4 C4:1 D:2 E:3 F:4 |" +
                                  easy(2) + "\nLH:" + still + still + still + still + still));
  REQUIRE(plan.places.size() == 1);
  const PracticeStep* together = step_of(plan.places[0], PracticeStepKind::hands_together);
  REQUIRE(together != nullptr);
  REQUIRE(together->music.size() == 1);
  CHECK(together->music[0].words == "bar 3 (beats 3 and 4)");
  CHECK(together->music[0].music.lines.size() == 2);
}

TEST_CASE("practice: a place is joined to what is around it, and to a near one", "[practice]") {
  const auto joining = [](std::size_t between) {
    const PracticePlan plan =
        plan_practice(analysed_from("RH:" + easy(3) + kScale + easy(between) + kRow + easy(10)));
    REQUIRE(plan.places.size() == 2);
    const PracticeStep* step = step_of(plan.places[1], PracticeStepKind::joining);
    REQUIRE(step != nullptr);
    std::vector<std::string> words;
    for (const PracticeMusic& music : step->music) words.push_back(music.words);
    return words;
  };
  CHECK(joining(8) == std::vector<std::string>{"bars 12 to 14", "bars 4 to 13, with place 1"});
  CHECK(joining(9) == std::vector<std::string>{"bars 13 to 15"});
}

TEST_CASE("practice: rhythms keep the notes and their number", "[practice]") {
  const AnalysedScore analysed = analysed_from("RH:" + easy(3) + kScale + easy(4));
  const PracticePlan plan = plan_practice(analysed);
  const PracticeStep* rhythms = step_of(plan.places.at(0), PracticeStepKind::rhythms);
  REQUIRE(rhythms != nullptr);
  REQUIRE(rhythms->music.size() == 2 + 3 + 4);
  CHECK(rhythms->music[0].words == "long-short");
  const std::vector<Event>& long_short = rhythms->music[0].music.lines.at(0).events;
  REQUIRE(long_short.size() == 8);
  CHECK(long_short[0].duration == Fraction{3, 16});
  CHECK(long_short[1].duration == Fraction{1, 16});
  const std::vector<Event>& short_long = rhythms->music[1].music.lines.at(0).events;
  CHECK(short_long[0].duration == Fraction{1, 16});
  CHECK(short_long[1].duration == Fraction{3, 16});
  // Groups of four from the second note: it, two more, and a long one.
  CHECK(rhythms->music[6].words == "groups of 4 from the second note");
  const std::vector<Event>& fours = rhythms->music[6].music.lines.at(0).events;
  std::vector<std::size_t> long_notes;
  for (std::size_t i = 0; i < fours.size(); ++i) {
    if (fours[i].duration == Fraction{3, 8}) long_notes.push_back(i);
  }
  CHECK(long_notes == std::vector<std::size_t>{0, 4});
}

TEST_CASE("practice: minutes are shared whole, none too few", "[practice]") {
  const std::string text = "RH:" + easy(3) + kScale + easy(3) + kRow + easy(3) +
                           " 1/4 C5:1 D:2 E:3 F:4 G:5 A:5 |" + easy(14);
  for (int minutes = 1; minutes <= 130; ++minutes) {
    const PracticePlan plan = plan_practice(analysed_from(text), {.minutes = minutes});
    REQUIRE(plan.minutes == minutes);
    int sum = plan.rest_minutes;
    for (const PlannedPlace& place : plan.places) {
      REQUIRE(place.minutes);
      CHECK((*place.minutes >= 3 || plan.places.size() == 1));
      sum += *place.minutes;
    }
    CHECK(sum == minutes);
    CHECK(plan.rest_minutes == (minutes - 1) / 22 * 2);
    CHECK(plan.places.size() + plan.left_out.size() == 3);
    for (std::size_t i = 1; i < plan.places.size(); ++i) {
      CHECK(*plan.places[i].minutes <= *plan.places[i - 1].minutes + 1);
    }
  }
}

TEST_CASE("practice: a plan goes on from the last one", "[practice]") {
  const std::string text = "tempo: 120\nRH:" + easy(3) + kScale + easy(8);
  const AnalysedScore analysed = analysed_from(text);
  const PracticePlan first = plan_practice(analysed);
  const PracticeMemoryResult read =
      read_practice(Source("plan.json", write_practice_json(analysed, first)));
  REQUIRE(read.problem == "");
  REQUIRE(read.memory.places.size() == first.places.size());

  PracticeMemory memory = read.memory;
  PracticePlan next = plan_practice(analysed, {.since = &memory});
  REQUIRE(next.places[0].progress);
  CHECK_FALSE(next.places[0].progress->is_new);
  CHECK(next.places[0].now == 0);
  // Each time it is done it goes on by one step, to the last, and is then reached.
  const std::size_t steps = next.places[0].ladder.size();
  for (std::size_t step = 1; step < steps; ++step) {
    memory = read_practice(Source("plan.json", write_practice_json(analysed, next))).memory;
    memory.places[0].done = true;
    next = plan_practice(analysed, {.since = &memory});
    CHECK(next.places[0].now == step);
    CHECK_FALSE(next.places[0].progress->is_reached);
  }
  memory = read_practice(Source("plan.json", write_practice_json(analysed, next))).memory;
  memory.places[0].done = true;
  next = plan_practice(analysed, {.since = &memory});
  CHECK(next.places[0].progress->is_reached);

  // Other fingers, and other music.
  const std::string other =
      "tempo: 120\nRH:" + easy(3) + " 1/8 C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C5:3 |" + easy(8);
  const PracticePlan changed = plan_practice(analysed_from(other), {.since = &read.memory});
  REQUIRE(changed.places.at(0).progress);
  CHECK(changed.places[0].progress->changed_fingers == std::vector<std::string>{"C5:3 (was 5)"});
  const PracticePlan elsewhere =
      plan_practice(analysed_from("RH:" + easy(5) + kScale + easy(8)), {.since = &read.memory});
  CHECK(elsewhere.places.at(0).progress->is_new);
  CHECK(elsewhere.settled == std::vector<std::string>{"bar 4"});
}

TEST_CASE("practice: a place for which there is no room is not settled", "[practice]") {
  const AnalysedScore analysed =
      analysed_from("RH:" + easy(3) + kScale + easy(4) + kRow + easy(12));
  const PracticePlan both = plan_practice(analysed);
  REQUIRE(both.places.size() == 2);
  const PracticeMemory memory =
      read_practice(Source("plan.json", write_practice_json(analysed, both))).memory;
  const PracticePlan one = plan_practice(analysed, {.top = 1, .since = &memory});
  REQUIRE(one.left_out.size() == 1);
  CHECK(one.settled.empty());
  // In another passage it is another place.
  PracticeMemory elsewhere = memory;
  elsewhere.places[1].passage = 3;
  CHECK(plan_practice(analysed, {.top = 1, .since = &elsewhere}).settled ==
        std::vector<std::string>{"bar 9"});
}

TEST_CASE("practice: nothing stands out, nothing is planned", "[practice]") {
  const AnalysedScore analysed = analysed_from("RH:" + easy(4));
  const PracticePlan plan = plan_practice(analysed, {.minutes = 30});
  CHECK(plan.places.empty());
  CHECK(write_practice_text(analysed, plan, {}).find("No bar stands out") != std::string::npos);
  CHECK(write_practice_passages(analysed, plan).empty());
  CHECK(write_practice_musicxml(analysed, plan).empty());
  const AnalysedScore nothing("empty", Score{});
  CHECK(plan_practice(nothing).places.empty());
  CHECK(write_practice_text(nothing, PracticePlan{}, {}).find("no medical advice") !=
        std::string::npos);
}

}  // namespace fingerturn
