#include "latchwork/motif.hpp"

#include <fmt/format.h>

#include <cstdint>
#include <string>
#include <utility>

#include "latchwork/error.hpp"

namespace latchwork::inline v0 {
namespace {

Error refusal(ErrorCode code, const char* field, std::int64_t value, const char* limit, int bound) {
  Place place;
  place.field = field;
  return {code, place, fmt::format("{} is {}; {} {}", field, value, limit, bound)};
}

void require_count(const char* field, int value, int least = 1) {
  if (value < least) throw refusal(ErrorCode::bad_argument, field, value, "at least", least);
}

/// A side of a grid that a parameter makes, `times` of it and `more`: taken in 64 bits, so that large numbers are
/// refused, not wrapped. The caller's own number is told, and the greatest that fits.
int side(const char* field, int value, int times = 1, int more = 0) {
  const std::int64_t made = std::int64_t{value} * times + more;
  if (made > Grid::max_side) {
    throw refusal(ErrorCode::too_large, field, value, "at most", (Grid::max_side - more) / times);
  }
  return static_cast<int>(made);
}

/// The same for two parameters side by side: the message tells both.
int side_of_two(const char* field, int value, const char* other_field, int other) {
  const std::int64_t made = std::int64_t{value} + other;
  if (made > Grid::max_side) {
    Place place;
    place.field = field;
    throw Error(
        ErrorCode::too_large, place,
        fmt::format("{} {} and {} {} come to {}; at most {}", field, value, other_field, other, made, Grid::max_side));
  }
  return static_cast<int>(made);
}

template <class CellAt>
Grid painted(int rows, int columns, CellAt cell_at) {
  Grid grid(rows, columns);
  for (int row = 1; row <= rows; ++row) {
    for (int x = 0; x < columns; ++x) {
      const Cell cell = cell_at(row, x);
      if (cell != Cell::knit) grid.set(row, x, cell);
    }
  }
  return grid;
}

Grid filled_with(int rows, int columns, Cell cell) {
  return painted(rows, columns, [cell](int, int) { return cell; });
}

/// The row after which the first crossing of an interval is made: half way up, the odd row below it.
int half_way(int interval) noexcept {
  return interval / 2 + interval % 2;
}

Lean other(Lean lean) noexcept {
  return lean == Lean::left ? Lean::right : Lean::left;
}

const char* lean_word(Lean lean) noexcept {
  return lean == Lean::right ? "RC" : "LC";
}

void require_lean(Lean lean) {
  if (lean != Lean::left && lean != Lean::right) {
    throw refusal(ErrorCode::bad_argument, "lean", static_cast<int>(lean), "0 is left, right is", 1);
  }
}

}  // namespace

Strip stockinette(int columns) {
  require_count("columns", columns);
  return {"stockinette", "stockinette", Grid(1, side("columns", columns))};
}

Strip reverse(int columns) {
  require_count("columns", columns);
  return {"reverse", "reverse", filled_with(1, side("columns", columns), Cell::purl)};
}

Strip garter(int knit_rows, int purl_rows, int columns) {
  require_count("knit_rows", knit_rows);
  require_count("purl_rows", purl_rows);
  require_count("columns", columns);
  const int rows = side_of_two("knit_rows", knit_rows, "purl_rows", purl_rows);
  std::string name = fmt::format("garter {}/{}", knit_rows, purl_rows);
  return {name, name, painted(rows, side("columns", columns), [knit_rows](int row, int) {
            return row <= knit_rows ? Cell::knit : Cell::purl;
          })};
}

Strip moss(int columns) {
  require_count("columns", columns);
  return {"moss", "moss", painted(2, side("columns", columns), [](int row, int x) {
            return (row + x) % 2 == 1 ? Cell::knit : Cell::purl;
          })};
}

Strip basket(int block_columns, int block_rows) {
  require_count("block_columns", block_columns);
  require_count("block_rows", block_rows);
  const int rows = side("block_rows", block_rows, 2);
  const int columns = side("block_columns", block_columns, 2);
  std::string name = fmt::format("basket {}x{}", block_columns, block_rows);
  return {name, name, painted(rows, columns, [=](int row, int x) {
            return (row <= block_rows) == (x < block_columns) ? Cell::knit : Cell::purl;
          })};
}

Strip tuck_rib(int height) {
  require_count("height", height);
  const int rows = side("height", height, 1, 1);
  std::string name = fmt::format("tuck rib {}", height);
  return {name, name, painted(rows, 1, [height](int row, int) { return row <= height ? Cell::tuck : Cell::purl; })};
}

Strip ladder(int columns) {
  require_count("columns", columns);
  return {"ladder", "ladder", filled_with(1, side("columns", columns), Cell::none)};
}

Strip rope(int front, int back, int interval, Lean lean) {
  require_count("front", front);
  require_count("back", back);
  require_count("interval", interval, 2);
  require_lean(lean);
  Grid grid(side("interval", interval), side_of_two("front", front, "back", back));
  const bool right = lean == Lean::right;
  grid.cross({.row = half_way(interval),
              .column = 0,
              .left = right ? front : back,
              .right = right ? back : front,
              .lean = lean});
  return {fmt::format("rope {}/{} {} every {}", front, back, lean_word(lean), interval),
          fmt::format("rope {}/{} every {}", front, back, interval), std::move(grid)};
}

Strip plait(int stitches, int interval, Lean lean) {
  require_count("stitches", stitches);
  require_count("interval", interval, 2);
  require_lean(lean);
  Grid grid(side("interval", interval, 2), side("stitches", stitches, 3));
  const int first = half_way(interval);
  grid.cross({.row = first, .column = 0, .left = stitches, .right = stitches, .lean = lean});
  grid.cross({.row = first + interval, .column = stitches, .left = stitches, .right = stitches, .lean = other(lean)});
  std::string texture = fmt::format("plait {} every {}", stitches, interval);
  std::string name = lean == Lean::right ? texture : fmt::format("plait {} under every {}", stitches, interval);
  return {std::move(name), std::move(texture), std::move(grid)};
}

Strip wave(int stitches, int interval, Lean lean) {
  require_count("stitches", stitches);
  require_count("interval", interval, 2);
  require_lean(lean);
  Grid grid(side("interval", interval, 2), side("stitches", stitches, 2));
  const int first = half_way(interval);
  grid.cross({.row = first, .column = 0, .left = stitches, .right = stitches, .lean = lean});
  grid.cross({.row = first + interval, .column = 0, .left = stitches, .right = stitches, .lean = other(lean)});
  return {fmt::format("wave {0}/{0} {1} every {2}", stitches, lean_word(lean), interval),
          fmt::format("wave {0}/{0} every {1}", stitches, interval), std::move(grid)};
}

}  // namespace latchwork::inline v0
