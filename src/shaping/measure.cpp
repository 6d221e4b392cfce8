#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "shaping/strips.hpp"
#include "size/bands.hpp"
#include "size/measure.hpp"

namespace latchwork::inline v0 {

std::vector<shaping::BandLay> shaping::lay_of(const Panel& panel, const Gauges& gauges, const SizeOptions& options,
                                              CutOff cut_off) {
  gauges.require(panel, cut_off);
  const std::vector<MeasuredBand> measured = measured_bands(panel, gauges, options);
  auto next = measured.begin();  // without those wholly in a seam
  const double rows_end = panel.grid().rows() - options.seam_top;
  std::vector<BandLay> out;
  out.reserve(panel.bands().size());
  double top = 0;
  for (std::size_t i = 0; i < panel.bands().size(); ++i) {
    const Band& band = panel.bands()[i];
    BandLay lay;
    lay.column_mm.reserve(static_cast<std::size_t>(panel.grid().columns()) + 1);
    lay.column_mm.push_back(0);
    double left = 0;
    for (const StripSpan& strip : band.strips) {
      const Gauge* gauge = gauges.find(strip.texture);  // of a strip that is cut off there may be none
      for (int k = 1; k <= strip.columns; ++k) {
        lay.column_mm.push_back(gauge == nullptr ? left : left + extent_mm(k, gauge->stitches));
      }
      left = lay.column_mm.back();
    }
    lay.top_mm.assign(static_cast<std::size_t>(band.rows), top);
    for (; next != measured.end() && next->band == i; ++next) {
      const double bottom = top;
      const double rows = between(next->row - 1, next->rows, options.seam_bottom, rows_end);
      for (int row = next->row; row <= next->last_row(); ++row) {
        const double below = between(next->row - 1, row - next->row + 1, options.seam_bottom, rows_end);
        top = bottom + below / rows * next->height_mm;
        lay.top_mm[static_cast<std::size_t>(row - band.row)] = top;
      }
    }
    // Rows of the upper seam end where the last before them does.
    for (std::size_t k = 1; k < lay.top_mm.size(); ++k) lay.top_mm[k] = std::max(lay.top_mm[k], lay.top_mm[k - 1]);
    out.push_back(std::move(lay));
  }
  return out;
}

double shaping::BandLay::mm_at(double column) const {
  const double whole = std::floor(column);
  const double left = column_mm[static_cast<std::size_t>(whole)];
  if (whole == column) return left;
  return left + (column - whole) * (column_mm[static_cast<std::size_t>(whole) + 1] - left);
}

double shaping::BandLay::column_at(double mm) const {
  const auto above = std::lower_bound(column_mm.begin(), column_mm.end(), mm);
  if (above == column_mm.begin()) return 0;
  if (above == column_mm.end()) return static_cast<double>(column_mm.size()) - 1;
  const double left = *(above - 1);
  return static_cast<double>(above - column_mm.begin()) - 1 + (mm - left) / (*above - left);
}

std::vector<shaping::RowLay> shaping::rows_of(const Panel& panel, const std::vector<BandLay>& lays) {
  std::vector<RowLay> out;
  out.reserve(static_cast<std::size_t>(panel.grid().rows()));
  std::size_t at = 0;
  for (int row = 1; row <= panel.grid().rows(); ++row) {
    while (row >= panel.bands()[at].row + panel.bands()[at].rows) ++at;
    out.push_back({at, lays[at].top_mm[static_cast<std::size_t>(row - panel.bands()[at].row)]});
  }
  return out;
}

}  // namespace latchwork::inline v0
