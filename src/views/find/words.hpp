#pragma once

#include "fingerturn/find.hpp"

#include <string>
#include <string_view>

namespace fingerturn {

/// Adds what a word of a pattern asks for, in small letters: "double", "4", "1+3+5", "up-third",
/// "thirds", "twist". Says why where it is no word, or nothing can be both; else empty.
std::string add_word(std::string_view word, WantedEvent& wanted);

}  // namespace fingerturn
