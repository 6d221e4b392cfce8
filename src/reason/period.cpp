#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <vector>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"
#include "latchwork/reason.hpp"
#include "plan/stops.hpp"

namespace latchwork::inline v0 {
namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

/// Rows 0..R as a word of kinds of stop, -1 where there is none, and the best of its repetitions: stretches that are
/// alike a period on and are gone through at least twice.
///
/// A repetition that crosses the middle of a stretch holds a whole turn that begins or ends at the middle. So for each
/// length of the turn it is enough to see how far the rows go on being alike up and down from there, which one pass
/// finds for all lengths (Main and Lorentz, An O(n log n) algorithm for finding all repetitions in a string, Journal of
/// Algorithms 5, 1984); those that do not cross lie in one half.
class Repetitions {
 public:
  explicit Repetitions(const std::vector<int>& kind_at) : kind_at_(kind_at), stops_(kind_at.size() + 1, 0) {
    for (std::size_t row = 0; row < kind_at.size(); ++row) stops_[row + 1] = stops_[row] + (kind_at[row] >= 0 ? 1 : 0);
  }

  Period best() {
    look_through(0, static_cast<int>(kind_at_.size()));
    best_.stops = stops(best_.from_row, best_.from_row + best_.rows);
    return best_;
  }

 private:
  int stops(int first, int end) const { return stops_[at(end)] - stops_[at(first)]; }

  // The longest; then the shortest turn; then the lowest.
  void offer(int first, int end, int rows) {
    const int covered = end - first;
    if (covered < 2 * rows || stops(first, end) == 0) return;
    const int before = best_.rows > 0 ? best_.last_row - best_.from_row + 1 : 0;
    if (covered < before) return;
    if (covered == before && (rows > best_.rows || (rows == best_.rows && first >= best_.from_row))) return;
    best_ = {first, end - 1, rows, covered / rows, 0};
  }

  // For each place of a word, how far it goes on there like at its beginning.
  template <class Letter>
  static void alike_with_beginning(int size, std::vector<int>& alike, Letter&& letter) {
    alike.assign(at(size) + 1, 0);
    if (size == 0) return;
    alike[0] = size;
    int from = 0;  // the stretch alike that reaches furthest
    int end = 0;
    for (int i = 1; i < size; ++i) {
      int same = i < end ? std::min(end - i, alike[at(i - from)]) : 0;
      while (i + same < size && letter(same) == letter(i + same)) ++same;
      alike[at(i)] = same;
      if (i + same <= end) continue;
      from = i;
      end = i + same;
    }
  }

  void look_through(int first, int end) {
    if (end - first < 2) return;
    const int middle = first + (end - first) / 2;
    across(first, middle, end);
    look_through(first, middle);
    look_through(middle, end);
  }

  void across(int first, int middle, int end) {
    const int below = middle - first;
    const int above = end - middle;
    // The upper half against itself and then the lower against it; the lower against itself, and the upper, downward.
    // A letter that is none (-2) keeps two words apart.
    const auto up = [&](int i) {
      return i < above ? kind_at_[at(middle + i)] : i == above ? -2 : kind_at_[at(first + i - above - 1)];
    };
    const auto down = [&](int i) {
      return i < below ? kind_at_[at(middle - 1 - i)] : i == below ? -2 : kind_at_[at(end - 1 - (i - below - 1))];
    };
    alike_with_beginning(above + 1 + below, up_, up);
    alike_with_beginning(below + 1 + above, down_, down);
    // A turn from the middle up: row middle + i against middle + rows + i, and downward from both; and one from the
    // middle down. What is alike through a whole turn goes on as the other half does against itself.
    for (int rows = 1; rows <= std::max(below, above); ++rows) {
      const int more = rows < above ? up_[at(rows)] : 0;
      const int less = rows < below ? down_[at(rows)] : 0;
      if (rows <= above) {
        const int lower = down_[at(below + 1 + above - rows)];
        offer(middle - lower - (lower == rows ? less : 0), middle + rows + more, rows);
      }
      if (rows <= below) {
        const int upper = up_[at(above + 1 + below - rows)];
        offer(middle - rows - less, middle + upper + (upper == rows ? more : 0), rows);
      }
    }
  }

  const std::vector<int>& kind_at_;
  std::vector<int> stops_;  // below each row
  std::vector<int> up_, down_;
  Period best_;
};

}  // namespace

Period plan_period(const Plan& plan) {
  if (plan.rows < 0 || plan.rows > Grid::max_side) {
    refuse(plan.rows < 0 ? ErrorCode::bad_argument : ErrorCode::too_large, "rows",
           fmt::format("a plan of {} rows; it may have 0 to {}", plan.rows, Grid::max_side));
  }
  if (plan.status == PlanStatus::infeasible) return {};
  require_stops_rise(plan);
  std::vector<int> kind_at(at(plan.rows) + 1, -1);
  const std::vector<int> kinds = stop_kinds(plan);
  for (std::size_t i = 0; i < plan.stops.size(); ++i) {
    kind_at[at(plan.stops[i].row)] = kinds[i];
  }
  return Repetitions(kind_at).best();
}

}  // namespace latchwork::inline v0
