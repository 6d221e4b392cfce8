#pragma once

#include <cstddef>
#include <vector>

namespace latchwork::inline v0::timing {

using Column = std::vector<double>;

/// A column whose distance from a span is this share of its own length or less counts as lying within it.
inline constexpr double rank_tolerance = 1e-7;

double product(const Column& a, const Column& b);
double length(const Column& column);
/// column += times * other
void add_times(Column& column, double times, const Column& other);

/// The span of some columns: orthonormal vectors, and the triangle that makes the columns of them. Modified
/// Gram-Schmidt with each column swept twice, which leaves the vectors orthogonal to rounding (L. Giraud, J. Langou and
/// M. Rozloznik, 2005), so that a distance from the span can be trusted.
class Basis {
 public:
  explicit Basis(double tolerance = rank_tolerance) : tolerance_(tolerance) {}

  /// Takes the column in, unless it lies within the span already: then false.
  bool add(const Column& column);
  std::size_t rank() const { return vectors_.size(); }
  const std::vector<Column>& vectors() const { return vectors_; }
  /// The column's products with the vectors.
  Column coordinates(const Column& column) const;
  /// Length of what the span lacks of the column.
  double distance(const Column& column) const;
  /// How much of each column taken in makes the sum nearest to `target` (least squares).
  Column weights(const Column& target) const;

 private:
  Column sweep(Column& column) const;

  double tolerance_;
  std::vector<Column> vectors_;
  std::vector<Column> triangle_;  ///< triangle_[k]: coordinates of the k-th column taken in
};

}  // namespace latchwork::inline v0::timing
