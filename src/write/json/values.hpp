#pragma once

#include <cstdint>
#include <string>
#include <string_view>

/// Values as the JSON library writes them. Nothing here throws.
namespace fingerturn {

/// A string with its quotation marks; bytes that are not UTF-8 become U+FFFD.
std::string json_text(std::string_view text);

/// A number, "72.0"; null where it is none.
std::string json_number(double number);

/// Adds a whole number.
void add_number(std::string& out, std::int64_t number);

/// Adds a number rounded to two decimals, "12.5" or "-3.0". Written by hand, since every event has
/// several of them.
void add_decimal(std::string& out, double number);

}  // namespace fingerturn
