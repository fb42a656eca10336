#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"
#include "write/json/json_reading.hpp"
#include "write/json/writer.hpp"
#include "write/random_score.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// The JSON reports, taken apart again and compared with the score and its analysis.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

Score score_of(const std::string& text) {
  const Source source("test.passage", text);
  ReadResult result = read_notation(source);
  REQUIRE(render(source, result.diagnostics) == "");
  return std::move(result.score);
}

Json json_of(const Score& score) {
  return parsed_json(write_json(AnalysedScore("test.passage", score)));
}

std::string keys_of(const Json& object) {
  std::string keys;
  for (const auto& item : object.items()) keys += item.key() + " ";
  return keys;
}

Json text_or_null(const std::string& text) { return text.empty() ? Json() : Json(text); }

Json fraction_or_null(const std::optional<Fraction>& fraction) {
  return fraction ? Json(to_string(*fraction)) : Json();
}

void check_note(const Json& json, const Line& line, std::size_t event, const Note& note) {
  const std::vector<Finger> fingers = fingers_on_key(line, event, note);
  CHECK(json["pitch"] == to_string(note.pitch));
  CHECK(json["midi"] == midi_number(note.pitch));
  const bool black = key_colour(midi_number(note.pitch)) == KeyColour::black;
  CHECK(json["key"] == (black ? "black" : "white"));
  CHECK(json["finger"] == (fingers.empty() ? Json() : Json(fingers.front())));
  Json changes = Json::array();
  for (std::size_t i = 1; i < fingers.size(); ++i) changes.push_back(fingers[i]);
  CHECK(json["changes_to"] == changes);
  CHECK(json["suggested"] == note.suggested);
}

void check_notes(const Json& json, const Line& line, std::size_t event) {
  std::size_t struck = 0;
  for (const Note& note : line.events[event].notes) {
    if (!note.held) check_note(json.at(struck++), line, event, note);
  }
  CHECK(json.size() == struck);
}

void check_directions(const Json& json, Hand hand, const EventAnalysis& found) {
  const Json none;
  CHECK(json["side"] == (found.side ? Json(name_of(*found.side)) : none));
  CHECK(json["play"] == (found.side ? Json(name_of(direction_of(hand, *found.side))) : none));
  CHECK(json["forearm"] == (found.side ? Json(forearm_of(*found.side)) : none));
  CHECK(json["prepare"] == (found.prepare ? Json(name_of(*found.prepare)) : none));
}

/// Numbers are written to two decimals.
void check_number(const Json& json, std::optional<double> number) {
  REQUIRE(json.is_null() == !number.has_value());
  if (number) CHECK(std::abs(json.get<double>() - *number) <= 0.005 + 1e-9 * *number);
}

void check_arm(const Json& json, const EventAnalysis& found) {
  CHECK(json["carry"] == (found.carry ? Json(*found.carry) : Json()));
  CHECK(json["depth"] == (found.depth ? Json(*found.depth) : Json()));
  CHECK(json["arc"] == found.arc);
  check_number(json["swing_rate"], found.swing_rate);
}

void check_event(const Json& json, const Line& line, const EventAnalysis& found) {
  const Event& event = line.events[found.event];
  CHECK(json["index"] == found.index);
  CHECK(json["bar"] == event.bar);
  CHECK(json["onset"] == fraction_or_null(event.onset));
  CHECK(json["duration"] == fraction_or_null(event.duration));
  CHECK(json["grace"] == event.grace);
  check_notes(json["notes"], line, found.event);
  CHECK(json["rotation"] == name_of(found.rotation));
  check_directions(json, line.hand, found);
  CHECK(json["swings"] == (found.swings ? Json(*found.swings) : Json()));
  const bool crosses = found.crossing != Crossing::none;
  CHECK(json["crossing"] == (crosses ? Json(name_of(found.crossing)) : Json()));
  check_arm(json, found);
  CHECK(json["rule"] == found.rule);
  CHECK(json["basis"] == name_of(found.basis));
  CHECK(json["reason"] == reason_of(found, line.hand));
}

