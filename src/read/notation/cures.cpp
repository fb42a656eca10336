#include "read/notation/cures.hpp"

#include "read/notation/header.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// What a header line is called elsewhere, and here.
struct OtherName {
  std::string_view typed;
  std::string_view meant;
};

constexpr std::array<OtherName, 21> kOtherNames{
    {{"author", "composer"},      {"bpm", "tempo"},         {"by", "composer"},
     {"comment", "note"},         {"key-signature", "key"}, {"left", "LH"},
     {"left-hand", "LH"},         {"measure", "bar"},       {"name", "passage"},
     {"piece", "passage"},        {"remark", "note"},       {"right", "RH"},
     {"right-hand", "RH"},        {"signature", "key"},     {"span", "reach"},
     {"speed", "tempo"},          {"text", "note"},         {"time", "meter"},
     {"time-signature", "meter"}, {"title", "passage"},     {"tonality", "key"}}};

std::string_view other_name(std::string_view written) {
  const std::string lower = lower_case(written);
  for (const OtherName& name : kOtherNames) {
    if (name.typed == lower) return name.meant;
  }
  return {};
}

/// The syllables that name notes where letters do not.
struct Syllable {
  std::string_view name;
  std::string_view letter;
};

constexpr std::array<Syllable, 9> kSyllables{{{"do", "C"},
                                              {"ut", "C"},
                                              {"re", "D"},
                                              {"mi", "E"},
                                              {"fa", "F"},
                                              {"sol", "G"},
                                              {"la", "A"},
                                              {"si", "B"},
                                              {"ti", "B"}}};

std::string_view letter_of_syllable(std::string_view word) {
  const std::string name = lower_case(letters_of(word));
  for (const Syllable& syllable : kSyllables) {
    if (syllable.name == name) return syllable.letter;
  }
  return {};
}

}  // namespace

std::string_view letters_of(std::string_view word) noexcept {
  const auto* const end = std::find_if(word.begin(), word.end(), [](char c) {
    return (c < 'a' || c > 'z') && (c < 'A' || c > 'Z');
  });
  return word.substr(0, static_cast<std::size_t>(end - word.begin()));
}

std::string cure_for_colon(TextPiece line) {
  const std::string_view name = letters_of(line.text);
  const TextPiece rest = line.from(name.size());
  const TextPiece value = trimmed(rest);
  if (value.begin == rest.begin && !value.text.empty()) return {};
  const std::string_view other = other_name(name);
  const HeaderName known = header_named(name);
  if (known == HeaderName::unknown && other.empty()) return {};
  constexpr std::size_t kShown = 20;
  const bool hand = known == HeaderName::right_hand || known == HeaderName::left_hand;
  const bool shown =
      value.text.size() <= kShown && !hand && !value.text.empty() && !find_bad_byte(value.text);
  return fmt::format("write {}:{}", other.empty() ? name : other,
                     shown ? " " + std::string(value.text) : "");
}

std::string cure_for_name(std::string_view written_name) {
  const std::string_view other = other_name(written_name);
  if (!other.empty()) return fmt::format("write {}: instead", other);
  const std::string_view nearest = nearest_header(written_name);
  if (!nearest.empty()) return fmt::format("did you mean {}?", nearest);
  return "header lines are passage, composer, source, hand, meter, tempo, key, bar, reach and "
         "note; "
         "lines of notes may begin with RH: or LH:";
}

char finger_meant(std::string_view rest) noexcept {
  constexpr std::string_view kInsteadOfColon = ";-./_([:";
  constexpr std::string_view kBehind = ")]:";
  const bool is_closed = rest.size() == 3 && kBehind.find(rest.back()) != std::string_view::npos;
  if (is_closed) rest.remove_suffix(1);
  const bool is_finger = rest.size() == 2 &&
                         kInsteadOfColon.find(rest.front()) != std::string_view::npos &&
                         rest.back() >= '1' && rest.back() <= '5';
  return is_finger && (is_closed || rest.front() != ':') ? rest.back() : '\0';
}

std::string cure_for_finger(std::string_view word, std::string_view rest) {
  const char finger = finger_meant(rest);
  if (finger == '\0') return {};
  return fmt::format("the finger stands after a colon: {}:{}",
                     word.substr(0, word.size() - rest.size()), finger);
}

bool is_named_by_syllable(std::string_view word) { return !letter_of_syllable(word).empty(); }

std::string cure_for_word(std::string_view word) {
  const std::string name = lower_case(letters_of(word));
  if (name == "trill" || name == "trills" || name == "tremolo") {
    return "behind its note a trill is tr and a tremolo trem, as in D5:3 tr";
  }
  if (const std::string_view letter = letter_of_syllable(word); !letter.empty()) {
    return fmt::format("the note called {} elsewhere is {} here", letters_of(word), letter);
  }
  const bool is_header = word.ends_with(':') && header_named(name) != HeaderName::unknown;
  return is_header ? fmt::format("{} begins a line of its own", word) : std::string();
}

bool is_line_of_fingers(TextPiece line) noexcept {
  std::size_t fingers = 0;
  while (const std::optional<Token> token = next_token(line)) {
    if (token->kind != TokenKind::word) continue;
    const std::string_view word = token->piece.text;
    if (word.size() != 1 || word.front() < '1' || word.front() > '5') return false;
    ++fingers;
  }
  return fingers > 1;
}

}  // namespace fingerturn
