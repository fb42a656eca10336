#include "catch.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/read.hpp"
#include "write/musicxml/marking.hpp"

#include <string>

/// Suggested fingers in a user's MusicXML: marked as such, read again as such, and taken out whole.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

const std::string kGiven = "<notations><technical><fingering>2</fingering></technical></notations>";

std::string suggestion(const std::string& finger) {
  return "<notations><level>suggested by fingerturn</level><technical><fingering "
         "font-style=\"italic\">" +
         finger + "</fingering></technical></notations>";
}

std::string completed(const std::string& musicxml) {
  const Source source("score.musicxml", musicxml);
  const ReadResult read = read_musicxml(source);
  REQUIRE(read.ok());
  const AnalysedScore analysed(source.name(), with_suggestions(read.score));
  return write_musicxml(text_read(read, source), analysed, {});
}

std::string score_of_four() {
  return partwise({"<attributes><divisions>1</divisions></attributes>\n" + quarter("C4") +
                   quarter("D4", kGiven + "<lyric><text>la</text></lyric>") +
                   quarter("E4", "<notations><fermata/></notations>") + quarter("F4")});
}

}  // namespace

TEST_CASE("suggested fingers stand in a score as italic fingerings at the level of a suggestion") {
  const std::string out = completed(score_of_four());
  CHECK(count_of(out, "<level>suggested by fingerturn</level>") == 3);
  CHECK(count_of(out, suggestion("1") + "<lyric number=") == 1);
  CHECK(count_of(out, "<notations><fermata/></notations>" + suggestion("3")) == 1);
  CHECK(count_of(out, kGiven) == 1);
  CHECK(without_own_marks(out) == score_of_four());
}

TEST_CASE("suggested fingers are read as suggestions and written once") {
  const std::string once = completed(score_of_four());
  const Source source("score.musicxml", once);
  const ReadResult read = read_musicxml(source);
  REQUIRE(read.ok());
  int suggested = 0;
  for (const Event& event : read.score.passages.at(0).lines.at(0).events) {
    for (const Note& note : event.notes) suggested += note.suggested ? 1 : 0;
  }
  CHECK(suggested == 3);
  CHECK(completed(once) == once);
}

TEST_CASE("a suggestion beside a given finger is left, another level says nothing") {
  const std::string other =
      "<notations><level>editor</level><technical><fingering>3</fingering></technical></notations>";
  const std::string score =
      partwise({"<attributes><divisions>1</divisions></attributes>\n" +
                quarter("C4", kGiven + suggestion("1")) + quarter("D4", other)});
  const ReadResult read = read_musicxml(Source("score.musicxml", score));
  REQUIRE(read.ok());
  const Line& line = read.score.passages.at(0).lines.at(0);
  CHECK(line.events.at(0).notes.at(0).finger == Finger{2});
  CHECK(line.events.at(0).notes.at(0).changes_to.empty());
  CHECK_FALSE(line.events.at(0).notes.at(0).suggested);
  CHECK(line.events.at(1).notes.at(0).finger == Finger{3});
  CHECK_FALSE(line.events.at(1).notes.at(0).suggested);
}

TEST_CASE("a level of ours among others is known by reader and writer alike") {
  const std::string ours =
      "<notations><level>editor</level><level>\n suggested by fingerturn </level><technical>"
      "<fingering>3</fingering></technical></notations>";
  const std::string score = partwise({"<attributes><divisions>1</divisions></attributes>\n" +
                                      quarter("C4", ours) + quarter("D4")});
  const ReadResult read = read_musicxml(Source("score.musicxml", score));
  CHECK(read.score.passages.at(0).lines.at(0).events.at(0).notes.at(0).suggested);
  const std::string once = completed(score);
  CHECK(count_of(once, "suggested by fingerturn") == 2);
  CHECK(completed(once) == once);
}

TEST_CASE("a finger that is meant for another note stays beside the suggestion in its place") {
  const std::string five = "<notations><technical><fingering>5</fingering></technical></notations>";
  const std::string upper = quarter("E4");
  const std::string score =
      partwise({"<attributes><divisions>1</divisions></attributes>\n" + quarter("C4", five) +
                upper.substr(0, 6) + "<chord/>" + upper.substr(6)});
  const std::string once = completed(score);
  CHECK(count_of(once, five + "<notations><level>suggested by fingerturn in place of 5</level>") ==
        1);
  CHECK(without_own_marks(once) == score);
  CHECK(completed(once) == once);
  const ReadResult read = read_musicxml(Source("score.musicxml", once));
  REQUIRE(read.ok());
  const Note& lower = read.score.passages.at(0).lines.at(0).events.at(0).notes.at(0);
  CHECK(lower.set_aside == Finger{5});
  CHECK(lower.suggested);
  std::string corrected = once;
  corrected.replace(corrected.find(five), five.size(), kGiven);
  const ReadResult other = read_musicxml(Source("score.musicxml", corrected));
  const Note& kept = other.score.passages.at(0).lines.at(0).events.at(0).notes.at(0);
  CHECK(kept.finger == Finger{2});
  CHECK_FALSE(kept.suggested);
}

TEST_CASE("with some bars only, no finger is written outside of them") {
  const std::string musicxml =
      partwise({"<attributes><divisions>1</divisions></attributes>\n" + quarter("C4") +
                    quarter("D4") + quarter("E4") + quarter("F4"),
                quarter("G4") + quarter("A4") + quarter("B4") + quarter("C5")});
  const Source source("score.musicxml", musicxml);
  const ReadResult read = read_musicxml(source);
  REQUIRE(read.ok());
  const AnalysedScore analysed(source.name(), with_suggestions(read.score));
  const std::string out = write_musicxml(text_read(read, source), only_bars(analysed, {2, 2}), {});
  CHECK(count_of(out, "<level>suggested by fingerturn</level>") == 4);
  CHECK(out.find("suggested") > out.find("<step>F</step>"));
}
