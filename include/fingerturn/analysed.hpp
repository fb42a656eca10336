#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/score.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>

/// Music together with what was found in it. An AnalysedScore holds both; passages, lines and
/// events of it are views, which are cheap to copy and hold as long as it is neither changed nor
/// destroyed. All of them are walked through alike:
///
///     const AnalysedScore analysed("warmup.passage", read.score);
///     for (const AnalysedPassage passage : analysed)
///       for (const AnalysedLine line : passage)
///         for (const auto& [written, found] : line)
///           std::cout << written.bar << ' ' << name_of(found.rotation) << '\n';
namespace fingerturn {

/// Goes through what has a `size()` and elements by their numbers from 0.
template <typename View>
class NumberedIterator {
 public:
  NumberedIterator(const View& view, std::size_t at) noexcept : view_(&view), at_(at) {}

  auto operator*() const noexcept { return (*view_)[at_]; }
  NumberedIterator& operator++() noexcept {
    ++at_;
    return *this;
  }
  friend bool operator==(const NumberedIterator& left, const NumberedIterator& right) noexcept {
    return left.at_ == right.at_;
  }

 private:
  const View* view_;
  std::size_t at_;
};

/// An event that is struck, as it is written and what was found in it.
struct AnalysedEvent {
  const Event& written;
  const EventAnalysis& found;
};

/// What one hand plays; its elements are the events that are struck, in their order.
class AnalysedLine {
 public:
  AnalysedLine(const Line& written, const LineAnalysis& found) noexcept
      : written_(&written), found_(&found) {}

  /// All events, also rests and tied continuations.
  [[nodiscard]] const Line& written() const noexcept { return *written_; }
  [[nodiscard]] const LineAnalysis& found() const noexcept { return *found_; }
  [[nodiscard]] Hand hand() const noexcept { return written_->hand; }

  [[nodiscard]] std::size_t size() const noexcept { return found_->events.size(); }
  /// The struck event of a number below `size()`.
  [[nodiscard]] AnalysedEvent operator[](std::size_t number) const noexcept {
    const EventAnalysis& found = found_->events[number];
    return {written_->events[found.event], found};
  }
  /// The keys that the hand keeps down while it strikes an event, which is given by its place in
  /// Line::events.
  [[nodiscard]] std::span<const HeldKey> held_at(std::size_t event) const noexcept;
  /// The event that a finding of the watch list is about.
  [[nodiscard]] const Event& event_of(const Finding& finding) const noexcept {
    return written_->events[finding.event];
  }
  [[nodiscard]] auto begin() const noexcept { return NumberedIterator(*this, 0); }
  [[nodiscard]] auto end() const noexcept { return NumberedIterator(*this, size()); }

 private:
  const Line* written_;
  const LineAnalysis* found_;
};

/// A passage; its elements are the lines of its hands.
class AnalysedPassage {
 public:
  AnalysedPassage(const Passage& written, const PassageAnalysis& found) noexcept
      : written_(&written), found_(&found) {}

  [[nodiscard]] const Passage& written() const noexcept { return *written_; }
  [[nodiscard]] const PassageAnalysis& found() const noexcept { return *found_; }

  [[nodiscard]] std::size_t size() const noexcept { return written_->lines.size(); }
  /// The line of a number below `size()`.
  [[nodiscard]] AnalysedLine operator[](std::size_t number) const noexcept {
    return {written_->lines[number], found_->lines[number]};
  }
  [[nodiscard]] auto begin() const noexcept { return NumberedIterator(*this, 0); }
  [[nodiscard]] auto end() const noexcept { return NumberedIterator(*this, size()); }
  /// The line of a hand; none where that hand has none.
  [[nodiscard]] std::optional<AnalysedLine> of_hand(Hand hand) const noexcept;

 private:
  const Passage* written_;
  const PassageAnalysis* found_;
};

/// A score, what was found in it, and the name it came under. It is made by analysing, so that the
/// two always belong together; its elements are its passages.
class AnalysedScore {
 public:
  /// Applies all rules, as `analyse` does.
  explicit AnalysedScore(std::string name, Score score, const AnalyseOptions& options = {});

  [[nodiscard]] const std::string& name() const noexcept { return name_; }
  [[nodiscard]] const Score& written() const noexcept { return score_; }
  [[nodiscard]] const Analysis& found() const noexcept { return analysis_; }

  [[nodiscard]] std::size_t size() const noexcept { return score_.passages.size(); }
  /// The passage of a number below `size()`.
  [[nodiscard]] AnalysedPassage operator[](std::size_t number) const noexcept {
    return {score_.passages[number], analysis_.passages[number]};
  }
  [[nodiscard]] auto begin() const noexcept { return NumberedIterator(*this, 0); }
  [[nodiscard]] auto end() const noexcept { return NumberedIterator(*this, size()); }

  /// With only the events of these bars among what was found, totals counted anew. What the bars
  /// before them prepare stays as it was, and so does the score.
  friend AnalysedScore only_bars(AnalysedScore analysed, BarRange bars);
  /// The same with the places of each passage that ask most (fingerturn/places.hpp), of the bars
  /// that it shows. Where no bar asks for more than the others, none is shown.
  friend AnalysedScore only_places(AnalysedScore analysed);
  /// With the bars named that come again, of those that are shown; they are shown no more.
  friend AnalysedScore with_repeats_named(AnalysedScore analysed);
  /// With the difficulty of each hand (fingerturn/fingering.hpp).
  friend AnalysedScore with_difficulties(AnalysedScore analysed);

 private:
  std::string name_;
  Score score_;
  Analysis analysis_;
};

AnalysedScore only_bars(AnalysedScore analysed, BarRange bars);
AnalysedScore only_places(AnalysedScore analysed);
AnalysedScore with_repeats_named(AnalysedScore analysed);

}  // namespace fingerturn
