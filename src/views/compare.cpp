#include "fingerturn/compare.hpp"

#include "views/level_count.hpp"
#include "score/timeline.hpp"

#include <algorithm>
#include <array>
#include <limits>

namespace fingerturn {
namespace {

constexpr std::array kHands{Hand::right, Hand::left};

/// A line with its analysis; null where the hand plays nothing.
struct Played {
  const Line* line = nullptr;
  const LineAnalysis* analysis = nullptr;

  [[nodiscard]] std::size_t count() const {
    return analysis == nullptr ? 0 : analysis->events.size();
  }
  [[nodiscard]] const EventAnalysis& entry(std::size_t number) const {
    return analysis->events[number];
  }
  [[nodiscard]] const Event& event(std::size_t number) const {
    return line->events[entry(number).event];
  }
};

Played played_by(const Fingering& fingering, Hand hand) {
  const Line* line = line_of_hand(fingering.passage, hand);
  if (line == nullptr) return {};
  const auto at = static_cast<std::size_t>(line - fingering.passage.lines.data());
  return {line, &fingering.analysis.lines[at]};
}

std::vector<int> struck_keys(const Event& event) {
  std::vector<int> keys;
  for (const Note& note : event.notes) {
    if (!note.held) keys.push_back(midi_number(note.pitch));
  }
  return keys;
}

/// Tells times from the first event that is compared, of either hand, so that bars of a score can
/// be compared with the same bars typed by themselves.
class Clock {
 public:
  explicit Clock(const Fingering& fingering) {
    for (const Hand hand : kHands) {
      const Played played = played_by(fingering, hand);
      if (played.count() == 0) continue;
      const std::optional<Fraction>& onset = played.event(0).onset;
      if (onset && (!start_ || *onset < *start_)) start_ = onset;
    }
  }

  [[nodiscard]] std::optional<Fraction> time_of(const Event& event) const {
    if (!start_ || !event.onset) return std::nullopt;
    return sum(*event.onset, {-start_->numerator, start_->denominator});
  }

 private:
  std::optional<Fraction> start_;
};

/// The first event that is not the same in both; none where all are.
std::optional<std::size_t> first_difference(const Played& one, const Clock& first,
                                            const Played& other, const Clock& second) {
  const std::size_t shared = std::min(one.count(), other.count());
  for (std::size_t number = 0; number < shared; ++number) {
    const Event& left = one.event(number);
    const Event& right = other.event(number);
    const auto time = first.time_of(left);
    const auto other_time = second.time_of(right);
    const bool together = !time || !other_time || time == other_time;
    if (!together || struck_keys(left) != struck_keys(right)) return number;
  }
  if (one.count() == other.count()) return std::nullopt;
  return shared;
}

std::optional<std::size_t> place_of(const Played& played, std::size_t number) {
  if (number >= played.count()) return std::nullopt;
  return played.entry(number).event;
}

/// The fingers on every key that is struck.
std::vector<std::vector<Finger>> fingers_of(const Played& played, std::size_t number) {
  std::vector<std::vector<Finger>> fingers;
  for (const Note& note : played.event(number).notes) {
    if (note.held) continue;
    fingers.push_back(fingers_on_key(*played.line, played.entry(number).event, note));
  }
  return fingers;
}

bool played_alike(const Played& one, const Played& other, std::size_t number) {
  const EventAnalysis& left = one.entry(number);
  const EventAnalysis& right = other.entry(number);
  return left.rotation == right.rotation && left.side == right.side &&
         left.crossing == right.crossing && fingers_of(one, number) == fingers_of(other, number);
}

FingeringResult result_of(const Played& played) {
  FingeringResult result;
  if (played.analysis == nullptr) return result;
  result.totals = played.analysis->totals;
  result.difficulty = played.analysis->difficulty;
  for (const Finding& finding : played.analysis->watch) ++count_of(result, finding.level);
  return result;
}

class HandComparer {
 public:
  HandComparer(std::span<const Fingering> fingerings, Hand hand) : passage_(fingerings[0].passage) {
    comparison_.hand = hand;
    for (const Fingering& fingering : fingerings) played_.push_back(played_by(fingering, hand));
  }

  HandComparison compare() {
    if (played_[0].line != nullptr) beginnings_ = bar_beginnings(*played_[0].line);
    for (const Played& played : played_) comparison_.results.push_back(result_of(played));
    const std::size_t count = fewest_events();
    for (std::size_t number = 0; number < count; ++number) {
      comparison_.bars.push_back(played_[0].event(number).bar);
      if (!alike(number)) add(number);
    }
    return std::move(comparison_);
  }

 private:
  [[nodiscard]] std::size_t fewest_events() const {
    std::size_t fewest = std::numeric_limits<std::size_t>::max();
    for (const Played& played : played_) fewest = std::min(fewest, played.count());
    return fewest;
  }

  [[nodiscard]] bool alike(std::size_t number) const {
    return std::all_of(played_.begin() + 1, played_.end(), [this, number](const Played& other) {
      return played_alike(played_[0], other, number);
    });
  }

  void add(std::size_t number) {
    DifferingEvent& event = comparison_.differing.emplace_back();
    event.number = number;
    event.bar = played_[0].event(number).bar;
    event.beat = beat_of(passage_, *played_[0].line, played_[0].entry(number).event, beginnings_);
    for (const Played& played : played_) event.played.push_back(played.entry(number));
  }

  const Passage& passage_;
  std::vector<Played> played_;
  std::vector<std::size_t> beginnings_;
  HandComparison comparison_;
};

}  // namespace

std::optional<NotesDiffer> notes_differ(std::span<const Fingering> fingerings) noexcept {
  for (std::size_t other = 1; other < fingerings.size(); ++other) {
    const Clock first(fingerings[0]);
    const Clock clock(fingerings[other]);
    for (const Hand hand : kHands) {
      const Played one = played_by(fingerings[0], hand);
      const Played second = played_by(fingerings[other], hand);
      const std::optional<std::size_t> number = first_difference(one, first, second, clock);
      if (number)
        return NotesDiffer{other, hand, place_of(one, *number), place_of(second, *number)};
    }
  }
  return std::nullopt;
}

bool Comparison::all_alike() const noexcept {
  return std::all_of(hands.begin(), hands.end(),
                     [](const HandComparison& hand) { return hand.differing.empty(); });
}

Comparison compare(std::span<const Fingering> fingerings) noexcept {
  Comparison comparison;
  if (fingerings.empty()) return comparison;
  for (const Hand hand : kHands) {
    if (played_by(fingerings[0], hand).count() == 0) continue;
    comparison.hands.push_back(HandComparer(fingerings, hand).compare());
  }
  return comparison;
}

}  // namespace fingerturn
