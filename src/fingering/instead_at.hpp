#pragma once

#include "fingering/detours.hpp"
#include "fingering/line_fingering.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace fingerturn {

/// The choices at one grip, each with the easiest path that has it. What is given outlives it.
class InsteadAt {
 public:
  InsteadAt(const Line& line, const LineCosts& costs, const Path& easiest, std::size_t grip);

  /// Against the choice that has the given fingers of the event's notes (0: any).
  [[nodiscard]] FingersInstead found(std::span<const Finger> given) const;

 private:
  /// A choice, and what the easiest path that has it asks more than the easiest of all.
  struct Way {
    Detour detour;
    Stretch stretch;  ///< empty for the easiest of all
  };

  [[nodiscard]] Way way_of(const Detour& detour) const;
  [[nodiscard]] std::vector<Finger> fingers(std::uint8_t choice) const;
  [[nodiscard]] std::size_t taken(const std::vector<Way>& ways,
                                  std::span<const Finger> given) const;
  [[nodiscard]] OtherFingers compared(const Way& taken, const Way& other) const;
  void add_amounts(const Way& way, std::size_t begin, std::size_t end, std::int32_t sign,
                   std::array<std::int32_t, kTermCount>& sum) const;

  const Line& line_;
  const LineCosts& costs_;
  const Path& easiest_;
  std::size_t grip_;
  Remaining remaining_;
  Detours detours_;
};

}  // namespace fingerturn
