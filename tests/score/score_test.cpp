#include "fingerturn/score.hpp"

#include "catch.hpp"
#include "score/building.hpp"

#include <functional>
#include <string>
#include <vector>

using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

Line line_of_notes(std::vector<Note> notes) {
  std::vector<Event> events;
  for (Note& note : notes) events.push_back(event_of(1, kQuarter, {std::move(note)}));
  return line_of(Hand::right, std::move(events));
}

std::string fingers_text(const Line& line, std::size_t event = 0) {
  std::string text;
  for (const Finger finger : fingers_on_key(line, event, line.events[event].notes.front())) {
    text += std::to_string(finger);
  }
  return text;
}

}  // namespace

TEST_CASE("the fingers written on a note are the striking one and its silent changes") {
  CHECK(written_fingers(note_of("C4")).empty());
  CHECK(written_fingers(note_of("C4", 3)) == std::vector<Finger>{3});
  CHECK(written_fingers(changing(note_of("C4", 4), {1, 5})) == std::vector<Finger>{4, 1, 5});
  CHECK(written_fingers(changing(note_of("C4"), {1})).empty());
}

TEST_CASE("a finger written on a tied continuation stands on the key, too") {
  const Note struck = tied(note_of("C4", 4));
  CHECK(fingers_text(line_of_notes({note_of("C4", 4)})) == "4");
  CHECK(fingers_text(line_of_notes({struck, held(note_of("C4", 1))})) == "41");
  CHECK(fingers_text(line_of_notes({struck, held(note_of("C4"))})) == "4");
  CHECK(fingers_text(line_of_notes({struck, held(note_of("C4", 4))})) == "4");
  CHECK(fingers_text(line_of_notes({struck, held(changing(note_of("C4", 4), {1}))})) == "41");
  CHECK(fingers_text(line_of_notes(
            {struck, tied(held(note_of("C4", 1))), held(note_of("C4", 2))})) == "412");
  CHECK(fingers_text(line_of_notes({struck, held(note_of("C4", 1)), note_of("C4", 5)})) == "41");
}

TEST_CASE("fingers on a key end where the hand plays on") {
  const Note struck = tied(note_of("C4", 4));
  // The continuation stands with a struck note: what is written there comes too late.
  const Line with_struck =
      line_of(Hand::right, {event_of(1, kQuarter, {struck}),
                            event_of(1, kQuarter, {held(note_of("C4", 1)), note_of("E4", 3)})});
  CHECK(fingers_text(with_struck) == "4");
  // Another key between the note and its continuation.
  CHECK(fingers_text(line_of_notes({struck, note_of("D4", 5), held(note_of("C4", 1))})) == "4");
  const Line rest_between =
      line_of(Hand::right, {event_of(1, kQuarter, {struck}), rest_of(1, kQuarter),
                            event_of(1, kQuarter, {held(note_of("C4", 1))})});
  CHECK(fingers_text(rest_between) == "4");
  CHECK(fingers_text(line_of_notes({struck})) == "4");
}

TEST_CASE("each key of a held chord has its own fingers") {
  const Line line =
      line_of(Hand::right, {event_of(1, kQuarter, {tied(note_of("C4", 1)), tied(note_of("G4", 4))}),
                            event_of(1, kQuarter, {held(note_of("C4")), held(note_of("G4", 5))})});
  CHECK(fingers_on_key(line, 0, line.events[0].notes[0]) == std::vector<Finger>{1});
  CHECK(fingers_on_key(line, 0, line.events[0].notes[1]) == std::vector<Finger>{4, 5});
}

TEST_CASE("a continuation is found by its key, however it is spelled") {
  CHECK(fingers_text(line_of_notes({tied(note_of("C#4", 2)), held(note_of("Db4", 3))})) == "23");
}

TEST_CASE("a note without a finger has none on its key, whatever follows") {
  CHECK(fingers_text(line_of_notes({tied(note_of("C4")), held(note_of("C4", 1))})).empty());
}

TEST_CASE("an event knows what is struck in it") {
  CHECK(rest_of(1, kQuarter).is_rest());
  CHECK(rest_of(1, kQuarter).struck_count() == 0);
  const Event event = event_of(1, kQuarter, {note_of("C4"), held(note_of("E4")), note_of("G4")});
  CHECK_FALSE(event.is_rest());
  CHECK(event.struck_count() == 2);
}

TEST_CASE("spans take no part in comparing scores") {
  Note elsewhere = note_of("C4", 1);
  elsewhere.span = {10, 14};
  CHECK(elsewhere == note_of("C4", 1));
  Event event = event_of(1, kQuarter, {elsewhere});
  event.span = {10, 14};
  CHECK(event == event_of(1, kQuarter, {note_of("C4", 1)}));
}

TEST_CASE("all else does: notes") {
  const Note plain = note_of("C4", 1);
  const std::vector<std::function<void(Note&)>> changes{
      [](Note& note) { note.pitch = *parse_pitch("B#3"); },
      [](Note& note) { note.finger = 2; },
      [](Note& note) { note.finger.reset(); },
      [](Note& note) { note.changes_to = {2}; },
      [](Note& note) { note.suggested = true; },
      [](Note& note) { note.tied = true; },
      [](Note& note) { note.held = true; }};
  for (const auto& change : changes) {
    Note changed = plain;
    change(changed);
    CHECK_FALSE(changed == plain);
  }
}

TEST_CASE("all else does: events") {
  const Event plain = event_of(1, kQuarter, {note_of("C4", 1)});
  const std::vector<std::function<void(Event&)>> changes{[](Event& event) { event.notes.clear(); },
                                                         [](Event& event) { event.onset = Fraction{}; },
                                                         [](Event& event) { event.duration.reset(); },
                                                         [](Event& event) { event.bar = 2; },
                                                         [](Event& event) { event.grace = true; },
                                                         [](Event& event) { event.breath_after = true; }};
  for (const auto& change : changes) {
    Event changed = plain;
    change(changed);
    CHECK_FALSE(changed == plain);
  }
}

TEST_CASE("a tempo is told in quarter notes") {
  CHECK(Tempo{{1, 4}, 72}.quarters_per_minute() == 72);
  CHECK(Tempo{{1, 8}, 144}.quarters_per_minute() == 72);
  CHECK(Tempo{{3, 8}, 60}.quarters_per_minute() == 90);
  CHECK(Tempo{{1, 2}, 40}.quarters_per_minute() == 80);
}

TEST_CASE("hands and meters have their names") {
  CHECK(to_string(Hand::right) == "right");
  CHECK(to_string(Hand::left) == "left");
  CHECK(to_string(Meter{6, 8}) == "6/8");
}

TEST_CASE("a place in the music is told as far as it is known") {
  CHECK(to_string(MusicalPlace{0, Hand::right, 12, Fraction{5, 2}}) ==
        "bar 12, right hand, beat 2.5");
  CHECK(to_string(MusicalPlace{0, Hand::left, 0, std::nullopt}) == "bar 0, left hand");
  CHECK(to_string(MusicalPlace{0, std::nullopt, 3, Fraction{4, 3}}) == "bar 3, beat 1.333");
  CHECK(to_string(MusicalPlace{}).empty());
}

TEST_CASE("a range of bars holds both its ends") {
  const BarRange range{5, 8};
  CHECK_FALSE(range.contains(4));
  CHECK(range.contains(5));
  CHECK(range.contains(8));
  CHECK_FALSE(range.contains(9));
}
