// The algebra of the grid's operations, as laws over random grids.
#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/error.hpp"
#include "latchwork/grid.hpp"
#include "random_grid.hpp"

namespace grid_laws_test {

using namespace latchwork;
using latchwork_test::any_grid;
using latchwork_test::Random;

namespace {

/// Runs a law on `count` random grids; a failure shows its seed and the smallest grid that breaks the law.
template <class Law>
void for_any_grid(std::uint64_t seed, int count, Law law) {
  for (int i = 0; i < count; ++i) {
    Random random(seed + static_cast<std::uint64_t>(i));
    const Grid grid = any_grid(random);
    if (law(grid)) continue;
    const Grid smallest = latchwork_test::smallest_failing(grid, [&](const Grid& g) { return !law(g); });
    FAIL("seed " << seed + static_cast<std::uint64_t>(i) << ", smallest grid:\n" << smallest.to_text());
  }
  SUCCEED(count << " grids");
}

/// Upside down, or nothing where a stack above a crossing ends on no stitch.
std::optional<Grid> over(const Grid& grid) {
  try {
    return grid.upside_down();
  } catch (const Error& error) {
    if (error.code() != ErrorCode::crossing_over_none) throw;
    return std::nullopt;
  }
}

std::optional<Grid> half_turned(const Grid& grid) {
  try {
    return grid.half_turn();
  } catch (const Error& error) {
    if (error.code() != ErrorCode::crossing_over_none) throw;
    return std::nullopt;
  }
}

bool can_turn_over(const Grid& grid) {
  return over(grid).has_value();
}

Cell other_side(Cell cell) {
  return cell == Cell::knit ? Cell::purl : cell == Cell::purl ? Cell::knit : cell;
}

Lean flipped(Lean lean) {
  return lean == Lean::left ? Lean::right : Lean::left;
}

Centre from_behind(Centre place) {
  return place == Centre::front ? Centre::behind : place == Centre::behind ? Centre::front : place;
}

/// A grid built cell by cell and crossing by crossing from another, through the checked calls only.
template <class CellTo, class CrossingTo>
Grid rebuilt(const Grid& grid, CellTo cell_to, CrossingTo crossing_to) {
  Grid result(grid.rows(), grid.columns());
  for (int row = 1; row <= grid.rows(); ++row) {
    for (int x = 0; x < grid.columns(); ++x) cell_to(result, row, x, grid.at(row, x));
  }
  for (const Crossing& crossing : grid.crossings()) result.cross(crossing_to(crossing));
  return result;
}

/// A column of letters turned over as DEVELOPERS.md, views, says, written another way than the library's: the ring is
/// cut behind a closed loop into units, and the units are put together in the other order.
std::string column_turned_over(const std::string& column) {
  const auto stacked = [](char letter) { return letter == 't' || letter == 's'; };
  const auto closed = std::ranges::find_if_not(column, stacked);
  if (closed == column.end()) return {column.rbegin(), column.rend()};
  const auto cut = static_cast<std::size_t>(closed - column.begin()) + 1;
  const std::string ring = column.substr(cut) + column.substr(0, cut);
  std::string turned;
  std::string unit;
  for (const char letter : ring) {
    unit += letter;
    if (stacked(letter)) continue;
    turned.insert(0, unit);
    unit.clear();
  }
  // The ring's last row, `cut`, is row R + 1 - cut of the image, and the first letter of `turned`.
  const std::size_t start = column.size() - cut;
  std::string result(column.size(), '?');
  for (std::size_t i = 0; i < turned.size(); ++i) result[(start + i) % result.size()] = turned[i];
  return result;
}

}  // namespace

TEST_CASE("every grid is written as letters and read back equal", "[grid][law]") {
  for_any_grid(1, 2000, [](const Grid& grid) { return Grid::from_text(grid.to_text()) == grid; });
}

TEST_CASE("the table of views holds cell by cell and crossing by crossing", "[grid][law]") {
  for_any_grid(10'000, 1000, [](const Grid& grid) {
    const int wide = grid.columns();
    const int high = grid.rows();
    const Grid mirrored = rebuilt(
        grid, [&](Grid& to, int row, int x, Cell cell) { to.set(row, wide - 1 - x, cell); },
        [&](const Crossing& c) {
          return Crossing{
              c.row,  wide - c.column - c.left - c.centre - c.right, c.right, c.centre, c.left, flipped(c.lean),
              c.place};
        });
    const Grid turned = rebuilt(
        grid, [&](Grid& to, int row, int x, Cell cell) { to.set(row, wide - 1 - x, other_side(cell)); },
        [&](const Crossing& c) {
          return Crossing{c.row,
                          wide - c.column - c.left - c.centre - c.right,
                          c.right,
                          c.centre,
                          c.left,
                          c.lean,
                          from_behind(c.place)};
        });
    if (grid.mirrored() != mirrored || grid.turned() != turned) return false;

    if (!can_turn_over(grid)) return true;
    std::vector<std::string> columns(static_cast<std::size_t>(wide));
    for (int x = 0; x < wide; ++x) {
      for (int row = 1; row <= high; ++row) columns[static_cast<std::size_t>(x)] += cell_letter(grid.at(row, x));
      columns[static_cast<std::size_t>(x)] = column_turned_over(columns[static_cast<std::size_t>(x)]);
    }
    const auto cell_over = [&](int row, int x) {
      return *cell_of(columns[static_cast<std::size_t>(x)][static_cast<std::size_t>(row - 1)]);
    };
    const Grid upside_down = rebuilt(
        grid, [&](Grid& to, int row, int x, Cell) { to.set(row, x, cell_over(row, x)); },
        [&](const Crossing& c) {
          return Crossing{
              c.row == high ? high : high - c.row, c.column, c.right, c.centre, c.left, flipped(c.lean), c.place};
        });
    const Grid half_turn = rebuilt(
        grid, [&](Grid& to, int row, int x, Cell) { to.set(row, wide - 1 - x, cell_over(row, x)); },
        [&](const Crossing& c) {
          return Crossing{c.row == high ? high : high - c.row,
                          wide - c.column - c.left - c.centre - c.right,
                          c.left,
                          c.centre,
                          c.right,
                          c.lean,
                          c.place};
        });
    return grid.upside_down() == upside_down && grid.half_turn() == half_turn;
  });
}

