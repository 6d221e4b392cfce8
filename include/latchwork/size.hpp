#pragma once

#include <string>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/panel.hpp"

namespace latchwork::inline v0 {

/// One strip of a band at its own gauge.
struct StripSize {
  std::string name;
  std::string texture;
  int band = 0;  ///< index, bottom first
  int columns = 0;
  int rows = 0;
  double width_mm = 0;
  double height_mm = 0;
  friend bool operator==(const StripSize&, const StripSize&) = default;
};

/// Relaxed size of a panel. Width of a band = sum of its strips' widths; the panel's is its widest band's. Strips of
/// unlike row gauge pull on each other, so heights are told as least, greatest and width-weighted mean (per band,
/// summed).
struct Size {
  double width_mm = 0;
  double least_width_mm = 0;  ///< of the narrowest band: below width_mm the edges wave
  double height_mm = 0;       ///< width-weighted mean
  double least_height_mm = 0;
  double greatest_height_mm = 0;
  double width_spread_mm = 0;  ///< one standard deviation from the swatch's spreads, strips taken as independent
  double height_spread_mm = 0;
  std::vector<StripSize> strips;
  std::vector<std::string> warnings;  ///< for people: unlike heights with the difference in mm, wavy edges
  friend bool operator==(const Size&, const Size&) = default;
};

/// Size of a panel from the swatch's gauges. A ladder ("none" columns) is measured like any texture.
/// @throws Error no_gauge (field = texture).
LATCHWORK_API Size size(const Panel& panel, const Swatch& swatch);

}  // namespace latchwork::inline v0
