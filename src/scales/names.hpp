#pragma once

#include "scales/kinds.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The names of scales and arpeggios.
namespace fingerturn {

/// A tonic (the root of an arpeggio), as its place on the line of fifths, and a kind.
struct ScaleName {
  int tonic = 0;
  ScaleKind kind = ScaleKind::major;

  friend bool operator==(const ScaleName&, const ScaleName&) = default;
};

/// All names, by kind and then from the flattest to the sharpest.
std::vector<ScaleName> all_scale_names();

/// "B-flat natural minor", "E-flat major arpeggio".
std::string to_string(ScaleName name);

/// A name as it was typed: the scale, or why it is none, for a person.
struct ReadScaleName {
  std::optional<ScaleName> name;
  std::string problem;
  bool is_unknown = false;  ///< no name comes near
};

/// Reads a name in any letters: the tonic with a sign ("Bb", "F#", also printed ones) or a word
/// ("B-flat", "f sharp"), then the kind, "scale" after it where it is one. Plain "minor" is the
/// natural one. "Cm" and "Es-Dur" are read as well; of two names in one each is told.
ReadScaleName read_scale_name(std::string_view text);

}  // namespace fingerturn
