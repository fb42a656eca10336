#include "fingerturn/check.hpp"
#include "fingerturn/report.hpp"
#include "text/beat_text.hpp"
#include "write/json/values.hpp"

#include <string_view>

#include <fmt/format.h>

/// JSONL as docs/check.schema.json describes it.
namespace fingerturn {
namespace {

std::string opening(const std::string& source) {
  return fmt::format(R"({{"format":"fingerturn-check","version":1,"source":{},"error":)", source);
}

std::string counts_text(const CheckCounts& counts) {
  const Totals& totals = counts.totals;
  return fmt::format(
      R"("passages":{},"events":{},"fingered":{},"preparatory":{},"single":{},"double":{},)"
      R"("level":{},"undetermined":{},"crossings":{},)"
      R"("watch":{{"info":{},"caution":{},"strain":{}}})",
      counts.passages, totals.events, totals.fingered, totals.preparatory, totals.single_rotations,
      totals.double_rotations, totals.level, totals.undetermined, totals.crossings, counts.info,
      counts.caution, counts.strain);
}

std::string finding_text(const PlacedFinding& finding) {
  const std::string passage = finding.passage ? std::to_string(*finding.passage + 1) : "null";
  const std::string bar = finding.bar ? std::to_string(*finding.bar) : "null";
  const std::string hand = finding.hand ? fmt::format(R"("{}")", to_string(*finding.hand)) : "null";
  return fmt::format(
      R"({{"code":"{}","level":"{}","passage":{},"hand":{},"bar":{},"beat":{},"line":{},)"
      R"("column":{},"message":{}}})",
      finding.code, name_of(finding.level), passage, hand, bar,
      finding.beat ? beat_text(*finding.beat) : "null", finding.place.line, finding.place.column,
      json_text(finding.message));
}

}  // namespace

std::string write_check_jsonl(const FileCheck& check) noexcept {
  std::string text = opening(json_text(check.file.source));
  if (!check.file.ok()) return text + json_text(check.file.error) + "}\n";
  text += "null," + counts_text(check.file.counts) + R"(,"findings":[)";
  bool first = true;
  for (const PlacedFinding& finding : check.findings) {
    if (!first) text += ',';
    first = false;
    text += finding_text(finding);
  }
  return text + "]}\n";
}

std::string write_check_jsonl(const AllCounts& all) noexcept {
  return opening("null") + fmt::format(R"(null,"read":{},"failed":{},)", all.read, all.failed) +
         counts_text(all.counts) + fmt::format(",\"caution\":{}}}\n", json_text(caution()));
}

}  // namespace fingerturn
