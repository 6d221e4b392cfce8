#include <map>
#include <string_view>
#include <vector>

#include "latchwork/shaping.hpp"
#include "shaping/strips.hpp"
#include "size/measure.hpp"

namespace latchwork::inline v0 {

std::vector<shaping::BandLay> shaping::lay_of(const Panel& panel, const Gauges& gauges) {
  gauges.require(panel);
  std::vector<BandLay> out;
  out.reserve(panel.bands().size());
  double bottom = 0;
  for (const Band& band : panel.bands()) {
    BandLay lay;
    lay.bottom_mm = bottom;
    lay.column_mm.reserve(static_cast<std::size_t>(panel.grid().columns()) + 1);
    lay.column_mm.push_back(0);
    std::map<std::string_view, TextureColumns> columns;
    double left = 0;
    for (const StripSpan& strip : band.strips) {
      const Gauge& gauge = gauges.of(strip.texture);
      TextureColumns& texture = columns[strip.texture];
      texture.gauge = &gauge;
      texture.columns += strip.columns;
      for (int i = 1; i <= strip.columns; ++i) lay.column_mm.push_back(left + extent_mm(i, gauge.stitches));
      left = lay.column_mm.back();
    }
    std::vector<TextureColumns> textures;
    textures.reserve(columns.size());
    for (const auto& [name, texture] : columns) textures.push_back(texture);
    lay.height_mm = band_height_mm(textures, band.rows);
    bottom += lay.height_mm;
    out.push_back(std::move(lay));
  }
  return out;
}

}  // namespace latchwork::inline v0
