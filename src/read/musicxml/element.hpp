#pragma once

#include "read/reporter.hpp"

#include <charconv>
#include <cstddef>
#include <optional>
#include <string_view>
#include <system_error>

#include <pugixml.hpp>

/// What the MusicXML reader asks of an element. Offsets count from the beginning of the text that
/// was parsed, which must be in UTF-8 already.
namespace fingerturn {

/// The beginning of the element's tag, "<note".
inline Span span_of(pugi::xml_node element) {
  const std::ptrdiff_t name = element.offset_debug();
  if (name <= 0) return {};
  return span_at(static_cast<std::size_t>(name) - 1, 1 + std::string_view(element.name()).size());
}

/// The text of the element without blanks around it.
inline std::string_view text_of(pugi::xml_node element) {
  const auto is_blank = [](char byte) {
    return byte == ' ' || byte == '\t' || byte == '\r' || byte == '\n';
  };
  std::string_view text = element.child_value();
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

/// The text as a whole number; nothing where it is anything else.
template <typename Number>
std::optional<Number> whole_number(std::string_view text) {
  if (text.starts_with('+')) text.remove_prefix(1);
  Number number{};
  const char* const end = text.data() + text.size();
  const auto [stop, problem] = std::from_chars(text.data(), end, number);
  if (problem != std::errc{} || stop != end) return std::nullopt;
  return number;
}

inline bool is_yes(pugi::xml_attribute attribute) {
  return std::string_view(attribute.value()) == "yes";
}

}  // namespace fingerturn
