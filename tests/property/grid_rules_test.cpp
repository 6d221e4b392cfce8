// The crossing rules, written again from DEVELOPERS.md, crossings, over bare arrays, against what the grid lets be
// done.
#include <array>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/error.hpp"
#include "latchwork/grid.hpp"
#include "random_grid.hpp"

namespace grid_rules_test {

using namespace latchwork;
using latchwork_test::any_grid;
using latchwork_test::Random;

namespace {

struct Bare {
  int rows;
  int columns;
  std::vector<Cell> cells;
  std::vector<Crossing> crossings;

  explicit Bare(const Grid& grid)
      : rows(grid.rows()),
        columns(grid.columns()),
        cells(grid.cells().begin(), grid.cells().end()),
        crossings(grid.crossings().begin(), grid.crossings().end()) {}

  Cell& at(int row, int x) { return cells[static_cast<std::size_t>((row - 1) * columns + x)]; }
  Cell at(int row, int x) const { return cells[static_cast<std::size_t>((row - 1) * columns + x)]; }
};

/// Empty where every rule is kept, else what is broken.
std::string broken(const Bare& bare) {
  std::vector<int> taken(bare.cells.size(), 0);
  for (const Crossing& c : bare.crossings) {
    if (c.left < 1 || c.right < 1 || c.centre < 0) return "a group without a stitch";
    const int end = c.column + c.left + c.centre + c.right;
    if (c.row < 1 || c.row > bare.rows || c.column < 0 || end > bare.columns) return "off the grid";
    const int above = c.row % bare.rows + 1;
    // Where each stitch of the span comes from and goes to.
    int bare_in_centre = 0;
    for (int x = c.column; x < end; ++x) {
      const bool in_left = x < c.column + c.left;
      const bool in_centre = !in_left && x < c.column + c.left + c.centre;
      const int to = in_left ? x + c.centre + c.right : in_centre ? x + c.right - c.left : x - c.left - c.centre;
      if (taken[static_cast<std::size_t>((c.row - 1) * bare.columns + x)]++ > 0) return "a stitch taken twice";
      if (bare.at(c.row, x) == Cell::tuck || bare.at(c.row, x) == Cell::slip) return "a stack under a crossing";
      const bool none_below = bare.at(c.row, x) == Cell::none;
      const bool none_above = bare.at(above, to) == Cell::none;
      if (!in_centre && (none_below || none_above)) return "an outer stitch is bare";
      bare_in_centre += static_cast<int>(none_below) + static_cast<int>(none_above);
    }
    if (bare_in_centre != 0 && bare_in_centre != 2 * c.centre) return "part of a centre is bare";
  }
  return {};
}

Cell random_cell(Random& random) {
  return static_cast<Cell>(random.between(0, 4));
}

Crossing random_crossing(Random& random, const Grid& grid) {
  return {.row = random.between(0, grid.rows() + 1),
          .column = random.between(-1, grid.columns()),
          .left = random.between(random.one_in(20) ? 0 : 1, 3),
          .centre = random.one_in(2) ? 0 : random.between(0, 2),
          .right = random.between(1, 3),
          .lean = random.one_in(2) ? Lean::left : Lean::right,
          .place = static_cast<Centre>(random.between(0, 2))};
}

}  // namespace

TEST_CASE("a cell is set exactly when the rules allow it, and a refused one changes nothing", "[grid][rule]") {
  int refusals = 0;
  int done = 0;
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    Grid grid = any_grid(random);
    for (int i = 0; i < 10; ++i) {
      const int row = random.between(1, grid.rows());
      const int x = random.between(0, grid.columns() - 1);
      const Cell cell = random_cell(random);
      const Grid before = grid;
      Bare wanted(grid);
      wanted.at(row, x) = cell;
      const std::string reason = broken(wanted);
      CAPTURE(before.to_text(), row, x, cell_letter(cell), reason);
      try {
        grid.set(row, x, cell);
        ++done;
        if (!reason.empty()) FAIL("set, though " << reason);
        if (grid.cells()[static_cast<std::size_t>((row - 1) * grid.columns() + x)] != cell) FAIL("not set");
      } catch (const Error& error) {
        ++refusals;
        if (reason.empty()) FAIL("refused without reason: " << error.what());
        if (grid != before) FAIL("changed, though refused");
        if (error.place().row != row || error.place().column != x) FAIL("told at another place");
        if (error.code() != ErrorCode::crossing_over_none && error.code() != ErrorCode::crossing_over_stack) {
          FAIL("another code");
        }
      }
    }
  }
  CHECK(refusals > 500);
  CHECK(done > 5000);
}

