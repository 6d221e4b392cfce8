#pragma once

#include <string>
#include <vector>

#include "latchwork/article_fit.hpp"
#include "latchwork/brief.hpp"
#include "latchwork/error.hpp"

namespace latchwork::inline v0::report {

struct Barrier;

/// How a piece of the brief's article is measured: seams where its edges are seamed.
SizeOptions piece_measuring(const Brief& brief, const TargetPiece& piece);

/// What of the piece's shape bars that panel of a candidate, which fitted_piece() refused with that error: the first
/// of shape_findings(), with what would help, or, where there is no outline at all, what the error says.
Barrier shape_barrier(const Brief& brief, const TargetPiece& piece, const FitCandidate& candidate, int index,
                      const Error& error);

/// The size of a piece in its shape: ", 20.0 cm wide at the cast-on, 32.0 cm in row 132, ...".
std::string shape_size_words(const Brief& brief, const TargetPiece& piece, const Panel& panel);

/// What the shape makes of the hand work, for people: what is knitted plain in the edge stitches.
std::vector<std::string> shape_advice(const Panel& straight, const Panel& cut);

}  // namespace latchwork::inline v0::report
