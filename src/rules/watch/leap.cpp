#include "rules/watch/leap.hpp"

#include "hand/keyboard.hpp"

#include <cmath>
#include <cstdlib>
#include <string>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr double kLeap = 5;              // white keys
constexpr double kQuick = 40;            // white keys a second
constexpr double kQuickForCaution = 70;  // white keys a second

/// "C4", or of several keys the lowest and the highest, "C3-E4".
std::string key_words(const Event& event) {
  const Note* lowest = nullptr;
  const Note* highest = nullptr;
  for (const Note& note : event.notes) {
    if (note.held) continue;
    if (lowest == nullptr) lowest = &note;
    highest = &note;
  }
  if (lowest == highest) return to_string(lowest->pitch);
  return fmt::format("{}-{}", to_string(lowest->pitch), to_string(highest->pitch));
}

/// Whether one finger goes from key to key as far as a leap.
bool is_far_for_one_finger(const Strike& from, const Strike& to) {
  if (!from.is_single_note() || !to.is_single_note()) return false;
  if (from.departure.lowest != to.arrival.lowest) return false;
  return std::abs(place_of_key(to.key) - place_of_key(from.key)) >= kLeap * kQuartersInKey;
}

/// Whether no hand spans or passes from the one single note to the other.
bool is_beyond_fingers(Hand hand, const Strike& from, const Strike& to, const EventAnalysis& entry,
                       std::optional<int> reach_semitones) {
  if (!from.is_single_note() || !to.is_single_note()) return false;
  const Finger leaves = from.departure.lowest;
  const Finger arrives = to.arrival.lowest;
  if (leaves == arrives || from.key == to.key) return false;
  const FingerSpans spans = spans_of(leaves, arrives, reach_semitones);
  const int span = span_between(hand, leaves, from.key, arrives, to.key);
  if (span > spans.widest_practical) return true;
  // Against the order of the fingers only what passes is within reach.
  return span < 0 && span < spans.least_practical && entry.crossing == Crossing::none;
}

std::string carry_words(double carry) {
  if (carry == 0) return "the arm goes along";
  return fmt::format("the arm carries the hand {} white key{} to the {}", std::abs(carry),
                     std::abs(carry) == 1 ? "" : "s", carry > 0 ? "right" : "left");
}

/// "1-5 over 14 semitones (C4 to D5)", or where no two fingers measure it "From C2 to C3-E3-G3".
std::string place_words(const Line& line, const Strike& from, const Strike& to) {
  const std::string before = key_words(line.events[from.event]);
  const std::string now = key_words(line.events[to.event]);
  if (!from.is_single_note() || !to.is_single_note()) {
    return fmt::format("From {} to {}", before, now);
  }
  const int semitones = std::abs(to.key - from.key);
  return fmt::format("{}-{} over {} semitone{} ({} to {})", from.departure.lowest,
                     to.arrival.lowest, semitones, semitones == 1 ? "" : "s", before, now);
}

std::string quick_words(double seconds, double speed) {
  return fmt::format(" in {:.2f} seconds, {:.0f} white keys a second", seconds, speed);
}

}  // namespace

bool find_leap(const Line& line, const Approach& approach, const Strike& to,
               const EventAnalysis& entry, std::optional<int> reach_semitones,
               std::vector<Finding>& findings) {
  // Where a finger is missing the hand may have been carried before.
  if (!approach.from->arrival.known() || !entry.carry) return false;
  const double carry = *entry.carry;
  const bool passes = entry.crossing != Crossing::none;
  const bool is_far = approach.near && !passes &&
                      (std::abs(carry) >= kLeap || is_far_for_one_finger(*approach.from, to));
  const bool is_beyond = approach.in_gesture &&
                         is_beyond_fingers(line.hand, *approach.from, to, entry, reach_semitones);
  if (!is_far && !is_beyond) return false;
  const std::string place = place_words(line, *approach.from, to);
  const std::optional<double> seconds = approach.pace.seconds();
  const double speed = seconds ? std::abs(carry) / *seconds : 0;
  if (is_far && speed >= kQuick) {
    const WatchLevel level = speed >= kQuickForCaution ? WatchLevel::caution : WatchLevel::info;
    findings.push_back({kQuickLeapRule.id, level, to.event, entry.index,
                        fmt::format("{} is a quick leap: {}{}.", place, carry_words(carry),
                                    quick_words(*seconds, speed))});
    return true;
  }
  const std::string_view what = is_far ? "is a leap" : "is past what these fingers span or pass";
  findings.push_back({kLeapRule.id, WatchLevel::info, to.event, entry.index,
                      fmt::format("{} {}: {}.", place, what, carry_words(carry))});
  return true;
}

}  // namespace fingerturn
