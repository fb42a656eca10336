#include "catch.hpp"
#include "fingering/detours.hpp"
#include "fingering/made_tasks.hpp"
#include "fingering/paths.hpp"
#include "rules/made_lines.hpp"
#include "rules/random_passage.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <utility>
#include <vector>

/// The search finds what trying every fingering finds.
namespace fingerturn {
namespace {

constexpr std::size_t kCompared = 12;

/// Every path of a line, in the order of its first choice that differs.
std::vector<Path> every_path(const LineTask& task) {
  std::vector<Path> paths;
  std::vector<std::uint8_t> choices(task.grips.size());
  for (;;) {
    paths.push_back({difficulty_of(task.costs, choices), choices});
    std::size_t at = choices.size();
    while (at > 0 && ++choices[at - 1] == task.choices.of(at - 1).size()) choices[--at] = 0;
    if (at == 0) return paths;
  }
}

/// The least difficulty of all paths that have a choice at a grip.
std::int64_t least_with(const std::vector<Path>& all, std::size_t grip, std::size_t choice) {
  std::int64_t least = std::numeric_limits<std::int64_t>::max();
  for (const Path& path : all) {
    if (path.choices[grip] == choice) least = std::min(least, path.difficulty);
  }
  return least;
}

/// For each other choice at each grip: how much harder the easiest path with it is, and the path.
void compare_detours(const LineTask& task, const Path& easiest, const std::vector<Path>& all) {
  const Remaining remaining(task.costs);
  const Detours detours(task.costs, remaining, easiest);
  std::vector<Detour> every;
  for (std::size_t grip = 0; grip < task.grips.size(); ++grip) {
    const std::vector<Detour> here = detours.at(grip);
    REQUIRE(here.size() + 1 == task.choices.of(grip).size());
    for (const Detour& detour : here) {
      REQUIRE(detour.harder + easiest.difficulty == least_with(all, grip, detour.choice));
      const Stretch stretch = detours.stretch(detour);
      std::vector<std::uint8_t> choices = easiest.choices;
      std::ranges::copy(stretch.choices,
                        choices.begin() + static_cast<std::ptrdiff_t>(stretch.begin));
      REQUIRE(choices[grip] == detour.choice);
      REQUIRE(stretch.choices.front() != easiest.choices[stretch.begin]);
      REQUIRE(stretch.choices.back() != easiest.choices[stretch.end() - 1]);
      REQUIRE(difficulty_of(task.costs, choices) == detour.harder + easiest.difficulty);
      every.push_back(detour);
    }
  }
  std::sort(every.begin(), every.end());
  every.resize(std::min<std::size_t>(every.size(), kCompared));
  REQUIRE(detours.easiest(kCompared) == every);
}

/// Compares the easiest path, with all its choices, and the detours from it.
void compare(const Line& line) {
  INFO(notation_of(line));
  const LineTask task(line);
  if (task.grips.empty()) return;
  const std::vector<Path> all = every_path(task);
  const auto easiest = std::min_element(
      all.begin(), all.end(),
      [](const Path& left, const Path& right) { return left.difficulty < right.difficulty; });
  const Path found = easiest_path(task.costs, Remaining(task.costs));
  REQUIRE(found.choices == easiest->choices);
  REQUIRE(found.difficulty == easiest->difficulty);
  compare_detours(task, found, all);
}

Line single_notes(Chance& chance, Hand hand, int notes, int percent_given) {
  Line line{hand, {}, {}};
  int key = chance.between(48, 76);
  for (int i = 0; i < notes; ++i) {
    const int finger = chance.percent(percent_given) ? chance.between(1, 5) : kNoFinger;
    line.events.emplace_back().notes.push_back(note_on(key, finger));
    key += chance.between(-7, 7);
  }
  return line;
}

}  // namespace

TEST_CASE("fingering: single notes up to seven, equal to trying everything", "[fingering]") {
  Chance chance(seed_of_this_run());
  for (int notes = 1; notes <= 7; ++notes) {
    const int passages = notes == 7 ? 6 : 40;
    for (int i = 0; i < passages; ++i) {
      for (const Hand hand : {Hand::right, Hand::left}) {
        compare(single_notes(chance, hand, notes, i % 2 == 0 ? 0 : 40));
      }
    }
  }
}

TEST_CASE("fingering: lines by chance, equal to trying everything", "[fingering]") {
  Chance chance(seed_of_this_run());
  for (int i = 0; i < 150; ++i) {
    for (const Hand hand : {Hand::right, Hand::left}) {
      Line line = random_line(chance, hand, static_cast<std::size_t>(chance.between(1, 5)));
      compare(line);
      if (line.events.size() <= 4) compare(without_fingers(std::move(line)));
    }
  }
}

TEST_CASE("fingering: of equally easy ones the lower choice where they first differ",
          "[fingering]") {
  constexpr Model kNothing{};
  const LineTask task(line_written("C4 E4 G4+B4 C5"), kNothing);
  const Path path = easiest_path(task.costs, Remaining(task.costs));
  CHECK(path.choices == std::vector<std::uint8_t>{0, 0, 0, 0});
  CHECK(path.difficulty == 0);
  CHECK(task.choices.of(0)[0].strikes[0] == kThumb);
}

}  // namespace fingerturn
