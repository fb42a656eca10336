#include "catch.hpp"
#include "fingering/made_tasks.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

/// The handbook fingering that C, G, D, A and E major share in each hand. Source: C.-L. Hanon, The
/// Virtuoso Pianist (1873), no. 39, from memory.
namespace fingerturn {
namespace {

constexpr std::array<std::string_view, 5> kTonics{"C", "G", "D", "A", "E"};

std::string scale_fingers(Hand hand, int octaves) {
  const std::string_view octave = hand == Hand::right ? "1231234" : "5432132";
  std::string fingers(octave);
  for (int i = 1; i < octaves; ++i) fingers += hand == Hand::right ? "1231234" : "1432132";
  return fingers + (hand == Hand::right ? '5' : '1');
}

std::string scale_notation(std::string_view tonic, Hand hand, int octaves) {
  constexpr std::array<int, 7> kMajor{0, 2, 4, 5, 7, 9, 11};
  constexpr std::array<std::string_view, 12> kNames{"C",  "C#", "D",  "D#", "E",  "F",
                                                    "F#", "G",  "G#", "A",  "A#", "B"};
  int first = 12 * (hand == Hand::right ? 4 : 2);
  while (kNames.at(static_cast<std::size_t>(first % 12)) != tonic) ++first;
  std::string text = hand == Hand::right ? "1/16" : "hand: left\n1/16";
  for (int i = 0; i <= 7 * octaves; ++i) {
    const int key = first + 12 * (i / 7) + kMajor.at(static_cast<std::size_t>(i % 7));
    text += ' ';
    text += kNames.at(static_cast<std::size_t>(key % 12));
    text += std::to_string(key / 12);
  }
  return text;
}

struct Reproduced {
  int whole = 0;
  int whole_in_one_octave = 0;
  int scales = 0;
  std::string others;
};

void try_scale(std::string_view tonic, Hand hand, int octaves, bool down, Reproduced& result) {
  Line line = line_written(scale_notation(tonic, hand, octaves));
  std::string fingers = scale_fingers(hand, octaves);
  if (down) std::reverse(line.events.begin(), line.events.end());
  if (down) std::reverse(fingers.begin(), fingers.end());
  // Turned about, the onsets would fall; without them the pace is not known.
  for (Event& event : line.events) event.onset = event.duration = std::nullopt;
  std::string found = fingers_of(completed(line));
  found.erase(std::remove(found.begin(), found.end(), ' '), found.end());
  ++result.scales;
  if (found == fingers) {
    ++result.whole;
    result.whole_in_one_octave += octaves == 1 ? 1 : 0;
    return;
  }
  result.others += fmt::format("{} {} hand {}: {} for {}\n", tonic, to_string(hand),
                               down ? "down" : "up", found, fingers);
}

Reproduced reproduced() {
  Reproduced result;
  for (const std::string_view tonic : kTonics) {
    for (const Hand hand : {Hand::right, Hand::left}) {
      for (const int octaves : {1, 2}) {
        try_scale(tonic, hand, octaves, false, result);
        try_scale(tonic, hand, octaves, true, result);
      }
    }
  }
  return result;
}

}  // namespace

TEST_CASE("fingering: handbook scales reproduced whole", "[fingering]") {
  // What was measured with the weights in use. Of two octaves in the left hand the fourth finger
  // comes in the other octave.
  constexpr int kMeasured = 30;
  const Reproduced result = reproduced();
  INFO(result.whole << " of " << result.scales << "\n" << result.others);
  CHECK(result.scales == 40);
  CHECK(result.whole_in_one_octave == 20);
  CHECK(result.whole >= kMeasured);
}

}  // namespace fingerturn
