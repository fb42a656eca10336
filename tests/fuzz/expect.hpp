#pragma once

#include <cstdio>
#include <cstdlib>
#include <string_view>

/// Says which property does not hold and ends the run, so that the fuzzer keeps the input.
inline void expect(bool holds, std::string_view property) {
  if (holds) return;
  std::fprintf(stderr, "does not hold: %.*s\n", static_cast<int>(property.size()), property.data());
  std::abort();
}
