#pragma once

#include "expect.hpp"
#include "fingerturn/fingerturn.hpp"
#include "well_formed.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

/// What holds for everything that a reader makes of any bytes.
namespace fingerturn::properties {

inline void expect_in_source(Span span, const Source& source) {
  expect(span.begin <= span.end, "a span begins before it ends");
  expect(span.end <= source.text().size(), "a span lies in the source");
}

inline void expect_printable(std::string_view text) {
  expect(only_shows(text), "nothing that acts in messages and reports");
}

inline void expect_sound(const ReadResult& result, const Source& source) {
  const Diagnostics& diagnostics = result.diagnostics;
  std::size_t errors = 0;
  std::size_t last_begin = 0;
  for (const Diagnostic& diagnostic : diagnostics.kept) {
    expect_in_source(diagnostic.span, source);
    expect(last_begin <= diagnostic.span.begin, "diagnostics stand in the order of the source");
    last_begin = diagnostic.span.begin;
    expect(find_diagnostic_code(diagnostic.code) != nullptr, "a code is one of the table");
    expect(!diagnostic.message.empty(), "a diagnostic says something");
    const std::optional<std::size_t> passage = diagnostic.where.passage;
    expect(!passage || *passage < result.score.passages.size(), "a place is in the score");
    if (diagnostic.severity == Severity::error) ++errors;
  }
  const std::size_t all = diagnostics.errors + diagnostics.warnings;
  expect(diagnostics.kept.size() == std::min(all, kMostDiagnostics),
         "as many kept as there is room");
  expect(errors == std::min(diagnostics.errors, kMostDiagnostics), "errors push warnings out");
  const std::string text = render(source, diagnostics);
  expect(text.empty() == (all == 0), "diagnostics render to text");
  expect_printable(text);
}

/// Of two onsets that are known the later one is not before the earlier.
inline void expect_onsets_in_order(const Line& line) {
  Fraction time;
  for (const Event& event : line.events) {
    if (!event.onset) continue;
    expect(*event.onset >= time, "onsets never fall");
    time = *event.onset;
  }
}

inline void expect_sound(const Score& score, const Source& source) {
  for (const Passage& passage : score.passages) {
    for (const Line& line : passage.lines) {
      expect_onsets_in_order(line);
      for (const Event& event : line.events) {
        expect_in_source(event.span, source);
        for (const Note& note : event.notes) expect_in_source(note.span, source);
      }
    }
  }
}

inline void expect_sound(const AnalysedLine& line) {
  const std::vector<Event>& events = line.written().events;
  const auto struck = std::count_if(events.begin(), events.end(),
                                    [](const Event& event) { return event.struck_count() > 0; });
  const Totals& totals = line.found().totals;
  expect(line.found().hand == line.hand(), "an analysis is of its line's hand");
  expect(line.size() == static_cast<std::size_t>(struck), "every struck event is analysed");
  expect(totals.events == line.size(), "the totals count every event");
  expect(totals.preparatory + totals.single_rotations + totals.double_rotations +
                 totals.level_events + totals.undetermined ==
             totals.events,
         "every event is of one kind");
}

inline void expect_sound(const AnalysedScore& analysed) {
  const std::vector<Passage>& passages = analysed.written().passages;
  expect(analysed.found().passages.size() == passages.size(), "every passage is analysed");
  for (const AnalysedPassage passage : analysed) {
    expect(passage.found().lines.size() == passage.size(), "every line is analysed");
    for (const AnalysedLine line : passage) expect_sound(line);
  }
}

/// All reports of a score are well formed; gives the JSON.
inline std::string expect_reports(const Score& score) {
  const AnalysedScore analysed("fuzz.passage", score);
  expect_sound(analysed);
  for (const TextStyle& style :
       {TextStyle{}, TextStyle{.columns = 0, .ascii = true, .detail = true, .trace = true}}) {
    const std::string text = write_text(analysed, style);
    expect(text.ends_with('\n'), "a text report ends with a line feed");
    expect_printable(text);
  }
  for (const std::string& page : {write_html(analysed), write_svg(analysed)}) {
    expect(is_xml(page), "pages and pictures are well-formed");
    expect_printable(page);
  }
  expect_printable(write_markdown(analysed, {.detail = true, .cues = true}));
  std::string json = write_json(analysed);
  expect(is_json(json), "the JSON report is JSON");
  expect_printable(json);
  const std::string lines = write_jsonl(analysed);
  expect(static_cast<std::size_t>(std::count(lines.begin(), lines.end(), '\n')) ==
             score.passages.size(),
         "JSON lines has a line for each passage");
  return json;
}

/// What write_passage wrote reads back as an equal score, and writes the same bytes again.
inline void expect_round_trip(const Score& score) {
  const std::string written = write_passage(score);
  const Source source("written.passage", written);
  const ReadResult again = read_notation(source);
  expect(again.ok(), "what was written reads back without errors");
  expect(again.score == score, "what was written reads back as an equal score");
  expect(write_passage(again.score) == written, "writing again gives the same bytes");
}

}  // namespace fingerturn::properties
