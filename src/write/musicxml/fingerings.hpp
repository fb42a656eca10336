#pragma once

#include "fingerturn/score.hpp"

#include <string>
#include <string_view>

namespace fingerturn {

/// The `<fingering>` elements of a note's fingers, each with these attributes: the silent changes
/// say that they are such. Empty where the note has none.
std::string fingerings(const Note& note, std::string_view attributes);
/// Those of the other fingers that are offered for it.
std::string alternatives(const Note& note);

}  // namespace fingerturn
