#include "read/musicxml/bar_numbers.hpp"

#include "read/musicxml/element.hpp"

namespace fingerturn {

PrintedNumber printed_number(std::string_view text) {
  using Kind = PrintedNumber::Kind;
  if (text.empty()) return {Kind::none, 0};
  const auto number = whole_number<std::int32_t>(text);
  return {number ? Kind::number : Kind::words, number.value_or(0)};
}

void BarNumbers::number(WrittenMeasure& measure, PrintedNumber printed, bool is_first) {
  // What is counted on from here stays below kHighestBar, so short are the texts that are read.
  constexpr std::int32_t kHighestPrinted = 999999;
  const bool is_number = printed.kind == PrintedNumber::Kind::number;
  if (is_number && printed.value <= kHighestPrinted && printed.value >= (is_first ? 0 : bar_ + 1)) {
    bar_ = printed.value;
  } else if (printed.kind != PrintedNumber::Kind::words) {
    ++bar_;
  } else {
    measure.continues_bar = !is_first;
  }
  measure.bar = bar_;
}

}  // namespace fingerturn
