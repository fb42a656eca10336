#include "catch.hpp"
#include "scales/made_scales.hpp"

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
void for_scales(const std::vector<std::string>& names, int octaves, const Check& check) {
  for (const std::string& name : names) {
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

template <typename Check>
void for_seven_note_scales(int octaves, const Check& check) {
  for_scales(seven_note_scales(), octaves, check);
}

/// The fingers in the direction in which the thumb passes under: upward in the right hand, downward
/// in the left.
std::string toward_fifth(std::string upward, Hand hand) {
  if (hand == Hand::left) std::reverse(upward.begin(), upward.end());
  return upward;
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

TEST_CASE("scales: the fourth finger comes once an octave", "[fingering][scales]") {
  for_seven_note_scales(4, [](const Line& /*line*/, Hand /*hand*/, const std::string& fingers) {
    for (std::size_t first = kNotesInScale; first < 3 * kNotesInScale; ++first) {
      const std::string octave = fingers.substr(first, kNotesInScale);
      CHECK(std::count(octave.begin(), octave.end(), '4') == 1);
    }
  });
}

TEST_CASE("scales and arpeggios: the fifth finger comes only at its end", "[fingering][scales]") {
  std::size_t fifths = 0;
  const auto check = [&fifths](const Line& /*line*/, Hand hand, const std::string& upward) {
    const std::size_t fifth = toward_fifth(upward, hand).find('5');
    CHECK((fifth == std::string::npos || fifth == upward.size() - 1));
    if (fifth != std::string::npos) ++fifths;
  };
  for (const int octaves : {1, 4}) for_scales(handbook_scale_names(), octaves, check);
  CHECK(fifths > 0);
}

TEST_CASE("scales: fingers follow one another until the thumb passes", "[fingering][scales]") {
  for_seven_note_scales(4, [](const Line& /*line*/, Hand hand, const std::string& upward) {
    const std::string fingers = toward_fifth(upward, hand);
    for (std::size_t i = 1; i < fingers.size(); ++i) {
      CHECK((fingers[i] == fingers[i - 1] + 1 || (fingers[i] == '1' && fingers[i - 1] >= '3')));
    }
  });
}

TEST_CASE("arpeggios: the thumb comes once an octave, always on the same note",
          "[fingering][scales]") {
  constexpr std::size_t kOctaves = 4;
  for_scales(names_ending(" arpeggio"), kOctaves,
             [](const Line& /*line*/, Hand hand, const std::string& upward) {
               const std::string fingers = toward_fifth(upward, hand);
               const std::size_t notes = fingers.size() / kOctaves;
               const std::size_t first = fingers.find('1');
               REQUIRE(first < notes);
               // The fifth finger may close the last octave in the place of the thumb.
               const std::size_t end = fingers.ends_with('5') ? fingers.size() - 1 : fingers.size();
               for (std::size_t i = 0; i < end; ++i) {
                 CHECK((fingers[i] == '1') == (i % notes == first));
               }
             });
}

TEST_CASE("arpeggios: from one thumb to the next the fingers rise", "[fingering][scales]") {
  for_scales(names_ending(" arpeggio"), 4,
             [](const Line& /*line*/, Hand hand, const std::string& upward) {
               const std::string fingers = toward_fifth(upward, hand);
               for (std::size_t i = 1; i < fingers.size(); ++i) {
                 CHECK((fingers[i] == '1' || fingers[i] > fingers[i - 1]));
               }
             });
}

TEST_CASE("scales: others are known to begin the right hand with 2 where it begins with 3 or 4",
          "[fingering][scales]") {
  std::size_t others = 0;
  for (const std::string& name : handbook_scale_names()) {
    if (name.ends_with(" chromatic")) continue;
    const Passage passage = scale_passage(name, {.hand = Hand::right});
    const char first = fingers_in_order(passage.lines.at(0)).front();
    const bool has_other = passage.remarks.size() > 1;
    INFO(name);
    CHECK(has_other == (first == '3' || first == '4'));
    if (!has_other) continue;
    ++others;
    CHECK(passage.remarks.at(1).starts_with("In the right hand other handbooks have 2 "));
  }
  CHECK(others > 0);
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
      CHECK(toward_fifth(fingers_in_order(line), hand).front() != '2');
    }
  }
}

TEST_CASE("chromatic scales: each key has the finger it has from C, but for a 2 that begins",
          "[fingering][scales]") {
  constexpr std::size_t kOctave = 12;
  for (const Hand hand : kHands) {
    const std::string from_c = fingers_in_order(scale_line("C chromatic", hand, 3));
    for (const std::string& name : names_ending(" chromatic")) {
      const Line line = scale_line(name, hand, 1);
      const int lowest = midi_number(line.events.front().notes.at(0).pitch);
      // The octave in the middle of three, whose ends are no ends of the scale.
      const std::size_t begin = kOctave + static_cast<std::size_t>(lowest) % kOctave;
      std::string expected = toward_fifth(from_c.substr(begin, kOctave + 1), hand);
      if (expected.front() == '2') expected.front() = '1';
      INFO(name << ", " << to_string(hand) << " hand");
      CHECK(toward_fifth(fingers_in_order(line), hand) == expected);
    }
  }
}

}  // namespace fingerturn
