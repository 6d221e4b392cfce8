#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "gauge/gauges.hpp"
#include "latchwork/error.hpp"
#include "latchwork/schematic.hpp"
#include "latchwork/shaping.hpp"
#include "schematic/edge.hpp"
#include "schematic/layout.hpp"
#include "shaping/check.hpp"
#include "shaping/strips.hpp"
#include "size/bands.hpp"

namespace latchwork::inline v0 {
namespace {

using schematics::DrawnEdge;
using schematics::EdgeRun;

constexpr double told_from_mm = 0.5;
constexpr double step_from_mm = 25;      // less is bound off at the beginning of a slope
constexpr double straight_from_mm = 10;  // a shorter straight part is the first row or two of a slope

/// Where every row of a panel lies between its seams.
class Lay {
 public:
  Lay(const Panel& panel, const Gauges& gauges, const SizeOptions& options)
      : options_(options),
        lays_(shaping::lay_of(panel, gauges, options, CutOff::left_out)),
        rows_(shaping::rows_of(panel, lays_)),
        outline_(outline_of(panel.grid())) {
    first_ = static_cast<int>(std::floor(options.seam_bottom)) + 1;
    last_ = static_cast<int>(std::ceil(panel.grid().rows() - options.seam_top));
    place_bands();
    for (int row = first_; row <= last_; ++row) require_width(row);
    for (int row = first_ + 1; row <= last_; ++row) require_standing(row);
  }

  int first() const { return first_; }  ///< row that is not wholly in a seam
  int last() const { return last_; }
  double bottom_of(int row) const { return row == 1 ? 0 : rows_[index(row) - 1].top_mm; }
  double top_of(int row) const { return rows_[index(row)].top_mm; }
  double left_of(int row) const { return x_of(row, outline_.rows[index(row)].first + options_.seam_left); }
  double right_of(int row) const { return x_of(row, outline_.rows[index(row)].last + 1 - options_.seam_right); }
  double width_of(int row) const { return right_of(row) - left_of(row); }
  /// The row whose upper end is at that height.
  int row_below(double mm) const {
    const auto past = std::upper_bound(rows_.begin(), rows_.end(), mm + 1e-6,
                                       [](double at, const shaping::RowLay& row) { return at < row.top_mm; });
    return std::clamp(static_cast<int>(past - rows_.begin()), first_, last_);
  }

  /// One side, from the bottom up. Bands whose columns lie alike are one.
  std::vector<EdgeRun> runs(bool left) const {
    std::vector<EdgeRun> out;
    for (int row = first_; row <= last_; ++row) {
      const RowSpan& span = outline_.rows[index(row)];
      const int edge = left ? span.first : span.last + 1;
      const bool shifted = row > first_ && shifts(row, out.back().edge, left);
      if (out.empty() || out.back().edge != edge || shifted) {
        out.push_back({left ? left_of(row) : right_of(row), bottom_of(row), top_of(row), edge, 1, shifted});
      } else {
        out.back().high_mm = top_of(row);
        ++out.back().rows;
      }
    }
    return out;
  }

 private:
  static std::size_t index(int row) { return static_cast<std::size_t>(row) - 1; }

  /// Bands stand on the middle of the columns that they share: there one is knitted onto the other.
  void place_bands() {
    left_mm_.assign(1, 0);
    for (int row = 2; row <= static_cast<int>(outline_.rows.size()); ++row) {
      const RowSpan shared =
          shaping::shared_columns(outline_.rows[index(row - 1)], outline_.rows[index(row)], row, "grid");
      const std::size_t band = rows_[index(row)].band;
      if (band + 1 == left_mm_.size()) continue;
      const auto middle = [&](std::size_t of) {
        return (lays_[of].column_mm[static_cast<std::size_t>(shared.first)] +
                lays_[of].column_mm[static_cast<std::size_t>(shared.last) + 1]) /
               2;
      };
      left_mm_.push_back(left_mm_.back() + middle(band - 1) - middle(band));
    }
    // Of the bands that are drawn, the leftmost begins at 0, with what a seam takes.
    const auto from = left_mm_.begin() + static_cast<std::ptrdiff_t>(rows_[index(first_)].band);
    const auto to = left_mm_.begin() + static_cast<std::ptrdiff_t>(rows_[index(last_)].band) + 1;
    const double least = *std::min_element(from, to);
    for (double& left : left_mm_) left -= least;
  }

