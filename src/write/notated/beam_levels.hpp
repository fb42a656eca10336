#pragma once

#include "write/notated/notated.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace fingerturn {

/// What a beam of one level does at a chord: a hook is a short piece of one beside its stem.
enum class BeamStroke : std::uint8_t { begins, goes_on, ends, hook_forward, hook_backward };

/// The beams at a chord of a voice, the one that all of its row have first; none where the chord
/// stands in no beam.
///
///     a dotted eighth and a sixteenth    {begins}, {ends, hook_backward}
std::vector<BeamStroke> beam_strokes(const NotatedVoice& voice, std::size_t chord);

}  // namespace fingerturn
