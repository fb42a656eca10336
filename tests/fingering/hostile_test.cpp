#include "catch.hpp"
#include "fingering/made_tasks.hpp"
#include "fingerturn/fingering.hpp"
#include "rules/made_lines.hpp"

#include <cstddef>

/// Lines that nobody plays.
namespace fingerturn {
namespace {

constexpr std::size_t kManyEvents = 100000;

Event chord_of(int lowest, int step, int notes) {
  Event event;
  for (int i = 0; i < notes; ++i) event.notes.push_back(note_on(lowest + i * step, kNoFinger));
  return event;
}

}  // namespace

TEST_CASE("fingering: a chord that no hand takes stays as it was", "[fingering]") {
  Line line{Hand::right, {chord_of(21, 1, 80), chord_of(60, 3, 1), chord_of(40, 2, 7)}, {}};
  const Line complete = completed(line);
  CHECK(complete.events[0] == line.events[0]);
  CHECK(complete.events[1].notes[0].finger.has_value());
  CHECK(complete.events[2] == line.events[2]);
}

TEST_CASE("fingering: six notes where the thumb takes two", "[fingering]") {
  CHECK(fingers_of(completed(line_written("C4+D4+F4+A4+C5+E5"))) == "112345");
  CHECK(fingers_of(completed(line_written("hand: left\nC4+E4+G4+B4+D5+E5"))) == "543211");
  CHECK(fingers_of(completed(line_written("C4+F4+G4+A4+B4+C5"))) == "......");
}

TEST_CASE("fingering: given fingers that no rule foresees stay", "[fingering]") {
  CHECK(fingers_of(completed(line_written("C4:5+E4:1"))) == "51");
  CHECK(fingers_of(completed(line_written("C4:3+E4:3+G4:3"))) == "333");
  const Line crossed = completed(line_written("C4:4+E4+G4:2"));
  CHECK(crossed.events[0].notes[0].finger == Finger{4});
  CHECK(crossed.events[0].notes[1].suggested);
  CHECK(crossed.events[0].notes[2].finger == Finger{2});
}

TEST_CASE("fingering: empty scores, rests alone", "[fingering]") {
  CHECK(with_suggestions({}).passages.empty());
  const Line rests = line_written("1/4 r r C4 r");
  CHECK(fingers_of(completed(rests)).size() == 1);
  CHECK(completed(Line{}).events.empty());
}

TEST_CASE("fingering: a hundred thousand notes and chords", "[fingering]") {
  Line line{Hand::left, {}, {}};
  for (std::size_t i = 0; i < kManyEvents; ++i) {
    const int key = 30 + static_cast<int>(scrambled(7, i) % 50);
    line.events.push_back(chord_of(key, 3, i % 3 == 0 ? 3 : 1));
  }
  const Line complete = completed(line);
  std::size_t missing = 0;
  for (const Event& event : complete.events) {
    for (const Note& note : event.notes) missing += note.finger ? 0U : 1U;
  }
  CHECK(missing == 0);
}

}  // namespace fingerturn
