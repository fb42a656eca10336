#include "fingerturn/report.hpp"
#include "write/json/parts.hpp"
#include "write/json/values.hpp"

#include <optional>
#include <string>
#include <string_view>

#include <fmt/format.h>

/// JSON as docs/analysis.schema.json describes it. Text that a user wrote is escaped by the JSON
/// library; the events, whose words are all our own, are written straight into the result, since
/// building each as a tree first takes about ten times as long (tests/bench).
namespace fingerturn {
namespace {

/// How the document is laid out: on one line, or with an event on each.
enum class Layout : std::uint8_t { lines, one_line };

void add_fraction_or_null(std::string& out, const std::optional<Fraction>& fraction) {
  if (!fraction) {
    out += "null";
    return;
  }
  out += '"';
  add_number(out, fraction->numerator);
  if (fraction->denominator != 1) {
    out += '/';
    add_number(out, fraction->denominator);
  }
  out += '"';
}

void add_note(std::string& out, const Line& line, std::size_t event, const Note& note) {
  const int midi = midi_number(note.pitch);
  out += R"({"pitch":)";
  add_word(out, to_string(note.pitch));
  out += R"(,"midi":)";
  add_number(out, midi);
  out += R"(,"key":)";
  add_word(out, key_colour(midi) == KeyColour::black ? "black" : "white");
  out += ',';
  add_fingers_on_key(out, line, event, note);
  out += R"(,"alternatives":[)";
  add_fingers(out, note.alternatives);
  out += R"(],"suggested":)";
  out += note.suggested ? "true}" : "false}";
}

void add_notes(std::string& out, const Line& line, std::size_t event) {
  bool first = true;
  for (const Note& note : line.events[event].notes) {
    if (note.held) continue;
    if (!first) out += ',';
    add_note(out, line, event, note);
    first = false;
  }
}

/// What is written of an event: where it stands and its notes.
void add_written_part(std::string& out, const Line& line, const AnalysedEvent& analysed) {
  const auto& [event, entry] = analysed;
  out += R"({"index":)";
  add_number(out, static_cast<std::int64_t>(entry.index));
  out += R"(,"bar":)";
  add_number(out, event.bar);
  out += R"(,"onset":)";
  add_fraction_or_null(out, event.onset);
  out += R"(,"duration":)";
  add_fraction_or_null(out, event.duration);
  out += R"(,"grace":)";
  out += event.grace ? "true" : "false";
  out += R"(,"notes":[)";
  add_notes(out, line, entry.event);
  out += ']';
}

/// What the rules found about it.
void add_found_part(std::string& out, Hand hand, const EventAnalysis& entry) {
  std::optional<std::string_view> play;
  std::optional<std::string_view> forearm;
  if (entry.side) {
    play = name_of(direction_of(hand, *entry.side));
    forearm = forearm_of(*entry.side);
  }
  out += R"(,"rotation":)";
  add_word(out, name_of(entry.rotation));
  out += R"(,"side":)";
  add_word_or_null(out, name_or_none(entry.side));
  out += R"(,"play":)";
  add_word_or_null(out, play);
  out += R"(,"prepare":)";
  add_word_or_null(out, name_or_none(entry.prepare));
  out += R"(,"forearm":)";
  add_word_or_null(out, forearm);
  out += R"(,"swings":)";
  out += entry.swings ? std::to_string(*entry.swings) : "null";
  out += R"(,"swing_rate":)";
  add_decimal_or_null(out, entry.swing_rate);
  out += R"(,"crossing":)";
  add_word_or_null(out, crossing_or_none(entry.crossing));
  out += R"(,"carry":)";
  add_decimal_or_null(out, entry.carry);
  out += R"(,"depth":)";
  add_decimal_or_null(out, entry.depth);
  out += R"(,"arc":)";
  add_number(out, static_cast<std::int64_t>(entry.arc));
  out += R"(,"rule":)";
  add_word(out, entry.rule);
  out += R"(,"basis":)";
  add_word(out, name_of(entry.basis));
  out += R"(,"reason":")";
  add_reason(out, entry, hand);
  out += R"("})";
}

void add_event(std::string& out, const AnalysedLine& line, const AnalysedEvent& event) {
  add_written_part(out, line.written(), event);
  add_found_part(out, line.hand(), event.found);
}

/// A line feed and an indent, or nothing in a document of one line.
std::string_view line_break(Layout layout, std::size_t depth) {
  static constexpr std::string_view kBreak = "\n        ";
  return layout == Layout::one_line ? std::string_view{} : kBreak.substr(0, 1 + depth);
}

void add_watch_list(std::string& out, const AnalysedLine& line, Layout layout) {
  bool first = true;
  for (const Finding& finding : line.found().watch) {
    if (!first) out += ',';
    first = false;
    out += fmt::format(
        R"({}{{"code":"{}","level":"{}","bar":{},"event":{},"message":{},"source":{}}})",
        line_break(layout, 6), finding.rule, name_of(finding.level), line.event_of(finding).bar,
        finding.index, json_text(finding.message), json_text(find_rule(finding.rule)->sources));
  }
}

