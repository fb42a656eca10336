#pragma once

#include <span>
#include <string>
#include <string_view>

namespace fingerturn::cli {

/// A line on standard error, after the program's name.
void say(std::string_view message);
/// That line, to be said later.
std::string message_line(std::string_view message);
/// A text on standard error as it is.
void say_text(std::string_view text);
/// Words in a row, as in "annotate, finger or explain"; there is one or more.
std::string listed(std::span<const std::string_view> words, std::string_view conjunction);
/// What the system says about an error number.
std::string system_message(int error_number);

}  // namespace fingerturn::cli
