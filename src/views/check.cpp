#include "fingerturn/check.hpp"

#include "fingerturn/analysed.hpp"
#include "score/diagnostic_codes.hpp"
#include "score/timeline.hpp"
#include "text/utf8.hpp"

#include <algorithm>
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

/// Tells the places of offsets that never go back. Each is counted on from the one before, since
/// a source may be one long line.
class PlaceCounter {
 public:
  explicit PlaceCounter(const Source& source) : source_(source) {}

  Place at(std::size_t offset) {
    if (!begun_ || offset >= source_.line_start(place_.line + 1)) {
      place_ = source_.place_of(offset);
    } else {
      place_.column += count_code_points(source_.text().substr(offset_, offset - offset_));
    }
    begun_ = true;
    offset_ = offset;
    return place_;
  }

 private:
  const Source& source_;
  bool begun_ = false;
  std::size_t offset_ = 0;
  Place place_;
};

void add_watch_list(const Passage& passage, std::size_t number, const AnalysedLine& line,
                    std::vector<Found>& found) {
  if (line.found().watch.empty()) return;
  const std::vector<std::size_t> beginnings = bar_beginnings(line.written());
  for (const Finding& finding : line.found().watch) {
    const Event& event = line.event_of(finding);
    PlacedFinding placed;
    placed.code = finding.rule;
    placed.level = finding.level;
    placed.message = finding.message;
    placed.where = {number, line.hand(), event.bar,
                    beat_of(passage, line.written(), finding.event, beginnings)};
    found.push_back({std::move(placed), event.span.begin});
  }
}

/// A reader's words as a sentence.
std::string sentence_of(std::string message) {
  if (!message.empty() && message[0] >= 'a' && message[0] <= 'z') {
    message[0] = static_cast<char>(message[0] - 'a' + 'A');
  }
  return message + '.';
}

/// A reader counts quarter notes where no meter is written; a finding has beats of a meter only.
MusicalPlace place_by_meter(MusicalPlace where, const Score& score) {
  if (!where.passage || !where.bar ||
      meter_in_bar(score.passages[*where.passage], *where.bar) == nullptr) {
    where.beat.reset();
  }
  return where;
}

void add_warnings(const Diagnostics& diagnostics, const Score& score, std::optional<Hand> hand,
                  std::vector<Found>& found) {
  for (const Diagnostic& diagnostic : diagnostics.kept) {
    if (!is_finding(diagnostic)) continue;
    const MusicalPlace where = place_by_meter(diagnostic.where, score);
    if (hand && where.hand && where.hand != hand) continue;
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

std::string first_error(const Source& source, const Diagnostics& diagnostics) {
  const auto error =
      std::find_if(diagnostics.kept.begin(), diagnostics.kept.end(),
                   [](const Diagnostic& entry) { return entry.severity == Severity::error; });
  if (error == diagnostics.kept.end()) return "it could not be read";
  const Place place = source.place_of(error->span.begin);
  return fmt::format("line {}, column {}: {} [{}]", place.line, place.column, full_message(*error),
                     error->code);
}

/// The notation is typed as text; all else is a score that a program wrote.
Placing placing_of(const Source& source) {
  return form_of(source) == SourceForm::notation ? Placing::line_and_column : Placing::bar_and_beat;
}

/// What the rules found, with the counts of the lines in which they looked.
std::vector<Found> found_by_rules(const AnalysedScore& analysed, std::optional<Hand> hand,
                                  CheckCounts& counts) {
  std::vector<Found> found;
  std::size_t number = 0;
  for (const AnalysedPassage passage : analysed) {
    for (const AnalysedLine line : passage) {
      if (hand && line.hand() != *hand) continue;
      counts.add(line.found().totals);
      add_watch_list(passage.written(), number, line, found);
    }
    ++number;
  }
  return found;
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

FileCheck check(const Source& source, ReadResult result, const AnalyseOptions& options,
                std::optional<Hand> hand) {
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
  std::vector<Found> found = found_by_rules(analysed, hand, counts);
  add_warnings(result.diagnostics, score, hand, found);
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
