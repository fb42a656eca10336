#include "catch.hpp"
#include "scales/made_scales.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// Scales in octaves and in thirds. Source of what is held: the rules that docs/fingering.md states
/// for them.
namespace fingerturn {
namespace {

constexpr std::array<Hand, 2> kBothHands{Hand::right, Hand::left};

Line double_line(std::string_view name, Hand hand, int octaves, ScaleNotes notes,
                 ScaleDirection direction = ScaleDirection::up) {
  return scale_passage(name,
                       {.hand = hand, .octaves = octaves, .direction = direction, .notes = notes})
      .lines.at(0);
}

using Pair = std::pair<int, int>;

/// The fingers of two notes, that nearer to the thumb's side first.
Pair pair_of(const Event& event, Hand hand) {
  return {toward_thumb(event, hand).finger.value(),
          toward_fifth_finger(event, hand).finger.value()};
}

template <typename Check>
void for_thirds(bool chromatic, const Check& check) {
  for (const std::string& name : handbook_scale_names()) {
    if (is_of_arpeggio(name) || is_chromatic(name) != chromatic) continue;
    for (const Hand hand : kBothHands) {
      const Line line = double_line(name, hand, 3, ScaleNotes::thirds);
      INFO(name << ", " << to_string(hand) << " hand: " << words_of_line(line));
      check(outward(line), hand);
    }
  }
}

/// How many thumbs are on black keys in an octave from its first third, if groups of three, two and
/// two begin so many thirds before it.
std::ptrdiff_t black_thumbs(const std::vector<Event>& events, Hand hand, std::size_t begin) {
  constexpr std::array<bool, 7> kThumbs{true, false, false, true, false, true, false};
  std::ptrdiff_t count = 0;
  for (std::size_t i = 0; i < kThumbs.size(); ++i) {
    const bool thumb = kThumbs.at((i + begin) % kThumbs.size());
    if (thumb && on_black(toward_thumb(events[i], hand))) ++count;
  }
  return count;
}

/// The keys that a line strikes, mirrored about the D in the middle, where black keys lie alike on
/// both sides.
std::vector<std::vector<int>> mirrored_keys(const Line& line) {
  constexpr int kTwiceTheMiddle = 2 * 62;  // D4
  std::vector<std::vector<int>> keys;
  for (const Event& event : line.events) {
    keys.push_back({kTwiceTheMiddle - key_at(event, 1), kTwiceTheMiddle - key_at(event, 0)});
  }
  return keys;
}

std::vector<std::vector<int>> keys_struck(const Line& line) {
  std::vector<std::vector<int>> keys;
  for (const Event& event : line.events) keys.push_back({key_at(event, 0), key_at(event, 1)});
  return keys;
}

}  // namespace

TEST_CASE("scales in octaves: 1 and 5 on white keys, 1 and 4 on black ones", "[scales]") {
  for (const std::string& name : handbook_scale_names()) {
    for (const Hand hand : kBothHands) {
      const Line line =
          double_line(name, hand, 2, ScaleNotes::octaves, ScaleDirection::up_and_down);
      const Line single = scale_line(name, hand, 2, ScaleDirection::up_and_down);
      REQUIRE(line.events.size() == single.events.size());
      for (std::size_t i = 0; i < line.events.size(); ++i) {
        const Event& event = line.events[i];
        CHECK(key_at(event, 1) - key_at(event, 0) == 12);
        CHECK((key_at(event, 0) - key_at(single.events[i])) % 12 == 0);
        CHECK(pair_of(event, hand) == Pair{1, on_black(event.notes.front()) ? 4 : 5});
      }
    }
  }
}

TEST_CASE("scales in octaves: the hands have no key in common", "[scales]") {
  const Passage passage = scale_passage("C major", {.notes = ScaleNotes::octaves});
  CHECK(passage.title == "C major scale in octaves, both hands, 1 octave");
  for (std::size_t i = 0; i < passage.lines.at(0).events.size(); ++i) {
    CHECK(key_at(passage.lines.at(1).events[i], 1) < key_at(passage.lines.at(0).events[i], 0));
  }
}

TEST_CASE("scales in thirds: neighbours but one of the scale, minor or major", "[scales]") {
  for_thirds(false, [](const std::vector<Event>& events, Hand /*hand*/) {
    for (const Event& event : events) {
      const int width = key_at(event, 1) - key_at(event, 0);
      CHECK((width == 3 || width == 4));
      CHECK(letter_position(event.notes.at(1).pitch) - letter_position(event.notes.at(0).pitch) ==
            2);
    }
  });
  for_thirds(true, [](const std::vector<Event>& events, Hand /*hand*/) {
    for (const Event& event : events) CHECK(key_at(event, 1) - key_at(event, 0) == 3);
  });
}

TEST_CASE("scales in thirds: groups of three and twice two, 3 and 5 once an octave", "[scales]") {
  for_thirds(false, [](const std::vector<Event>& events, Hand hand) {
    int threes = 0;
    for (std::size_t i = 0; i < events.size(); ++i) {
      const Pair pair = pair_of(events[i], hand);
      CHECK((pair == Pair{1, 3} || pair == Pair{2, 4} || pair == Pair{3, 5}));
      if (i >= 7 && i < 14 && pair == Pair{3, 5}) ++threes;
      if (i == 0) continue;
      const Pair before = pair_of(events[i - 1], hand);
      // The next pair, or from 2-4 and 3-5 back to the thumb.
      CHECK((pair.first == before.first + 1 || (pair == Pair{1, 3} && before.first > 1)));
    }
    CHECK(threes == 1);
  });
}

TEST_CASE("scales in thirds: no other place of the groups has fewer thumbs on black keys",
          "[scales]") {
  for_thirds(false, [](const std::vector<Event>& events, Hand hand) {
    std::ptrdiff_t found = 0;
    // An octave without the ends.
    for (std::size_t i = 7; i < 14; ++i) {
      const Note& note = toward_thumb(events[i], hand);
      if (note.finger == kThumb && on_black(note)) ++found;
    }
    for (std::size_t begin = 0; begin < 7; ++begin) {
      CHECK(found <= black_thumbs(events, hand, begin));
    }
    CHECK(found <= 1);
  });
}

TEST_CASE("chromatic thirds: the thumb on white keys only, and no finger twice", "[scales]") {
  for_thirds(true, [](const std::vector<Event>& events, Hand hand) {
    for (std::size_t i = 0; i < events.size(); ++i) {
      const Pair pair = pair_of(events[i], hand);
      CHECK((pair.first != 1 || !on_black(toward_thumb(events[i], hand))));
      CHECK((pair.second != 5 || !on_black(toward_fifth_finger(events[i], hand))));
      if (i == 0) continue;
      const Pair before = pair_of(events[i - 1], hand);
      CHECK(pair.first != before.first);
      CHECK(pair.second != before.second);
    }
  });
}

TEST_CASE("chromatic thirds: the left hand falls as the right hand rises, in the mirror",
          "[scales]") {
  const Line right = double_line("C chromatic", Hand::right, 1, ScaleNotes::thirds);
  const Passage mirrored = scale_passage("C# chromatic", {.hand = Hand::left,
                                                          .direction = ScaleDirection::down,
                                                          .from = parse_pitch("C#4"),
                                                          .notes = ScaleNotes::thirds});
  const Line& left = mirrored.lines.at(0);
  REQUIRE(keys_struck(left) == mirrored_keys(right));
  for (std::size_t i = 0; i < right.events.size(); ++i) {
    CHECK(pair_of(left.events[i], Hand::left) == pair_of(right.events[i], Hand::right));
  }
}

TEST_CASE("scales in thirds: some note by note", "[scales]") {
  CHECK(words_of_line(double_line("C major", Hand::right, 1, ScaleNotes::thirds)) ==
        "C4:1+E4:3 D4:2+F4:4 E4:3+G4:5 F4:1+A4:3 G4:2+B4:4 A4:1+C5:3 B4:2+D5:4 C5:3+E5:5");
  CHECK(words_of_line(double_line("C major", Hand::left, 1, ScaleNotes::thirds)) ==
        "C3:5+E3:3 D3:4+F3:2 E3:3+G3:1 F3:4+A3:2 G3:3+B3:1 A3:5+C4:3 B3:4+D4:2 C4:3+E4:1");
  CHECK(words_of_line(double_line("A harmonic minor", Hand::right, 1, ScaleNotes::thirds)) ==
        "A3:1+C4:3 B3:2+D4:4 C4:3+E4:5 D4:1+F4:3 E4:2+G#4:4 F4:1+A4:3 G#4:2+B4:4 A4:3+C5:5");
  CHECK(words_of_line(
            double_line("C chromatic", Hand::right, 1, ScaleNotes::thirds, ScaleDirection::down)) ==
        "C5:1+Eb5:3 B4:3+D5:5 Bb4:2+Db5:4 A4:1+C5:3 Ab4:2+B4:4 G4:1+Bb4:3 Gb4:2+A4:4 F4:1+Ab4:3 "
        "E4:3+G4:5 Eb4:2+Gb4:4 D4:1+F4:3 Db4:2+E4:4 C4:1+Eb4:3");
}

/// Source: the rules that docs/fingering.md states, our convention.
TEST_CASE("scales in sixths: 1-4 and 2-5 in turn, the other way round no fewer black thumbs",
          "[scales]") {
  for (const std::string& name : handbook_scale_names()) {
    if (is_of_arpeggio(name)) continue;
    for (const Hand hand : kBothHands) {
      const Line line = double_line(name, hand, 2, ScaleNotes::sixths);
      INFO(name << ", " << to_string(hand) << " hand: " << words_of_line(line));
      std::ptrdiff_t thumbs = 0;
      std::ptrdiff_t thumbs_otherwise = 0;
      const std::vector<Event> events = outward(line);
      const bool thumb_first = pair_of(events.front(), hand) == Pair{1, 4};
      for (std::size_t i = 0; i < events.size(); ++i) {
        const int width = key_at(events[i], 1) - key_at(events[i], 0);
        CHECK((width == 9 || (width == 8 && !is_chromatic(name))));
        const bool thumb = (i % 2 == 0) == thumb_first;
        CHECK(pair_of(events[i], hand) == (thumb ? Pair{1, 4} : Pair{2, 5}));
        if (on_black(toward_thumb(events[i], hand))) ++(thumb ? thumbs : thumbs_otherwise);
      }
      CHECK(thumbs <= thumbs_otherwise);
    }
  }
}

TEST_CASE("scales in sixths: some note by note", "[scales]") {
  CHECK(words_of_line(double_line("C major", Hand::right, 1, ScaleNotes::sixths)) ==
        "C4:1+A4:4 D4:2+B4:5 E4:1+C5:4 F4:2+D5:5 G4:1+E5:4 A4:2+F5:5 B4:1+G5:4 C5:2+A5:5");
  CHECK(words_of_line(double_line("C chromatic", Hand::right, 1, ScaleNotes::sixths)) ==
        "C4:2+A4:5 C#4:1+A#4:4 D4:2+B4:5 D#4:1+C5:4 E4:2+C#5:5 F4:1+D5:4 F#4:2+D#5:5 G4:1+E5:4 "
        "G#4:2+F5:5 A4:1+F#5:4 A#4:2+G5:5 B4:1+G#5:4 C5:2+A5:5");
}

}  // namespace fingerturn
