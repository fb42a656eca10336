#pragma once

#include "write/page/layout.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// What the picture of a hand shows and where, before it is drawn. Time runs along; up is to the
/// right, as on the keyboard and for both hands, and down to the left.
namespace fingerturn {

/// A note, double note or chord in the picture.
struct Mark {
  double x = 0;
  std::vector<std::string> fingers;  ///< of its struck notes, lowest first; "?" where missing
  Rotation rotation = Rotation::undetermined;
  std::optional<Direction> play;
  std::optional<Direction> prepare;
  Crossing crossing = Crossing::none;  ///< between the mark before and this one
  std::size_t gesture = 0;
  std::optional<double> place;  ///< of the hand, in white keys from where it began
  std::optional<double> depth;
};

/// The height of what is drawn below the band of the swing; 0 where there is nothing to draw.
struct Lanes {
  bool crossings = false;
  bool depths = false;
  double lowest_place = 0;  ///< in white keys from where the hand began
  double highest_place = 0;

  [[nodiscard]] bool places() const noexcept { return highest_place > lowest_place; }
};

/// A bar line of the hand, where it is not a plain one.
struct StyledBarLine {
  double x = 0;
  BarLineStyle style = BarLineStyle::single;
};

/// A hand's picture. Its marks are made where they are drawn: those of a long line would take more
/// room than its notes.
class HandPicture {
 public:
  /// The picture of line `number` of the layout; both must outlive it.
  HandPicture(const PageLayout& layout, const Line& line, std::size_t number);

  [[nodiscard]] Hand hand() const noexcept { return line_->hand; }
  [[nodiscard]] const Lanes& lanes() const noexcept { return lanes_; }
  [[nodiscard]] const std::vector<StyledBarLine>& bar_lines() const noexcept { return bar_lines_; }

  [[nodiscard]] std::size_t mark_count() const noexcept { return struck_.size(); }
  [[nodiscard]] double x_of(std::size_t mark) const {
    return layout_->middle_of(struck_[mark].column);
  }
  [[nodiscard]] Mark mark(std::size_t number) const;

 private:
  /// Where something is struck, and where the hand is then.
  struct Struck {
    std::uint32_t column = 0;
    double place = 0;
  };

  [[nodiscard]] const ShownEvent& shown_at(std::size_t column) const {
    return *layout_->columns[column].events[number_];
  }
  void set_lanes();

  const PageLayout* layout_;
  const Line* line_;
  std::size_t number_;
  std::vector<Struck> struck_;
  std::vector<StyledBarLine> bar_lines_;
  Lanes lanes_;
};

/// The lines of the picture, counted downwards from its upper edge.
namespace lanes {

inline constexpr double kRight = 15;  ///< marks played to the right
inline constexpr double kMiddle = 36;
inline constexpr double kLeft = 57;  ///< marks played to the left
inline constexpr double kBandEnd = 72;
inline constexpr double kCrossingHeight = 14;
inline constexpr double kDepthHeight = 18;
inline constexpr double kGap = 6;

double crossing_top(const Lanes& lanes) noexcept;
double place_top(const Lanes& lanes) noexcept;
double place_height(const Lanes& lanes) noexcept;
double depth_top(const Lanes& lanes) noexcept;
double height(const Lanes& lanes) noexcept;

}  // namespace lanes

}  // namespace fingerturn
