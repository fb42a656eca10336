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

/// `"hand":"left","bar":12,"beat":2.5` of a place, each null where it is not known.
void add_hand_and_moment(JsonWriter& json, const MusicalPlace& place);

/// How an event is struck and turns: its notes, kind, side, swings and what passes.
void add_played(JsonWriter& json, const AnalysedLine& line, const AnalysedEvent& event);

/// One line about a file, or all where `source` is none, after what all such lines begin with: the
/// name of the form, its version, the file and why it could not be read.
template <typename Write>
std::string line_about(std::string_view form, std::optional<std::string_view> source,
                       std::optional<std::string_view> error, const Write& write) {
  return text_of(0, [&](TextOut& out) {
    JsonWriter json(out);
    json.document([&] {
      json.member<"format">(Word{form});
      json.member<"version">(1);
      json.member<"source">(source);
      json.member<"error">(error);
      write(json);
    });
  });
}

}  // namespace fingerturn
