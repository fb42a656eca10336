#pragma once

#include "fingerturn/analysed.hpp"
#include "fingerturn/score.hpp"

#include <string>
#include <vector>

namespace fingerturn {

/// "2", "4>1", "3?" or "?": the fingers as the passage notation writes them after its colon.
std::string finger_words(const std::vector<Finger>& fingers, bool suggested);

/// A note value as the passage notation writes it: "1/8", "1/8.", "1/8t" or any fraction.
std::string value_words(Fraction value);

/// A note value as a musician says it, "quarter" or "dotted eighth"; else as value_words.
std::string spoken_value(Fraction value);

/// The event's struck notes in one word: "C4:1+E4:3".
std::string event_words(const Line& line, std::size_t event);

/// The same without fingers, a grace note with its sign: "C4+E4", "^D5".
std::string struck_notes_words(const Event& event);

/// Why an event is what it is and, where a suggested finger of it is taken over, from what:
/// "... double. Suggested: E-flat major scale, fingers of the handbook."
std::string reason_with_suggestion(const AnalysedLine& line, const EventAnalysis& entry);

}  // namespace fingerturn
