#pragma once

#include "fingerturn/analysis.hpp"
#include "rules/strike.hpp"

#include <optional>
#include <span>
#include <string>

/// The one sentence a player reads about an event. Every word of it is chosen here.
namespace fingerturn {

/// What the sentence is made of.
struct Decided {
  Hand hand = Hand::right;
  std::optional<Side> side;
  Rotation rotation = Rotation::undetermined;
  Crossing crossing = Crossing::none;
};

std::string reason_level(const Strike& strike);
std::string reason_missing(const Strike& strike);
/// `from` and `to` make the step that decided the side; null where none did.
std::string reason_first(const Decided& decided, const Strike& first, const Strike* from,
                         const Strike* to);
std::string reason_after_missing(const Decided& decided, const Strike& strike);
std::string reason_same_finger(const Decided& decided, const Strike& from, const Strike& to);
std::string reason_step(const Decided& decided, const Strike& from, const Strike& to);

}  // namespace fingerturn
