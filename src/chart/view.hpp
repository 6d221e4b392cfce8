#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "latchwork/chart.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/panel.hpp"

namespace latchwork::inline v0::drawing {

/// What is drawn in one cell, from the side that is looked at.
struct Mark {
  Cell cell = Cell::knit;
  bool cap = false;    ///< this knit or purl closes a stack that holds a tuck: the arch closes here
  bool foot = false;   ///< the lowest tucked row of a stack: the arch stands here
  bool front = false;  ///< a slip whose strand lies on the side looked at (closed by a purl, as seen from there)
};

/// Which marks a chart holds.
struct MarkKinds {
  bool knit = false, purl = false, tuck = false, slip_behind = false, slip_front = false, none = false;
};

/// A panel from one side, ready to be drawn: both kinds of chart read it and decide nothing about sides themselves.
struct View {
  Side side = Side::right_side;
  Grid grid;          ///< as seen from `side`
  int first_row = 1;  ///< of those shown, as last_row, stops, title and notes: see show_rows()
  int last_row = 1;
  Cell blank = Cell::knit;       ///< knit or purl, as seen from `side`: left without a mark
  std::vector<Band> bands{};     ///< strips from the left as seen from `side`
  std::optional<int> axis{};     ///< half columns from the left as seen from `side`
  int leftmost = -1;             ///< needle of the leftmost column, operator's view
  std::vector<int> stops{};      ///< rows of the plan's stops that are shown, ascending; RC 0 belongs to row 1
  std::vector<int> all_stops{};  ///< of the whole plan
  bool starts_right = true;      ///< where the carriage stands at RC 0
  std::string title{};           ///< names the side
  std::vector<std::string> notes{};
  std::string whole_title{};  ///< title and first note without the rows
  std::string whole_size{};
  std::vector<Mark> marks{};               ///< row by row from row 1
  std::vector<Crossing> crossing_kinds{};  ///< those that look unlike, row and column set to 1 and 0, in a fixed order
  MarkKinds kinds{};                       ///< which marks there are

  const Mark& mark(int row, int column) const {
    return marks[static_cast<std::size_t>(row - 1) * static_cast<std::size_t>(grid.columns()) +
                 static_cast<std::size_t>(column)];
  }
  /// "L3" in the operator's view, else the RS column's number.
  std::string column_name(int column) const;
  /// Column right of the middle of the bed, between L1 and R1; nothing where it is not between two columns of the
  /// panel, or where columns are not named by needles.
  std::optional<int> bed_middle() const;
  /// From now on just these rows are shown.
  void show_rows(int first, int last);
  /// Whether rows are left out.
  bool is_sheet() const { return first_row > 1 || last_row < grid.rows(); }
  /// Whether a crossing's block is among the rows shown.
  bool shows(const Crossing& crossing) const {
    const int row = crossing.row == grid.rows() ? crossing.row : crossing.row + 1;
    return row >= first_row && row <= last_row;
  }
  /// "COR" or "COL": where the carriage stands after `row`.
  const char* carriage_after(int row) const { return (row % 2 == 0) == starts_right ? "COR" : "COL"; }
  /// Columns left of which every band has an edge between two strips, and no crossing reaches over it; ascending.
  std::vector<int> shared_edges() const;
  /// Whether a strip begins anywhere right of the first column.
  bool has_edges() const;
};

/// @throws Error bad_argument, size_mismatch, bad_encoding (the panel's names).
View view_of(const Panel& panel, const ChartOptions& options);

/// A group of stitches on its way through a crossing: columns counted from the crossing's first.
struct Group {
  int stitches = 1;
  int from = 0;  ///< first column below
  int to = 0;    ///< first column above
  bool outer = true;
};

/// The groups in the order from back to front, as seen from the side the crossing is written for.
std::vector<Group> groups_back_to_front(const Crossing& crossing);

}  // namespace latchwork::inline v0::drawing
