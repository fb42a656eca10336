#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

/// The kinds of scales and arpeggios, and which notes they have.
namespace fingerturn {

enum class ScaleKind : std::uint8_t {
  major,
  natural_minor,
  harmonic_minor,
  melodic_minor,
  chromatic,
  major_arpeggio,
  minor_arpeggio,
  dominant_seventh,
  diminished_seventh
};

/// How many kinds there are; the last of them is named here.
inline constexpr std::size_t kScaleKinds =
    static_cast<std::size_t>(ScaleKind::diminished_seventh) + 1;

/// A kind: its full name and the notes from which it is spelled without odd accidentals, as places
/// on the line of fifths.
struct ScaleForm {
  ScaleKind kind;
  std::string_view name;
  int flattest_tonic;  ///< of major C flat, with seven flats
  int sharpest_tonic;  ///< of major C sharp, with seven sharps
};

/// All kinds, in the order in which they are listed.
std::span<const ScaleForm> scale_forms() noexcept;
const ScaleForm& scale_form(ScaleKind kind) noexcept;
bool is_arpeggio(ScaleKind kind) noexcept;

/// What is played when a scale falls: a melodic minor scale falls as the natural one.
ScaleKind falling_kind(ScaleKind kind) noexcept;

/// The notes of an octave from its tonic up, as places on the line of fifths. A chromatic scale has
/// sharps where it rises and flats where it falls, but keeps to the sign that its tonic has (our
/// convention).
std::vector<int> notes_of_octave(ScaleKind kind, int tonic, bool falling);

}  // namespace fingerturn
