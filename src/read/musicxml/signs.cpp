#include "read/musicxml/signs.hpp"

#include "fingerturn/read.hpp"
#include "read/musicxml/element.hpp"

#include <array>
#include <cstdint>
#include <string_view>

namespace fingerturn {
namespace {

/// "4" or "3+2" added up; 0 for what is no number of beats.
std::int32_t beats_of(std::string_view text) {
  constexpr std::int32_t kMostBeats = 99;
  std::int32_t beats = 0;
  while (beats <= kMostBeats) {
    const std::size_t plus = text.find('+');
    const auto number = whole_number<std::int32_t>(text.substr(0, plus));
    if (!number || *number < 1 || *number > kMostBeats) return 0;
    beats += *number;
    if (plus == std::string_view::npos) break;
    text.remove_prefix(plus + 1);
  }
  return beats > kMostBeats ? 0 : beats;
}

struct NoteType {
  std::string_view name;
  Fraction value;
};

/// MusicXML 4.0, note-type-value.
constexpr std::array<NoteType, 9> kNoteTypes{{{"quarter", {1, 4}},
                                              {"eighth", {1, 8}},
                                              {"half", {1, 2}},
                                              {"16th", {1, 16}},
                                              {"whole", {1, 1}},
                                              {"32nd", {1, 32}},
                                              {"64th", {1, 64}},
                                              {"128th", {1, 128}},
                                              {"breve", {2, 1}}}};

std::optional<Fraction> value_of(std::string_view type, std::size_t dots) {
  for (const NoteType& known : kNoteTypes) {
    if (known.name != type) continue;
    if (dots == 0) return known.value;
    return product(known.value, dots == 1 ? Fraction{3, 2} : Fraction{7, 4});
  }
  return std::nullopt;
}

/// A number that may be a tempo's.
std::optional<double> per_minute_in(std::string_view text) {
  double number = 0;
  const char* const end = text.data() + text.size();
  const auto [stop, problem] = std::from_chars(text.data(), end, number);
  const bool passes = problem == std::errc{} && stop == end && is_plausible_tempo(number);
  return passes ? std::optional(number) : std::nullopt;
}

std::optional<Tempo> tempo_of_mark(pugi::xml_node metronome) {
  std::size_t dots = 0;
  std::size_t units = 0;
  for (const pugi::xml_node child : metronome) {
    const std::string_view name = child.name();
    if (name == "beat-unit") ++units;
    if (name == "beat-unit-dot") ++dots;
  }
  // Two units make an equation between note values, which is no tempo.
  if (units != 1) return std::nullopt;
  const auto unit = value_of(text_of(metronome.child("beat-unit")), dots);
  const auto per_minute = per_minute_in(text_of(metronome.child("per-minute")));
  if (!unit || !per_minute) return std::nullopt;
  return Tempo{*unit, *per_minute};
}

std::optional<Tempo> tempo_of_sound(pugi::xml_node sound) {
  const auto per_minute = per_minute_in(sound.attribute("tempo").value());
  if (!per_minute) return std::nullopt;
  return Tempo{{1, 4}, *per_minute};
}

/// How much of its value a note of a tuplet keeps: 2/3 in a triplet.
Fraction share_of(pugi::xml_node time_modification) {
  constexpr std::int32_t kMostNotes = 99;
  const auto number = [&](const char* name) {
    return whole_number<std::int32_t>(text_of(time_modification.child(name))).value_or(0);
  };
  const std::int32_t actual = number("actual-notes");
  const std::int32_t normal = number("normal-notes");
  const bool passes = actual > 0 && normal > 0 && actual <= kMostNotes && normal <= kMostNotes;
  return passes ? reduced(normal, actual).value_or(Fraction{1, 1}) : Fraction{1, 1};
}

}  // namespace

std::optional<Fraction> written_value(pugi::xml_node type, std::size_t dots,
                                      pugi::xml_node time_modification) {
  const std::optional<Fraction> value = value_of(text_of(type), dots);
  return value ? product(*value, share_of(time_modification)) : std::nullopt;
}

std::optional<Meter> meter_in(pugi::xml_node time) {
  Meter meter{0, 0};
  std::int32_t beats = 0;
  for (const pugi::xml_node child : time) {
    const std::string_view name = child.name();
    if (name == "beats") beats = beats_of(text_of(child));
    if (name != "beat-type") continue;
    const auto beat_type = whole_number<std::int32_t>(text_of(child));
    if (beats == 0 || !beat_type) return std::nullopt;
    if (meter.beat_type != 0 && meter.beat_type != *beat_type) return std::nullopt;
    meter = {meter.beats + beats, *beat_type};
  }
  return is_plausible(meter) ? std::optional(meter) : std::nullopt;
}

std::optional<KeySignature> key_in(pugi::xml_node key) {
  const auto fifths = whole_number<int>(text_of(key.child("fifths")));
  if (!fifths || *fifths < -kMostSigns || *fifths > kMostSigns) return std::nullopt;
  const std::string_view word = text_of(key.child("mode"));
  const Mode mode = word == "major" ? Mode::major : word == "minor" ? Mode::minor : Mode::unsaid;
  return KeySignature{static_cast<std::int8_t>(*fifths), mode};
}

pugi::xml_node note_in_words(pugi::xml_node direction) {
  for (const pugi::xml_node type : direction.children("direction-type")) {
    for (const pugi::xml_node words : type.children("words")) {
      if (words.attribute("xml:lang").value() == kNoteLanguage) return words;
    }
  }
  return {};
}

std::optional<Tempo> tempo_in(pugi::xml_node element) {
  if (std::string_view(element.name()) == "sound") return tempo_of_sound(element);
  for (const pugi::xml_node type : element.children("direction-type")) {
    if (const auto tempo = tempo_of_mark(type.child("metronome"))) return tempo;
  }
  return tempo_of_sound(element.child("sound"));
}

BarLineStyle bar_line_style(pugi::xml_node bar_line) {
  const std::string_view repeat = bar_line.child("repeat").attribute("direction").value();
  if (repeat == "forward") return BarLineStyle::repeat_start;
  if (repeat == "backward") return BarLineStyle::repeat_end;
  const std::string_view style = text_of(bar_line.child("bar-style"));
  const bool plain = style.empty() || style == "regular" || style == "none" || style == "dotted" ||
                     style == "dashed" || style == "short" || style == "tick";
  return plain ? BarLineStyle::single : BarLineStyle::double_bar;
}

}  // namespace fingerturn
