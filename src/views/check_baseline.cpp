#include "fingerturn/check.hpp"

#include <algorithm>
#include <string>

#include <fmt/format.h>

namespace fingerturn {
namespace {

template <typename Number>
std::string number_text(const std::optional<Number>& number) {
  return number ? fmt::format("{:.3f}", static_cast<double>(*number)) : "";
}

/// What tells a finding from others: not its line and column, which move when something is put in
/// before it. Beats are told to three decimals.
std::string key_of(const PlacedFinding& finding) {
  const MusicalPlace& where = finding.where;
  const std::optional<std::size_t> passage =
      where.passage ? std::optional(*where.passage + 1) : std::nullopt;
  const std::optional<double> beat =
      where.beat ? std::optional(to_double(*where.beat)) : std::nullopt;
  return fmt::format("{}|{}|{}|{}|{}|{}", finding.code, number_text(passage),
                     where.hand ? to_string(*where.hand) : "", number_text(where.bar),
                     number_text(beat), finding.message);
}

void take_away(WatchLevel level, WatchCounts& counts) {
  std::size_t& count = level == WatchLevel::info      ? counts.info
                       : level == WatchLevel::caution ? counts.caution
                                                      : counts.strain;
  count -= count > 0 ? 1 : 0;
}

}  // namespace

void leave_out_known(FileCheck& check, const CheckBaseline& baseline) {
  const auto file = baseline.known.find(check.file.source);
  if (file == baseline.known.end()) return;
  std::vector<std::string> known = file->second;
  std::erase_if(check.findings, [&](const PlacedFinding& finding) {
    const auto found = std::ranges::lower_bound(known, key_of(finding));
    if (found == known.end() || *found != key_of(finding)) return false;
    known.erase(found);
    take_away(finding.level, check.file.counts.watch);
    return true;
  });
}

}  // namespace fingerturn
