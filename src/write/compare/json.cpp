#include "fingerturn/compare.hpp"
#include "text/numbers.hpp"
#include "write/json/parts.hpp"
#include "write/json/writer.hpp"

#include <array>
#include <string_view>

/// JSON as docs/comparison.schema.json describes it.
namespace fingerturn {
namespace {

void add_difference(JsonWriter& json, const HandComparison& hand, const DifferingEvent& event) {
  json.object([&] {
    json.member<"event">(event.number);
    json.member<"bar">(event.bar);
    json.member<"beat">([&] { json.raw(event.beat ? beat_text(*event.beat) : "null"); });
    json.member<"played">([&] {
      json.list(hand.lines,
                [&](const AnalysedLine& line) { add_played(json, line, line[event.number]); });
    });
  });
}

void add_result(JsonWriter& json, const HandResult& result) {
  json.object([&] {
    json.member<"difficulty">(result.difficulty);
    json.member<"totals">([&] { add_totals(json, result.totals); });
    json.member<"watch">([&] { add_watch_counts(json, result.watch); });
  });
}

void add_counts(JsonWriter& json, const Agreement& agreement) {
  json.member<"events">(agreement.events);
  json.member<"fingers">(agreement.fingers);
  json.member<"turns">(agreement.turns);
}

void add_agreement(JsonWriter& json, const HandComparison& hand) {
  json.object([&] {
    add_counts(json, hand.in_all());
    json.member<"bars">([&] {
      json.list(hand.agreement, [&](const BarAgreement& in_bar) {
        json.object([&] {
          json.member<"bar">(in_bar.bar);
          add_counts(json, in_bar.agreement);
        });
      });
    });
  });
}

void add_hand(JsonWriter& json, const HandComparison& hand) {
  constexpr std::string_view kBreak = "\n      ";
  json.object([&] {
    json.member<"hand">(to_string(hand.hand));
    json.member<"events">(hand.compared.size());
    json.member<"agreement">([&] { add_agreement(json, hand); });
    json.member<"results">([&] {
      json.list(hand.results, kBreak, [&](const HandResult& result) { add_result(json, result); });
    });
    json.member<"differences">([&] {
      json.list(hand.differing, kBreak,
                [&](const DifferingEvent& event) { add_difference(json, hand, event); });
    });
  });
}

void add_bars(JsonWriter& json, const std::optional<BarRange>& bars) {
  if (!bars) return json.raw("null");
  json.list(std::array{bars->first, bars->last}, [&](std::int32_t bar) { json.value(bar); });
}

void add_comparison(JsonWriter& json, const Comparison& comparison) {
  const AnalysedPassage& first = comparison.fingerings.front().passage;
  json.object([&] {
    json.member<"title">(comparison.title);
    json.member<"composer">(text_or_none(first.written().composer));
    json.member<"meter">(first_meter(first.written()));
    json.member<"bars">([&] { add_bars(json, first.found().bars); });
    json.member<"fingerings">([&] {
      json.list(comparison.fingerings,
                [&](const NamedPassage& fingering) { json.value(fingering.name); });
    });
    json.member<"fingered_only">(comparison.events == ComparedEvents::fingered_in_all);
    json.member<"alike">(comparison.all_alike());
    json.member<"hands">([&] {
      json.list(comparison.hands, "\n    ",
                [&](const HandComparison& hand) { add_hand(json, hand); });
    });
  });
}

}  // namespace

std::string write_comparison_json(std::span<const Comparison> comparisons) {
  return text_of(0, [&](TextOut& out) {
    JsonWriter json(out);
    json.document([&] {
      json.member<"format">("fingerturn-comparison");
      json.member<"version">(1);
      json.line_break("\n ");
      json.member<"caution">(caution());
      json.line_break("\n ");
      json.member<"passages">([&] {
        json.list(comparisons, "\n  ",
                  [&](const Comparison& comparison) { add_comparison(json, comparison); });
      });
    });
  });
}

}  // namespace fingerturn
