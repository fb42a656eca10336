#include "rules/against_oracle.hpp"

#include "fingerturn/rule.hpp"
#include "rules/made_lines.hpp"
#include "rules/oracle.hpp"

#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace fingerturn {
namespace {

template <typename Value>
std::string words_of(const std::optional<Value>& value) {
  return value ? std::string(name_of(*value)) : "none";
}
std::string words_of(const std::optional<int>& value) {
  return value ? std::to_string(*value) : "none";
}

std::string words_of(const oracle::Verdict& verdict) {
  return fmt::format(
      "event {} index {} gesture {} {} side {} change {} prepare {} swings {} crossing {}",
      verdict.event, verdict.index, verdict.gesture, name_of(verdict.rotation),
      words_of(verdict.side), words_of(verdict.change), words_of(verdict.prepare),
      words_of(verdict.swings), name_of(verdict.crossing));
}

oracle::Verdict verdict_in(const EventAnalysis& entry) {
  return {entry.event,  entry.index,   entry.gesture, entry.rotation, entry.side,
          entry.change, entry.prepare, entry.swings,  entry.crossing};
}

bool agree(const oracle::Verdict& verdict, const EventAnalysis& entry) {
  return verdict.event == entry.event && verdict.index == entry.index &&
         verdict.gesture == entry.gesture && verdict.rotation == entry.rotation &&
         verdict.side == entry.side && verdict.change == entry.change &&
         verdict.prepare == entry.prepare && verdict.swings == entry.swings &&
         verdict.crossing == entry.crossing;
}

/// A sentence closes with its kind; only a level event is described to the end. What a trill or
/// tremolo does after the stroke is a sentence of its own.
bool closes_with_kind(const EventAnalysis& entry, const Event& event, std::string_view reason) {
  constexpr std::string_view kGoesOn = " After the stroke the sides alternate, singles throughout.";
  if (reason.ends_with(kGoesOn) != (event.ornament != Ornament::none)) return false;
  if (reason.ends_with(kGoesOn)) reason.remove_suffix(kGoesOn.size());
  if (!reason.ends_with('.')) return false;
  reason.remove_suffix(1);
  const std::string_view kind = name_of(entry.rotation);
  if (entry.rotation == Rotation::level) return reason.find(kind) != std::string_view::npos;
  return reason.ends_with(kind);
}

std::string_view fault_of(const EventAnalysis& entry, const Event& event, std::string_view reason) {
  const bool undetermined = entry.rotation == Rotation::undetermined;
  if (find_rule(entry.rule) == nullptr) return "a rule that is not in the registry";
  if ((entry.basis == Basis::none) != undetermined) return "a basis that does not fit the kind";
  if (!closes_with_kind(entry, event, reason)) return "a reason that does not close with the kind";
  return {};
}

void count(const oracle::Verdict& verdict, OutcomeTally& tally) {
  ++tally.events;
  ++tally.rotations.at(static_cast<std::size_t>(verdict.rotation));
  ++tally.crossings.at(static_cast<std::size_t>(verdict.crossing));
  const bool level = verdict.rotation == Rotation::level;
  const bool undetermined = verdict.rotation == Rotation::undetermined;
  if (!verdict.side && !level && !undetermined) ++tally.without_side;
  if (verdict.side && undetermined) ++tally.side_after_gap;
}

std::string difference_at(const oracle::Verdict& verdict, const EventAnalysis& entry,
                          const Line& line) {
  if (!agree(verdict, entry)) {
    return fmt::format("expected {}\nfound    {}", words_of(verdict), words_of(verdict_in(entry)));
  }
  const std::string reason = reason_of(entry, line.hand);
  const std::string_view fault = fault_of(entry, line.events[entry.event], reason);
  if (fault.empty()) return {};
  return fmt::format("{}: rule \"{}\", basis {}, reason \"{}\"\nat {}", fault, entry.rule,
                     name_of(entry.basis), reason, words_of(verdict));
}

}  // namespace

std::string difference_from_oracle(const Line& line, const LineAnalysis& analysis,
                                   OutcomeTally& tally) {
  const std::vector<oracle::Verdict> verdicts = oracle::judge(line);
  ++tally.lines;
  if (!verdicts.empty()) tally.gestures += verdicts.back().gesture + 1;
  if (analysis.hand != line.hand) return "the analysis is of the other hand";
  if (verdicts.size() != analysis.events.size()) {
    return fmt::format("expected {} events, found {} in\n{}", verdicts.size(),
                       analysis.events.size(), notation_of(line));
  }
  for (std::size_t at = 0; at < verdicts.size(); ++at) {
    count(verdicts[at], tally);
    const std::string difference = difference_at(verdicts[at], analysis.events[at], line);
    if (!difference.empty()) return difference + "\nin\n" + notation_of(line);
  }
  return {};
}

}  // namespace fingerturn
