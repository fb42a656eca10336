#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"
#include "read/musicxml/made_musicxml.hpp"
#include "score/file_reading.hpp"
#include "score/score_text.hpp"
#include "score/timeline.hpp"
#include "write/random_score.hpp"

#include <cstdlib>
#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

/// Reading MusicXML beyond single cases: what its options choose, and that the same music gives the
/// same analysis in whichever form it comes.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

namespace files = std::filesystem;

constexpr std::string_view kTwoParts =
    R"(<score-partwise><part-list><score-part id="P1"><part-name>Flute</part-name></score-part>)"
    R"(<score-part id="P2"><part-name>Piano</part-name></score-part></part-list>)"
    R"(<part id="P1"><measure number="1"><note><pitch><step>C</step><octave>6</octave></pitch>)"
    R"(<duration>1</duration></note></measure></part>)"
    R"(<part id="P2"><measure number="1"><note><pitch><step>C</step><octave>3</octave></pitch>)"
    R"(<duration>1</duration></note></measure></part></score-partwise>)";

ReadResult read_with(const ReadOptions& options) {
  return read(Source("two.musicxml", std::string(kTwoParts)), options);
}

/// All that an analysis says of a passage, with the music it says it of.
std::string told(const Score& score) {
  const Analysis analysis = analyse(score);
  std::string text;
  for (std::size_t l = 0; l < score.passages.at(0).lines.size(); ++l) {
    const Line& line = score.passages[0].lines[l];
    for (const EventAnalysis& entry : analysis.passages[0].lines[l].events) {
      const Event& event = line.events[entry.event];
      text += to_string(line.hand) + " bar " + std::to_string(event.bar) + " at " +
              to_string(*event.onset) + " gesture " + std::to_string(entry.gesture) + ":";
      for (const Note& note : event.notes) {
        if (note.held) continue;
        text += " " + to_string(note.pitch);
        for (const Finger finger : fingers_on_key(line, entry.event, note)) {
          text += " " + std::to_string(finger);
        }
      }
      text +=
          ": " + std::string(name_of(entry.rotation)) + ", " + reason_of(entry, line.hand) + "\n";
    }
  }
  return text;
}

/// The first line in which two texts differ, as both have it; empty where they are equal.
std::string first_difference(const std::string& left, const std::string& right) {
  std::istringstream left_lines(left);
  std::istringstream right_lines(right);
  std::string left_line;
  std::string right_line;
  for (;;) {
    const bool left_goes_on = static_cast<bool>(std::getline(left_lines, left_line));
    const bool right_goes_on = static_cast<bool>(std::getline(right_lines, right_line));
    if (!left_goes_on && !right_goes_on) return {};
    if (left_goes_on != right_goes_on || left_line != right_line) {
      return left_line + "\n" + right_line;
    }
  }
}

std::string told_after_musicxml(const Passage& passage) {
  const Source source("made.musicxml", musicxml_of(passage));
  const ReadResult result = read(source);
  CHECK(result.ok());
  return told(result.score);
}

/// What no hand reaches, a score divides between the two.
bool is_within_reach(const Passage& passage) {
  constexpr int kWidest = 19;
  const std::vector<Event>& events = passage.lines[0].events;
  return std::all_of(events.begin(), events.end(), [](const Event& event) {
    return event.is_rest() ||
           midi_number(event.notes.back().pitch) - midi_number(event.notes.front().pitch) <=
               kWidest;
  });
}

/// The lines of a score, each in a passage of its own, with a quarter for every note value that is
/// not known.
std::vector<Passage> one_hand_each(const Score& score) {
  std::vector<Passage> passages;
  for (const Passage& passage : score.passages) {
    for (const Line& line : passage.lines) {
      Passage& alone = passages.emplace_back();
      alone.lines = {line};
      for (Event& event : alone.lines[0].events) {
        if (!event.duration) event.duration = event.grace ? Fraction{} : Fraction{1, 4};
      }
      set_onsets(alone);
    }
  }
  return passages;
}

/// The score as the notation can say it: a hash after a blank would open a comment, so its writer
/// takes a blank of another kind.
Score as_notation_can_say(Score score) {
  for (Passage& passage : score.passages) {
    passage.remarks.clear();
    const std::size_t hash = passage.source.find(" #");
    if (hash != std::string::npos) passage.source.replace(hash, 1, "\xC2\xA0");
    for (Line& line : passage.lines) {
      for (Event& event : line.events) {
        for (Note& note : event.notes) note.alternatives.clear();
      }
    }
  }
  return score;
}

}  // namespace

TEST_CASE("musicxml: the part that is asked for is read") {
  const ReadResult flute = read_with({.part = 1});
  CHECK(to_string(flute.score.passages.at(0).lines.at(0).events.at(0).notes.at(0).pitch) == "C6");
  const ReadResult piano = read_with({});
  CHECK(to_string(piano.score.passages.at(0).lines.at(0).events.at(0).notes.at(0).pitch) == "C3");
  CHECK(piano.score.passages.size() == 1);
}

