#include "fingering/repeats.hpp"

#include "catch.hpp"
#include "fingering/made_tasks.hpp"
#include "fingerturn/fingering.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// Groups of notes that come again, and their fingers.
namespace fingerturn {
namespace {

std::vector<GroupAgain> groups_in(std::string_view notation) {
  const Line line = line_written(notation);
  return groups_again(line, grips_of(line, SpanTable(std::nullopt)));
}

std::string found(std::string_view notation) {
  return fingers_of(completed(line_written(notation)));
}

std::vector<std::string> taken_over_in(std::string_view notation) {
  std::vector<std::string> words;
  for (const UsualFingers& usual : completed(line_written(notation)).usual) {
    words.push_back(usual.words);
  }
  return words;
}

}  // namespace

TEST_CASE("a group comes again on its keys, on others, and in a row", "[fingering][groups]") {
  const std::vector<GroupAgain> same = groups_in("1/8 C4 E D F | C E D F");
  REQUIRE(same.size() == 1);
  CHECK(same[0].begin == 4);
  CHECK(same[0].from == 0);
  CHECK(same[0].length == 4);
  CHECK(groups_in("1/8 C4 E D F | D F E G").size() == 1);
  CHECK(groups_in("1/8 C4 E D F | D F E G | E G F A").size() == 2);
  CHECK(groups_in("1/8 C4+E D F E | A4 | C4+E D F E").size() == 1);
}

TEST_CASE("what differs in steps, colours, rhythm or rests is no such group",
          "[fingering][groups]") {
  CHECK(groups_in("1/8 C4 E D F | C E D G").empty());
  CHECK(groups_in("1/8 C4 E D F | D F# E G").empty());
  CHECK(groups_in("1/8 C4 E D F | 1/16 C E D F").empty());
  CHECK(groups_in("1/8 C4 E D F | C r E D F").empty());
  CHECK(groups_in("1/8 C4 E D | C E D").empty());  // too short
  CHECK(groups_in("1/8 C4 E D F | C+E E D F").empty());
}

TEST_CASE("a finger that is given once speaks for all places of its group", "[fingering][groups]") {
  // As four notes of one key are fingered 4-3-2-1 in Czerny, op. 821 no. 16 (typed from the score).
  CHECK(found("1/16 D5:4 D:3 D:2 D:1 G:4 G:3 G:2 G:1 | B B B B D6 D D D") ==
        "4 3 2 1 4 3 2 1 4 3 2 1 4 3 2 1");
  // And for the places before it.
  CHECK(found("1/8 C4 E D F | C:2 E:4 D:3 F:5") == "2 4 3 5 2 4 3 5");
  CHECK(taken_over_in("1/8 C4 E D F | C:2 E:4 D:3 F:5") ==
        std::vector<std::string>(4, "as given in bar 2"));
}

TEST_CASE("fingers that are given differently speak for no other place", "[fingering][groups]") {
  const std::string_view twice = "1/8 C4:1 E D F | C:2 E D F | C E D F";
  CHECK(taken_over_in(twice).empty());
}

TEST_CASE("the same group on the same keys gets the same fingers", "[fingering][groups]") {
  const std::string group = " 1/8 ^G5 ^A5 B5 F#5+A5 E5+G5 F#5+A5 |";
  // What leads to it differs.
  const Line line = completed(line_written("meter: 2/4\n1/4 C6:4 1/8 A5:2 C6:4 |" + group + group +
                                           " 1/4 E4:1 1/8 F4:2 G4:3 |" + group));
  std::vector<std::string> groups;
  const std::string fingers = fingers_of(line);
  const std::string first = fingers.substr(6, 14);
  CHECK(fingers.find(first, 20) == 21);
  CHECK(fingers.rfind(first) == fingers.size() - first.size());
}

TEST_CASE("a long row of one group is found in one go", "[fingering][groups]") {
  std::string notes = "1/16 ";
  for (int i = 0; i < 2000; ++i) notes += "C4 E G E ";
  const std::vector<GroupAgain> groups = groups_in(notes);
  std::size_t covered = 0;
  for (const GroupAgain& group : groups) {
    CHECK(group.from + group.length <= group.begin);
    covered += group.length;
  }
  CHECK(covered > 7900);
}

}  // namespace fingerturn
