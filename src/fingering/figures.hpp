#pragma once

#include "fingering/grips.hpp"
#include "fingerturn/score.hpp"
#include "scales/names.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

/// Figures of the trade: what every pianist fingers by habit, recognised by the keys alone. What is
/// a figure, and which fingers it has, is said in docs/fingering.md.
namespace fingerturn {

enum class FigureKind : std::uint8_t {
  run,
  broken_octaves,
  trill,
  tremolo,
  repeated_notes,
  five_fingers
};

/// A run of single notes, of thirds or of sixths one after another, up or down, that belong to a
/// scale or an arpeggio; or notes in one place of the hand.
struct Figure {
  std::size_t begin = 0;  ///< in the grips of the line
  std::size_t end = 0;    ///< past its last
  /// The scale or arpeggio whose fingers it has; none where its first note takes the thumb as a
  /// tonic would.
  std::optional<ScaleName> name;
  bool is_whole = false;  ///< from tonic to tonic
  bool is_arpeggio = false;
  int inversion = 0;  ///< of a whole arpeggio
  std::vector<Finger>
      fingers;  ///< one for each grip, of double notes that nearer to the thumb's side
  std::vector<Finger> far_fingers;  ///< of double notes the other
  FigureKind kind = FigureKind::run;
};

/// The figures of a hand, in their order; a note on which one turns into the next belongs to both,
/// and has the finger that leads on.
std::vector<Figure> figures_of(Hand hand, const std::vector<Grip>& grips);

/// "E-flat major scale, fingers of the handbook": what a figure of a line is, for a person.
std::string words_of(const Figure& figure, const Line& line, std::span<const Grip> grips);

/// Gives octaves the thumb and, on white keys, the fifth finger, on black ones the fourth (common
/// practice, no source); only the first is held to as to a handbook.
void mark_octaves(std::vector<Grip>& grips) noexcept;

/// Gives every key of figures the finger that is usual there.
void mark_figures(const std::vector<Figure>& figures, std::vector<Grip>& grips) noexcept;

}  // namespace fingerturn