  // size() lets a row be wholly in its seams where another is not; an outline cannot.
  void require_width(int row) const {
    const RowSpan& span = outline_.rows[index(row)];
    if (span.last + 1 - span.first > options_.seam_left + options_.seam_right) return;
    Place place;
    place.row = row;
    place.field = side_field(options_);
    throw Error(ErrorCode::bad_argument, place, fmt::format("seams take all stitches of row {}", row));
  }

  // Nor can an outline be in two pieces.
  void require_standing(int row) const {
    constexpr double least_mm = 0.01;
    const double left = std::max(left_of(row - 1), left_of(row));
    const double right = std::min(right_of(row - 1), right_of(row));
    if (left + least_mm < right) return;
    Place place;
    place.row = row;
    place.field = side_field(options_);
    throw Error(ErrorCode::bad_argument, place,
                fmt::format("seams take all stitches on which row {} stands on the row below", row));
  }

  /// Whether the row begins a band in which that edge lies elsewhere than in the row below.
  bool shifts(int row, int edge, bool left) const {
    if (rows_[index(row)].band == rows_[index(row) - 1].band) return false;
    const double column = left ? edge + options_.seam_left : edge - options_.seam_right;
    return std::abs(x_of(row, column) - x_of(row - 1, column)) > 1e-6;
  }

  /// The place of a column's left edge, or of half a column.
  double x_of(int row, double column) const {
    const std::size_t band = rows_[index(row)].band;
    return left_mm_[band] + lays_[band].mm_at(column);
  }

  const SizeOptions& options_;
  int first_ = 1;
  int last_ = 1;
  std::vector<shaping::BandLay> lays_;
  std::vector<shaping::RowLay> rows_;
  Outline outline_;
  std::vector<double> left_mm_;  ///< of each band's column 0
};

/// How far one side reaches at heights that rise: at a step from one place to another.
class Reach {
 public:
  explicit Reach(const std::vector<OutlinePoint>& corners) : corners_(corners) {}

  std::pair<double, double> at(double y) {
    while (next_ < corners_.size() && corners_[next_].y_mm < y) ++next_;
    if (next_ == corners_.size()) return {corners_.back().x_mm, corners_.back().x_mm};
    const OutlinePoint& above = corners_[next_];
    if (above.y_mm > y && next_ > 0) {
      const OutlinePoint& below = corners_[next_ - 1];
      const double x = below.x_mm + (y - below.y_mm) / (above.y_mm - below.y_mm) * (above.x_mm - below.x_mm);
      return {x, x};
    }
    std::pair out{above.x_mm, above.x_mm};
    for (std::size_t i = next_; i < corners_.size() && corners_[i].y_mm <= y; ++i) {
      out = {std::min(out.first, corners_[i].x_mm), std::max(out.second, corners_[i].x_mm)};
    }
    return out;
  }

