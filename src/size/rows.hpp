#pragma once

#include <cstddef>
#include <vector>

#include "gauge/gauges.hpp"
#include "latchwork/size.hpp"

namespace latchwork::inline v0 {

/// Columns from the panel's left edge, whole or half where a seam lies; none where `to` is not above `from`.
struct Columns {
  double from = 0;
  double to = 0;
};

/// A row between its seams.
struct MeasuredRow {
  int row = 1;
  int columns = 0;       ///< in work: with what the seams take
  std::size_t band = 0;  ///< index
  Columns between;
  double width_mm = 0;
};

/// Of the rows that are not wholly in a seam.
struct MeasuredRows {
  MeasuredRow lowest;
  MeasuredRow widest;  ///< the lowest of equal ones
  MeasuredRow highest;
  Columns shared;  ///< that every row has between its seams
};

/// Of the seams at the sides the field of the one that takes more; of equal ones the second.
const char* side_field(const SizeOptions& options) noexcept;

/// Linear in cells. @throws Error bad_argument (field as side_field()) where the seams leave nothing of any row.
MeasuredRows measured_rows(const Panel& panel, const Gauges& gauges, const SizeOptions& options);

/// What the seams at the sides take off that row.
double side_seams_mm(const MeasuredRow& row, const Panel& panel, const Gauges& gauges, const SizeOptions& options);

/// Width, and how far it may be off.
RowWidth width_of(const MeasuredRow& row, const Panel& panel, const Gauges& gauges, double level);

/// A band over some columns.
struct BandWidth {
  int row = 1;
  int rows = 1;
  double width_mm = 0;
  int last_row() const { return row + rows - 1; }
};

/// Of the bands that are not wholly in a seam; none where there are no such columns.
std::vector<BandWidth> band_widths(const Panel& panel, const Gauges& gauges, const SizeOptions& options,
                                   const Columns& columns);

}  // namespace latchwork::inline v0
