#include "catch.hpp"
#include "fingerturn/compare.hpp"
#include "fingerturn/fingering.hpp"
#include "write/compare/differing_bars.hpp"
#include "write/page/engraved.hpp"
#include "write/page/inks_meet.hpp"
#include "write/page/music_to_set.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

/// Nothing on a page covers what it must not cover, and nothing leaves the page: of the demos and,
/// where they are there, of real scores.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

/// What must be free of everything else: the ribbon's labels, its nodes and all words and numbers.
bool must_be_free(InkKind kind) {
  switch (kind) {
    case InkKind::node:
    case InkKind::turn:
    case InkKind::carry:
    case InkKind::bow:
    case InkKind::watch_flag:
    case InkKind::ribbon_name:
    case InkKind::bar_number:
    case InkKind::tuplet:
    case InkKind::ottava:
    case InkKind::ornament:
    case InkKind::breath:
    case InkKind::fermata:
    case InkKind::dynamic:
    case InkKind::hairpin:
    case InkKind::ending:
    case InkKind::words:
      return true;
    default:
      return false;
  }
}

/// What belongs together and is drawn over one another: the parts of a node or flag, a swing and
/// the nodes that it joins, the parts of a tuplet's bracket.
bool belong_together(const Ink& one, const Ink& other) {
  const auto is_of_ribbon = [](const Ink& ink) {
    return ink.kind == InkKind::ribbon_line || ink.kind == InkKind::swing;
  };
  if (is_of_ribbon(one) || is_of_ribbon(other)) return true;
  const double middle = (one.box.left + one.box.right) / 2;
  const bool same_middle = std::abs(middle - (other.box.left + other.box.right) / 2) < 0.05;
  const auto is_node = [](const Ink& ink) {
    return ink.kind == InkKind::node || ink.kind == InkKind::finger;
  };
  if (is_node(one) && is_node(other)) return same_middle;
  if (one.kind == InkKind::hairpin || other.kind == InkKind::hairpin) {
    // It goes on over bar lines.
    if (one.kind == InkKind::bar_line || other.kind == InkKind::bar_line) return true;
  }
  if (one.kind != other.kind) return false;
  switch (one.kind) {
    case InkKind::watch_flag:
    case InkKind::bow:
      return same_middle;
    case InkKind::tuplet:
    case InkKind::ottava:
    case InkKind::dynamic:
    case InkKind::hairpin:
    case InkKind::ending:
      return true;
    default:
      return false;
  }
}

using Counts = std::map<std::string, std::size_t>;

void count_in(const System& system, double width, Counts& counts) {
  for (std::size_t i = 0; i < system.inks.size(); ++i) {
    const Ink& ink = system.inks[i];
    if (leaves(ink, width, system.height)) ++counts[name_of(ink.kind) + " off the page"];
    if (!must_be_free(ink.kind)) continue;
    for (std::size_t k = 0; k < system.inks.size(); ++k) {
      const Ink& other = system.inks[k];
      if (k == i || (k < i && must_be_free(other.kind))) continue;
      if (belong_together(ink, other) || !inks_meet(ink, other)) continue;
      ++counts[name_of(ink.kind) + " on " + name_of(other.kind)];
    }
  }
}

/// Each kind of collision in a line, with how often it is there. `set` makes the systems of a
/// width.
template <typename Set>
std::string collisions_in(const Set& set) {
  Counts counts;
  for (const double width : {kSheetWidth, kNarrowWidth}) {
    for (const System& system : set(width)) count_in(system, width, counts);
  }
  std::string lines;
  for (const auto& [kind, count] : counts) lines += kind + ": " + std::to_string(count) + "\n";
  return lines;
}

}  // namespace

TEST_CASE("inks that lie over one another are found", "[page][collisions]") {
  const Ink beam = beam_ink({0, 0}, {10, 2}, 0.5);
  CHECK(inks_meet(beam, plate_ink(InkKind::node, {8, 1.5, 9, 3}, 0, InkStyle::plain)));
  CHECK_FALSE(inks_meet(beam, plate_ink(InkKind::node, {8, -1, 9, 1}, 0, InkStyle::plain)));
  const Ink bow = bow_ink(InkKind::bow, {0, 0}, {10, 0}, 2);
  CHECK(inks_meet(bow, plate_ink(InkKind::node, {4, 1, 6, 3}, 0, InkStyle::plain)));
  CHECK_FALSE(inks_meet(bow, plate_ink(InkKind::node, {0, 1.2, 1, 3}, 0, InkStyle::plain)));
  CHECK(leaves(bow, 9, 5));
  CHECK_FALSE(leaves(bow, 10, 5));
}

TEST_CASE("nothing covers the ribbon, the numbers and the words, and nothing leaves the page",
          "[page][collisions]") {
  for (const MusicToSet& piece : music_to_set()) {
    CAPTURE(piece.name);
    CHECK(collisions_in([&](double width) { return systems_of(piece.music, width); }) == "");
  }
}

TEST_CASE("nothing covers the ribbons of several fingerings", "[page][collisions]") {
  for (const MusicToSet& piece : music_to_set()) {
    CAPTURE(piece.name);
    const AnalysedScore bare("bare", with_suggestions(without_fingers(piece.music.written())));
    const std::vector<AnalysedScore> scores{piece.music, bare};
    const PairedScores paired = compare_scores(scores, nullptr);
    REQUIRE_FALSE(paired.problem);
    for (const Comparison& comparison : paired.comparisons) {
      const DifferingBars bars(comparison);
      const auto set = [&](double width) {
        return systems_of(bars.passage(), bars.hands(), width);
      };
      CHECK(collisions_in(set) == "");
    }
  }
}
