#include "fingerturn/check.hpp"
#include "score/finding_key.hpp"

#include <algorithm>
#include <string>

namespace fingerturn {
namespace {

template <typename Number>
std::optional<double> as_number(const std::optional<Number>& number) {
  return number ? std::optional(static_cast<double>(*number)) : std::nullopt;
}

std::string key_of(const PlacedFinding& finding) {
  const MusicalPlace& where = finding.where;
  const std::optional<std::size_t> passage =
      where.passage ? std::optional(*where.passage + 1) : std::nullopt;
  const std::optional<double> beat =
      where.beat ? std::optional(to_double(*where.beat)) : std::nullopt;
  return finding_key(finding.code, as_number(passage), where.hand ? to_string(*where.hand) : "",
                     as_number(where.bar), beat, finding.message);
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
    const std::string key = key_of(finding);
    const auto found = std::ranges::lower_bound(known, key);
    if (found == known.end() || *found != key) return false;
    known.erase(found);
    take_away(finding.level, check.file.counts.watch);
    return true;
  });
}

}  // namespace fingerturn
