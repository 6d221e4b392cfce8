#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "latchwork/gauge.hpp"
#include "random.hpp"

namespace latchwork_test {

/// Textures of the random designs that fit() is held against brute force with.
inline constexpr std::array<const char*, 3> fit_textures = {"a", "b", "c"};

/// Gauges of these: a stitch is 2.5 to 10 mm wide, a row 1.6 to 10 mm high, so that what is far beyond a target is soon
/// reached.
inline latchwork::Swatch fit_swatch(Random& random) {
  using latchwork::Counted;
  std::vector<latchwork::Measurement> measurements;
  for (const char* texture : fit_textures) {
    for (int place = random.between(1, 3); place > 0; --place) {
      measurements.push_back({texture, Counted::stitches, random.between(100, 400) / 10.0, 100, ""});
      measurements.push_back({texture, Counted::rows, random.between(100, 600) / 10.0, 100, ""});
    }
  }
  return latchwork::Swatch(measurements);
}

/// One of the textures.
inline const char* fit_texture(Random& random) {
  return fit_textures[static_cast<std::size_t>(random.between(0, 2))];
}

}  // namespace latchwork_test
