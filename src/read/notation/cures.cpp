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

std::string cure_for_finger(std::string_view word, std::string_view rest) {
  constexpr std::string_view kInsteadOfColon = ";-./_";
  const bool is_finger = rest.size() == 2 &&
                         kInsteadOfColon.find(rest.front()) != std::string_view::npos &&
                         rest.back() >= '1' && rest.back() <= '5';
  if (!is_finger) return {};
  return fmt::format("the finger stands after a colon: {}:{}",
                     word.substr(0, word.size() - rest.size()), rest.back());
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
