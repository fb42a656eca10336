#include "write/notated/bars.hpp"

#include "catch.hpp"
#include "fingerturn/read.hpp"
#include "write/notated/beam_levels.hpp"

#include <optional>
#include <string>
#include <vector>

#include <fmt/core.h>

/// A passage as it stands on a staff, in short: the values of a voice, its ties, signs and beams.
using namespace fingerturn;

namespace {

std::string value_words(const NotatedChord& chord) {
  if (!chord.value) return "?";
  return fmt::format("{}{}", 1 << chord.value->halvings, std::string(chord.value->dots, '.'));
}

/// "8[" an eighth that begins a beam, "4~" a quarter that is tied on, "r4" a rest, "^8" a grace
/// note, "4," one with a breath, "4tr" with a trill.
std::string chord_words(const NotatedChord& chord) {
  std::string words = chord.is_rest() ? "r" : chord.grace ? "^" : "";
  words += value_words(chord);
  if (chord.ornament == Ornament::trill) words += "tr";
  if (chord.beam == BeamPart::begins) words += "[";
  if (chord.beam == BeamPart::ends) words += "]";
  if (!chord.heads.empty() && chord.heads.front().tied_on) words += "~";
  return words + (chord.breath_after ? "," : "");
}

/// The voices of the first hand, bar after bar: "4 4 / 2 | 1".
std::string voices_of(const std::string& notation) {
  const ReadResult read = read_notation(Source("a", notation));
  const AnalysedScore analysed("a", read.score);
  NotatedBars bars(analysed[0], lines_of(analysed[0]));
  std::string text;
  while (const std::optional<NotatedBar> bar = bars.next()) {
    if (!text.empty()) text += "| ";
    const NotatedHand& hand = bar->hands.front();
    for (const NotatedChord& chord : hand.voices[0]) text += chord_words(chord) + ' ';
    if (hand.has_two_voices()) text += "/ ";
    for (const NotatedChord& chord : hand.voices[1]) text += chord_words(chord) + ' ';
  }
  if (!text.empty()) text.pop_back();
  return text;
}

/// The beams of a voice made of these values.
std::string strokes_of(const std::vector<std::int8_t>& halvings) {
  constexpr std::string_view kStrokes = "[-]><";
  NotatedVoice voice;
  for (const std::int8_t each : halvings) {
    NotatedChord& chord = voice.emplace_back();
    chord.value = NoteValue{each};
    chord.onset =
        voice.size() > 1 ? voice[voice.size() - 2].onset + voice[voice.size() - 2].length : 0;
    chord.length = Ticks{1} << (7 - each);
    chord.beam = voice.size() == 1                 ? BeamPart::begins
                 : voice.size() == halvings.size() ? BeamPart::ends
                                                   : BeamPart::inside;
  }
  std::string text;
  for (std::size_t i = 0; i < voice.size(); ++i) {
    if (i > 0) text += ' ';
    for (const BeamStroke stroke : beam_strokes(voice, i)) {
      text += kStrokes[static_cast<std::size_t>(stroke)];
    }
  }
  return text;
}

}  // namespace

TEST_CASE("a passage stands on a staff") {
  const auto [notation, voices] = GENERATE(table<std::string, std::string>({
      {"meter: 4/4\n1/8 C4 D E F 1/2 G", "8[ 8 8 8] 2"},
      {"meter: 4/4\n1/8 C4 D ^E F G 1/2 A", "8[ 8 ^8 8 8] 2"},
      {"meter: 2/4\n1/8t C4 ^D E F 1/4 G", "8[ ^8 8 8] 4"},
      {"meter: 6/8\n1/8 C4 D E F G A", "8[ 8 8] 8[ 8 8]"},
      {"5/8 C4 tr ,", "2tr~ 8,"},
      {"1/256 C4 1/4 D", "? 4"},
      {"1/4 C3=1/2 E4 | F4", "4 / 2 | 4"},
      {"1/4 C3=1/1 E4 | F4 G", "4 / 2~ | 4 4 / 2"},
      {"1/4 C3=2/1 E4", "4 / 2"},
      {"1/4 C4~ D | E~", "4~ 4 | 4"},
      {"1/4 C3=1/2 C3", "4 4"},
      {"1/4 C3=1/2 r D", "2 4"},
      {"1/4 C4 ^D4 r", "4 ^8 r4"},
      {"1/4 C4 ^D4 ^E4", "4 ^16[ ^16]"},
  }));
  CAPTURE(notation);
  CHECK(voices_of(notation) == voices);
}

TEST_CASE("beams of each level") {
  const auto [halvings, strokes] = GENERATE(table<std::vector<std::int8_t>, std::string>({
      {{3, 3}, "[ ]"},
      {{4, 4, 4, 4}, "[[ -- -- ]]"},
      {{3, 4, 4}, "[ -[ ]]"},
      {{4, 3, 4}, "[> - ]<"},
      {{3, 5}, "[ ]<<"},
      {{4, 5, 5, 4}, "[[ --[ --] ]]"},
  }));
  CHECK(strokes_of(halvings) == strokes);
}
