#include "random_grid.hpp"

#include <cstdint>
#include <optional>
#include <vector>

#include "latchwork/error.hpp"

namespace latchwork_test {
namespace {

using namespace latchwork;

bool now_and_then(Random& random, int one_in) {
  return one_in > 0 && random.one_in(one_in);
}

bool crossed(Grid& grid, const Crossing& crossing) {
  try {
    grid.cross(crossing);
    return true;
  } catch (const Error&) {
    return false;
  }
}

Crossing random_crossing(Random& random, const RandomGridOptions& options, int row, int column) {
  Crossing crossing{.row = row, .column = column};
  crossing.left = random.between(1, options.max_group);
  crossing.right = random.one_in(3) ? random.between(1, options.max_group) : crossing.left;
  crossing.centre = random.one_in(3) ? random.between(0, options.max_centre) : 0;
  crossing.lean = random.one_in(2) ? Lean::left : Lean::right;
  crossing.place = static_cast<Centre>(random.between(0, 2));
  return crossing;
}

class Maker {
 public:
  Maker(Random& random, const RandomGridOptions& options)
      : random_(random), options_(options), grid_(options.rows, options.columns) {}

  Grid make() {
    put_bare();
    put_crossings();
    put_purls();
    put_stacks();
    return options_.tile ? grid_.rolled_up(random_.between(0, options_.rows - 1)) : grid_;
  }

 private:
  void put_bare() {
    for (int x = 1; x + 1 < options_.columns; ++x) {
      if (!now_and_then(random_, options_.one_in_ladder)) continue;
      for (int row = 1; row <= options_.rows; ++row) grid_.set(row, x, Cell::none);
    }
    for (int row = 1; row <= options_.rows; ++row) {
      for (int x = 0; x < options_.columns; ++x) {
        if (now_and_then(random_, options_.one_in_hole)) grid_.set(row, x, Cell::none);
      }
    }
  }

  void put_crossings() {
    const int last = options_.tile ? options_.rows : options_.rows - 1;
    for (int row = 1; row <= last; ++row) {
      for (int x = 0; x + 1 < options_.columns; ++x) {
        if (!now_and_then(random_, options_.one_in_crossing)) continue;
        Crossing crossing = random_crossing(random_, options_, row, x);
        const int after = x + crossing.left;
        if (after < options_.columns && bare(row, after)) {  // a ladder: let it be the centre
          int end = after;
          while (end < options_.columns && bare(row, end)) ++end;
          crossing.centre = end - after;
          crossing.right = crossing.left;
        }
        if (crossed(grid_, crossing)) x += crossing.width() - 1;
      }
    }
  }

  bool bare(int row, int column) const { return grid_.at(row, column) == Cell::none; }

  /// With an edge, or nothing, on one side of it.
  bool beside_nothing(int row, int column) const {
    return column == 0 || column + 1 == options_.columns || bare(row, column - 1) || bare(row, column + 1);
  }

  bool plain(int row, int column) const { return options_.plain_edges && beside_nothing(row, column); }

  void put_purls() {
    for (int row = 1; row <= options_.rows; ++row) {
      for (int x = 0; x < options_.columns; ++x) {
        if (!bare(row, x) && !plain(row, x) && now_and_then(random_, options_.one_in_purl)) {
          grid_.set(row, x, Cell::purl);
        }
      }
    }
  }

  /// Whether a crossing after `row` takes the column along.
  bool moves(int row, int column) const {
    for (const Crossing& crossing : grid_.crossings()) {
      if (crossing.row == row && column >= crossing.column && column < crossing.column + crossing.width()) return true;
    }
    return false;
  }

  /// Whether rows row..row+height-1 may be a stack: held below, closed above, nothing crossed inside.
  bool stack_fits(int row, int column, int height) const {
    if (row + height > options_.rows || bare(row + height, column)) return false;
    if (row > 1 && !moves(row - 1, column) && bare(row - 1, column)) return false;
    for (int r = row; r < row + height; ++r) {
      if (bare(r, column) || plain(r, column) || moves(r, column)) return false;
    }
    return true;
  }

