#include "fit/search.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "fit/ranking.hpp"

namespace latchwork::inline v0::fitting {
namespace {

/// Searches all combinations, and passes over only those that cannot rank. It rests on what Combination promises: with
/// everything else fixed, widths never fall as a count grows, nor heights as rows grow. So errors only grow on the way
/// out from the target, and the widths with all later counts at their least and at their most bound those between.
class Search {
 public:
  Search(const FitRequest& request, Combination& combination, const Limits& limits, int most, Budget& budget)
      : limits_(limits),
        combination_(combination),
        budget_(budget),
        ranking_(most),
        most_(most),
        wide_(width_target(request)),
        high_(height_target(request)),
        ties_(ties_of(request.groups)),
        columns_most_(limits.columns_most) {
    found_.times.resize(request.groups.size());
  }

  std::vector<FitCandidate> run() && {
    if (!some_height_fits() || !leaves_columns()) return {};
    for (panels_ = limits_.panels.least; panels_ <= limits_.panels.most && !budget_.spent(); ++panels_) {
      tell(0);
      ranges_ = limits_.times;
      ranges_.push_back({std::max(limits_.edge.least, combination_.edge_least(panels_)), limits_.edge.most});
      if (ranges_.back().count() < 1) continue;
      // Whatever has the most values is searched from the target outward, so it comes last.
      order_.resize(ranges_.size());
      std::iota(order_.begin(), order_.end(), std::size_t{0});
      std::stable_sort(order_.begin(), order_.end(),
                       [&](std::size_t a, std::size_t b) { return ranges_[a].count() < ranges_[b].count(); });
      counts_.clear();
      for (const Range& range : ranges_) counts_.push_back(range.least);
      descend(0);
    }
    return std::move(ranking_).sorted();
  }

 private:
  static constexpr Count told_each = 64;

  // Tries every value of the dimensions from `depth` on; all of them are at their least, before and after.
  void descend(std::size_t depth) {
    const std::size_t dimension = order_[depth];
    if (depth + 1 == order_.size()) {
      search_last(dimension);
      return;
    }
    const Range& range = ranges_[dimension];
    set_later(depth, &Range::most);
    measure();
    // Where even the most is too narrow the best lie at that end: what is found first makes the rest pass over.
    const bool upward = combination_.width() >= wide_.least;
    for (Count i = 0; i < range.count() && !budget_.spent(); ++i) {
      if (depth == 0 && i % told_each == 0) tell(static_cast<double>(i) / static_cast<double>(range.count()));
      set_later(depth + 1, &Range::least);
      counts_[dimension] = upward ? range.least + i : range.most - i;
      const Count columns = combination_.columns(counts_);
      if (columns > columns_most_) {
        if (upward) break;
        continue;
      }
      measure();
      if (combination_.width() > wide_.most && !may_rank(columns)) break;  // more is wider still
      set_later(depth + 1, &Range::most);
      measure();
      const bool reaches = combination_.width() >= wide_.least || may_rank(columns);
      set_later(depth + 1, &Range::least);
      if (reaches) descend(depth + 1);
    }
    set_later(depth, &Range::least);
  }

  // How far the search is: whole counts of panels, and a share of the next.
  void tell(double share) {
    const auto done = static_cast<double>(panels_ - limits_.panels.least);
    budget_.tell((done + share) / static_cast<double>(limits_.panels.count()));
  }

  // Sets the dimensions from `depth` on to one end of their ranges.
  void set_later(std::size_t depth, Count Range::*end) {
    for (; depth < order_.size(); ++depth) counts_[order_[depth]] = ranges_[order_[depth]].*end;
  }

  void measure() {
    budget_.take(combination_.width_work());
    combination_.measure(panels_, counts_);
  }

  // Whether anything with the measured width's error or a greater one, and so many columns or more, can be a candidate.
  bool may_rank(Count columns) const {
    return within_width(combination_.width()) &&
           ranking_.open(rank_error(wide_.relative(combination_.width()), 0), panels_, columns);
  }

  static bool within(const std::optional<double>& tolerance, double percent) {
    return !tolerance || std::abs(percent) <= *tolerance;
  }
  bool within_width(double width) const { return within(limits_.width_tolerance, wide_.percent(width)); }
  bool within_height(double height) const { return within(limits_.height_tolerance, high_.percent(height)); }

  // Outward from the count that meets the target's least width.
  void search_last(std::size_t dimension) {
    const Range& range = ranges_[dimension];
    const Count each = combination_.columns_each(dimension);
    const Count room = columns_most_ - (combination_.columns(counts_) - range.least * each);
    if (room < 0) return;
    const Count most = std::min(range.most, room / each);
    Count wide = range.least;  // the first that is not narrower than the target
    for (Count end = most + 1; wide < end;) {
      const Count middle = wide + (end - wide) / 2;
      counts_[dimension] = middle;
      measure();
      if (combination_.width() < wide_.least) {
        wide = middle + 1;
      } else {
        end = middle;
      }
    }
    for (Count n = wide; n <= most && !budget_.spent(); ++n) {
      counts_[dimension] = n;
      measure();
      if (!may_rank(combination_.columns(counts_))) break;
      search_rows();
    }
    for (Count n = wide - 1; n >= range.least && !budget_.spent(); --n) {
      counts_[dimension] = n;
      measure();
      const double width = combination_.width();
      // Fewer columns may still win a tie, so the error alone ends this.
      if (width == 0 || !within_width(width) || !ranking_.open(rank_error(wide_.relative(width), 0))) break;
      search_rows();
    }
    counts_[dimension] = range.least;
  }

