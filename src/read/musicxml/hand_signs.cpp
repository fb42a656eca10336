#include "read/musicxml/hand_signs.hpp"

#include "read/musicxml/element.hpp"
#include "text/words.hpp"

#include <array>
#include <cstddef>
#include <string>

namespace fingerturn {
namespace {

struct HandName {
  std::string_view first;
  std::string_view second;
  Hand hand;
};

/// What scores write out, in Italian, French, English and German.
constexpr std::array<HandName, 8> kHandNames{{{"mano", "destra", Hand::right},
                                              {"main", "droite", Hand::right},
                                              {"right", "hand", Hand::right},
                                              {"rechte", "hand", Hand::right},
                                              {"mano", "sinistra", Hand::left},
                                              {"main", "gauche", Hand::left},
                                              {"left", "hand", Hand::left},
                                              {"linke", "hand", Hand::left}}};

bool is_letter(char sign) {
  const auto byte = static_cast<unsigned char>(sign);
  return (sign >= 'a' && sign <= 'z') || byte >= 0x80;
}

/// The first letters of a text that stand together, which are dropped from it.
std::string_view take_word(std::string_view& text) {
  std::size_t begin = 0;
  while (begin < text.size() && !is_letter(text[begin])) ++begin;
  std::size_t end = begin;
  while (end < text.size() && is_letter(text[end])) ++end;
  const std::string_view word = text.substr(begin, end - begin);
  text.remove_prefix(end);
  return word;
}

/// Of the first letters of the two words of a name: "md", "lh".
std::optional<Hand> hand_of_initials(char first, char second) {
  for (const HandName& name : kHandNames) {
    if (name.first.front() == first && name.second.front() == second) return name.hand;
  }
  return std::nullopt;
}

/// Two letters alone are a sign as they are; where more follows they need a full stop, so that no
/// other words are taken for one.
std::optional<Hand> hand_in_short(std::string_view first, std::string_view rest) {
  std::string_view after = rest;
  const std::string_view second = first.size() == 1 ? take_word(after) : std::string_view{};
  if (first.size() + second.size() != 2) return std::nullopt;
  const bool has_stop = rest.starts_with('.');
  if (!has_stop && !take_word(after).empty()) return std::nullopt;
  return second.empty() ? hand_of_initials(first[0], first[1])
                        : hand_of_initials(first[0], second[0]);
}

}  // namespace

std::optional<Hand> hand_called(std::string_view text) {
  constexpr std::size_t kLongest = 64;
  const std::string lower = lower_case(text.substr(0, kLongest));
  std::string_view rest = lower;
  const std::string_view first = take_word(rest);
  if (const auto hand = hand_in_short(first, rest)) return hand;
  const std::string_view second = take_word(rest);
  for (const HandName& name : kHandNames) {
    if (name.first == first && name.second == second) return name.hand;
  }
  return std::nullopt;
}

std::optional<Hand> hand_in_words(pugi::xml_node direction) {
  for (const pugi::xml_node type : direction.children("direction-type")) {
    for (const pugi::xml_node words : type.children("words")) {
      if (const auto hand = hand_called(text_of(words))) return hand;
    }
  }
  return std::nullopt;
}

std::optional<Hand> hand_in_lyrics(pugi::xml_node note) {
  for (const pugi::xml_node lyric : note.children("lyric")) {
    if (const auto hand = hand_called(text_of(lyric.child("text")))) return hand;
  }
  return std::nullopt;
}

}  // namespace fingerturn
