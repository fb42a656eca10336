#include "fingerturn/transpose.hpp"

#include "catch.hpp"
#include "rules/random_passage.hpp"
#include "views/made_plans.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

/// Music in another key. How intervals are spelled is compared with the library tonal as well
/// (tests/spelling); the names of intervals and keys are the trade's (common practice, no source).
namespace fingerturn {
namespace {

Transposition read_from(const std::string& text) {
  const TranspositionResult result = parse_transposition(text);
  INFO(text << ": " << result.problem);
  REQUIRE(result.value);
  return *result.value;
}

Score moved(const Score& score, const std::string& text) {
  const Transposed result = transpose(score, read_from(text));
  INFO(text << ": " << result.problem);
  REQUIRE(result.problem.empty());
  return result.score;
}

/// The notes of the first hand of the first passage.
std::string notes_of(const Score& score) {
  std::string notes;
  for (const Event& event : score.passages.at(0).lines.at(0).events) {
    for (const Note& note : event.notes)
      notes += (notes.empty() ? "" : " ") + to_string(note.pitch);
  }
  return notes;
}

std::string notes_moved(const std::string& music, const std::string& text) {
  return notes_of(moved(score_from(music), text));
}

Score without_words(Score score) {
  for (Passage& passage : score.passages) {
    passage.title.clear();
    passage.remarks.clear();
  }
  return score;
}

}  // namespace

TEST_CASE("transpositions are read in the words of the trade", "[transpose]") {
  const std::vector<std::pair<std::string, Interval>> intervals{
      {"up a minor third", {2, 3}},
      {"Up A Major Third", {2, 4}},
      {"down a minor third", {-2, -3}},
      {"up a perfect fifth", {4, 7}},
      {"up a fifth", {4, 7}},
      {"down an octave", {-7, -12}},
      {"up two octaves", {14, 24}},
      {"up an augmented fourth", {3, 6}},
      {"up a diminished fifth", {4, 6}},
      {"up a diminished seventh", {6, 9}},
      {"up augmented unison", {0, 1}},
      {"down a minor second", {-1, -1}},
  };
  for (const auto& [text, interval] : intervals) {
    INFO(text);
    CHECK(read_from(text).interval == interval);
  }
  CHECK(read_from("up 3").semitones == 3);
  CHECK(read_from("down 2 semitones").semitones == -2);
  CHECK(read_from("-5").semitones == -5);
  CHECK(read_from("+5").semitones == 5);
  CHECK(read_from("up 1 semitone").semitones == 1);
  CHECK(read_from("to E-flat").tonic == parse_pitch("Eb4"));
  CHECK(read_from("to eb").tonic == parse_pitch("Eb4"));
  CHECK(read_from("to F sharp").tonic == parse_pitch("F#4"));
  CHECK(read_from("to b").tonic == parse_pitch("B4"));
}

TEST_CASE("what is no transposition is refused with what was found", "[transpose]") {
  for (const char* text : {"",
                           " ",
                           "up",
                           "third",
                           "up a third",
                           "up a perfect third",
                           "up a minor fifth",
                           "up a minor ninth",
                           "up 25",
                           "25",
                           "-2147483648",
                           "up -3",
                           "sideways 2",
                           "to H",
                           "to",
                           "to E-flat major key",
                           "up a minor third now please",
                           "up a diminished unison",
                           "to Ebb",
                           "3.5"}) {
    INFO(text);
    const TranspositionResult result = parse_transposition(text);
    CHECK_FALSE(result.value);
    CHECK(result.problem.starts_with("expected an interval as in \"up a minor third\""));
    CHECK(result.problem.find('\n') == std::string::npos);
  }
}

TEST_CASE("notes are spelled by the interval", "[transpose]") {
  CHECK(notes_moved("C4 D E F G A B C5", "up a minor third") == "Eb4 F4 G4 Ab4 Bb4 C5 D5 Eb5");
  CHECK(notes_moved("C4 D E F G A B C5", "up a major third") == "E4 F#4 G#4 A4 B4 C#5 D#5 E5");
  CHECK(notes_moved("C4 Eb Gb", "up an augmented fourth") == "F#4 A4 C5");
  CHECK(notes_moved("B4 C5", "up a minor second") == "C5 Db5");
  CHECK(notes_moved("C5 B4", "down a minor second") == "B4 A#4");
  CHECK(notes_moved("C4 F#4", "down two octaves") == "C2 F#2");
  // More than two signs: the other name of the key.
  CHECK(notes_moved("F##4", "up an augmented second") == "A#4");
}

TEST_CASE("semitones and keys are spelled with the fewest signs", "[transpose]") {
  CHECK(notes_moved("key: C major\nC4 D E", "up 1") == "Db4 Eb4 F4");
  CHECK(notes_moved("key: C major\nC4 D E", "up 2") == "D4 E4 F#4");
  CHECK(notes_moved("key: E major\nE4 F# G#", "up 1") == "F4 G4 A4");
  CHECK(notes_moved("key: E major\nE4 F# G#", "to A-flat") == "Ab4 Bb4 C5");
  CHECK(notes_moved("key: A minor\nA4 B C5", "to C") == "C5 D5 Eb5");
  CHECK(notes_moved("key: A minor\nA4 B C5", "to F#") == "F#4 G#4 A4");
  const Score up = moved(score_from("key: C minor\nC4 Eb4"), "up a major third");
  CHECK(up.passages[0].keys.at(0).value == KeySignature{1, Mode::minor});
  // B major up a major third would have nine sharps.
  const Score far = moved(score_from("key: B major\nB4 D#5"), "up a major third");
  CHECK(far.passages[0].keys.at(0).value == KeySignature{-3, Mode::major});
  CHECK(notes_of(far) == "Eb5 G5");
}

TEST_CASE("there and back is the same score", "[transpose]") {
  const std::uint64_t seed = seed_of_this_run();
  INFO("repeat with " << kSeedVariable << "=" << seed);
  Chance chance(seed);
  const std::vector<std::pair<std::string, std::string>> ways{
      {"up a minor third", "down a minor third"},
      {"up a major second", "down a major second"},
      {"down a perfect fourth", "up a perfect fourth"},
      {"up an octave", "down an octave"},
      {"down a minor sixth", "up a minor sixth"},
  };
  std::size_t compared = 0;
  for (int i = 0; i < 60; ++i) {
    const Score score = random_score(chance, 30);
    for (const auto& [there, back] : ways) {
      const Transposed away = transpose(score, read_from(there));
      if (!away.problem.empty()) continue;  // it would leave the piano
      CHECK(without_words(moved(away.score, back)) == without_words(score));
      ++compared;
    }
  }
  CHECK(compared > 30);
}

TEST_CASE("all that is struck moves by the same semitones, with its fingers", "[transpose]") {
  const Score score = score_from(
      "key: Ab major\nmeter: 3/4\nRH: 1/4 C5:5+Eb4:1 Db5:4 r | Fb4:1 Gb4:2 Ab4:3 |\nLH: 1/2. "
      "Ab2:5 | 1/4 Db3:3 r r |");
  const Transposed all = in_all_keys(score);
  REQUIRE(all.problem.empty());
  REQUIRE(all.score.passages.size() == 12);
  for (std::size_t p = 0; p < 12; ++p) {
    const Passage& passage = all.score.passages[p];
    CHECK(std::abs(passage.keys.at(0).value.fifths) <= 7);
    for (std::size_t l = 0; l < passage.lines.size(); ++l) {
      for (std::size_t e = 0; e < passage.lines[l].events.size(); ++e) {
        const std::vector<Note>& now = passage.lines[l].events[e].notes;
        const std::vector<Note>& before = score.passages[0].lines[l].events[e].notes;
        for (std::size_t n = 0; n < now.size(); ++n) {
          CHECK(midi_number(now[n].pitch) ==
                midi_number(before[n].pitch) + static_cast<int>(p) - 5);
          CHECK(now[n].finger == before[n].finger);
          CHECK(std::abs(now[n].pitch.alter) <= 2);
        }
      }
    }
  }
}

TEST_CASE("what leaves the piano, or has no key to lead from, is refused", "[transpose]") {
  const auto problem = [](const std::string& music, const std::string& text) {
    const Score score = score_from(music);
    const Transposed result = transpose(score, read_from(text));
    CHECK((result.problem.empty() || result.score == score));
    return result.problem;
  };
  CHECK(problem("C4 B7", "up a minor second") == "");
  CHECK(problem("C4 B7", "up a major third") ==
        "bar 1, right hand: B7 would become D#8, which is not on the piano");
  CHECK(problem("hand: left\nC4 B0", "down a major third") ==
        "bar 1, left hand: B0 would become G0, which is not on the piano");
  CHECK(problem("C4", "to D").starts_with("no key signature is written"));
}

TEST_CASE("the title says the way, and a remark where thumbs come to black keys", "[transpose]") {
  const Passage up =
      moved(score_from("passage: Etude\nC4:1 D:2 E:3 | F:1 G:2 |"), "up a major second")
          .passages[0];
  CHECK(up.title == "Etude, up a major second");
  CHECK(up.remarks.empty());
  const Passage thirds =
      moved(score_from("passage: Etude\nC4:1 D:2 E:3 | F:1 G:2 |"), "up a minor third").passages[0];
  REQUIRE(thirds.remarks.size() == 1);
  CHECK(thirds.remarks[0] ==
        "Moved up a minor third, with the fingers that it had, the thumb comes to black keys in "
        "bars 1 and 2: finger --refinger chooses anew.");
  CHECK(moved(score_from("passage: Etude\nC4:1"), "up an octave").passages[0].title ==
        "Etude, up an octave");
  CHECK(moved(score_from("passage: Etude\nC4:1"), "+0").passages[0].title == "Etude");
  CHECK(moved(score_from("C4:1"), "down an octave").passages[0].title == "down an octave");
  for (const char* words :
       {"up a perfect fifth", "down a minor sixth", "up an octave", "down two octaves",
        "up an augmented fourth", "up a diminished fifth"}) {
    CHECK(to_string(*read_from(words).interval) == words);
  }
  CHECK(to_string(Interval{1, 4}) == "up 4 semitones");
  CHECK(to_string(Interval{0, 1}) == "up an augmented unison");
  CHECK(to_string(Interval{0, -1}) == "down 1 semitone");
}

}  // namespace fingerturn
