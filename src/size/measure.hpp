#pragma once

#include <cstdint>
#include <span>

#include "latchwork/gauge.hpp"

namespace latchwork::inline v0 {

/// How many columns of a band a texture takes. size() and fit() measure a band by its textures in order of their
/// names, with these functions and no others: so both get the same bits, and so does the mirrored panel.
struct TextureColumns {
  const Gauge* gauge = nullptr;
  std::int64_t columns = 0;
};

/// mm of so many stitches or rows.
double extent_mm(std::int64_t count, const Density& density) noexcept;

/// Sum of the textures' widths. Textures of no columns are passed over. Never falls as columns grow.
double band_width_mm(std::span<const TextureColumns> textures) noexcept;

/// Width-weighted mean of the textures' heights, never outside their range. Never falls as rows grow.
double band_height_mm(std::span<const TextureColumns> textures, std::int64_t rows) noexcept;

}  // namespace latchwork::inline v0
