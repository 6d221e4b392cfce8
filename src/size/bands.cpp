#include "size/bands.hpp"

#include <algorithm>
#include <map>

namespace latchwork::inline v0 {
namespace {

bool is_ladder(const Grid& grid, const Band& band, const StripSpan& strip) {
  const auto columns = static_cast<std::size_t>(grid.columns());
  for (int row = band.row; row < band.row + band.rows; ++row) {
    const auto cells =
        grid.cells().subspan(static_cast<std::size_t>(row - 1) * columns + static_cast<std::size_t>(strip.column),
                             static_cast<std::size_t>(strip.columns));
    if (std::any_of(cells.begin(), cells.end(), [](Cell cell) { return cell != Cell::none; })) return false;
  }
  return true;
}

}  // namespace

double between(int first, int count, double from, double to) noexcept {
  const double low = std::max<double>(first, from);
  const double high = std::min<double>(first + count, to);
  return std::max(high - low, 0.0);
}

std::vector<MeasuredBand> measured_bands(const Panel& panel, const Gauges& gauges, const SizeOptions& options) {
  const double columns_end = panel.grid().columns() - options.seam_right;
  const double rows_end = panel.grid().rows() - options.seam_top;
  std::vector<MeasuredBand> out;
  for (const Band& band : panel.bands()) {
    const double rows = between(band.row - 1, band.rows, options.seam_bottom, rows_end);
    if (rows == 0) continue;
    struct Share {
      TextureColumns texture;
      bool ladder = true;
    };
    std::map<std::string_view, Share> shares;  // by gauge: those that borrow one are off together with its owner
    for (const StripSpan& strip : band.strips) {
      const Gauge& gauge = gauges.of(strip.texture);
      const double columns = between(strip.column, strip.columns, options.seam_left, columns_end);
      if (columns == 0) continue;
      Share& share = shares[gauge.texture];
      share.texture.gauge = &gauge;
      share.texture.columns += columns;
      share.ladder = share.ladder && is_ladder(panel.grid(), band, strip);
    }
    MeasuredBand measured;
    measured.row = band.row;
    measured.rows = band.rows;
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
  return out;
}

}  // namespace latchwork::inline v0
