#include "views/practice/cells.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace fingerturn {
namespace {

bool leaps_to(const AnalysedLine& line, const EventAnalysis& found) {
  return std::ranges::any_of(line.found().watch, [&](const Finding& finding) {
    return finding.event == found.event && is_leap(finding);
  });
}

std::string_view passing_words(Crossing crossing) {
  switch (crossing) {
    case Crossing::thumb_under:
      return "thumb under";
    case Crossing::finger_over_thumb:
      return "finger over the thumb";
    case Crossing::finger_crossing:
      return "fingers crossing";
    case Crossing::none:
      break;
  }
  return {};
}

/// What is to be learned at an event, and whether the note after it belongs to it.
struct Lesson {
  std::string words;
  bool with_next = false;
};

class CellSearch {
 public:
  CellSearch(const Cutting& cutting, Hand hand)
      : cutting_(cutting), line_(*cutting.piece().of_hand(hand)) {}

  void add(std::size_t number) {
    if (number == 0 || !cutting_.reaches(line_[number - 1].written)) return;
    const std::optional<Lesson> lesson = lesson_at(number);
    if (!lesson) return;
    const bool with_next =
        lesson->with_next && is_joined(number + 1) && cutting_.reaches(line_[number + 1].written);
    const std::size_t first = line_[number - 1].found.event;
    const std::size_t last = line_[number + (with_next ? 1 : 0)].found.event;
    const auto [known, is_new] =
        known_.try_emplace(lesson->words + key_of(first, last, number), cells_.size());
    if (!is_new) {
      ++cells_[known->second].times;
      return;
    }
    cells_.push_back(cutting_.events(line_.hand(), first, last));
    cells_.back().words = lesson->words;
    cells_.back().lesson = line_[number].found.event;
  }

  std::vector<PracticeMusic> take() { return std::move(cells_); }

 private:
  [[nodiscard]] std::optional<Lesson> lesson_at(std::size_t number) const {
    const EventAnalysis& found = line_[number].found;
    if (found.crossing != Crossing::none) {
      return Lesson{std::string(passing_words(found.crossing)), true};
    }
    if (leaps_to(line_, found)) return Lesson{"leap: first without its last note, then with it"};
    if (std::abs(found.carry.value_or(0)) >= kFarCarry) {
      return Lesson{fmt::format("carry over {} white keys", std::abs(*found.carry)), true};
    }
    const bool is_double = found.rotation == Rotation::double_rotation && is_joined(number);
    return is_double ? std::optional(Lesson{"double"}) : std::nullopt;
  }

  /// Whether an event is there and goes on from the one before.
  [[nodiscard]] bool is_joined(std::size_t number) const {
    return number > 0 && number < line_.size() &&
           line_[number].found.gesture == line_[number - 1].found.gesture;
  }

  /// What is the same where the same is to be learned.
  [[nodiscard]] std::string key_of(std::size_t first, std::size_t last, std::size_t number) const {
    std::string key;
    for (std::size_t at = first; at <= last; ++at) {
      const Event& event = line_.written().events[at];
      for (const Note& note : event.notes) {
        fmt::format_to(std::back_inserter(key), " {}:{}{}", midi_number(note.pitch),
                       note.finger.value_or(0), note.held ? "h" : "");
      }
      key += ',';
    }
    const EventAnalysis& found = line_[number].found;
    return key + std::string(name_of(found.rotation)) +
           (found.side == Side::toward_thumb ? "<" : ">");
  }

  const Cutting& cutting_;
  AnalysedLine line_;
  std::map<std::string, std::size_t> known_;
  std::vector<PracticeMusic> cells_;
};

}  // namespace

std::vector<PracticeMusic> cells_of(const Cutting& cutting, Hand hand, BarRange bars) {
  const std::optional<AnalysedLine> line = cutting.piece().of_hand(hand);
  if (!line) return {};
  CellSearch search(cutting, hand);
  for (std::size_t number = 0; number < line->size(); ++number) {
    if (bars.contains((*line)[number].written.bar)) search.add(number);
  }
  return search.take();
}

}  // namespace fingerturn