  // Whether any row count may be within the tolerance, whatever the width: else all widths would be looked through.
  bool some_height_fits() const {
    if (!limits_.height_tolerance) return true;
    constexpr double rounding = 1e-9;
    const double tolerance = *limits_.height_tolerance + rounding;
    const Count last = (Grid::max_side - limits_.rows_extra) / limits_.rows_step;
    const Count step = first_where(
        Count{0}, last, [&](Count of) { return high_.percent(combination_.heights(rows(of)).greatest) >= -tolerance; });
    return step <= last && high_.percent(combination_.heights(rows(step)).least) <= tolerance;
  }

  // A grid has so many cells at most: what has the fewest rows that may do has the most columns. Else, where those rows
  // are many, all that is wider would be looked through, and none of it is a grid. False where there are no such rows.
  bool leaves_columns() {
    constexpr double rounding = 1e-9;
    const Count last = (Grid::max_side - limits_.rows_extra) / limits_.rows_step;
    const Count step = first_where(Count{0}, last, [&](Count of) {
      if (static_cast<double>(rows(of)) <= combination_.seam_rows()) return false;
      return !limits_.height_tolerance ||
             high_.percent(combination_.heights(rows(of)).greatest) >= -(*limits_.height_tolerance + rounding);
    });
    if (step > last) return false;
    columns_most_ = std::min(limits_.columns_most, Grid::max_cells / rows(step));
    return true;
  }

  Count rows(Count step) const { return limits_.rows_extra + step * limits_.rows_step; }
  double height(Count step) const {
    budget_.take(combination_.height_work());
    return combination_.height(rows(step));
  }
  double error(Count step) const {
    return rank_error(wide_.relative(combination_.width()), high_.relative(height(step)));
  }

  // The first step from `first` to `last` for which `holds` is true, as it is for all above it; else last + 1.
  template <class Holds>
  static Count first_where(Count first, Count last, Holds&& holds) {
    for (Count end = last + 1; first < end;) {
      const Count middle = first + (end - first) / 2;
      if (holds(middle)) {
        end = middle;
      } else {
        first = middle + 1;
      }
    }
    return first;
  }

  // Offers the best row counts for the measured columns, `most` at most, or all that can still rank.
  void search_rows() {
    const Count columns = combination_.columns(counts_);
    if (columns == 0 || combination_.width() == 0) return;
    const Count rows_most = std::min<Count>(Grid::max_side, Grid::max_cells / columns);
    const Count rows_least =
        static_cast<Count>(std::floor(combination_.seam_rows())) + 1;  // something between the seams
    const Count missing = std::max<Count>(rows_least - limits_.rows_extra, 0);
    Count first = (missing + limits_.rows_step - 1) / limits_.rows_step;
    if (rows(first) > rows_most) return;
    const Count last = (rows_most - limits_.rows_extra) / limits_.rows_step;
    Count high = first_where(first, last, [&](Count step) { return height(step) >= high_.least; });
    if (limits_.height_tolerance) {
      first = first_where(first, high - 1, [&](Count step) { return within_height(height(step)); });
    }

    // Outward both ways, the lesser error first. Where the width's error is great, many heights have one error after
    // rounding: of such a run below the target the lowest rows rank first, so it is offered from its far end.
    set_columns(columns);
    Count low = high - 1;
    int left = most_;
    while (left > 0 && !budget_.spent() && (low >= first || high <= last)) {
      const bool below = high > last || (low >= first && error(low) <= error(high));
      const double level = error(below ? low : high);
      if (!ranking_.open(level, panels_, columns)) return;
      if (!below) {
        if (!within_height(height(high))) {
          high = last + 1;
          continue;
        }
        if (!offer(high++, level)) high = last + 1;  // those above rank after it
        --left;
        continue;
      }
      const Count run = first_where(first, low, [&](Count step) { return error(step) <= level; });
      for (Count step = run; step <= low && left > 0; ++step, --left) {
        if (!offer(step, level)) break;
      }
      low = run - 1;
    }
  }

  void set_columns(Count columns) {
    found_.panels = static_cast<int>(panels_);
    for (std::size_t i = 0; i < found_.times.size(); ++i)
      found_.times[i] = static_cast<int>(counts_[ties_.variable_of[i]]);
    found_.edge_columns = static_cast<int>(counts_.back());
    found_.columns = static_cast<int>(columns);
    found_.width_mm = combination_.width();
    found_.width_error_mm = wide_.error_mm(found_.width_mm);
    found_.width_error_percent = wide_.percent(found_.width_mm);
  }

  bool offer(Count step, double level) {
    found_.rows = static_cast<int>(rows(step));
    found_.height_mm = height(step);
    found_.height_error_mm = high_.error_mm(found_.height_mm);
    found_.height_error_percent = high_.percent(found_.height_mm);
    found_.error = level;
    return ranking_.offer(found_);
  }

  const Limits& limits_;
  Combination& combination_;
  Budget& budget_;
  Ranking ranking_;
  int most_;
  Target wide_;
  Target high_;
  Ties ties_;
  Count columns_most_;

  // Of the combination being looked at.
  Count panels_ = 1;
  std::vector<Range> ranges_;
  std::vector<std::size_t> order_;
  Counts counts_;
  FitCandidate found_;
};

}  // namespace

std::vector<FitCandidate> search(const FitRequest& request, Combination& combination, const Limits& limits, int most,
                                 Budget& budget) {
  return Search(request, combination, limits, most, budget).run();
}

}  // namespace latchwork::inline v0::fitting
