#pragma once

#include <functional>

#include "latchwork/grid.hpp"
#include "random.hpp"

namespace latchwork_test {

/// How often, and how large. `one_in_x`: once in so many on average; 0: never.
struct RandomGridOptions {
  int rows = 8;
  int columns = 8;
  int one_in_purl = 3;      ///< of the knit or purl cells
  int one_in_stack = 8;     ///< of the cells where a stack of tucks or slips could begin
  int max_stack = 3;        ///< rows of tuck or slip in one stack
  bool slips = true;        ///< stacks hold slips too, alone or mixed with tucks
  int one_in_crossing = 5;  ///< of the places where one could start
  int max_group = 3;        ///< stitches in an outer group
  int max_centre = 2;       ///< stitches in a centre; 0: no centres
  int one_in_ladder = 12;   ///< of the inner columns: bare in every row, with crossings over it now and then
  int one_in_hole = 0;      ///< of the cells: `none` that no rule asks for (shaped edges, eyelets)
  bool plain_edges = true;  ///< a cell at the edge or beside `none` is knit, as DEVELOPERS.md, edges, asks
  bool tile = false;        ///< crossings on the seam too, and rolled up by any number of rows; else a closed panel
};

/// A grid that keeps every rule. As a panel (`tile` off) each stack stands on a held loop and ends on a closing cell,
/// and nothing lies on the seam.
latchwork::Grid random_grid(Random& random, const RandomGridOptions& options = {});

/// A grid of 1 to max_rows by 1 to max_columns with options of its own at random, as tile or panel, holes and all.
latchwork::Grid any_grid(Random& random, int max_rows = 12, int max_columns = 12);

/// The smallest grid, by rows and columns left out, crossings taken away and cells made knit, that still fails.
latchwork::Grid smallest_failing(latchwork::Grid grid, const std::function<bool(const latchwork::Grid&)>& fails);

}  // namespace latchwork_test
