#include "fingerturn/check.hpp"
#include "text/utf8.hpp"
#include "text/wrap.hpp"

#include <string_view>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// "passage 2 (The ferry)"; the number alone where it has no title.
std::string passage_words(const FileCheck& check, std::size_t passage) {
  const std::string& title = check.titles[passage];
  return title.empty() ? fmt::format("passage {}", passage + 1)
                       : fmt::format("passage {} ({})", passage + 1, printable(title));
}

/// ": bar 12, right hand, beat 2.5"; the passage before it where there are several.
std::string place_in_score(const FileCheck& check, const PlacedFinding& finding) {
  std::string text = ": ";
  if (finding.where.passage && check.titles.size() > 1) {
    text += passage_words(check, *finding.where.passage) + ", ";
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

/// The line as it is, or broken at blanks with the lines after the first indented.
std::string continued(const std::string& line, std::optional<int> columns) {
  constexpr int kIndent = 2;
  if (!columns) return line + '\n';
  // All lines are made as wide as an indented one may be; the first needs no indent.
  std::string text = wrapped(std::string(kIndent, ' '), line, *columns);
  return text.substr(kIndent);
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
