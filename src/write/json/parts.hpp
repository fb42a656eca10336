#pragma once

#include "fingerturn/analysed.hpp"
#include "write/json/writer.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

/// Parts that the JSON documents share.
namespace fingerturn {

/// A text that somebody wrote; none where it is empty.
std::optional<std::string_view> text_or_none(const std::string& text);

/// The meter at the beginning; none where none is written.
std::optional<std::string> first_meter(const Passage& passage);

/// What passes at an event; none where nothing does.
std::optional<Word> word_of(Crossing crossing);

/// The struck notes of an event as objects, each with what `add` adds after its pitch.
template <typename Add>
void add_struck_notes(JsonWriter& json, const Event& event, const Add& add) {
  json.member<"notes">([&] {
    json.list(event.notes, [&](const Note& note) {
      if (note.held) return;
      json.object([&] {
        json.member<"pitch">(Word{to_string(note.pitch)});
        add(note);
      });
    });
  });
}

/// The fingers on the key of a struck note: `"finger":1,"changes_to":[]`.
void add_fingers_on_key(JsonWriter& json, const Line& line, std::size_t event, const Note& note);

void add_totals(JsonWriter& json, const Totals& totals);
void add_watch_counts(JsonWriter& json, const WatchCounts& counts);

}  // namespace fingerturn
