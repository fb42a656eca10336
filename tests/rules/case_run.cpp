#include "rules/case_run.hpp"

#include "fingerturn/diagnostic.hpp"
#include "fingerturn/read.hpp"
#include "fingerturn/rule.hpp"

#include <algorithm>
#include <cstdint>
#include <sstream>
#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace fingerturn {
namespace {

using Words = std::vector<std::string>;

constexpr std::string_view kNone = "-";

std::string joined(const Words& words) {
  std::string text;
  for (const std::string& word : words) text += text.empty() ? word : ' ' + word;
  return text;
}

std::string notation_in(std::string_view notes) {
  constexpr std::string_view kLineEnd = " / ";
  std::string text(notes);
  for (std::size_t at = text.find(kLineEnd); at != std::string::npos; at = text.find(kLineEnd)) {
    text.replace(at, kLineEnd.size(), "\n");
  }
  return text;
}

Words warning_codes(const Diagnostics& diagnostics) {
  Words codes;
  for (const Diagnostic& diagnostic : diagnostics.kept) codes.emplace_back(diagnostic.code);
  return codes;
}

std::string hyphenated(std::string_view name) {
  std::string word(name);
  std::replace(word.begin(), word.end(), ' ', '-');
  return word;
}

std::string number_or_none(std::optional<double> number) {
  return number ? fmt::format("{}", *number) : std::string(kNone);
}

/// Holds the rows of one case against its analysis.
class CaseComparison {
 public:
  CaseComparison(const Case& run, const CaseResult& result)
      : case_(run), result_(result), failures_(result.faults) {}

  Words failures() && {
    compare_row("kinds", [](const EventAnalysis& e) { return name_of(e.rotation); });
    compare_row("play", [this](const EventAnalysis& e) { return play_of(e); });
    compare_row("prepare",
                [](const EventAnalysis& e) { return e.prepare ? name_of(*e.prepare) : kNone; });
    compare_row("swings", [](const EventAnalysis& e) {
      return e.swings ? std::to_string(*e.swings) : std::string(kNone);
    });
    compare_row("crossing", [](const EventAnalysis& e) {
      return e.crossing == Crossing::none ? std::string(kNone) : hyphenated(name_of(e.crossing));
    });
    compare_row("carry", [](const EventAnalysis& e) { return number_or_none(e.carry); });
    compare_row("in-out",
                [](const EventAnalysis& e) { return e.in_out ? name_of(*e.in_out) : kNone; });
    compare_row("arcs", [](const EventAnalysis& e) { return std::to_string(e.arc); });
    compare_row("rates", [](const EventAnalysis& e) { return number_or_none(e.swing_rate); });
    compare_row("rules", [](const EventAnalysis& e) { return e.rule; });
    compare_row("basis", [](const EventAnalysis& e) { return name_of(e.basis); });
    compare_reasons();
    compare_watch_list();
    check_shown_rules();
    return std::move(failures_);
  }

 private:
  [[nodiscard]] const std::vector<EventAnalysis>& events() const { return result_.analysis.events; }

  [[nodiscard]] std::string_view play_of(const EventAnalysis& entry) const {
    return entry.side ? name_of(direction_of(result_.line.hand, *entry.side)) : kNone;
  }

  template <typename WordOf>
  void compare_row(std::string_view name, const WordOf& word_of) {
    if (!case_.has(name)) return;
    Words found;
    for (const EventAnalysis& entry : events()) found.emplace_back(word_of(entry));
    const std::string_view row = case_.row(name);
    compare(name, joined(words_of_row(row)), joined(found));
    if (row.find('|') != std::string_view::npos)
      compare(name, bar_ends_in(row), bar_ends_of_line());
  }

  void compare(std::string_view name, const std::string& expected, const std::string& found) {
    if (expected == found) return;
    fail(std::string(name) + "\n  expected " + expected + "\n  found    " + found);
  }

