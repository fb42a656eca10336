#include "fingerturn/excerpt.hpp"

#include "catch.hpp"
#include "fingerturn/read.hpp"
#include "fingerturn/report.hpp"
#include "read/score_written.hpp"
#include "score/file_reading.hpp"
#include "score/score_text.hpp"
#include "write/random_score.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// Some bars out of a score: what they say by themselves is what the score says there.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

std::string excerpt_text(const std::string& text, BarRange bars) {
  const Score score = score_written(text);
  return write_excerpt(score, excerpt(score, bars));
}

/// What its comments say, in one line.
std::string comments_in(const std::string& written) {
  std::string comments;
  for (std::size_t begin = 0; begin < written.size();) {
    const std::size_t end = written.find('\n', begin);
    if (written[begin] == '#') comments += written.substr(begin + 1, end - begin - 1);
    begin = end + 1;
  }
  return comments.empty() ? comments : comments.substr(1);
}

bool same_turn(const EventAnalysis& one, const EventAnalysis& other) {
  return one.rotation == other.rotation && one.side == other.side && one.prepare == other.prepare &&
         one.swings == other.swings && one.crossing == other.crossing;
}

/// A line as the score has it and as the excerpt has it, read anew from what was written.
struct Both {
  const Line& in_score;
  const LineAnalysis& score_analysis;
  const Line& here;
  const LineAnalysis& here_analysis;
  BarRange bars;
};

/// For each event of the excerpt's line that is struck: its place in the score.
std::vector<std::size_t> places_in_score(const Both& both) {
  std::vector<std::size_t> places;
  for (std::size_t at = 0; at < both.in_score.events.size(); ++at) {
    if (both.bars.contains(both.in_score.events[at].bar)) places.push_back(at);
  }
  REQUIRE(places.size() == both.here.events.size());
  return places;
}

/// The law: the events that differ are those that are named, and they differ for a reason: they
/// stand in the first gesture, after a tie that is cut, or before what is cut at the end.
std::set<std::size_t> differing_events(const Both& both) {
  std::map<std::size_t, const EventAnalysis*> in_score;
  for (const EventAnalysis& entry : both.score_analysis.events) in_score[entry.event] = &entry;
  const std::vector<std::size_t> places = places_in_score(both);
  std::set<std::size_t> differing;
  std::size_t touched_gesture = 0;
  std::string_view opened_by;
  for (const EventAnalysis& entry : both.here_analysis.events) {
    const std::size_t place = places.at(entry.event);
    const bool tie_is_cut =
        both.in_score.events[place].struck_count() != both.here.events[entry.event].struck_count();
    if (entry.rotation == Rotation::preparatory) opened_by = entry.rule;
    // A note too many can make a chord level, after which a new gesture begins.
    if (tie_is_cut) touched_gesture = entry.gesture + 1;
    const auto found = in_score.find(place);
    if (found != in_score.end() && !tie_is_cut && same_turn(*found->second, entry)) continue;
    differing.insert(entry.event);
    INFO("bar " << both.here.events[entry.event].bar << ", event " << entry.event);
    const bool is_last = entry.gesture == both.here_analysis.events.back().gesture;
    CHECK((entry.gesture <= touched_gesture || (is_last && opened_by == "first-note-alone")));
  }
  return differing;
}

std::set<std::size_t> named_events(const PassageExcerpt& passage, Hand hand) {
  std::set<std::size_t> named;
  for (const ChangedTurn& changed : passage.changed) {
    if (changed.hand == hand) named.insert(changed.here.event);
  }
  return named;
}

/// What the notation has no form for.
Score as_notation_says(const Score& score) { return score_written(write_passage(score)); }

