#pragma once

#include "fingerturn/scale.hpp"
#include "scales/names.hpp"

#include <cstddef>
#include <string>
#include <vector>

/// What is asked for of a scale, and what of it each hand has to play.
namespace fingerturn {

struct ScaleTask {
  ScaleName name;
  ScaleOptions options;
};

/// What one hand plays: whole octaves from the lowest note, there and perhaps back.
struct HandTask {
  ScaleName name;
  Hand hand = Hand::right;
  std::size_t first_note = 0;  ///< the lowest, counted from the tonic within an octave
  int lowest_key = 0;          ///< its MIDI note number
  int octaves = 1;
  bool falls_first = false;
  bool returns = false;
  ScaleNotes notes = ScaleNotes::single;

  [[nodiscard]] bool rises() const noexcept { return !falls_first || returns; }
  [[nodiscard]] bool falls() const noexcept { return falls_first || returns; }
};

/// Why there is no such scale, in whatever register; empty where there is one.
std::string problem_of(const ScaleTask& task);

/// What the hands play in the register that is asked for, or else in a middle one, the right hand's
/// first. There must be no problem.
std::vector<HandTask> hand_tasks_of(const ScaleTask& task);

/// The same, so many octaves higher.
std::vector<HandTask> shifted(std::vector<HandTask> tasks, int octaves);

/// "B-flat major", "E-flat major arpeggio, first inversion".
std::string name_of(const ScaleTask& task);

/// "B-flat major scale in thirds, both hands in contrary motion, 2 octaves, up and down".
std::string title_of(const ScaleTask& task);

}  // namespace fingerturn
