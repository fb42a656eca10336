#pragma once

#include "fingerturn/analysis.hpp"
#include "write/json/values.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Parts that the JSON documents share. Words are our own and need no escaping.
namespace fingerturn {

/// A text that somebody wrote, escaped; null where it is empty.
std::string text_or_null(std::string_view text);

/// What follows is written several times for every event, and so where it is used.
inline void add_word(std::string& out, std::string_view word) {
  const std::size_t begin = out.size();
  out.resize(begin + word.size() + 2, '"');
  std::copy(word.begin(), word.end(), out.data() + begin + 1);
}

inline void add_word_or_null(std::string& out, std::optional<std::string_view> word) {
  if (!word) {
    out += "null";
  } else {
    add_word(out, *word);
  }
}

template <typename Value>
std::optional<std::string_view> name_or_none(const std::optional<Value>& value) {
  if (!value) return std::nullopt;
  return name_of(*value);
}

inline std::optional<std::string_view> crossing_or_none(Crossing crossing) {
  if (crossing == Crossing::none) return std::nullopt;
  return name_of(crossing);
}

inline void add_decimal_or_null(std::string& out, std::optional<double> number) {
  if (number) {
    add_decimal(out, *number);
  } else {
    out += "null";
  }
}

inline void add_finger_or_null(std::string& out, std::optional<Finger> finger) {
  if (finger) {
    add_number(out, *finger);
  } else {
    out += "null";
  }
}

inline void add_fingers(std::string& out, std::span<const Finger> fingers) {
  bool first = true;
  for (const Finger finger : fingers) {
    if (!first) out += ',';
    add_number(out, finger);
    first = false;
  }
}

/// The fingers on the key of a struck note: `"finger":1,"changes_to":[]`.
inline void add_fingers_on_key(std::string& out, const Line& line, std::size_t event,
                               const Note& note) {
  out += R"("finger":)";
  add_finger_or_null(out, note.finger);
  out += R"(,"changes_to":[)";
  if (note.finger && (note.tied || !note.changes_to.empty())) {
    const std::vector<Finger> fingers = fingers_on_key(line, event, note);
    add_fingers(out, std::span(fingers).subspan(1));
  }
  out += ']';
}

void add_totals(std::string& out, const Totals& totals);

}  // namespace fingerturn
