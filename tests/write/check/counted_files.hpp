#pragma once

#include "fingerturn/check.hpp"

#include <cstddef>
#include <string>
#include <vector>

/// Counts of files made by hand.
namespace fingerturn::tests {

inline FileCounts counts_named(const std::string& name, std::size_t events, std::size_t fingered) {
  FileCounts file;
  file.source = name;
  file.counts.events = events;
  file.counts.fingered = fingered;
  return file;
}

inline AllCounts all_of(const std::vector<FileCounts>& files) {
  AllCounts all;
  for (const FileCounts& file : files) all.add(file);
  return all;
}

}  // namespace fingerturn::tests