TEST_CASE("all four views are involutions", "[grid][law]") {
  for_any_grid(20'000, 2000, [](const Grid& grid) {
    if (grid.mirrored().mirrored() != grid || grid.turned().turned() != grid) return false;
    if (!can_turn_over(grid)) return true;
    return over(*over(grid)) == grid && half_turned(*half_turned(grid)) == grid;
  });
}

TEST_CASE("the views commute in pairs", "[grid][law]") {
  for_any_grid(30'000, 1000, [](const Grid& grid) {
    if (grid.mirrored().turned() != grid.turned().mirrored()) return false;
    if (over(grid.mirrored()).has_value() != can_turn_over(grid)) return false;
    if (over(grid.turned()).has_value() != can_turn_over(grid)) return false;
    if (!can_turn_over(grid)) return true;
    return over(grid.mirrored()) == over(grid)->mirrored() && over(grid.turned()) == over(grid)->turned() &&
           half_turned(grid.mirrored()) == half_turned(grid)->mirrored() &&
           half_turned(grid.turned()) == half_turned(grid)->turned() &&
           half_turned(*over(grid)) == over(*half_turned(grid));
  });
}

TEST_CASE("a half turn is mirrored and upside down, in either order: the dihedral relations", "[grid][law]") {
  for_any_grid(40'000, 1000, [](const Grid& grid) {
    if (!can_turn_over(grid)) return !half_turned(grid).has_value();
    return half_turned(grid) == over(grid.mirrored()) && half_turned(grid) == over(grid)->mirrored() &&
           over(*half_turned(grid)) == grid.mirrored() && half_turned(grid)->mirrored() == over(grid);
  });
}

TEST_CASE("turned is mirrored with knit and purl swapped, leans flipped back, and centres brought from front to back",
          "[grid][law]") {
  for_any_grid(50'000, 1000, [](const Grid& grid) {
    const Grid swapped = rebuilt(
        grid.mirrored(), [](Grid& to, int row, int x, Cell cell) { to.set(row, x, other_side(cell)); },
        [](Crossing c) {
          c.lean = flipped(c.lean);
          c.place = from_behind(c.place);
          return c;
        });
    return grid.turned() == swapped;
  });
}

