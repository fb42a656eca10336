#pragma once

#include <cstddef>
#include <optional>
#include <string>

/// Lines that each tell of a place in a file.
namespace fingerturn {

/// "passage 2 (The ferry)"; the number alone where it has no title. Passages count from 0 here.
std::string passage_words(std::size_t passage, const std::string& title);

/// The line as it is, or broken at blanks with the lines after the first indented.
std::string continued(const std::string& line, std::optional<int> columns);

}  // namespace fingerturn
