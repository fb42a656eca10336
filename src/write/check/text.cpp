#include "fingerturn/check.hpp"
#include "text/utf8.hpp"
#include "write/shared/place_lines.hpp"

#include <string_view>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// ": bar 12, right hand, beat 2.5"; the passage before it where there are several.
std::string place_in_score(const FileCheck& check, const PlacedFinding& finding) {
  std::string text = ": ";
  if (finding.where.passage && check.titles.size() > 1) {
    text += passage_words(*finding.where.passage, check.titles[*finding.where.passage]) + ", ";
  }
  return text + to_string(finding.where);
}

std::string place_text(const FileCheck& check, const PlacedFinding& finding) {
  switch (check.placing) {
    case Placing::bar_and_beat:
      if (finding.where.bar) return place_in_score(check, finding);
      break;
    case Placing::line_and_column:
      break;
  }
  const std::string place = fmt::format(":{}:{}", finding.place.line, finding.place.column);
  return finding.where.bar ? place + place_in_score(check, finding) : place;
}

}  // namespace

std::string write_findings(const FileCheck& check, std::optional<int> columns) {
  std::string text;
  const std::string name = printable(check.file.source);
  for (const PlacedFinding& finding : check.findings) {
    text += continued(fmt::format("{}{}: {}: {} [{}]", name, place_text(check, finding),
                                  name_of(finding.level), printable(finding.message), finding.code),
                      columns);
  }
  return text;
}

}  // namespace fingerturn
