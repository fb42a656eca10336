#pragma once

#include <span>

#include <CLI/App.hpp>

namespace fingerturn::cli {

/// Throws CLI::ArgumentMismatch where an option of the command is given an empty value, as in
/// `--output=` and `--output ''`, by the words that follow the command. No option has a use for
/// one, and CLI11 would take the word after `--output=` as its value, which may be an input.
void refuse_empty_values(const CLI::App& command, std::span<const char* const> words);

}  // namespace fingerturn::cli