  /// After how many events the bars end, as the row has it.
  static std::string bar_ends_in(std::string_view row) {
    std::istringstream stream{std::string(row)};
    std::string ends = "bars end after";
    std::size_t events = 0;
    for (std::string word; stream >> word;) {
      if (word == "|") {
        ends += ' ' + std::to_string(events);
      } else {
        ++events;
      }
    }
    return ends;
  }

  [[nodiscard]] std::string bar_ends_of_line() const {
    std::string ends = "bars end after";
    for (std::size_t at = 1; at < events().size(); ++at) {
      const std::int32_t before = result_.line.events[events()[at - 1].event].bar;
      const std::int32_t now = result_.line.events[events()[at].event].bar;
      if (now != before) ends += ' ' + std::to_string(at);
    }
    return ends;
  }

  void compare_reasons() {
    constexpr std::string_view kReason = "reason ";
    for (const CaseRow& row : case_.rows) {
      if (!row.name.starts_with(kReason)) continue;
      const std::size_t number = std::stoul(row.name.substr(kReason.size()));
      if (number == 0 || number > events().size()) {
        fail(row.name + ": there is no such event");
      } else {
        compare(row.name, row.value, reason_of(events()[number - 1], result_.line.hand));
      }
    }
  }

  /// Words such as 3:info:missing-finger, and the whole sentences in the rows `finding N`.
  void compare_watch_list() {
    const std::vector<Finding>& watch = result_.analysis.watch;
    Words found;
    for (const Finding& finding : watch) {
      found.push_back(std::to_string(finding.index + 1) + ':' +
                      std::string(name_of(finding.level)) + ':' + std::string(finding.rule));
    }
    if (found.empty()) found.emplace_back(kNone);
    if (case_.has("watch"))
      compare("watch", joined(words_of_row(case_.row("watch"))), joined(found));
    constexpr std::string_view kFinding = "finding ";
    for (const CaseRow& row : case_.rows) {
      if (!row.name.starts_with(kFinding)) continue;
      const std::size_t number = std::stoul(row.name.substr(kFinding.size()));
      compare(row.name, row.value,
              number == 0 || number > watch.size() ? "none" : watch[number - 1].message);
    }
  }

  void check_shown_rules() {
    for (const std::string& id : words_of_row(case_.row("shows"))) {
      if (find_rule(id) == nullptr) fail("shows " + id + ", which is no rule");
    }
  }

  void fail(const std::string& failure) { failures_.push_back(case_.place + ": " + failure); }

  const Case& case_;
  const CaseResult& result_;
  Words failures_;
};

Words failures_of_keys(const Case& run) {
  Words found;
  for (const std::string& name : words_of_row(run.row("pitches"))) {
    const std::optional<Pitch> pitch = parse_pitch(name);
    found.push_back(pitch ? std::to_string(midi_number(*pitch)) : name + " is no pitch");
  }
  if (found == words_of_row(run.row("keys"))) return {};
  return {run.place + ": keys\n  expected " + std::string(run.row("keys")) + "\n  found    " +
          joined(found)};
}

}  // namespace

CaseResult run_case(const Case& run) {
  CaseResult result;
  const Source source(run.place, notation_in(run.row("notes")));
  ReadResult read = read_notation(source);
  if (!read.ok() || warning_codes(read.diagnostics) != words_of_row(run.row("warnings"))) {
    result.faults.push_back(run.place + ": warnings other than those it names\n" +
                            render(source, read.diagnostics));
  }
  if (read.score.passages.size() != 1 || read.score.passages[0].lines.size() != 1) {
    result.faults.push_back(run.place + ": expected one passage for one hand");
    return result;
  }
  result.analysis = analyse(read.score).passages.at(0).lines.at(0);
  result.line = std::move(read.score.passages[0].lines[0]);
  return result;
}

std::vector<std::string> failures_of(const Case& run) {
  if (run.has("pitches")) return failures_of_keys(run);
  const CaseResult result = run_case(run);
  return CaseComparison(run, result).failures();
}

}  // namespace fingerturn
