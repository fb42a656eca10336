#include "fingerturn/fingers_back.hpp"

#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"
#include "rules/random_passage.hpp"
#include "score/file_reading.hpp"

#include <string>
#include <string_view>
#include <vector>

/// Fingers that were worked out in a passage, put back into the score that it came from.
namespace fingerturn {
namespace {

Score score_in(const Source& source) {
  const ReadResult result = read(source);
  REQUIRE(result.ok());
  return result.score;
}

/// The score as a passage whose fingers somebody has changed: some are others, some are new.
Score changed_by_chance(Score score, Chance& chance) {
  for (Line& line : score.passages.at(0).lines) {
    for (Event& event : line.events) {
      for (Note& note : event.notes) {
        if (note.held || !chance.percent(30)) continue;
        note.finger = static_cast<Finger>(chance.between(1, 5));
        note.changes_to.clear();
        // Of another finger: the same one again is no change.
        if (chance.percent(20)) note.changes_to = {static_cast<Finger>(*note.finger % 5 + 1)};
        note.suggested = false;
      }
    }
  }
  return score;
}

/// A score without its fingers and without blanks.
std::string without_fingerings(std::string text) {
  for (std::size_t at = text.find("<fingering"); at != std::string::npos;
       at = text.find("<fingering")) {
    text.erase(at, text.find("</fingering>", at) + std::string_view("</fingering>").size() - at);
  }
  std::erase_if(text,
                [](char letter) { return letter == ' ' || letter == '\n' || letter == '\r'; });
  const std::string_view empty = "<notations><technical></technical></notations>";
  for (std::size_t at = text.find(empty); at != std::string::npos; at = text.find(empty)) {
    text.erase(at, empty.size());
  }
  return text;
}

constexpr std::string_view kHead =
    "<score-partwise version=\"4.0\"><part-list><score-part id=\"P\"><part-name>Piano</part-name>"
    "</score-part></part-list><part id=\"P\"><measure number=\"1\"><attributes><divisions>1"
    "</divisions><time><beats>2</beats><beat-type>4</beat-type></time></attributes>";
constexpr std::string_view kFoot = "</measure></part></score-partwise>";

std::string note_element(std::string_view step, std::string_view more, bool chord = false) {
  return std::string("<note>") + (chord ? "<chord/>" : "") + "<pitch><step>" + std::string(step) +
         "</step><octave>5</octave></pitch><duration>1</duration><type>quarter</type>" +
         std::string(more) + "</note>";
}

std::string fingering(std::string_view text) {
  return "<notations><technical><fingering>" + std::string(text) +
         "</fingering></technical></notations>";
}

Score passage(const std::string& text) { return score_in(Source("edited", text)); }

}  // namespace

TEST_CASE("fingers put back are read again, and no other byte changes", "[fingers-back]") {
  const std::uint64_t seed = seed_of_this_run();
  INFO("repeat with " << kSeedVariable << "=" << seed);
  Chance chance(seed);
  for (const char* name :
       {"demo/last-tram.musicxml", "tests/cases/write_back/two_staves.musicxml"}) {
    const Source source(name, tests::text_of_file(std::string(FINGERTURN_SOURCE_DIR "/") + name));
    const Score score = score_in(source);
    for (int i = 0; i < 20; ++i) {
      const Score edited = changed_by_chance(score, chance);
      const FingersBack back = fingers_back(score, edited);
      REQUIRE(back.problem.empty());
      const Source written(name, write_fingers(source, score, back.score));
      CHECK(without_fingerings(std::string(written.text())) ==
            without_fingerings(std::string(source.text())));
      CHECK(score_in(written) == edited);
      // Nothing is left to put back.
      const FingersBack again = fingers_back(score_in(written), edited);
      CHECK(again.added.empty());
      CHECK(again.changed.empty());
    }
    // No finger changes, no byte does.
    CHECK(write_fingers(source, score, fingers_back(score, score).score) == source.text());
  }
}

TEST_CASE("fingers put back: what is added, what changes, what stays out", "[fingers-back]") {
  const Source source("s.musicxml", std::string(kHead) + note_element("C", fingering("1")) +
                                        note_element("D", "") + std::string(kFoot));
  const Score score = score_in(source);
  const FingersBack back = fingers_back(score, passage("meter: 2/4\n1/4 C5:2 D:3"));
  CHECK(back.problem.empty());
  REQUIRE(back.added.size() == 1);
  CHECK(render(back.added[0]) == "bar 1, right hand, beat 2: 3 on D5");
  REQUIRE(back.changed.size() == 1);
  CHECK(render(back.changed[0]) == "bar 1, right hand, beat 1: 2 instead of 1 on C5");
  CHECK(write_fingers(source, score, back.score) ==
        std::string(kHead) + note_element("C", fingering("2")) + note_element("D", fingering("3")) +
            std::string(kFoot));

  const FingersBack bare = fingers_back(score, passage("meter: 2/4\n1/4 C5 D:3>4"));
  REQUIRE(bare.changed.size() == 1);
  CHECK(render(bare.changed[0]) == "bar 1, right hand, beat 1: none instead of 1 on C5");
  const std::string text = write_fingers(source, score, bare.score);
  CHECK(text.find("<fingering>1") == std::string::npos);
  CHECK(text.find("<fingering>3</fingering><fingering substitution=\"yes\">4</fingering>") !=
        std::string::npos);

  const FingersBack suggested = fingers_back(score, passage("meter: 2/4\n1/4 C5:4? D:3?"));
  CHECK(suggested.suggestions == 2);
  CHECK(suggested.score == score);
}

TEST_CASE("fingers put back: those that are stacked on a chord's first note", "[fingers-back]") {
  const std::string stack =
      "<notations><technical><fingering>1</fingering><fingering>3</fingering></technical>"
      "</notations>";
  const Source source("s.musicxml", std::string(kHead) + note_element("C", stack) +
                                        note_element("E", "", true) + std::string(kFoot));
  const Score score = score_in(source);
  REQUIRE(score.passages[0].lines[0].events[0].notes[1].finger == 3);
  const FingersBack back = fingers_back(score, passage("1/4 C5:1+E5:4"));
  REQUIRE(back.problem.empty());
  REQUIRE(back.changed.size() == 1);
  const Score again = score_in(Source("s.musicxml", write_fingers(source, score, back.score)));
  CHECK(again == back.score);
}

TEST_CASE("fingers put back: where the notes differ nothing is put", "[fingers-back]") {
  const Source source("s.musicxml", std::string(kHead) + note_element("C", fingering("1")) +
                                        note_element("D", "") + std::string(kFoot));
  const Score score = score_in(source);
  struct Case {
    std::string text;
    std::string problem;
  };
  const std::vector<Case> cases{
      {"1/4 C5:2 E:3", "bar 1, right hand: E5 in the passage, D5 on beat 2 in the score"},
      {"1/4 C5:2", "bar 1, right hand: nothing more in the passage, D5 on beat 2 in the score"},
      {"1/4 C5:2 D:3 E:4", "bar 1, right hand: E5 in the passage, nothing more in the score"},
      {"1/8 C5:2 D:3", "bar 1, right hand: D5 in the passage, D5 on beat 2 in the score"},
      {"bar: 7\n1/4 C5:2", "bar 7, right hand: C5 in the passage, nothing more in the score"},
      {"LH: 1/4 C5:2 D5:3", "the score has nothing for the left hand"},
  };
  for (const Case& each : cases) {
    INFO(each.text);
    const FingersBack back = fingers_back(score, passage(each.text));
    CHECK(back.problem == each.problem);
    CHECK(back.score == score);
    CHECK(back.changed.empty());
  }
  CHECK(fingers_back(Score{}, passage("C4:1")).problem ==
        "the score has 0 passages, and one is needed");
}

}  // namespace fingerturn
