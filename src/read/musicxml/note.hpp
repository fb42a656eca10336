#pragma once

#include "read/musicxml/written_note.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include <pugixml.hpp>

namespace fingerturn {

/// The children of a `note` element that matter here, found in one pass over them.
struct NoteElement {
  pugi::xml_node element;
  pugi::xml_node pitch;
  pugi::xml_node duration;
  pugi::xml_node voice;
  pugi::xml_node staff;
  pugi::xml_node type;
  pugi::xml_node time_modification;
  pugi::xml_node dynamics;
  std::size_t dots = 0;
  bool rest = false;
  bool unpitched = false;
  bool chord = false;
  bool grace = false;
  bool cue = false;
  bool tied = false;          ///< a tie begins here
  bool breath_after = false;  ///< a breath mark or caesura stands on it
  bool has_fingering = false;
  bool has_lyric = false;
  bool rolled = false;  ///< arpeggiate
  bool rolls_down = false;
  Ornament ornament = Ornament::none;
  std::string_view ornament_left_out;  ///< its name for reports
  Beam beam = Beam::none;
  std::uint8_t slurs_end = 0;
  std::uint8_t slurs_begin = 0;
  bool fermata = false;
};
NoteElement note_element(pugi::xml_node element);

/// The pitch of a `pitch` element; nothing where it is none, lies between two keys or off the
/// piano.
std::optional<Pitch> pitch_in(pugi::xml_node pitch);

}  // namespace fingerturn
