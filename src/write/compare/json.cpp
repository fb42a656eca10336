#include "fingerturn/compare.hpp"
#include "text/beat_text.hpp"
#include "write/json/parts.hpp"
#include "write/json/values.hpp"

#include <algorithm>
#include <string_view>

#include <fmt/format.h>

/// JSON as docs/comparison.schema.json describes it.
namespace fingerturn {
namespace {

/// Writes the elements of a list, each made by a function.
template <typename List, typename Add>
void add_list(std::string& out, const List& list, std::string_view between, const Add& add) {
  bool first = true;
  for (const auto& element : list) {
    if (!first) out += ',';
    out += between;
    first = false;
    add(element);
  }
}

void add_note(std::string& out, const Line& line, std::size_t event, const Note& note) {
  out += R"({"pitch":)";
  add_word(out, to_string(note.pitch));
  out += ',';
  add_fingers_on_key(out, line, event, note);
  out += fmt::format(R"(,"suggested":{}}})", note.suggested);
}

/// How one fingering plays an event.
void add_played(std::string& out, const AnalysedLine& line, std::size_t number) {
  const auto [event, entry] = line[number];
  out += R"({"notes":[)";
  bool first = true;
  for (const Note& note : event.notes) {
    if (note.held) continue;
    if (!first) out += ',';
    first = false;
    add_note(out, line.written(), entry.event, note);
  }
  std::optional<Direction> play;
  if (entry.side) play = direction_of(line.hand(), *entry.side);
  out += R"(],"rotation":)";
  add_word(out, name_of(entry.rotation));
  out += R"(,"side":)";
  add_word_or_null(out, name_or_none(entry.side));
  out += R"(,"play":)";
  add_word_or_null(out, name_or_none(play));
  out += R"(,"prepare":)";
  add_word_or_null(out, name_or_none(entry.prepare));
  out += R"(,"crossing":)";
  add_word_or_null(out, crossing_or_none(entry.crossing));
  out += '}';
}

void add_difference(std::string& out, const HandComparison& hand, const DifferingEvent& event) {
  out += fmt::format(R"({{"event":{},"bar":{},"beat":{},"played":[)", event.number, event.bar,
                     event.beat ? beat_text(*event.beat) : "null");
  add_list(out, hand.lines, "",
           [&](const AnalysedLine& line) { add_played(out, line, event.number); });
  out += "]}";
}

void add_result(std::string& out, const HandResult& result) {
  out += R"({"difficulty":)";
  add_decimal_or_null(out, result.difficulty);
  out += R"(,"totals":)";
  add_totals(out, result.totals);
  out += fmt::format(R"(,"watch":{{"info":{},"caution":{},"strain":{}}}}})", result.info,
                     result.caution, result.strain);
}

void add_hand(std::string& out, const HandComparison& hand) {
  out += fmt::format(R"({{"hand":"{}","events":{},"results":[)", to_string(hand.hand),
                     hand.bars.size());
  add_list(out, hand.results, "\n      ",
           [&out](const HandResult& result) { add_result(out, result); });
  out += R"(],"differences":[)";
  add_list(out, hand.differing, "\n      ",
           [&](const DifferingEvent& event) { add_difference(out, hand, event); });
  out += "]}";
}

std::string bars_text(const std::optional<BarRange>& bars) {
  return bars ? fmt::format("[{},{}]", bars->first, bars->last) : "null";
}

void add_passage(std::string& out, const Comparison& comparison) {
  const AnalysedPassage& first = comparison.fingerings.front().passage;
  const Passage& passage = first.written();
  const std::string meter = passage.meters.empty() ? "" : to_string(passage.meters.front().value);
  out += fmt::format(R"({{"title":{},"composer":{},"meter":{},"bars":{},"fingerings":[)",
                     json_text(comparison.title), text_or_null(passage.composer),
                     text_or_null(meter), bars_text(first.found().bars));
  add_list(out, comparison.fingerings, "",
           [&out](const NamedPassage& fingering) { out += json_text(fingering.name); });
  out += fmt::format(R"(],"alike":{},"hands":[)", comparison.all_alike());
  add_list(out, comparison.hands, "\n    ",
           [&](const HandComparison& hand) { add_hand(out, hand); });
  out += "]}";
}

}  // namespace

std::string write_comparison_json(std::span<const Comparison> comparisons) noexcept {
  std::string out = fmt::format(
      "{{\"format\":\"fingerturn-comparison\",\"version\":1,\n \"caution\":{},\n \"passages\":[",
      json_text(caution()));
  add_list(out, comparisons, "\n  ",
           [&out](const Comparison& comparison) { add_passage(out, comparison); });
  return out + "]}\n";
}

}  // namespace fingerturn
