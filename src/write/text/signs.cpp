#include "write/text/signs.hpp"

namespace fingerturn {
namespace {

/// ANSI X3.64 (ECMA-48) sequences for the eight basic colours.
std::string_view sequence_of(Emphasis emphasis) {
  switch (emphasis) {
    case Emphasis::strong:
      return "\x1b[1m";
    case Emphasis::faint:
      return "\x1b[2m";
    case Emphasis::prepared:
      return "\x1b[36m";
    case Emphasis::doubled:
      return "\x1b[1;33m";
    case Emphasis::open:
      return "\x1b[31m";
    case Emphasis::plain:
      break;
  }
  return {};
}

}  // namespace

std::string emphasised(std::string_view text, Emphasis emphasis, bool colour) {
  const std::string_view sequence = sequence_of(emphasis);
  if (!colour || sequence.empty() || text.empty()) return std::string(text);
  return std::string(sequence) + std::string(text) + "\x1b[0m";
}

std::string_view short_name_of(Rotation rotation) noexcept {
  switch (rotation) {
    case Rotation::preparatory:
      return "prep";
    case Rotation::undetermined:
      return "?";
    case Rotation::single_rotation:
    case Rotation::double_rotation:
    case Rotation::level:
      break;
  }
  return name_of(rotation);
}

Emphasis emphasis_of(Rotation rotation) noexcept {
  switch (rotation) {
    case Rotation::preparatory:
      return Emphasis::prepared;
    case Rotation::double_rotation:
      return Emphasis::doubled;
    case Rotation::undetermined:
      return Emphasis::open;
    case Rotation::single_rotation:
    case Rotation::level:
      break;
  }
  return Emphasis::plain;
}

std::string_view short_name_of(Crossing crossing) noexcept {
  switch (crossing) {
    case Crossing::thumb_under:
      return "under";
    case Crossing::finger_over_thumb:
      return "over";
    case Crossing::finger_crossing:
      return "cross";
    case Crossing::none:
      break;
  }
  return {};
}

std::string_view sign_of(Direction direction, const Signs& signs) noexcept {
  return direction == Direction::left ? signs.left : signs.right;
}

}  // namespace fingerturn
