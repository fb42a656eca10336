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

/// What is found, without its place; no rule where nothing is.
struct Found {
  std::string_view rule;
  WatchLevel level = WatchLevel::info;
  std::string message;
  std::vector<std::string> also{};  ///< further pairs of the same chord, "2-4"
};

/// How far beyond what is practical a span is a strain, in semitones; our convention.
constexpr int kStrainedStretch = 2;
constexpr int kStrainedTwist = 5;

Found found_together(const Pair& pair, const Note& first, const Note& second) {
  const std::string keys =
      fmt::format("{} and {} together", to_string(first.pitch), to_string(second.pitch));
  const FingerSpans& spans = pair.spans;
  if (pair.span > spans.widest_practical) {
    const bool strained = pair.span > spans.widest_practical + kStrainedStretch;
    return {kStretchRule.id, strained ? WatchLevel::strain : WatchLevel::caution,
            stretch_words(pair, keys, "practical", spans.widest_practical)};
  }
  if (pair.span > spans.widest_comfortable) {
    return {kStretchRule.id, WatchLevel::info,
            stretch_words(pair, keys, "comfortable", spans.widest_comfortable)};
  }
  if (pair.span < spans.least_practical) {
    const bool strained = pair.span <= spans.least_practical - kStrainedTwist;
    return {kTwistRule.id, strained ? WatchLevel::strain : WatchLevel::caution,
            twist_words(pair, keys, "practical", spans.least_practical)};
  }
  return {kTwistRule.id, WatchLevel::info,
          twist_words(pair, keys, "comfortable", spans.least_comfortable)};
}

/// Whether the thumb passes on a black key, the other finger being on a white one.
bool thumb_passes_on_black(const Strike& from, const Strike& to) noexcept {
  const bool black_before = key_colour(from.key) == KeyColour::black;
  const bool black_now = key_colour(to.key) == KeyColour::black;
  if (to.arrival.lowest == kThumb) return black_now && !black_before;
  return from.departure.lowest == kThumb && black_before && !black_now;
}

/// The keys that two fingers strike one after the other, put into words only where they are said.
struct KeysBetween {
  Pitch from;
  Pitch to;

  [[nodiscard]] std::string words() const {
    return fmt::format("{} to {}", to_string(from), to_string(to));
  }
};

/// What is said of a passing; no rule where nothing is.
Found found_passing(const Pair& pair, const KeysBetween& keys, bool thumb_on_black) {
  if (thumb_on_black) {
    return {kTwistRule.id, WatchLevel::caution,
            fmt::format("{}-{} pass one another ({}) with the thumb on a black key and the other "
                        "finger on a white one.",
                        pair.from, pair.to, keys.words())};
  }
  if (pair.span >= pair.spans.least_practical) return {};
  return {kTwistRule.id, WatchLevel::info,
          twist_words(pair, keys.words(), "practical", pair.spans.least_practical)};
}

Found found_between(const Pair& pair, const KeysBetween& keys, const Strike& from, const Strike& to,
                    Crossing crossing) {
  if (crossing != Crossing::none) {
    return found_passing(pair, keys, thumb_passes_on_black(from, to));
  }
  if (pair.span <= pair.spans.widest_comfortable) return {};
  return {kStretchRule.id, WatchLevel::info,
          stretch_words(pair, keys.words(), "comfortable", pair.spans.widest_comfortable)};
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
  const KeysBetween keys{struck_note(line.events[from.event]).pitch,
                         struck_note(line.events[to.event]).pitch};
  Found found = found_between(pair, keys, from, to, entry.crossing);
  if (found.rule.empty()) return;
  findings.push_back({found.rule, found.level, to.event, entry.index, std::move(found.message)});
}

}  // namespace fingerturn
