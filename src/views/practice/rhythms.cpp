#include "views/practice/rhythms.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>

#include <fmt/format.h>

namespace fingerturn {
namespace {

constexpr Fraction kSlowest{1, 8};
// How many times as long a note becomes.
constexpr Fraction kLong{3, 2};
constexpr Fraction kShort{1, 2};
constexpr std::size_t kFewest = 8;
constexpr std::size_t kMost = 16;

/// Struck events one after another, by their places in Line::events.
struct EvenRun {
  std::size_t first = 0;
  std::size_t count = 0;
};

/// Whether an event can be put into another rhythm: nothing in it sounds on beyond it.
bool is_plain(const Event& event) {
  if (event.is_rest() || event.grace || event.rolls_on || !event.duration) return false;
  if (event.ornament != Ornament::none || kSlowest < *event.duration) return false;
  return std::ranges::none_of(event.notes, [](const Note& note) {
    return note.tied || note.held || note.lasts.has_value();
  });
}

EvenRun longest_run(const AnalysedLine& line, BarRange bars) {
  EvenRun best;
  EvenRun run;
  std::size_t gesture = 0;
  for (const auto& [written, found] : line) {
    const bool belongs = bars.contains(written.bar) && is_plain(written);
    const bool goes_on = run.count > 0 && run.count < kMost &&
                         found.event == run.first + run.count && found.gesture == gesture &&
                         written.duration == line.written().events[run.first].duration;
    if (!belongs) {
      run = {};
    } else if (goes_on) {
      ++run.count;
    } else if (run.count < kMost) {
      run = {found.event, 1};
    }
    gesture = found.gesture;
    if (run.count > best.count) best = run;
  }
  return best;
}

class RhythmWriter {
 public:
  RhythmWriter(const Cutting& cutting, Hand hand, EvenRun run, Fraction value)
      : cutting_(cutting),
        notes_(cutting.events(hand, run.first, run.first + run.count - 1)),
        value_(value) {}

  std::vector<PracticeMusic> write() {
    add("long-short", [](std::size_t at) { return at % 2 == 0 ? kLong : kShort; });
    add("short-long", [](std::size_t at) { return at % 2 == 0 ? kShort : kLong; });
    for (const std::size_t size : {std::size_t{3}, std::size_t{4}}) {
      for (std::size_t begin = 0; begin < size; ++begin) add_groups(size, begin);
    }
    return std::move(rhythms_);
  }

 private:
  void add_groups(std::size_t size, std::size_t begin) {
    constexpr std::array<const char*, 4> kPlaces{"first", "second", "third", "fourth"};
    constexpr Fraction kPause{3, 1};
    add(fmt::format("groups of {} from the {} note", size, kPlaces.at(begin)), [=](std::size_t at) {
      return (at + size - begin) % size == size - 1 ? kPause : Fraction{1, 1};
    });
  }

  /// Nothing is added where a value is beyond exact arithmetic.
  template <typename TimesAt>
  void add(std::string words, TimesAt times_at) {
    std::vector<Fraction> values;
    for (std::size_t at = 0; at < notes_.events.size(); ++at) {
      const std::optional<Fraction> value = product(value_, times_at(at));
      if (!value) return;
      values.push_back(*value);
    }
    rhythms_.push_back(cutting_.in_values(notes_, values));
    rhythms_.back().words = std::move(words);
  }

  const Cutting& cutting_;
  PracticeMusic notes_;
  Fraction value_;
  std::vector<PracticeMusic> rhythms_;
};

}  // namespace

std::vector<PracticeMusic> rhythms_of(const Cutting& cutting, Hand hand, BarRange bars) {
  const std::optional<AnalysedLine> line = cutting.piece().of_hand(hand);
  if (!line) return {};
  const EvenRun run = longest_run(*line, bars);
  if (run.count < kFewest) return {};
  return RhythmWriter(cutting, hand, run, *line->written().events[run.first].duration).write();
}

}  // namespace fingerturn
