#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "chart/strip_letters.hpp"
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

/// A panel from one side, ready to be drawn: both kinds of chart read it and decide nothing about sides themselves.
struct View {
  Side side = Side::right_side;
  Grid grid;                         ///< as seen from `side`
  Cell blank = Cell::knit;           ///< knit or purl, as seen from `side`: left without a mark
  std::vector<Band> bands{};         ///< strips from the left as seen from `side`
  std::optional<int> axis{};         ///< half columns from the left as seen from `side`
  int leftmost = -1;                 ///< needle of the leftmost column, operator's view
  std::vector<int> stops{};          ///< rows of the plan's stops, ascending
  std::vector<int> new_stops{};      ///< those whose work, stop_kinds(), no stop below has; ascending
  bool starts_right = true;          ///< where the carriage stands at RC 0
  std::string title{};               ///< names the side
  std::vector<std::string> notes{};  ///< the panel's size first
  std::vector<Mark> marks{};         ///< row by row from row 1
  StripLetters letters{};

  const Mark& mark(int row, int column) const {
    return marks[static_cast<std::size_t>(row - 1) * static_cast<std::size_t>(grid.columns()) +
                 static_cast<std::size_t>(column)];
  }
  /// "L3" in the operator's view, else the RS column's number.
  std::string column_name(int column) const;
  /// Column right of the middle of the bed, between L1 and R1; nothing where it is not between two columns of the
  /// panel, or where columns are not named by needles.
  std::optional<int> bed_middle() const;
  /// "COR" or "COL": where the carriage stands after `row`.
  const char* carriage_after(int row) const { return (row % 2 == 0) == starts_right ? "COR" : "COL"; }
  /// Columns left of which every band has an edge between two strips, and no crossing reaches over it; ascending.
  std::vector<int> shared_edges() const;
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
