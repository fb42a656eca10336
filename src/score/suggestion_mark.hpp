#pragma once

#include <string_view>

namespace fingerturn {

/// How a suggested finger is known in MusicXML: its `<notations>` say so in their `<level>`, the
/// element in which the standard states the editorial standing of what encloses it.
inline constexpr std::string_view kSuggestionLevel = "suggested by fingerturn";

}  // namespace fingerturn
