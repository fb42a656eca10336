#include "score/spelling.hpp"

#include <array>
#include <cctype>

namespace fingerturn {

std::optional<Step> step_of_letter(char letter) noexcept {
  const auto upper = static_cast<char>(std::toupper(static_cast<unsigned char>(letter)));
  const std::size_t at = kStepLetters.find(upper);
  if (at == std::string_view::npos) return std::nullopt;
  return static_cast<Step>(at);
}

std::string named_in_german(std::string_view name) {
  constexpr std::size_t kLongest = 5;  // "gisis"
  if (name.size() < 2 || name.size() > kLongest) return {};
  std::string lower;
  for (const char letter : name) {
    lower += static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
  }
  const bool after_vowel = lower == "as" || lower == "es" || lower == "ases" || lower == "eses";
  if (lower.front() == 'h') lower.front() = 'b';
  const std::optional<Step> step = step_of_letter(lower.front());
  if (!step) return {};
  const std::string letter(1, kStepLetters[static_cast<std::size_t>(*step)]);
  const std::string_view sign = std::string_view(lower).substr(1);
  if (sign == "is") return letter + '#';
  if (sign == "isis") return letter + "##";
  if (sign == "es" || (after_vowel && sign == "s")) return letter + 'b';
  return sign == "eses" || (after_vowel && sign == "ses") ? letter + "bb" : "";
}

AccidentalPrefix read_accidental(std::string_view text) noexcept {
  struct Sign {
    std::string_view text;
    std::int8_t alter;
  };
  // Longer signs first, so that "##" is not read as a sharp and a rest.
  static constexpr std::array<Sign, 11> kSigns{{{"\xF0\x9D\x84\xAA", 2},
                                                {"\xF0\x9D\x84\xAB", -2},
                                                {"\xE2\x99\xAF", 1},
                                                {"\xE2\x99\xAD", -1},
                                                {"\xE2\x99\xAE", 0},
                                                {"##", 2},
                                                {"bb", -2},
                                                {"#", 1},
                                                {"b", -1},
                                                {"x", 2},
                                                {"n", 0}}};
  for (const Sign& sign : kSigns) {
    if (text.starts_with(sign.text)) return {sign.alter, sign.text.size()};
  }
  return {};
}

std::string accidental_text(std::int8_t alter) {
  if (alter == 0) return "n";
  std::string text;
  for (int i = 0; i < alter; ++i) text += '#';
  for (int i = 0; i > alter; --i) text += 'b';
  return text;
}

}  // namespace fingerturn
