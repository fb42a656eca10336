#pragma once

#include <string>
#include <string_view>

/// Values as the JSON library writes them. Nothing here throws.
namespace fingerturn {

/// A string with its quotation marks; bytes that are not UTF-8 become U+FFFD.
std::string json_text(std::string_view text);

/// A finite number, "72.0".
std::string json_number(double number);

}  // namespace fingerturn
