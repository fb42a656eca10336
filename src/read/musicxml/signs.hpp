#pragma once

#include "fingerturn/score.hpp"

#include <cstddef>
#include <optional>

#include <pugixml.hpp>

/// The signs of a measure that are no notes.
namespace fingerturn {

/// The value, in whole notes, of a note's `type` with so many dots and its `time-modification`, of
/// which either may be missing; nothing where the type is, or is none.
std::optional<Fraction> written_value(pugi::xml_node type, std::size_t dots,
                                      pugi::xml_node time_modification);

/// The time signature of a `time` element; several beats with one value are added up. Nothing for a
/// free meter, and for one that is none.
std::optional<Meter> meter_in(pugi::xml_node time);

/// The tempo of a `direction` or `sound` element: its metronome mark, else what it sounds at.
std::optional<Tempo> tempo_in(pugi::xml_node element);

/// How a `barline` element divides the bars.
BarLineStyle bar_line_style(pugi::xml_node bar_line);

/// The key signature of a `<key>`: of up to seven signs; nothing for others.
std::optional<KeySignature> key_in(pugi::xml_node key);

/// The `<words>` of a direction that say kNoteLanguage; null where there are none.
pugi::xml_node note_in_words(pugi::xml_node direction);

}  // namespace fingerturn
