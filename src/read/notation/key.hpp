#pragma once

#include "fingerturn/key_signature.hpp"
#include "read/notation/lexer.hpp"
#include "read/reporter.hpp"

#include <optional>

namespace fingerturn {

/// Reads the value of the header line `key`, such as "D major", "2 sharps" or "none", and reports
/// what is wrong with it.
std::optional<KeySignature> read_key(TextPiece value, Reporter& reporter);

}  // namespace fingerturn
