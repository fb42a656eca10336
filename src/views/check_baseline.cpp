#include "fingerturn/check.hpp"
#include "fingerturn/read.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace fingerturn {
namespace {

/// What tells a finding from others: not its line and column, which move when something is put in
/// before it. Beats are told to three decimals, as they are written.
std::string key_of(const PlacedFinding& finding) {
  const MusicalPlace& where = finding.where;
  const auto number = [](const auto& value) { return value ? fmt::format("{}", *value) : ""; };
  return fmt::format("{}|{}|{}|{}|{}|{}", finding.code, number(where.passage),
                     where.hand ? to_string(*where.hand) : "", number(where.bar),
                     where.beat ? fmt::format("{:.3f}", to_double(*where.beat)) : "",
                     finding.message);
}

void take_away(WatchLevel level, WatchCounts& counts) {
  std::size_t& count = level == WatchLevel::info      ? counts.info
                       : level == WatchLevel::caution ? counts.caution
                                                      : counts.strain;
  count -= count > 0 ? 1 : 0;
}

}  // namespace

CheckBaselineResult read_check_baseline(const Source& source) {
  if (source.text().size() > kLargestMusicXml) {
    return {{},
            fmt::format("1: expected at most {} bytes, found {}", kLargestMusicXml,
                        source.text().size())};
  }
  CheckBaselineResult result;
  for (std::size_t number = 1; number <= source.line_count(); ++number) {
    const std::string_view text = source.line_text(number);
    if (text.empty()) continue;
    const CheckLineResult line = read_check_line(text);
    if (!line.ok()) return {{}, fmt::format("{}: {}", number, line.problem)};
    // The line of all, and those of files that could not be read, know of no finding.
    if (!line.check || line.check->findings.empty()) continue;
    std::vector<std::string>& known = result.baseline.known[line.check->file.source];
    for (const PlacedFinding& finding : line.check->findings) known.push_back(key_of(finding));
  }
  for (auto& [name, known] : result.baseline.known) std::ranges::sort(known);
  return result;
}

void leave_out_known(FileCheck& check, const CheckBaseline& baseline) {
  const auto file = baseline.known.find(check.file.source);
  if (file == baseline.known.end()) return;
  std::vector<std::string> known = file->second;
  std::erase_if(check.findings, [&](const PlacedFinding& finding) {
    const std::string key = key_of(finding);
    const auto found = std::ranges::lower_bound(known, key);
    if (found == known.end() || *found != key) return false;
    known.erase(found);
    take_away(finding.level, check.file.counts.watch);
    return true;
  });
}

}  // namespace fingerturn
