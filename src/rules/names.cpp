#include "fingerturn/analysis.hpp"

namespace fingerturn {

Direction direction_of(Hand hand, Side side) noexcept {
  const bool right = (hand == Hand::right) == (side == Side::toward_fifth);
  return right ? Direction::right : Direction::left;
}

std::optional<Direction> direction_of(Hand hand, std::optional<Side> side) noexcept {
  return side ? std::optional(direction_of(hand, *side)) : std::nullopt;
}

Direction opposite(Direction direction) noexcept {
  return direction == Direction::left ? Direction::right : Direction::left;
}

Side opposite(Side side) noexcept {
  return side == Side::toward_fifth ? Side::toward_thumb : Side::toward_fifth;
}

std::string_view name_of(Rotation rotation) noexcept {
  switch (rotation) {
    case Rotation::preparatory:
      return "preparatory";
    case Rotation::single_rotation:
      return "single";
    case Rotation::double_rotation:
      return "double";
    case Rotation::level:
      return "level";
    case Rotation::undetermined:
      break;
  }
  return "undetermined";
}

std::string_view name_of(Side side) noexcept {
  return side == Side::toward_fifth ? "toward fifth" : "toward thumb";
}

std::string_view name_of(Direction direction) noexcept {
  return direction == Direction::left ? "left" : "right";
}

std::string_view name_of(Crossing crossing) noexcept {
  switch (crossing) {
    case Crossing::thumb_under:
      return "thumb under";
    case Crossing::finger_over_thumb:
      return "finger over thumb";
    case Crossing::finger_crossing:
      return "finger crossing";
    case Crossing::none:
      break;
  }
  return "none";
}

std::string_view name_of(Basis basis) noexcept {
  switch (basis) {
    case Basis::rule:
      return "rule";
    case Basis::convention:
      return "convention";
    case Basis::none:
      break;
  }
  return "none";
}

std::string_view name_of(WatchLevel level) noexcept {
  switch (level) {
    case WatchLevel::caution:
      return "caution";
    case WatchLevel::strain:
      return "strain";
    case WatchLevel::info:
      break;
  }
  return "info";
}

std::string_view name_of(InOut move) noexcept { return move == InOut::in ? "in" : "out"; }

std::string_view forearm_of(Side side) noexcept {
  return side == Side::toward_fifth ? "supination" : "pronation";
}

}  // namespace fingerturn