  void put_stacks() {
    for (int x = 0; x < options_.columns; ++x) {
      for (int row = 1; row <= options_.rows; ++row) {
        if (!now_and_then(random_, options_.one_in_stack)) continue;
        const int height = random_.between(1, options_.max_stack);
        if (!stack_fits(row, x, height)) continue;
        const int kind = options_.slips ? random_.between(0, 2) : 0;
        for (int r = row; r < row + height; ++r) {
          const bool slip = kind == 1 || (kind == 2 && random_.one_in(2));
          grid_.set(r, x, slip ? Cell::slip : Cell::tuck);
        }
        row += height;  // the closing cell stays what it is
      }
    }
  }

  Random& random_;
  RandomGridOptions options_;
  Grid grid_;
};

/// The grid made smaller in one way, or nothing where its rules forbid it.
template <class Change>
std::optional<Grid> changed(Change change) {
  try {
    return change();
  } catch (const Error&) {
    return std::nullopt;
  }
}

Grid without_row(const Grid& grid, int row) {
  const int rows = grid.rows();
  const int columns = grid.columns();
  if (row == 1) return grid.sliced(2, 0, rows - 1, columns);
  if (row == rows) return grid.sliced(1, 0, rows - 1, columns);
  return grid.sliced(row + 1, 0, rows - row, columns).above(grid.sliced(1, 0, row - 1, columns));
}

Grid without_column(const Grid& grid, int column) {
  const int rows = grid.rows();
  const int columns = grid.columns();
  if (column == 0) return grid.sliced(1, 1, rows, columns - 1);
  if (column + 1 == columns) return grid.sliced(1, 0, rows, columns - 1);
  return grid.sliced(1, 0, rows, column).beside(grid.sliced(1, column + 1, rows, columns - column - 1));
}

}  // namespace

Grid random_grid(Random& random, const RandomGridOptions& options) {
  return Maker(random, options).make();
}

Grid any_grid(Random& random, int max_rows, int max_columns) {
  RandomGridOptions options;
  options.rows = random.between(1, max_rows);
  options.columns = random.between(1, max_columns);
  options.one_in_purl = random.between(0, 4);
  options.one_in_stack = random.between(0, 6);
  options.max_stack = random.between(1, 4);
  options.one_in_crossing = random.between(0, 5);
  options.max_group = random.between(1, 4);
  options.max_centre = random.between(0, 3);
  options.one_in_ladder = random.between(0, 8);
  options.one_in_hole = random.one_in(3) ? random.between(4, 20) : 0;
  options.plain_edges = random.one_in(2);
  options.tile = random.one_in(2);
  return random_grid(random, options);
}

Grid smallest_failing(Grid grid, const std::function<bool(const Grid&)>& fails) {
  const auto take = [&](auto change) {
    std::optional<Grid> smaller = changed(change);
    if (!smaller || !fails(*smaller)) return false;
    grid = *std::move(smaller);
    return true;
  };
  for (bool again = true; again;) {
    again = false;
    for (int row = grid.rows(); row >= 1 && grid.rows() > 1; --row) {
      again = take([&] { return without_row(grid, row); }) || again;
    }
    for (int x = grid.columns() - 1; x >= 0 && grid.columns() > 1; --x) {
      again = take([&] { return without_column(grid, x); }) || again;
    }
    const std::vector<Crossing> crossings(grid.crossings().begin(), grid.crossings().end());
    for (const Crossing& crossing : crossings) {
      again = take([&] {
                Grid smaller = grid;
                smaller.uncross(crossing.row, crossing.column);
                return smaller;
              }) ||
              again;
    }
    for (int row = 1; row <= grid.rows(); ++row) {
      for (int x = 0; x < grid.columns(); ++x) {
        if (grid.at(row, x) == Cell::knit) continue;
        again = take([&] {
                  Grid smaller = grid;
                  smaller.set(row, x, Cell::knit);
                  return smaller;
                }) ||
                again;
      }
    }
  }
  return grid;
}

}  // namespace latchwork_test
