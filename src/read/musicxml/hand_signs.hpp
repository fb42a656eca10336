#pragma once

#include "fingerturn/score.hpp"

#include <optional>
#include <string_view>

#include <pugixml.hpp>

/// Signs that say which hand plays.
namespace fingerturn {

/// The hand that a text begins with: "m.d.", "R.H.", "mano sinistra", "m. g. sopra"; nothing where
/// it begins with none.
std::optional<Hand> hand_called(std::string_view text);

/// The hand that the words of a `direction` name.
std::optional<Hand> hand_in_words(pugi::xml_node direction);

/// The hand that a lyric of a `note` names.
std::optional<Hand> hand_in_lyrics(pugi::xml_node note);

}  // namespace fingerturn
