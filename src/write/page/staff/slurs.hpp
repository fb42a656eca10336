#pragma once

#include "fingerturn/score.hpp"
#include "write/page/ink/skyline.hpp"
#include "write/page/staff/staff_chord.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace fingerturn {

/// A slur that has begun: where, in this system, and which way the stems under it go.
struct SlurFrom {
  double x = 0;
  bool is_begin = false;  ///< it begins here; else it comes from the system before
  std::size_t stems_up = 0;
  std::size_t chords = 0;
};

/// The slurs of a hand that have begun and not ended, of each voice; they follow a system into the
/// next.
struct OpenSlurs {
  std::array<std::vector<SlurFrom>, 2> voices;
  std::int32_t bar = 0;  ///< the last that was seen
};

/// Gathers the slurs of a staff in a system, and draws them last, so that they pass over what is
/// there.
class Slurs {
 public:
  /// `first` is where the first thing of the system may begin.
  Slurs(OpenSlurs& open, double first);

  /// Bars come in their order; slurs do not go on over bars that are skipped.
  void begin_bar(std::int32_t bar);
  /// A chord of the line at its place; `two_voices`: another voice shares the staff.
  void add(const Line& line, const StaffChord& chord, double x, bool two_voices);

  /// Draws all that lies in the system up to its end, and adds it to the skyline.
  Inks draw(double end, Skyline& sky);

 private:
  /// A slur, or its part in this system.
  struct Span {
    double from = 0;
    double to = 0;
    bool begins = false;
    bool ends = false;
    bool above = false;
  };

  void end_one(std::size_t voice, double x);
  [[nodiscard]] Span span_of(const SlurFrom& slur, std::size_t voice, double to, bool ends) const;

  OpenSlurs& open_;
  double first_;
  bool two_voices_ = false;
  std::vector<Span> spans_;
};

}  // namespace fingerturn
