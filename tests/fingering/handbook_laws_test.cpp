#include "catch.hpp"
#include "fingering/made_scales.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// What every handbook fingering has in common, looked for in all scales of the table. Source of
/// the laws: common practice, no source; from memory.
namespace fingerturn {
namespace {

constexpr std::array<Hand, 2> kHands{Hand::right, Hand::left};
constexpr std::size_t kNotesInScale = 7;

std::vector<std::string> names_ending(std::string_view ending) {
  std::vector<std::string> names;
  for (const std::string& name : handbook_scale_names()) {
    if (name.ends_with(ending)) names.push_back(name);
  }
  return names;
}

/// All scales of seven notes.
std::vector<std::string> seven_note_scales() {
  std::vector<std::string> names = names_ending(" major");
  for (const std::string& name : names_ending(" minor")) names.push_back(name);
  return names;
}

/// Rising and falling, as melodic minor scales differ there.
template <typename Check>
void for_seven_note_scales(int octaves, const Check& check) {
  for (const std::string& name : seven_note_scales()) {
    for (const Hand hand : kHands) {
      for (const ScaleDirection direction : {ScaleDirection::up, ScaleDirection::down}) {
        const Line line = scale_line(name, hand, octaves, direction);
        const bool rises = direction == ScaleDirection::up;
        std::string fingers = fingers_in_order(line);
        if (!rises) std::reverse(fingers.begin(), fingers.end());
        INFO(name << ", " << to_string(hand) << " hand, " << (rises ? "up" : "down") << ", upward "
                  << fingers);
        check(line, hand, fingers);
      }
    }
  }
}

bool thumb_on_black(const Line& line) {
  return std::any_of(line.events.begin(), line.events.end(), [](const Event& event) {
    const Note& note = event.notes.at(0);
    return note.finger == kThumb && key_colour(midi_number(note.pitch)) == KeyColour::black;
  });
}

bool all_black(const Line& line) {
  return std::all_of(line.events.begin(), line.events.end(), [](const Event& event) {
    return key_colour(midi_number(event.notes.at(0).pitch)) == KeyColour::black;
  });
}

}  // namespace

TEST_CASE("scales: the laws are tried on all keys", "[fingering][scales]") {
  CHECK(seven_note_scales().size() == 15 + 3 * 15);
  CHECK(names_ending(" chromatic").size() == 17);
  CHECK(names_ending(" arpeggio").size() == 4 * 15);
  CHECK(handbook_scale_names().size() == 137);
}

TEST_CASE("scales: the thumb is on no black key, but in triads that have no white one",
          "[fingering][scales]") {
  std::size_t all_black_triads = 0;
  for (const std::string& name : handbook_scale_names()) {
    for (const Hand hand : kHands) {
      for (const int octaves : {1, 2, 3, 4}) {
        const Line line = scale_line(name, hand, octaves, ScaleDirection::up_and_down);
        INFO(name << ", " << to_string(hand) << " hand: " << fingers_in_order(line));
        CHECK(thumb_on_black(line) == all_black(line));
        if (all_black(line)) ++all_black_triads;
      }
    }
  }
  // F sharp and G flat major, E flat and D sharp minor: in two hands over one to four octaves.
  CHECK(all_black_triads == std::size_t{4} * 2 * 4);
}

TEST_CASE("scales: thumbs are 3 or 4 notes apart", "[fingering][scales]") {
  for_seven_note_scales(4, [](const Line& /*line*/, Hand /*hand*/, const std::string& fingers) {
    std::size_t last = fingers.find('1');
    CHECK(last <= 4);
    for (std::size_t at = fingers.find('1', last + 1); at != std::string::npos;
         at = fingers.find('1', last + 1)) {
      CHECK((at - last == 3 || at - last == 4));
      last = at;
    }
    CHECK(fingers.size() - 1 - last <= 4);
  });
}

TEST_CASE("scales: the fourth finger comes once an octave, and the fifth only at an end",
          "[fingering][scales]") {
  for_seven_note_scales(4, [](const Line& /*line*/, Hand hand, const std::string& fingers) {
    for (std::size_t first = kNotesInScale; first < 3 * kNotesInScale; ++first) {
      const std::string octave = fingers.substr(first, kNotesInScale);
      CHECK(std::count(octave.begin(), octave.end(), '4') == 1);
    }
    const std::size_t fifth = fingers.find('5');
    const std::size_t end = hand == Hand::right ? fingers.size() - 1 : 0;
    CHECK((fifth == std::string::npos || fifth == end));
    CHECK(std::count(fingers.begin(), fingers.end(), '5') <= 1);
  });
}

TEST_CASE("scales: fingers follow one another until the thumb passes", "[fingering][scales]") {
  for_seven_note_scales(4, [](const Line& /*line*/, Hand hand, std::string fingers) {
    if (hand == Hand::left) std::reverse(fingers.begin(), fingers.end());
    for (std::size_t i = 1; i < fingers.size(); ++i) {
      CHECK((fingers[i] == fingers[i - 1] + 1 || (fingers[i] == '1' && fingers[i - 1] >= '3')));
    }
  });
}

TEST_CASE("scales: C, G, D, A and E have the same fingers, major and minor",
          "[fingering][scales]") {
  for (const Hand hand : kHands) {
    const std::string fingers = fingers_in_order(scale_line("C major", hand, 4));
    for (const std::string tonic : {"C", "G", "D", "A", "E"}) {
      for (const std::string kind : {"major", "minor", "harmonic minor", "melodic minor"}) {
        CHECK(fingers_in_order(scale_line(tonic + " " + kind, hand, 4)) == fingers);
      }
    }
  }
}

TEST_CASE("scales: one key is fingered alike in both spellings", "[fingering][scales]") {
  constexpr std::array<std::array<std::string_view, 2>, 11> kSame{
      {{"C# major", "Db major"},
       {"F# major", "Gb major"},
       {"B major", "Cb major"},
       {"G# minor", "Ab minor"},
       {"D# melodic minor", "Eb melodic minor"},
       {"A# harmonic minor", "Bb harmonic minor"},
       {"F# chromatic", "Gb chromatic"},
       {"C# major arpeggio", "Db major arpeggio"},
       {"G# minor arpeggio", "Ab minor arpeggio"},
       {"F# dominant seventh", "Gb dominant seventh"},
       {"D# diminished seventh", "Eb diminished seventh"}}};
  for (const auto& [sharp, flat] : kSame) {
    for (const Hand hand : kHands) {
      CHECK(fingers_in_order(scale_line(sharp, hand, 2, ScaleDirection::up_and_down)) ==
            fingers_in_order(scale_line(flat, hand, 2, ScaleDirection::up_and_down)));
    }
  }
}

TEST_CASE("scales: no finger takes two keys one after another", "[fingering][scales]") {
  for (const std::string& name : handbook_scale_names()) {
    for (const Hand hand : kHands) {
      const std::string fingers =
          fingers_in_order(scale_line(name, hand, 4, ScaleDirection::up_and_down));
      INFO(name << ", " << to_string(hand) << " hand: " << fingers);
      CHECK(std::adjacent_find(fingers.begin(), fingers.end()) == fingers.end());
    }
  }
}

TEST_CASE("scales: down is up played backward, but in melodic minor", "[fingering][scales]") {
  for (const std::string& name : handbook_scale_names()) {
    for (const Hand hand : kHands) {
      std::string down = fingers_in_order(scale_line(name, hand, 3, ScaleDirection::down));
      std::reverse(down.begin(), down.end());
      const std::size_t melodic = name.find("melodic");
      std::string rising = name;
      if (melodic != std::string::npos) rising.replace(melodic, 7, "natural");
      INFO(name << ", " << to_string(hand) << " hand");
      CHECK(down == fingers_in_order(scale_line(rising, hand, 3)));
    }
  }
}

TEST_CASE("chromatic scales: 3 on black keys, 1 or 2 on white", "[fingering][scales]") {
  for (const std::string& name : names_ending(" chromatic")) {
    for (const Hand hand : kHands) {
      const Line line = scale_line(name, hand, 4);
      INFO(name << ", " << to_string(hand) << " hand: " << fingers_in_order(line));
      for (const Event& event : line.events) {
        const Note& note = event.notes.at(0);
        const bool black = key_colour(midi_number(note.pitch)) == KeyColour::black;
        CHECK((note.finger == 3) == black);
        CHECK((black || note.finger == 1 || note.finger == 2));
      }
      const Finger outermost = (hand == Hand::right ? line.events.front() : line.events.back())
                                   .notes.at(0)
                                   .finger.value();
      CHECK(outermost != 2);
    }
  }
}

}  // namespace fingerturn
