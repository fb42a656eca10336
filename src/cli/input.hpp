#pragma once

#include "fingerturn/source.hpp"

#include <optional>
#include <string>

namespace fingerturn::cli {

/// What a path is called where it is told of: "standard input" for "-".
std::string input_name(const std::string& path);

/// A source, or why there is none.
struct Input {
  std::string name;
  std::optional<Source> source;
  std::string problem;  ///< what the system says; empty where there is a source
};

/// Reads a file, or standard input where the path is "-", and says nothing. Of an input larger than
/// a reader takes only as much is read as shows that it is.
Input load_input(const std::string& path);

/// Reads a list of names, however long, or standard input where the path is "-". Where that fails,
/// errno says why.
std::optional<std::string> read_list(const std::string& path);

/// Reads a file, or standard input where the path is "-". Where that fails it says so on standard
/// error and gives nothing.
std::optional<Source> read_input(const std::string& path);

}  // namespace fingerturn::cli
