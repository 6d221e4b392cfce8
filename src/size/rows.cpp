#include "size/rows.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>

#include "grid/stitches.hpp"
#include "latchwork/error.hpp"
#include "size/bands.hpp"
#include "size/doubt.hpp"
#include "size/measure.hpp"

namespace latchwork::inline v0 {
namespace {

/// By gauge, as measured_bands() has them: those that borrow one are off together with its owner.
std::vector<TextureColumns> textures_between(const Band& band, const Gauges& gauges, const Columns& columns) {
  std::map<std::string_view, TextureColumns> by_gauge;
  for (const StripSpan& strip : band.strips) {
    const double count = between(strip.column, strip.columns, columns.from, columns.to);
    if (count == 0) continue;
    const Gauge& gauge = gauges.of(strip.texture);
    TextureColumns& texture = by_gauge[gauge.texture];
    texture.gauge = &gauge;
    texture.columns += count;
  }
  std::vector<TextureColumns> out;
  out.reserve(by_gauge.size());
  for (const auto& [name, texture] : by_gauge) out.push_back(texture);
  return out;
}

}  // namespace

const char* side_field(const SizeOptions& options) noexcept {
  return options.seam_left > options.seam_right ? "seam_left" : "seam_right";
}

MeasuredRows measured_rows(const Panel& panel, const Gauges& gauges, const SizeOptions& options) {
  const Grid& grid = panel.grid();
  const int first = static_cast<int>(std::floor(options.seam_bottom)) + 1;
  const int last = static_cast<int>(std::ceil(grid.rows() - options.seam_top));
  MeasuredRows out;
  out.shared = {options.seam_left, grid.columns() - options.seam_right};
  MeasuredRow at;
  for (int row = first; row <= last; ++row) {
    const MeasuredRow below = at;
    at.row = row;
    while (row > panel.bands()[at.band].row + panel.bands()[at.band].rows - 1) ++at.band;
    // A row without a stitch is bare strands from edge to edge.
    const OuterStitches outer = outer_stitches(grid, row).value_or(OuterStitches{0, grid.columns() - 1});
    at.columns = outer.last - outer.first + 1;
    at.between = {outer.first + options.seam_left, outer.last + 1 - options.seam_right};
    if (row == first || at.band != below.band || at.between.from != below.between.from ||
        at.between.to != below.between.to) {
      at.width_mm = band_width_mm(textures_between(panel.bands()[at.band], gauges, at.between));
    }
    if (row == first) out.lowest = at;
    if (row == first || at.width_mm > out.widest.width_mm) out.widest = at;
    out.shared.from = std::max(out.shared.from, at.between.from);
    out.shared.to = std::min(out.shared.to, at.between.to);
  }
  out.highest = at;
  if (out.widest.width_mm > 0) return out;
  Place place;
  place.field = side_field(options);
  throw Error(ErrorCode::bad_argument, place, "seams take all stitches of every row: nothing is left");
}

double side_seams_mm(const MeasuredRow& row, const Panel& panel, const Gauges& gauges, const SizeOptions& options) {
  const Columns whole = {row.between.from - options.seam_left, row.between.to + options.seam_right};
  return band_width_mm(textures_between(panel.bands()[row.band], gauges, whole)) - row.width_mm;
}

RowWidth width_of(const MeasuredRow& row, const Panel& panel, const Gauges& gauges, double level) {
  Doubt doubt;
  for (const TextureColumns& texture : textures_between(panel.bands()[row.band], gauges, row.between)) {
    const Density& stitches = texture.gauge->stitches;
    const RelativeSpread off = relative_spread(stitches);
    doubt.add(extent_mm(texture.columns, stitches) * off.deviation, off.freedom);
  }
  return {row.row, row.columns, row.width_mm, doubt.spread(), doubt.margin(level)};
}

std::vector<BandWidth> band_widths(const Panel& panel, const Gauges& gauges, const SizeOptions& options,
                                   const Columns& columns) {
  std::vector<BandWidth> out;
  if (!(columns.to > columns.from)) return out;
  const double rows_end = panel.grid().rows() - options.seam_top;
  for (const Band& band : panel.bands()) {
    if (between(band.row - 1, band.rows, options.seam_bottom, rows_end) == 0) continue;
    out.push_back({band.row, band.rows, band_width_mm(textures_between(band, gauges, columns))});
  }
  return out;
}

}  // namespace latchwork::inline v0
