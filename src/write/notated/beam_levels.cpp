#include "write/notated/beam_levels.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

constexpr int kHalvingsWithoutBeam = 2;

int levels_of(const NotatedChord* chord) {
  if (chord == nullptr || !chord->value) return 0;
  return std::max(0, chord->value->halvings - kHalvingsWithoutBeam);
}

bool is_in_row(const NotatedChord& chord, const NotatedChord& other) {
  return chord.grace == other.grace;
}

/// The one before it in its beam; null for the first.
const NotatedChord* before(const NotatedVoice& voice, std::size_t chord) {
  if (voice[chord].beam == BeamPart::begins) return nullptr;
  for (std::size_t i = chord; i-- > 0;) {
    if (is_in_row(voice[i], voice[chord])) return &voice[i];
  }
  return nullptr;
}

const NotatedChord* after(const NotatedVoice& voice, std::size_t chord) {
  if (voice[chord].beam == BeamPart::ends) return nullptr;
  for (std::size_t i = chord + 1; i < voice.size(); ++i) {
    if (is_in_row(voice[i], voice[chord])) return &voice[i];
  }
  return nullptr;
}

/// Inside of a beam it points to what it fills a longer value with.
BeamStroke hook(const NotatedChord& chord) {
  if (chord.beam == BeamPart::begins) return BeamStroke::hook_forward;
  if (chord.beam == BeamPart::ends || chord.length == 0) return BeamStroke::hook_backward;
  return chord.onset % (2 * chord.length) == 0 ? BeamStroke::hook_forward
                                               : BeamStroke::hook_backward;
}

}  // namespace

std::vector<BeamStroke> beam_strokes(const NotatedVoice& voice, std::size_t chord) {
  std::vector<BeamStroke> strokes;
  if (voice[chord].beam == BeamPart::none) return strokes;
  const int left = levels_of(before(voice, chord));
  const int right = levels_of(after(voice, chord));
  for (int level = 1; level <= levels_of(&voice[chord]); ++level) {
    if (level <= left) {
      strokes.push_back(level <= right ? BeamStroke::goes_on : BeamStroke::ends);
    } else {
      strokes.push_back(level <= right ? BeamStroke::begins : hook(voice[chord]));
    }
  }
  return strokes;
}

}  // namespace fingerturn
