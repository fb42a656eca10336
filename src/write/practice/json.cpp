#include "fingerturn/practice.hpp"
#include "write/json/parts.hpp"
#include "write/practice/plan_words.hpp"

namespace fingerturn {
namespace {

void add_bars(JsonWriter& json, BarRange bars) {
  json.member<"first_bar">(bars.first);
  json.member<"last_bar">(bars.last);
}

void add_strings(JsonWriter& json, const std::vector<std::string>& strings) {
  json.list(strings, [&](const std::string& each) { json.value(each); });
}

void add_tempo(JsonWriter& json, const TempoStep& tempo) {
  json.object([&] {
    json.member<"quarters_per_minute">([&] { json.exact(tempo.quarters_per_minute); });
    json.member<"swing_size">([&] { json.exact(tempo.swing_size); });
  });
}

void add_exact(JsonWriter& json, const std::optional<double>& number) {
  number ? json.exact(*number) : json.raw("null");
}

void add_asks(JsonWriter& json, const BarDemand& asks) {
  json.object([&] {
    json.member<"doubles">(asks.doubles);
    json.member<"held">(asks.held);
    json.member<"passings">(asks.passings);
    json.member<"quick_passings">(asks.quick_passings);
    json.member<"carries">(asks.carries);
    json.member<"leaps">(asks.leaps);
    json.member<"small_swings">(asks.small_swings);
    json.member<"kinds_differ">(asks.kinds_differ);
    json.member<"findings">(asks.findings);
  });
}

/// The struck notes of a place and their fingers, by which a later plan knows it again.
void add_music(JsonWriter& json, const Passage& passage, BarRange bars) {
  const RememberedPlace place = remembered_place(passage, bars);
  json.member<"notes">([&] { add_strings(json, place.notes); });
  json.member<"fingers">([&] { add_strings(json, place.fingers); });
}

void add_step(JsonWriter& json, const AnalysedPassage& piece, const PlannedPlace& place,
              const PracticeStep& step) {
  const StepWords words = words_of(piece, place, step);
  json.object([&] {
    json.member<"kind">(Word{words.name});
    json.member<"how">(explained(step.kind).how);
    json.member<"tempos">(
        [&] { json.list(step.tempos, [&](const TempoStep& tempo) { add_tempo(json, tempo); }); });
    json.member<"items">([&] { add_strings(json, words.items); });
  });
}

void add_progress(JsonWriter& json, const PlaceProgress& progress) {
  json.member<"progress">([&] {
    json.object([&] {
      json.member<"is_new">(progress.is_new);
      json.member<"was_done">(progress.was_done);
      json.member<"is_reached">(progress.is_reached);
      json.member<"changed_fingers">([&] { add_strings(json, progress.changed_fingers); });
    });
  });
}

void add_place(JsonWriter& json, const AnalysedScore& analysed, const PlannedPlace& place) {
  const AnalysedPassage piece = analysed[place.passage];
  json.object([&] {
    json.member<"passage">(place.passage + 1);
    json.member<"title">(text_or_none(piece.written().title));
    add_bars(json, place.stretch.bars);
    json.member<"again">([&] {
      json.list(place.stretch.again,
                [&](BarRange bars) { json.object([&] { add_bars(json, bars); }); });
    });
    json.member<"hands">(
        [&] { json.list(place.hands, [&](Hand hand) { json.value(Word{to_string(hand)}); }); });
    json.member<"points">(place.stretch.asks.points);
    json.member<"most_points">(place.stretch.most_points);
    json.member<"asks">([&] { add_asks(json, place.stretch.asks); });
    json.member<"strokes">(place.notes);
    json.member<"full_swing_tempo">([&] { add_exact(json, place.full_swing_tempo); });
    json.member<"goal">([&] { add_exact(json, place.goal); });
    json.member<"minutes">(place.minutes);
    json.member<"now">([&] {
      place.ladder.empty() ? json.raw("null") : add_tempo(json, place.ladder[place.now]);
    });
    json.member<"done">(false);
    if (place.progress) add_progress(json, *place.progress);
    add_music(json, piece.written(), place.stretch.bars);
    json.member<"steps">([&] {
      json.list(place.steps, [&](const PracticeStep& step) { add_step(json, piece, place, step); });
    });
  });
}

}  // namespace

std::string write_practice_json(const AnalysedScore& analysed, const PracticePlan& plan) {
  return text_of(0, [&](TextOut& out) {
    JsonWriter json(out);
    json.document([&] {
      json.member<"format">("fingerturn-practice");
      json.member<"version">(1);
      json.member<"source">(analysed.name());
      json.member<"minutes">(plan.minutes);
      json.member<"rest_minutes">(plan.rest_minutes);
      json.member<"before_the_keys">(
          [&] { json.list(kBeforeTheKeys, [&](std::string_view line) { json.value(line); }); });
      json.member<"places">([&] {
        json.list(plan.places, "\n  ",
                  [&](const PlannedPlace& place) { add_place(json, analysed, place); });
      });
      json.member<"left_out">([&] {
        json.list(plan.left_out, [&](const PlannedPlace& place) {
          json.object([&] {
            json.member<"passage">(place.passage + 1);
            add_bars(json, place.stretch.bars);
            json.member<"points">(place.stretch.asks.points);
          });
        });
      });
      json.member<"settled">([&] { add_strings(json, plan.settled); });
      json.member<"caution">(caution());
    });
  });
}

}  // namespace fingerturn
