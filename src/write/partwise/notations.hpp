#pragma once

#include "write/notated/notated.hpp"
#include "write/partwise/xml_text.hpp"

#include <cstddef>
#include <optional>

namespace fingerturn {

/// A head of a chord, or a rest.
struct ChordPlace {
  const NotatedVoice& voice;
  std::size_t chord = 0;            ///< in the voice
  std::optional<std::size_t> head;  ///< none of a rest
  const Line* line = nullptr;
  bool is_stroke = false;  ///< it stands where its event begins, not where that is tied on

  [[nodiscard]] const NotatedChord& of() const { return voice[chord]; }
};

/// The `<notations>` of a note, where it has any: ties, tuplets, ornaments, given fingers, breaths
/// and rolls. What belongs to a chord stands on its first head.
void add_notations(const ChordPlace& place, XmlText& xml);

}  // namespace fingerturn
