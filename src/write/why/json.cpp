#include "fingerturn/report.hpp"
#include "fingerturn/why.hpp"
#include "write/json/parts.hpp"

namespace fingerturn {
namespace {

void add_fingers(JsonWriter& json, const std::vector<Finger>& fingers) {
  json.list(fingers, [&](Finger finger) { json.value(int{finger}); });
}

void add_other(JsonWriter& json, const OtherFingers& other) {
  json.object([&] {
    json.member<"fingers">([&] { add_fingers(json, other.fingers); });
    json.member<"harder">([&] { json.exact(other.harder); });
    json.member<"terms">([&] {
      json.list(other.terms, [&](const TermDifference& term) {
        json.object([&] {
          json.member<"id">(std::string(term.id));
          json.member<"counts">(std::string(term.counts));
          json.member<"harder">([&] { json.exact(term.harder); });
        });
      });
    });
  });
}

void add_why(JsonWriter& json, const WhyFingers& why) {
  json.object([&] {
    json.member<"passage">(why.passage + 1);
    json.member<"title">(text_or_none(why.title));
    json.member<"hand">(to_string(why.hand));
    json.member<"bar">(why.bar);
    json.member<"beat">([&] { json.raw(why.beat); });
    json.member<"pitches">(
        [&] { json.list(why.pitches, [&](const Pitch& pitch) { json.value(to_string(pitch)); }); });
    json.member<"fingers">([&] { add_fingers(json, why.fingers); });
    json.member<"given">(why.all_given);
    json.member<"others">(
        [&] { json.list(why.others, [&](const OtherFingers& other) { add_other(json, other); }); });
  });
}

}  // namespace

std::string write_why_json(std::string_view source, const std::vector<WhyFingers>& all) {
  return text_of(0, [&](TextOut& out) {
    JsonWriter json(out);
    json.document([&] {
      json.member<"format">("fingerturn-why");
      json.member<"version">(1);
      json.member<"source">(source);
      json.member<"why">(
          [&] { json.list(all, [&](const WhyFingers& why) { add_why(json, why); }); });
      json.member<"caution">(caution());
    });
  });
}

}  // namespace fingerturn
