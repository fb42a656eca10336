#pragma once

#include <cstddef>
#include <cstdint>

/// What every fuzz target does with an input; a fuzzer, or replay.cpp, calls it by this name.
// NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
