#include "scales/fingers.hpp"

#include "score/line_of_fifths.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <initializer_list>

/// Source of every row, from memory and not compared with the books: C.-L. Hanon, The Virtuoso
/// Pianist (1873), nos. 39 (scales; the natural minor as the falling melodic one), 40 (chromatic
/// scale) and 41 (arpeggios of triads); J. F. Cooke, Mastering the Scales and Arpeggios (1913), for
/// the sevenths. Where handbooks differ a row holds one fingering and names the other.
namespace fingerturn {
namespace {

/// What one hand takes.
struct HandFingers {
  /// Of an octave from the tonic up, the same in every octave. A finger after a blank is that of
  /// the highest note in the right hand and of the lowest in the left, where it is another one.
  std::string_view fingers;
  std::string_view others = {};  ///< what other handbooks have
};

using Mask = std::uint32_t;

constexpr Mask keys(std::string_view names) {
  constexpr std::string_view kSemitones = "C D EF G A B";
  Mask mask = 0;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (names[i] < 'A' || names[i] > 'G') continue;
    std::size_t semitone = kSemitones.find(names[i]);
    if (i + 1 < names.size() && names[i + 1] == '#') ++semitone;
    if (i + 1 < names.size() && names[i + 1] == 'b') --semitone;
    mask |= Mask{1} << semitone;
  }
  return mask;
}

constexpr Mask kinds(std::initializer_list<ScaleKind> list) {
  Mask mask = 0;
  for (const ScaleKind kind : list) mask |= Mask{1} << static_cast<unsigned>(kind);
  return mask;
}

/// Fingers of some kinds on some tonics. A melodic minor scale is meant as it rises.
struct Row {
  Mask kinds = 0;
  Mask tonics = 0;
  HandFingers right;
  HandFingers left;
};

constexpr Mask kMajor = kinds({ScaleKind::major});
constexpr Mask kNatural = kinds({ScaleKind::natural_minor});
constexpr Mask kHarmonic = kinds({ScaleKind::harmonic_minor});
constexpr Mask kMelodic = kinds({ScaleKind::melodic_minor});
constexpr Mask kMinor = kNatural | kHarmonic | kMelodic;
constexpr Mask kMajorTriad = kinds({ScaleKind::major_arpeggio});
constexpr Mask kMinorTriad = kinds({ScaleKind::minor_arpeggio});
constexpr Mask kDominant = kinds({ScaleKind::dominant_seventh});
constexpr Mask kDiminished = kinds({ScaleKind::diminished_seventh});

constexpr std::string_view kLowestTwo = "other handbooks have 2 on the lowest note";
constexpr std::string_view kLowestTwoThree = "other handbooks have 2 and 3 on the lowest two notes";
constexpr std::string_view kThirdFour = "other handbooks have 4 on the third of the triad";
constexpr std::string_view kAsNatural = "other handbooks have 3213214, as in the natural minor";

constexpr std::array<Row, 31> kRows{{
    // Scales of seven notes.
    {kMajor | kMinor, keys("C G D A E"), {"1231234 5"}, {"1432132 5"}},
    {kMajor | kMinor, keys("B"), {"1231234 5"}, {"1321432 4"}},
    {kMajor | kMinor, keys("F"), {"1234123 4"}, {"1432132 5"}},
    {kMajor, keys("Db"), {"2312341"}, {"3214321"}},
    {kMajor, keys("Eb"), {"3123412", kLowestTwo}, {"3214321"}},
    {kMajor, keys("F#"), {"2341231"}, {"4321321"}},
    {kMajor, keys("Ab"), {"3412312", kLowestTwoThree}, {"3214321"}},
    {kMajor, keys("Bb"), {"4123123", kLowestTwo}, {"3214321"}},
    {kNatural | kHarmonic, keys("C#"), {"3412312", kLowestTwoThree}, {"3214321"}},
    {kMelodic, keys("C#"), {"2312341"}, {"3214321"}},
    {kMinor, keys("Eb"), {"3123412", kLowestTwo}, {"2143213"}},
    {kNatural | kHarmonic, keys("F#"), {"3412312", kLowestTwoThree}, {"4321321"}},
    {kMelodic, keys("F#"), {"2312341"}, {"4321321"}},
    {kNatural, keys("G#"), {"3412312", kLowestTwoThree}, {"3213214"}},
    {kHarmonic, keys("G#"), {"3412312", kLowestTwoThree}, {"3214321", kAsNatural}},
    {kMelodic, keys("G#"), {"3412312", kLowestTwoThree}, {"3214321"}},
    {kMinor, keys("Bb"), {"4123123", kLowestTwo}, {"2132143"}},
    // Triads.
    {kMajorTriad, keys("C F G"), {"123 5"}, {"142 5"}},
    {kMajorTriad, keys("D E A B F#"), {"123 5"}, {"132 5", kThirdFour}},
    {kMajorTriad, keys("Db Eb Ab"), {"412", kLowestTwo}, {"214"}},
    {kMajorTriad, keys("Bb"), {"412", kLowestTwo}, {"321"}},
    {kMinorTriad, keys("C D E F G A B Eb"), {"123 5"}, {"142 5"}},
    {kMinorTriad, keys("C# F# G#"), {"412", kLowestTwo}, {"214"}},
    {kMinorTriad, keys("Bb"), {"231"}, {"321"}},
    // Sevenths.
    {kDominant | kDiminished, keys("C D E F G A B"), {"1234 5"}, {"1432 5"}},
    {kDominant, keys("Db Eb Ab"), {"4123", kLowestTwo}, {"2143"}},
    {kDominant, keys("F#"), {"2341"}, {"4321"}},
    {kDominant, keys("Bb"), {"4123", kLowestTwo}, {"3214"}},
    {kDiminished, keys("C# F#"), {"4123", kLowestTwo}, {"3214"}},
    {kDiminished, keys("Eb Bb"), {"3412", kLowestTwoThree}, {"4321"}},
    {kDiminished, keys("Ab"), {"4123", kLowestTwo}, {"4321"}},
}};

constexpr bool fingers_stand_here(ScaleKind kind) { return kind != ScaleKind::chromatic; }

/// Whether each kind has one row for each of the twelve keys.
constexpr bool one_row_for_each_key() {
  constexpr Mask kAllKeys = 0xFFF;
  for (std::size_t i = 0; i < kScaleKinds; ++i) {
    const auto kind = static_cast<ScaleKind>(i);
    if (!fingers_stand_here(kind)) continue;
    Mask found = 0;
    for (const Row& row : kRows) {
      if ((row.kinds & kinds({kind})) == 0) continue;
      if ((row.tonics & found) != 0) return false;
      found |= row.tonics;
    }
    if (found != kAllKeys) return false;
  }
  return true;
}
static_assert(one_row_for_each_key());

/// The chromatic scale from C up: 3 on black keys, the thumb on white ones, and 2 on one of each
/// two white keys that are neighbours.
constexpr std::string_view kChromaticRight = "231312313131";
constexpr std::string_view kChromaticLeft = "131321313132";

Finger finger_of_digit(char digit) { return static_cast<Finger>(digit - '0'); }

/// Of any kind but the chromatic one.
const HandFingers& fingers_of(ScaleName name, Hand hand) {
  const Mask kind = kinds({name.kind});
  const Mask tonic = Mask{1} << static_cast<unsigned>(semitones_above_c(name.tonic));
  const auto* const row = std::find_if(kRows.begin(), kRows.end(), [kind, tonic](const Row& each) {
    return (each.kinds & kind) != 0 && (each.tonics & tonic) != 0;
  });
  return hand == Hand::right ? row->right : row->left;
}

std::vector<Finger> repeated(std::string_view octave, std::size_t begin, int octaves) {
  std::vector<Finger> fingers;
  for (std::size_t i = 0; i <= octave.size() * static_cast<std::size_t>(octaves); ++i) {
    fingers.push_back(finger_of_digit(octave[(begin + i) % octave.size()]));
  }
  return fingers;
}

/// From the tonic up; a last note more is the tonic again.
std::vector<Finger> chromatic_octaves(int tonic, Hand hand, int octaves) {
  return repeated(hand == Hand::right ? kChromaticRight : kChromaticLeft,
                  static_cast<std::size_t>(semitones_above_c(tonic)), octaves);
}

/// The thumb takes the place of 2 where no finger follows that it would have to let pass.
std::vector<Finger> chromatic_fingers(int tonic, Hand hand, int octaves) {
  constexpr Finger kSecond = 2;
  std::vector<Finger> fingers = chromatic_octaves(tonic, hand, octaves);
  Finger& outermost = hand == Hand::right ? fingers.front() : fingers.back();
  if (outermost == kSecond) outermost = kThumb;
  return fingers;
}

}  // namespace

