#include "write/partwise/chords.hpp"

#include "score/spelling.hpp"
#include "write/notated/beam_levels.hpp"
#include "write/partwise/notations.hpp"
#include "write/partwise/note_types.hpp"

#include <array>
#include <string>
#include <string_view>

namespace fingerturn {
namespace {

void add_pitch(Pitch pitch, XmlText& xml) {
  const std::string alter =
      pitch.alter == 0 ? std::string() : fmt::format("<alter>{}</alter>", int{pitch.alter});
  xml.add_line(fmt::format("<pitch><step>{}</step>{}<octave>{}</octave></pitch>",
                           kStepLetters[static_cast<std::size_t>(pitch.step)], alter,
                           int{pitch.octave}));
}

std::string_view accidental_of(std::int8_t alter) {
  constexpr std::array<std::string_view, 5> kAccidentals{"flat-flat", "flat", "natural", "sharp",
                                                         "double-sharp"};
  return kAccidentals.at(static_cast<std::size_t>(alter + 2));
}

void add_beams(const NotatedVoice& voice, std::size_t chord, XmlText& xml) {
  constexpr std::array<std::string_view, 5> kStrokes{"begin", "continue", "end", "forward hook",
                                                     "backward hook"};
  int level = 0;
  for (const BeamStroke stroke : beam_strokes(voice, chord)) {
    xml.add(fmt::format("beam number=\"{}\"", ++level),
            kStrokes.at(static_cast<std::size_t>(stroke)));
  }
}

/// Whether a grace note is struck through: one that stands alone.
bool is_struck_through(const NotatedChord& chord) { return chord.beam == BeamPart::none; }

}  // namespace

void ChordWriter::add(const NotatedVoice& voice, std::size_t chord, const VoicePlace& place) {
  if (voice[chord].is_rest()) return add_rest(voice, chord, place);
  for (std::size_t head = 0; head < voice[chord].heads.size(); ++head) {
    add_head(voice, chord, head, place);
  }
}

void ChordWriter::add_rest(const NotatedVoice& voice, std::size_t chord, const VoicePlace& place) {
  const NotatedChord& rest = voice[chord];
  const bool is_whole_bar = rest.onset == 0 && rest.length == place.bar_length;
  xml_->open("note");
  xml_->add(is_whole_bar ? "rest measure=\"yes\"" : "rest");
  xml_->add("duration", divisions_.of(rest.length));
  xml_->add("voice", place.voice);
  if (!is_whole_bar) add_type(rest, nullptr);
  if (place.staff > 0) xml_->add("staff", place.staff);
  if (!is_whole_bar) add_notations({voice, chord, {}, place.line, false}, *xml_);
  xml_->close();
}

void ChordWriter::add_head(const NotatedVoice& voice, std::size_t chord, std::size_t head,
                           const VoicePlace& place) {
  const NotatedChord& of = voice[chord];
  const NotatedHead& it = of.heads[head];
  const Event& event = place.line->events[it.place.event];
  const bool is_stroke =
      in_ticks(*event.onset, divisions_.ticks_in_whole) == place.bar_start + of.onset;
  offsets_.try_emplace(&event.notes[it.place.note], static_cast<std::uint32_t>(xml_->next()));
  xml_->open("note");
  if (of.grace) xml_->add(is_struck_through(of) ? "grace slash=\"yes\"" : "grace");
  if (head > 0) xml_->add("chord");
  add_pitch(it.pitch, *xml_);
  if (!of.grace) xml_->add("duration", divisions_.of(of.length));
  if (it.tied_to) xml_->add("tie type=\"stop\"");
  if (it.tied_on) xml_->add("tie type=\"start\"");
  xml_->add("voice", place.voice);
  add_type(of, &it);
  if (place.staff > 0) xml_->add("staff", place.staff);
  if (head == 0) add_beams(voice, chord, *xml_);
  add_notations({voice, chord, head, place.line, is_stroke}, *xml_);
  xml_->close();
}

void ChordWriter::add_type(const NotatedChord& chord, const NotatedHead* head) {
  const std::optional<NoteValue>& value = chord.value;
  if (value) xml_->add("type", type_of(*value));
  for (int dot = 0; value && dot < value->dots; ++dot) xml_->add("dot");
  if (head != nullptr && head->sign) xml_->add("accidental", accidental_of(*head->sign));
  if (!value || !value->in_tuplet()) return;
  xml_->open("time-modification");
  xml_->add("actual-notes", int{value->actual});
  xml_->add("normal-notes", int{value->normal});
  xml_->close();
}

}  // namespace fingerturn
