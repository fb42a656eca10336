#include "fingerturn/pitch.hpp"

#include "score/spelling.hpp"

#include <array>
#include <cctype>

namespace fingerturn {
namespace {

constexpr std::string_view kLetters = "CDEFGAB";
constexpr std::array<int, 7> kSemitonesAboveC{0, 2, 4, 5, 7, 9, 11};
constexpr int kSemitonesInOctave = 12;
constexpr int kLettersInOctave = 7;

}  // namespace

std::optional<Step> step_of_letter(char letter) noexcept {
  const auto upper = static_cast<char>(std::toupper(static_cast<unsigned char>(letter)));
  const std::size_t at = kLetters.find(upper);
  if (at == std::string_view::npos) return std::nullopt;
  return static_cast<Step>(at);
}

AccidentalPrefix read_accidental(std::string_view text) noexcept {
  struct Sign {
    std::string_view text;
    std::int8_t alter;
  };
  // Longer signs first, so that "##" is not read as a sharp and a rest.
  static constexpr std::array<Sign, 10> kSigns{{{"\xF0\x9D\x84\xAA", 2},
                                                {"\xF0\x9D\x84\xAB", -2},
                                                {"\xE2\x99\xAF", 1},
                                                {"\xE2\x99\xAD", -1},
                                                {"\xE2\x99\xAE", 0},
                                                {"##", 2},
                                                {"bb", -2},
                                                {"#", 1},
                                                {"b", -1},
                                                {"x", 2}}};
  for (const Sign& sign : kSigns) {
    if (text.starts_with(sign.text)) return {sign.alter, sign.text.size()};
  }
  return {};
}

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
  std::string text(1, kLetters.at(static_cast<std::size_t>(pitch.step)));
  for (int i = 0; i < pitch.alter; ++i) text += '#';
  for (int i = 0; i > pitch.alter; --i) text += 'b';
  return text + std::to_string(pitch.octave);
}

}  // namespace fingerturn