void add_hand(std::string& out, const AnalysedLine& line, Layout layout) {
  out += fmt::format(R"({{"hand":"{}","events":[)", to_string(line.hand()));
  bool first = true;
  for (const AnalysedEvent event : line) {
    if (!first) out += ',';
    out += line_break(layout, 6);
    add_event(out, line, event);
    first = false;
  }
  out += fmt::format(R"(],{}"totals":)", line_break(layout, 5));
  add_totals(out, line.found().totals);
  out += fmt::format(R"(,{}"difficulty":)", line_break(layout, 5));
  add_decimal_or_null(out, line.found().difficulty);
  out += fmt::format(R"(,{}"watch":[)", line_break(layout, 5));
  add_watch_list(out, line, layout);
  out += "]}";
}

/// The lines stand right hand first, as in every passage of both hands.
void add_together(std::string& out, const AnalysedPassage& passage) {
  if (!passage.found().together) {
    out += "null";
    return;
  }
  const Together& together = *passage.found().together;
  out += fmt::format(R"({{"onsets":{},"parallel":{},"contrary":{},"kinds_differ":[)",
                     together.onsets, together.parallel, together.contrary);
  bool first = true;
  for (const KindsDiffer& place : together.kinds_differ) {
    const Event& event = passage.written().lines.front().events[place.right_event];
    if (!first) out += ',';
    first = false;
    out += fmt::format(R"({{"bar":{},"onset":)", event.bar);
    add_fraction_or_null(out, event.onset);
    out += fmt::format(R"(,"right":"{}","left":"{}"}})", name_of(place.right), name_of(place.left));
  }
  out += "]}";
}

/// The tempo at the beginning: the one that was asked for, or the first that is written.
std::string tempo_text(const Passage& passage, const PassageAnalysis& analysis) {
  if (analysis.quarters_per_minute) return json_number(*analysis.quarters_per_minute);
  if (passage.tempos.empty()) return "null";
  return json_number(passage.tempos.front().value.quarters_per_minute());
}

void add_passage(std::string& out, const AnalysedPassage& analysed, Layout layout) {
  const Passage& passage = analysed.written();
  const PassageAnalysis& analysis = analysed.found();
  const std::string meter = passage.meters.empty() ? "" : to_string(passage.meters.front().value);
  const std::string reach =
      analysis.reach_semitones ? std::to_string(*analysis.reach_semitones) : "null";
  out += fmt::format(R"({{"title":{},"composer":{},"meter":{},"tempo":{},"reach":{},)",
                     text_or_null(passage.title), text_or_null(passage.composer),
                     text_or_null(meter), tempo_text(passage, analysis), reach);
  out += R"("full_swing_tempo":)";
  add_decimal_or_null(out, analysis.full_swing_tempo);
  out += R"(,"remarks":[)";
  for (std::size_t i = 0; i < passage.remarks.size(); ++i) {
    if (i > 0) out += ',';
    out += json_text(passage.remarks[i]);
  }
  out += fmt::format(R"(],{}"hands":[)", line_break(layout, 3));
  for (std::size_t i = 0; i < analysed.size(); ++i) {
    if (i > 0) out += ',';
    out += line_break(layout, 4);
    add_hand(out, analysed[i], layout);
  }
  out += fmt::format(R"(],{}"together":)", line_break(layout, 3));
  add_together(out, analysed);
  out += '}';
}

/// About as many bytes as the report will take, so that it need not be moved as it grows.
std::size_t expected_size(const AnalysedScore& analysed) {
  constexpr std::size_t kBytesPerEvent = 700;
  constexpr std::size_t kBytesPerPassage = 1500;
  std::size_t events = 0;
  for (const AnalysedPassage passage : analysed) {
    for (const AnalysedLine line : passage) events += line.size();
  }
  return kBytesPerEvent * events + kBytesPerPassage * (1 + analysed.size());
}

void add_opening(std::string& out, std::string_view source_name, Layout layout) {
  out += fmt::format(
      R"({{"format":"fingerturn-analysis","version":1,"source":{},{}"caution":{},{}"passages":[)",
      json_text(source_name), line_break(layout, 1), json_text(caution()), line_break(layout, 1));
}

}  // namespace

std::string write_json(const AnalysedScore& analysed) noexcept {
  std::string out;
  out.reserve(expected_size(analysed));
  add_opening(out, analysed.name(), Layout::lines);
  for (std::size_t i = 0; i < analysed.size(); ++i) {
    if (i > 0) out += ',';
    out += line_break(Layout::lines, 2);
    add_passage(out, analysed[i], Layout::lines);
  }
  return out + "]}\n";
}

std::string write_jsonl(const AnalysedScore& analysed) noexcept {
  std::string out;
  out.reserve(expected_size(analysed));
  for (std::size_t i = 0; i < analysed.size(); ++i) {
    add_opening(out, analysed.name(), Layout::one_line);
    add_passage(out, analysed[i], Layout::one_line);
    out += "]}\n";
  }
  return out;
}

}  // namespace fingerturn
