#pragma once

#include "read/notation/lexer.hpp"

#include <string>
#include <string_view>

/// What is told to those who type something else than the notation has.
namespace fingerturn {

/// What the line without its colon should be, as in "write tempo: 72"; empty where it does not
/// begin with the name of a header line.
std::string cure_for_colon(TextPiece line);

/// The cure for a header line of an unknown name: the name that is meant or close, or all names.
std::string cure_for_name(std::string_view written_name);

/// How a finger behind a note is written that follows another sign than a colon, as in "D;2";
/// empty where `rest`, what is left of the word, is something else.
std::string cure_for_finger(std::string_view word, std::string_view rest);

/// Whether a line has nothing but finger numbers and bar lines, at least two fingers.
bool is_line_of_fingers(TextPiece line) noexcept;

/// The letters at the beginning of a word.
std::string_view letters_of(std::string_view word) noexcept;

}  // namespace fingerturn
