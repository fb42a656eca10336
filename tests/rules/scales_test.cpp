#include "catch.hpp"
#include "fingerturn/analysis.hpp"
#include "rules/made_lines.hpp"
#include "scales/made_scales.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>

/// The scales of seven notes with the fingers of the handbooks, up and down over two octaves. What
/// the arm does in them is our model.
namespace fingerturn {
namespace {

Line up_and_down(std::string_view name, Hand hand) {
  return scale_line(name, hand, 2, ScaleDirection::up_and_down);
}

template <typename Check>
void for_scales(const Check& check) {
  std::size_t scales = 0;
  for (const std::string& name : handbook_scale_names()) {
    if (!name.ends_with(" major") && !name.ends_with(" minor")) continue;
    ++scales;
    for (const Hand hand : {Hand::right, Hand::left}) {
      const Line line = up_and_down(name, hand);
      INFO(name << ", " << to_string(hand) << " hand\n" << notation_of(line));
      check(analyse(score_of({line})).passages.at(0).lines.at(0));
    }
  }
  CHECK(scales == 60);
}

TEST_CASE("in scales the arm carries the hand where the thumb passes, else at most one key",
          "[rules][arm][scales]") {
  // The five-finger places of a black key and a white one lie half a key apart, and those of the
  // augmented second of a harmonic minor a whole one.
  constexpr double kLeastPassing = 1;
  constexpr double kMostElse = 1;
  for_scales([=](const LineAnalysis& analysis) {
    std::size_t passings = 0;
    for (const EventAnalysis& entry : analysis.events) {
      const bool passes =
          entry.crossing == Crossing::thumb_under || entry.crossing == Crossing::finger_over_thumb;
      INFO("event " << entry.index << ", carry " << entry.carry.value());
      const double carried = std::abs(entry.carry.value());
      CHECK((passes ? carried >= kLeastPassing : carried <= kMostElse));
      passings += passes ? 1 : 0;
    }
    CHECK(passings >= 6);
    CHECK(analysis.totals.crossings == passings);
  });
}

TEST_CASE("a scale makes one arc up and one down", "[rules][arm][scales]") {
  for_scales([](const LineAnalysis& analysis) { CHECK(analysis.totals.arcs == 2); });
}

TEST_CASE("scales with the thumb on white keys need no in and out", "[rules][arm][scales]") {
  for_scales([](const LineAnalysis& analysis) {
    CHECK(analysis.totals.moves_in == 0);
    CHECK(analysis.totals.moves_out == 0);
  });
}

TEST_CASE("no handbook scale or arpeggio draws a caution or a strain", "[rules][watch][scales]") {
  std::size_t lines = 0;
  for (const std::string& name : handbook_scale_names()) {
    for (const Hand hand : {Hand::right, Hand::left}) {
      for (int octaves = 1; octaves <= 4; ++octaves) {
        for (const ScaleDirection direction :
             {ScaleDirection::up, ScaleDirection::down, ScaleDirection::up_and_down}) {
          const Line line = scale_line(name, hand, octaves, direction);
          ++lines;
          const Analysis analysis = analyse(score_of({line}));
          for (const Finding& finding : analysis.passages.at(0).lines.at(0).watch) {
            INFO(name << ", " << to_string(hand) << " hand: " << finding.message);
            CHECK(finding.level == WatchLevel::info);
          }
        }
      }
    }
  }
  CHECK(lines == handbook_scale_names().size() * 2 * 4 * 3);
}

TEST_CASE("a thumb on a black key moves the hand in", "[rules][arm][scales]") {
  // The fingers of C major on E flat major: the thumb comes to stand on two black keys.
  Line clumsy = up_and_down("Eb major", Hand::right);
  const Line fingered = up_and_down("C major", Hand::right);
  for (std::size_t i = 0; i < clumsy.events.size(); ++i) {
    clumsy.events[i].notes[0].finger = fingered.events[i].notes[0].finger;
  }
  const LineAnalysis analysis = analyse(score_of({clumsy})).passages.at(0).lines.at(0);
  CHECK(analysis.totals.moves_in > 0);
  const std::ptrdiff_t on_black = std::count_if(
      analysis.events.begin(), analysis.events.end(),
      [](const EventAnalysis& entry) { return entry.in_out == InOut::in && entry.depth >= 1; });
  CHECK(on_black > 0);
}

}  // namespace
}  // namespace fingerturn
