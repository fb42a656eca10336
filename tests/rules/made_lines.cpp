#include "rules/made_lines.hpp"

#include "fingerturn/report.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

namespace fingerturn {
namespace {

constexpr int kKeysInOctave = 12;

struct Spelling {
  Step step;
  std::int8_t alter;
};

constexpr std::array<Spelling, kKeysInOctave> kSharps{{{Step::c, 0},
                                                       {Step::c, 1},
                                                       {Step::d, 0},
                                                       {Step::d, 1},
                                                       {Step::e, 0},
                                                       {Step::f, 0},
                                                       {Step::f, 1},
                                                       {Step::g, 0},
                                                       {Step::g, 1},
                                                       {Step::a, 0},
                                                       {Step::a, 1},
                                                       {Step::b, 0}}};

Pitch pitch_in_octave(Spelling spelling, int midi) {
  return {spelling.step, spelling.alter, static_cast<std::int8_t>(midi / kKeysInOctave - 1)};
}

}  // namespace

Pitch pitch_with_sharps(int midi) {
  return pitch_in_octave(kSharps.at(static_cast<std::size_t>(midi % kKeysInOctave)), midi);
}

Pitch pitch_with_flats(int midi) {
  Pitch pitch = pitch_with_sharps(midi);
  if (pitch.alter == 0) return pitch;
  // No sharp stands on E or B, so the next letter is in the same octave.
  pitch.step = static_cast<Step>(static_cast<int>(pitch.step) + 1);
  pitch.alter = -1;
  return pitch;
}

Note note_on(int midi, int finger) {
  Note note;
  note.pitch = pitch_with_sharps(midi);
  if (finger != kNoFinger) note.finger = static_cast<Finger>(finger);
  return note;
}

Score score_of(std::vector<Line> lines) {
  Passage passage;
  passage.lines = std::move(lines);
  return {{std::move(passage)}};
}

Line mirror_image(Line line) {
  constexpr int kTwiceD4 = 124;
  line.hand = line.hand == Hand::right ? Hand::left : Hand::right;
  for (Event& event : line.events) {
    // The lowest key comes first, and the image turns the order of the keys about.
    std::reverse(event.notes.begin(), event.notes.end());
    for (Note& note : event.notes)
      note.pitch = pitch_with_flats(kTwiceD4 - midi_number(note.pitch));
  }
  return line;
}

std::string notation_of(const Line& line) { return write_passage(score_of({line})); }

bool Sequences::next() {
  ++number_;
  for (std::size_t& symbol : symbols_) {
    if (++symbol < count_) return true;
    symbol = 0;
  }
  return false;
}

std::size_t scrambled(std::size_t number, std::size_t place) {
  // The finishing steps of the generator splitmix64 (public domain).
  std::uint64_t bits = (number * 64 + place + 1) * 0x9E3779B97F4A7C15U;
  bits = (bits ^ (bits >> 30U)) * 0xBF58476D1CE4E5B9U;
  bits = (bits ^ (bits >> 27U)) * 0x94D049BB133111EBU;
  return bits ^ (bits >> 31U);
}

}  // namespace fingerturn
