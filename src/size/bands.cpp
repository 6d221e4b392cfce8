#include "size/bands.hpp"

#include <algorithm>
#include <map>

#include "grid/stitches.hpp"

namespace latchwork::inline v0 {
namespace {

struct Stretch {
  int first = 1;
  int count = 0;
};

/// No stitch in those columns of those rows.
bool is_ladder(const Grid& grid, const Stretch& rows, int column, int columns) {
  const auto width = static_cast<std::size_t>(grid.columns());
  for (int row = rows.first; row < rows.first + rows.count; ++row) {
    const auto cells =
        grid.cells().subspan(static_cast<std::size_t>(row - 1) * width + static_cast<std::size_t>(column),
                             static_cast<std::size_t>(columns));
    if (std::any_of(cells.begin(), cells.end(), [](Cell cell) { return cell != Cell::none; })) return false;
  }
  return true;
}

/// The columns of a row between its outermost stitches and the seams that follow them; where seams take them all, a tip
/// that is high though it has no width, those between the stitches.
Columns columns_of(const Grid& grid, int row, const SizeOptions& options) {
  const OuterStitches outer = outer_stitches(grid, row).value_or(OuterStitches{0, grid.columns() - 1});
  const Columns out = {outer.first + options.seam_left, outer.last + 1 - options.seam_right};
  if (out.to > out.from) return out;
  return {static_cast<double>(outer.first), static_cast<double>(outer.last + 1)};
}

/// The stretch of a band's rows from `first` that have the same columns between the seams.
Stretch stretch_from(const Grid& grid, const Band& band, int first, const SizeOptions& options) {
  const Columns columns = columns_of(grid, first, options);
  int end = first + 1;
  for (; end < band.row + band.rows; ++end) {
    const Columns next = columns_of(grid, end, options);
    if (next.from != columns.from || next.to != columns.to) break;
  }
  return {first, end - first};
}

}  // namespace

double between(int first, int count, double from, double to) noexcept {
  const double low = std::max<double>(first, from);
  const double high = std::min<double>(first + count, to);
  return std::max(high - low, 0.0);
}

std::vector<MeasuredBand> measured_bands(const Panel& panel, const Gauges& gauges, const SizeOptions& options) {
  const Grid& grid = panel.grid();
  const double rows_end = grid.rows() - options.seam_top;
  std::vector<MeasuredBand> out;
  for (std::size_t index = 0; index < panel.bands().size(); ++index) {
    const Band& band = panel.bands()[index];
    for (int row = band.row; row < band.row + band.rows;) {
      const Stretch stretch = stretch_from(grid, band, row, options);
      const Columns columns = columns_of(grid, row, options);
      row += stretch.count;
      const double rows = between(stretch.first - 1, stretch.count, options.seam_bottom, rows_end);
      if (rows == 0) continue;
      struct Share {
        TextureColumns texture;
        bool ladder = true;
      };
      std::map<std::string_view, Share> shares;  // by gauge: those that borrow one are off together with its owner
      for (const StripSpan& strip : band.strips) {
        const double count = between(strip.column, strip.columns, columns.from, columns.to);
        if (count == 0) continue;
        const Gauge& gauge = gauges.of(strip.texture);
        Share& share = shares[gauge.texture];
        share.texture.gauge = &gauge;
        share.texture.columns += count;
        share.ladder = share.ladder && is_ladder(grid, stretch, strip.column, strip.columns);
      }
      MeasuredBand measured;
      measured.band = index;
      measured.row = stretch.first;
      measured.rows = stretch.count;
      std::vector<TextureColumns> textures;
      textures.reserve(shares.size());
      for (const auto& [name, share] : shares) {
        textures.push_back(share.texture);
        measured.parts.push_back({share.texture, extent_mm(share.texture.columns, share.texture.gauge->stitches),
                                  extent_mm(rows, share.texture.gauge->rows), share.ladder});
      }
      measured.width_mm = band_width_mm(textures);
      measured.height_mm = band_height_mm(textures, rows);
      for (std::size_t i = 1; i < measured.parts.size(); ++i) {
        if (measured.parts[i].height_mm < measured.least().height_mm) measured.least_part = i;
        if (measured.parts[i].height_mm > measured.greatest().height_mm) measured.greatest_part = i;
      }
      out.push_back(std::move(measured));
    }
  }
  return out;
}

}  // namespace latchwork::inline v0