std::vector<Finger> scale_fingers(ScaleName name, Hand hand, int octaves) {
  if (!fingers_stand_here(name.kind)) return chromatic_fingers(name.tonic, hand, octaves);
  const std::string_view words = fingers_of(name, hand).fingers;
  const std::size_t blank = words.find(' ');
  std::vector<Finger> fingers = repeated(words.substr(0, blank), 0, octaves);
  if (blank != std::string_view::npos) {
    (hand == Hand::right ? fingers.back() : fingers.front()) = finger_of_digit(words.back());
  }
  return fingers;
}

std::vector<Finger> octave_fingers(ScaleName name, Hand hand) {
  std::vector<Finger> fingers;
  if (!fingers_stand_here(name.kind)) {
    fingers = chromatic_octaves(name.tonic, hand, 1);
  } else {
    const std::string_view words = fingers_of(name, hand).fingers;
    fingers = repeated(words.substr(0, words.find(' ')), 0, 1);
  }
  fingers.pop_back();
  return fingers;
}

std::string_view other_fingers(ScaleName name, Hand hand) {
  if (!fingers_stand_here(name.kind)) return {};
  return fingers_of(name, hand).others;
}

std::string_view source_of_fingers(ScaleKind kind) {
  switch (kind) {
    case ScaleKind::major:
    case ScaleKind::harmonic_minor:
    case ScaleKind::melodic_minor:
      return "C.-L. Hanon, The Virtuoso Pianist (1873), no. 39";
    case ScaleKind::natural_minor:
      return "C.-L. Hanon, The Virtuoso Pianist (1873), no. 39, as the falling melodic minor";
    case ScaleKind::chromatic:
      return "C.-L. Hanon, The Virtuoso Pianist (1873), no. 40";
    case ScaleKind::major_arpeggio:
    case ScaleKind::minor_arpeggio:
      return "C.-L. Hanon, The Virtuoso Pianist (1873), no. 41";
    case ScaleKind::dominant_seventh:
    case ScaleKind::diminished_seventh:
      break;
  }
  return "J. F. Cooke, Mastering the Scales and Arpeggios (1913)";
}

}  // namespace fingerturn
