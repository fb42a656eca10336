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
