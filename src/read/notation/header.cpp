#include "read/notation/header.hpp"

#include "score/spelling.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>

namespace fingerturn {
namespace {

/// In the order of HeaderName.
constexpr std::array<std::string_view, 12> kNames{"passage", "composer", "source", "hand",
                                                  "meter",   "tempo",    "bar",    "reach",
                                                  "key",     "note",     "rh",     "lh"};

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

/// A letter from A to G with an accidental: with a colon and a finger it is a note.
bool is_pitch_without_octave(std::string_view word) {
  if (!step_of_letter(word.front())) return false;
  return read_accidental(word.substr(1)).bytes == word.size() - 1;
}

/// With a colon and a finger a note to those who name notes in German.
bool is_german_name(std::string_view word) {
  return word == "h" || word == "H" || !named_in_german(word).empty();
}

}  // namespace

std::optional<HeaderLine> header_of(TextPiece line) noexcept {
  std::size_t length = 0;
  while (length < line.text.size() && (is_letter(line.text[length]) || line.text[length] == '-')) {
    ++length;
  }
  const TextPiece name = line.part(0, length);
  const TextPiece rest = trimmed(line.from(length));
  if (name.text.empty() || !rest.text.starts_with(':')) return std::nullopt;
  if (is_pitch_without_octave(name.text) || is_german_name(name.text)) return std::nullopt;
  HeaderLine header{HeaderName::unknown, name, trimmed(rest.from(1))};
  header.name = header_named(name.text);
  // A blank before the colon is let pass after a known name only: "r :|" is a rest at a repeat.
  const bool blank_before_colon = rest.begin > name.begin + length;
  if (blank_before_colon && header.name == HeaderName::unknown) return std::nullopt;
  return header;
}

HeaderName header_named(std::string_view name) noexcept {
  for (std::size_t i = 0; i < kNames.size(); ++i) {
    if (is_in_lower_case(name, kNames[i])) return static_cast<HeaderName>(i);
  }
  return HeaderName::unknown;
}

std::string_view nearest_header(std::string_view written_name) {
  const std::string lower = lower_case(written_name);
  const std::string_view nearest = nearest_word(lower, kNames);
  if (!nearest.empty()) return nearest;
  // In a short name two letters that changed places are half of the word.
  const auto* const found =
      std::find_if(kNames.begin(), kNames.end(), [&lower](std::string_view name) {
        return std::is_permutation(name.begin(), name.end(), lower.begin(), lower.end());
      });
  return found == kNames.end() ? std::string_view() : *found;
}

}  // namespace fingerturn
