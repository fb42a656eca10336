#pragma once

#include "fingerturn/score.hpp"

#include <cstddef>
#include <string>
#include <vector>

/// Lines made in code, where a test needs more of them than anyone would write down.
namespace fingerturn {

/// A finger that is not written.
inline constexpr int kNoFinger = 0;

/// The key with this MIDI note number, its black keys spelled as sharps or as flats.
Pitch pitch_with_sharps(int midi);
Pitch pitch_with_flats(int midi);

/// A note to strike.
Note note_on(int midi, int finger);

/// A score of one passage with these lines.
Score score_of(std::vector<Line> lines);

/// The image in the other hand. D4 is its own image, and so is every G# and Ab.
Line mirror_image(Line line);

/// The line in the passage notation, to show it where a test fails.
std::string notation_of(const Line& line);

/// All sequences of `length` out of `count` symbols, one after another. The first is there from the
/// start.
///
///     Sequences sequences(6, 3);
///     do { sequences[0]; } while (sequences.next());
class Sequences {
 public:
  Sequences(std::size_t count, std::size_t length) : count_(count), symbols_(length) {}

  /// Goes on to the next; false after the last.
  bool next();
  [[nodiscard]] std::size_t operator[](std::size_t place) const { return symbols_[place]; }
  [[nodiscard]] std::size_t length() const { return symbols_.size(); }
  /// How many came before this one.
  [[nodiscard]] std::size_t number() const { return number_; }

 private:
  std::size_t count_;
  std::vector<std::size_t> symbols_;
  std::size_t number_ = 0;
};

/// A number that looks like chance but is always the same for the same two.
std::size_t scrambled(std::size_t number, std::size_t place);

}  // namespace fingerturn
