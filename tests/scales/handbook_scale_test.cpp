#include "catch.hpp"
#include "fingerturn/diagnostic.hpp"
#include "fingerturn/read.hpp"
#include "fingerturn/report.hpp"
#include "scales/made_scales.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace fingerturn {
namespace {

constexpr std::array<std::optional<Hand>, 3> kHandsOrBoth{Hand::right, Hand::left, std::nullopt};
constexpr std::array<ScaleDirection, 3> kDirections{ScaleDirection::up, ScaleDirection::down,
                                                    ScaleDirection::up_and_down};

std::size_t notes_in_octave(std::string_view name) {
  if (name.ends_with("chromatic")) return 12;
  if (name.ends_with("seventh arpeggio")) return 4;
  return name.ends_with("arpeggio") ? 3 : 7;
}

std::vector<int> keys_of(const Line& line) {
  std::vector<int> keys;
  for (const Event& event : line.events) keys.push_back(midi_number(event.notes.at(0).pitch));
  return keys;
}

/// Where the line turns from rising to falling; its last place where it only rises.
std::size_t turn_of(ScaleDirection direction, std::size_t steps) {
  return direction == ScaleDirection::down ? 0 : steps;
}

void check_keys(const std::vector<int>& keys, std::string_view name, const ScaleOptions& options) {
  const auto octaves = static_cast<std::size_t>(options.octaves);
  const std::size_t steps = notes_in_octave(name) * octaves;
  const bool both_ways = options.direction == ScaleDirection::up_and_down;
  REQUIRE(keys.size() == steps * (both_ways ? 2 : 1) + 1);
  const std::size_t turn = turn_of(options.direction, steps);
  for (std::size_t i = 1; i < keys.size(); ++i) {
    CHECK((i <= turn ? keys[i] > keys[i - 1] : keys[i] < keys[i - 1]));
  }
  const auto [lowest, highest] = std::minmax_element(keys.begin(), keys.end());
  CHECK(*highest - *lowest == 12 * options.octaves);
  CHECK(*lowest >= kLowestKey);
  CHECK(*highest <= kHighestKey);
}

void check_text(const std::string& text, const Score& score) {
  const Source source("scale.passage", text);
  const ReadResult read = read_notation(source);
  CHECK(render(source, read.diagnostics).empty());
  CHECK(read.score == score);
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = text.find('\n', begin);
    CHECK(end - begin <= 80);
    begin = end + 1;
  }
}

/// Whether the last bar is as long as the meter makes it.
bool last_bar_is_full(const Passage& passage, const Line& line) {
  const Meter& meter = passage.meters.at(0).value;
  std::optional<Fraction> length = Fraction{};
  for (const Event& event : line.events) {
    if (event.bar == line.events.back().bar) length = sum(*length, event.duration.value());
  }
  return length == reduced(meter.beats, meter.beat_type);
}

void check_scale(const std::string& name, const ScaleOptions& options) {
  const ScaleResult result = handbook_scale(name, options);
  INFO(name << ", " << options.octaves << " octaves\n" << write_passage(result.score));
  REQUIRE(result.problem.empty());
  REQUIRE(result.score.passages.size() == 1);
  const Passage& passage = result.score.passages.front();
  CHECK(passage.lines.size() == (options.hand ? 1 : 2));
  for (const Line& line : passage.lines) {
    check_keys(keys_of(line), name, options);
    CHECK(last_bar_is_full(passage, line));
  }
  check_text(write_passage(result.score), result.score);
}

}  // namespace

TEST_CASE("scales: every one reads back as it was written", "[fingering][scales]") {
  for (const std::string& name : handbook_scale_names()) {
    for (const std::optional<Hand> hand : kHandsOrBoth) {
      for (const ScaleDirection direction : kDirections) {
        for (int octaves = 1; octaves <= kMostScaleOctaves; ++octaves) {
          check_scale(name, {.hand = hand, .octaves = octaves, .direction = direction});
        }
      }
    }
  }
}

TEST_CASE("scales: both hands play what each plays, an octave apart", "[fingering][scales]") {
  for (const std::string& name : handbook_scale_names()) {
    const Passage both = scale_passage(name, {.octaves = 2});
    CHECK(both.lines.at(0) == scale_line(name, Hand::right, 2));
    CHECK(both.lines.at(1) == scale_line(name, Hand::left, 2));
    const std::vector<int> right = keys_of(both.lines.at(0));
    const std::vector<int> left = keys_of(both.lines.at(1));
    for (std::size_t i = 0; i < right.size(); ++i) CHECK(right[i] - left[i] == 12);
  }
}

