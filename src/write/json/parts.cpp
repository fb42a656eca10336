#include "write/json/parts.hpp"

#include "text/numbers.hpp"

#include <span>
#include <vector>

namespace fingerturn {

std::optional<std::string_view> text_or_none(const std::string& text) {
  return text.empty() ? std::nullopt : std::optional<std::string_view>(text);
}

std::optional<std::string> first_meter(const Passage& passage) {
  if (passage.meters.empty()) return std::nullopt;
  return to_string(passage.meters.front().value);
}

std::optional<Word> word_of(Crossing crossing) {
  if (crossing == Crossing::none) return std::nullopt;
  return Word{name_of(crossing)};
}

void add_fingers_on_key(JsonWriter& json, const Line& line, std::size_t event, const Note& note) {
  json.member<"finger">(note.finger);
  json.member<"changes_to">([&] {
    const auto write = [&](Finger finger) { json.value(finger); };
    const bool changes = note.finger && (note.tied || !note.changes_to.empty());
    if (!changes) return json.list(std::span<const Finger>(), write);
    const std::vector<Finger> fingers = fingers_on_key(line, event, note);
    json.list(std::span(fingers).subspan(1), write);
  });
}

void add_totals(JsonWriter& json, const Totals& totals) {
  json.object([&] {
    json.member<"events">(totals.events);
    json.member<"preparatory">(totals.preparatory);
    json.member<"single">(totals.single_rotations);
    json.member<"double">(totals.double_rotations);
    json.member<"level">(totals.level_events);
    json.member<"undetermined">(totals.undetermined);
    json.member<"swings">(totals.swings);
    json.member<"crossings">(totals.crossings);
    json.member<"longest_double_run">(totals.longest_double_run);
    json.member<"carried">(totals.carried);
    json.member<"largest_carry">(totals.largest_carry);
    json.member<"moves_in">(totals.moves_in);
    json.member<"moves_out">(totals.moves_out);
    json.member<"arcs">(totals.arcs);
    json.member<"full_swing_tempo">(totals.full_swing_tempo);
    json.member<"least_swing_size">(totals.least_swing_size);
  });
}

void add_watch_counts(JsonWriter& json, const WatchCounts& counts) {
  json.object([&] {
    json.member<"info">(counts.info);
    json.member<"caution">(counts.caution);
    json.member<"strain">(counts.strain);
  });
}

void add_played(JsonWriter& json, const AnalysedLine& line, const AnalysedEvent& event) {
  const auto& [written, found] = event;
  json.object([&, place = found.event, &entry = found] {
    add_struck_notes(json, event.written, [&](const Note& note) {
      add_fingers_on_key(json, line.written(), place, note);
      json.member<"suggested">(note.suggested);
    });
    json.member<"rotation">(Word{name_of(entry.rotation)});
    json.member<"side">(word_of(entry.side));
    json.member<"play">(word_of(direction_of(line.hand(), entry.side)));
    json.member<"prepare">(word_of(entry.prepare));
    json.member<"crossing">(word_of(entry.crossing));
  });
}

void add_hand_and_moment(JsonWriter& json, const MusicalPlace& place) {
  json.member<"hand">([&] { place.hand ? json.value(to_string(*place.hand)) : json.raw("null"); });
  json.member<"bar">(place.bar);
  json.member<"beat">([&] { json.raw(place.beat ? beat_text(*place.beat) : "null"); });
}

}  // namespace fingerturn