void check_totals(const Json& json, const Totals& totals) {
  CHECK(json["events"] == totals.events);
  CHECK(json["preparatory"] == totals.preparatory);
  CHECK(json["single"] == totals.single_rotations);
  CHECK(json["double"] == totals.double_rotations);
  CHECK(json["level"] == totals.level_events);
  CHECK(json["undetermined"] == totals.undetermined);
  CHECK(json["swings"] == totals.swings);
  CHECK(json["crossings"] == totals.crossings);
  CHECK(json["longest_double_run"] == totals.longest_double_run);
  CHECK(json["carried"] == totals.carried);
  CHECK(json["largest_carry"] == totals.largest_carry);
  CHECK(json["moves_in"] == totals.moves_in);
  CHECK(json["moves_out"] == totals.moves_out);
  CHECK(json["arcs"] == totals.arcs);
  check_number(json["full_swing_tempo"], totals.full_swing_tempo);
}

void check_watch(const Json& json, const Line& line, const LineAnalysis& found) {
  REQUIRE(json.size() == found.watch.size());
  for (std::size_t i = 0; i < found.watch.size(); ++i) {
    CHECK(json[i]["code"] == found.watch[i].rule);
    CHECK(json[i]["level"] == name_of(found.watch[i].level));
    CHECK(json[i]["bar"] == line.events[found.watch[i].event].bar);
    CHECK(json[i]["event"] == found.watch[i].index);
    CHECK(json[i]["message"] == found.watch[i].message);
    CHECK(json[i]["source"] == find_rule(found.watch[i].rule)->sources);
  }
}

void check_together(const Json& json, const Passage& passage, const PassageAnalysis& found) {
  REQUIRE(json.is_null() == !found.together.has_value());
  if (!found.together) return;
  CHECK(json["onsets"] == found.together->onsets);
  CHECK(json["parallel"] == found.together->parallel);
  CHECK(json["contrary"] == found.together->contrary);
  REQUIRE(json["kinds_differ"].size() == found.together->kinds_differ.size());
  for (std::size_t i = 0; i < found.together->kinds_differ.size(); ++i) {
    const KindsDiffer& place = found.together->kinds_differ[i];
    const Event& event = passage.lines[0].events[place.right_event];
    CHECK(json["kinds_differ"][i]["bar"] == event.bar);
    CHECK(json["kinds_differ"][i]["onset"] == to_string(*event.onset));
    CHECK(json["kinds_differ"][i]["right"] == name_of(place.right));
    CHECK(json["kinds_differ"][i]["left"] == name_of(place.left));
  }
}

void check_hand(const Json& json, const Line& line, const LineAnalysis& found) {
  CHECK(json["hand"] == to_string(line.hand));
  REQUIRE(json["events"].size() == found.events.size());
  for (std::size_t i = 0; i < found.events.size(); ++i) {
    check_event(json["events"][i], line, found.events[i]);
  }
  check_totals(json["totals"], found.totals);
  CHECK(json["difficulty"].is_null() == !found.difficulty);
  check_watch(json["watch"], line, found);
}

void check_passage(const Json& json, const Passage& passage, const PassageAnalysis& found) {
  CHECK(json["title"] == text_or_null(passage.title));
  CHECK(json["composer"] == text_or_null(passage.composer));
  const auto& meters = passage.meters;
  CHECK(json["meter"] == (meters.empty() ? Json() : Json(to_string(meters[0].value))));
  const auto& tempos = passage.tempos;
  CHECK(json["tempo"] == (tempos.empty() ? Json() : Json(tempos[0].value.quarters_per_minute())));
  CHECK(json["reach"] == (passage.reach_semitones ? Json(*passage.reach_semitones) : Json()));
  check_number(json["full_swing_tempo"], found.full_swing_tempo);
  check_together(json["together"], passage, found);
  REQUIRE(json["hands"].size() == passage.lines.size());
  for (std::size_t i = 0; i < passage.lines.size(); ++i) {
    check_hand(json["hands"][i], passage.lines[i], found.lines[i]);
  }
}