TEST_CASE("musicxml: a part that is not there") {
  const ReadResult result = read_with({.part = 3});
  CHECK(render(Source("two.musicxml", ""), result.diagnostics) ==
        "two.musicxml:1:1: error: expected the number of a part with music, found none of the "
        "number 3 [musicxml-part]\n"
        "  hint: the parts are numbered from 1 in the order of the score\n");
}

TEST_CASE("musicxml: the hand that is asked for is that of a part of one staff") {
  for (const Hand hand : {Hand::right, Hand::left}) {
    const ReadResult result = read_with({.hand = hand});
    CHECK(result.score.passages.at(0).lines.at(0).hand == hand);
    CHECK(result.score.passages.at(0).remarks.at(0) ==
          "The one staff was taken as the " + to_string(hand) + " hand, as asked.");
  }
}

TEST_CASE("musicxml: the form is told by the content, then by the name") {
  CHECK(form_of(Source("a.passage", " <score-partwise/>")) == SourceForm::musicxml);
  CHECK(form_of(Source("a", "\xEF\xBB\xBF<?xml?>")) == SourceForm::musicxml);
  CHECK(form_of(Source("a", std::string("\xFF\xFE<\0", 4))) == SourceForm::musicxml);
  CHECK(form_of(Source("a", std::string("\xFF\xFE"
                                        "C\0",
                                        4))) == SourceForm::notation);
  CHECK(form_of(Source("a.passage", "PK\x03\x04")) == SourceForm::packed_musicxml);
  CHECK(form_of(Source("a.MXL", "")) == SourceForm::packed_musicxml);
  CHECK(form_of(Source("a.XML", "C4:1")) == SourceForm::musicxml);
  CHECK(form_of(Source("a.musicxml", "")) == SourceForm::musicxml);
  CHECK(form_of(Source("a.passage", "C4:1")) == SourceForm::notation);
  CHECK(form_of(Source("-", "")) == SourceForm::notation);
}

TEST_CASE("musicxml: the demo passages give the same analysis as in the notation") {
  const auto demos = files_below(files::path(FINGERTURN_SOURCE_DIR) / "demo", ".passage");
  REQUIRE(demos.size() >= 5);
  for (const files::path& path : demos) {
    INFO(path.filename().string());
    const ReadResult notation = read(Source(path.string(), text_of_file(path)));
    REQUIRE(notation.ok());
    for (const Passage& passage : notation.score.passages) {
      CHECK(first_difference(told_after_musicxml(passage), told(Score{{passage}})) == "");
    }
  }
}

TEST_CASE("musicxml: passages made by chance give the same analysis as in the notation") {
  std::size_t looked_at = 0;
  for (std::uint64_t seed = 1; looked_at < 60; ++seed) {
    CAPTURE(seed);
    // Each hand by itself: bars made by chance are not equally long, and in a score the shorter
    // one is filled with silence.
    for (const Passage& passage : one_hand_each(random_score(seed))) {
      if (!is_within_reach(passage)) continue;
      ++looked_at;
      CHECK(first_difference(told_after_musicxml(passage), told(Score{{passage}})) == "");
    }
  }
}

TEST_CASE("musicxml: real scores are read without error and can be written as passages") {
  if (!files::exists(corpus_folder())) {
    WARN("skipped: there is no folder of real scores here; FINGERTURN_CORPUS may name one");
    return;
  }
  const auto scores = files_below(corpus_folder(), ".musicxml");
  REQUIRE_FALSE(scores.empty());
  for (const files::path& path : scores) {
    INFO(path.filename().string());
    const Source source(path.string(), text_of_file(path));
    const ReadResult result = read(source);
    CHECK(render(source, result.diagnostics) == "");
    CHECK(result.score.passages.size() == 1);
    for (const Passage& passage : result.score.passages) CHECK(passage.lines.size() == 2);
    for (const Note& note : result.score.passages.at(0).lines.at(0).events.at(0).notes) {
      CHECK(source.text_of(note.span) == "<note");
    }
    const Source written("written.passage", write_passage(result.score));
    const ReadResult again = read_notation(written);
    CHECK(again.diagnostics.errors == 0);
    CHECK(first_difference(score_text(again.score),
                           score_text(as_notation_can_say(result.score))) == "");
  }
}

TEST_CASE("musicxml: a title is one line of at most 200 letters") {
  const auto title_of = [](const std::string& words) {
    std::string text(kTwoParts);
    text.insert(text.find("<part-list>"), "<movement-title>" + words + "</movement-title>");
    return read(Source("two.musicxml", text), {}).score.passages.at(0).title;
  };
  CHECK(title_of("Evening\tbells\n  of the harbour") == "Evening bells of the harbour");
  CHECK(title_of(std::string(200, 'x')) == std::string(200, 'x'));
  CHECK(title_of(std::string(201, 'x')) == std::string(200, 'x') + "...");
}