namespace {

bool in_stack(Cell cell) {
  return cell == Cell::tuck || cell == Cell::slip;
}

/// Whether the stack at a place, of at least one tuck or slip, ends on no stitch, round the seam.
bool ends_on_none(const Grid& grid, int row, int x) {
  if (!in_stack(grid.at(row, x))) return false;
  const int from = row;
  do row = row % grid.rows() + 1;
  while (row != from && in_stack(grid.at(row, x)));
  return grid.at(row, x) == Cell::none;
}

/// The grid with stacks above some of its crossings, here and there with no stitch on top, by checked calls.
Grid undermined(Grid grid) {
  Random random(grid.hash());
  const std::vector<Crossing> crossings(grid.crossings().begin(), grid.crossings().end());
  for (const Crossing& c : crossings) {
    const int x = c.column + random.between(0, c.width() - 1);
    const int above = c.row % grid.rows() + 1;
    const bool bare = random.one_in(3);
    const bool stacks = random.one_in(2);
    if (!stacks || grid.at(above, x) == Cell::none) continue;
    Grid changed = grid;
    try {
      changed.set(above, x, Cell::tuck);
      if (bare) changed.set(above % grid.rows() + 1, x, Cell::none);
      grid = changed;
    } catch (const Error& error) {  // another crossing has its stitches there
      if (error.code() != ErrorCode::crossing_over_stack && error.code() != ErrorCode::crossing_over_none) throw;
    }
  }
  return grid;
}

}  // namespace

TEST_CASE("a grid can be turned over unless a stack just above a crossing, or below its bare centre, ends on no stitch",
          "[grid][law]") {
  int refused = 0;
  int centres = 0;
  int turned = 0;  // with a stack above a crossing
  for_any_grid(60'000, 2000, [&](const Grid& any) {
    const Grid grid = undermined(any);
    bool stack = false;
    bool bare = false;
    for (const Crossing& c : grid.crossings()) {
      const int above = c.row % grid.rows() + 1;
      for (int x = c.column; x < c.column + c.width(); ++x) {
        stack = stack || in_stack(grid.at(above, x));
        bare = bare || ends_on_none(grid, above, x);
      }
      // Or a stack just below a bare centre, which is then above it.
      const int below = c.row == 1 ? grid.rows() : c.row - 1;
      for (int x = c.column + c.left; x < c.column + c.left + c.centre; ++x) {
        if (grid.at(c.row, x) != Cell::none || !in_stack(grid.at(below, x))) continue;
        bare = true;
        ++centres;
      }
    }
    try {
      static_cast<void>(grid.upside_down());
      turned += stack ? 1 : 0;
      return !bare;
    } catch (const Error& error) {
      ++refused;
      return bare && error.code() == ErrorCode::crossing_over_none &&
             ends_on_none(grid, error.place().row, error.place().column);
    }
  });
  CHECK(turned > 300);
  CHECK(refused > 100);
  CHECK(centres > 0);
}

TEST_CASE("repeat of repeat is one repeat", "[grid][law]") {
  for_any_grid(70'000, 300, [](const Grid& grid) {
    for (const int a : {1, 2, 3}) {
      for (const int b : {1, 2}) {
        if (grid.repeated_up(a).repeated_up(b) != grid.repeated_up(a * b)) return false;
        if (grid.repeated_across(a).repeated_across(b) != grid.repeated_across(a * b)) return false;
        for (const int shift : {-3, 1, 2}) {
          if (grid.repeated_across(a, shift).repeated_across(b, a * shift) != grid.repeated_across(a * b, shift)) {
            return false;
          }
        }
      }
    }
    return grid.repeated_up(2).repeated_across(3) == grid.repeated_across(3).repeated_up(2);
  });
}

namespace {

/// Columns moved right, round the ring, by slices; nothing where a crossing would be cut.
std::optional<Grid> rolled_right(const Grid& grid, int by) {
  const int wide = grid.columns();
  const int moved = (by % wide + wide) % wide;
  if (moved == 0) return grid;
  try {
    return grid.sliced(1, wide - moved, grid.rows(), moved).beside(grid.sliced(1, 0, grid.rows(), wide - moved));
  } catch (const Error& error) {
    if (error.code() != ErrorCode::crossing_cut) throw;
    return std::nullopt;
  }
}

template <class Make>
std::optional<Grid> made(Make&& make) {
  try {
    return make();
  } catch (const Error& error) {
    if (error.code() != ErrorCode::crossing_cut && error.code() != ErrorCode::crossing_over_none) throw;
    return std::nullopt;
  }
}

}  // namespace

