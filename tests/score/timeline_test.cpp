#include "score/timeline.hpp"

#include "catch.hpp"
#include "score/building.hpp"

#include <cstdint>
#include <limits>
#include <string>
#include <vector>

using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

constexpr Fraction kEighth{1, 8};

Event note_in(std::int32_t bar, std::optional<Fraction> duration) {
  return event_of(bar, duration, {note_of("C4", 1)});
}

Event grace_in(std::int32_t bar) {
  Event event = note_in(bar, Fraction{});
  event.grace = true;
  return event;
}

std::string onsets_of(const Line& line) {
  std::string text;
  for (const Event& event : line.events) {
    text += (event.onset ? to_string(*event.onset) : "?") + " ";
  }
  return text;
}

/// The onsets of each line after they were set.
std::vector<std::string> onsets(std::vector<std::vector<Event>> lines) {
  Passage passage;
  for (auto& events : lines) passage.lines.push_back(line_of(Hand::right, std::move(events)));
  REQUIRE(set_onsets(passage));
  std::vector<std::string> texts;
  for (const Line& line : passage.lines) texts.push_back(onsets_of(line));
  return texts;
}

using Texts = std::vector<std::string>;

}  // namespace

TEST_CASE("each event begins where the one before it ends") {
  CHECK(onsets({{note_in(1, kQuarter), note_in(1, kEighth), rest_of(1, kEighth),
                 note_in(2, kQuarter)}}) == Texts{"0 1/4 3/8 1/2 "});
}

TEST_CASE("a grace note takes no time") {
  CHECK(onsets({{grace_in(1), grace_in(1), note_in(1, kQuarter), grace_in(1),
                 note_in(1, kQuarter)}}) == Texts{"0 0 0 1/4 1/4 "});
}

TEST_CASE("bars of the same number stand together") {
  SECTION("the longer hand fills the bar") {
    CHECK(onsets({{note_in(1, kQuarter), note_in(2, kQuarter)},
                  {note_in(1, kEighth), note_in(2, kEighth)}}) == Texts{"0 1/4 ", "0 1/4 "});
  }
  SECTION("a hand that enters later") {
    CHECK(onsets({{note_in(1, kQuarter), note_in(2, kQuarter), note_in(3, kQuarter)},
                  {note_in(3, kEighth), note_in(3, kEighth)}}) == Texts{"0 1/4 1/2 ", "1/2 5/8 "});
  }
  SECTION("bars that take turns") {
    CHECK(onsets({{note_in(1, kQuarter), note_in(3, kQuarter)}, {note_in(2, kEighth)}}) ==
          Texts{"0 3/8 ", "1/4 "});
  }
}

TEST_CASE("bar numbers that are left out take no time") {
  CHECK(onsets({{note_in(4, kQuarter), note_in(9, kQuarter)}}) == Texts{"0 1/4 "});
}

TEST_CASE("an unknown value leaves the times after it unknown") {
  CHECK(onsets({{note_in(1, std::nullopt), note_in(1, kQuarter), note_in(2, kQuarter)}}) ==
        Texts{"? ? ? "});
  CHECK(onsets({{note_in(1, kQuarter), note_in(1, std::nullopt), note_in(1, kQuarter)}}) ==
        Texts{"0 ? ? "});
}

TEST_CASE("one hand that knows its values keeps the bars in time") {
  CHECK(onsets({{note_in(1, std::nullopt), note_in(2, kQuarter)},
                {note_in(1, kQuarter), note_in(2, kQuarter)}}) == Texts{"? 1/4 ", "0 1/4 "});
}

TEST_CASE("triplets against eighths meet exactly") {
  const Fraction triplet{1, 12};
  CHECK(onsets({{note_in(1, kEighth), note_in(1, kEighth), note_in(1, kQuarter)},
                {note_in(1, triplet), note_in(1, triplet), note_in(1, triplet),
                 note_in(1, kQuarter)}}) == Texts{"0 1/8 1/4 ", "0 1/12 1/6 1/4 "});
}

