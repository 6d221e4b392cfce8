#include "shaping/curve.hpp"

#include <algorithm>

namespace latchwork::inline v0::shaping {
namespace {

double chord(const EdgePoint& from, const EdgePoint& to) {
  return (to.columns - from.columns) / (to.row - from.row);
}

/// Harmonic mean weighted by the neighbours' heights (Fritsch and Butland): 0 at a turn, and never so steep that the
/// curve would pass a point's columns.
double inner_slope(const EdgePoint& below, const EdgePoint& here, const EdgePoint& above) {
  const double lower = chord(below, here);
  const double upper = chord(here, above);
  if (lower * upper <= 0) return 0;
  const double h0 = here.row - below.row;
  const double h1 = above.row - here.row;
  const double w0 = 2 * h1 + h0;
  const double w1 = h1 + 2 * h0;
  return (w0 + w1) / (w0 / lower + w1 / upper);
}

}  // namespace

EdgeCurve::EdgeCurve(std::span<const EdgePoint> points, EdgeLine line) : points_(points) {
  if (line == EdgeLine::straight) return;
  slopes_.resize(points.size(), 0);
  for (std::size_t i = 0; i < points.size(); ++i) {
    // A step ends one curve and begins another.
    const bool below = i > 0 && points[i - 1].row < points[i].row;
    const bool above = i + 1 < points.size() && points[i].row < points[i + 1].row;
    if (below && above) {
      slopes_[i] = inner_slope(points[i - 1], points[i], points[i + 1]);
    } else if (below) {
      slopes_[i] = chord(points[i - 1], points[i]);
    } else if (above) {
      slopes_[i] = chord(points[i], points[i + 1]);
    }
  }
}

double EdgeCurve::at(double row) const {
  const auto above = std::find_if(points_.begin(), points_.end(), [&](const EdgePoint& p) { return p.row >= row; });
  if (above == points_.begin()) return points_.front().columns;
  if (above == points_.end()) return points_.back().columns;
  const EdgePoint& from = *(above - 1);
  const double height = above->row - from.row;
  const double t = (row - from.row) / height;
  if (slopes_.empty()) return from.columns + t * (above->columns - from.columns);
  const auto index = static_cast<std::size_t>(above - points_.begin());
  // Hermite's cubic, in the form that is exact at both ends.
  const double rise = above->columns - from.columns;
  const double value = from.columns + t * t * (3 - 2 * t) * rise +
                       height * t * (1 - t) * ((1 - t) * slopes_[index - 1] - t * slopes_[index]);
  const auto [least, most] = std::minmax(from.columns, above->columns);
  return std::clamp(value, least, most);  // the last digit may pass them
}

}  // namespace latchwork::inline v0::shaping
