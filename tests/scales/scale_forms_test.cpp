#include "catch.hpp"
#include "fingerturn/analysis.hpp"
#include "fingerturn/diagnostic.hpp"
#include "fingerturn/read.hpp"
#include "fingerturn/report.hpp"
#include "hand/spans.hpp"
#include "scales/made_scales.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

/// Inversions, contrary motion, hands apart and double notes. Source of what is held: the rules
/// that docs/fingering.md states for them.
namespace fingerturn {
namespace {

constexpr std::array<Hand, 2> kTwoHands{Hand::right, Hand::left};
constexpr std::array<ScaleDirection, 3> kWays{ScaleDirection::up, ScaleDirection::down,
                                              ScaleDirection::up_and_down};
constexpr int kOctaveKeys = 12;

/// All forms that a name has, but for the direction and the octaves.
std::vector<ScaleOptions> forms_of(std::string_view name) {
  std::vector<ScaleOptions> forms{{.contrary = true}, {.notes = ScaleNotes::octaves}};
  for (const Hand hand : kTwoHands) forms.push_back({.hand = hand, .notes = ScaleNotes::octaves});
  forms.push_back({.contrary = true, .notes = ScaleNotes::octaves});
  if (is_of_arpeggio(name)) {
    for (const int inversion : {1, 2, 3}) {
      if (inversion == 3 && !is_of_seventh(name)) continue;
      forms.push_back({.inversion = inversion});
      forms.push_back({.hand = Hand::left, .inversion = inversion});
      forms.push_back({.inversion = inversion, .contrary = true});
      forms.push_back({.inversion = inversion, .notes = ScaleNotes::octaves});
    }
    return forms;
  }
  for (const HandsApart apart : {HandsApart::third, HandsApart::sixth, HandsApart::tenth}) {
    forms.push_back({.apart = apart});
  }
  forms.push_back({.notes = ScaleNotes::thirds});
  for (const Hand hand : kTwoHands) forms.push_back({.hand = hand, .notes = ScaleNotes::thirds});
  forms.push_back({.contrary = true, .notes = ScaleNotes::thirds});
  for (const Hand hand : kTwoHands) forms.push_back({.hand = hand, .notes = ScaleNotes::sixths});
  forms.push_back({.contrary = true, .notes = ScaleNotes::sixths});
  return forms;
}

/// Whether a piano has the keys for a form in some register, whatever the keynote.
bool always_has_room(const ScaleOptions& options) {
  const bool doubles = options.notes != ScaleNotes::single;
  if (options.contrary) return options.octaves <= (doubles ? 2 : 3);
  return options.octaves < kMostScaleOctaves || options.hand || !doubles;
}

/// All lines but the title, which is one line however long it is.
bool keeps_to_columns(std::string_view text) {
  for (std::size_t begin = text.find('\n') + 1; begin < text.size();) {
    const std::size_t end = text.find('\n', begin);
    if (end - begin > 80) return false;
    begin = end + 1;
  }
  return true;
}

void check_reads_back(const Score& score) {
  const std::string text = write_passage(score);
  const Source source("scale.passage", text);
  const ReadResult read = read_notation(source);
  INFO(text);
  CHECK(render(source, read.diagnostics).empty());
  CHECK(read.score == score);
  CHECK(keeps_to_columns(text));
}

/// Notes together have fingers that rise from the thumb's side, within reach of each other.
void check_chord(const Event& event, Hand hand) {
  static const SpanTable kSpans(std::nullopt);
  const Note& near = toward_thumb(event, hand);
  const Note& far = toward_fifth_finger(event, hand);
  CHECK(near.finger < far.finger);
  CHECK(kSpans.is_practical(near.finger.value(), far.finger.value(),
                            key_at(event, 1) - key_at(event, 0)));
}

void check_form(const std::string& name, const ScaleOptions& options) {
  const ScaleResult result = handbook_scale(name, options);
  INFO(name << ": " << result.problem);
  CHECK((result.ok() || !always_has_room(options)));
  if (!result.ok()) {
    CHECK(result.problem.ends_with(" key of the piano"));
    return;
  }
  const std::size_t notes_together = options.notes == ScaleNotes::single ? 1 : 2;
  const Passage& passage = result.score.passages.front();
  CHECK(passage.lines.size() == (options.hand ? 1 : 2));
  for (const Line& line : passage.lines) {
    CHECK(line.is_fingered());
    for (const Event& event : line.events) {
      REQUIRE(event.notes.size() == notes_together);
      if (notes_together == 2) check_chord(event, line.hand);
    }
  }
  check_reads_back(result.score);
}

/// For each form of each name in each hand by itself, over so many octaves upward.
template <typename Check>
void for_lines(const ScaleOptions& options, bool (*takes)(std::string_view), const Check& check) {
  for (const std::string& name : handbook_scale_names()) {
    if (!takes(name)) continue;
    for (const Hand hand : kTwoHands) {
      ScaleOptions one_hand = options;
      one_hand.hand = hand;
      const Line line = scale_passage(name, one_hand).lines.at(0);
      INFO(name << ": " << words_of_line(line));
      check(line);
    }
  }
}

}  // namespace

TEST_CASE("scale forms: every one has a finger for each note and reads back", "[scales]") {
  for (const std::string& name : handbook_scale_names()) {
    for (ScaleOptions form : forms_of(name)) {
      for (form.octaves = 1; form.octaves <= kMostScaleOctaves; ++form.octaves) {
        for (const ScaleDirection way : kWays) {
          form.direction = way;
          check_form(name, form);
        }
      }
    }
  }
}

TEST_CASE("scale forms: none draws a caution or a strain", "[scales]") {
  std::size_t passages = 0;
  for (const std::string& name : handbook_scale_names()) {
    for (ScaleOptions form : forms_of(name)) {
      form.octaves = 2;
      form.direction = ScaleDirection::up_and_down;
      const Analysis analysis = analyse(handbook_scale(name, form).score);
      REQUIRE(analysis.passages.size() == 1);
      ++passages;
      for (const LineAnalysis& line : analysis.passages.front().lines) {
        for (const Finding& finding : line.watch) {
          INFO(name << ": " << finding.message);
          CHECK(finding.level == WatchLevel::info);
        }
      }
    }
  }
  CHECK(passages > 5 * handbook_scale_names().size());
}

TEST_CASE("scale forms: what makes no sense is refused", "[scales]") {
  struct Refused {
    std::string_view name;
    ScaleOptions options;
    std::string_view problem;
  };
  const std::vector<Refused> refused{
      {"C major", {.inversion = 1}, "only arpeggios have inversions, not the C major scale"},
      {"C major arpeggio", {.inversion = 3}, "C major arpeggio has inversions 1 to 2, not 3"},
      {"G dominant seventh",
       {.inversion = -1},
       "G dominant seventh arpeggio has inversions 1 to 3, not -1"},
      {"C major arpeggio",
       {.from = parse_pitch("C4"), .inversion = 1},
       "C major arpeggio, first inversion starts on E, not on C4"},
      {"C major",
       {.from = parse_pitch("E4"), .apart = HandsApart::third},
       "C major starts on C, not on E4"},
      {"C major",
       {.hand = Hand::left, .contrary = true},
       "contrary motion takes both hands, not the left one alone"},
      {"C major",
       {.hand = Hand::right, .apart = HandsApart::sixth},
       "a scale with the hands apart takes both hands, not the right one alone"},
      {"C major",
       {.contrary = true, .apart = HandsApart::third},
       "hands in contrary motion stay in no thirds, sixths or tenths"},
      {"C major",
       {.apart = HandsApart::third, .notes = ScaleNotes::thirds},
       "hands in thirds, sixths or tenths play single notes, not double ones"},
      {"C major arpeggio",
       {.apart = HandsApart::third},
       "only scales have hands in thirds, sixths or tenths, not the C major arpeggio"},
      {"C major arpeggio",
       {.notes = ScaleNotes::thirds},
       "only scales go in thirds, not the C major arpeggio"},
      {"C major arpeggio",
       {.notes = ScaleNotes::sixths},
       "only scales go in sixths, not the C major arpeggio"},
      {"C major",
       {.octaves = 4, .contrary = true},
       "C major over 4 octaves would need G0 in the left hand, below A0, the lowest key of the "
       "piano"},
      {"A major",
       {.octaves = 3, .from = parse_pitch("A0"), .contrary = true, .notes = ScaleNotes::octaves},
       "A major over 3 octaves would need A-1 in the left hand, below A0, the lowest key of the "
       "piano"},
      {"C major arpeggio",
       {.octaves = 4, .from = parse_pitch("E1"), .inversion = 1, .contrary = true},
       "C major arpeggio, first inversion over 4 octaves would need G0 in the left hand, below A0, "
       "the lowest key of the piano"},
      {"C major",
       {.from = parse_pitch("C8"), .notes = ScaleNotes::thirds},
       "C major over 1 octave would need E8 in the right hand, above C8, the highest key of the "
       "piano"},
  };
  for (const Refused& each : refused) {
    const ScaleResult result = handbook_scale(each.name, each.options);
    CHECK(result.problem == each.problem);
    CHECK_FALSE(result.is_unknown);
    CHECK(result.score.passages.empty());
  }
}

TEST_CASE("scale forms: they begin where they are told to", "[scales]") {
  struct Start {
    ScaleOptions options;
    std::string_view right;
    std::string_view left;
  };
  const std::vector<Start> starts{
      {{.from = parse_pitch("C4"), .contrary = true}, "C4", "C4"},
      {{.octaves = 2,
        .direction = ScaleDirection::down,
        .from = parse_pitch("C6"),
        .contrary = true},
       "C6",
       "C2"},
      {{.from = parse_pitch("C3"), .apart = HandsApart::third}, "E3", "C3"},
      {{.from = parse_pitch("C3"), .apart = HandsApart::tenth}, "E4", "C3"},
      {{.from = parse_pitch("C4"), .apart = HandsApart::sixth}, "C4", "E3"},
      {{.direction = ScaleDirection::down, .from = parse_pitch("C4"), .apart = HandsApart::sixth},
       "C4",
       "E3"},
      {{.from = parse_pitch("C4"), .notes = ScaleNotes::octaves}, "C4", "C2"},
      {{.from = parse_pitch("C4"), .notes = ScaleNotes::thirds}, "C4", "C3"},
  };
  for (const Start& start : starts) {
    const Passage passage = scale_passage("C major", start.options);
    CHECK(to_string(passage.lines.at(0).events.front().notes.at(0).pitch) == start.right);
    CHECK(to_string(passage.lines.at(1).events.front().notes.at(0).pitch) == start.left);
  }
  const Passage alone = scale_passage(
      "C major", {.hand = Hand::left, .from = parse_pitch("C2"), .notes = ScaleNotes::octaves});
  CHECK(to_string(alone.lines.at(0).events.front().notes.at(0).pitch) == "C2");
}

TEST_CASE("inversions: well-known ones, note by note", "[scales]") {
  struct Row {
    std::string_view name;
    Hand hand;
    int inversion;
    std::string_view notes;
  };
  // Source: common practice, no source; each row typed out whole.
  constexpr std::array<Row, 8> kRows{{
      {"C major arpeggio", Hand::right, 1, "E4:1 G4:2 C5:4 E5:5"},
      {"C major arpeggio", Hand::right, 2, "G3:1 C4:2 E4:4 G4:5"},
      {"C major arpeggio", Hand::left, 1, "E3:5 G3:4 C4:2 E4:1"},
      {"C major arpeggio", Hand::left, 2, "G2:5 C3:3 E3:2 G3:1"},
      {"D major arpeggio", Hand::left, 2, "A2:5 D3:3 F#3:2 A3:1"},
      {"A-flat major arpeggio", Hand::right, 1, "C4:1 Eb4:2 Ab4:4 C5:5"},
      {"G dominant seventh", Hand::right, 1, "B3:1 D4:2 F4:3 G4:4 B4:5"},
      {"C dominant seventh", Hand::left, 3, "Bb2:4 C3:3 E3:2 G3:1 Bb3:4"},
  }};
  for (const Row& row : kRows) {
    const Passage passage = scale_passage(row.name, {.hand = row.hand, .inversion = row.inversion});
    CHECK(words_of_line(passage.lines.at(0)) == row.notes);
  }
}

TEST_CASE("inversions: the thumb is on white keys, once an octave, and the fingers rise from it",
          "[scales]") {
  for (const int inversion : {1, 2, 3}) {
    const auto takes = inversion == 3 ? is_of_seventh : is_of_arpeggio;
    for_lines({.octaves = 3, .inversion = inversion}, takes, [](const Line& line) {
      const std::vector<Event> events = outward(line);
      const bool all_black = std::ranges::all_of(
          events, [](const Event& event) { return on_black(event.notes.front()); });
      int thumbs = 0;
      for (std::size_t i = 0; i < events.size(); ++i) {
        const Note& note = events[i].notes.front();
        if (note.finger == kThumb) ++thumbs;
        CHECK((note.finger != kThumb || !on_black(note) || all_black));
        CHECK((note.finger != kFifth || i + 1 == events.size()));
        if (i > 0 && note.finger != kThumb) CHECK(note.finger > events[i - 1].notes.front().finger);
      }
      CHECK(thumbs == 3);
    });
  }
}

TEST_CASE("inversions: with the thumb where root position has it all fingers are the same",
          "[scales]") {
  for (const std::string_view name : {"D major arpeggio", "E major arpeggio", "A major arpeggio"}) {
    const std::string root = fingers_in_order(scale_line(name, Hand::left, 3));
    const Passage inverted =
        scale_passage(name, {.hand = Hand::left, .octaves = 2, .inversion = 1});
    CHECK(fingers_in_order(inverted.lines.at(0)) == root.substr(4, 6) + root[4]);
  }
}

TEST_CASE("contrary motion: from one key apart, each hand as it plays alone", "[scales]") {
  for (const std::string& name : handbook_scale_names()) {
    const Passage passage = scale_passage(
        name, {.octaves = 2, .direction = ScaleDirection::up_and_down, .contrary = true});
    const Line& right = passage.lines.at(0);
    const Line& left = passage.lines.at(1);
    INFO(name << ": " << words_of_line(left));
    CHECK(right == scale_line(name, Hand::right, 2, ScaleDirection::up_and_down));
    const int start = key_at(right.events.front());
    REQUIRE(left.events.size() == right.events.size());
    CHECK(key_at(left.events.front()) == start);
    CHECK(key_at(left.events.back()) == start);
    const Line falling = scale_line(name, Hand::left, 2, ScaleDirection::down);
    const std::string fingers = fingers_in_order(left);
    // The last of them is the first of the way back, which may have another finger.
    const std::size_t way = falling.events.size() - 1;
    CHECK(fingers.substr(0, way) == fingers_in_order(falling).substr(0, way));
    CHECK(key_at(left.events.at(way)) == start - 2 * kOctaveKeys);
  }
}

TEST_CASE("contrary motion: inward it is the way back", "[scales]") {
  const Passage inward =
      scale_passage("Eb major", {.direction = ScaleDirection::down, .contrary = true});
  CHECK(inward.title == "E-flat major scale, both hands in contrary motion, 1 octave, inward");
  CHECK(words_of_line(inward.lines.at(0)) == "Eb5:3 D5:2 C5:1 Bb4:4 Ab4:3 G4:2 F4:1 Eb4:3");
  CHECK(words_of_line(inward.lines.at(1)) == "Eb3:3 F3:2 G3:1 Ab3:4 Bb3:3 C4:2 D4:1 Eb4:3");
}

TEST_CASE("hands apart: so many degrees all the way, the keynote in one hand", "[scales]") {
  struct Distance {
    HandsApart apart;
    int letters;
    int semitones_in_chromatic;
    std::size_t hand_on_keynote;
  };
  constexpr std::array<Distance, 3> kDistances{
      {{HandsApart::third, 2, 3, 1}, {HandsApart::sixth, 5, 9, 0}, {HandsApart::tenth, 9, 15, 1}}};
  for (const std::string& name : handbook_scale_names()) {
    if (is_of_arpeggio(name)) continue;
    for (const Distance& distance : kDistances) {
      const Passage passage = scale_passage(
          name, {.octaves = 2, .direction = ScaleDirection::up_and_down, .apart = distance.apart});
      const Line& right = passage.lines.at(0);
      const Line& left = passage.lines.at(1);
      INFO(name << ": " << words_of_line(right) << "\n" << words_of_line(left));
      REQUIRE(right.events.size() == left.events.size());
      for (std::size_t i = 0; i < right.events.size(); ++i) {
        const Pitch high = right.events[i].notes.at(0).pitch;
        const Pitch low = left.events[i].notes.at(0).pitch;
        CHECK((is_chromatic(name)
                   ? midi_number(high) - midi_number(low) == distance.semitones_in_chromatic
                   : letter_position(high) - letter_position(low) == distance.letters));
      }
      const Pitch keynote =
          passage.lines.at(distance.hand_on_keynote).events.front().notes.at(0).pitch;
      const Pitch plain = scale_line(name, Hand::right, 1).events.front().notes.at(0).pitch;
      CHECK(keynote.step == plain.step);
      CHECK(keynote.alter == plain.alter);
    }
  }
}

TEST_CASE("hands apart: each note has its finger from the keynote, but where it closes",
          "[scales]") {
  for (const std::string& name : handbook_scale_names()) {
    if (is_of_arpeggio(name) || is_chromatic(name)) continue;
    for (const Hand hand : kTwoHands) {
      const HandsApart apart = hand == Hand::right ? HandsApart::third : HandsApart::sixth;
      const Passage passage = scale_passage(name, {.octaves = 2, .apart = apart});
      const Line& line = passage.lines.at(hand == Hand::right ? 0 : 1);
      // The second octave of three, whose ends are no ends of the scale.
      const std::string octave = fingers_in_order(scale_line(name, hand, 3)).substr(7, 7);
      std::string expected = octave.substr(2) + octave + octave.substr(0, 3);
      std::string fingers = fingers_in_order(line);
      if (hand == Hand::left) std::ranges::reverse(expected);
      if (hand == Hand::left) std::ranges::reverse(fingers);
      INFO(name << ": " << words_of_line(line));
      const auto [end, ignored] = std::ranges::mismatch(fingers, expected);
      for (auto at = end; at != fingers.end(); ++at) CHECK(*at == *(at - 1) + 1);
      CHECK(fingers.end() - end <= 3);
    }
  }
}

}  // namespace fingerturn
