#include "fingerturn/check.hpp"

#include "fingerturn/analysed.hpp"
#include "score/diagnostic_codes.hpp"
#include "score/place_counter.hpp"
#include "score/timeline.hpp"
#include "text/words.hpp"
#include "views/missing_share.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr KnownCode kFingerRange("finger-range");

/// A finding and where in the source its place is to be looked for.
struct Found {
  PlacedFinding finding;
  std::size_t offset = 0;
};

/// Goes through lines and gathers what their watch lists hold.
class Gatherer {
 public:
  explicit Gatherer(const CheckChoice& choice) : choice_(choice) {}

  void add(const Passage& passage, std::size_t number, const AnalysedLine& line);
  std::vector<Found> take();

 private:
  /// The fingers that are missing in the lines of one hand.
  struct Missing {
    std::optional<Found> first;
    std::size_t events = 0;
    std::size_t of = 0;
  };

  const CheckChoice& choice_;
  std::vector<Found> found_;
  std::array<Missing, 2> missing_;
};

void Gatherer::add(const Passage& passage, std::size_t number, const AnalysedLine& line) {
  Missing& missing = missing_.at(static_cast<std::size_t>(line.hand()));
  missing.of += line.found().totals.events;
  missing.events += line.found().totals.events - line.found().totals.fingered;
  if (line.found().watch.empty()) return;
  const std::vector<std::size_t> beginnings = bar_beginnings(line.written());
  for (const Finding& finding : line.found().watch) {
    if (!choice_.takes(finding.rule)) continue;
    const bool is_row = finding.rule == kMissingFinger && !choice_.names(kMissingFinger);
    if (is_row && missing.first) continue;
    const Event& event = line.event_of(finding);
    PlacedFinding placed;
    placed.code = finding.rule;
    placed.level = finding.level;
    placed.message = finding.message;
    placed.where = {number, line.hand(), event.bar,
                    beat_of(passage, line.written(), finding.event, beginnings)};
    Found found{std::move(placed), event.span.begin};
    if (is_row) {
      missing.first = std::move(found);
    } else {
      found_.push_back(std::move(found));
    }
  }
}

std::vector<Found> Gatherer::take() {
  for (Missing& missing : missing_) {
    if (!missing.first) continue;
    if (missing.events > 1) {
      missing.first->finding.message = missing_share_words(missing.events, missing.of);
    }
    found_.push_back(std::move(*missing.first));
  }
  return std::move(found_);
}

/// A reader counts quarter notes where no meter is written; a finding has beats of a meter only.
MusicalPlace place_by_meter(MusicalPlace where, const Score& score) {
  if (!where.passage || !where.bar ||
      meter_in_bar(score.passages[*where.passage], *where.bar) == nullptr) {
    where.beat.reset();
  }
  return where;
}

void add_warnings(const Diagnostics& diagnostics, const Score& score, const CheckChoice& choice,
                  std::vector<Found>& found) {
  for (const Diagnostic& diagnostic : diagnostics.kept) {
    if (!is_finding(diagnostic) || !choice.takes(diagnostic.code)) continue;
    const MusicalPlace where = place_by_meter(diagnostic.where, score);
    if (choice.hand && where.hand && where.hand != choice.hand) continue;
    PlacedFinding finding;
    finding.code = diagnostic.code;
    finding.level = WatchLevel::caution;
    finding.where = where;
    finding.message = sentence_of(diagnostic.message);
    found.push_back({std::move(finding), diagnostic.span.begin});
  }
}

/// What the counts of a line and those of a file have in common.
template <typename Counts>
void add_events(const Counts& from, CheckCounts& to) noexcept {
  to.events += from.events;
  to.fingered += from.fingered;
  to.preparatory += from.preparatory;
  to.single_rotations += from.single_rotations;
  to.double_rotations += from.double_rotations;
  to.level_events += from.level_events;
  to.undetermined += from.undetermined;
  to.crossings += from.crossings;
}

/// The notation is typed as text; all else is a score that a program wrote.
Placing placing_of(const Source& source) {
  return form_of(source) == SourceForm::notation ? Placing::line_and_column : Placing::bar_and_beat;
}

/// What the rules found, with the counts of the lines in which they looked.
std::vector<Found> found_by_rules(const AnalysedScore& analysed, const CheckChoice& choice,
                                  CheckCounts& counts) {
  Gatherer gatherer(choice);
  std::size_t number = 0;
  for (const AnalysedPassage passage : analysed) {
    for (const AnalysedLine line : passage) {
      if (choice.hand && line.hand() != *choice.hand) continue;
      counts.add(line.found().totals);
      gatherer.add(passage.written(), number, line);
    }
    ++number;
  }
  return gatherer.take();
}

}  // namespace

void CheckCounts::add(const Totals& line) noexcept { add_events(line, *this); }

void CheckCounts::add(const CheckCounts& other) noexcept {
  passages += other.passages;
  add_events(other, *this);
  watch.add(other.watch);
}

void AllCounts::add(const FileCounts& file) noexcept {
  ++(file.ok() ? read : failed);
  counts.add(file.counts);
}

bool is_finding(const Diagnostic& diagnostic) noexcept {
  return diagnostic.severity == Severity::warning && diagnostic.code == kFingerRange.entry().id;
}

bool CheckChoice::names(std::string_view code) const noexcept {
  return std::ranges::find(only, code) != only.end();
}

bool CheckChoice::takes(std::string_view code) const noexcept {
  return (only.empty() || names(code)) && std::ranges::find(leave_out, code) == leave_out.end();
}

FileCheck check(const Source& source, ReadResult result, const AnalyseOptions& options,
                const CheckChoice& choice) {
  const Source& text = text_read(result, source);
  FileCheck check;
  check.file.source = source.name();
  check.placing = placing_of(source);
  if (!result.ok()) {
    check.file.error = first_error(text, result.diagnostics);
    return check;
  }
  const AnalysedScore analysed(source.name(), std::move(result.score), options);
  const Score& score = analysed.written();
  for (const Passage& passage : score.passages) check.titles.push_back(passage.title);
  CheckCounts& counts = check.file.counts;
  counts.passages = score.passages.size();
  std::vector<Found> found = found_by_rules(analysed, choice, counts);
  add_warnings(result.diagnostics, score, choice, found);
  std::stable_sort(found.begin(), found.end(), [](const Found& left, const Found& right) {
    return left.offset < right.offset;
  });
  PlaceCounter places(text);
  check.findings.reserve(found.size());
  for (Found& entry : found) {
    entry.finding.place = places.at(entry.offset);
    counts.watch.add(entry.finding.level);
    check.findings.push_back(std::move(entry.finding));
  }
  return check;
}

}  // namespace fingerturn
