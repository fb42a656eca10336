#include "write/partwise/signatures.hpp"

#include "fingerturn/read.hpp"
#include "score/timeline.hpp"
#include "write/partwise/note_types.hpp"

#include <algorithm>
#include <optional>
#include <string_view>
#include <vector>

namespace fingerturn {
namespace {

std::vector<Hand> hands_of(const SharedLines& lines) {
  std::vector<Hand> hands;
  for (const AnalysedLine& line : lines) hands.push_back(line.hand());
  return hands;
}

/// Whether a change is written at a bar, even if it changes nothing.
template <typename Value>
bool is_written_at(const std::vector<FromBar<Value>>& changes, std::int32_t bar) {
  return std::ranges::binary_search(changes, bar, {}, &FromBar<Value>::bar);
}

void add_key(KeySignature key, XmlText& xml) {
  xml.open("key");
  xml.add("fifths", int{key.fifths});
  if (key.mode != Mode::unsaid) xml.add("mode", key.mode == Mode::major ? "major" : "minor");
  xml.close();
}

void add_meter(const Meter& meter, XmlText& xml) {
  xml.open("time");
  xml.add("beats", meter.beats);
  xml.add("beat-type", meter.beat_type);
  xml.close();
}

/// A value that is one note, or one with dots.
std::optional<NoteValue> single_value(Fraction length) {
  const std::vector<NoteValue> values = values_of(length);
  const bool is_single = values.size() == 1 && !values[0].in_tuplet();
  return is_single ? std::optional(values[0]) : std::nullopt;
}

/// The mark, or words where its unit is no note.
void add_tempo_mark(const Tempo& tempo, XmlText& xml) {
  const std::optional<NoteValue> unit = single_value(tempo.beat_unit);
  if (!unit) {
    const std::string text = fmt::format("{} = {}", to_string(tempo.beat_unit), tempo.per_minute);
    return xml.add("words", text);
  }
  xml.open("metronome");
  xml.add("beat-unit", type_of(*unit));
  for (int dot = 0; dot < unit->dots; ++dot) xml.add("beat-unit-dot");
  xml.add("per-minute", tempo.per_minute);
  xml.close();
}

/// A direction above the first staff; `add_type` adds what it says.
template <typename AddType>
void add_direction(bool has_staves, const Tempo* tempo, const AddType& add_type, XmlText& xml) {
  xml.open("direction placement=\"above\"");
  xml.open("direction-type");
  add_type();
  xml.close();
  if (has_staves) xml.add("staff", 1);
  if (tempo != nullptr) {
    xml.add(fmt::format("sound tempo=\"{}\"", tempo->quarters_per_minute()));
  }
  xml.close();
}

}  // namespace

Signatures::Signatures(const Passage& passage, const SharedLines& lines, Ticks divisions)
    : passage_(&passage), divisions_(divisions), staves_(lines.size()), clefs_(hands_of(lines)) {}

void Signatures::add(const NotatedBar& bar, XmlText& xml) {
  add_attributes(bar, xml);
  const Tempo* const tempo = tempo_in_bar(*passage_, bar.bar);
  if (tempo != tempo_) {
    const auto add_mark = [&] { add_tempo_mark(*tempo, xml); };
    add_direction(staves_ > 1, tempo, add_mark, xml);
    tempo_ = tempo;
  }
  add_words(bar, xml);
  is_first_ = false;
}

void Signatures::add_attributes(const NotatedBar& bar, XmlText& xml) {
  std::vector<std::optional<Clef>> clefs;
  for (const NotatedHand& hand : bar.hands) clefs.push_back(clefs_.change(clefs.size(), hand));
  const bool has_key = bar.key || is_written_at(passage_->keys, bar.bar);
  const bool has_meter = bar.meter || is_written_at(passage_->meters, bar.bar);
  const auto is_there = [](const auto& clef) { return clef.has_value(); };
  if (!has_key && !has_meter && std::ranges::none_of(clefs, is_there)) return;
  xml.open("attributes");
  if (is_first_) xml.add("divisions", divisions_);
  if (has_key) add_key(passage_->keys.empty() ? *bar.key : key_in_bar(*passage_, bar.bar), xml);
  if (has_meter) add_meter(*meter_in_bar(*passage_, bar.bar), xml);
  if (is_first_ && staves_ > 1) xml.add("staves", staves_);
  for (std::size_t staff = 0; staff < clefs.size(); ++staff) {
    if (clefs[staff]) add_clef(staff, *clefs[staff], xml);
  }
  xml.close();
}

void Signatures::add_clef(std::size_t staff, Clef clef, XmlText& xml) const {
  xml.open(staves_ > 1 ? fmt::format("clef number=\"{}\"", staff + 1) : "clef");
  xml.add("sign", clef == Clef::g ? "G" : "F");
  xml.add("line", clef == Clef::g ? 2 : 4);
  xml.close();
}

void Signatures::add_words(const NotatedBar& bar, XmlText& xml) const {
  const auto& notes = passage_->notes;
  auto note = std::ranges::lower_bound(notes, bar.bar, {}, &FromBar<std::string>::bar);
  for (; note != notes.end() && note->bar == bar.bar; ++note) {
    const std::string tag = fmt::format(R"(words xml:lang="{}")", kNoteLanguage);
    const auto add_note = [&] { xml.add(tag, note->value); };
    add_direction(staves_ > 1, nullptr, add_note, xml);
  }
}

}  // namespace fingerturn
