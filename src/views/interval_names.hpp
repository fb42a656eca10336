#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

/// The names of the trade for intervals up to an octave, by the letters between their notes.
namespace fingerturn {

inline constexpr std::array<std::string_view, 8> kIntervalNumbers{
    "unison", "second", "third", "fourth", "fifth", "sixth", "seventh", "octave"};
/// The semitones of the major and perfect ones.
inline constexpr std::array<int, 8> kSemitonesOfInterval{0, 2, 4, 5, 7, 9, 11, 12};

constexpr bool is_perfect_interval(int letters) noexcept {
  return letters == 0 || letters == 3 || letters == 4 || letters == 7;
}

/// The letters of an interval by its name; none where there is none of that name.
constexpr std::optional<int> letters_of_interval(std::string_view name) noexcept {
  for (std::size_t letters = 0; letters < kIntervalNumbers.size(); ++letters) {
    if (kIntervalNumbers.at(letters) == name) return static_cast<int>(letters);
  }
  return std::nullopt;
}

/// The semitones of an interval of so many letters and this quality; none where there is no such
/// interval.
constexpr std::optional<int> semitones_of_interval(std::string_view quality, int letters) noexcept {
  const bool perfect = is_perfect_interval(letters);
  const int plain = kSemitonesOfInterval.at(static_cast<std::size_t>(letters));
  if (quality == (perfect ? "perfect" : "major")) return plain;
  if (quality == "minor" && !perfect) return plain - 1;
  if (quality == "augmented") return plain + 1;
  if (quality == "diminished" && letters > 0) return plain - (perfect ? 1 : 2);
  return std::nullopt;
}

}  // namespace fingerturn
