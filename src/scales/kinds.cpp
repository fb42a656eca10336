#include "scales/kinds.hpp"

#include "score/line_of_fifths.hpp"

#include <array>
#include <cstddef>

namespace fingerturn {
namespace {

constexpr std::array<ScaleForm, kScaleKinds> kForms{{
    {ScaleKind::major, "major", -7, 7},
    {ScaleKind::natural_minor, "natural minor", -4, 10},
    {ScaleKind::harmonic_minor, "harmonic minor", -4, 10},
    {ScaleKind::melodic_minor, "melodic minor", -4, 10},
    {ScaleKind::chromatic, "chromatic", -6, 10},
    {ScaleKind::major_arpeggio, "major arpeggio", -7, 7},
    {ScaleKind::minor_arpeggio, "minor arpeggio", -4, 10},
    // Each is the dominant of a major key with up to seven signs.
    {ScaleKind::dominant_seventh, "dominant seventh arpeggio", -6, 8},
    {ScaleKind::diminished_seventh, "diminished seventh arpeggio", -4, 10},
}};

/// Whether the form of every kind stands in the kind's own place.
constexpr bool forms_follow_kinds() {
  for (std::size_t i = 0; i < kForms.size(); ++i) {
    if (static_cast<std::size_t>(kForms[i].kind) != i || kForms[i].name.empty()) return false;
  }
  return true;
}
static_assert(forms_follow_kinds());

// From the tonic up, as steps on the line of fifths.
constexpr std::array<int, 7> kMajorSteps{0, 2, 4, -1, 1, 3, 5};
constexpr std::array<int, 7> kNaturalMinorSteps{0, 2, -3, -1, 1, -4, -2};
constexpr std::array<int, 7> kHarmonicMinorSteps{0, 2, -3, -1, 1, -4, 5};
constexpr std::array<int, 7> kMelodicMinorSteps{0, 2, -3, -1, 1, 3, 5};
constexpr std::array<int, 3> kMajorTriadSteps{0, 4, 1};
constexpr std::array<int, 3> kMinorTriadSteps{0, -3, 1};
constexpr std::array<int, 4> kDominantSeventhSteps{0, 4, 1, -2};
constexpr std::array<int, 4> kDiminishedSeventhSteps{0, -3, -6, -9};

std::span<const int> intervals_of(ScaleKind kind) {
  switch (kind) {
    case ScaleKind::major:
      return kMajorSteps;
    case ScaleKind::natural_minor:
      return kNaturalMinorSteps;
    case ScaleKind::harmonic_minor:
      return kHarmonicMinorSteps;
    case ScaleKind::melodic_minor:
      return kMelodicMinorSteps;
    case ScaleKind::major_arpeggio:
      return kMajorTriadSteps;
    case ScaleKind::minor_arpeggio:
      return kMinorTriadSteps;
    case ScaleKind::dominant_seventh:
      return kDominantSeventhSteps;
    case ScaleKind::diminished_seventh:
      return kDiminishedSeventhSteps;
    case ScaleKind::chromatic:
      break;
  }
  return {};
}

std::vector<int> chromatic_octave(int tonic, bool falling) {
  constexpr int kFlattestSharps = -1;  // F, C ... to A sharp
  constexpr int kFlattestFlats = -6;   // G flat, D flat ... to B
  constexpr int kFifthsInSemitone = 7;
  const bool has_sharp = tonic > kFlattestFlats + kEnharmonicFifths - 1;
  const bool has_flat = tonic < kFlattestSharps;
  const int flattest = has_flat || (falling && !has_sharp) ? kFlattestFlats : kFlattestSharps;
  std::vector<int> notes;
  for (int semitone = 0; semitone < kEnharmonicFifths; ++semitone) {
    int place = (tonic + kFifthsInSemitone * semitone - flattest) % kEnharmonicFifths;
    if (place < 0) place += kEnharmonicFifths;
    notes.push_back(flattest + place);
  }
  return notes;
}

}  // namespace

std::span<const ScaleForm> scale_forms() noexcept { return kForms; }

const ScaleForm& scale_form(ScaleKind kind) noexcept {
  return kForms.at(static_cast<std::size_t>(kind));
}

bool is_arpeggio(ScaleKind kind) noexcept {
  switch (kind) {
    case ScaleKind::major_arpeggio:
    case ScaleKind::minor_arpeggio:
    case ScaleKind::dominant_seventh:
    case ScaleKind::diminished_seventh:
      return true;
    case ScaleKind::major:
    case ScaleKind::natural_minor:
    case ScaleKind::harmonic_minor:
    case ScaleKind::melodic_minor:
    case ScaleKind::chromatic:
      break;
  }
  return false;
}

ScaleKind falling_kind(ScaleKind kind) noexcept {
  return kind == ScaleKind::melodic_minor ? ScaleKind::natural_minor : kind;
}

std::vector<int> notes_of_octave(ScaleKind kind, int tonic, bool falling) {
  if (kind == ScaleKind::chromatic) return chromatic_octave(tonic, falling);
  std::vector<int> notes;
  for (const int interval : intervals_of(falling ? falling_kind(kind) : kind)) {
    notes.push_back(tonic + interval);
  }
  return notes;
}

}  // namespace fingerturn
