#include "fingerturn/analysis.hpp"
#include "rules/arc.hpp"
#include "rules/carry.hpp"
#include "rules/crossing.hpp"
#include "rules/depth.hpp"
#include "rules/first_note.hpp"
#include "rules/gesture.hpp"
#include "rules/kind.hpp"
#include "rules/level.hpp"
#include "rules/missing_finger.hpp"
#include "rules/reason.hpp"
#include "rules/same_finger.hpp"
#include "rules/side.hpp"
#include "rules/strike.hpp"
#include "rules/tempo.hpp"
#include "rules/together.hpp"
#include "rules/totals.hpp"
#include "rules/watch_list.hpp"

#include <algorithm>
#include <span>

/// The order in which the rules look at a line: gestures, then in each gesture from note to note
/// the step, the side, the crossing, the kind; then the rest of the arm, the time, the watch list;
/// and last what both hands come to together.
namespace fingerturn {
namespace {

using Strikes = std::span<const Strike>;

struct Verdict {
  Decided decided;
  std::string_view rule;
  Basis basis = Basis::none;
  std::string reason;
};

Basis basis_of(const Strike& from, const Strike& to) {
  return from.is_single_note() && to.is_single_note() ? Basis::rule : Basis::convention;
}

Verdict judge_missing(Hand hand, const Strike& strike) {
  return {{hand, std::nullopt, Rotation::undetermined, Crossing::none},
          kMissingFingerRule.id,
          Basis::none,
          reason_missing(strike)};
}

Verdict judge_level(Hand hand, const Strike& strike) {
  return {{hand, std::nullopt, Rotation::level, Crossing::none},
          kLevelRule.id,
          Basis::convention,
          reason_level(strike)};
}

Verdict judge_first(Hand hand, Strikes gesture) {
  const Strike& first = gesture.front();
  if (is_level(first)) return judge_level(hand, first);
  if (!first.arrival.known()) return judge_missing(hand, first);
  const FirstSide opening = first_side(gesture);
  const Decided decided{hand, opening.side, Rotation::preparatory, Crossing::none};
  if (opening.step_to == 0) {
    return {decided, kFirstNoteAloneRule.id, Basis::convention,
            reason_first(decided, first, nullptr, nullptr)};
  }
  const Strike& from = gesture[opening.step_to - 1];
  const Strike& to = gesture[opening.step_to];
  const Basis basis = first.is_single_note() ? basis_of(from, to) : Basis::convention;
  return {decided, kFirstNoteRule.id, basis, reason_first(decided, first, &from, &to)};
}

Verdict judge_unknown_step(Hand hand, const Strike& to) {
  if (!to.arrival.known()) return judge_missing(hand, to);
  const Decided decided{hand, side_of_outer_finger(to), Rotation::undetermined, Crossing::none};
  return {decided, kAfterMissingRule.id, Basis::none, reason_after_missing(decided, to)};
}

Verdict judge_same_finger(Hand hand, std::optional<Side> before, const Strike& from,
                          const Strike& to) {
  const Decided decided{hand, before, kind_of(FingerStep::same, before, before), Crossing::none};
  // The source speaks of one exertion repeated: the same finger must have struck before.
  const bool sourced = repeats_key(from, to) && from.arrival.lowest == to.arrival.lowest;
  return {decided, kSameFingerRule.id, sourced ? Basis::rule : Basis::convention,
          reason_same_finger(decided, from, to)};
}

Verdict judge_step(Hand hand, std::optional<Side> before, FingerStep step, const Strike& from,
                   const Strike& to) {
  const std::optional<Side> side = side_of(step);
  const Decided decided{hand, side, kind_of(step, before, side), crossing_between(hand, from, to)};
  std::string reason = reason_step(decided, from, to);
  if (decided.rotation == Rotation::undetermined) {
    return {decided, kAfterMissingRule.id, Basis::none, std::move(reason)};
  }
  const Basis basis = basis_of(from, to);
  if (basis == Basis::convention) return {decided, kDoubleNoteRule.id, basis, std::move(reason)};
  const bool changes = decided.rotation == Rotation::single_rotation;
  return {decided, changes ? kSideChangesRule.id : kSideStaysRule.id, basis, std::move(reason)};
}

Verdict judge_next(Hand hand, std::optional<Side> before, const Strike& from, const Strike& to) {
  const FingerStep step = finger_step(from, to);
  switch (step) {
    case FingerStep::unknown:
      return judge_unknown_step(hand, to);
    case FingerStep::same:
      return judge_same_finger(hand, before, from, to);
    case FingerStep::toward_fifth:
    case FingerStep::toward_thumb:
      break;
  }
  return judge_step(hand, before, step, from, to);
}

EventAnalysis entry_for(Verdict verdict, const Strike& strike) {
  EventAnalysis entry;
  entry.event = strike.event;
  entry.rotation = verdict.decided.rotation;
  entry.side = verdict.decided.side;
  entry.swings = swings_of(entry.rotation);
  if (entry.side && entry.swings == 2) {
    entry.prepare = opposite(direction_of(verdict.decided.hand, *entry.side));
  }
  entry.crossing = verdict.decided.crossing;
  entry.rule = verdict.rule;
  entry.basis = verdict.basis;
  entry.reason = std::move(verdict.reason);
  return entry;
}

void add_gesture(Strikes gesture, std::size_t number, LineAnalysis& line) {
  for (std::size_t i = 0; i < gesture.size(); ++i) {
    Verdict verdict =
        i == 0 ? judge_first(line.hand, gesture)
               : judge_next(line.hand, line.events.back().side, gesture[i - 1], gesture[i]);
    EventAnalysis entry = entry_for(std::move(verdict), gesture[i]);
    entry.index = line.events.size();
    entry.gesture = number;
    line.events.push_back(std::move(entry));
  }
}

LineAnalysis analyse_line(const Passage& passage, const Line& line, const AnalyseOptions& options) {
  LineAnalysis analysis;
  analysis.hand = line.hand;
  const std::vector<Strike> strikes = strikes_of(line);
  const std::vector<Gesture> gestures = gestures_of(strikes);
  analysis.events.reserve(strikes.size());
  for (std::size_t number = 0; number < gestures.size(); ++number) {
    const auto [begin, end] = gestures[number];
    add_gesture(Strikes(strikes).subspan(begin, end - begin), number, analysis);
  }
  add_carry(line, strikes, analysis.events);
  add_depth(line, strikes, analysis.events);
  add_arcs(strikes, analysis.events);
  add_swing_rates(passage, line, options.quarters_per_minute, analysis.events);
  analysis.watch = watch_list(line, strikes, analysis.events, options.reach_semitones);
  analysis.totals = totals_of(line, analysis.events);
  return analysis;
}

/// What the lines come to together.
void sum_up(const Passage& passage, PassageAnalysis& analysis) {
  analysis.full_swing_tempo.reset();
  for (const LineAnalysis& line : analysis.lines) {
    analysis.full_swing_tempo = slower(analysis.full_swing_tempo, line.totals.full_swing_tempo);
  }
  analysis.together = hands_together(passage, analysis);
}

}  // namespace

Analysis analyse(const Score& score, const AnalyseOptions& options) noexcept {
  Analysis analysis;
  for (const Passage& passage : score.passages) {
    PassageAnalysis& lines = analysis.passages.emplace_back();
    AnalyseOptions settled = options;
    if (!settled.reach_semitones) settled.reach_semitones = passage.reach_semitones;
    for (const Line& line : passage.lines) {
      lines.lines.push_back(analyse_line(passage, line, settled));
    }
    lines.reach_semitones = settled.reach_semitones;
    lines.quarters_per_minute = settled.quarters_per_minute;
    sum_up(passage, lines);
  }
  return analysis;
}

Analysis only_bars(Analysis analysis, const Score& score, BarRange bars) {
  analysis.bars = bars;
  for (std::size_t p = 0; p < analysis.passages.size(); ++p) {
    const Passage& passage = score.passages[p];
    for (std::size_t l = 0; l < analysis.passages[p].lines.size(); ++l) {
      LineAnalysis& line = analysis.passages[p].lines[l];
      const Line& written = passage.lines[l];
      const auto is_outside = [&](const auto& found) {
        return !bars.contains(written.events[found.event].bar);
      };
      std::erase_if(line.events, is_outside);
      std::erase_if(line.watch, is_outside);
      renew_rows(written, line.events, line.watch);
      line.totals = totals_of(written, line.events);
    }
    sum_up(passage, analysis.passages[p]);
  }
  return analysis;
}

}  // namespace fingerturn
