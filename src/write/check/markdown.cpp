#include "fingerturn/check.hpp"
#include "fingerturn/report.hpp"
#include "text/escape.hpp"

#include <fmt/format.h>

/// A summary beside a change: CommonMark with tables.
namespace fingerturn {
namespace {

std::string row_of(std::string_view name, const CheckCounts& counts) {
  return fmt::format("| {} | {} | {} | {} | {} |\n", name, counts.events, counts.watch.strain,
                     counts.watch.caution, counts.watch.info);
}

std::string place_words(const PlacedFinding& finding) {
  const std::string place = to_string(finding.where);
  return place.empty() ? fmt::format("line {}", finding.place.line) : place;
}

}  // namespace

std::string write_check_markdown(const FileCheck& check) {
  if (!check.file.ok()) {
    return fmt::format("### {}\n\n- **not read**: {}\n\n", escaped_markdown(check.file.source),
                       escaped_markdown(check.file.error));
  }
  if (check.findings.empty()) return {};
  std::string out = fmt::format("### {}\n\n", escaped_markdown(check.file.source));
  for (const PlacedFinding& finding : check.findings) {
    out += fmt::format("- **{}**, {}: {} (`{}`)\n", name_of(finding.level),
                       escaped_markdown(place_words(finding)), escaped_markdown(finding.message),
                       finding.code);
  }
  return out + '\n';
}

std::string write_check_markdown(std::span<const FileCounts> files, const AllCounts& all) {
  std::string out = "| file | events | strain | caution | info |\n|---|--:|--:|--:|--:|\n";
  for (const FileCounts& file : files) {
    const bool any = file.ok() && file.counts.watch.total() > 0;
    if (any) out += row_of(escaped_markdown(file.source), file.counts);
  }
  out += row_of(fmt::format("{} file{}", all.read, all.read == 1 ? "" : "s"), all.counts);
  return out + '\n' + escaped_markdown(caution()) + '\n';
}

}  // namespace fingerturn
