#pragma once

#include "write/notated/notated.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace fingerturn {

enum class Clef : std::uint8_t { g, f };

/// Which clefs the staves of hands have, bar after bar: a staff changes its clef where its notes
/// would stand far outside of the lines. One staff alone begins with the clef of its hand, by which
/// it is known whose it is.
class Clefs {
 public:
  explicit Clefs(const std::vector<Hand>& hands);

  /// The clef that a staff takes in a bar; none where it keeps the one it has.
  std::optional<Clef> change(std::size_t staff, const NotatedHand& hand);

 private:
  struct Staff {
    Hand hand = Hand::right;
    std::optional<Clef> clef{};
  };

  std::vector<Staff> staves_;
};

}  // namespace fingerturn
