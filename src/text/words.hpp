#pragma once

#include <span>
#include <string>
#include <string_view>

/// Words that somebody typed, against those that are known, and words as sentences.
namespace fingerturn {

/// The letters A to Z in lower case, any other as it is.
constexpr char lower_case_of(char letter) noexcept {
  return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

/// The text with the letters A to Z in lower case.
std::string lower_case(std::string_view text);

/// Words as a sentence: with a capital, where A to Z has one, and a full stop.
std::string sentence_of(std::string words);

/// "A, B and C"; nothing of none.
std::string enumerated(std::span<const std::string> words);

/// Whether the text in lower case is this word, or ends with it.
bool is_in_lower_case(std::string_view text, std::string_view word) noexcept;
bool ends_in_lower_case(std::string_view text, std::string_view word) noexcept;

/// The candidate that is closest to a mistyped word, empty where none is close: at most two
/// letters added, left out or changed, and fewer than half of the word.
std::string_view nearest_word(std::string_view word, std::span<const std::string_view> candidates);

}  // namespace fingerturn