TEST_CASE("scales: well-known ones, note by note", "[fingering][scales]") {
  struct Row {
    std::string_view name;
    Hand hand;
    int octaves;
    ScaleDirection direction;
    std::string_view notes;
  };
  // Source: C.-L. Hanon, The Virtuoso Pianist (1873), nos. 39 to 41, from memory; each row typed
  // out whole, apart from the table in the program.
  constexpr std::array<Row, 8> kRows{{
      {"C major", Hand::right, 2, ScaleDirection::up_and_down,
       "C4:1 D4:2 E4:3 F4:1 G4:2 A4:3 B4:4 C5:1 D5:2 E5:3 F5:1 G5:2 A5:3 B5:4 C6:5 "
       "B5:4 A5:3 G5:2 F5:1 E5:3 D5:2 C5:1 B4:4 A4:3 G4:2 F4:1 E4:3 D4:2 C4:1"},
      {"C major", Hand::left, 2, ScaleDirection::up,
       "C3:5 D3:4 E3:3 F3:2 G3:1 A3:3 B3:2 C4:1 D4:4 E4:3 F4:2 G4:1 A4:3 B4:2 C5:1"},
      {"B-flat major", Hand::left, 2, ScaleDirection::up_and_down,
       "Bb2:3 C3:2 D3:1 Eb3:4 F3:3 G3:2 A3:1 Bb3:3 C4:2 D4:1 Eb4:4 F4:3 G4:2 A4:1 Bb4:3 "
       "A4:1 G4:2 F4:3 Eb4:4 D4:1 C4:2 Bb3:3 A3:1 G3:2 F3:3 Eb3:4 D3:1 C3:2 Bb2:3"},
      {"F major", Hand::right, 1, ScaleDirection::up, "F4:1 G4:2 A4:3 Bb4:4 C5:1 D5:2 E5:3 F5:4"},
      {"B major", Hand::left, 1, ScaleDirection::down,
       "B3:1 A#3:2 G#3:3 F#3:4 E3:1 D#3:2 C#3:3 B2:4"},
      {"A melodic minor", Hand::right, 1, ScaleDirection::up_and_down,
       "A3:1 B3:2 C4:3 D4:1 E4:2 F#4:3 G#4:4 A4:5 G4:4 F4:3 E4:2 D4:1 C4:3 B3:2 A3:1"},
      {"C chromatic", Hand::right, 1, ScaleDirection::up,
       "C4:1 C#4:3 D4:1 D#4:3 E4:1 F4:2 F#4:3 G4:1 G#4:3 A4:1 A#4:3 B4:1 C5:2"},
      {"C major arpeggio", Hand::right, 2, ScaleDirection::up,
       "C4:1 E4:2 G4:3 C5:1 E5:2 G5:3 C6:5"},
  }};
  for (const Row& row : kRows) {
    std::string found;
    for (const Event& event : scale_line(row.name, row.hand, row.octaves, row.direction).events) {
      const Note& note = event.notes.at(0);
      found += fmt::format("{}{}:{}", found.empty() ? "" : " ", to_string(note.pitch),
                           note.finger.value());
    }
    CHECK(found == row.notes);
  }
}

TEST_CASE("scales: they begin where they are told to", "[fingering][scales]") {
  struct Start {
    ScaleOptions options;
    std::string_view first;
    std::string_view last;
  };
  const std::vector<Start> starts{
      {{.hand = Hand::right}, "Bb3", "Bb4"},
      {{.hand = Hand::left}, "Bb2", "Bb3"},
      {{.hand = Hand::left, .octaves = 4}, "Bb1", "Bb5"},
      {{.hand = Hand::right, .direction = ScaleDirection::down}, "Bb4", "Bb3"},
      {{.hand = Hand::left, .octaves = 2, .from = parse_pitch("Bb2")}, "Bb2", "Bb4"},
      {{.hand = Hand::left,
        .octaves = 2,
        .direction = ScaleDirection::down,
        .from = parse_pitch("Bb2")},
       "Bb2",
       "Bb0"},
      {{.octaves = 2, .from = parse_pitch("Bb4")}, "Bb4", "Bb6"},
  };
  for (const Start& start : starts) {
    const Line line = scale_passage("Bb major", start.options).lines.at(0);
    CHECK(to_string(line.events.front().notes.at(0).pitch) == start.first);
    CHECK(to_string(line.events.back().notes.at(0).pitch) == start.last);
  }
}

