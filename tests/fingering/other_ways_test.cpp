
#include "catch.hpp"
#include "fingering/made_tasks.hpp"
#include "fingerturn/fingering.hpp"
#include "rules/made_lines.hpp"
#include "rules/random_passage.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <vector>

/// Alternatives differ where it matters, and say where.
namespace fingerturn {
namespace {

std::vector<LineFingering> alternatives(const Line& line, std::size_t most) {
  FingeringOptions options;
  options.most = most;
  Passage passage;
  passage.lines = {line};
  return suggest(Score{{passage}}, options).at(0).lines.at(0);
}

/// The fingers of each event that is struck.
std::vector<std::vector<Finger>> struck(const Line& line) {
  std::vector<std::vector<Finger>> all;
  for (const Event& event : line.events) {
    if (event.struck_count() > 0) all.push_back(struck_fingers(event));
  }
  return all;
}

/// Where, in a line of single notes in the right hand, the thumb passes or is passed.
std::set<std::size_t> passings(const Line& line) {
  std::set<std::size_t> found;
  for (std::size_t at = 1; at < line.events.size(); ++at) {
    const Event& before = line.events[at - 1];
    const Event& now = line.events[at];
    if (before.notes.size() != 1 || now.notes.size() != 1) continue;
    const int travel = midi_number(now.notes[0].pitch) - midi_number(before.notes[0].pitch);
    const Finger leaves = *before.notes[0].finger;
    const Finger strikes = *now.notes[0].finger;
    if (leaves != 1 && strikes == 1 && travel > 0) found.insert(at);
    if (leaves == 1 && strikes != 1 && travel < 0) found.insert(at);
  }
  return found;
}

std::size_t events_that_differ(const Line& one, const Line& other) {
  const auto left = struck(one);
  const auto right = struck(other);
  std::size_t count = 0;
  for (std::size_t at = 0; at < left.size(); ++at) {
    if (left[at] != right.at(at)) ++count;
  }
  return count;
}

std::vector<std::string> told_of(std::string_view notation, std::size_t most) {
  std::vector<std::string> told;
  for (const LineFingering& found : alternatives(line_written(notation), most)) {
    told.push_back(found.apart);
  }
  return told;
}

}  // namespace

TEST_CASE("alternatives: no two of them are nearly the same", "[fingering][alternatives]") {
  Chance chance(seed_of_this_run());
  std::size_t compared = 0;
  for (int i = 0; i < 40; ++i) {
    Line line{Hand::right, {}, {}};
    int key = 64;
    for (int n = 0; n < 25; ++n) {
      line.events.emplace_back().notes.push_back(note_on(key, kNoFinger));
      key += chance.between(-6, 6);
    }
    INFO(notation_of(line));
    std::vector<Line> complete;
    for (const LineFingering& found : alternatives(line, 8)) {
      complete.push_back(with_fingering(line, found));
      REQUIRE(found.apart.empty() == (complete.size() == 1));
    }
    for (std::size_t a = 0; a < complete.size(); ++a) {
      for (std::size_t b = a + 1; b < complete.size(); ++b) {
        const std::size_t differing = events_that_differ(complete[a], complete[b]);
        REQUIRE(differing >= 1);
        if (differing == 1) REQUIRE(passings(complete[a]) != passings(complete[b]));
        ++compared;
      }
    }
  }
  CHECK(compared > 400);
}

TEST_CASE("alternatives: each says what sets it apart from the first",
          "[fingering][alternatives]") {
  struct Case {
    std::string_view notation;
    std::string_view told;
  };
  const std::vector<Case> cases{
      {"1/8 C4 D E F G A B C D E F G A B C", "thumb on B4 instead of C5, bar 1"},
      {"1/8 C4 D E F G A B C D E F G A B C", "thumb passes on A4 too, bar 1"},
      {"1/8 C4 D E F G A B C | D E F G A B C", "thumb on G5 instead of F5, bar 2"},
      {"1/4 C4", "1 instead of 3 on C4, bar 1"},
  };
  for (const Case& wanted : cases) {
    INFO(wanted.notation);
    const std::vector<std::string> told = told_of(wanted.notation, 8);
    CHECK(std::ranges::count(told, wanted.told) == 1);
    CHECK(told.front().empty());
  }
}

TEST_CASE("alternatives: there is nothing to tell where all is given",
          "[fingering][alternatives]") {
  CHECK(told_of("1/8 C4:1 D:2 E:3", 5) == std::vector<std::string>{""});
}

TEST_CASE("alternatives: a long line has them at several places", "[fingering][alternatives]") {
  std::string notation = "1/8";
  for (int bar = 0; bar < 20; ++bar) {
    notation += bar % 3 == 0   ? " C4 E G C5 B A G F |"
                : bar % 3 == 1 ? " E4 A C5 E D C B A |"
                               : " D4 F# A D5 C B A F# |";
  }
  const Line line = line_written(notation);
  const Line first = completed(line);
  std::set<std::int32_t> bars;
  for (const LineFingering& found : alternatives(line, 6)) {
    const Line other = with_fingering(line, found);
    for (std::size_t at = 0; at < line.events.size(); ++at) {
      if (other.events[at] == first.events[at]) continue;
      bars.insert(line.events[at].bar);
      break;
    }
  }
  CHECK(bars.size() >= 3);
}

}  // namespace fingerturn
