#include "catch.hpp"
#include "fingering/made_tasks.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/scale.hpp"

#include <optional>
#include <string>
#include <string_view>

/// What everybody knows to be harder is told to be (common practice, no source).
namespace fingerturn {
namespace {

double difficulty_told(const Line& line) {
  const Line complete = completed(line);
  return difficulty_of(complete).value();
}

double difficulty_told(std::string_view notation) {
  return difficulty_told(line_written(notation));
}

/// Each note for half the time.
Line twice_as_fast(Line line) {
  constexpr Fraction kHalf{1, 2};
  for (Event& event : line.events) {
    event.onset = product(*event.onset, kHalf).value();
    event.duration = product(*event.duration, kHalf).value();
  }
  return line;
}

/// A scale whose every note has the one so many steps above it struck with it.
Line in_pairs(const Line& scale, std::size_t steps) {
  Line pairs = scale;
  pairs.events.resize(scale.events.size() - steps);
  for (std::size_t at = 0; at < pairs.events.size(); ++at) {
    pairs.events[at].notes.push_back(scale.events[at + steps].notes.front());
  }
  return without_fingers(pairs);
}

Line scale_of(const std::string& name, Hand hand) {
  ScaleOptions options;
  options.hand = hand;
  options.octaves = 3;
  return handbook_scale(name, options).score.passages.at(0).lines.at(0);
}

}  // namespace

TEST_CASE("difficulty: a scale is harder faster, in double thirds, and in octaves", "[fingering]") {
  for (const std::string& name : handbook_scale_names()) {
    if (!name.ends_with(" major") && !name.ends_with(" harmonic minor")) continue;
    for (const Hand hand : {Hand::right, Hand::left}) {
      INFO(name << ", " << to_string(hand));
      const Line scale = scale_of(name, hand);
      const double plain = difficulty_told(scale);
      CHECK(difficulty_told(twice_as_fast(scale)) > 1.5 * plain);
      CHECK(difficulty_told(in_pairs(scale, 2)) > plain);
      CHECK(difficulty_told(in_pairs(scale, 7)) > plain);
    }
  }
}

TEST_CASE("difficulty: it is of a stroke, whatever the length", "[fingering]") {
  const auto bars = [](int count) {
    std::string notation = "1/8";
    for (int i = 0; i < count; ++i) notation += " C4:1 D4 E4 F4 G4:5 F4 E4 D4 |";
    return difficulty_told(notation + " C4");
  };
  CHECK(bars(40) == Approx(bars(10)).epsilon(0.02));
}

TEST_CASE("difficulty: a chord struck again asks for its strokes alone", "[fingering]") {
  // Three keys in a quarter note's time, and for the first what is difficult in it.
  const double again = difficulty_told(
      "1/4 C4:1+E4:3+G4:5 C4:1+E4:3+G4:5 C4:1+E4:3+G4:5 C4:1+E4:3+G4:5 C4:1+E4:3+G4:5");
  const double moved = difficulty_told(
      "1/4 C4:1+E4:3+G4:5 D4:1+F4:3+A4:5 C4:1+E4:3+G4:5 D4:1+F4:3+A4:5 C4:1+E4:3+G4:5");
  CHECK(again < 4);
  CHECK(moved > again);
}

TEST_CASE("difficulty: one stroke asks for no more than a leap", "[fingering]") {
  CHECK(difficulty_told("1/4 C2:1 C7:1 C2:1 C7:1") < 1 + 6 + 1e-9);
}

}  // namespace fingerturn
