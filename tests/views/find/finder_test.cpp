#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"
#include "views/made_plans.hpp"

#include <algorithm>
#include <cstdint>
#include <functional>
#include <set>
#include <string>
#include <utility>
#include <vector>

/// What patterns find: by hand, and against a slow and obvious search.
namespace fingerturn {
namespace {

Finder finder_of(const std::string& pattern) {
  const FindPatternResult result = parse_find_pattern(pattern);
  INFO(pattern << ": " << result.problem);
  REQUIRE(result.ok());
  return Finder(*result.pattern);
}

/// The first event and the count of each place in a typed passage: "3+2 8+2".
std::string places_in(const AnalysedScore& score, const Finder& finder) {
  std::string text;
  for (const FoundPlace& place : finder.in(score, nullptr)) {
    text +=
        (text.empty() ? "" : " ") + std::to_string(place.first) + '+' + std::to_string(place.count);
  }
  return text;
}

std::string found(const std::string& music, const std::string& pattern) {
  return places_in(analysed_from(music), finder_of(pattern));
}

/// Preparatory, single, double, then the thumb under (single), three more turned as their reports
/// say.
constexpr const char* kOctave = "1/8 C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C5:5";

}  // namespace

TEST_CASE("patterns find kinds, fingers, passings and intervals", "[find]") {
  // Kinds as docs/rules.md has them for the scale of C major, right hand.
  CHECK(found(kOctave, "preparatory") == "0+1");
  CHECK(found(kOctave, "double x2+") == "5+3");
  CHECK(found(kOctave, "thumb-under") == "3+1");
  CHECK(found(kOctave, "passing,1") == "3+1");
  CHECK(found(kOctave, "finger-over-thumb").empty());
  CHECK(found(kOctave, "1 2 3") == "0+3 3+3");
  CHECK(found(kOctave, "second x2") == "1+2 3+2 5+2");
  CHECK(found(kOctave, "up x1+") == "1+7");
  CHECK(found(kOctave, "down").empty());
  CHECK(found(kOctave, "up-minor-second") == "3+1 7+1");
  CHECK(found(kOctave, "LH: .").empty());
  CHECK(found(kOctave, "RH: . x3") == "0+3 3+3");
  CHECK(found("C4:1 C:1 F#:3 Gb:4 Bb4:5", "same-key") == "1+1 3+1");
  CHECK(found("C4:1 C:1 F#:3 Gb:4 Bb4:5", "black x1+") == "2+3");
  CHECK(found("C4:1+E:3 D:1+F:4 E4:1+C5:5 C4:1+E:2+G:5 C4:1", "thirds") == "0+1 1+1");
  CHECK(found("C4:1+E:3 D:1+F:4 E4:1+C5:5 C4:1+E:2+G:5 C4:1", "double-note x1+") == "0+3");
  CHECK(found("C4:1+E:3 D:1+F:4 E4:1+C5:5 C4:1+E:2+G:5 C4:1", "chord") == "3+1");
  CHECK(found("C4:1+E:3 D:1+F:4 E4:1+C5:5 C4:1+E:2+G:5 C4:1", "note,1") == "4+1");
  CHECK(found("C4:1+E:3 D:1+F:4 E4:1+C5:5 C4:1+E:2+G:5 C4:1", "1+.") == "0+1 1+1 2+1");
  CHECK(found("C4:1+E:3 D:1+F:4 E4:1+C5:5 C4:1+E:2+G:5 C4:1", "1+2+5") == "3+1");
  CHECK(found("C4:1 D:1 E:3", "finger-moved") == "1+1");
  CHECK(found("C4:1 D:2 D:2 E:3", "same-finger") == "2+1");
  CHECK(found("hand: left\nF3:5 C4:1", "toward-fifth,left") == "0+1");
  CHECK(found("hand: left\nF3:5 C4:1", "toward-thumb,right") == "1+1");
}

TEST_CASE("a place is as early and as long as can be, and none reaches into another", "[find]") {
  CHECK(found("C4:4 D:5 C:4 D:5 C:4", "4 5 4") == "0+3");
  CHECK(found("C4:4 D:5 C:4 D:5 C:4", "(4 5) x1+ 4") == "0+5");
  CHECK(found("C4:4 D:5 C:4 D:5 E:3 C:4", ". x1+ 4") == "0+6");
  // Shorter where the first run takes all it can, longer where it leaves one for the second.
  CHECK(found("C4:1 D:2 C:1 D:2 E:3", "(1 2) x1+ (1 2 3) x1") == "0+5");
  CHECK(found("C4:4 D:5", "4 5 4").empty());
}

TEST_CASE("a place tells where it is in the music and in the text", "[find]") {
  const Source source("t",
                      "meter: 3/4\nRH: 1/4 C5:1 D:2 E:3 | F:4 G:5 r\nLH: 1/2. C3:5 | 1/4 D:4\n");
  const AnalysedScore score("t", read(source).score);
  const std::vector<FoundPlace> fours = finder_of("4").in(score, &source);
  REQUIRE(fours.size() == 2);
  CHECK(to_string(fours[0].where) == "bar 2, right hand, beat 1");
  CHECK(fours[0].place == Place{2, 24});
  CHECK(fours[0].line == 0);
  CHECK(to_string(fours[1].where) == "bar 2, left hand, beat 1");
  CHECK(fours[1].place == Place{3, 21});
  CHECK(fours[1].line == 1);
  CHECK_FALSE(finder_of("4").in(score, nullptr).front().place);
  const Finder left = finder_of("LH: 4");
  const std::vector<FoundPlace> places = left.in(score, &source);
  REQUIRE(places.size() == 1);
  const FoundCounts counts = count_found(score, left, places);
  CHECK(counts.places == 1);
  CHECK(counts.found == 1);
  CHECK(counts.events == 2);
}

TEST_CASE("hands that differ in kind are found in both", "[find]") {
  const AnalysedScore score =
      analysed_from("meter: 4/4\nRH: 1/4 C5:1 D:2 E:3 F:4\nLH: 1/4 C3:5 D:4 C:5 D:4");
  std::set<std::size_t> expected;
  for (const KindsDiffer& differ : score[0].found().together->kinds_differ) {
    expected.insert(differ.right_event);
  }
  REQUIRE_FALSE(expected.empty());
  std::set<std::size_t> events;
  for (const FoundPlace& place : finder_of("RH: hands-differ").in(score, nullptr)) {
    events.insert(place.first);
  }
  CHECK(events == expected);
  CHECK(finder_of("LH: hands-differ").in(score, nullptr).size() == expected.size());
}

namespace {

/// What a word asks for, told anew from what was found.
using Asks = std::function<bool(const AnalysedLine&, std::size_t)>;
struct KnownWord {
  std::string word;
  Asks asks;
};

const Note& lowest_struck(const AnalysedLine& line, std::size_t number) {
  const std::vector<Note>& notes = line[number].written.notes;
  return *std::ranges::find(notes, false, &Note::held);
}

int lowest_key(const AnalysedLine& line, std::size_t number) {
  return midi_number(lowest_struck(line, number).pitch);
}

Asks kind(Rotation rotation) {
  return [rotation](const AnalysedLine& line, std::size_t number) {
    return line[number].found.rotation == rotation;
  };
}

Asks finger(Finger wanted) {
  return [wanted](const AnalysedLine& line, std::size_t number) {
    return line[number].written.struck_count() == 1 && lowest_struck(line, number).finger == wanted;
  };
}

const std::vector<KnownWord>& known_words() {
  static const std::vector<KnownWord> kWords{
      {".", [](const AnalysedLine&, std::size_t) { return true; }},
      {"single", kind(Rotation::single_rotation)},
      {"double", kind(Rotation::double_rotation)},
      {"preparatory", kind(Rotation::preparatory)},
      {"1", finger(1)},
      {"2", finger(2)},
      {"3", finger(3)},
      {"5", finger(5)},
      {"black",
       [](const AnalysedLine& line, std::size_t number) {
         const auto& notes = line[number].written.notes;
         return std::ranges::all_of(notes, [](const Note& note) {
           return note.held || key_colour(midi_number(note.pitch)) == KeyColour::black;
         });
       }},
      {"up",
       [](const AnalysedLine& line, std::size_t number) {
         return number > 0 && lowest_key(line, number) > lowest_key(line, number - 1);
       }},
      {"left",
       [](const AnalysedLine& line, std::size_t number) {
         const auto& side = line[number].found.side;
         return side && direction_of(line.hand(), *side) == Direction::left;
       }},
      {"passing", [](const AnalysedLine& line,
                     std::size_t number) { return line[number].found.crossing != Crossing::none; }},
      {"in", [](const AnalysedLine& line,
                std::size_t number) { return line[number].found.in_out == InOut::in; }},
  };
  return kWords;
}

/// Words joined for one event.
using Joined = std::vector<std::size_t>;
struct Run {
  std::vector<Joined> events;
  std::size_t times = 1;
  bool or_more = false;
};

std::string text_of(const Run& run) {
  std::string text;
  for (const Joined& joined : run.events) {
    std::string words;
    for (const std::size_t word : joined) {
      words += (words.empty() ? "" : ",") + known_words()[word].word;
    }
    text += (text.empty() ? "" : " ") + words;
  }
  if (run.events.size() > 1) text = '(' + text + ')';
  return text + " x" + std::to_string(run.times) + (run.or_more ? "+" : "");
}

bool can_be_both(const Joined& joined) {
  std::string text;
  for (const std::size_t word : joined)
    text += (text.empty() ? "" : ",") + known_words()[word].word;
  return parse_find_pattern(text).ok();
}

/// A number below `count`.
std::size_t any_of(Chance& chance, std::size_t count) {
  return static_cast<std::size_t>(chance.between(0, static_cast<int>(count) - 1));
}

std::vector<Run> random_runs(Chance& chance) {
  std::vector<Run> runs(1 + any_of(chance, 3));
  for (Run& run : runs) {
    run.events.resize(1 + any_of(chance, 2));
    for (Joined& joined : run.events) {
      do {
        joined.assign(1 + any_of(chance, 2), 0);
        for (std::size_t& word : joined) word = any_of(chance, known_words().size());
      } while (!can_be_both(joined));
    }
    run.times = 1 + any_of(chance, 2);
    run.or_more = any_of(chance, 3) == 0;
  }
  return runs;
}

/// Where a run that begins somewhere can end, once.
std::set<std::size_t> ends_of_once(const AnalysedLine& line, const Run& run,
                                   const std::set<std::size_t>& begins) {
  std::set<std::size_t> ends;
  for (const std::size_t begin : begins) {
    bool holds = begin + run.events.size() <= line.size();
    for (std::size_t i = 0; holds && i < run.events.size(); ++i) {
      for (const std::size_t word : run.events[i]) {
        holds = holds && known_words()[word].asks(line, begin + i);
      }
    }
    if (holds) ends.insert(begin + run.events.size());
  }
  return ends;
}

std::set<std::size_t> ends_of(const AnalysedLine& line, const Run& run,
                              std::set<std::size_t> begins) {
  for (std::size_t i = 0; i < run.times; ++i) begins = ends_of_once(line, run, begins);
  std::set<std::size_t> all = begins;
  while (run.or_more && !begins.empty()) {
    begins = ends_of_once(line, run, begins);
    all.insert(begins.begin(), begins.end());
  }
  return all;
}

/// Every beginning is tried, one after another, and every way to go on from it.
std::string slowly_found(const AnalysedLine& line, const std::vector<Run>& runs) {
  std::string text;
  for (std::size_t begin = 0; begin < line.size();) {
    std::set<std::size_t> ends{begin};
    for (const Run& run : runs) ends = ends_of(line, run, ends);
    if (ends.empty()) {
      ++begin;
      continue;
    }
    const std::size_t end = *ends.rbegin();
    text += (text.empty() ? "" : " ") + std::to_string(begin) + '+' + std::to_string(end - begin);
    begin = end;
  }
  return text;
}

}  // namespace

TEST_CASE("a slow and obvious search finds the same places", "[find]") {
  const std::uint64_t seed = seed_of_this_run();
  INFO("repeat with " << kSeedVariable << "=" << seed);
  Chance chance(seed);
  int places = 0;
  for (int round = 0; round < 1000; ++round) {
    const AnalysedScore score("random", random_score(chance, 40));
    const std::vector<Run> runs = random_runs(chance);
    std::string pattern;
    for (const Run& run : runs) pattern += (pattern.empty() ? "" : " ") + text_of(run);
    INFO(pattern);
    for (const AnalysedPassage passage : score) {
      for (const AnalysedLine line : passage) {
        const std::string hand = line.hand() == Hand::right ? "RH: " : "LH: ";
        const std::string expected = slowly_found(line, runs);
        CHECK(places_in(score, finder_of(hand + pattern)) == expected);
        if (!expected.empty()) ++places;
      }
    }
  }
  CHECK(places > 100);
}

TEST_CASE("the largest patterns are looked for", "[find]") {
  // Events that all differ, so that letters are as long as they can be.
  FindPattern pattern{Hand::right, {WantedRun{}}};
  for (std::size_t number = 1; number <= kMostWantedEvents; ++number) {
    const WantedEvent slower{.pace = Fraction{static_cast<std::int64_t>(number), 1}};
    pattern.runs.front().events.push_back(slower);
  }
  CHECK(Finder(pattern).in(analysed_from(kOctave), nullptr).empty());
  CHECK(Finder(FindPattern{}).in(analysed_from(kOctave), nullptr).empty());
  pattern.runs.front().events.resize(1);
  CHECK(places_in(analysed_from(kOctave), Finder(pattern)) == "2+1 3+1 4+1 5+1 6+1 7+1");
  // Any event so many times is found as often as that.
  std::string many = "1/16";
  for (int bar = 0; bar < 130; ++bar) many += " C4:1 D4:2 E4:3 F4:4 G4:5 F4:4 E4:3 D4:2";
  CHECK(places_in(analysed_from(many), finder_of(". x500")) == "0+500 500+500");
}

TEST_CASE("a figure is found again, transposed or not", "[find]") {
  const Score figure = score_from("1/8 G4:1 A:2 B:3 G4:1+B:5");
  const auto like = [&](const std::string& music, const Likeness& likeness = {}) {
    const FindPatternResult pattern = pattern_like(figure, likeness);
    REQUIRE(pattern.ok());
    return places_in(analysed_from(music), Finder(*pattern.pattern));
  };
  const std::string here = "1/8 G4:1 A:2 B:3 G4:1+B:5";
  CHECK(like(here) == "0+4");
  CHECK(like(here, {.same_keys = true}) == "0+4");
  CHECK(like("1/4 C4:1 D:2 Eb:3 C4:1+Eb:5") == "0+4");  // transposed, minor, twice as slow
  CHECK(like("1/4 C4:1 D:2 Eb:3 C4:1+Eb:5", {.same_keys = true}).empty());
  CHECK(like("1/8 C4:1 D:2 E:3 C4:1+E:4").empty());  // another finger
  CHECK(like("1/8 C4:1 D:2 E:3 C4:1+E:4", {.any_fingers = true}) == "0+4");
  CHECK(like("1/8 C4:1 D:2 1/16 E:3 1/8 C4:1+E:5").empty());  // another rhythm
  CHECK(like("1/8 C4:1 D:2 E:3 C4:1+F:5").empty());           // another chord
  CHECK(like("1/8 C4:1 D:2 C:3 C4:1+E:5").empty());           // another way
  CHECK(like("hand: left\n" + here).empty());                 // another hand
  CHECK(like("C4:1 D:2 E:3 C4:1+E:5").empty());               // rhythm that is not known
  CHECK(like("1/8 C4:1 D:2 r E:3 C4:1+E:5").empty());         // a rest in it
}

TEST_CASE("a figure without values or fingers asks for none", "[find]") {
  const FindPatternResult pattern = pattern_like(score_from("hand: left\nC4 D E:3"));
  REQUIRE(pattern.ok());
  const Finder finder(*pattern.pattern);
  CHECK(places_in(analysed_from("hand: left\n1/8 F3:5 G:4 1/2 A:3 1/4 G:4 A:3 B:2"), finder) ==
        "0+3");
}

TEST_CASE("every bar of random music is like itself in every key", "[find]") {
  Chance chance(7);
  int tried = 0;
  for (int round = 0; round < 30; ++round) {
    const Score piece = only_hand(random_piece(chance), Hand::right);
    const FindPatternResult pattern = pattern_like(piece);
    if (!pattern.ok()) continue;
    const Finder finder(*pattern.pattern);
    CHECK(finder.in(AnalysedScore("piece", piece), nullptr).size() == 1);
    for (const int letters : {1, -2}) {
      const Transposed moved = transpose(piece, {.interval = Interval{letters, letters * 2}});
      if (!moved.problem.empty()) continue;
      ++tried;
      CHECK(finder.in(AnalysedScore("moved", moved.score), nullptr).size() == 1);
    }
  }
  CHECK(tried > 10);
}

TEST_CASE("a figure is of one hand and not too long", "[find]") {
  for (const char* text :
       {"RH: C5:1\nLH: C3:1", "passage: a\nC4:1\npassage: b\nC4:1", "1/4 r", "passage: empty"}) {
    INFO(text);
    const ReadResult result = read_notation(Source("figure", text));
    const FindPatternResult pattern = pattern_like(result.score);
    CHECK_FALSE(pattern.ok());
    CHECK(pattern.problem.starts_with("a figure is of one hand in one passage"));
  }
  std::string many;
  for (std::size_t i = 0; i <= kMostWantedEvents; ++i) many += " C4:1";
  CHECK(pattern_like(score_from(many)).problem ==
        "expected a figure of 500 events at most, found 501");
}

}  // namespace fingerturn
