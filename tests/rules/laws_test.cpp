#include "catch.hpp"
#include "fingerturn/analysed.hpp"
#include "fingerturn/rule.hpp"
#include "rules/made_lines.hpp"
#include "rules/random_passage.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// What must hold of every passage, whatever its fingers.
namespace fingerturn {
namespace {

constexpr int kPassages = 200;
constexpr std::size_t kEvents = 80;

std::string number_of(std::optional<double> number) {
  return number ? std::to_string(*number + 0.0) : "none";
}

/// Everything about an event, so that two can be compared and shown.
std::string all_of(const EventAnalysis& entry) {
  const std::string side = entry.side ? std::string(name_of(*entry.side)) : "no side";
  const std::string prepare = entry.prepare ? std::string(name_of(*entry.prepare)) : "none";
  const std::string swings = entry.swings ? std::to_string(*entry.swings) : "unknown";
  return "event " + std::to_string(entry.event) + ", number " + std::to_string(entry.index) +
         ", gesture " + std::to_string(entry.gesture) + ": " +
         std::string(name_of(entry.rotation)) + ", " + side + ", prepare " + prepare + ", swings " +
         swings + ", crossing " + std::string(name_of(entry.crossing)) + ", rule " +
         std::string(entry.rule) + ", " + std::string(name_of(entry.basis)) + ", " +
         reason_of(entry, Hand::right) + ", carry " + number_of(entry.carry) + ", depth " +
         number_of(entry.depth) + ", " +
         (entry.in_out ? std::string(name_of(*entry.in_out)) : "stays") + ", arc " +
         std::to_string(entry.arc) + ", rate " + number_of(entry.swing_rate) + ", full to " +
         number_of(entry.full_swing_tempo);
}

std::vector<std::string> all_of(const std::vector<EventAnalysis>& entries) {
  std::vector<std::string> words;
  for (const EventAnalysis& entry : entries) words.push_back(all_of(entry));
  return words;
}

LineAnalysis analysis_of(const Line& line) {
  return analyse(score_of({line})).passages.at(0).lines.at(0);
}

/// Calls `check` with many lines of both hands.
template <typename Check>
void for_lines_by_chance(const Check& check) {
  for_random_lines(kPassages, kEvents, check);
}

std::optional<Direction> other_way(std::optional<Direction> direction) {
  if (!direction) return std::nullopt;
  return *direction == Direction::left ? Direction::right : Direction::left;
}

/// The sentence as the other hand would read it.
std::string with_left_and_right_exchanged(const std::string& text) {
  std::string exchanged;
  for (std::size_t at = 0; at < text.size();) {
    if (text.compare(at, 5, "right") == 0) {
      exchanged += "left";
      at += 5;
    } else if (text.compare(at, 4, "left") == 0) {
      exchanged += "right";
      at += 4;
    } else {
      exchanged += text[at++];
    }
  }
  return exchanged;
}

EventAnalysis in_the_other_hand(EventAnalysis entry) {
  entry.prepare = other_way(entry.prepare);
  if (entry.carry) entry.carry = 0 - *entry.carry;
  return entry;
}

/// Rule, level and place of every finding of a line; of a chord in the order of their names, since
/// its pairs are looked at from the lowest key in both hands.
std::vector<std::string> places_watched(const Line& line) {
  std::vector<std::string> places;
  for (const Finding& finding : analysis_of(line).watch) {
    places.push_back(std::to_string(finding.event) + " " + std::string(finding.rule) + " " +
                     std::string(name_of(finding.level)));
  }
  std::sort(places.begin(), places.end());
  return places;
}

TEST_CASE("the mirror image is watched in the same places", "[rules][laws]") {
  std::size_t found = 0;
  for_lines_by_chance([&](const Line& line) {
    const std::vector<std::string> places = places_watched(line);
    REQUIRE(places_watched(mirror_image(line)) == places);
    found += places.size();
  });
  CHECK(found > 0);
}

TEST_CASE("every finding has a place, a rule with a source, and a sentence", "[rules][laws]") {
  for_lines_by_chance([](const Line& line) {
    const LineAnalysis analysis = analysis_of(line);
    std::size_t last = 0;
    for (const Finding& finding : analysis.watch) {
      REQUIRE(finding.index < analysis.events.size());
      REQUIRE(analysis.events[finding.index].event == finding.event);
      REQUIRE(finding.index >= last);
      last = finding.index;
      REQUIRE(find_rule(finding.rule) != nullptr);
      REQUIRE_FALSE(find_rule(finding.rule)->sources.empty());
      REQUIRE(finding.message.ends_with('.'));
    }
  });
}

TEST_CASE("a passage and its mirror image in the other hand turn alike, left and right exchanged",
          "[rules][laws]") {
  for_lines_by_chance([](const Line& line) {
    const Line image = mirror_image(line);
    std::vector<EventAnalysis> expected = analysis_of(line).events;
    std::transform(expected.begin(), expected.end(), expected.begin(), in_the_other_hand);
    REQUIRE(all_of(analysis_of(image).events) == all_of(expected));
    for (const EventAnalysis& entry : expected) {
      REQUIRE(reason_of(entry, image.hand) ==
              with_left_and_right_exchanged(reason_of(entry, line.hand)));
    }
  });
}

TEST_CASE("the mirror image of a mirror image is the passage", "[rules][laws]") {
  for_lines_by_chance([](const Line& line) {
    const Line again = mirror_image(mirror_image(line));
    REQUIRE(again.hand == line.hand);
    REQUIRE(all_of(analysis_of(again).events) == all_of(analysis_of(line).events));
  });
}

TEST_CASE("the same side is the other direction in the other hand", "[rules][laws]") {
  for (const Side side : {Side::toward_fifth, Side::toward_thumb}) {
    CHECK(other_way(direction_of(Hand::right, side)) == direction_of(Hand::left, side));
  }
  CHECK(direction_of(Hand::right, Side::toward_fifth) == Direction::right);
}

TEST_CASE("an octave higher or lower nothing changes", "[rules][laws]") {
  for_lines_by_chance([](const Line& line) {
    for (const int octaves : {-1, 1}) {
      Line shifted = line;
      for (Event& event : shifted.events) {
        for (Note& note : event.notes) {
          note.pitch.octave = static_cast<std::int8_t>(note.pitch.octave + octaves);
        }
      }
      REQUIRE(all_of(analysis_of(shifted).events) == all_of(analysis_of(line).events));
    }
  });
}

TEST_CASE("the same passage gives the same analysis each time", "[rules][laws]") {
  for_lines_by_chance([](const Line& line) {
    REQUIRE(all_of(analysis_of(line).events) == all_of(analysis_of(line).events));
  });
}

TEST_CASE("a passage after a long rest changes nothing before it", "[rules][laws]") {
  constexpr int kBarsOfRest = 8;
  std::optional<Line> before;
  for_lines_by_chance([&](Line line) {
    if (before) {
      const std::vector<std::string> alone = all_of(analysis_of(*before).events);
      Line joined = *before;
      for (int bar = 1; bar <= kBarsOfRest; ++bar) {
        Event rest;
        rest.bar = before->events.back().bar + bar;
        joined.events.push_back(rest);
      }
      for (Event event : line.events) {
        event.bar += joined.events.back().bar;
        joined.events.push_back(std::move(event));
      }
      std::vector<std::string> now = all_of(analysis_of(joined).events);
      REQUIRE(now.size() == alone.size() + analysis_of(line).events.size());
      now.resize(alone.size());
      REQUIRE(now == alone);
    }
    before = std::move(line);
  });
}

Totals counted(const Line& line, const std::vector<EventAnalysis>& entries) {
  const auto count = [&](Rotation rotation) {
    return static_cast<std::size_t>(std::count_if(
        entries.begin(), entries.end(),
        [rotation](const EventAnalysis& entry) { return entry.rotation == rotation; }));
  };
  Totals totals;
  totals.events = entries.size();
  for (const EventAnalysis& entry : entries) {
    bool complete = true;
    for (const Note& note : line.events[entry.event].notes) complete &= note.held || note.finger;
    if (complete) ++totals.fingered;
  }
  totals.preparatory = count(Rotation::preparatory);
  totals.single_rotations = count(Rotation::single_rotation);
  totals.double_rotations = count(Rotation::double_rotation);
  totals.level_events = count(Rotation::level);
  totals.undetermined = count(Rotation::undetermined);
  totals.swings = 2 * totals.preparatory + totals.single_rotations + 2 * totals.double_rotations;
  for (const EventAnalysis& entry : entries) {
    const double carry = entry.carry.value_or(0);
    totals.carried += carry < 0 ? -carry : carry;
    totals.largest_carry = std::max({totals.largest_carry, carry, -carry});
    if (entry.in_out == InOut::in) ++totals.moves_in;
    if (entry.in_out == InOut::out) ++totals.moves_out;
  }
  for (std::size_t at = 0; at < entries.size(); ++at) {
    if (at == 0 || entries[at].arc != entries[at - 1].arc) ++totals.arcs;
  }
  for (std::size_t first = 0; first < entries.size(); ++first) {
    std::size_t last = first;
    while (last < entries.size() && entries[last].rotation == Rotation::double_rotation) ++last;
    totals.longest_double_run = std::max(totals.longest_double_run, last - first);
    if (entries[first].crossing != Crossing::none) ++totals.crossings;
  }
  return totals;
}

TEST_CASE("the totals are what a second count gives", "[rules][laws]") {
  for_lines_by_chance([](const Line& line) {
    const LineAnalysis analysis = analysis_of(line);
    const bool same = analysis.totals == counted(line, analysis.events);
    REQUIRE(same);
  });
}

TEST_CASE("bars taken out of an analysis keep their events, and are counted anew",
          "[rules][laws]") {
  for_lines_by_chance([](const Line& line) {
    const Score score = score_of({line});
    const BarRange bars{line.events[kEvents / 4].bar, line.events[kEvents / 2].bar};
    const Analysis whole = analyse(score);
    std::vector<EventAnalysis> expected;
    for (const EventAnalysis& entry : whole.passages[0].lines[0].events) {
      if (bars.contains(line.events[entry.event].bar)) expected.push_back(entry);
    }
    const AnalysedScore analysed = only_bars(AnalysedScore("bars", score), bars);
    const LineAnalysis& cut = analysed[0][0].found();
    REQUIRE(all_of(cut.events) == all_of(expected));
    const bool same = cut.totals == counted(line, expected);
    REQUIRE(same);
  });
}

TEST_CASE("every swing comes from the side opposite to the one that is played", "[rules][laws]") {
  std::size_t prepared = 0;
  for_lines_by_chance([&](const Line& line) {
    for (const EventAnalysis& entry : analysis_of(line).events) {
      const bool two_swings = entry.swings == 2;
      REQUIRE(entry.prepare.has_value() == (two_swings && entry.side.has_value()));
      if (!entry.prepare) continue;
      REQUIRE(entry.prepare == other_way(direction_of(line.hand, *entry.side)));
      ++prepared;
    }
  });
  CHECK(prepared > 0);
}

TEST_CASE("a single changes the side and a double keeps it", "[rules][laws]") {
  std::size_t singles = 0;
  std::size_t doubles = 0;
  for_lines_by_chance([&](const Line& line) {
    const std::vector<EventAnalysis> events = analysis_of(line).events;
    REQUIRE(events.front().rotation != Rotation::single_rotation);
    REQUIRE(events.front().rotation != Rotation::double_rotation);
    for (std::size_t at = 1; at < events.size(); ++at) {
      const bool single = events[at].rotation == Rotation::single_rotation;
      const bool twice = events[at].rotation == Rotation::double_rotation;
      if (!single && !twice) continue;
      REQUIRE(events[at].gesture == events[at - 1].gesture);
      // A silent change in between turns the forearm (2.7).
      if (events[at].reason.changed) continue;
      REQUIRE((events[at].side == events[at - 1].side) == twice);
      if (single) REQUIRE((events[at].side && events[at - 1].side));
      ++(single ? singles : doubles);
    }
  });
  CHECK(singles > 0);
  CHECK(doubles > 0);
}

TEST_CASE("a gesture opens with a preparatory, level or undetermined event, and nowhere else",
          "[rules][laws]") {
  for_lines_by_chance([](const Line& line) {
    const std::vector<EventAnalysis> events = analysis_of(line).events;
    for (std::size_t at = 0; at < events.size(); ++at) {
      const bool opens = at == 0 || events[at].gesture != events[at - 1].gesture;
      if (at > 0) REQUIRE(events[at].gesture <= events[at - 1].gesture + 1);
      if (events[at].rotation == Rotation::preparatory) REQUIRE(opens);
      if (events[at].rotation == Rotation::level) REQUIRE(opens);
      if (opens) REQUIRE(events[at].crossing == Crossing::none);
    }
  });
}

}  // namespace
}  // namespace fingerturn
