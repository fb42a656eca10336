#include "text/words.hpp"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <vector>

namespace fingerturn {
namespace {

/// How many letters must be added, left out or changed to turn one word into the other.
std::size_t edit_distance(std::string_view from, std::string_view to) {
  std::vector<std::size_t> row(to.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < from.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i + 1;
    for (std::size_t j = 0; j < to.size(); ++j) {
      const std::size_t changed = diagonal + (from[i] == to[j] ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({row[j + 1] + 1, row[j] + 1, changed});
    }
  }
  return row.back();
}

}  // namespace

std::string lower_case(std::string_view text) {
  std::string lower(text);
  for (char& letter : lower) letter = lower_case_of(letter);
  return lower;
}

std::string sentence_of(std::string words) {
  if (!words.empty() && words[0] >= 'a' && words[0] <= 'z') {
    words[0] = static_cast<char>(words[0] - 'a' + 'A');
  }
  return words + '.';
}

std::string enumerated(std::span<const std::string> words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " and " : ", ";
    text += words[i];
  }
  return text;
}

bool is_in_lower_case(std::string_view text, std::string_view word) noexcept {
  return std::equal(text.begin(), text.end(), word.begin(), word.end(),
                    [](char letter, char wanted) { return lower_case_of(letter) == wanted; });
}

bool ends_in_lower_case(std::string_view text, std::string_view word) noexcept {
  if (text.size() < word.size()) return false;
  text.remove_prefix(text.size() - word.size());
  return is_in_lower_case(text, word);
}

std::string_view nearest_word(std::string_view word, std::span<const std::string_view> candidates) {
  // A long word is no typing mistake, and comparing it would take long.
  constexpr std::size_t kLongestWord = 40;
  constexpr std::size_t kMostEdits = 2;
  if (word.size() > kLongestWord) return {};
  std::string_view nearest;
  std::size_t fewest = kMostEdits + 1;
  for (const std::string_view candidate : candidates) {
    const std::size_t edits = edit_distance(word, candidate);
    if (edits < fewest && 2 * edits < word.size()) {
      fewest = edits;
      nearest = candidate;
    }
  }
  return nearest;
}

}  // namespace fingerturn
