#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

#include "gauge/gauges.hpp"
#include "latchwork/size.hpp"
#include "size/measure.hpp"
#include "size/rows.hpp"

namespace latchwork::inline v0 {

/// What one gauge measures of a band.
struct Part {
  TextureColumns texture;
  double width_mm = 0;
  double height_mm = 0;
  bool ladder = true;  ///< no stitch anywhere: bare strands neither ripple nor are stretched
};

/// A band as far as it lies between the seams; of a shaped panel a stretch of its rows that have the same columns.
struct MeasuredBand {
  std::size_t band = 0;  ///< index of the band
  int row = 1;
  int rows = 1;
  std::vector<Part> parts;  ///< by the names of the gauges' textures
  double width_mm = 0;
  double height_mm = 0;
  std::size_t least_part = 0;     ///< of the heights; the first by name of equal ones
  std::size_t greatest_part = 0;  ///< likewise
  int last_row() const { return row + rows - 1; }
  const Part& least() const { return parts[least_part]; }
  const Part& greatest() const { return parts[greatest_part]; }
};

/// How many of `count` columns or rows from `first` lie between two places.
double between(int first, int count, double from, double to) noexcept;

/// The bands of a panel, or their stretches, that are not wholly in a seam, the lowest first. O(cells).
std::vector<MeasuredBand> measured_bands(const Panel& panel, const Gauges& gauges, const SizeOptions& options);

// What is to be said of a panel's measure, each thing once.
void find_heights(const std::vector<MeasuredBand>& bands, std::vector<Finding>& found);
/// Of the bands over the columns that every row has; `whole` where these are all of them.
void find_widths(const std::vector<BandWidth>& bands, const Columns& columns, bool whole, std::vector<Finding>& found);
/// borrowed_gauge, mixed_states, unknown_spread of those textures, each told once, that have a gauge.
void find_gauges(const std::vector<std::string_view>& textures, const Gauges& gauges, std::vector<Finding>& found);
/// narrow_texture of the panel's textures but those that are measured by another's gauge. Linear in strips.
void find_narrow(const Panel& panel, const Gauges& gauges, std::vector<Finding>& found);
/// measuring_findings() of those textures, each told once.
std::vector<Finding> measuring_findings(const std::vector<std::string_view>& textures, const Swatch& swatch,
                                        const Gauges& gauges);

/// @throws Error bad_argument.
void require_size_options(const SizeOptions& options, const Panel& panel);

}  // namespace latchwork::inline v0
