#include "fingerturn/key_signature.hpp"

#include "catch.hpp"
#include "score/keys.hpp"

#include <string>

using namespace fingerturn;

namespace {

/// The letters that a signature makes sharp or flat, in the order C to B.
std::string signs_of(KeySignature key) {
  std::string signs;
  for (int step = 0; step < 7; ++step) {
    const auto alter = alter_in_key(key, static_cast<Step>(step));
    signs += alter == 0 ? '.' : alter > 0 ? '#' : 'b';
  }
  return signs;
}

}  // namespace

TEST_CASE("a key has its signs and its name") {
  struct Case {
    Step tonic;
    std::int8_t alter;
    Mode mode;
    std::string name;
    std::string signs;  // of C D E F G A B
  };
  const auto key = GENERATE(Case{Step::c, 0, Mode::major, "C major", "......."},
                            Case{Step::a, 0, Mode::minor, "A minor", "......."},
                            Case{Step::g, 0, Mode::major, "G major", "...#..."},
                            Case{Step::d, 0, Mode::major, "D major", "#..#..."},
                            Case{Step::b, 0, Mode::minor, "B minor", "#..#..."},
                            Case{Step::c, 1, Mode::major, "C# major", "#######"},
                            Case{Step::a, 1, Mode::minor, "A# minor", "#######"},
                            Case{Step::f, 0, Mode::major, "F major", "......b"},
                            Case{Step::e, -1, Mode::major, "Eb major", "..b..bb"},
                            Case{Step::c, 0, Mode::minor, "C minor", "..b..bb"},
                            Case{Step::c, -1, Mode::major, "Cb major", "bbbbbbb"},
                            Case{Step::a, -1, Mode::minor, "Ab minor", "bbbbbbb"});
  const std::optional<KeySignature> found = key_of(key.tonic, key.alter, key.mode);
  REQUIRE(found);
  CHECK(to_string(*found) == key.name);
  CHECK(signs_of(*found) == key.signs);
}

TEST_CASE("a key of more than seven signs is none") {
  CHECK_FALSE(key_of(Step::g, 1, Mode::major));
  CHECK_FALSE(key_of(Step::f, -1, Mode::major));
  CHECK_FALSE(key_of(Step::e, 1, Mode::minor));
}

TEST_CASE("a signature without a mode is named by its signs") {
  CHECK(to_string(KeySignature{}) == "none");
  CHECK(to_string(KeySignature{1, Mode::unsaid}) == "1 sharp");
  CHECK(to_string(KeySignature{7, Mode::unsaid}) == "7 sharps");
  CHECK(to_string(KeySignature{-1, Mode::unsaid}) == "1 flat");
  CHECK(to_string(KeySignature{-3, Mode::unsaid}) == "3 flats");
}

TEST_CASE("the signs of a bar are remembered for their letter, octave and bar") {
  SignsInBar signs;
  const Pitch f_sharp{Step::f, 1, 4};
  const Pitch f{Step::f, 0, 4};
  CHECK_FALSE(signs.other_than(f, 1));
  signs.write(f_sharp, 1);
  CHECK(signs.other_than(f, 1) == std::int8_t{1});
  CHECK_FALSE(signs.other_than(f_sharp, 1));
  CHECK_FALSE(signs.other_than(f, 2));
  CHECK_FALSE(signs.other_than({Step::f, 0, 5}, 1));
  CHECK_FALSE(signs.other_than({Step::e, 0, 4}, 1));
  signs.write(f, 1);
  CHECK_FALSE(signs.other_than(f, 1));
  signs.write({Step::c, 1, 100}, 1);  // no octave that is written
  CHECK_FALSE(signs.other_than({Step::c, 0, 100}, 1));
}