TEST_CASE("a repeat upward with a shift is shifted copies on top of each other, and refuses to cut a crossing",
          "[grid][law]") {
  int shifted = 0;
  int refused = 0;  // cut, or with no stitch above a crossing on the seam of two copies
  int bare = 0;     // of these, the latter
  int stacked = 0;
  int paired = 0;
  for_any_grid(75'000, 400, [&](const Grid& grid) {
    if (grid.repeated_up(2, 3 * grid.columns()) != grid.repeated_up(2)) return false;
    for (const int shift : {-3, -1, 1, 2, 5}) {
      const auto repeat = made([&] { return grid.repeated_up(3, shift); });
      const auto once = rolled_right(grid, shift);
      const auto twice = rolled_right(grid, 2 * shift);
      if (repeat && !(once && twice)) return false;  // a copy was cut
      const auto by_hand = once && twice ? made([&] { return twice->above(once->above(grid)); }) : std::nullopt;
      if (!repeat) {
        if (by_hand) return false;  // refused, though it can be made
        ++refused;
        bare += once && twice ? 1 : 0;
        continue;
      }
      ++shifted;
      stacked += by_hand ? 1 : 0;
      if (by_hand && *repeat != *by_hand) return false;
      if (repeat->mirrored() != grid.mirrored().repeated_up(3, -shift)) return false;
      if (repeat->turned() != grid.turned().repeated_up(3, -shift)) return false;
      const auto pairs = made([&] { return grid.repeated_up(2, shift).repeated_up(2, 2 * shift); });
      paired += pairs ? 1 : 0;
      if (pairs && *pairs != grid.repeated_up(4, shift)) return false;
      if (repeat->sliced(1, 0, grid.rows(), grid.columns()) != grid) return false;
      if (repeat->sliced(grid.rows() + 1, 0, grid.rows(), grid.columns()) != *once) return false;
    }
    return true;
  });
  CHECK(shifted > 300);
  CHECK(refused > 100);
  CHECK(bare > 0);
  CHECK(stacked > 300);
  CHECK(paired > 300);
}

TEST_CASE("a repeat is copies put together: up by above, across by beside, shifted by rolling", "[grid][law]") {
  for_any_grid(80'000, 300, [](const Grid& grid) {
    if (grid.repeated_up(3) != grid.above(grid).above(grid)) return false;
    if (grid.repeated_across(3) != grid.beside(grid).beside(grid)) return false;
    for (const int shift : {-7, -1, 1, 2, 5}) {
      const Grid by_hand = grid.beside(grid.rolled_up(shift)).beside(grid.rolled_up(2 * shift));
      if (grid.repeated_across(3, shift) != by_hand) return false;
    }
    return true;
  });
}

TEST_CASE("rolling adds up, and by R rows it is nothing", "[grid][law]") {
  for_any_grid(90'000, 500, [](const Grid& grid) {
    const int high = grid.rows();
    for (const int a : {-2, 1, 3}) {
      for (const int b : {-1, 2}) {
        if (grid.rolled_up(a).rolled_up(b) != grid.rolled_up(a + b)) return false;
      }
      if (grid.rolled_up(a + high) != grid.rolled_up(a) || grid.rolled_up(a - 3 * high) != grid.rolled_up(a)) {
        return false;
      }
    }
    return grid.rolled_up(high) == grid && grid.rolled_up(0) == grid;
  });
}

TEST_CASE("views of a repeat are repeats of the view; what shifts up in one shifts down in its mirror image",
          "[grid][law]") {
  for_any_grid(100'000, 300, [](const Grid& grid) {
    const int times = 3;
    const Grid mirrored = grid.mirrored();
    if (grid.repeated_up(times).mirrored() != mirrored.repeated_up(times)) return false;
    if (grid.repeated_up(times).turned() != grid.turned().repeated_up(times)) return false;
    if (grid.repeated_across(times).mirrored() != mirrored.repeated_across(times)) return false;
    for (const int shift : {1, 2, -4}) {
      const Grid image = mirrored.repeated_across(times, -shift).rolled_up((times - 1) * shift);
      if (grid.repeated_across(times, shift).mirrored() != image) return false;
      if (grid.repeated_up(2).rolled_up(shift) != grid.rolled_up(shift).repeated_up(2)) return false;
      if (grid.rolled_up(shift).mirrored() != mirrored.rolled_up(shift)) return false;
    }
    if (!can_turn_over(grid)) return true;
    const Grid turned_over = grid.upside_down();
    for (const int shift : {1, 2, -4}) {
      if (grid.repeated_across(times, shift).upside_down() != turned_over.repeated_across(times, -shift)) return false;
      if (grid.rolled_up(shift).upside_down() != turned_over.rolled_up(-shift)) return false;
    }
    return grid.repeated_up(times).upside_down() == turned_over.repeated_up(times);
  });
}