void check_document(const Json& json, const Score& score) {
  const Analysis analysis = analyse(score);
  CHECK(json["format"] == "fingerturn-analysis");
  CHECK(json["version"] == 1);
  CHECK(json["caution"] == caution());
  REQUIRE(json["passages"].size() == score.passages.size());
  for (std::size_t i = 0; i < score.passages.size(); ++i) {
    check_passage(json["passages"][i], score.passages[i], analysis.passages[i]);
  }
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = text.find('\n', begin);
    REQUIRE(end != std::string::npos);
    lines.push_back(text.substr(begin, end - begin));
    begin = end + 1;
  }
  return lines;
}

Score score_with_title(const std::string& title) {
  Score score = score_of("C4:1 D:2");
  score.passages[0].title = title;
  score.passages[0].composer = title;
  return score;
}

}  // namespace

TEST_CASE("the JSON report says what the score and the analysis say") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    const Score score = random_score(seed);
    check_document(json_of(score), score);
  }
}

TEST_CASE("a hand's difficulty stands in JSON where it was asked for, rounded to two decimals") {
  const Score score = score_of("RH: C5:1 D:2\nLH: C3:5 D");
  const AnalysedScore plain("test.passage", score);
  const auto hands = [](const AnalysedScore& analysed) {
    return parsed_json(write_json(analysed))["passages"][0]["hands"];
  };
  CHECK(hands(plain)[0]["difficulty"].is_null());
  const Json difficult = hands(with_difficulties(plain));
  check_number(difficult[0]["difficulty"], difficulty_of(score.passages[0].lines[0]));
  const double hundredths = difficult[0]["difficulty"].get<double>() * 100;
  CHECK(std::abs(hundredths - std::round(hundredths)) < 1e-6);
  CHECK(difficult[1]["difficulty"].is_null());
}

TEST_CASE("the keys of the JSON report stand in one order") {
  const Json json = json_of(score_of("tempo: 60\n1/8 C4:1 D:2"));
  CHECK(keys_of(json) == "format version source caution passages ");
  const Json& passage = json["passages"][0];
  CHECK(keys_of(passage) ==
        "title composer meter tempo reach full_swing_tempo remarks hands together ");
  const Json& hand = passage["hands"][0];
  CHECK(keys_of(hand) == "hand events totals difficulty watch ");
  CHECK(keys_of(hand["events"][0]) ==
        "index bar beat onset duration grace rolled ornament notes held rotation side play change "
        "prepare "
        "forearm swings swing_rate swing_size crossing carry depth arc rule basis reason ");
  CHECK(keys_of(hand["events"][0]["notes"][0]) ==
        "pitch midi key finger changes_to alternatives suggested ");
  CHECK(keys_of(hand["totals"]) ==
        "events preparatory single double level undetermined swings crossings longest_double_run "
        "carried largest_carry moves_in moves_out arcs full_swing_tempo least_swing_size ");
}

TEST_CASE("JSON lines hold a document for each passage") {
  for (std::uint64_t seed = 1; seed <= 30; ++seed) {
    CAPTURE(seed);
    const Score score = random_score(seed);
    const AnalysedScore report("test.passage", score);
    const Json whole = parsed_json(write_json(report));
    const std::vector<std::string> lines = lines_of(write_jsonl(report));
    REQUIRE(lines.size() == score.passages.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
      Json expected = whole;
      expected["passages"] = Json::array({whole["passages"][i]});
      CHECK(parsed_json(lines[i]).dump() == expected.dump());
    }
  }
}

TEST_CASE("JSON that is handed on while it is made is the same") {
  const AnalysedScore analysed("test.passage", random_score(7));
  const auto handed_on = [&](void (*write)(const AnalysedScore&, const TextSink&)) {
    std::string text;
    write(analysed, [&](std::string_view piece) { text += piece; });
    return text;
  };
  CHECK(handed_on(write_json) == write_json(analysed));
  CHECK(handed_on(write_jsonl) == write_jsonl(analysed));
}

