#pragma once

#include <span>

namespace latchwork::inline v0 {

/// What was measured in several places of several pieces, taken apart into how the places of a piece differ and how the
/// pieces do: the one-way analysis of variance (JCGM 100:2008, H.5).
struct Pieces {
  int pieces = 0;      ///< K
  int places = 0;      ///< N
  double squares = 0;  ///< sum over the pieces of (places of it / N)^2
  double each = 0;     ///< places that a piece counts for, (N - N squares) / (K - 1)
  double between = 0;  ///< mean square between pieces; of one piece 0
  double within = 0;   ///< mean square within pieces; 0 where no piece has two places
  struct Piece {
    int piece = 0;
    double mean = 0;
  };
  Piece least;  ///< the piece with the least mean, the first of several
  Piece most;
};

/// `piece_of[i]` is the piece of `values[i]`, 0 upward; none of them without a value. O(values).
Pieces pieces_of(std::span<const double> values, std::span<const int> piece_of);

/// Probability that pieces that are alike differ as much as these; 1 where that cannot be told.
double alike(const Pieces& pieces);

}  // namespace latchwork::inline v0