/// How many events differed.
std::size_t check_law(const Score& score, BarRange bars) {
  const Excerpt part = excerpt(score, bars);
  const std::string written = write_excerpt(score, part);
  CAPTURE(written);
  if (part.passages.empty()) {
    CHECK(written.empty());
    return 0;
  }
  const Score again = score_written(written);
  REQUIRE(score_text(again) == score_text(as_notation_says(part.score)));
  const Analysis whole = analyse(score);
  const Analysis here = analyse(again);
  std::size_t differing = 0;
  for (std::size_t p = 0; p < part.passages.size(); ++p) {
    const std::size_t of = part.passages[p].of;
    for (std::size_t l = 0; l < again.passages[p].lines.size(); ++l) {
      const Line& line = again.passages[p].lines[l];
      const Line* in_score = line_of_hand(score.passages[of], line.hand);
      REQUIRE(in_score != nullptr);
      const auto at = static_cast<std::size_t>(in_score - score.passages[of].lines.data());
      const Both both{*in_score, whole.passages[of].lines[at], line, here.passages[p].lines[l],
                      bars};
      const std::set<std::size_t> found = differing_events(both);
      CHECK(found == named_events(part.passages[p], line.hand));
      differing += found.size();
    }
    CHECK((comments_in(written).find("In the score") != std::string::npos || differing == 0));
  }
  return differing;
}

}  // namespace

TEST_CASE("excerpt: the turns of scores made by chance stay, and what changes is named") {
  std::size_t differing = 0;
  for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
    CAPTURE(seed);
    const auto first = static_cast<std::int32_t>(seed % 9);
    differing +=
        check_law(random_score(seed), {first, first + static_cast<std::int32_t>(seed % 4)});
  }
  CHECK(differing > 100);
}

TEST_CASE("excerpt: the turns of real scores stay, and what changes is named") {
  if (!std::filesystem::exists(corpus_folder())) {
    WARN("skipped: there is no folder of real scores here; FINGERTURN_CORPUS may name one");
    return;
  }
  std::size_t differing = 0;
  for (const auto& path : files_below(corpus_folder(), ".musicxml")) {
    CAPTURE(path.filename().string());
    const Score score = read(Source(path.string(), text_of_file(path))).score;
    for (const BarRange bars : {BarRange{1, 4}, BarRange{5, 8}, BarRange{17, 17}}) {
      differing += check_law(score, bars);
    }
  }
  CHECK(differing > 0);
}

TEST_CASE("excerpt: all bars together are the score, with no comment") {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    CAPTURE(seed);
    const Score score = random_score(seed);
    const Excerpt part = excerpt(score, {0, 999999});
    for (const PassageExcerpt& passage : part.passages) CHECK(passage.changed.empty());
    CHECK(comments_in(write_excerpt(score, part)).empty());
  }
}

TEST_CASE("excerpt: titles tell the bars") {
  const auto title = [](const std::string& text, BarRange bars) {
    return excerpt(score_written(text), bars).score.passages.at(0).title;
  };
  CHECK(title("passage: Etude\nC4:1 | D:2 | E:3", {2, 3}) == "Etude, bars 2 to 3");
  CHECK(title("passage: Etude\nC4:1 | D:2 | E:3", {2, 2}) == "Etude, bar 2");
  CHECK(title("passage: Etude\nC4:1 | D:2 | E:3", {2, 99}) == "Etude, bars 2 to 3");
  CHECK(title("C4:1 | D:2 | E:3", {3, 3}) == "bar 3");
  CHECK(title("bar: 0\nC4:1 | D:2", {0, 0}) == "bar 0");
}

TEST_CASE("excerpt: meter, tempo, reach and numbers of the bars stay") {
  CHECK(excerpt_text("passage: Etude\ncomposer: nobody\nreach: 10\nmeter: 2/4\ntempo: 60\n"
                     "1/4 C4:1 r | D4:2 r |\nmeter: 3/4\nE4:3 r r | F4:4 r r |",
                     {4, 4}) ==
        "passage: Etude, bar 4\ncomposer: nobody\nreach: 10\nbar: 4\nmeter: 3/4\ntempo: 60\n"
        "1/4 F4:4 r r |\n");
}

TEST_CASE("excerpt: passages that play nothing in the bars are left out") {
  const std::string text = "passage: a\nC4:1 | D:2\npassage: b\nC4:1\npassage: c\nC4:1 | r";
  CHECK(excerpt(score_written(text), {2, 2}).score.passages.size() == 1);
  CHECK(excerpt(score_written(text), {3, 3}).passages.empty());
  CHECK(excerpt(Score{}, {1, 2}).passages.empty());
  CHECK(excerpt_text(text, {3, 3}).empty());
}

