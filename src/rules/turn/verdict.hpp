#pragma once

#include "fingerturn/analysis.hpp"
#include "rules/strike.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace fingerturn {

/// What the rules of the turn decide about one strike, and which of them did.
struct Verdict {
  Rotation rotation = Rotation::undetermined;
  std::optional<Side> side;
  std::string_view rule;
  Basis basis = Basis::none;
  Reason reason;
  Crossing crossing = Crossing::none;
};

/// The first strike of a gesture.
Verdict judge_first(std::span<const Strike> gesture);

/// A further strike of a gesture, `to`, after the strike `from` that was played to the side
/// `struck`.
Verdict judge_next(Hand hand, std::optional<Side> struck, const Strike& from, const Strike& to);

}  // namespace fingerturn
