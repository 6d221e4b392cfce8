#pragma once

#include <span>

#include "latchwork/gauge.hpp"

namespace latchwork::inline v0 {

/// How many columns of a band a texture takes. size() and fit() measure a band by its textures in order of their
/// names, with these functions and no others: so both get the same bits, and so does the mirrored panel.
struct TextureColumns {
  const Gauge* gauge = nullptr;
  double columns = 0;  // between the seams: whole or half
};

/// mm of so many stitches or rows.
double extent_mm(double count, const Density& density) noexcept;

/// Sum of the textures' widths. Textures of no columns are passed over. Never falls as columns grow.
double band_width_mm(std::span<const TextureColumns> textures) noexcept;

/// Width-weighted mean of the textures' heights, never outside their range. Never falls as rows grow.
double band_height_mm(std::span<const TextureColumns> textures, double rows) noexcept;

}  // namespace latchwork::inline v0
