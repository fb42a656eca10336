#pragma once

#include "catch.hpp"
#include "fingerturn/read.hpp"
#include "fingerturn/source.hpp"

#include <string>
#include <string_view>
#include <utility>

namespace fingerturn::tests {

/// The score that notation writes down, which has to be without errors.
inline Score score_written(std::string_view notation) {
  const Source source("test.passage", std::string(notation));
  ReadResult result = read_notation(source);
  CAPTURE(notation, render(source, result.diagnostics));
  REQUIRE(result.ok());
  return std::move(result.score);
}

}  // namespace fingerturn::tests
