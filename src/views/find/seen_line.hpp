#pragma once

#include "fingerturn/find.hpp"

#include <cstddef>
#include <vector>

namespace fingerturn {

/// A line that is looked through, and what of it takes a look beyond its events.
class SeenLine {
 public:
  SeenLine(const AnalysedPassage& passage, const AnalysedLine& line);

  /// Whether all that is wanted holds of the struck event of a number.
  [[nodiscard]] bool shows(const WantedEvent& wanted, std::size_t number) const;

 private:
  [[nodiscard]] bool shows_rule(std::string_view rule, std::size_t number) const;
  [[nodiscard]] std::optional<Fraction> pace_at(std::size_t number) const;
  /// Moves nowhere where there is no event before it.
  [[nodiscard]] bool moves(const WantedMove& wanted, std::size_t number) const;

  AnalysedLine line_;
  std::vector<std::size_t> hands_differ_;  ///< places in Line::events, rising
};

}  // namespace fingerturn
