#include "fingerturn/find.hpp"
#include "fingerturn/report.hpp"
#include "text/numbers.hpp"
#include "write/json/parts.hpp"
#include "write/json/writer.hpp"

#include <numeric>
#include <vector>

/// JSONL as docs/find.schema.json describes it.
namespace fingerturn {
namespace {

constexpr std::string_view kFindForm = "fingerturn-find";

std::string place_json(const AnalysedScore& score, const FoundPlace& place) {
  const AnalysedLine line = score[place.passage][place.line];
  return line_about(kFindForm, score.name(), std::nullopt, [&](JsonWriter& json) {
    json.member<"passage">(place.passage + 1);
    add_hand_and_moment(json, place.where);
    json.member<"last_bar">(line[place.first + place.count - 1].written.bar);
    json.member<"line">(place.place ? std::optional(place.place->line) : std::nullopt);
    json.member<"column">(place.place ? std::optional(place.place->column) : std::nullopt);
    json.member<"events">([&] {
      std::vector<std::size_t> numbers(place.count);
      std::iota(numbers.begin(), numbers.end(), place.first);
      json.list(numbers, [&](std::size_t number) { add_played(json, line, line[number]); });
    });
  });
}

}  // namespace

std::string write_found_jsonl(const AnalysedScore& score, std::span<const FoundPlace> places) {
  std::string lines;
  for (const FoundPlace& place : places) lines += place_json(score, place);
  return lines;
}

std::string write_found_jsonl(const FoundCounts& failed) {
  return line_about(kFindForm, failed.source, failed.error, [](JsonWriter& /*json*/) {});
}

std::string write_found_jsonl(const AllFound& all) {
  return line_about(kFindForm, std::nullopt, std::nullopt, [&](JsonWriter& json) {
    json.member<"read">(all.read);
    json.member<"failed">(all.failed);
    json.member<"with_places">(all.with_places);
    json.member<"places">(all.places);
    json.member<"found">(all.found);
    json.member<"events">(all.events);
    json.member<"caution">(caution());
  });
}

}  // namespace fingerturn