TEST_CASE("unfolded, a grid is its own mirror image, and its left half is what it was", "[grid][law]") {
  for_any_grid(110'000, 1000, [](const Grid& grid) {
    const int wide = grid.columns();
    const Grid line = grid.unfolded(Axis::line);
    if (line.mirrored() != line || line != grid.beside(grid.mirrored())) return false;
    if (line.sliced(1, 0, grid.rows(), wide) != grid) return false;
    const bool cut =
        std::ranges::any_of(grid.crossings(), [wide](const Crossing& c) { return c.column + c.width() == wide; });
    try {
      const Grid stitch = grid.unfolded(Axis::stitch);
      return !cut && stitch.columns() == 2 * wide - 1 && stitch.mirrored() == stitch &&
             stitch.sliced(1, 0, grid.rows(), wide) == grid;
    } catch (const Error& error) {
      return cut && error.code() == ErrorCode::crossing_cut;
    }
  });
}

namespace {

/// Whether each crossing after row `low` that lies in the columns from `from`, below `to`, still has its stitches above
/// it when row `high` follows: all of the span but a centre that is bare below too, which stays bare.
bool carried(const Grid& grid, int low, int high, int from, int to) {
  for (const Crossing& c : grid.crossings()) {
    if (c.row != low || c.column < from || c.column + c.width() > to) continue;
    const bool bare_centre = c.centre > 0 && grid.at(low, c.column + c.left) == Cell::none;
    for (int i = 0; i < c.width(); ++i) {
      const bool in_centre = i >= c.right && i < c.right + c.centre;  // the right group lies on the left of it now
      if ((grid.at(high, c.column + i) == Cell::none) != (bare_centre && in_centre)) return false;
    }
  }
  return true;
}

/// Whether a crossing after one of `rows` rows from `row` lies in the `columns` columns from `column` in part.
bool partly_inside(const Grid& grid, int row, int column, int rows, int columns) {
  return std::ranges::any_of(grid.crossings(), [&](const Crossing& c) {
    const int from = std::max(c.column, column);
    const int shared = std::min(c.column + c.width(), column + columns) - from;
    return c.row >= row && c.row < row + rows && shared > 0 && shared < c.width();
  });
}

}  // namespace

TEST_CASE("cut between columns or rows and put together again, a grid is what it was", "[grid][law]") {
  int parted = 0;
  int between = 0;  // columns
  int refused = 0;  // for a new seam over a bare row
  for_any_grid(120'000, 500, [&](const Grid& grid) {
    const int wide = grid.columns();
    const int high = grid.rows();
    for (int cut = 1; cut < wide; ++cut) {
      const bool whole = std::ranges::none_of(
          grid.crossings(), [cut](const Crossing& c) { return c.column < cut && c.column + c.width() > cut; });
      try {
        const Grid left = grid.sliced(1, 0, high, cut);
        const Grid right = grid.sliced(1, cut, high, wide - cut);
        if (!whole || left.beside(right) != grid) return false;
        ++between;
      } catch (const Error& error) {
        if (whole || error.code() != ErrorCode::crossing_cut) return false;
      }
    }
    for (int cut = 1; cut < high; ++cut) {
      const bool carries = carried(grid, cut, 1, 0, wide) && carried(grid, high, cut + 1, 0, wide);
      try {
        const Grid below = grid.sliced(1, 0, cut, wide);
        const Grid above = grid.sliced(cut + 1, 0, high - cut, wide);
        if (!carries || above.above(below) != grid || below.above(above) != grid.rolled_up(high - cut)) return false;
        ++parted;
      } catch (const Error& error) {
        if (carries || error.code() != ErrorCode::crossing_over_none) return false;
        ++refused;
      }
    }
    return true;
  });
  CHECK(between > 1000);
  CHECK(parted > 1000);
  CHECK(refused > 20);
}

