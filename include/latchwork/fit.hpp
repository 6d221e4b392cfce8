#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/strip.hpp"

namespace latchwork::inline v0 {

/// What may vary when a panel is fitted to a target. The panel is, from the left on the RS: edge columns, `repeat` n
/// times, `closing` once, the same number of edge columns. Its rows are rows_extra + m * rows_step, m from 0.
struct FitRequest {
  double width_mm = 0;        ///< target, 1..1000000
  double height_mm = 0;       ///< target, 1..1000000
  std::vector<Strip> repeat;  ///< strips of one repeat across, one or more
  std::vector<Strip>
      closing;  ///< strips that stand once after the last repeat, so that both sides balance; may be empty
  std::optional<Strip> edge;                  ///< one column wide; without it edge_least and edge_most count as 0
  int edge_least = 1, edge_most = 1;          ///< columns of it at each side, 0..Grid::max_side
  int repeats_least = 1, repeats_most = 200;  ///< 1..Grid::max_side
  int rows_step = 1;                          ///< the vertical repeat, 1..Grid::max_side
  int rows_extra = 0;  ///< rows beyond whole repeats, so that both ends balance; 0..Grid::max_side
  int needles = 0;     ///< bed: candidates of more columns are left out; 0: no limit
  int most = 10;       ///< candidates returned, 1..10000
  friend bool operator==(const FitRequest&, const FitRequest&) = default;
};

/// One way to meet the target.
struct FitCandidate {
  int repeats = 0;
  int edge_columns = 0;  ///< at each side
  int columns = 0;
  int rows = 0;
  double width_mm = 0;
  double height_mm = 0;
  double width_error_mm = 0;  ///< width_mm - target
  double height_error_mm = 0;
  double error = 0;  ///< the rank: root of the sum of the squared relative errors, rounded to 1e-12 so that ties tie
  friend bool operator==(const FitCandidate&, const FitCandidate&) = default;
};

/// Every combination of repeats, edge columns and rows that makes a grid (Grid::max_side, Grid::max_cells) and fits the
/// needles is considered; the best `most` come ranked by `error`, then fewer columns, fewer rows, fewer edge columns.
/// Empty when nothing fits. Width and height are those that size() gives for the panel without
/// options, to the last bit: each texture by the gauge of its most finished state. Combinations
/// that can no longer rank are passed over, so the time goes with repeats and `most`, not with the number of
/// combinations. @throws Error bad_argument (field), no_gauge (field = texture).
LATCHWORK_API std::vector<FitCandidate> fit(const FitRequest& request, const Swatch& swatch);

/// The panel of a candidate, named after its numbers. Only `repeats`, `edge_columns`, `columns` and `rows` of the
/// candidate are read. @throws Error bad_argument (field) when they are not the request's; what join_strips() throws.
LATCHWORK_API Panel fitted(const FitRequest& request, const FitCandidate& candidate);

}  // namespace latchwork::inline v0
