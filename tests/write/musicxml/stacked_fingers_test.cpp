#include "catch.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/read.hpp"
#include "read/musicxml/made_musicxml.hpp"
#include "score/score_text.hpp"
#include "write/musicxml/marking.hpp"
#include "write/random_score.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

/// Fingers that are stacked on chords in whatever number and way: what `finger` writes into such a
/// score is read back as it was meant, and writing it again gives the same bytes.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

/// A score with its missing fingers, and the score with these written into it.
struct Completed {
  Score score;
  std::string musicxml;
};

Completed complete(const std::string& musicxml) {
  const Source source("score.musicxml", musicxml);
  const ReadResult read = read_musicxml(source);
  REQUIRE(read.ok());
  const AnalysedScore analysed(source.name(), with_suggestions(read.score));
  return {analysed.written(), write_musicxml(text_read(read, source), analysed, {})};
}

/// Gives what was written into the score, once it is known to hold.
std::string checked(const std::string& musicxml) {
  const Completed once = complete(musicxml);
  CAPTURE(musicxml, once.musicxml);
  const Completed again = complete(once.musicxml);
  REQUIRE(score_text(again.score) == score_text(once.score));
  REQUIRE(again.musicxml == once.musicxml);
  REQUIRE(without_own_marks(once.musicxml) == without_own_marks(musicxml));
  return once.musicxml;
}

constexpr std::array<std::string_view, 9> kFingerTexts{"1",   "2",   "3", "4", "5",
                                                       "4-1", "(2)", "9", "x"};
constexpr std::array<std::string_view, 6> kSaying{
    "", "", "", "", " substitution=\"yes\"", " alternate=\"yes\""};

/// A `technical` element with up to so many fingers.
std::string random_stack(Chance& chance, std::size_t most) {
  std::string stack;
  for (std::size_t count = chance.below(most + 1); count > 0; --count) {
    stack += "<fingering" + std::string(chance.one_of(kSaying)) + ">" +
             std::string(chance.one_of(kFingerTexts)) + "</fingering>";
  }
  return "<technical>" + stack + "</technical>";
}

/// The fingers of a note, to stand before what else its `notations` hold.
std::string random_fingers(Chance& chance, bool in_chord) {
  std::string fingers;
  if (chance.one_in(5)) {
    fingers +=
        "<level>suggested by fingerturn</level><technical>"
        "<fingering font-style=\"italic\">3</fingering></technical></notations><notations>";
  }
  // Most stand on the first note of a chord, as programs for engraving stack them.
  if (!in_chord || chance.one_in(6)) fingers += random_stack(chance, 6);
  if (chance.one_in(7)) fingers += random_stack(chance, 2);
  return fingers;
}

/// The score with other fingers.
std::string with_stacks(const std::string& musicxml, Chance& chance) {
  constexpr std::string_view kOpening = "<notations>";
  std::string out;
  std::string_view rest = musicxml;
  for (std::size_t at = rest.find(kOpening); at != std::string_view::npos;
       at = rest.find(kOpening)) {
    out += rest.substr(0, at + kOpening.size());
    out += random_fingers(chance, out.find("<chord/>", out.rfind("<note>")) != std::string::npos);
    rest.remove_prefix(at + kOpening.size());
    if (rest.starts_with("<technical>")) {
      constexpr std::string_view kClosing = "</technical>";
      rest.remove_prefix(rest.find(kClosing) + kClosing.size());
    }
  }
  return out.append(rest);
}

/// The passages of a made score whose note values are all known.
std::vector<std::string> made_scores(Chance& chance, std::uint64_t seed) {
  std::vector<std::string> scores;
  for (Passage& passage : random_score(seed).passages) {
    for (Line& line : passage.lines) {
      for (Event& event : line.events) {
        if (!event.duration) event.duration = Fraction{1, 4};
      }
    }
    if (!passage.lines.empty()) scores.push_back(with_stacks(musicxml_of(passage), chance));
  }
  return scores;
}

std::string fingers(const std::string& stack) {
  return "<notations><technical>" + stack + "</technical></notations>";
}

const std::string kFour = fingers(
    "<fingering>1</fingering><fingering>2</fingering><fingering>4</fingering>"
    "<fingering>5</fingering>");

}  // namespace

TEST_CASE("suggestions on a chord whose stacked fingers told nothing are read as suggestions") {
  const std::string out = checked(partwise({"<attributes><divisions>1</divisions></attributes>\n" +
                                            quarter("C4", kFour) + quarter("+E4") + quarter("+G4") +
                                            quarter("C5", fingers("<fingering>5</fingering>"))}));
  CHECK(count_of(out, "<level>suggested by fingerturn</level>") == 3);
  CHECK(count_of(out, kFour) == 1);
}

TEST_CASE("scores made by chance keep what is suggested, whatever is stacked on their chords") {
  constexpr std::uint64_t kSeeds = 300;
  std::size_t suggestions = 0;
  std::size_t taken_off = 0;
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    Chance chance(seed);
    for (const std::string& score : made_scores(chance, seed)) {
      CAPTURE(seed);
      suggestions += count_of(checked(score), "<level>suggested by fingerturn</level>");
      const Source source("score.musicxml", score);
      taken_off += count_of(render(source, read_musicxml(source).diagnostics), "[fingering-count]");
    }
  }
  CHECK(suggestions > 10 * kSeeds);
  CHECK(taken_off > kSeeds / 2);
}
