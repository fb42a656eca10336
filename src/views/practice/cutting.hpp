#pragma once

#include "fingerturn/analysed.hpp"
#include "fingerturn/practice.hpp"

#include <cstddef>
#include <vector>

namespace fingerturn {

/// A passage of which stretches are cut out, each with what turns otherwise in it. Where the music
/// is asked for once more in other values, its turns stay those of the same notes.
class Cutting {
 public:
  /// The bars around a place, so that cutting takes no longer in a long piece.
  Cutting(const AnalysedPassage& piece, BarRange around);

  [[nodiscard]] const AnalysedPassage& piece() const noexcept { return piece_; }
  /// Whether an event lies in the bars around.
  [[nodiscard]] bool reaches(const Event& event) const noexcept {
    return around_.contains(event.bar);
  }

  /// Events of one hand, by their places in Line::events of the piece, both included. They must lie
  /// in the bars around.
  [[nodiscard]] PracticeMusic events(Hand hand, std::size_t first, std::size_t last) const;
  /// The same events, each so many whole notes long.
  [[nodiscard]] PracticeMusic in_values(const PracticeMusic& events,
                                        const std::vector<Fraction>& values) const;
  /// Bars of both hands.
  [[nodiscard]] PracticeMusic bars(BarRange bars) const;

 private:
  /// Sets what turns otherwise than in the piece.
  void finish(PracticeMusic& music) const;
  [[nodiscard]] std::size_t places_before(Hand hand) const;

  AnalysedPassage piece_;
  BarRange around_;
  Passage here_;
};

}  // namespace fingerturn
