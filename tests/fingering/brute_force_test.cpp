#include "catch.hpp"
#include "fingering/made_tasks.hpp"
#include "fingering/paths.hpp"
#include "rules/made_lines.hpp"
#include "rules/random_passage.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

/// The search finds what trying every fingering finds.
namespace fingerturn {
namespace {

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

std::vector<std::int64_t> difficulties(const std::vector<Path>& paths, std::size_t most) {
  std::vector<std::int64_t> sorted;
  sorted.reserve(paths.size());
  for (const Path& path : paths) sorted.push_back(path.difficulty);
  std::sort(sorted.begin(), sorted.end());
  sorted.resize(std::min(sorted.size(), most));
  return sorted;
}

constexpr std::size_t kCompared = 12;

/// The first few paths, each after the other.
std::vector<Path> first_paths(EasiestPaths& paths) {
  std::vector<Path> found;
  while (found.size() < kCompared) {
    Path path = paths.next(kCompared);
    if (path.choices.empty()) break;
    found.push_back(std::move(path));
  }
  return found;
}

bool all_different(const std::vector<Path>& paths) {
  for (auto path = paths.begin(); path != paths.end(); ++path) {
    const bool again = std::any_of(
        paths.begin(), path, [&](const Path& other) { return other.choices == path->choices; });
    if (again) return false;
  }
  return true;
}

/// The difficulties of paths in their order, as they were said and as they are added up anew.
void compare_difficulties(const LineTask& task, const std::vector<Path>& found,
                          const std::vector<Path>& all) {
  std::vector<std::int64_t> said;
  std::vector<std::int64_t> added;
  for (const Path& path : found) {
    said.push_back(path.difficulty);
    added.push_back(difficulty_of(task.costs, path.choices));
  }
  REQUIRE(said == added);
  REQUIRE(said == difficulties(all, kCompared));
}

/// Compares the first path, with all its choices, and the difficulties of the first few.
void compare(const Line& line) {
  INFO(notation_of(line));
  const LineTask task(line);
  if (task.grips.empty()) return;
  const std::vector<Path> all = every_path(task);
  const auto easiest = std::min_element(
      all.begin(), all.end(),
      [](const Path& left, const Path& right) { return left.difficulty < right.difficulty; });
  EasiestPaths paths(task.costs);
  REQUIRE(paths.first().choices == easiest->choices);
  REQUIRE(paths.first().difficulty == easiest->difficulty);
  const std::vector<Path> found = first_paths(paths);
  REQUIRE(all_different(found));
  compare_difficulties(task, found, all);
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
  EasiestPaths paths(task.costs);
  CHECK(paths.first().choices == std::vector<std::uint8_t>{0, 0, 0, 0});
  CHECK(paths.first().difficulty == 0);
  CHECK(task.choices.of(0)[0].strikes[0] == kThumb);
}

}  // namespace fingerturn
