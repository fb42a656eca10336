#include "fingerturn/report.hpp"
#include "score/timeline.hpp"
#include "text/numbers.hpp"
#include "write/json/parts.hpp"
#include "write/json/writer.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// JSON as docs/analysis.schema.json describes it.
namespace fingerturn {
namespace {

/// How the document is laid out: on one line, or with an event on each.
enum class Layout : std::uint8_t { lines, one_line };

/// A line feed and an indent, or nothing in a document of one line.
std::string_view line_break(Layout layout, std::size_t depth) {
  static constexpr std::string_view kBreak = "\n        ";
  return layout == Layout::one_line ? std::string_view{} : kBreak.substr(0, 1 + depth);
}

/// A line that knows on which beats its events fall.
class LineInTime {
 public:
  LineInTime(const Passage& passage, const AnalysedLine& line)
      : passage_(passage), line_(line), beginnings_(bar_beginnings(line.written())) {}

  [[nodiscard]] const AnalysedLine& line() const noexcept { return line_; }
  /// Counted from 1; none where the meter or the time is not known.
  [[nodiscard]] std::optional<Fraction> beat(std::size_t event) const {
    return beat_of(passage_, line_.written(), event, beginnings_);
  }

 private:
  const Passage& passage_;
  AnalysedLine line_;
  std::vector<std::size_t> beginnings_;
};

void add_beat(JsonWriter& json, const std::optional<Fraction>& beat) {
  json.member<"beat">([&] { beat ? json.raw(beat_text(*beat)) : json.raw("null"); });
}

void add_note(JsonWriter& json, const Line& line, std::size_t event, const Note& note) {
  const int midi = midi_number(note.pitch);
  json.member<"midi">(midi);
  json.member<"key">(Word{key_colour(midi) == KeyColour::black ? "black" : "white"});
  add_fingers_on_key(json, line, event, note);
  json.member<"alternatives">(
      [&] { json.list(note.alternatives, [&](Finger finger) { json.value(finger); }); });
  json.member<"suggested">(note.suggested);
}

std::optional<Word> ornament_of(const Event& event) {
  if (event.ornament == Ornament::none) return std::nullopt;
  return Word{event.ornament == Ornament::trill ? "trill" : "tremolo"};
}

/// What is written of an event: where it stands and its notes.
void add_written_part(JsonWriter& json, const LineInTime& line, const AnalysedEvent& event) {
  const auto& [written, found] = event;
  json.member<"index">(found.index);
  json.member<"bar">(written.bar);
  add_beat(json, line.beat(found.event));
  json.member<"onset">(written.onset);
  json.member<"duration">(written.duration);
  json.member<"grace">(written.grace);
  json.member<"rolled">(written.rolls_on);
  json.member<"ornament">(ornament_of(written));
  add_struck_notes(json, written, [&, place = found.event](const Note& note) {
    add_note(json, line.line().written(), place, note);
  });
  json.member<"held">([&] {
    json.list(line.line().held_at(event.found.event), [&](const HeldKey& held) {
      json.object([&] {
        json.member<"pitch">(Word{to_string(held.pitch)});
        json.member<"finger">(held.finger);
      });
    });
  });
}

/// What the rules found about it.
void add_found_part(JsonWriter& json, Hand hand, const EventAnalysis& found) {
  std::optional<Word> forearm;
  if (found.side) forearm = Word{forearm_of(*found.side)};
  json.member<"rotation">(Word{name_of(found.rotation)});
  json.member<"side">(word_of(found.side));
  json.member<"play">(word_of(direction_of(hand, found.side)));
  json.member<"change">(word_of(direction_of(hand, found.change)));
  json.member<"prepare">(word_of(found.prepare));
  json.member<"forearm">(forearm);
  json.member<"swings">(found.swings);
  json.member<"swing_rate">(found.swing_rate);
  json.member<"swing_size">(swing_size(found));
  json.member<"crossing">(word_of(found.crossing));
  json.member<"carry">(found.carry);
  json.member<"depth">(found.depth);
  json.member<"arc">(found.arc);
  json.member<"rule">(Word{found.rule});
  json.member<"basis">(Word{name_of(found.basis)});
  json.member<"reason">(
      [&] { json.own_text([&](std::string& out) { add_reason(out, found, hand); }); });
}

void add_finding(JsonWriter& json, const LineInTime& in_time, const Finding& finding) {
  const AnalysedLine& line = in_time.line();
  json.object([&] {
    json.member<"code">(Word{finding.rule});
    json.member<"level">(Word{name_of(finding.level)});
    json.member<"bar">(line.event_of(finding).bar);
    add_beat(json, in_time.beat(finding.event));
    json.member<"event">(finding.index);
    json.member<"pitches">([&] {
      json.list(line.event_of(finding).notes, [&](const Note& note) {
        if (!note.held) json.value(Word{to_string(note.pitch)});
      });
    });
    json.member<"message">(finding.message);
    json.member<"source">(find_rule(finding.rule)->sources);
  });
}

void add_hand(JsonWriter& json, const Passage& passage, const AnalysedLine& line, Layout layout) {
  const LineInTime in_time(passage, line);
  json.object([&] {
    json.member<"hand">(to_string(line.hand()));
    json.member<"events">([&] {
      json.list(line, line_break(layout, 6), [&](const AnalysedEvent& event) {
        json.object([&] {
          add_written_part(json, in_time, event);
          add_found_part(json, line.hand(), event.found);
          const UsualFingers* usual = usual_fingers_at(line.written(), event.found.event);
          if (usual != nullptr) json.member<"figure">(usual->words);
        });
      });
    });
    json.line_break(line_break(layout, 5));
    json.member<"totals">([&] { add_totals(json, line.found().totals); });
    json.line_break(line_break(layout, 5));
    json.member<"difficulty">(line.found().difficulty);
    json.line_break(line_break(layout, 5));
    json.member<"watch">([&] {
      json.list(line.found().watch, line_break(layout, 6),
                [&](const Finding& finding) { add_finding(json, in_time, finding); });
    });
  });
}

void add_differing_kinds(JsonWriter& json, const Event& event, const KindsDiffer& kinds) {
  json.object([&] {
    json.member<"bar">(event.bar);
    json.member<"onset">(event.onset);
    json.member<"right">(Word{name_of(kinds.right)});
    json.member<"left">(Word{name_of(kinds.left)});
  });
}

/// The lines stand right hand first, as in every passage of both hands.
void add_together(JsonWriter& json, const Passage& passage, const Together& together) {
  json.object([&] {
    json.member<"onsets">(together.onsets);
    json.member<"parallel">(together.parallel);
    json.member<"contrary">(together.contrary);
    json.member<"kinds_differ">([&] {
      json.list(together.kinds_differ, [&](const KindsDiffer& kinds) {
        add_differing_kinds(json, passage.lines.front().events[kinds.right_event], kinds);
      });
    });
  });
}

/// The tempo at the beginning: the one that was asked for, or the first that is written.
std::optional<double> first_tempo(const AnalysedPassage& passage) {
  if (passage.found().quarters_per_minute) return passage.found().quarters_per_minute;
  if (passage.written().tempos.empty()) return std::nullopt;
  return passage.written().tempos.front().value.quarters_per_minute();
}

/// What somebody wrote at the bars that are reported.
void add_notes(JsonWriter& json, const AnalysedPassage& analysed) {
  std::vector<FromBar<std::string>> notes = analysed.written().notes;
  std::erase_if(notes, [&](const auto& note) { return !analysed.found().shows(note.bar); });
  json.member<"notes">([&] {
    json.list(notes, [&](const FromBar<std::string>& note) {
      json.object([&] {
        json.member<"bar">(note.bar);
        json.member<"text">(note.value);
      });
    });
  });
}

void add_demand(JsonWriter& json, const BarDemand& demand) {
  json.object([&] {
    json.member<"bar">(demand.bar);
    json.member<"points">(demand.points);
    json.member<"doubles">(demand.doubles);
    json.member<"passings">(demand.passings);
    json.member<"carries">(demand.carries);
    json.member<"leaps">(demand.leaps);
    json.member<"findings">(demand.findings);
    json.member<"quick_passings">(demand.quick_passings);
    json.member<"held">(demand.held);
    json.member<"small_swings">(demand.small_swings);
    json.member<"kinds_differ">(demand.kinds_differ);
  });
}

void add_places(JsonWriter& json, const std::vector<PracticePlace>& places) {
  json.member<"places">([&] {
    json.list(places, [&](const PracticePlace& place) {
      json.object([&] {
        json.member<"first_bar">(place.bars.first);
        json.member<"last_bar">(place.bars.last);
        json.member<"asking">([&] {
          json.list(place.asking, [&](const BarDemand& demand) { add_demand(json, demand); });
        });
      });
    });
  });
}

void add_head(JsonWriter& json, const AnalysedPassage& analysed) {
  const Passage& passage = analysed.written();
  json.member<"title">(text_or_none(passage.title));
  json.member<"composer">(text_or_none(passage.composer));
  json.member<"meter">(first_meter(passage));
  json.member<"tempo">(
      [&, tempo = first_tempo(analysed)] { tempo ? json.exact(*tempo) : json.value(tempo); });
  json.member<"reach">(analysed.found().reach_semitones);
  json.member<"full_swing_tempo">(analysed.found().full_swing_tempo);
  json.member<"remarks">(
      [&] { json.list(passage.remarks, [&](const std::string& remark) { json.value(remark); }); });
  if (!passage.apart.empty()) json.member<"apart">(passage.apart);
  if (!passage.notes.empty()) add_notes(json, analysed);
  if (analysed.found().places) add_places(json, *analysed.found().places);
}

void add_passage(JsonWriter& json, const AnalysedPassage& passage, Layout layout) {
  json.object([&] {
    add_head(json, passage);
    json.line_break(line_break(layout, 3));
    json.member<"hands">([&] {
      json.list(passage, line_break(layout, 4),
                [&](const AnalysedLine& line) { add_hand(json, passage.written(), line, layout); });
    });
    json.line_break(line_break(layout, 3));
    json.member<"together">([&] {
      const std::optional<Together>& together = passage.found().together;
      together ? add_together(json, passage.written(), *together) : json.raw("null");
    });
  });
}

/// A document of these passages.
template <typename Passages>
void add_document(TextOut& out, const std::string& name, const Passages& passages, Layout layout) {
  JsonWriter json(out);
  json.document([&] {
    json.member<"format">("fingerturn-analysis");
    json.member<"version">(1);
    json.member<"source">(name);
    json.line_break(line_break(layout, 1));
    json.member<"caution">(caution());
    json.line_break(line_break(layout, 1));
    json.member<"passages">([&] {
      json.list(passages, line_break(layout, 2),
                [&](const AnalysedPassage& passage) { add_passage(json, passage, layout); });
    });
  });
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

void add_json(TextOut& out, const AnalysedScore& analysed) {
  add_document(out, analysed.name(), analysed, Layout::lines);
}

void add_jsonl(TextOut& out, const AnalysedScore& analysed) {
  for (const AnalysedPassage passage : analysed) {
    add_document(out, analysed.name(), std::array{passage}, Layout::one_line);
  }
}

}  // namespace

std::string write_json(const AnalysedScore& analysed) {
  return text_of(expected_size(analysed), [&](TextOut& out) { add_json(out, analysed); });
}

void write_json(const AnalysedScore& analysed, const TextSink& sink) {
  write_to(sink, [&](TextOut& out) { add_json(out, analysed); });
}

std::string write_jsonl(const AnalysedScore& analysed) {
  return text_of(expected_size(analysed), [&](TextOut& out) { add_jsonl(out, analysed); });
}

void write_jsonl(const AnalysedScore& analysed, const TextSink& sink) {
  write_to(sink, [&](TextOut& out) { add_jsonl(out, analysed); });
}

}  // namespace fingerturn