TEST_CASE("a crossing is made exactly when the rules allow it, and a refused one changes nothing", "[grid][rule]") {
  int refusals = 0;
  int done = 0;
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    // Every other grid is a calm one, so that many crossings find room.
    Grid grid = random.one_in(2) ? any_grid(random)
                                 : latchwork_test::random_grid(random, {.one_in_stack = 40, .one_in_crossing = 40});
    for (int i = 0; i < 10; ++i) {
      const Grid before = grid;
      const Crossing crossing = random_crossing(random, grid);
      Bare wanted(grid);
      wanted.crossings.push_back(crossing);
      const std::string reason = broken(wanted);
      CAPTURE(before.to_text(), crossing_name(crossing), crossing.row, crossing.column, reason);
      try {
        grid.cross(crossing);
        ++done;
        if (!reason.empty()) FAIL("made, though " << reason);
        if (grid.crossings().size() != before.crossings().size() + 1) FAIL("not made");
        grid.uncross(crossing.row, crossing.column);
        if (grid != before) FAIL("not taken away again");
        grid.cross(crossing);
      } catch (const Error& error) {
        ++refusals;
        if (reason.empty()) FAIL("refused without reason: " << error.what());
        if (grid != before) FAIL("changed, though refused");
      }
    }
  }
  CHECK(refusals > 5000);
  CHECK(done > 1000);
}

TEST_CASE("no operation makes a grid that breaks a rule, and crossings stay in order", "[grid][rule]") {
  std::array<int, 12> done{};  // by step
  std::array<int, 12> refused{};
  for (std::uint64_t seed = 1; seed <= 3000; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    Grid grid = any_grid(random, 8, 8);
    std::string history = grid.to_text();
    for (int i = 0; i < 6; ++i) {
      const int step = random.between(0, 11);
      history += "step " + std::to_string(step) + "\n";
      try {
        switch (step) {
          case 0:
            grid = grid.mirrored();
            break;
          case 1:
            grid = grid.upside_down();
            break;
          case 2:
            grid = grid.half_turn();
            break;
          case 3:
            grid = grid.turned();
            break;
          case 4:
            grid = grid.unfolded(random.one_in(2) ? Axis::line : Axis::stitch);
            break;
          case 5:
            grid = grid.repeated_across(2, random.between(-3, 3));
            break;
          case 6:
            grid = grid.repeated_up(2);
            break;
          case 7:
            grid = grid.rolled_up(random.between(-20, 20));
            break;
          case 8:
            grid = grid.beside(latchwork_test::random_grid(random, {.rows = grid.rows(), .columns = 4}));
            break;
          case 9: {
            latchwork_test::RandomGridOptions options{.rows = 3, .columns = grid.columns()};
            options.one_in_hole = 6;
            options.tile = true;
            grid = grid.above(latchwork_test::random_grid(random, options));
            break;
          }
          case 10:
            grid = grid.sliced(random.between(1, grid.rows()), random.between(0, grid.columns() - 1),
                               random.between(1, grid.rows()), random.between(1, grid.columns()));
            break;
          default:
            grid.paste(any_grid(random, 4, 4), random.between(1, grid.rows()), random.between(0, grid.columns() - 1));
            break;
        }
        ++done[static_cast<std::size_t>(step)];
      } catch (const Error& error) {
        history += "refused\n";
        ++refused[static_cast<std::size_t>(step)];
        if (error.code() != ErrorCode::crossing_cut && error.code() != ErrorCode::crossing_over_none &&
            error.code() != ErrorCode::off_grid) {
          FAIL(history << error.what());
        }
      }
      const std::string reason = broken(Bare(grid));
      if (!reason.empty()) FAIL(history << "gives\n" << grid.to_text() << reason);
      for (std::size_t k = 1; k < grid.crossings().size(); ++k) {
        const Crossing& a = grid.crossings()[k - 1];
        const Crossing& b = grid.crossings()[k];
        if (std::pair(a.row, a.column) >= std::pair(b.row, b.column)) FAIL(history << "gives crossings out of order");
      }
      if (grid.cells().size() != static_cast<std::size_t>(grid.rows()) * static_cast<std::size_t>(grid.columns())) {
        FAIL(history << "gives a wrong number of cells");
      }
    }
  }
  for (std::size_t step = 0; step < done.size(); ++step) {
    CAPTURE(step);
    CHECK(done[step] > 100);
    // What is only reflected, repeated plainly, rolled or joined at its side is always a grid.
    const bool always = step == 0 || step == 3 || (step >= 5 && step <= 8);
    CHECK((refused[step] == 0) == always);
  }
}

}  // namespace grid_rules_test
