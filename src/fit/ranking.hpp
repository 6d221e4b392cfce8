#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <tuple>
#include <utility>
#include <vector>

#include "latchwork/fit.hpp"

namespace latchwork::inline v0::fitting {

/// The error of a candidate. Rounding makes ties of what differs by rounding only.
inline double rank_error(double width_error, double height_error) {
  constexpr double unit = 1e-12;
  return std::round(std::sqrt(width_error * width_error + height_error * height_error) / unit) * unit;
}

/// The order of the ranking.
inline bool ranks_before(const FitCandidate& a, const FitCandidate& b) {
  return std::tie(a.error, a.panels, a.columns, a.rows, a.edge_columns, a.times) <
         std::tie(b.error, b.panels, b.columns, b.rows, b.edge_columns, b.times);
}

/// The best candidates so far: a heap with the worst of them on top.
class Ranking {
 public:
  explicit Ranking(int most) : most_(static_cast<std::size_t>(most)) {}

  /// False when nothing with this error or a greater one can be among the best any more.
  bool open(double error) const { return heap_.size() < most_ || error <= heap_.front().error; }

  /// Likewise for what also has so many panels and columns, or more.
  bool open(double error, std::int64_t panels, std::int64_t columns) const {
    if (heap_.size() < most_) return true;
    const FitCandidate& worst = heap_.front();
    const std::int64_t worst_panels = worst.panels;
    const std::int64_t worst_columns = worst.columns;
    return std::tie(error, panels, columns) <= std::tie(worst.error, worst_panels, worst_columns);
  }

  /// Whether it is among the best so far.
  bool offer(const FitCandidate& candidate) {
    if (heap_.size() == most_) {
      if (!ranks_before(candidate, heap_.front())) return false;
      std::pop_heap(heap_.begin(), heap_.end(), ranks_before);
      heap_.pop_back();
    }
    heap_.push_back(candidate);
    std::push_heap(heap_.begin(), heap_.end(), ranks_before);
    return true;
  }

  std::vector<FitCandidate> sorted() && {
    std::sort_heap(heap_.begin(), heap_.end(), ranks_before);
    return std::move(heap_);
  }

 private:
  std::size_t most_;
  std::vector<FitCandidate> heap_;
};

}  // namespace latchwork::inline v0::fitting
