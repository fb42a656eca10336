#include "fingerturn/pitch.hpp"

#include "score/spelling.hpp"

#include <array>

namespace fingerturn {
namespace {

constexpr std::array<int, 7> kSemitonesAboveC{0, 2, 4, 5, 7, 9, 11};
constexpr int kSemitonesInOctave = 12;
constexpr int kLettersInOctave = 7;

}  // namespace

int midi_number(Pitch pitch) noexcept {
  const auto step = static_cast<std::size_t>(pitch.step);
  return kSemitonesInOctave * (pitch.octave + 1) + kSemitonesAboveC.at(step) + pitch.alter;
}

bool on_the_piano(Pitch pitch) noexcept {
  const int midi = midi_number(pitch);
  return midi >= kLowestKey && midi <= kHighestKey;
}

KeyColour key_colour(int midi) noexcept {
  const int above_c = midi % kSemitonesInOctave;
  for (const int white : kSemitonesAboveC) {
    if (above_c == white) return KeyColour::white;
  }
  return KeyColour::black;
}

int letter_position(Pitch pitch) noexcept {
  return kLettersInOctave * pitch.octave + static_cast<int>(pitch.step);
}

std::optional<Pitch> parse_pitch(std::string_view text) noexcept {
  if (text.empty()) return std::nullopt;
  const std::optional<Step> step = step_of_letter(text.front());
  if (!step) return std::nullopt;
  text.remove_prefix(1);
  const AccidentalPrefix accidental = read_accidental(text);
  text.remove_prefix(accidental.bytes);
  if (text.size() != 1 || text.front() < '0' || text.front() > '9') return std::nullopt;
  return Pitch{*step, accidental.alter, static_cast<std::int8_t>(text.front() - '0')};
}

std::string to_string(Pitch pitch) {
  std::string text(1, kStepLetters.at(static_cast<std::size_t>(pitch.step)));
  if (pitch.alter != 0) text += accidental_text(pitch.alter);
  return text + std::to_string(pitch.octave);
}

}  // namespace fingerturn