TEST_CASE("excerpt: comments name what turns otherwise") {
  struct Case {
    std::string text;
    std::string comments;
  };
  const Case found = GENERATE(values<Case>({
      // Nothing stood before it in its gesture.
      {"C4:1 r | D4:2 E:3", ""},
      {"C4:1 , | D4:2 E:3", ""},
      {"C4:1+E:3+G:5 | D4:2 E:3", ""},
      // As it happens it turns the same way, though not by the same kind.
      {"C4:1 | E4:5 D:4",
       "In the score E4:5 at the beginning of bar 2 is single, turning right, prepared by C4:1 in "
       "bar 1. Here it is preparatory, swinging left and turning right."},
      {"meter: 2/4\n1/8 C4:1 D:2 | E:3 F:4",
       "In the score E4:3 at the beginning of bar 2 is double, swinging left and turning right, "
       "after D4:2 in bar 1. Here it is preparatory, swinging right and turning left. In the "
       "score F4:4 on beat 1.5 of bar 2 is double, swinging left and turning right, after "
       "E4:3 in bar 2. Here it is single, turning right."},
      {"C4:1 D:2 | E:3 F:4",
       "In the score E4:3 at the beginning of bar 2 is double, swinging left and turning right, "
       "after D4:2 in bar 1. Here it is preparatory, swinging right and turning left. In the "
       "score F4:4 as number 2 in bar 2 is double, swinging left and turning right, after "
       "E4:3 in bar 2. Here it is single, turning right."},
      // What follows is cut off as well.
      {"r | C4:3 | D:4",
       "In the score C4:3 at the beginning of bar 2 is preparatory, swinging right and turning "
       "left, for what follows there. Here it is preparatory."},
      // One finger again and again.
      {"C4:1 | D:2 D:2 D:2 r",
       "In the score D4:2 at the beginning of bar 2 is single, turning right, prepared by C4:1 in "
       "bar 1. Here it is preparatory. In the score D4:2 as number 2 in bar 2 and the next "
       "are double, swinging left and turning right, after D4:2 in bar 2. Here they are "
       "double."},
      // A tie is cut: of a note alone, and of one beneath another.
      {"C4:1~ | C E:3",
       "In the score C4:1 at the beginning of bar 2 is held over from before. Here C4:1 is struck: "
       "preparatory, swinging right and turning left."},
      {"C4:1~ | C+E:3 G:5",
       "In the score E4:3 at the beginning of bar 2 is single, turning right, prepared by C4:1 in "
       "bar 1. Here C4:1+E4:3 is struck: preparatory, swinging right and turning left. In the "
       "score "
       "G4:5 as number 2 in bar 2 is double, swinging left and turning right, after E4:3 in "
       "bar 2. Here it is single, turning right."},
      // A missing finger before the bars hides nothing more.
      {"C4 | D:2 E:3",
       "In the score D4:2 at the beginning of bar 2 is undetermined, after C4:? in bar 1. "
       "Here it is preparatory, swinging right and turning left. In the score E4:3 as number 2 in "
       "bar 2 is undetermined, turning right, after D4:2 in bar 2. Here it is single, "
       "turning "
       "right."},
      {"RH: C5:1 | D:5 E:4\nLH: C3:5 r | D:4 C:5",
       "In the score D5:5 at the beginning of bar 2, right hand, is single, turning right, "
       "prepared "
       "by C5:1 in bar 1. Here it is preparatory, swinging left and turning right."},
      {"G4:3 E:1 | F4:1 D:3",
       "In the score F4:1 at the beginning of bar 2 is double, swinging right and turning left, "
       "after E4:1 in bar 1. Here it is preparatory, swinging right and turning left."},
  }));
  CAPTURE(found.text);
  CHECK(comments_in(excerpt_text(found.text, {2, 2})) == found.comments);
}

TEST_CASE("excerpt: a comment keeps to the width of a page and is nothing else") {
  const std::string written = excerpt_text(
      "passage: a # b\nRH: C5:1>2>3>4>5 | D5:1+E5:2 F5:1>2>3>4>5\nLH: C3:1 | D3:1", {2, 2});
  for (std::size_t begin = 0; begin < written.size();) {
    const std::size_t end = written.find('\n', begin);
    CHECK(end - begin <= 78);
    begin = end + 1;
  }
  CHECK(score_written(written).passages.size() == 1);
}
