#include "fingerturn/compare.hpp"

#include "score/struck_notes.hpp"
#include "score/timeline.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace fingerturn {
namespace {

constexpr std::array kHands{Hand::right, Hand::left};

/// The struck events of a hand; none where it has no line.
std::size_t count_in(const std::optional<AnalysedLine>& line) { return line ? line->size() : 0; }

/// Tells times from the first event that is compared, of either hand, so that bars of a score can
/// be compared with the same bars typed by themselves.
class Clock {
 public:
  explicit Clock(const AnalysedPassage& passage) {
    for (const AnalysedLine line : passage) {
      if (line.size() == 0) continue;
      const std::optional<Fraction>& onset = line[0].written.onset;
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
std::optional<std::size_t> first_difference(const std::optional<AnalysedLine>& one,
                                            const Clock& first,
                                            const std::optional<AnalysedLine>& other,
                                            const Clock& second) {
  const std::size_t shared = std::min(count_in(one), count_in(other));
  for (std::size_t number = 0; number < shared; ++number) {
    const Event& left = (*one)[number].written;
    const Event& right = (*other)[number].written;
    const auto time = first.time_of(left);
    const auto other_time = second.time_of(right);
    const bool together = !time || !other_time || time == other_time;
    if (!together || struck_keys(left) != struck_keys(right)) return number;
  }
  if (count_in(one) == count_in(other)) return std::nullopt;
  return shared;
}

std::optional<std::size_t> place_of(const std::optional<AnalysedLine>& line, std::size_t number) {
  if (number >= count_in(line)) return std::nullopt;
  return (*line)[number].found.event;
}

/// The fingers on every key that is struck.
std::vector<std::vector<Finger>> fingers_of(const AnalysedLine& line, std::size_t number) {
  const auto [written, found] = line[number];
  std::vector<std::vector<Finger>> fingers;
  for (const Note& note : written.notes) {
    if (!note.held) fingers.push_back(fingers_on_key(line.written(), found.event, note));
  }
  return fingers;
}

bool turn_alike(const AnalysedLine& one, const AnalysedLine& other, std::size_t number) {
  const EventAnalysis& left = one[number].found;
  const EventAnalysis& right = other[number].found;
  return left.rotation == right.rotation && left.side == right.side &&
         left.crossing == right.crossing;
}

bool fingered_alike(const AnalysedLine& one, const AnalysedLine& other, std::size_t number) {
  return fingers_of(one, number) == fingers_of(other, number);
}

HandResult result_of(const AnalysedLine& line) {
  HandResult result;
  result.totals = line.found().totals;
  result.difficulty = line.found().difficulty;
  for (const Finding& finding : line.found().watch) result.watch.add(finding.level);
  return result;
}

using Alike = bool (*)(const AnalysedLine& one, const AnalysedLine& other, std::size_t number);

bool all_alike_in(Alike alike, const std::vector<AnalysedLine>& lines, std::size_t number) {
  return std::all_of(lines.begin() + 1, lines.end(), [&](const AnalysedLine& other) {
    return alike(lines.front(), other, number);
  });
}

Agreement agreement_at(const std::vector<AnalysedLine>& lines, std::size_t number) {
  return {1, all_alike_in(fingered_alike, lines, number) ? 1U : 0U,
          all_alike_in(turn_alike, lines, number) ? 1U : 0U};
}

bool is_compared(ComparedEvents events, const std::vector<AnalysedLine>& lines,
                 std::size_t number) {
  return events == ComparedEvents::all ||
         std::ranges::all_of(lines, [number](const AnalysedLine& line) {
           return std::ranges::all_of(line[number].written.notes, [](const Note& note) {
             return note.held || (note.finger && !note.suggested);
           });
         });
}

std::size_t fewest_events(const std::vector<AnalysedLine>& lines) {
  std::size_t fewest = lines.front().size();
  for (const AnalysedLine& line : lines) fewest = std::min(fewest, line.size());
  return fewest;
}

/// The lines of a hand in all fingerings; none where one of them plays nothing.
std::vector<AnalysedLine> lines_of(std::span<const NamedPassage> fingerings, Hand hand) {
  std::vector<AnalysedLine> lines;
  for (const NamedPassage& fingering : fingerings) {
    const std::optional<AnalysedLine> line = fingering.passage.of_hand(hand);
    if (count_in(line) == 0) return {};
    lines.push_back(*line);
  }
  return lines;
}

HandComparison compare_hand(const Passage& passage, std::vector<AnalysedLine> lines,
                            ComparedEvents events) {
  HandComparison comparison;
  const AnalysedLine first = lines.front();
  comparison.hand = first.hand();
  for (const AnalysedLine& line : lines) comparison.results.push_back(result_of(line));
  const std::vector<std::size_t> beginnings = bar_beginnings(first.written());
  const std::size_t count = fewest_events(lines);
  std::vector<BarAgreement>& bars = comparison.agreement;
  for (std::size_t number = 0; number < count; ++number) {
    if (!is_compared(events, lines, number)) continue;
    comparison.compared.push_back(number);
    const auto [written, found] = first[number];
    const Agreement agreement = agreement_at(lines, number);
    if (bars.empty() || bars.back().bar != written.bar) bars.push_back({written.bar, {}});
    bars.back().agreement.add(agreement);
    if (agreement.is_full()) continue;
    const auto beat = beat_of(passage, first.written(), found.event, beginnings);
    comparison.differing.push_back({number, written.bar, beat});
  }
  comparison.lines = std::move(lines);
  return comparison;
}

}  // namespace

std::optional<NotesDiffer> notes_differ(std::span<const NamedPassage> passages) {
  for (std::size_t other = 1; other < passages.size(); ++other) {
    const AnalysedPassage& one = passages[0].passage;
    const AnalysedPassage& second = passages[other].passage;
    const Clock first(one);
    const Clock clock(second);
    for (const Hand hand : kHands) {
      const auto left = one.of_hand(hand);
      const auto right = second.of_hand(hand);
      const std::optional<std::size_t> number = first_difference(left, first, right, clock);
      if (number)
        return NotesDiffer{other, hand, place_of(left, *number), place_of(right, *number)};
    }
  }
  return std::nullopt;
}

bool Comparison::all_alike() const noexcept {
  return std::all_of(hands.begin(), hands.end(),
                     [](const HandComparison& hand) { return hand.differing.empty(); });
}

void Agreement::add(const Agreement& other) noexcept {
  events += other.events;
  fingers += other.fingers;
  turns += other.turns;
}

Agreement HandComparison::in_all() const noexcept {
  Agreement all;
  for (const BarAgreement& bar : agreement) all.add(bar.agreement);
  return all;
}

Comparison compare(std::string title, std::vector<NamedPassage> fingerings, ComparedEvents events) {
  Comparison comparison{std::move(title), std::move(fingerings), {}, events};
  for (const Hand hand : kHands) {
    std::vector<AnalysedLine> lines = lines_of(comparison.fingerings, hand);
    if (lines.empty()) continue;
    const Passage& passage = comparison.fingerings.front().passage.written();
    comparison.hands.push_back(compare_hand(passage, std::move(lines), events));
  }
  return comparison;
}

}  // namespace fingerturn
