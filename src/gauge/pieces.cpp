#include "gauge/pieces.hpp"

#include <algorithm>
#include <cstddef>
#include <vector>

#include "gauge/fisher.hpp"

namespace latchwork::inline v0 {

// Sums are of differences from the first value, as in density().
Pieces pieces_of(std::span<const double> values, std::span<const int> piece_of) {
  Pieces out;
  out.places = static_cast<int>(values.size());
  if (values.empty()) return out;
  out.pieces = *std::max_element(piece_of.begin(), piece_of.end()) + 1;
  struct One {
    double sum = 0;
    double n = 0;
    double mean() const { return sum / n; }
  };
  std::vector<One> ones(static_cast<std::size_t>(out.pieces));
  double sum = 0;
  for (std::size_t i = 0; i < values.size(); ++i) {
    One& one = ones[static_cast<std::size_t>(piece_of[i])];
    one.sum += values[i] - values.front();
    one.n += 1;
    sum += values[i] - values.front();
  }
  const auto n = static_cast<double>(out.places);
  const double mean = sum / n;
  double between = 0;
  for (int piece = 0; piece < out.pieces; ++piece) {
    const One& one = ones[static_cast<std::size_t>(piece)];
    out.squares += one.n / n * (one.n / n);
    between += one.n * (one.mean() - mean) * (one.mean() - mean);
    const double its = values.front() + one.mean();
    if (piece == 0 || its < out.least.mean) out.least = {piece, its};
    if (piece == 0 || its > out.most.mean) out.most = {piece, its};
  }
  if (out.pieces > 1) {
    out.each = n * (1 - out.squares) / (out.pieces - 1);
    out.between = between / (out.pieces - 1);
  }
  if (out.places > out.pieces) {
    double within = 0;
    for (std::size_t i = 0; i < values.size(); ++i) {
      const double off = values[i] - values.front() - ones[static_cast<std::size_t>(piece_of[i])].mean();
      within += off * off;
    }
    out.within = within / (out.places - out.pieces);
  }
  return out;
}

double alike(const Pieces& pieces) {
  if (pieces.pieces < 2 || pieces.places <= pieces.pieces || pieces.between <= 0) return 1;
  if (pieces.within <= 0) return 0;
  return fisher_beyond(pieces.between / pieces.within, pieces.pieces - 1, pieces.places - pieces.pieces);
}

}  // namespace latchwork::inline v0