TEST_CASE("a slice pasted where it was changes nothing, and one pasted elsewhere is found there again", "[grid][law]") {
  int cut = 0;
  int bare = 0;
  int pasted = 0;
  int over_part = 0;
  int over_none = 0;
  for (std::uint64_t seed = 130'000; seed < 131'000; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Grid grid = any_grid(random);
    const int rows = random.between(1, grid.rows());
    const int columns = random.between(1, grid.columns());
    const int row = random.between(1, grid.rows() - rows + 1);
    const int column = random.between(0, grid.columns() - columns);
    const bool cuts = partly_inside(grid, row, column, rows, columns);
    const bool carries = carried(grid, row + rows - 1, row, column, column + columns);
    std::optional<Grid> slice;
    try {
      slice = grid.sliced(row, column, rows, columns);
      REQUIRE((!cuts && carries));
    } catch (const Error& error) {
      REQUIRE((cuts || !carries));
      REQUIRE((error.code() == ErrorCode::crossing_cut || error.code() == ErrorCode::crossing_over_none));
      REQUIRE((error.code() == ErrorCode::crossing_cut ? cuts : !carries));
      (error.code() == ErrorCode::crossing_cut ? cut : bare) += 1;
      continue;
    }
    Grid same = grid;
    same.paste(*slice, row, column);
    CHECK(same == grid);
    Random other_random(seed + 1'000'000);
    Grid other = latchwork_test::random_grid(other_random, {.rows = grid.rows(), .columns = grid.columns()});
    const Grid before = other;
    const bool in_part = partly_inside(before, row, column, rows, columns);
    try {
      other.paste(*slice, row, column);
      ++pasted;
      CHECK_FALSE(in_part);
      CHECK(other.sliced(row, column, rows, columns) == *slice);
    } catch (const Error& error) {
      CHECK(other == before);
      CHECK((error.code() == ErrorCode::crossing_cut || error.code() == ErrorCode::crossing_over_none));
      CHECK((error.code() == ErrorCode::crossing_cut) == in_part);
      (in_part ? over_part : over_none) += 1;
    }
  }
  CHECK(cut > 100);
  CHECK(bare > 0);
  CHECK(pasted > 100);
  CHECK(over_part > 50);
  CHECK(over_none > 0);
}

TEST_CASE("views of two grids joined are the views joined", "[grid][law]") {
  for (std::uint64_t seed = 140'000; seed < 140'500; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    // Closed panels with nothing on the seam, so that what is turned over does not meet the other at its ends.
    const latchwork_test::RandomGridOptions options{.rows = random.between(1, 9), .columns = random.between(1, 9)};
    const Grid a = latchwork_test::random_grid(random, options);
    const Grid b = latchwork_test::random_grid(random, options);
    CHECK(a.beside(b).mirrored() == b.mirrored().beside(a.mirrored()));
    CHECK(a.beside(b).turned() == b.turned().beside(a.turned()));
    CHECK(a.beside(b).upside_down() == a.upside_down().beside(b.upside_down()));
    CHECK(a.above(b).mirrored() == a.mirrored().above(b.mirrored()));
    CHECK(a.above(b).turned() == a.turned().above(b.turned()));
    CHECK(a.above(b).upside_down() == b.upside_down().above(a.upside_down()));
    CHECK(a.beside(b).half_turn() == b.half_turn().beside(a.half_turn()));
    CHECK(a.above(b).half_turn() == b.half_turn().above(a.half_turn()));
    CHECK(a.beside(b).beside(a) == a.beside(b.beside(a)));
    CHECK(a.above(b).above(a) == a.above(b.above(a)));
    CHECK(a.beside(b).above(b.beside(a)) == a.above(b).beside(b.above(a)));
  }
}

TEST_CASE("equal grids hash alike, whatever way they were made; a view that differs hashes otherwise", "[grid][law]") {
  for_any_grid(150'000, 1000, [](const Grid& grid) {
    const Grid again = grid.mirrored().mirrored();
    if (again.hash() != grid.hash()) return false;
    const Grid mirrored = grid.mirrored();
    return (mirrored == grid) == (mirrored.hash() == grid.hash());
  });
}

}  // namespace grid_laws_test
