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

/// The finger that `rest`, what is left of a note's word, is meant to say, as in "D;2", "D(2)" or
/// "D:2:"; 0 where it is something else.
char finger_meant(std::string_view rest) noexcept;

/// How such a finger is written; empty where `rest` says none.
std::string cure_for_finger(std::string_view word, std::string_view rest);

/// The cure for a word that is no note: a sign, a header line or the name of a note elsewhere.
std::string cure_for_word(std::string_view word);

/// Whether a word begins with the name of a note as in "Do4" or "Re".
bool is_named_by_syllable(std::string_view word);

/// Whether a line has nothing but finger numbers and bar lines, at least two fingers.
bool is_line_of_fingers(TextPiece line) noexcept;

/// The letters at the beginning of a word.
std::string_view letters_of(std::string_view word) noexcept;

}  // namespace fingerturn
