#pragma once

#include "fingerturn/key_signature.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>

namespace fingerturn {

/// The signature of the key on a tonic; none where it would take more than seven signs.
std::optional<KeySignature> key_of(Step tonic, std::int8_t alter, Mode mode) noexcept;

/// The accidentals that are written in the bar a hand is in. Each holds for its own note only; who
/// remembers one may take the letter after it for the same note.
class SignsInBar {
 public:
  void write(Pitch pitch, std::int32_t bar) noexcept {
    if (is_followed(pitch)) signs_[place_of(pitch)] = {bar, pitch.alter};
  }
  /// The sign that was written last on this letter and octave in the bar, where it says something
  /// else than the pitch: then a reader asks whether a sign was left out.
  [[nodiscard]] std::optional<std::int8_t> other_than(Pitch pitch,
                                                      std::int32_t bar) const noexcept {
    if (!is_followed(pitch)) return std::nullopt;
    const Sign& sign = signs_[place_of(pitch)];
    if (sign.bar != bar || sign.alter == pitch.alter) return std::nullopt;
    return sign.alter;
  }

 private:
  struct Sign {
    std::int32_t bar = -1;
    std::int8_t alter = 0;
  };
  static constexpr std::size_t kLetters = 7;
  static constexpr std::size_t kOctaves = 10;

  static std::size_t place_of(Pitch pitch) noexcept {
    return static_cast<std::size_t>(pitch.octave) * kLetters + static_cast<std::size_t>(pitch.step);
  }
  static bool is_followed(Pitch pitch) noexcept { return place_of(pitch) < kLetters * kOctaves; }

  std::array<Sign, kLetters * kOctaves> signs_{};
};

}  // namespace fingerturn
