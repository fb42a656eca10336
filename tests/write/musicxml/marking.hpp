#pragma once

#include "fingerturn/report.hpp"

#include <string>
#include <string_view>
#include <vector>

/// MusicXML texts written by hand, and the scores that go with them.
namespace fingerturn::tests {

/// The score of a passage in the notation, its notes in their order placed at the `<note` tags of
/// the MusicXML that have a `<pitch>`.
Score score_at(std::string_view musicxml, const std::string& notation);

/// The MusicXML with the analysis of these notes written into it.
std::string marked(const std::string& musicxml, const std::string& notation,
                   const MusicXmlStyle& style = {});

/// Our lyric under each `<note>`, as "1:→" with its number; empty where there is none.
std::vector<std::string> signs_under(std::string_view musicxml);

/// The legend's text; empty where there is none.
std::string legend_in(std::string_view musicxml);

/// A score-partwise of one part with these elements in its bars.
std::string partwise(const std::vector<std::string>& bars);

/// A quarter on this key with these elements after its type.
std::string quarter(std::string_view key, std::string_view more = "");

/// How often a text stands in another.
std::size_t count_of(std::string_view text, std::string_view part);

}  // namespace fingerturn::tests