TEST_CASE("scales: what cannot be played is refused", "[fingering][scales]") {
  struct Refused {
    std::string_view name;
    ScaleOptions options;
    std::string_view problem;
  };
  const std::vector<Refused> refused{
      {"Bb major", {.from = parse_pitch("A#3")}, "B-flat major starts on B-flat, not on A#3"},
      {"Bb major", {.from = parse_pitch("B3")}, "B-flat major starts on B-flat, not on B3"},
      {"C major",
       {.hand = Hand::right, .octaves = 2, .from = parse_pitch("C7")},
       "C major over 2 octaves would need D8 in the right hand, above C8, the highest key of the "
       "piano"},
      {"A minor",
       {.from = parse_pitch("A0")},
       "A natural minor over 1 octave would need A-1 in the left hand, below A0, the lowest key of "
       "the piano"},
      {"C major",
       {.hand = Hand::left, .direction = ScaleDirection::down, .from = parse_pitch("C1")},
       "C major over 1 octave would need G0 in the left hand, below A0, the lowest key of the "
       "piano"},
      {"C major",
       {.from = parse_pitch("C0")},
       "C0 is not on the piano, whose keys go from A0 to C8"},
      {"C major",
       {.from = Pitch{Step::c, 0, 127}},
       "C127 is not on the piano, whose keys go from A0 to C8"},
      {"C major", {.octaves = 0}, "a scale has 1 to 4 octaves, not 0"},
      {"C major", {.octaves = 5}, "a scale has 1 to 4 octaves, not 5"},
  };
  for (const Refused& each : refused) {
    const ScaleResult result = handbook_scale(each.name, each.options);
    CHECK(result.problem == each.problem);
    CHECK(result.score.passages.empty());
  }
  CHECK(handbook_scale("A minor", {.hand = Hand::left, .from = parse_pitch("A0")}).ok());
  CHECK(handbook_scale("C minor", {.hand = Hand::right, .from = parse_pitch("C7")}).ok());
}

TEST_CASE("scales: titles and remarks", "[fingering][scales]") {
  const Passage passage = scale_passage("g# harmonic minor", {.hand = Hand::left, .octaves = 2});
  CHECK(passage.title == "G-sharp harmonic minor scale, left hand, 2 octaves");
  CHECK(passage.remarks ==
        std::vector<std::string>{
            "Fingers from memory after C.-L. Hanon, The Virtuoso Pianist (1873), no. 39.",
            "In the left hand other handbooks have 3213214, as in the natural minor (from "
            "memory)."});
  CHECK(scale_passage("A minor", {}).remarks ==
        std::vector<std::string>{"Fingers from memory after C.-L. Hanon, The Virtuoso Pianist "
                                 "(1873), no. 39, as the falling melodic minor."});
  CHECK(scale_passage("E major arpeggio", {.direction = ScaleDirection::down}).title ==
        "E major arpeggio, both hands, 1 octave, down");
  const Passage melodic =
      scale_passage("A melodic minor", {.direction = ScaleDirection::up_and_down});
  CHECK(melodic.title == "A melodic minor scale, both hands, 1 octave, up and down");
  CHECK(melodic.remarks.at(1) == "Falling, it has the notes and fingers of the natural minor.");
  // Rising it begins with 2, falling it ends with the 3 of the natural minor.
  CHECK(scale_passage("C# melodic minor", {}).remarks.size() == 1);
  for (const ScaleDirection falls : {ScaleDirection::down, ScaleDirection::up_and_down}) {
    CHECK(scale_passage("C# melodic minor", {.direction = falls}).remarks.at(2) ==
          "In the right hand other handbooks have 2 and 3 on the lowest two notes (from memory).");
    CHECK(scale_passage("Bb melodic minor", {.direction = falls}).remarks.size() == 3);
  }
  for (const std::string& name : handbook_scale_names()) {
    const std::string first = scale_passage(name, {}).remarks.at(0);
    CHECK(first.starts_with("Fingers from memory after "));
  }
}

}  // namespace fingerturn
