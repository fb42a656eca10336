#include "write/notated/bars.hpp"

#include "score/timeline.hpp"
#include "write/notated/bar_hand.hpp"
#include "write/notated/grouping.hpp"
#include "write/notated/signs_needed.hpp"
#include "write/notated/ticks.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <utility>

namespace fingerturn {
namespace {

BarEvents events_of(const BarColumns& columns, std::size_t line) {
  BarEvents events;
  for (const Column& column : columns.columns) {
    if (column.events[line]) events.push_back(*column.events[line]);
  }
  return events;
}

Fraction first_onset(const BarColumns& columns) {
  const auto& [first, second] = columns.columns.front().events;
  return *(first ? first : second)->event->onset;
}

BarLineStyle bar_line_at(const Line& line, std::size_t event) {
  const auto found = std::ranges::lower_bound(line.bar_lines, event, {}, &BarLine::before_event);
  const bool is_there = found != line.bar_lines.end() && found->before_event == event;
  return is_there ? found->style : BarLineStyle::single;
}

/// Behind the last chord of the last bar there is nothing that a tie could lead to.
void end_ties(NotatedBar& bar) {
  for (NotatedHand& hand : bar.hands) {
    for (NotatedVoice& voice : hand.voices) {
      if (voice.empty() || voice.back().onset + voice.back().length < bar.length) continue;
      for (NotatedHead& head : voice.back().heads) head.tied_on = false;
    }
  }
}

}  // namespace

NotatedBars::NotatedBars(const AnalysedPassage& passage, SharedLines lines)
    : passage_(&passage.written()),
      sequence_(passage, std::move(lines)),
      ticks_(fingerturn::ticks_in_whole(passage.written())),
      going_on_(sequence_.lines().size()) {
  if (passage_->keys.empty()) chosen_key_ = key_with_fewest_signs(*passage_);
}

std::optional<NotatedBar> NotatedBars::next() {
  if (number_ == sequence_.size()) return std::nullopt;
  const BarColumns columns = sequence_[number_];
  NotatedBar bar{.bar = columns.bar};
  const bool follows = number_ == 0 || columns.bar <= last_bar_ + 1;
  if (!follows) going_on_.assign(going_on_.size(), {});
  const bool is_followed =
      number_ + 1 < sequence_.size() && sequence_.bar(number_ + 1) == bar.bar + 1;
  std::vector<BarHand> hands;
  if (ticks_) bar.start = in_ticks(first_onset(columns), *ticks_);
  for (std::size_t line = 0; line < lines().size(); ++line) {
    hands.emplace_back(lines()[line].written(), events_of(columns, line), bar.start, ticks_);
    bar.length = std::max(bar.length, hands.back().length());
  }
  set_changes(bar);
  const BeamGroups groups = beam_groups(meter_ ? &*meter_ : nullptr, bar.length, number_ == 0,
                                        ticks_.value_or(Ticks{1} << (kMostHalvings + 2)));
  for (std::size_t line = 0; line < hands.size(); ++line) {
    NotatedHand& hand =
        bar.hands.emplace_back(hands[line].written(bar.length, is_followed, going_on_[line]));
    for (NotatedVoice& voice : hand.voices) group_voice(voice, groups);
    set_signs(hand, *key_);
    set_bar_lines(line, columns, hand);
  }
  last_bar_ = columns.bar;
  ++number_;
  if (ticks_ && number_ == sequence_.size()) end_ties(bar);
  return bar;
}

void NotatedBars::set_changes(NotatedBar& bar) {
  const Meter* const meter = meter_in_bar(*passage_, bar.bar);
  if (meter != nullptr && meter_ != *meter) bar.meter = meter_ = *meter;
  const KeySignature key = passage_->keys.empty() ? chosen_key_ : key_in_bar(*passage_, bar.bar);
  if (!key_ || key_->fifths != key.fifths) bar.key = key;
  key_ = key;
}

void NotatedBars::set_bar_lines(std::size_t line, const BarColumns& columns,
                                NotatedHand& hand) const {
  const BarEvents events = events_of(columns, line);
  if (events.empty()) return;
  hand.left = bar_line_at(lines()[line].written(), events.front().place);
  hand.right = bar_line_at(lines()[line].written(), events.back().place + 1);
}

}  // namespace fingerturn
