// Made by make_outlines.py.
#pragma once

#include "write/page/ink/outline.hpp"

#include <cstdint>

namespace fingerturn {

/// The musical signs of which there is an outline.
enum class Glyph : std::uint8_t {
  g_clef,
  f_clef,
  brace,
  meter_0,
  meter_1,
  meter_2,
  meter_3,
  meter_4,
  meter_5,
  meter_6,
  meter_7,
  meter_8,
  meter_9,
  tuplet_0,
  tuplet_1,
  tuplet_2,
  tuplet_3,
  tuplet_4,
  tuplet_5,
  tuplet_6,
  tuplet_7,
  tuplet_8,
  tuplet_9,
  head_double_whole,
  head_whole,
  head_half,
  head_black,
  dot,
  flag_8_up,
  flag_8_down,
  flag_16_up,
  flag_16_down,
  flag_32_up,
  flag_32_down,
  flag_64_up,
  flag_64_down,
  flag_128_up,
  flag_128_down,
  flat,
  natural,
  sharp,
  double_sharp,
  double_flat,
  rest_double_whole,
  rest_whole,
  rest_half,
  rest_quarter,
  rest_8,
  rest_16,
  rest_32,
  rest_64,
  rest_128,
  fermata,
  breath,
  trill,
  tremolo,
  arpeggio,
  dynamic_p,
  dynamic_m,
  dynamic_f,
  dynamic_r,
  dynamic_s,
  dynamic_z
};

inline constexpr std::size_t kGlyphs = 63;

const Outline& outline_of(Glyph glyph) noexcept;

}  // namespace fingerturn