TEST_CASE("only the chosen bars of a report are written") {
  const Score score = score_of("1/4 C4:1 D:2 | E:3 F:4 | G:5 F:4");
  const AnalysedScore bar = only_bars(AnalysedScore("test.passage", score), {2, 2});
  const Json json = parsed_json(write_json(bar));
  const Json& events = json["passages"][0]["hands"][0]["events"];
  REQUIRE(events.size() == 2);
  CHECK(events[0]["bar"] == 2);
  CHECK(events[0]["index"] == 2);
  CHECK(events[0]["onset"] == "1/2");
  CHECK(json["passages"][0]["hands"][0]["totals"]["events"] == 2);
}

TEST_CASE("a report of nothing is a document all the same") {
  CHECK(json_of({})["passages"].empty());
  CHECK(write_jsonl(AnalysedScore("test.passage", Score{})).empty());
  Score score;
  score.passages.emplace_back();
  CHECK(json_of(score)["passages"][0]["hands"].empty());
}

TEST_CASE("any title makes valid JSON and comes back as it was") {
  const std::string title =
      GENERATE(as<std::string>{}, "\"quotes\" and \\ backslashes", "a\nb\rc\td", "\x1B[31m",
               "\x01\x1F\x7F", std::string("a\0b", 3), "</script>", "\u2028\u2029", "\U0001D12A");
  const Score score = score_with_title(title);
  const Json json = json_of(score);
  CHECK(json["passages"][0]["title"] == title);
  CHECK(json["passages"][0]["composer"] == title);
}

TEST_CASE("bytes of a title that are not UTF-8 are replaced") {
  const std::string title = GENERATE("a\xFFz", "a\xC3z", "a\xED\xA0\x80z", "a\xF0\x9D\x84z");
  CAPTURE(title);
  const Json json = json_of(score_with_title(title));
  const std::string written = json["passages"][0]["title"];
  CHECK(written.starts_with("a\uFFFD"));
  CHECK(written.ends_with("z"));
}

TEST_CASE("any name of a source makes valid JSON") {
  const Score score = score_of("C4:1 D:2");
  const Json json = parsed_json(write_json(AnalysedScore("a \"b\"\n\\c\xFF", score)));
  CHECK(json["source"] == "a \"b\"\n\\c\uFFFD");
}

TEST_CASE("the tempo and reach that were asked for stand in the report") {
  const Score score = score_of("tempo: 60\nreach: 12\n1/8 C4:1 D:2");
  const AnalysedScore asked("test.passage", score,
                            {.reach_semitones = 15, .quarters_per_minute = 80.5});
  const Json passage = parsed_json(write_json(asked))["passages"][0];
  CHECK(passage["tempo"] == 80.5);
  CHECK(passage["reach"] == 15);
}

TEST_CASE("numbers are written to two decimals and never as other than numbers") {
  const std::vector<std::pair<double, std::string>> cases{
      {0, "0.0"},
      {1, "1.0"},
      {-3, "-3.0"},
      {0.25, "0.25"},
      {-0.5, "-0.5"},
      {12.8, "12.8"},
      {0.005, "0.01"},
      {-0.004, "0.0"},
      {99.999, "100.0"},
      {1e15, "1e+15"},
      {std::numeric_limits<double>::quiet_NaN(), "null"},
      {std::numeric_limits<double>::infinity(), "null"}};
  for (const auto& [number, text] : cases) {
    CHECK(text_of(0, [number = number](TextOut& out) { JsonWriter(out).value(number); }) ==
          text + std::string(","));
  }
}

TEST_CASE("a tempo that is no number is no tempo") {
  Score score = score_of("C4:1 D:2");
  score.passages[0].tempos = {{1, {{1, 4}, std::numeric_limits<double>::quiet_NaN()}}};
  CHECK(json_of(score)["passages"][0]["tempo"].is_null());
}

TEST_CASE("the lines of a JSON report are one for each event and few others") {
  const Score score = score_of("1/4 C4:1 D:2 E:3");
  const AnalysedScore analysed("test.passage", score);
  const std::vector<std::string> lines = lines_of(write_json(analysed));
  const auto events = std::count_if(lines.begin(), lines.end(), [](const std::string& line) {
    return line.find("\"index\":") != std::string::npos;
  });
  CHECK(events == 3);
  for (const std::string& line : lines) CHECK(line.find_last_not_of(' ') + 1 == line.size());
}
