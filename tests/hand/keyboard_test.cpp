#include "hand/keyboard.hpp"

#include "catch.hpp"
#include "fingerturn/pitch.hpp"

/// Where the keys lie. Sources: the order of the keys on any piano; MIDI 1.0 for their numbers.
namespace fingerturn {
namespace {

TEST_CASE("A0 is the beginning of the keyboard and C8 its fifty-second white key", "[rules][arm]") {
  CHECK(place_of_key(kLowestKey) == 0);
  CHECK(place_of_key(kHighestKey) == 51 * kQuartersInKey);
}

TEST_CASE("white keys are a key apart, black ones half way between", "[rules][arm]") {
  int whites = 0;
  for (int midi = kLowestKey; midi <= kHighestKey; ++midi) {
    CAPTURE(midi);
    if (key_colour(midi) == KeyColour::white) {
      CHECK(place_of_key(midi) == whites++ * kQuartersInKey);
      continue;
    }
    CHECK(2 * place_of_key(midi) == place_of_key(midi - 1) + place_of_key(midi + 1));
  }
  CHECK(whites == 52);
}

TEST_CASE("seven white keys make the octave, also off the piano", "[rules][arm]") {
  for (int midi = -40; midi < 150; ++midi) {
    CAPTURE(midi);
    CHECK(place_of_key(midi + 12) - place_of_key(midi) == 7 * kQuartersInKey);
    CHECK(place_of_key(midi + 1) > place_of_key(midi));
  }
}

}  // namespace
}  // namespace fingerturn
