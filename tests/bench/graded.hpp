#pragma once

#include "corpus.hpp"

#include <string>
#include <vector>

namespace fingerturn::bench {

/// A collection whose pieces are printed in the order of their difficulty, and how well the
/// difficulty that is told follows it.
struct Graded {
  std::string name;
  std::size_t pieces = 0;
  double rank_correlation = 0;  ///< Spearman's, from -1 to 1
};

/// Of the collections that are among the pieces, told by the names of their files.
std::vector<Graded> graded_collections(const std::vector<Piece>& pieces);

/// The difficulty of both hands together, with printed fingers and what fills them in.
double difficulty_told(const Piece& piece);

}  // namespace fingerturn::bench
