#include "read/notation/passage_builder.hpp"

#include "read/bar_lines.hpp"
#include "read/notation/checks.hpp"
#include "score/ties.hpp"
#include "score/timeline.hpp"

#include <algorithm>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

bool has_notes(const Passage& passage) {
  for (const Line& line : passage.lines) {
    for (const Event& event : line.events) {
      if (!event.is_rest()) return true;
    }
  }
  return false;
}

void warn_of_ties_to_nothing(Line& line, Reporter& reporter) {
  for (const Span span : resolve_ties(line)) {
    reporter.report("tie-to-nothing", span,
                    fmt::format("expected another note on this key in the {} hand for the tie to "
                                "lead to, found none before a rest or the end",
                                to_string(line.hand)));
  }
}

/// Counting leads past the highest bar only from a number that was written.
void check_highest_bar(const Line& line, Reporter& reporter) {
  const auto past = std::find_if(line.events.begin(), line.events.end(),
                                 [](const Event& event) { return event.bar > kHighestBar; });
  if (past == line.events.end()) return;
  reporter.report("number", past->span,
                  fmt::format("expected bars up to {}, found more in the {} hand", kHighestBar,
                              to_string(line.hand)));
}

}  // namespace

bool PassageBuilder::has_events() const {
  return std::any_of(hands_.begin(), hands_.end(),
                     [](const HandInProgress& hand) { return !hand.line.events.empty(); });
}

Event& PassageBuilder::add_event(std::vector<Note> notes, std::optional<Fraction> value,
                                 Span span) {
  HandInProgress& hand = current();
  Event event;
  event.notes = std::move(notes);
  event.duration = value;
  event.bar = hand.bar;
  event.span = span;
  hand.bar_has_events = true;
  return hand.line.events.emplace_back(std::move(event));
}

void PassageBuilder::add_notes(std::vector<std::vector<Note>> struck, bool grace, Span span) {
  const std::optional<Fraction> value = current().value;
  const std::optional<Fraction> no_time = value ? std::optional(Fraction{}) : std::nullopt;
  for (std::size_t i = 0; i < struck.size(); ++i) {
    const bool rolls_on = i + 1 < struck.size();
    Event& event = add_event(std::move(struck[i]), grace || rolls_on ? no_time : value, span);
    event.grace = grace;
    event.rolls_on = rolls_on;
  }
}

bool PassageBuilder::add_ornament(Ornament ornament) {
  std::vector<Event>& events = current().line.events;
  if (events.empty() || events.back().struck_count() == 0) return false;
  events.back().ornament = ornament;
  return true;
}

void PassageBuilder::add_rest(Span span) {
  current().before.finger.reset();
  add_event({}, current().value, span);
}

void PassageBuilder::add_breath() {
  current().before.finger.reset();
  std::vector<Event>& events = current().line.events;
  if (!events.empty()) events.back().breath_after = true;
}

void PassageBuilder::add_bar_line(BarLineStyle style) {
  HandInProgress& hand = current();
  append_bar_line(hand.line, style);
  if (!hand.bar_has_events) return;
  hand.bar = hand.next_bar.value_or(hand.bar + 1);
  hand.next_bar.reset();
  hand.bar_has_events = false;
}

void PassageBuilder::number_next_bar(std::int32_t number, Span place, Reporter& reporter) {
  for (HandInProgress& hand : hands_) {
    if (hand.line.events.empty() || number > hand.line.events.back().bar) continue;
    reporter.report("bar-order", place,
                    fmt::format("expected a bar number above {}, where the {} hand is, found {}",
                                hand.line.events.back().bar, to_string(hand.line.hand), number),
                    "start a passage of its own for bars that come again");
    return;
  }
  for (HandInProgress& hand : hands_) {
    if (hand.bar_has_events) {
      hand.next_bar = number;
    } else {
      hand.bar = number;
    }
  }
}

std::int32_t PassageBuilder::first_open_bar() const {
  std::int32_t bar = 0;
  for (const HandInProgress& hand : hands_) {
    if (!hand.line.events.empty()) bar = std::max(bar, hand.line.events.back().bar + 1);
  }
  return bar;
}

void PassageBuilder::add_comment(std::string lines) {
  const std::int32_t bar = first_open_bar();
  std::vector<FromBar<std::string>>& comments = passage_.comments;
  if (!comments.empty() && comments.back().bar == bar) {
    comments.back().value += '\n' + lines;
  } else {
    comments.push_back({bar, std::move(lines)});
  }
}

std::int32_t PassageBuilder::open_bar() const {
  std::int32_t bar = 0;
  for (const HandInProgress& hand : hands_) {
    if (hand.line.events.empty()) continue;
    bar = std::max(bar, hand.bar_has_events ? hand.bar : hand.line.events.back().bar + 1);
  }
  return bar;
}

void PassageBuilder::set_key(KeySignature key) {
  passage_.keys.push_back({first_open_bar(), key});
  key_lines_.push_back({open_bar(), key});
}

NotesBefore& PassageBuilder::before_next_note() {
  HandInProgress& hand = current();
  for (; hand.next_key < key_lines_.size() && key_lines_[hand.next_key].bar <= hand.bar;
       ++hand.next_key) {
    hand.before.key = key_lines_[hand.next_key].value;
  }
  hand.before.bar = hand.bar;
  hand.before.hand = hand_;
  return hand.before;
}

Passage PassageBuilder::finish(Reporter& reporter) {
  for (HandInProgress& hand : hands_) {
    if (hand.line.events.empty()) continue;
    warn_of_ties_to_nothing(hand.line, reporter);
    check_highest_bar(hand.line, reporter);
    passage_.lines.push_back(std::move(hand.line));
  }
  settle_changes(passage_);
  if (!set_onsets(passage_)) {
    reporter.report("time", place_,
                    "expected note values whose sums stay exact, found too many "
                    "different ones in this passage");
  }
  check_bars(passage_, reporter);
  // After a mistake a bar may only seem to be missing.
  if (reporter.errors() == 0) check_hands(passage_, reporter);
  check_digits(passage_, reporter);
  if (!has_notes(passage_) && reporter.errors() == 0) {
    reporter.report("no-notes", place_, "expected notes in this passage, found none");
  }
  return std::move(passage_);
}

}  // namespace fingerturn
