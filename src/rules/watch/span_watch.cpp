#include "rules/watch/span_watch.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// Two notes that different fingers take, and what the table says of these fingers.
struct Pair {
  Finger from = 0;
  Finger to = 0;
  int semitones = 0;  ///< between the keys, 0 or above
  int span = 0;
  FingerSpans spans;
  std::optional<int> reach_semitones;
};

Pair pair_of(Hand hand, Finger from, int from_key, Finger to, int to_key,
             std::optional<int> reach_semitones) {
  return {from,
          to,
          std::abs(to_key - from_key),
          span_between(hand, from, from_key, to, to_key),
          spans_of(from, to, reach_semitones),
          reach_semitones};
}

std::string semitone_words(int count) {
  return fmt::format("{} semitone{}", count, count == 1 ? "" : "s");
}

/// Where the reach was given, the limits of pairs with the thumb are fitted to it.
std::string reach_words(const Pair& pair) {
  if (!pair.reach_semitones || pair.spans.lower != kThumb) return {};
  return fmt::format(" with a reach of {}", *pair.reach_semitones);
}

std::string pair_words(const Pair& pair) { return fmt::format("{}-{}", pair.from, pair.to); }

std::string stretch_words(const Pair& pair, std::string_view keys, std::string_view measure,
                          int widest) {
  return fmt::format("{}-{} over {} ({}), {} up to {}{}.", pair.from, pair.to,
                     semitone_words(pair.semitones), keys, measure, widest, reach_words(pair));
}

std::string twist_words(const Pair& pair, std::string_view keys, std::string_view measure,
                        int least) {
  const std::string width =
      pair.span > 0 ? fmt::format("only {} apart", semitone_words(pair.span))
                    : fmt::format("turned {} past each other", semitone_words(-pair.span));
  const std::string limit =
      least > 0 ? fmt::format("from {} apart", least) : fmt::format("up to {}", -least);
  return fmt::format("{}-{} {} ({}), {} {}.", pair.from, pair.to, width, keys, measure, limit);
}

std::string carry_words(double carry) {
  if (carry == 0) return "the arm goes along";
  return fmt::format("the arm carries the hand {} white key{} to the {}", std::abs(carry),
                     std::abs(carry) == 1 ? "" : "s", carry > 0 ? "right" : "left");
}

/// A thumb that would have to pass so far is carried; a wide step is a leap.
std::string_view leap_verdict(const Pair& pair, double carry) {
  constexpr double kLeap = 5;  // white keys
  const bool passes = pair.span < 0 && pair.spans.lower == kThumb;
  if (passes) return "is too far to pass by turning alone";
  return std::abs(carry) >= kLeap ? "is a leap" : "is past what these fingers span";
}

std::string leap_words(const Pair& pair, std::string_view keys, double carry) {
  return fmt::format("{}-{} over {} ({}) {}: {}.", pair.from, pair.to,
                     semitone_words(pair.semitones), keys, leap_verdict(pair, carry),
                     carry_words(carry));
}

/// What is found, without its place; no rule where nothing is.
struct Found {
  std::string_view rule;
  WatchLevel level = WatchLevel::info;
  std::string message;
  std::vector<std::string> also{};  ///< further pairs of the same chord, "2-4"
};

Found found_together(const Pair& pair, const Note& first, const Note& second) {
  const std::string keys =
      fmt::format("{} and {} together", to_string(first.pitch), to_string(second.pitch));
  const FingerSpans& spans = pair.spans;
  if (pair.span > spans.widest_practical) {
    return {kStretchRule.id, WatchLevel::strain,
            stretch_words(pair, keys, "practical", spans.widest_practical)};
  }
  if (pair.span > spans.widest_comfortable) {
    return {kStretchRule.id, WatchLevel::caution,
            stretch_words(pair, keys, "comfortable", spans.widest_comfortable)};
  }
  if (pair.span < spans.least_practical) {
    return {kTwistRule.id, WatchLevel::strain,
            twist_words(pair, keys, "practical", spans.least_practical)};
  }
  if (pair.span < spans.least_comfortable) {
    return {kTwistRule.id, WatchLevel::caution,
            twist_words(pair, keys, "comfortable", spans.least_comfortable)};
  }
  return {};
}

