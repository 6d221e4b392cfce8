#include "size/measure.hpp"

#include <algorithm>

namespace latchwork::inline v0 {

double extent_mm(double count, const Density& density) noexcept {
  return count * 100 / density.per_10cm;
}

double band_width_mm(std::span<const TextureColumns> textures) noexcept {
  double width = 0;
  for (const TextureColumns& texture : textures) {
    if (texture.columns > 0) width += extent_mm(texture.columns, texture.gauge->stitches);
  }
  return width;
}

double band_height_mm(std::span<const TextureColumns> textures, double rows) noexcept {
  double weighted = 0;
  double width = 0;
  double least = 0;
  double greatest = 0;
  for (const TextureColumns& texture : textures) {
    if (texture.columns == 0) continue;
    const double w = extent_mm(texture.columns, texture.gauge->stitches);
    const double h = extent_mm(rows, texture.gauge->rows);
    least = width == 0 ? h : std::min(least, h);
    greatest = width == 0 ? h : std::max(greatest, h);
    weighted += w * h;
    width += w;
  }
  // One texture has exactly its own height: rounding of w * h / w must not show.
  return width == 0 ? 0 : std::clamp(weighted / width, least, greatest);
}

}  // namespace latchwork::inline v0
