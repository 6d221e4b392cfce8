#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <vector>

#include "gauge/gauges.hpp"
#include "latchwork/error.hpp"
#include "latchwork/schematic.hpp"
#include "latchwork/shaping.hpp"
#include "shaping/check.hpp"
#include "shaping/strips.hpp"
#include "size/bands.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr double told_from_mm = 0.5;
constexpr double straight_from_mm = 10;  // a shorter straight part is the first row or two of a slope

/// Rows with one edge, in one band.
struct Run {
  double x_mm = 0;
  double low_mm = 0;
  double high_mm = 0;
  int edge = 0;  ///< columns from the left
  std::size_t band = 0;
};

/// Where every row of a panel lies between its seams.
class Lay {
 public:
  Lay(const Panel& panel, const Gauges& gauges, const SizeOptions& options)
      : options_(options),
        lays_(shaping::lay_of(panel, gauges, options)),
        rows_(shaping::rows_of(panel, lays_, options)),
        outline_(outline_of(panel.grid())) {
    first_ = static_cast<int>(std::floor(options.seam_bottom)) + 1;
    last_ = static_cast<int>(std::ceil(panel.grid().rows() - options.seam_top));
    place_bands();
    for (int row = first_; row <= last_; ++row) require_width(row);
  }

  int first() const { return first_; }  ///< row that is not wholly in a seam
  int last() const { return last_; }
  const Outline& outline() const { return outline_; }
  double bottom_of(int row) const { return row == 1 ? 0 : rows_[index(row) - 1].top_mm; }
  double top_of(int row) const { return rows_[index(row)].top_mm; }
  double left_of(int row) const { return x_of(row, outline_.rows[index(row)].first + options_.seam_left); }
  double right_of(int row) const { return x_of(row, outline_.rows[index(row)].last + 1 - options_.seam_right); }
  double width_of(int row) const { return right_of(row) - left_of(row); }

  /// One side, from the bottom up.
  std::vector<Run> runs(bool left) const {
    std::vector<Run> out;
    for (int row = first_; row <= last_; ++row) {
      const RowSpan& span = outline_.rows[index(row)];
      const int edge = left ? span.first : span.last + 1;
      const std::size_t band = rows_[index(row)].band;
      if (out.empty() || out.back().edge != edge || out.back().band != band) {
        out.push_back({left ? left_of(row) : right_of(row), bottom_of(row), top_of(row), edge, band});
      } else {
        out.back().high_mm = top_of(row);
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
    place.field = "seam_right";
    throw Error(ErrorCode::bad_argument, place, fmt::format("seams take all stitches of row {}", row));
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

/// Adds a corner in place of the last one where that lies on the line to it.
void add_corner(std::vector<OutlinePoint>& corners, const OutlinePoint& next) {
  const std::size_t count = corners.size();
  if (count > 1) {
    const OutlinePoint& a = corners[count - 2];
    const OutlinePoint& b = corners[count - 1];
    const double turn = (b.x_mm - a.x_mm) * (next.y_mm - b.y_mm) - (b.y_mm - a.y_mm) * (next.x_mm - b.x_mm);
    if (std::abs(turn) < 1e-6 && b.y_mm > a.y_mm) corners.pop_back();
  }
  corners.push_back(next);
}

/// The corners of one side, from the bottom up. Stitches that leave one by one make a slope: its corner lies half a run
/// from the step, on the longer of two runs half the shorter, so that what goes straight up stays straight.
std::vector<OutlinePoint> corners(const std::vector<Run>& runs) {
  std::vector<OutlinePoint> out;
  const auto sloped = [&](std::size_t i) {  // from run i to the next
    return runs[i].band == runs[i + 1].band && std::abs(runs[i].edge - runs[i + 1].edge) == 1;
  };
  const auto reach = [&](std::size_t i) {
    return std::min(runs[i].high_mm - runs[i].low_mm, runs[i + 1].high_mm - runs[i + 1].low_mm) / 2;
  };
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const double low = i > 0 && sloped(i - 1) ? runs[i].low_mm + reach(i - 1) : runs[i].low_mm;
    const double high = i + 1 < runs.size() && sloped(i) ? runs[i].high_mm - reach(i) : runs[i].high_mm;
    add_corner(out, {runs[i].x_mm, low});
    if (high - low > 1e-6) add_corner(out, {runs[i].x_mm, high});
  }
  return out;
}

}  // namespace

SchematicPiece schematic_piece(const Panel& panel, const Swatch& swatch, const SizeOptions& options) {
  require_size_options(options, panel);
  const Gauges gauges(swatch, options.state, options.substitutes);
  const Lay lay(panel, gauges, options);
  SchematicPiece piece;
  piece.name = panel.name();
  const std::vector<OutlinePoint> left = corners(lay.runs(true));
  const std::vector<OutlinePoint> right = corners(lay.runs(false));
  piece.outline.assign(left.rbegin(), left.rend());
  piece.outline.insert(piece.outline.end(), right.begin(), right.end());

  const int first = lay.first();
  const int last = lay.last();
  int widest = first;
  for (int row = first + 1; row <= last; ++row) {
    if (lay.width_of(row) > lay.width_of(widest)) widest = row;
  }
  const auto width = [&](const char* label, MeasureSide side, int row, double y) {
    piece.measures.push_back({label, side, {lay.left_of(row), y}, {lay.right_of(row), y}, lay.width_of(row), {}});
  };
  const auto height = [&](const char* label, MeasureSide side, int low_row, double low, int high_row, double high) {
    const bool left_side = side == MeasureSide::left;
    const double from = left_side ? lay.left_of(low_row) : lay.right_of(low_row);
    const double to = left_side ? lay.left_of(high_row) : lay.right_of(high_row);
    piece.measures.push_back({label, side, {from, low}, {to, high}, high - low, {}});
  };
  const double total = lay.top_of(last);
  width("width at the cast-on", MeasureSide::bottom, first, 0);
  const bool widest_told = lay.width_of(widest) >= std::max(lay.width_of(first), lay.width_of(last)) + told_from_mm;
  if (widest_told) {
    width("width at the widest row", MeasureSide::bottom, widest, lay.bottom_of(widest));
  }
  if (std::abs(lay.width_of(last) - lay.width_of(first)) >= told_from_mm) {
    width("width at the last row", MeasureSide::top, last, total);
  }
  height("height", MeasureSide::right, first, 0, last, total);
  if (widest_told) height("height to the widest row", MeasureSide::left, first, 0, widest, lay.bottom_of(widest));
  std::vector<ShapingStep> steps = shaping_steps(lay.outline());
  std::erase_if(steps, [&](const ShapingStep& step) { return step.row < first || step.row >= last; });
  if (!steps.empty()) {
    const int low = steps.front().row;
    const int high = steps.back().row;
    if (lay.top_of(low) >= straight_from_mm) {
      height("height to the first shaping", MeasureSide::left, first, 0, low, lay.top_of(low));
    }
    if (high > low && total - lay.top_of(high) >= straight_from_mm) {
      height("height above the last shaping", MeasureSide::left, high + 1, lay.top_of(high), last, total);
    }
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
