#pragma once

#include "fingerturn/analysis.hpp"

#include <optional>
#include <string>
#include <string_view>

/// Parts that the JSON documents share. Words are our own and need no escaping.
namespace fingerturn {

/// A text that somebody wrote, escaped; null where it is empty.
std::string text_or_null(std::string_view text);

void add_decimal_or_null(std::string& out, std::optional<double> number);

void add_totals(std::string& out, const Totals& totals);

}  // namespace fingerturn
