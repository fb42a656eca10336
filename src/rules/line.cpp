#include "rules/line.hpp"

#include "rules/arm/arc.hpp"
#include "rules/arm/carry.hpp"
#include "rules/arm/depth.hpp"
#include "rules/tempo.hpp"
#include "rules/totals.hpp"
#include "rules/turn/gesture.hpp"
#include "rules/turn/held_key.hpp"
#include "rules/turn/kind.hpp"
#include "rules/turn/verdict.hpp"
#include "rules/watch/watch_list.hpp"

#include <cstddef>
#include <span>
#include <utility>

/// The order in which the rules look at a line: from one rest to the next they find the ways of the
/// arm and the gestures, and then for each event its turn, the arm, the time, what is to be
/// watched. Going on from rest to rest keeps what is at work small, however long the line.
namespace fingerturn {
namespace {

void set_verdict(Hand hand, const Verdict& verdict, EventAnalysis& entry) {
  entry.rotation = verdict.rotation;
  entry.side = verdict.side;
  entry.swings = swings_of(entry.rotation);
  if (entry.side && entry.swings == 2) entry.prepare = opposite(direction_of(hand, *entry.side));
  entry.crossing = verdict.crossing;
  entry.rule = verdict.rule;
  entry.basis = verdict.basis;
  entry.reason = verdict.reason;
}

/// A line on its way through the rules.
class LineAnalyser {
 public:
  LineAnalyser(const Passage& passage, const Line& line, const AnalyseOptions& options)
      : passage_(passage),
        line_(line),
        options_(options),
        held_keys_(line),
        watch_(line, options.reach_semitones) {
    analysis_.hand = line.hand;
    analysis_.events.reserve(line.events.size());
  }

  /// The strikes from one rest, breath or skipped bar to the next.
  void add(std::span<const Strike> strikes) {
    carries_ = carries(line_, strikes, options_.reach_semitones, place_);
    ins_and_outs_ = ins_and_outs(line_, strikes, depth_);
    arcs_ = arcs(carries_, next_arc_);
    next_arc_ = arcs_.back() + 1;
    first_ = analysis_.events.size();
    for (const auto [begin, end] : gestures_of(strikes)) {
      add_gesture(strikes.subspan(begin, end - begin));
      ++gesture_;
    }
  }

  LineAnalysis take() {
    analysis_.watch = watch_.take();
    analysis_.totals = count_.totals();
    return std::move(analysis_);
  }

 private:
  void add_gesture(std::span<const Strike> gesture) {
    add_event(judge_first(gesture), gesture[0], false);
    for (std::size_t i = 1; i < gesture.size(); ++i) {
      add_event(judge_next(line_.hand, analysis_.events.back().side, gesture[i - 1], gesture[i]),
                gesture[i], true);
    }
  }

  void add_event(const Verdict& verdict, const Strike& strike, bool in_gesture) {
    EventAnalysis entry;
    entry.event = strike.event;
    entry.index = analysis_.events.size();
    entry.gesture = gesture_;
    set_verdict(line_.hand, verdict, entry);
    entry.change = strike.last_change;
    entry.reason.goes_on = strike.open_ended;
    entry.reason.after_ornament = before_.open_ended && !in_gesture && !strike.separated;
    set_arm(entry);
    const bool holds = held_keys_.go_to(strike.event, analysis_.held);
    const Approach approach = approach_to(strike, in_gesture);
    if (approach.from != nullptr && !holds) set_swing_rate(approach.pace, entry);
    watch_.add(entry, strike, approach);
    count_.add(entry, strike.arrival.known());
    analysis_.events.push_back(entry);
    before_ = strike;
  }

  [[nodiscard]] Approach approach_to(const Strike& strike, bool in_gesture) const {
    if (analysis_.events.empty()) return {};
    const Event& from = line_.events[before_.event];
    const Event& to = line_.events[strike.event];
    const Pace pace = pace_between(passage_, from, to, options_.quarters_per_minute);
    return {&before_, in_gesture, !strike.separated || is_short_rest(from, to, pace), pace};
  }

  void set_arm(EventAnalysis& entry) const {
    const std::size_t at = entry.index - first_;
    entry.carry = carries_[at];
    entry.depth = ins_and_outs_[at].depth;
    entry.in_out = ins_and_outs_[at].move;
    entry.arc = arcs_[at];
  }

  const Passage& passage_;
  const Line& line_;
  const AnalyseOptions& options_;
  LineAnalysis analysis_;
  HeldKeys held_keys_;
  WatchList watch_;
  Count count_;
  Strike before_;             // the last one
  std::optional<int> place_;  // where the hand is
  std::optional<int> depth_;
  std::size_t gesture_ = 0;
  std::size_t next_arc_ = 0;
  // What follows is of the events since the rest, of which this is the number of the first.
  std::size_t first_ = 0;
  std::vector<std::optional<double>> carries_;
  std::vector<InAndOut> ins_and_outs_;
  std::vector<std::size_t> arcs_;
};

}  // namespace

LineAnalysis analyse_line(const Passage& passage, const Line& line, const AnalyseOptions& options) {
  LineAnalyser analyser(passage, line, options);
  StrikeReader reader(line);
  std::vector<Strike> strikes;
  while (reader.next(strikes)) analyser.add(strikes);
  return analyser.take();
}

}  // namespace fingerturn
