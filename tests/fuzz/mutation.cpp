#include "mutation.hpp"

#include "xml_mutation.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace fingerturn::tests {
namespace {

constexpr std::string_view kBounds = "<> \n|";
constexpr std::string_view kDigits = "0123456789";

/// Numbers that readers must not stumble over.
constexpr std::array<std::string_view, 14> kNumbers{"0",
                                                    "-1",
                                                    "1",
                                                    "6",
                                                    "999999",
                                                    "1000000",
                                                    "2147483647",
                                                    "2147483648",
                                                    "-2147483648",
                                                    "9223372036854775807",
                                                    "18446744073709551616",
                                                    "0.5",
                                                    "1e308",
                                                    "999983"};

/// The place of the next bound, or the end.
std::size_t bound_after(const std::string& text, std::size_t place) {
  return std::min(text.find_first_of(kBounds, place), text.size());
}

/// Where the element ends that begins here; nothing where none does.
std::optional<std::size_t> end_of_element(const std::string& text, std::size_t begin) {
  const std::size_t name_end = text.find_first_of(" />", begin);
  const std::size_t tag_end = text.find('>', begin);
  if (tag_end >= text.size() || text[begin] != '<' || text[begin + 1] == '/') return std::nullopt;
  if (text[tag_end - 1] == '/') return tag_end + 1;
  const std::string closing = "</" + text.substr(begin + 1, name_end - begin - 1) + '>';
  const std::size_t end = text.find(closing, tag_end);
  if (end == std::string::npos) return std::nullopt;
  return end + closing.size();
}

}  // namespace

std::string Mutation::one_of(const std::vector<std::string>& texts) {
  constexpr std::size_t kMostTimes = 4;
  std::string text = texts[below(texts.size())];
  const std::string& other = texts[below(texts.size())];
  for (std::size_t times = 1 + below(kMostTimes); times > 0; --times) spoil(text, other);
  return text;
}

Mutation::Piece Mutation::piece_of(const std::string& text) {
  constexpr std::size_t kMostBounds = 12;
  if (text.empty()) return {};
  const std::size_t begin = bound_after(text, below(text.size()));
  const bool whole = below(8) > 0;
  const std::optional<std::size_t> element =
      whole && begin < text.size() ? end_of_element(text, begin) : std::nullopt;
  if (element) return {begin, *element - begin};
  std::size_t end = begin;
  for (std::size_t bounds = 1 + below(kMostBounds); bounds > 0 && end < text.size(); --bounds) {
    end = bound_after(text, end + 1);
  }
  return {begin, end - begin};
}

void Mutation::spoil(std::string& text, const std::string& other) {
  if (const auto changed = below(2) > 0 ? change_xml(text, engine_) : std::nullopt) {
    text = *changed;
    return;
  }
  const Piece piece = piece_of(text);
  const Piece from = piece_of(text);
  const Piece strange = piece_of(other);
  switch (below(12)) {
    case 0:
      text.erase(piece.begin, piece.size);
      break;
    case 1:
      text.insert(piece.begin, text.substr(piece.begin, piece.size));
      break;
    case 2:
      text.insert(piece.begin, text.substr(from.begin, from.size));
      break;
    case 3:
      text.insert(piece.begin, other.substr(strange.begin, strange.size));
      break;
    case 4:
      text.resize(text.size() - below(text.size() / 4 + 1));
      break;
    case 5:
      change_byte(text);
      break;
    default:
      change_number(text);
  }
}

void Mutation::change_number(std::string& text) {
  if (text.empty()) return;
  const std::size_t begin = text.find_first_of(kDigits, below(text.size()));
  if (begin == std::string::npos) return;
  const std::size_t end = std::min(text.find_first_not_of(kDigits, begin), text.size());
  text.replace(begin, end - begin, kNumbers.at(below(kNumbers.size())));
}

void Mutation::change_byte(std::string& text) {
  constexpr std::size_t kBytes = 256;
  if (!text.empty()) text[below(text.size())] = static_cast<char>(below(kBytes));
}

}  // namespace fingerturn::tests
