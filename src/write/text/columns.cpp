#include "write/text/columns.hpp"

#include "score/timeline.hpp"

#include <algorithm>
#include <utility>

namespace fingerturn {
namespace {

using Bar = std::array<std::vector<ShownEvent>, 2>;

/// Where an event stands in its bar: grace notes before the note of the same onset.
bool stands_before(const ShownEvent& left, const ShownEvent& right) {
  const Event& a = *left.event;
  const Event& b = *right.event;
  if (a.onset != b.onset) return *a.onset < *b.onset;
  return a.grace && !b.grace;
}

/// Puts the events of two lines into common columns where they stand at the same time.
std::vector<Column> merge(const Bar& bar) {
  std::vector<Column> columns;
  std::size_t first = 0;
  std::size_t second = 0;
  while (first < bar[0].size() || second < bar[1].size()) {
    const bool more_first = first < bar[0].size();
    const bool more_second = second < bar[1].size();
    const bool both = more_first && more_second;
    const bool take_first = !more_second || (both && !stands_before(bar[1][second], bar[0][first]));
    const bool take_second = !more_first || (both && !stands_before(bar[0][first], bar[1][second]));
    Column& column = columns.emplace_back();
    if (take_first) column.events[0] = bar[0][first++];
    if (take_second) column.events[1] = bar[1][second++];
  }
  return columns;
}

std::optional<Fraction> onset_of(const Column& column) {
  for (const auto& shown : column.events) {
    if (shown && shown->event->onset) return shown->event->onset;
  }
  return std::nullopt;
}

/// The length of a beat in whole notes: three units together in compound time.
Fraction beat_of(const Meter* meter) {
  if (meter == nullptr) return {1, 4};
  const bool compound = meter->beat_type >= 8 && meter->beats > 3 && meter->beats % 3 == 0;
  return reduced(compound ? 3 : 1, meter->beat_type).value_or(Fraction{1, 4});
}

/// How many whole beats lie before an onset.
std::int64_t beat_number(Fraction onset, Fraction start, Fraction beat) {
  const std::optional<Fraction> time = sum(onset, {-start.numerator, start.denominator});
  const std::optional<Fraction> beats =
      time ? product(*time, {beat.denominator, beat.numerator}) : std::nullopt;
  return beats ? beats->numerator / beats->denominator : 0;
}

void mark_beats(const Meter* meter, std::vector<Column>& columns) {
  const std::optional<Fraction> start = onset_of(columns.front());
  std::int64_t last = 0;
  for (Column& column : columns) {
    const std::optional<Fraction> onset = onset_of(column);
    if (!start || !onset) continue;
    const std::int64_t number = beat_number(*onset, *start, beat_of(meter));
    column.begins_beat = number != last;
    last = number;
  }
}

}  // namespace

SharedLines lines_of(const AnalysedPassage& passage) {
  SharedLines lines;
  for (const AnalysedLine line : passage) lines.push_back(line);
  return lines;
}

BarSequence::BarSequence(const AnalysedPassage& passage, SharedLines lines)
    : passage_(&passage.written()), lines_(std::move(lines)) {
  for (std::uint32_t i = 0; i < lines_.size(); ++i) add_line(i, passage.found());
  std::ranges::stable_sort(stretches_, {}, &Stretch::bar);
  for (std::size_t i = 0; i < stretches_.size(); ++i) {
    if (i == 0 || stretches_[i].bar != stretches_[i - 1].bar) bars_.push_back(i);
  }
}

void BarSequence::add_line(std::uint32_t number, const PassageAnalysis& shown) {
  const std::vector<Event>& events = lines_[number].written().events;
  const std::vector<EventAnalysis>& entries = lines_[number].found().events;
  std::size_t entry = 0;
  for (std::size_t begin = 0, end = 0; begin < events.size(); begin = end) {
    const std::int32_t bar = events[begin].bar;
    while (end < events.size() && events[end].bar == bar) ++end;
    while (entry < entries.size() && entries[entry].event < begin) ++entry;
    if (shown.shows(bar)) stretches_.push_back({bar, number, begin, end, entry});
  }
}

void BarSequence::add_events(const Stretch& stretch, std::vector<ShownEvent>& shown) const {
  const std::vector<Event>& events = lines_[stretch.line].written().events;
  const std::vector<EventAnalysis>& entries = lines_[stretch.line].found().events;
  std::size_t entry = stretch.entry;
  for (std::size_t place = stretch.begin; place < stretch.end; ++place) {
    const bool analysed = entry < entries.size() && entries[entry].event == place;
    shown.push_back({&events[place], place, analysed ? &entries[entry] : nullptr});
    if (analysed) ++entry;
  }
}

BarColumns BarSequence::operator[](std::size_t number) const {
  const std::size_t end = number + 1 < bars_.size() ? bars_[number + 1] : stretches_.size();
  Bar bar;
  for (std::size_t i = bars_[number]; i < end; ++i) {
    add_events(stretches_[i], bar[stretches_[i].line]);
  }
  BarColumns columns{stretches_[bars_[number]].bar, merge(bar)};
  mark_beats(meter_in_bar(*passage_, columns.bar), columns.columns);
  return columns;
}

bool all_onsets_known(const Passage& passage) noexcept {
  return std::all_of(passage.lines.begin(), passage.lines.end(), [](const Line& line) {
    return std::all_of(line.events.begin(), line.events.end(),
                       [](const Event& event) { return event.onset.has_value(); });
  });
}

std::vector<SharedLines> lines_together(const AnalysedPassage& passage) {
  const SharedLines lines = lines_of(passage);
  if (lines.empty()) return {};
  if (lines.size() < 2 || all_onsets_known(passage.written())) return {lines};
  std::vector<SharedLines> apart;
  for (const AnalysedLine& line : lines) apart.push_back({line});
  return apart;
}

}  // namespace fingerturn
