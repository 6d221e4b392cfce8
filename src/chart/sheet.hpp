#pragma once

#include <optional>
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

/// Rows and columns of a view; columns from the left as seen from its side.
struct Part {
  int first_row = 1;
  int last_row = 1;
  int first_column = 0;
  int last_column = 0;
};

/// All of a view.
Part whole(const View& view);
/// The part that the options name, which view_of() has checked.
Part part_of(const View& view, const ChartOptions& options);

/// Rows and columns of a view that are shown together, and what stands in them: all that a picture of them tells. Holds
/// parts of the view, which must outlive it.
struct Sheet {
  int first_row = 1;
  int last_row = 1;
  int first_column = 0;
  int last_column = 0;
  std::string title{};  ///< names the side, and the rows where some are left out
  std::vector<std::string> notes{};
  std::span<const int> stops{};       ///< after these rows, and the one before the first
  std::vector<Crossing> crossings{};  ///< those with their block in these rows: after a row, or after the last
  std::vector<Crossing> cut{};        ///< likewise, of which only a part lies in these columns: not drawn
  std::vector<Band> bands{};          ///< as far as they reach into these columns
  std::optional<int> axis{};          ///< View::axis, where it lies in these columns or on their edge
  std::optional<int> bed_middle{};    ///< View::bed_middle(), where it lies between two of these columns
  MarkKinds kinds{};
  std::vector<Crossing> crossing_kinds{};  ///< those that look unlike, row and column set to 1 and 0, in a fixed order
  StripLetters letters{};

  int columns() const { return last_column - first_column + 1; }

  /// Whether a strip begins anywhere right of the first column.
  bool has_edges() const;
  /// Whether a strip's rows begin again above the first of these rows, where a picture has its line; or with it, where
  /// a chart in text has its sign.
  bool begins_again(bool with_first) const;
};

/// Linear in the cells shown, but for finding where they begin.
Sheet sheet_of(const View& view, const Part& part);

}  // namespace latchwork::inline v0::drawing
