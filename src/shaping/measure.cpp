#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "shaping/strips.hpp"
#include "size/bands.hpp"
#include "size/measure.hpp"

namespace latchwork::inline v0 {

std::vector<shaping::BandLay> shaping::lay_of(const Panel& panel, const Gauges& gauges, const SizeOptions& options) {
  gauges.require(panel);
  const std::vector<MeasuredBand> measured = measured_bands(panel, gauges, options);
  auto next = measured.begin();  // without those wholly in a seam
  std::vector<BandLay> out;
  out.reserve(panel.bands().size());
  double bottom = 0;
  for (const Band& band : panel.bands()) {
    BandLay lay;
    lay.bottom_mm = bottom;
    lay.column_mm.reserve(static_cast<std::size_t>(panel.grid().columns()) + 1);
    lay.column_mm.push_back(0);
    double left = 0;
    for (const StripSpan& strip : band.strips) {
      const Gauge& gauge = gauges.of(strip.texture);
      for (int i = 1; i <= strip.columns; ++i) lay.column_mm.push_back(left + extent_mm(i, gauge.stitches));
      left = lay.column_mm.back();
    }
    if (next != measured.end() && next->row == band.row) {
      lay.height_mm = next->height_mm;
      ++next;
    }
    bottom += lay.height_mm;
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

std::vector<shaping::RowLay> shaping::rows_of(const Panel& panel, const std::vector<BandLay>& lays,
                                              const SizeOptions& options) {
  const double rows_end = panel.grid().rows() - options.seam_top;
  std::vector<RowLay> out;
  out.reserve(static_cast<std::size_t>(panel.grid().rows()));
  std::size_t at = 0;
  for (int row = 1; row <= panel.grid().rows(); ++row) {
    while (row >= panel.bands()[at].row + panel.bands()[at].rows) ++at;
    const Band& band = panel.bands()[at];
    const double rows = between(band.row - 1, band.rows, options.seam_bottom, rows_end);
    const double below = between(band.row - 1, row - band.row + 1, options.seam_bottom, rows_end);
    out.push_back({at, lays[at].bottom_mm + (rows > 0 ? below / rows * lays[at].height_mm : 0)});
  }
  return out;
}

}  // namespace latchwork::inline v0
