#pragma once

#include "write/musicxml/note_offsets.hpp"
#include "write/notated/bars.hpp"
#include "write/notated/ticks.hpp"
#include "write/partwise/xml_text.hpp"

#include <cstddef>
#include <utility>

namespace fingerturn {

/// The voice in which chords are written.
struct VoicePlace {
  const Line* line = nullptr;
  Ticks bar_start = 0;   ///< from the beginning of the passage
  Ticks bar_length = 0;  ///< a rest that fills it is one of the whole bar
  std::size_t voice = 1;
  std::size_t staff = 0;  ///< from 1; 0 where there is but one
};

/// How ticks are written: as divisions of a quarter.
struct Divisions {
  Ticks ticks_in_whole = 0;
  Ticks in_division = 1;

  [[nodiscard]] Ticks of(Ticks ticks) const noexcept { return ticks / in_division; }
  [[nodiscard]] Ticks of_quarter() const noexcept { return ticks_in_whole / 4 / in_division; }
};

/// Writes chords and rests as `<note>`s.
class ChordWriter {
 public:
  ChordWriter(Divisions divisions, XmlText& xml) : divisions_(divisions), xml_(&xml) {}

  void add(const NotatedVoice& voice, std::size_t chord, const VoicePlace& place);
  [[nodiscard]] NoteOffsets take_offsets() { return std::move(offsets_); }

 private:
  void add_rest(const NotatedVoice& voice, std::size_t chord, const VoicePlace& place);
  void add_head(const NotatedVoice& voice, std::size_t chord, std::size_t head,
                const VoicePlace& place);
  void add_type(const NotatedChord& chord, const NotatedHead* head);

  Divisions divisions_;
  XmlText* xml_;
  NoteOffsets offsets_;
};

}  // namespace fingerturn
