#pragma once

#include "fingerturn/score.hpp"
#include "read/notation/lexer.hpp"
#include "read/reporter.hpp"

#include <optional>

namespace fingerturn {

/// Reads a note value such as "1/8", "1/8.", "1/8t" or "3/16", in whole notes, and reports what is
/// wrong with it.
std::optional<Fraction> read_note_value(TextPiece word, Reporter& reporter);

/// Reads the value of the header line `meter`, such as "6/8".
std::optional<Meter> read_meter(TextPiece value, Reporter& reporter);

/// Reads the value of the header line `tempo`, such as "72" or "1/8 = 144".
std::optional<Tempo> read_tempo(TextPiece value, Reporter& reporter);

/// Reads a whole number from `least` to `most`; `what` names it in the message.
std::optional<int> read_number(TextPiece value, int least, int most, std::string_view what,
                               Reporter& reporter);

}  // namespace fingerturn
