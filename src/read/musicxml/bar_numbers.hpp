#pragma once

#include "read/musicxml/written_note.hpp"

#include <cstdint>
#include <string_view>

namespace fingerturn {

/// The number that is printed on a measure.
struct PrintedNumber {
  enum class Kind : std::uint8_t { none, number, words };
  Kind kind = Kind::none;
  std::int32_t value = 0;  ///< of a number
};
PrintedNumber printed_number(std::string_view text);

/// Numbers bars as they are printed, as long as the printed numbers count up. A measure without a
/// number of its own goes on with the bar before it.
class BarNumbers {
 public:
  void number(WrittenMeasure& measure, PrintedNumber printed, bool is_first);

 private:
  std::int32_t bar_ = 0;
};

}  // namespace fingerturn
