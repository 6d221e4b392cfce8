#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/strip.hpp"

namespace latchwork::inline v0 {

/// What may vary when a panel is fitted to a target. The panel is edge + repeat * n (+ one more `closing`) + edge, with
/// edge columns added one by one; rows go in steps.
struct FitRequest {
  double width_mm = 0;        ///< target, above 0
  double height_mm = 0;       ///< target, above 0
  std::vector<Strip> repeat;  ///< strips of one repeat across
  std::vector<Strip>
      closing;  ///< strips that stand once after the last repeat, so that both sides balance; may be empty
  std::optional<Strip> edge;  ///< one column wide; `edge_least`..`edge_most` columns of it at each side
  int edge_least = 1, edge_most = 1;
  int repeats_least = 1, repeats_most = 200;
  int rows_step = 1;   ///< rows are rows_extra + a multiple of this (the vertical repeat)
  int rows_extra = 0;  ///< rows beyond whole repeats, so that both ends balance
  int needles = 0;     ///< bed: candidates of more columns are left out; 0: no limit
  int most = 10;       ///< candidates returned
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
  double error = 0;  ///< the rank: root of the sum of the squared relative errors
  friend bool operator==(const FitCandidate&, const FitCandidate&) = default;
};

/// Every combination is considered; the best `most` come ranked by `error`, then fewer columns, fewer rows, fewer edge
/// columns. Empty when nothing fits the bed. Height is the width-weighted mean as in size().
/// @throws Error bad_argument (field), no_gauge.
LATCHWORK_API std::vector<FitCandidate> fit(const FitRequest& request, const Swatch& swatch);

/// The panel of a candidate. @throws Error bad_argument.
LATCHWORK_API Panel fitted(const FitRequest& request, const FitCandidate& candidate);

}  // namespace latchwork::inline v0
