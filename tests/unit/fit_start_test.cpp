// Where the vertical repeat begins, and how its ends balance.
#include <vector>

#include "catch.hpp"
#include "latchwork/fit.hpp"
#include "latchwork/motif.hpp"

namespace fit_start_test {

using namespace latchwork;

namespace {

// 25 stitches and 40 rows per 10 cm: a stitch is 4 mm wide, a row 2.5 mm high.
Swatch swatch() {
  return Swatch({{"rope", Counted::stitches, 25, 100, ""}, {"rope", Counted::rows, 40, 100, ""}});
}

Strip of(Grid grid) {
  return {"strip", "rope", std::move(grid)};
}

Strip crossed_after(int rows, int row) {
  Grid grid(rows, 4);
  grid.cross({.row = row, .column = 0, .left = 2, .right = 2});
  return of(grid);
}

FitCandidate best(const std::vector<Strip>& strips, int rows, int rows_step, int times = 1) {
  FitRequest request;
  request.width_mm = 100;
  request.height_mm = rows * 2.5;
  request.groups = {{strips, times, times}};
  request.rows_step = rows_step;
  request.rows_extra = rows % rows_step;
  request.vary_start = true;
  const FitCandidate out = fit(request, swatch()).candidates.at(0);
  CHECK(out.rows == rows);
  return out;
}

}  // namespace

TEST_CASE("a repeat begins so that as many rows lie below the first crossing as above the last", "[fit]") {
  // Crossed after row 6 of 6. Of 25 rows, started at row 4: after rows 3, 9, 15 and 21, so 3 below and 4 above; at row
  // 3: after 4, 10, 16 and 22, so 4 below and 3 above. Both are a row apart, and the lower start is taken.
  const FitCandidate apart = best({crossed_after(6, 6)}, 25, 6);
  CHECK(apart.start_row == 3);
  CHECK(apart.imbalance_rows == 1);
  CHECK_FALSE(apart.open_ends);
  // Of 24 rows: after 3, 9, 15 and 21.
  const FitCandidate even = best({crossed_after(6, 6)}, 24, 6);
  CHECK(even.start_row == 4);
  CHECK(even.imbalance_rows == 0);
}

TEST_CASE("the panel of a candidate begins with the row that it tells", "[fit]") {
  FitRequest request;
  request.width_mm = 16;
  request.height_mm = 24 * 2.5;
  request.groups = {{{crossed_after(6, 6)}}};
  request.rows_step = 6;
  const FitCandidate plain = fit(request, swatch()).candidates.at(0);
  CHECK(plain.start_row == 1);
  CHECK(plain.open_ends);  // crossed after its last row
  CHECK(plain.imbalance_rows == 6);
  request.vary_start = true;
  const FitCandidate best = fit(request, swatch()).candidates.at(0);
  CHECK(best.width_mm == plain.width_mm);
  CHECK(best.height_mm == plain.height_mm);
  const Panel panel = fitted(request, best);
  std::vector<int> rows;
  for (const Crossing& crossing : panel.grid().crossings()) rows.push_back(crossing.row);
  CHECK(rows == std::vector<int>{3, 9, 15, 21});
  CHECK(panel.name() == "1 repeat, 0 edge columns a side, 24 rows from row 4");
}

TEST_CASE("open ends come last, however well they balance", "[fit]") {
  // A tuck in rows 1 and 2 of 3: 2 rows at every start but the one whose ends are knit are a tuck.
  Grid tucks(3, 1);
  tucks.set(1, 0, Cell::tuck);
  tucks.set(2, 0, Cell::tuck);
  const FitCandidate found = best({of(tucks)}, 4, 3);
  CHECK(found.start_row == 3);  // knit, tuck, tuck, knit
  CHECK_FALSE(found.open_ends);
  CHECK(found.imbalance_rows == 0);
  // DEVELOPERS.md, stacks and closing: a tuck in row 1 is held with the cast-on's loop, one in the last row is closed
  // by nothing.
  Grid first_row(2, 1);
  first_row.set(1, 0, Cell::tuck);
  const FitCandidate held = best({of(first_row)}, 4, 2);  // tuck, knit, tuck, knit
  CHECK(held.start_row == 1);
  CHECK_FALSE(held.open_ends);
  CHECK(held.imbalance_rows == 1);
  // Nothing but tucks: all are open, so the first is taken.
  Grid always(2, 1);
  always.set(1, 0, Cell::tuck);
  always.set(2, 0, Cell::slip);
  CHECK(best({of(always)}, 4, 2).open_ends);
  CHECK(best({of(always)}, 4, 2).start_row == 1);
}

TEST_CASE("strips without crossings balance by cells that are not knit, and count as often as they stand", "[fit]") {
  Grid purls(4, 1);
  purls.set(2, 0, Cell::purl);  // started at 1: rows 2, 6 and 10 of 11, so a row below the first and above the last
  CHECK(best({of(purls)}, 11, 4).start_row == 1);
  CHECK(best({of(purls)}, 11, 4).imbalance_rows == 0);
  // 12 rows: rows 2, 6 and 10 leave 1 and 2; a row apart, in each of five strips, beside knit, which counts nothing.
  const FitCandidate many = best({of(purls), of(Grid(4, 1))}, 12, 4, 5);
  CHECK(many.start_row == 1);
  CHECK(many.imbalance_rows == 5);
}

TEST_CASE("where no row has what is looked for all rows count", "[fit]") {
  // Crossed after row 5 of 20, and 8 rows: a start from which the crossing shows wins.
  const FitCandidate found = best({crossed_after(20, 5)}, 8, 20);
  CHECK(found.start_row == 2);  // after row 4 of 8: 4 below, 4 above
  CHECK(found.imbalance_rows == 0);
  // Two that never show together.
  const FitCandidate never = best({crossed_after(40, 5), crossed_after(40, 25)}, 8, 40);
  CHECK(never.imbalance_rows == 8);
}

TEST_CASE("any number of rows still begins with the row that balances best", "[fit]") {
  // Rows in steps of 1: the repeat is the strip's own, 6 rows. Of 24, as above, from row 4.
  const FitCandidate found = best({crossed_after(6, 6)}, 24, 1);
  CHECK(found.start_row == 4);
  CHECK(found.imbalance_rows == 0);
  // Two strips repeat together after 12 rows, which the step does not cut short: of 24, the rope of 4 wants to begin at
  // row 3 and that of 6 at row 4, which is row 7 and 10 as well; of the 12 starts the least imbalance wins.
  const FitCandidate two = best({crossed_after(4, 4), crossed_after(6, 6)}, 24, 2);
  CHECK(two.imbalance_rows <= 2);
  CHECK(fitted({.width_mm = 32, .height_mm = 60, .groups = {{{crossed_after(4, 4), crossed_after(6, 6)}}}}, two)
            .grid()
            .rows() == 24);
}

}  // namespace fit_start_test
