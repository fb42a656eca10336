#include "read/musicxml/ties_to_nothing.hpp"

#include "read/musicxml/bar_list.hpp"

#include <algorithm>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr std::size_t kFewTies = 5;

}  // namespace

void TiesToNothing::note(Span span, Hand hand, std::int32_t bar) {
  ties_.push_back({span, hand, bar, passage_});
}

void TiesToNothing::report_each(const std::vector<Tie>& ties, Reporter& reporter) {
  for (const Tie& tie : ties) {
    reporter.start_passage(tie.passage);
    MusicalPlace where;
    where.hand = tie.hand;
    where.bar = tie.bar;
    reporter.report("tie-to-nothing", tie.span, where,
                    "expected another note on this key for the tie to lead to, found none "
                    "before a rest or the end");
  }
}

void TiesToNothing::report(Reporter& reporter) const {
  if (ties_.size() <= kFewTies) return report_each(ties_, reporter);
  std::vector<std::int32_t> bars;
  bars.reserve(ties_.size());
  for (const Tie& tie : ties_) bars.push_back(tie.bar);
  const auto first = std::min_element(
      ties_.begin(), ties_.end(),
      [](const Tie& left, const Tie& right) { return left.span.begin < right.span.begin; });
  reporter.start_passage(first->passage);
  reporter.report("tie-to-nothing", first->span, MusicalPlace{},
                  fmt::format("expected another note on the same key for each tie to lead to, "
                              "found none before a rest or the end for {} ties, in {}",
                              ties_.size(), bar_list(std::move(bars))));
}

}  // namespace fingerturn
