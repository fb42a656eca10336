#include "catch.hpp"
#include "write/compare/blocks.hpp"
#include "write/compare/table.hpp"

#include <algorithm>
#include <cstddef>
#include <string>

/// More fingerings than anybody has: what is written of them grows in proportion to them. With work
/// that grows with the square of their number these would run for many minutes.
using namespace fingerturn;

namespace {

constexpr std::size_t kMany = 200000;

std::size_t count_lines(const std::string& text) {
  return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

}  // namespace

TEST_CASE("comparison: as many ways to play as fingerings, and each twice") {
  Entry entry;
  for (std::size_t i = 0; i < 2 * kMany; ++i) {
    entry.played.push_back({Cell{std::to_string(i % kMany)}, Cell{"single"}, Cell{"left"}, Cell{}});
  }
  const std::vector<Group> groups = groups_of(entry);
  REQUIRE(groups.size() == kMany);
  CHECK(groups.front().labels == "A " + fingering_label(kMany));
  CHECK(groups.back().labels == fingering_label(kMany - 1) + ' ' + fingering_label(2 * kMany - 1));
  CHECK(groups.back().parts == &entry.played[kMany - 1]);
}

TEST_CASE("comparison: ways are the same where all but the mark of a suggestion is") {
  const Parts way{Cell{"1>2"}, Cell{"single", Emphasis::strong}, Cell{"left"}, Cell{}};
  Entry entry;
  entry.played.assign(6, way);
  entry.played[1][0].text = "1>2?";
  entry.played[2][0].text = "1>3";
  entry.played[3][1].emphasis = Emphasis::faint;
  entry.played[4][2].text = "right";
  entry.played[5][3].text = "over";
  const std::vector<Group> groups = groups_of(entry);
  REQUIRE(groups.size() == 5);
  CHECK(groups[0].labels == "A B");
  CHECK(groups[4].labels == "F");
}

TEST_CASE("comparison: a table that goes on in as many as there are fingerings") {
  constexpr int kRoomForOne = 20;
  HandComparison hand;
  hand.results.resize(kMany / 2);
  TextStyle style;
  style.columns = kRoomForOne;
  const std::string text = results_table(hand, style);
  const std::string one = text.substr(0, text.find("\n\n") + 1);
  CHECK(one.starts_with("\nright hand"));
  CHECK(count_lines(text) == count_lines(one) * (kMany / 2));
}
