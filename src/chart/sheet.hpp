#pragma once

#include <span>
#include <string>
#include <vector>

#include "chart/strip_letters.hpp"
#include "chart/view.hpp"

namespace latchwork::inline v0::drawing {

/// Which marks there are.
struct MarkKinds {
  bool knit = false, purl = false, tuck = false, cap = false, slip_behind = false, slip_front = false, none = false;
};

/// Rows of a view that are shown together, and what stands in them: all that a picture of them tells. Parts of the
/// view, which must outlive it.
struct Sheet {
  int first_row = 1;
  int last_row = 1;
  std::string title{};  ///< names the side, and the rows where some are left out
  std::vector<std::string> notes{};
  std::span<const int> stops{};           ///< after these rows, and the one before the first
  std::span<const Crossing> crossings{};  ///< those with their block in these rows: after a row, or after the last
  std::span<const Band> bands{};
  MarkKinds kinds{};
  std::vector<Crossing> crossing_kinds{};  ///< those that look unlike, row and column set to 1 and 0, in a fixed order
  StripLetters letters{};

  /// Whether a strip begins anywhere right of the first column.
  bool has_edges() const;
  /// Whether a strip's rows begin again above the first of these rows, where a picture has its line; or with it, where
  /// a chart in text has its sign.
  bool begins_again(bool with_first) const;
};

/// Linear in the cells shown, but for finding where they begin.
Sheet sheet_of(const View& view, int first_row, int last_row);

}  // namespace latchwork::inline v0::drawing
