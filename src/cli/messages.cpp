#include "cli/messages.hpp"

#include "text/utf8.hpp"

#include <cstdio>
#include <system_error>

#include <fmt/format.h>

namespace fingerturn::cli {

void say(std::string_view message) { say_text(message_line(message)); }

std::string message_line(std::string_view message) {
  return fmt::format("fingerturn: {}\n", printable(message));
}

void say_text(std::string_view text) {
  // Whatever happens to a message, there is nobody left to tell.
  static_cast<void>(std::fwrite(text.data(), 1, text.size(), stderr));
}

std::string listed(std::span<const std::string_view> words, std::string_view conjunction) {
  if (words.size() == 1) return std::string(words.front());
  return fmt::format("{} {} {}", fmt::join(words.first(words.size() - 1), ", "), conjunction,
                     words.back());
}

std::string system_message(int error_number) {
  return std::error_code(error_number, std::generic_category()).message();
}

}  // namespace fingerturn::cli
