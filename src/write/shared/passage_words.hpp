#pragma once

#include "fingerturn/report.hpp"

#include <string>
#include <string_view>
#include <vector>

/// What the reports for people say about a passage as a whole.
namespace fingerturn {

/// The title as it was written; where there is none, the name of the source, without folders and
/// ending.
std::string_view title_of(const AnalysedScore& analysed, const Passage& passage) noexcept;
/// The title of a score's only passage, or the name of the score.
std::string_view title_of(const AnalysedScore& analysed) noexcept;

/// What stands below the title: composer, source, hands, meter, tempo and reach, where known,
/// and the bars where only some were asked for.
std::vector<std::string> head_parts(const AnalysedPassage& passage);

/// The same in one line.
std::string head_line(const AnalysedPassage& passage);

/// The sentences below the head: what was decided in reading, what somebody noted at a bar that is
/// reported, as in "bar 5: keep the wrist loose", and why these places, where they were asked for.
std::vector<std::string> opening_sentences(const AnalysedPassage& passage);

/// Whether places were asked for and there are none, so that nothing more is to be shown.
bool has_no_places(const AnalysedPassage& passage) noexcept;

/// "15 events, 1 preparatory, 6 single, 8 double": those that are not 0.
std::string totals_words(const Totals& totals);

/// Up to which tempo the swings can be full, in the beat of the written one, such as "full swings
/// up to dotted quarter = 50"; the other with the note that sets it and more. Empty where not
/// known.
std::string full_swing_tempo_words(const AnalysedPassage& passage);
std::string full_swing_words(const AnalysedPassage& passage);

/// A tempo in quarters a minute, in the beat of the written one: "75", and "dotted quarter = 50".
std::string in_written_beat(const AnalysedPassage& passage, double quarters_per_minute);
std::string tempo_equation(const AnalysedPassage& passage, double quarters_per_minute);

/// How the hands go together; empty where that is not known or nothing is struck together.
std::string together_words(const AnalysedPassage& passage);

/// "Right hand", as a heading has it.
std::string_view hand_heading(Hand hand) noexcept;

/// The sentence for passages whose hands stand one after the other.
std::string_view hands_apart_words() noexcept;

}  // namespace fingerturn
