#pragma once

#include "fingerturn/analysis.hpp"
#include "report/json_text.hpp"

#include <optional>
#include <string>
#include <string_view>

/// Parts that the JSON documents share. Words are our own and need no escaping.
namespace fingerturn {

/// A text that somebody wrote, escaped; null where it is empty.
std::string text_or_null(std::string_view text);

/// Several for every event, so it is written where it is used.
inline void add_decimal_or_null(std::string& out, std::optional<double> number) {
  if (number) {
    add_decimal(out, *number);
  } else {
    out += "null";
  }
}

void add_totals(std::string& out, const Totals& totals);

}  // namespace fingerturn
