#include "fingerturn/check.hpp"
#include "fingerturn/report.hpp"
#include "write/json/parts.hpp"
#include "write/json/writer.hpp"

/// JSONL as docs/check.schema.json describes it.
namespace fingerturn {
namespace {

void add_counts(JsonWriter& json, const CheckCounts& counts) {
  json.member<"passages">(counts.passages);
  json.member<"events">(counts.events);
  json.member<"fingered">(counts.fingered);
  json.member<"preparatory">(counts.preparatory);
  json.member<"single">(counts.single_rotations);
  json.member<"double">(counts.double_rotations);
  json.member<"level">(counts.level_events);
  json.member<"undetermined">(counts.undetermined);
  json.member<"crossings">(counts.crossings);
  json.member<"watch">([&] { add_watch_counts(json, counts.watch); });
}

/// What follows a number of passages counts from 1.
std::optional<std::size_t> from_one(const std::optional<std::size_t>& place) {
  return place ? std::optional(*place + 1) : std::nullopt;
}

void add_finding(JsonWriter& json, const PlacedFinding& finding) {
  json.object([&] {
    json.member<"code">(Word{finding.code});
    json.member<"level">(Word{name_of(finding.level)});
    json.member<"passage">(from_one(finding.where.passage));
    add_hand_and_moment(json, finding.where);
    json.member<"line">(finding.place.line);
    json.member<"column">(finding.place.column);
    json.member<"message">(finding.message);
  });
}

constexpr std::string_view kForm = "fingerturn-check";

}  // namespace

std::string write_check_jsonl(const FileCheck& check) {
  const FileCounts& file = check.file;
  if (!file.ok()) return line_about(kForm, file.source, file.error, [](JsonWriter& /*json*/) {});
  return line_about(kForm, file.source, std::nullopt, [&](JsonWriter& json) {
    add_counts(json, file.counts);
    json.member<"told_by">(Word{check.placing == Placing::bar_and_beat ? "bar" : "line"});
    json.member<"titles">(
        [&] { json.list(check.titles, [&](const std::string& title) { json.value(title); }); });
    json.member<"findings">([&] {
      json.list(check.findings, [&](const PlacedFinding& found) { add_finding(json, found); });
    });
  });
}

std::string write_check_jsonl(const AllCounts& all) {
  return line_about(kForm, std::nullopt, std::nullopt, [&](JsonWriter& json) {
    json.member<"read">(all.read);
    json.member<"failed">(all.failed);
    add_counts(json, all.counts);
    json.member<"caution">(caution());
  });
}

}  // namespace fingerturn
