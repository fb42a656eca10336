#include "fingerturn/key_signature.hpp"

#include "score/keys.hpp"
#include "score/spelling.hpp"

#include <algorithm>
#include <cstdlib>
#include <string_view>

namespace fingerturn {
namespace {

/// The letters in fifths: the sharps come in this order, the flats from its end.
constexpr std::string_view kInFifths = "FCGDAEB";
/// The place of C among them, and how many fifths a minor key lies above its major of as many
/// signs.
constexpr int kPlaceOfC = 1;
constexpr int kMinorAbove = 3;
constexpr int kLetters = 7;

int place_in_fifths(Step step) noexcept {
  return static_cast<int>(kInFifths.find(kStepLetters[static_cast<std::size_t>(step)]));
}

std::string tonic_of(KeySignature key) {
  const int place = kPlaceOfC + key.fifths + (key.mode == Mode::minor ? kMinorAbove : 0);
  // Seven fifths on, a letter comes again with one more sharp.
  const int turns = (place + kLetters) / kLetters - 1;
  std::string name(1, kInFifths[static_cast<std::size_t>(place - turns * kLetters)]);
  return turns == 0 ? name : name + accidental_text(static_cast<std::int8_t>(turns));
}

}  // namespace

std::int8_t alter_in_key(KeySignature key, Step step) noexcept {
  const int place = place_in_fifths(step);
  if (place < key.fifths) return 1;
  if (kLetters - 1 - place < -key.fifths) return -1;
  return 0;
}

std::optional<KeySignature> key_of(Step tonic, std::int8_t alter, Mode mode) noexcept {
  const int fifths = place_in_fifths(tonic) - kPlaceOfC + kLetters * alter -
                     (mode == Mode::minor ? kMinorAbove : 0);
  if (std::abs(fifths) > kMostSigns) return std::nullopt;
  return KeySignature{static_cast<std::int8_t>(fifths), mode};
}

std::string to_string(KeySignature key) {
  if (key.mode != Mode::unsaid) {
    return tonic_of(key) + (key.mode == Mode::major ? " major" : " minor");
  }
  if (key.fifths == 0) return "none";
  const int count = std::abs(key.fifths);
  return std::to_string(count) + (key.fifths > 0 ? " sharp" : " flat") + (count > 1 ? "s" : "");
}

}  // namespace fingerturn
