#pragma once

#include "fingerturn/report.hpp"
#include "write/page/swing_picture.hpp"

#include <string_view>
#include <vector>

namespace fingerturn {

/// A small picture with what it means.
struct LegendSample {
  std::vector<Mark> marks;
  Lanes lanes;
  std::string_view words;
};

/// How wide the pictures of the legend are; they are as high as a band with its crossings.
inline constexpr double kSampleWidth = 88;

/// What the signs of the picture mean; only those that the report uses.
std::vector<LegendSample> picture_legend(const AnalysedScore& analysed);

/// What the lines of the picture mean that need no sample.
std::vector<std::string_view> picture_notes(const AnalysedScore& analysed);

}  // namespace fingerturn
