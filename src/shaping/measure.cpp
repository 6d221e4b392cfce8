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

}  // namespace latchwork::inline v0