 private:
  const std::vector<OutlinePoint>& corners_;
  std::size_t next_ = 0;
};

/// Whether the left side is left of the right one all the way.
bool apart(const std::vector<OutlinePoint>& left, const std::vector<OutlinePoint>& right) {
  constexpr double least_mm = 0.01;  // what is nearer may meet where it is drawn
  std::vector<double> heights;
  heights.reserve(left.size() + right.size());
  for (const OutlinePoint& point : left) heights.push_back(point.y_mm);
  for (const OutlinePoint& point : right) heights.push_back(point.y_mm);
  std::sort(heights.begin(), heights.end());
  Reach left_reach(left);
  Reach right_reach(right);
  return std::all_of(heights.begin(), heights.end(),
                     [&](double y) { return left_reach.at(y).second + least_mm < right_reach.at(y).first; });
}

/// A height of one side, told of that side if the other is shaped and has another or none.
struct SideHeight {
  std::string label;
  MeasureSide side = MeasureSide::left;
  double mm = 0;
};

std::vector<SideHeight> side_heights(const std::string& label, const DrawnEdge& left, const DrawnEdge& right,
                                     std::optional<double> DrawnEdge::*at, double row_mm) {
  const std::optional<double>& on_left = left.*at;
  const std::optional<double>& on_right = right.*at;
  if (on_left && on_right && std::abs(*on_left - *on_right) <= row_mm / 2)
    return {{label, MeasureSide::left, *on_left}};
  std::vector<SideHeight> out;
  if (on_left) out.push_back({label + (right.shaped ? ", left edge" : ""), MeasureSide::left, *on_left});
  if (on_right) out.push_back({label + (left.shaped ? ", right edge" : ""), MeasureSide::right, *on_right});
  return out;
}

/// A step of an edge that is drawn as one, far enough to be measured.
struct Step {
  double y_mm = 0;
  MeasureSide side = MeasureSide::left;
};

/// From the bottom up; of a height at which both edges step, one.
std::vector<Step> steps_of(const std::vector<OutlinePoint>& left, const std::vector<OutlinePoint>& right) {
  std::vector<Step> out;
  const auto add = [&](const std::vector<OutlinePoint>& corners, MeasureSide side) {
    for (std::size_t i = 1; i < corners.size(); ++i) {
      const OutlinePoint& from = corners[i - 1];
      const OutlinePoint& to = corners[i];
      if (to.y_mm - from.y_mm > 1e-6 || std::abs(to.x_mm - from.x_mm) < step_from_mm) continue;
      const auto same = [&](const Step& step) { return std::abs(step.y_mm - to.y_mm) < told_from_mm; };
      if (std::none_of(out.begin(), out.end(), same)) out.push_back({to.y_mm, side});
    }
  };
  add(left, MeasureSide::left);
  add(right, MeasureSide::right);
  std::stable_sort(out.begin(), out.end(), [](const Step& a, const Step& b) { return a.y_mm < b.y_mm; });
  return out;
}

}  // namespace

SchematicPiece schematic_piece(const Panel& panel, const Swatch& swatch, const SizeOptions& options) {
  require_size_options(options, panel);
  const Gauges gauges(swatch, options.state, options.substitutes);
  const Lay lay(panel, gauges, options);
  SchematicPiece piece;
  piece.name = panel.name();
  const int first = lay.first();
  const int last = lay.last();
  int widest = first;
  for (int row = first + 1; row <= last; ++row) {
    if (lay.width_of(row) > lay.width_of(widest)) widest = row;
  }
  const bool widest_told = lay.width_of(widest) >= std::max(lay.width_of(first), lay.width_of(last)) + told_from_mm;
  std::vector<double> fixed_mm;
  if (widest_told) fixed_mm.push_back(lay.bottom_of(widest));
  const std::vector<EdgeRun> left_runs = lay.runs(true);
  const std::vector<EdgeRun> right_runs = lay.runs(false);
  DrawnEdge left = drawn_edge(left_runs, fixed_mm);
  DrawnEdge right = drawn_edge(right_runs, fixed_mm);
  // Where a piece is a stitch or two wide, two slopes might meet.
  if (!apart(left.corners, right.corners)) {
    left.corners = stepped_edge(left_runs);
    right.corners = stepped_edge(right_runs);
  }
  piece.outline.assign(left.corners.rbegin(), left.corners.rend());
  piece.outline.insert(piece.outline.end(), right.corners.begin(), right.corners.end());

  const auto width = [&](const char* label, MeasureSide side, int row, double y) {
    piece.measures.push_back({label, side, {lay.left_of(row), y}, {lay.right_of(row), y}, lay.width_of(row), {}});
  };
  const auto height = [&](const std::string& label, MeasureSide side, int low_row, double low, int high_row,
                          double high) {
    const bool left_side = side == MeasureSide::left;
    const double from = left_side ? lay.left_of(low_row) : lay.right_of(low_row);
    const double to = left_side ? lay.left_of(high_row) : lay.right_of(high_row);
    piece.measures.push_back({label, side, {from, low}, {to, high}, high - low, {}});
  };
  const double total = lay.top_of(last);
  width("width at the cast-on", MeasureSide::bottom, first, 0);
  if (widest_told) {
    width("width at the widest row", MeasureSide::bottom, widest, lay.bottom_of(widest));
  }
  if (std::abs(lay.width_of(last) - lay.width_of(first)) >= told_from_mm) {
    width("width at the last row", MeasureSide::top, last, total);
  }
  height("height", MeasureSide::right, first, 0, last, total);
  if (widest_told) height("height to the widest row", MeasureSide::left, first, 0, widest, lay.bottom_of(widest));
  // A side that is shaped from its very end on has no straight part to tell.
  for (const SideHeight& each :
       side_heights("height to the first shaping", left, right, &DrawnEdge::first_shaping_mm, lay.top_of(first))) {
    if (each.mm < straight_from_mm || each.mm > total - told_from_mm) continue;
    // A side that is shaped first by the step to its widest row has been told of that height.
    const bool is_widest = widest_told && std::abs(each.mm - lay.bottom_of(widest)) < told_from_mm;
    if (is_widest && each.side == MeasureSide::left) continue;
    height(each.label, each.side, first, 0, lay.row_below(each.mm), each.mm);
  }
  for (const SideHeight& each : side_heights("height above the last shaping", left, right, &DrawnEdge::last_shaping_mm,
                                             total - lay.bottom_of(last))) {
    if (total - each.mm < straight_from_mm || each.mm < told_from_mm) continue;
    height(each.label, each.side, std::min(lay.row_below(each.mm) + 1, last), each.mm, last, total);
  }
  constexpr std::size_t most_steps = 4;  // of more it is a staircase, whose numbers the words tell
  const std::vector<Step> steps = steps_of(left.corners, right.corners);
  for (std::size_t i = 0; i < steps.size() && steps.size() <= most_steps; ++i) {
    const Step& step = steps[i];
    const int below = lay.row_below(step.y_mm);
    if (below >= last || step.y_mm < told_from_mm) continue;
    const std::string name = steps.size() == 1 ? "the step" : fmt::format("step {}", i + 1);
    const auto is_new = [&](int row) {
      return std::none_of(piece.measures.begin(), piece.measures.end(), [&](const SchematicMeasure& told) {
        return schematics::across(told.side) && std::abs(told.mm - lay.width_of(row)) < told_from_mm;
      });
    };
    if (is_new(below)) width(("width below " + name).c_str(), MeasureSide::bottom, below, step.y_mm);
    if (is_new(below + 1)) width(("width above " + name).c_str(), MeasureSide::top, below + 1, step.y_mm);
    const bool told = std::any_of(piece.measures.begin(), piece.measures.end(), [&](const SchematicMeasure& each) {
      return !schematics::across(each.side) && std::abs(each.mm - step.y_mm) < told_from_mm;
    });
    if (!told) height("height to " + name, step.side, first, 0, below, step.y_mm);
  }
  std::vector<Finding> found;
  find_gauges(textures_of(panel), gauges, found);
  std::string borrowed;  // one note, however many textures there are
  for (const Finding& finding : found) {
    if (finding.code == FindingCode::borrowed_gauge) borrowed += (borrowed.empty() ? "" : "; ") + finding.message;
  }
  if (!borrowed.empty()) piece.notes.push_back("Borrowed gauge: " + borrowed + ".");
  return piece;
}

}  // namespace latchwork::inline v0
