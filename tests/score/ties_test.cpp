#include "score/ties.hpp"

#include "catch.hpp"
#include "score/building.hpp"
#include "score/score_text.hpp"

#include <string>
#include <vector>

using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

/// A line of events without values in one bar; an empty event is a rest.
Line line_of_chords(std::vector<std::vector<Note>> chords) {
  std::vector<Event> events;
  std::uint32_t place = 0;
  for (auto& notes : chords) {
    for (Note& note : notes) note.span = {place, place + 1};
    events.push_back(event_of(1, std::nullopt, std::move(notes)));
    ++place;
  }
  return line_of(Hand::right, std::move(events));
}

/// The notes as "C4~ (C4) r", after the ties are resolved, and the events whose ties lead nowhere.
std::string resolved(std::vector<std::vector<Note>> chords) {
  Line line = line_of_chords(std::move(chords));
  const std::vector<Span> to_nothing = resolve_ties(line);
  std::string text;
  for (const Event& event : line.events) {
    std::string notes = event.is_rest() ? "r" : "";
    for (const Note& note : event.notes) {
      const std::string pitch = to_string(note.pitch);
      notes += (notes.empty() ? "" : "+") + (note.held ? "(" + pitch + ")" : pitch);
    }
    text += notes + " ";
  }
  for (const Span span : to_nothing) text += "!" + std::to_string(span.begin);
  return text;
}

Note c4() { return note_of("C4"); }
Note e4() { return note_of("E4"); }

}  // namespace

TEST_CASE("a tie leads to the next note on its key") {
  CHECK(resolved({{tied(c4())}, {c4()}, {c4()}}) == "C4 (C4) C4 ");
  CHECK(resolved({{tied(c4())}, {tied(c4())}, {c4()}}) == "C4 (C4) (C4) ");
  CHECK(resolved({{tied(c4())}, {e4()}, {c4()}}) == "C4 E4 (C4) ");
  CHECK(resolved({{c4()}, {c4()}}) == "C4 C4 ");
}

TEST_CASE("a tie leads to the same key under another name") {
  CHECK(resolved({{tied(note_of("C#4"))}, {note_of("Db4")}}) == "C#4 (Db4) ");
}

TEST_CASE("in a chord only the tied keys are held") {
  CHECK(resolved({{tied(c4()), e4()}, {c4(), e4()}}) == "C4+E4 (C4)+E4 ");
  CHECK(resolved({{tied(c4()), tied(e4())}, {c4()}, {e4()}}) == "C4+E4 (C4) (E4) ");
}

TEST_CASE("a tie that ends at a rest or at the end leads to nothing") {
  CHECK(resolved({{tied(c4())}}) == "C4 !0");
  CHECK(resolved({{tied(c4())}, {e4()}}) == "C4 E4 !0");
  CHECK(resolved({{tied(c4())}, {}, {c4()}}) == "C4 r C4 !0");
  CHECK(resolved({{tied(c4())}, {tied(c4())}, {}}) == "C4 (C4) r !1");
}

TEST_CASE("ties to nothing are told in the order of the line") {
  CHECK(resolved({{tied(note_of("G4"))}, {tied(note_of("A3"))}, {}, {tied(c4())}}) ==
        "G4 A3 r C4 !0!1!3");
}

TEST_CASE("a note that was held before is struck when no tie leads to it any more") {
  CHECK(resolved({{c4()}, {held(c4())}}) == "C4 C4 ");
  CHECK(resolved({{held(c4())}}) == "C4 ");
}

TEST_CASE("a line without events has no ties") { CHECK(resolved({}).empty()); }
