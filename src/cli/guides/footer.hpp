#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fingerturn::cli {

/// Lines to type, and what is said of them.
struct Example {
  std::string words;  ///< may be empty
  std::vector<std::string> lines;
};

/// What stands under the options of a command: a paragraph, and examples, whose lines are indented.
/// A paragraph that ends in a colon says what the lines under it are.
struct FooterParts {
  std::string words;
  std::vector<Example> examples;
};

FooterParts parts_of_footer(std::string_view footer);

}  // namespace fingerturn::cli
