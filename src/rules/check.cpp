#include "fingerturn/check.hpp"

#include "model/timeline.hpp"
#include "model/utf8.hpp"

#include <algorithm>
#include <map>
#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace fingerturn {
namespace {

using BarOnsets = std::map<std::int32_t, Fraction>;

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

std::optional<Fraction> beat_of(const Passage& passage, const BarOnsets& bars, const Event& event) {
  const Meter* meter = meter_in_bar(passage, event.bar);
  if (meter == nullptr || !event.onset) return std::nullopt;
  return beat_at(*meter, bars.at(event.bar), *event.onset);
}

/// Gives a finding the place of an event.
void set_place(PlacedFinding& finding, const Score& score, std::size_t passage, const Line& line,
               const Event& event, const BarOnsets& bars) {
  finding.passage = passage;
  finding.hand = line.hand;
  finding.bar = event.bar;
  finding.beat = beat_of(score.passages[passage], bars, event);
}

void add_watch_list(const Score& score, std::size_t passage, PassageAnalysis& analysis,
                    std::vector<Found>& found) {
  const bool any = std::any_of(analysis.lines.begin(), analysis.lines.end(),
                               [](const LineAnalysis& line) { return !line.watch.empty(); });
  if (!any) return;
  const BarOnsets bars = onsets_of_bars(score.passages[passage]);
  for (std::size_t l = 0; l < analysis.lines.size(); ++l) {
    const Line& line = score.passages[passage].lines[l];
    for (Finding& finding : analysis.lines[l].watch) {
      const Event& event = line.events[finding.event];
      PlacedFinding placed;
      placed.code = finding.rule;
      placed.level = finding.level;
      placed.message = std::move(finding.message);
      set_place(placed, score, passage, line, event, bars);
      found.push_back({std::move(placed), event.span.begin});
    }
  }
}

bool contains(Span span, std::size_t offset) { return span.begin <= offset && offset < span.end; }

/// Looks for the event that was written where a reader warned of something.
void place_by_offset(PlacedFinding& finding, const Score& score, std::size_t offset) {
  for (std::size_t p = 0; p < score.passages.size(); ++p) {
    for (const Line& line : score.passages[p].lines) {
      for (const Event& event : line.events) {
        const bool is_here =
            contains(event.span, offset) ||
            std::any_of(event.notes.begin(), event.notes.end(),
                        [offset](const Note& note) { return contains(note.span, offset); });
        if (!is_here) continue;
        set_place(finding, score, p, line, event, onsets_of_bars(score.passages[p]));
        return;
      }
    }
  }
}

void add_warnings(const ReadResult& read, std::vector<Found>& found) {
  for (const Diagnostic& diagnostic : read.diagnostics.kept) {
    if (!is_finding(diagnostic)) continue;
    PlacedFinding finding;
    finding.code = diagnostic.code;
    finding.level = Level::caution;
    finding.message = diagnostic.message;
    place_by_offset(finding, read.score, diagnostic.span.begin);
    found.push_back({std::move(finding), diagnostic.span.begin});
  }
}

void add_totals(const Totals& from, Totals& to) {
  to.events += from.events;
  to.fingered += from.fingered;
  to.preparatory += from.preparatory;
  to.single_rotations += from.single_rotations;
  to.double_rotations += from.double_rotations;
  to.level += from.level;
  to.undetermined += from.undetermined;
  to.swings += from.swings;
  to.crossings += from.crossings;
  to.longest_double_run = std::max(to.longest_double_run, from.longest_double_run);
}

std::size_t& count_of(CheckCounts& counts, Level level) {
  switch (level) {
    case Level::caution:
      return counts.caution;
    case Level::strain:
      return counts.strain;
    case Level::info:
      break;
  }
  return counts.info;
}

CheckCounts counts_of(const Analysis& analysis, const std::vector<Found>& found) {
  CheckCounts counts;
  counts.passages = analysis.passages.size();
  for (const PassageAnalysis& passage : analysis.passages) {
    for (const LineAnalysis& line : passage.lines) add_totals(line.totals, counts.totals);
  }
  for (const Found& entry : found) ++count_of(counts, entry.finding.level);
  return counts;
}

std::string first_error(const Source& source, const Diagnostics& diagnostics) {
  const auto error =
      std::find_if(diagnostics.kept.begin(), diagnostics.kept.end(),
                   [](const Diagnostic& entry) { return entry.severity == Severity::error; });
  if (error == diagnostics.kept.end()) return "it could not be read";
  const Place place = source.place_of(error->span.begin);
  return fmt::format("line {}, column {}: {} [{}]", place.line, place.column, error->message,
                     error->code);
}

/// The notation is typed as text; all else is a score that a program wrote.
Placing placing_of(const Source& source) {
  const std::string_view text = source.text();
  const std::size_t begin = std::min(text.find_first_not_of("\xEF\xBB\xBF \t\r\n"), text.size());
  const std::string_view opening = text.substr(begin, 2);
  const bool is_notation = !opening.starts_with('<') && opening != "PK" && opening != "\xFE\xFF" &&
                           opening != "\xFF\xFE";
  return is_notation ? Placing::line_and_column : Placing::bar_and_beat;
}

}  // namespace

void CheckCounts::add(const CheckCounts& other) noexcept {
  passages += other.passages;
  add_totals(other.totals, totals);
  info += other.info;
  caution += other.caution;
  strain += other.strain;
}

bool CheckCounts::reaches(Level level) const noexcept {
  switch (level) {
    case Level::info:
      return info + caution + strain > 0;
    case Level::caution:
      return caution + strain > 0;
    case Level::strain:
      break;
  }
  return strain > 0;
}

void AllCounts::add(const FileCounts& file) noexcept {
  ++(file.ok() ? read : failed);
  counts.add(file.counts);
}

bool is_finding(const Diagnostic& diagnostic) noexcept {
  return diagnostic.severity == Severity::warning && diagnostic.code == "finger-range";
}

FileCheck check(const Source& source, const ReadResult& read, Analysis analysis) noexcept {
  FileCheck result;
  result.file.source = source.name();
  if (!read.ok()) {
    result.file.error = first_error(source, read.diagnostics);
    return result;
  }
  result.placing = placing_of(source);
  for (const Passage& passage : read.score.passages) result.titles.push_back(passage.title);
  std::vector<Found> found;
  for (std::size_t p = 0; p < analysis.passages.size(); ++p) {
    add_watch_list(read.score, p, analysis.passages[p], found);
  }
  add_warnings(read, found);
  std::stable_sort(found.begin(), found.end(), [](const Found& left, const Found& right) {
    return left.offset < right.offset;
  });
  result.file.counts = counts_of(analysis, found);
  PlaceCounter places(source);
  result.findings.reserve(found.size());
  for (Found& entry : found) {
    entry.finding.place = places.at(entry.offset);
    result.findings.push_back(std::move(entry.finding));
  }
  return result;
}

}  // namespace fingerturn
