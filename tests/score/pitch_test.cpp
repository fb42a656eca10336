#include "fingerturn/pitch.hpp"

#include "catch.hpp"
#include "score/spelling.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

using namespace fingerturn;

namespace {

/// The twelve keys of an octave with sharps and with flats, from C up. Common practice.
constexpr std::array<std::string_view, 12> kSharps{"C",  "C#", "D",  "D#", "E",  "F",
                                                   "F#", "G",  "G#", "A",  "A#", "B"};
constexpr std::array<std::string_view, 12> kFlats{"C",  "Db", "D",  "Eb", "E",  "F",
                                                  "Gb", "G",  "Ab", "A",  "Bb", "B"};

std::string name_of_key(const std::array<std::string_view, 12>& names, int midi) {
  return std::string(names.at(static_cast<std::size_t>(midi % 12))) + std::to_string(midi / 12 - 1);
}

Pitch pitch_of(std::string_view text) {
  const std::optional<Pitch> pitch = parse_pitch(text);
  REQUIRE(pitch.has_value());
  return *pitch;
}

}  // namespace

// MIDI 1.0 (MIDI Manufacturers Association): middle C is note number 60; a piano of 88 keys goes
// from 21 to 108.
TEST_CASE("note numbers are those of MIDI 1.0") {
  CHECK(midi_number(pitch_of("C4")) == 60);
  CHECK(midi_number(pitch_of("A0")) == 21);
  CHECK(midi_number(pitch_of("C8")) == 108);
  CHECK(midi_number(pitch_of("A4")) == 69);
  CHECK(kHighestKey - kLowestKey + 1 == 88);
}

TEST_CASE("each of the 88 keys is read and printed with sharps and with flats") {
  for (int midi = kLowestKey; midi <= kHighestKey; ++midi) {
    for (const auto& names : {kSharps, kFlats}) {
      const std::string name = name_of_key(names, midi);
      const Pitch pitch = pitch_of(name);
      CAPTURE(name);
      CHECK(midi_number(pitch) == midi);
      CHECK(on_the_piano(pitch));
      CHECK(to_string(pitch) == name);
      const bool plain = name.size() == 2;
      CHECK((key_colour(midi) == KeyColour::white) == plain);
    }
  }
}

TEST_CASE("a piano has 52 white and 36 black keys") {
  int white = 0;
  for (int midi = kLowestKey; midi <= kHighestKey; ++midi) {
    white += key_colour(midi) == KeyColour::white ? 1 : 0;
  }
  CHECK(white == 52);
}

TEST_CASE("a pitch keeps its spelling") {
  CHECK(pitch_of("C#4") == Pitch{Step::c, 1, 4});
  CHECK(pitch_of("Db4") == Pitch{Step::d, -1, 4});
  CHECK(pitch_of("C#4") != pitch_of("Db4"));
  CHECK(midi_number(pitch_of("C#4")) == midi_number(pitch_of("Db4")));
  // The octave number belongs to the letter: common practice.
  CHECK(midi_number(pitch_of("Cb4")) == 59);
  CHECK(midi_number(pitch_of("B#3")) == 60);
  CHECK(midi_number(pitch_of("F##4")) == 67);
  CHECK(midi_number(pitch_of("Ebb4")) == 62);
}

TEST_CASE("printing and reading a pitch gives the same pitch") {
  for (int letter = 0; letter < 7; ++letter) {
    for (std::int8_t alter = -2; alter <= 2; ++alter) {
      for (std::int8_t octave = 0; octave <= 9; ++octave) {
        const Pitch pitch{static_cast<Step>(letter), alter, octave};
        CAPTURE(to_string(pitch));
        CHECK(parse_pitch(to_string(pitch)) == pitch);
      }
    }
  }
}

TEST_CASE("accidentals are read from ASCII and from their signs") {
  struct Case {
    const char* text;
    const char* plain;
  };
  const Case c =
      GENERATE(Case{"f\u266F4", "F#4"}, Case{"B\u266D3", "Bb3"}, Case{"B\u266E3", "B3"},
               Case{"F\U0001D12A5", "F##5"}, Case{"E\U0001D12B5", "Ebb5"}, Case{"Fx5", "F##5"},
               Case{"bb3", "Bb3"}, Case{"b3", "B3"}, Case{"bbb3", "Bbb3"}, Case{"g#0", "G#0"});
  CAPTURE(c.text);
  CHECK(to_string(pitch_of(c.text)) == c.plain);
}

TEST_CASE("what is no pitch is not read as one") {
  const std::string text = GENERATE("", "C", "4", "H4", "C44", "C-1", "C 4", " C4", "C4 ", "C###4",
                                    "Cbbb4", "C#b4", "C\u266F", "Cx", "CX4", "r", "C4:1", "\u266F4",
                                    "C\u266F\u266F4", "C\xE2\x99", "\xFF", "Ces4");
  CAPTURE(text);
  CHECK_FALSE(parse_pitch(text).has_value());
  CHECK_FALSE(parse_pitch(std::string_view("\0004", 2)).has_value());
}

TEST_CASE("the piano ends at A0 and C8, however they are spelled") {
  struct Case {
    const char* pitch;
    bool on_it;
  };
  const Case c =
      GENERATE(Case{"A0", true}, Case{"Ab0", false}, Case{"G##0", true}, Case{"Bbb0", true},
               Case{"C8", true}, Case{"C#8", false}, Case{"B#7", true}, Case{"B##7", false},
               Case{"Cb8", true}, Case{"Dbb8", true}, Case{"D8", false}, Case{"Cb9", false},
               Case{"C0", false});
  CAPTURE(c.pitch);
  CHECK(on_the_piano(pitch_of(c.pitch)) == c.on_it);
}

TEST_CASE("letter steps leave accidentals out") {
  CHECK(letter_position(pitch_of("C4")) == 28);
  CHECK(letter_position(pitch_of("D4")) == 29);
  CHECK(letter_position(pitch_of("B3")) == 27);
  CHECK(letter_position(pitch_of("Cb4")) == letter_position(pitch_of("C#4")));
}

TEST_CASE("the pieces of a pitch are read one by one") {
  CHECK(step_of_letter('c') == Step::c);
  CHECK(step_of_letter('B') == Step::b);
  CHECK_FALSE(step_of_letter('H').has_value());
  CHECK_FALSE(step_of_letter('\0').has_value());
  CHECK_FALSE(step_of_letter('\xE4').has_value());
  CHECK(read_accidental("##4").bytes == 2);
  CHECK(read_accidental("##4").alter == 2);
  CHECK(read_accidental("b4").alter == -1);
  CHECK(read_accidental("4").bytes == 0);
  CHECK(read_accidental("").bytes == 0);
}