Found found_between(const Pair& pair, std::string_view keys, double carry) {
  constexpr int kWidestTwist = 4;  // semitones
  const FingerSpans& spans = pair.spans;
  const bool too_close = pair.span < spans.least_practical;
  if (too_close && pair.semitones <= kWidestTwist) {
    return {kTwistRule.id, WatchLevel::caution,
            twist_words(pair, keys, "practical", spans.least_practical)};
  }
  if (too_close || pair.span > spans.widest_practical) {
    return {kLeapRule.id, WatchLevel::info, leap_words(pair, keys, carry)};
  }
  if (pair.span > spans.widest_comfortable) {
    return {kStretchRule.id, WatchLevel::caution,
            stretch_words(pair, keys, "comfortable", spans.widest_comfortable)};
  }
  return {kTwistRule.id, WatchLevel::info,
          twist_words(pair, keys, "comfortable", spans.least_comfortable)};
}

bool is_comfortable(const Pair& pair) noexcept {
  return pair.span >= pair.spans.least_comfortable && pair.span <= pair.spans.widest_comfortable;
}

/// Keeps one finding of each rule for a chord: the first of the loudest, and who else is concerned.
void keep(Found found, const Pair& pair, std::vector<Found>& kept) {
  const auto same = std::find_if(kept.begin(), kept.end(),
                                 [&found](const Found& other) { return other.rule == found.rule; });
  if (same == kept.end()) {
    found.also.push_back(pair_words(pair));
    kept.push_back(std::move(found));
    return;
  }
  same->also.push_back(pair_words(pair));
  if (found.level <= same->level) return;
  std::rotate(same->also.begin(), same->also.end() - 1, same->also.end());
  same->level = found.level;
  same->message = std::move(found.message);
}

/// "... Also 2-4 and 3-5."
std::string message_of(const Found& found) {
  std::string message = found.message;
  for (std::size_t i = 1; i < found.also.size(); ++i) {
    message += (i == 1 ? " Also " : " and ") + found.also[i];
  }
  return found.also.size() > 1 ? message + '.' : message;
}

/// The note that is struck where only one is.
const Note& struck_note(const Event& event) {
  const auto* note = event.notes.data();
  while (note->held) ++note;
  return *note;
}

}  // namespace

void find_spans_in_chord(const Line& line, const Strike& strike, std::size_t index,
                         std::optional<int> reach_semitones, std::vector<Finding>& findings) {
  std::vector<Found> kept;
  const std::vector<Note>& notes = line.events[strike.event].notes;
  for (auto first = notes.begin(); first != notes.end(); ++first) {
    if (first->held || !first->finger) continue;
    for (auto second = first + 1; second != notes.end(); ++second) {
      if (second->held || !second->finger || second->finger == first->finger) continue;
      const Pair pair = pair_of(line.hand, *first->finger, midi_number(first->pitch),
                                *second->finger, midi_number(second->pitch), reach_semitones);
      if (!is_comfortable(pair)) keep(found_together(pair, *first, *second), pair, kept);
    }
  }
  for (const Found& found : kept) {
    findings.push_back({found.rule, found.level, strike.event, index, message_of(found)});
  }
}

void find_span_between(const Line& line, const Strike& from, const Strike& to,
                       const EventAnalysis& entry, std::optional<int> reach_semitones,
                       std::vector<Finding>& findings) {
  const Finger leaves = from.departure.lowest;
  const Finger arrives = to.arrival.lowest;
  const bool different = from.departure.known() && to.arrival.known() && leaves != arrives;
  if (!different || from.key == to.key) return;
  const Pair pair = pair_of(line.hand, leaves, from.key, arrives, to.key, reach_semitones);
  if (is_comfortable(pair)) return;
  const std::string keys =
      fmt::format("{} to {}", to_string(struck_note(line.events[from.event]).pitch),
                  to_string(struck_note(line.events[to.event]).pitch));
  Found found = found_between(pair, keys, entry.carry.value_or(0));
  findings.push_back({found.rule, found.level, to.event, entry.index, std::move(found.message)});
}

}  // namespace fingerturn