TEST_CASE("old onsets are forgotten") {
  Event event = note_in(1, std::nullopt);
  event.onset = Fraction{7, 1};
  CHECK(onsets({{event}}) == Texts{"? "});
}

TEST_CASE("sums beyond exact arithmetic are told and leave the times unknown") {
  std::vector<Event> events;
  // The least common denominator of these primes does not fit into 64 bits.
  for (const std::int64_t prime : {999983, 999979, 999961, 999959, 999953}) {
    events.push_back(note_in(1, Fraction{1, prime}));
  }
  Passage passage = passage_of({line_of(Hand::right, events)});
  CHECK_FALSE(set_onsets(passage));
  const std::string text = onsets_of(passage.lines[0]);
  CHECK(text.starts_with("0 1/999983 "));
  CHECK(text.ends_with("? "));
}

TEST_CASE("a passage without lines has no onsets to set") {
  Passage passage;
  CHECK(set_onsets(passage));
}

TEST_CASE("changes of meter move to the first bar that holds an event") {
  Passage passage = passage_of({line_of(Hand::right, {note_in(2, kQuarter), note_in(4, kQuarter)}),
                                line_of(Hand::left, {note_in(7, kQuarter)})});
  passage.meters = {{0, {2, 4}}, {3, {3, 4}}, {5, {4, 4}}, {6, {5, 4}}, {8, {6, 4}}};
  settle_changes(passage);
  const std::vector<FromBar<Meter>> expected{{2, {2, 4}}, {4, {3, 4}}, {7, {5, 4}}};
  CHECK(passage.meters == expected);
}

TEST_CASE("changes of tempo move with the bars, too") {
  Passage passage = passage_of({line_of(Hand::right, {note_in(1, kQuarter)})});
  passage.tempos = {{0, {{1, 4}, 60}}, {1, {{1, 4}, 72}}, {2, {{1, 4}, 80}}};
  settle_changes(passage);
  CHECK(passage.tempos == std::vector<FromBar<Tempo>>{{1, {{1, 4}, 72}}});
  passage.lines.clear();
  settle_changes(passage);
  CHECK(passage.tempos.empty());
}

TEST_CASE("the meter of a bar is the last one before it") {
  Passage passage;
  CHECK(meter_in_bar(passage, 1) == nullptr);
  passage.meters = {{2, {3, 4}}, {5, {6, 8}}};
  CHECK(meter_in_bar(passage, 1) == nullptr);
  CHECK(*meter_in_bar(passage, 2) == Meter{3, 4});
  CHECK(*meter_in_bar(passage, 4) == Meter{3, 4});
  CHECK(*meter_in_bar(passage, 5) == Meter{6, 8});
  CHECK(*meter_in_bar(passage, 99) == Meter{6, 8});
}

TEST_CASE("bars begin where the number of the bar changes") {
  const Line line = line_of(Hand::right, {rest_of(0, kQuarter), note_in(1, kQuarter), grace_in(1),
                                          note_in(2, kEighth), note_in(1, kEighth)});
  CHECK(bar_beginnings(line) == std::vector<std::size_t>{0, 1, 3, 4});
  CHECK(bar_beginnings(Line{}).empty());
}

TEST_CASE("beats are counted from 1 in the notes that the meter counts") {
  const Meter four{4, 4};
  CHECK(beat_at(four, {}, {}) == Fraction{1, 1});
  CHECK(beat_at(four, {}, {3, 8}) == Fraction{5, 2});
  CHECK(beat_at(four, {7, 1}, {29, 4}) == Fraction{2, 1});
  CHECK(beat_at({6, 8}, {}, {3, 8}) == Fraction{4, 1});
  CHECK(beat_at({2, 2}, {}, {1, 12}) == Fraction{7, 6});
  const std::int64_t most = std::numeric_limits<std::int64_t>::max();
  CHECK(beat_at(four, {}, {most, 1}) == std::nullopt);
  CHECK(beat_at(four, {most, 1}, {-most, 1}) == std::nullopt);
}
