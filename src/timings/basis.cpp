#include "timings/basis.hpp"

#include <cmath>
#include <utility>

namespace latchwork::inline v0::timing {

double product(const Column& a, const Column& b) {
  double sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

double length(const Column& column) {
  return std::sqrt(product(column, column));
}

void add_times(Column& column, double times, const Column& other) {
  for (std::size_t i = 0; i < column.size(); ++i) column[i] += times * other[i];
}

// Leaves in the column what the span lacks of it.
Column Basis::sweep(Column& column) const {
  Column within(vectors_.size(), 0.0);
  for (int times = 0; times < 2; ++times) {
    for (std::size_t k = 0; k < vectors_.size(); ++k) {
      const double part = product(vectors_[k], column);
      within[k] += part;
      add_times(column, -part, vectors_[k]);
    }
  }
  return within;
}

bool Basis::add(const Column& column) {
  Column rest = column;
  Column within = sweep(rest);
  const double beyond = length(rest);
  if (beyond <= tolerance_ * length(column)) return false;
  for (double& value : rest) value /= beyond;
  within.push_back(beyond);
  vectors_.push_back(std::move(rest));
  triangle_.push_back(std::move(within));
  return true;
}

Column Basis::coordinates(const Column& column) const {
  Column rest = column;
  return sweep(rest);
}

double Basis::distance(const Column& column) const {
  Column rest = column;
  sweep(rest);
  return length(rest);
}

Column Basis::weights(const Column& target) const {
  Column out = coordinates(target);
  for (std::size_t k = out.size(); k-- > 0;) {
    out[k] /= triangle_[k][k];
    for (std::size_t i = 0; i < k; ++i) out[i] -= triangle_[k][i] * out[k];
  }
  return out;
}

}  // namespace latchwork::inline v0::timing
