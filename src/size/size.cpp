#include "latchwork/size.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>
#include <utility>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"
#include "panel/standing.hpp"
#include "size/bands.hpp"
#include "size/doubt.hpp"
#include "size/rows.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr double most_seam = 1000;
constexpr double least_level = 0.5;
constexpr double most_level = 0.999;

void require_seam(const char* field, double seam) {
  if (seam >= 0 && seam <= most_seam && 2 * seam == std::floor(2 * seam)) return;
  refuse(field, fmt::format("{} is {}; it must be 0..{}, whole or half", field, seam, most_seam));
}

/// The field to be told is the one that takes more; of equal ones the second.
void require_rest(const char* low_field, const char* high_field, double low, double high, int of, const char* things) {
  if (low + high < of) return;
  refuse(low > high ? low_field : high_field,
         fmt::format("seams take {} of {} {}: nothing is left", low + high, of, things));
}

// See size.hpp for the formula. What shares a gauge is summed over the bands before it is squared.
Doubt height_doubt(const std::vector<MeasuredBand>& bands) {
  struct Shares {
    const Gauge* gauge = nullptr;
    double by_rows = 0;
    double by_stitches = 0;
  };
  std::map<std::string_view, Shares> shares;
  for (const MeasuredBand& band : bands) {
    for (const Part& part : band.parts) {
      Shares& of = shares[part.texture.gauge->texture];
      of.gauge = part.texture.gauge;
      of.by_rows += part.height_mm * part.width_mm / band.width_mm;
      of.by_stitches += part.width_mm * (part.height_mm - band.height_mm) / band.width_mm;
    }
  }
  Doubt out;
  for (const auto& [texture, of] : shares) {
    const RelativeSpread rows = relative_spread(of.gauge->rows);
    const RelativeSpread stitches = relative_spread(of.gauge->stitches);
    out.add(of.by_rows * rows.deviation, rows.freedom);
    out.add(of.by_stitches * stitches.deviation, stitches.freedom);
  }
  return out;
}

/// All columns between the seams of a straight panel.
double whole_columns(const Panel& panel, const SizeOptions& options) {
  return panel.grid().columns() - options.seam_left - options.seam_right;
}

double height_of(const std::vector<MeasuredBand>& bands) {
  double out = 0;
  for (const MeasuredBand& band : bands) out += band.height_mm;
  return out;
}

}  // namespace

void require_size_options(const SizeOptions& options, const Panel& panel) {
  require_seam("seam_left", options.seam_left);
  require_seam("seam_right", options.seam_right);
  require_seam("seam_bottom", options.seam_bottom);
  require_seam("seam_top", options.seam_top);
  require_rest("seam_left", "seam_right", options.seam_left, options.seam_right, panel.grid().columns(), "columns");
  require_rest("seam_bottom", "seam_top", options.seam_bottom, options.seam_top, panel.grid().rows(), "rows");
  if (options.level >= least_level && options.level <= most_level) return;
  refuse("level", fmt::format("level is {}; it must be {}..{}", options.level, least_level, most_level));
}

Size size(const Panel& panel, const Swatch& swatch, const SizeOptions& options) {
  require_size_options(options, panel);
  const Gauges gauges(swatch, options.state, options.substitutes);
  gauges.require(panel);
  Size out;
  for (std::size_t i = 0; i < panel.bands().size(); ++i) {
    const Band& band = panel.bands()[i];
    const std::vector<bool> stands = standing_strips(panel.grid(), band);
    for (std::size_t k = 0; k < band.strips.size(); ++k) {
      const StripSpan& strip = band.strips[k];
      StripSize of{strip.name, strip.texture, static_cast<int>(i), strip.columns, band.rows, 0, 0};
      if (stands[k]) {
        const Gauge& gauge = gauges.of(strip.texture);
        of.width_mm = extent_mm(strip.columns, gauge.stitches);
        of.height_mm = extent_mm(band.rows, gauge.rows);
      }
      out.strips.push_back(std::move(of));
    }
  }
  const std::vector<MeasuredBand> bands = measured_bands(panel, gauges, options);
  for (const MeasuredBand& band : bands) {
    out.height_mm += band.height_mm;
    out.least_height_mm += band.least().height_mm;
    out.greatest_height_mm += band.greatest().height_mm;
  }
  const MeasuredRows rows = measured_rows(panel, gauges, options);
  const RowWidth widest = width_of(rows.widest, panel, gauges, options.level);
  out.width_mm = widest.width_mm;
  out.width_spread_mm = widest.spread_mm;
  out.width_margin_mm = widest.margin_mm;
  out.widest_row = widest.row;
  out.widest_columns = widest.columns;
  out.cast_on = width_of(rows.lowest, panel, gauges, options.level);
  out.bind_off = width_of(rows.highest, panel, gauges, options.level);
  const std::vector<BandWidth> widths = band_widths(panel, gauges, options, rows.shared);
  const auto narrower = [](const BandWidth& a, const BandWidth& b) { return a.width_mm < b.width_mm; };
  const auto [least, greatest] = std::minmax_element(widths.begin(), widths.end(), narrower);
  out.least_width_mm = widths.empty() ? out.width_mm : out.width_mm - (greatest->width_mm - least->width_mm);
  if (options.seam_left + options.seam_right + options.seam_bottom + options.seam_top > 0) {
    out.seam_width_mm = side_seams_mm(rows.widest, panel, gauges, options);
    out.seam_height_mm = height_of(measured_bands(panel, gauges, SizeOptions())) - out.height_mm;
  }
  const Doubt height = height_doubt(bands);
  out.height_spread_mm = height.spread();
  out.level = options.level;
  out.height_margin_mm = height.margin(options.level);
  find_heights(bands, out.findings);
  const Columns& shared = rows.shared;
  find_widths(widths, shared, shared.to - shared.from == whole_columns(panel, options), out.findings);
  find_gauges(textures_of(panel), gauges, out.findings);
  find_narrow(panel, gauges, out.findings);
  out.spread_known = std::none_of(out.findings.begin(), out.findings.end(),
                                  [](const Finding& each) { return each.code == FindingCode::unknown_spread; });
  return out;
}

}  // namespace latchwork::inline v0
