#pragma once

#include "corpus.hpp"

namespace fingerturn::bench {

/// In the lines of a piece of which half the struck notes or more have a printed finger, how many
/// strokes turn the forearm the way they do with all printed fingers (what has none is filled in),
/// when nothing is given, and when three in ten are.
struct TurnsMet {
  Met none;
  Met some;

  TurnsMet& operator+=(const TurnsMet& other) noexcept;
};

TurnsMet turns_met(const Piece& piece, const Model& model);

}  // namespace fingerturn::bench
