#include "write/partwise/strokes.hpp"

#include "read/musicxml/text.hpp"

#include <algorithm>
#include <map>
#include <optional>

#include <fmt/core.h>

namespace fingerturn::tests {
namespace {

Fraction later(Fraction one, Fraction other) { return one < other ? other : one; }

/// The note of an event on a key; null where there is none.
const Note* on_key(const Event& event, int key) {
  const auto note =
      std::ranges::find(event.notes, key, [](const Note& each) { return midi_number(each.pitch); });
  return note == event.notes.end() ? nullptr : &*note;
}

/// The length of what is rolled is that of its end.
Fraction chord_length(const Line& line, std::size_t event) {
  while (line.events[event].rolls_on && event + 1 < line.events.size()) ++event;
  return *line.events[event].duration;
}

Fraction end_of(const Line& line, std::size_t event, const Note& note) {
  const Fraction length = note.lasts.value_or(chord_length(line, event));
  return *sum(*line.events[event].onset, length);
}

struct Stroke {
  std::size_t event = 0;
  Note note;
  std::string fingers;
  Fraction end;
};

std::string fingers_of(const Note& note) {
  std::string words;
  for (const Finger finger : written_fingers(note)) words += fmt::format(">{}", finger);
  for (const Finger finger : note.alternatives) words += fmt::format("/{}", finger);
  return words + (note.suggested ? "?" : "");
}

/// Follows a key from the stroke on, through its ties.
Stroke stroke_of(const Line& line, std::size_t event, const Note& note) {
  Stroke stroke{event, note, fingers_of(note), end_of(line, event, note)};
  const int key = midi_number(note.pitch);
  bool tied = note.tied;
  for (std::size_t next = event + 1; next < line.events.size(); ++next) {
    const Note* const here = on_key(line.events[next], key);
    const bool begins_later = *line.events[event].onset < *line.events[next].onset;
    if (here == nullptr || line.events[next].grace) continue;
    if (!here->held) {
      const bool is_cut = begins_later && *line.events[next].onset < stroke.end;
      if (is_cut) stroke.end = *line.events[next].onset;
      break;
    }
    if (!tied) break;
    stroke.end = later(stroke.end, end_of(line, next, *here));
    stroke.fingers += fingers_of(*here);
    tied = here->tied;
  }
  return stroke;
}

std::string_view ornament_words(Ornament ornament) {
  if (ornament == Ornament::trill) return " trill";
  return ornament == Ornament::tremolo ? " tremolo" : "";
}

/// Whether a gesture ends between two events that strike: where it is said, or all is silent.
bool gesture_ends(const Line& line, std::size_t from, std::size_t to, Fraction sounding) {
  for (std::size_t i = from; i < to; ++i) {
    if (ends_gesture(line.events[i], line.events[i + 1])) return true;
  }
  return sounding < *line.events[to].onset;
}

}  // namespace

std::string strokes_of(const Line& line) {
  std::string text;
  Fraction sounding;
  std::optional<std::size_t> before;
  for (std::size_t i = 0; i < line.events.size(); ++i) {
    const Event& event = line.events[i];
    if (event.struck_count() == 0) continue;
    if (before && gesture_ends(line, *before, i, sounding)) text += "  .\n";
    before = i;
    for (const Note& note : event.notes) {
      if (note.held) continue;
      const Stroke stroke = stroke_of(line, i, note);
      if (!event.grace) sounding = later(sounding, stroke.end);
      text += fmt::format("{} {}{} {}{}{}{}{}\n", event.bar, to_string(*event.onset),
                          event.grace ? " ^" : "", to_string(note.pitch), stroke.fingers,
                          event.grace ? "" : " until " + to_string(stroke.end),
                          ornament_words(event.ornament), event.rolls_on ? " /" : "");
    }
  }
  return text;
}

std::string signatures_of(const Passage& passage) {
  std::string text = fmt::format("{}\n{}\n{}\n", line_of_text(passage.title),
                                 line_of_text(passage.composer), line_of_text(passage.source));
  for (const auto& [bar, meter] : passage.meters) {
    text += fmt::format("meter {} {}\n", bar, to_string(meter));
  }
  for (const auto& [bar, tempo] : passage.tempos) {
    text += fmt::format("tempo {} {:.6g}\n", bar, tempo.quarters_per_minute());
  }
  for (const auto& [bar, key] : passage.keys) {
    text += fmt::format("key {} {}\n", bar, to_string(key));
  }
  for (const auto& [bar, note] : passage.notes) {
    text += fmt::format("note {} {}\n", bar, line_of_text(note));
  }
  return text;
}

std::string bar_signs_of(const Line& line) {
  std::map<std::int32_t, std::string> signs;
  for (const auto& [place, style] : line.bar_lines) {
    const bool starts = style == BarLineStyle::repeat_start || style == BarLineStyle::repeat_both;
    const bool ends = style == BarLineStyle::repeat_end || style == BarLineStyle::repeat_both;
    if (starts && place < line.events.size()) signs[line.events[place].bar] += "|:";
    if (ends && place > 0) signs[line.events[place - 1].bar] += ":|";
    if (style == BarLineStyle::double_bar) {
      signs[place > 0 ? line.events[place - 1].bar : -1] += "||";
    }
  }
  std::string text;
  for (auto& [bar, sign] : signs) {
    std::ranges::sort(sign);
    text += fmt::format("{} {}\n", bar, sign);
  }
  return text;
}

}  // namespace fingerturn::tests
