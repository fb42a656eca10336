#include "write/shared/cues.hpp"

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// What a cue can say of an event.
enum class Fact : std::uint8_t {
  swing_right_play_left,
  swing_left_play_right,
  play_left,
  play_right,
  play_without_side,
  swing_again,
  level,
  not_known,
  thumb_under,
  finger_over_thumb,
  fingers_cross,
  carried_up,
  carried_down,
  in,
  out,
  to_and_fro
};

/// Every word of the cues, in the order of the facts; "{}" is a number of keys.
constexpr std::array<std::string_view, 16> kWords{
    "swing right, play left",
    "swing left, play right",
    "play left",
    "play right",
    "swing and play to either side",
    "swing again for the same finger",
    "both sides of the hand go down together",
    "find the finger first",
    "thumb passes under",
    "finger passes over the thumb",
    "fingers pass each other",
    "arm carries {} up",
    "arm carries {} down",
    "hand goes in",
    "hand comes out",
    "then the sides alternate",
};

constexpr std::array<std::string_view, 13> kCounts{"",     "one",    "two",   "three", "four",
                                                   "five", "six",    "seven", "eight", "nine",
                                                   "ten",  "eleven", "twelve"};
constexpr std::array<std::string_view, 4> kQuarters{"", "a quarter", "a half", "three quarters"};

std::string_view words_of(Fact fact) { return kWords.at(static_cast<std::size_t>(fact)); }

/// "two and a half keys"
std::string keys_words(double white_keys) {
  const auto quarters = static_cast<std::size_t>(std::lround(white_keys * 4));
  const std::size_t whole = quarters / 4;
  const std::string_view part = kQuarters.at(quarters % 4);
  if (whole == 0) return fmt::format("{} of a key", part);
  std::string words =
      whole < kCounts.size() ? std::string(kCounts.at(whole)) : std::to_string(whole);
  if (!part.empty()) words += fmt::format(" and {}", part);
  return words + (quarters == 4 ? " key" : " keys");
}

Fact fact_of_side(const EventAnalysis& entry, Direction play) {
  const bool left = play == Direction::left;
  if (entry.prepare) return left ? Fact::swing_right_play_left : Fact::swing_left_play_right;
  return left ? Fact::play_left : Fact::play_right;
}

Fact fact_of_rotation(const EventAnalysis& entry, Hand hand) {
  if (entry.side) return fact_of_side(entry, direction_of(hand, *entry.side));
  switch (entry.rotation) {
    case Rotation::preparatory:
      return Fact::play_without_side;
    case Rotation::single_rotation:
    case Rotation::double_rotation:
      return Fact::swing_again;
    case Rotation::level:
      return Fact::level;
    case Rotation::undetermined:
      break;
  }
  return Fact::not_known;
}

void add(std::string& cue, std::string_view words) {
  if (!cue.empty()) cue += "; ";
  cue += words;
}

void add_crossing(std::string& cue, Crossing crossing) {
  switch (crossing) {
    case Crossing::none:
      return;
    case Crossing::thumb_under:
      return add(cue, words_of(Fact::thumb_under));
    case Crossing::finger_over_thumb:
      return add(cue, words_of(Fact::finger_over_thumb));
    case Crossing::finger_crossing:
      return add(cue, words_of(Fact::fingers_cross));
  }
}

}  // namespace

std::string cue_of(const EventAnalysis& entry, Hand hand) {
  std::string cue(words_of(fact_of_rotation(entry, hand)));
  add_crossing(cue, entry.crossing);
  const double carry = entry.carry.value_or(0);
  if (carry != 0) {
    const Fact way = carry > 0 ? Fact::carried_up : Fact::carried_down;
    std::string words(words_of(way));
    add(cue, words.replace(words.find("{}"), 2, keys_words(std::abs(carry))));
  }
  if (entry.in_out) add(cue, words_of(*entry.in_out == InOut::in ? Fact::in : Fact::out));
  if (entry.reason.goes_on) add(cue, words_of(Fact::to_and_fro));
  return cue;
}

}  // namespace fingerturn
