#include "rules/repeats.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>

#include <fmt/format.h>

namespace fingerturn {
namespace {

/// What is compared of two bars.
enum class Alike : std::uint8_t { notes, notes_and_all_found };

/// All that is said of the bars of a passage, as text that is the same where it is the same.
class BarTexts {
 public:
  BarTexts(const AnalysedPassage& passage, Alike alike) {
    for (const AnalysedLine line : passage) add_notes(line, alike);
    if (alike == Alike::notes) return;
    for (const AnalysedLine line : passage) add_signs(line);
    const Passage& written = passage.written();
    for (const auto& meter : written.meters) mark(meter.bar);
    for (const auto& key : written.keys) mark(key.bar);
    for (const auto& words : written.notes) mark(words.bar);
  }

  [[nodiscard]] const std::map<std::int32_t, std::string>& texts() const noexcept { return texts_; }

 private:
  template <typename... Values>
  void add(const Values&... values) {
    (fmt::format_to(std::back_inserter(*text_), "{} ", values), ...);
  }

  /// Makes a bar like no other.
  void mark(std::int32_t bar) {
    const auto found = texts_.find(bar);
    if (found != texts_.end()) found->second += fmt::format("alone {}", bar);
  }

  void add_notes(const AnalysedLine& line, Alike alike) {
    std::size_t entry = 0;
    std::optional<std::int32_t> bar;
    std::optional<Fraction> start;
    for (std::size_t i = 0; i < line.written().events.size(); ++i) {
      const Event& event = line.written().events[i];
      text_ = &texts_[event.bar];
      if (bar != event.bar) {
        bar = event.bar;
        start = event.onset;
        add(to_string(line.hand()));
      }
      add_event(event, start);
      if (alike == Alike::notes) continue;
      if (entry < line.size() && line[entry].found.event == i) add_found(line[entry++].found);
    }
  }

  void add_signs(const AnalysedLine& line) {
    for (const BarLine& bar_line : line.written().bar_lines) mark_sides(line.written(), bar_line);
    for (const Finding& finding : line.found().watch) {
      text_ = &texts_[line.event_of(finding).bar];
      add(finding.rule, finding.message);
    }
  }

  void mark_sides(const Line& line, const BarLine& bar_line) {
    if (bar_line.style == BarLineStyle::single) return;
    if (bar_line.before_event > 0) mark(line.events[bar_line.before_event - 1].bar);
    if (bar_line.before_event < line.events.size()) mark(line.events[bar_line.before_event].bar);
  }

  void add_event(const Event& event, std::optional<Fraction> start) {
    const std::optional<Fraction> since =
        event.onset && start ? sum(*event.onset, {-start->numerator, start->denominator})
                             : std::nullopt;
    add(since ? to_string(*since) : "?", event.duration ? to_string(*event.duration) : "?",
        event.grace, event.breath_after, event.rolls_on, static_cast<int>(event.ornament));
    for (const Note& note : event.notes) {
      add(midi_number(note.pitch), static_cast<int>(note.pitch.step), note.tied, note.held,
          note.suggested, note.finger.value_or(0));
      for (const Finger finger : note.changes_to) add('>', finger);
      if (note.lasts) add(to_string(*note.lasts));
    }
  }

  void add_found(const EventAnalysis& found) {
    const auto number = [](const auto& value) { return value ? static_cast<int>(*value) : -1; };
    add(static_cast<int>(found.rotation), static_cast<int>(found.crossing), number(found.side),
        number(found.change), number(found.prepare), number(found.in_out), found.carry.value_or(0));
  }

  std::map<std::int32_t, std::string> texts_;
  std::string* text_ = nullptr;
};

/// A bar, and a number that it shares with those that are alike.
struct NumberedBar {
  std::int32_t bar = 0;
  std::size_t kind = 0;
};

std::map<std::int32_t, std::size_t> kinds_of(const AnalysedPassage& passage, Alike alike) {
  const BarTexts texts(passage, alike);
  std::unordered_map<std::string_view, std::size_t> kinds;
  std::map<std::int32_t, std::size_t> bars;
  for (const auto& [bar, text] : texts.texts()) {
    if (!passage.found().shows(bar)) continue;
    bars[bar] = kinds.try_emplace(text, kinds.size()).first->second;
  }
  return bars;
}

std::vector<NumberedBar> numbered(const AnalysedPassage& passage) {
  std::vector<NumberedBar> bars;
  for (const auto& [bar, kind] : kinds_of(passage, Alike::notes_and_all_found)) {
    bars.push_back({bar, kind});
  }
  return bars;
}

class RepeatSearch {
 public:
  explicit RepeatSearch(std::vector<NumberedBar> bars) : bars_(std::move(bars)) {}

  std::vector<BarsAgain> found() {
    constexpr std::size_t kFewest = 2;
    std::vector<BarsAgain> again;
    for (std::size_t at = 0; at < bars_.size();) {
      const auto [from, length] = longest_at(at);
      if (length < kFewest) {
        kept_[bars_[at].kind].push_back(at);
        earlier_.push_back(true);
        ++at;
        continue;
      }
      again.push_back({{bars_[at].bar, bars_[at + length - 1].bar},
                       {bars_[from].bar, bars_[from + length - 1].bar}});
      earlier_.insert(earlier_.end(), length, false);
      at += length;
    }
    return again;
  }

 private:
  struct Stretch {
    std::size_t from = 0;
    std::size_t length = 0;
  };

  /// The longest stretch of kept bars that is alike to the one from here on; of several the first.
  /// Where very many bars are alike, only the first of them are tried.
  Stretch longest_at(std::size_t at) const {
    constexpr std::size_t kMostTried = 8;
    Stretch best;
    const auto kept = kept_.find(bars_[at].kind);
    if (kept == kept_.end()) return best;
    for (std::size_t i = 0; i < std::min(kMostTried, kept->second.size()); ++i) {
      const std::size_t length = length_of(kept->second[i], at);
      if (length > best.length) best = {kept->second[i], length};
    }
    return best;
  }

  [[nodiscard]] std::size_t length_of(std::size_t from, std::size_t at) const {
    const auto follows = [&](std::size_t place, std::size_t step) {
      return bars_[place + step].bar == bars_[place].bar + static_cast<std::int32_t>(step);
    };
    std::size_t length = 0;
    while (from + length < at && at + length < bars_.size() && earlier_[from + length] &&
           bars_[from + length].kind == bars_[at + length].kind && follows(from, length) &&
           follows(at, length)) {
      ++length;
    }
    return length;
  }

  std::vector<NumberedBar> bars_;
  std::vector<bool> earlier_;  ///< of the bars before: whether they are kept
  std::unordered_map<std::size_t, std::vector<std::size_t>> kept_;  ///< places by their kinds
};

}  // namespace

std::map<std::int32_t, std::size_t> bar_kinds(const AnalysedPassage& passage) {
  return kinds_of(passage, Alike::notes);
}

std::vector<BarsAgain> bars_again(const AnalysedPassage& passage) {
  return RepeatSearch(numbered(passage)).found();
}

}  // namespace fingerturn
