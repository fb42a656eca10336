#pragma once

#include <array>
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

}  // namespace fingerturn
