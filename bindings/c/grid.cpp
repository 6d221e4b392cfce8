#include <limits>

#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace latchwork::c {

Crossing crossing_in(const latchwork_crossing& crossing, const char* name) {
  const std::string prefix = std::string(name) + ".";
  Crossing value;
  value.row = crossing.row;
  value.column = crossing.column;
  value.left = crossing.left;
  value.centre = crossing.centre;
  value.right = crossing.right;
  value.lean = enumerator(crossing.lean, Lean::right, (prefix + "lean").c_str());
  value.place = enumerator(crossing.place, Centre::behind, (prefix + "place").c_str());
  return value;
}

latchwork_crossing crossing_out(const Crossing& crossing) {
  return {crossing.row,
          crossing.column,
          crossing.left,
          crossing.centre,
          crossing.right,
          static_cast<int32_t>(crossing.lean),
          static_cast<int32_t>(crossing.place)};
}

}  // namespace latchwork::c

namespace {

/// A crossing for a grid, which refuses it at its place. An enumerator holds a byte: what that cannot is refused here,
/// in the grid's words.
Crossing crossing_for_grid(const latchwork_crossing& given_crossing) {
  latchwork_crossing known = given_crossing;
  known.lean = known.place = 0;
  Crossing crossing = crossing_in(known, "crossing");
  const auto byte = [&](int32_t value, const char* field, const char* limit) {
    if (value >= 0 && value <= std::numeric_limits<std::uint8_t>::max()) return static_cast<std::uint8_t>(value);
    Place place;
    place.row = crossing.row;
    place.column = crossing.column;
    place.field = field;
    throw Error(ErrorCode::bad_argument, place,
                "crossing at row " + std::to_string(crossing.row) + ", column " + std::to_string(crossing.column) +
                    " has " + field + " = " + std::to_string(value) + "; " + limit);
  };
  crossing.lean = static_cast<Lean>(byte(given_crossing.lean, "lean", "0 is left, 1 is right"));
  crossing.place = static_cast<Centre>(byte(given_crossing.place, "place", "0 is front, 1 between, 2 behind"));
  return crossing;
}

/// One of a grid's const calls that make a grid.
template <class Make>
latchwork_status derive(const latchwork_grid* grid, latchwork_grid** out, latchwork_error* error, Make&& make) {
  return guarded(error, [&] { fill(out, [&] { return make(given(grid, "grid").value); }); });
}

/// A crossing whose sums an int holds: here no grid has refused it before.
Crossing counted_crossing(const latchwork_crossing* given_crossing) {
  const Crossing crossing = crossing_in(given(given_crossing, "crossing"), "crossing");
  const auto require = [](int count, int least, const char* field) {
    if (count >= least && count <= Grid::max_side) return;
    refuse(field,
           std::to_string(count) + "; it must be in " + std::to_string(least) + ".." + std::to_string(Grid::max_side));
  };
  require(crossing.left, 1, "crossing.left");
  require(crossing.centre, 0, "crossing.centre");
  require(crossing.right, 1, "crossing.right");
  return crossing;
}

}  // namespace

char latchwork_cell_letter(int32_t cell) {
  return cell < 0 || cell > UINT8_MAX ? '\0' : cell_letter(static_cast<Cell>(cell));
}

int32_t latchwork_cell_of(char letter) {
  const std::optional<Cell> cell = cell_of(letter);
  return cell ? static_cast<int32_t>(*cell) : -1;
}

latchwork_status latchwork_crossing_width(const latchwork_crossing* crossing, int32_t* stitches,
                                          latchwork_error* error) {
  return guarded(error, [&] {
    given(stitches, "stitches");
    *stitches = counted_crossing(crossing).width();
  });
}

latchwork_status latchwork_crossing_travel(const latchwork_crossing* crossing, int32_t* stitches,
                                           latchwork_error* error) {
  return guarded(error, [&] {
    given(stitches, "stitches");
    *stitches = counted_crossing(crossing).travel();
  });
}

latchwork_status latchwork_crossing_name(const latchwork_crossing* crossing, char* text, size_t capacity,
                                         size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(crossing_name(crossing_in(given(crossing, "crossing"), "crossing")));
  });
}

latchwork_status latchwork_grid_create(int32_t rows, int32_t columns, latchwork_grid** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return Grid(rows, columns); }); });
}

latchwork_status latchwork_grid_from_text(const char* text, size_t size, latchwork_grid** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return Grid::from_text(text_in(text, size)); }); });
}

latchwork_status latchwork_grid_from_cells(int32_t rows, int32_t columns, const uint8_t* cells, size_t count,
                                           latchwork_grid** out, latchwork_error* error) {
  return guarded(error,
                 [&] { fill(out, [&] { return Grid::from_cells(rows, columns, array_in(cells, count, "cells")); }); });
}

latchwork_status latchwork_grid_copy(const latchwork_grid* grid, latchwork_grid** out, latchwork_error* error) {
  return derive(grid, out, error, [](const Grid& value) { return value; });
}

latchwork_status latchwork_grid_equal(const latchwork_grid* grid, const latchwork_grid* other, int32_t* equal,
                                      latchwork_error* error) {
  return guarded(error,
                 [&] { given(equal, "equal") = given(grid, "grid").value == given(other, "other").value ? 1 : 0; });
}

void latchwork_grid_destroy(latchwork_grid* grid) {
  destroy(grid);
}

latchwork_status latchwork_grid_set(latchwork_grid* grid, int32_t row, int32_t column, int32_t cell,
                                    latchwork_error* error) {
  return guarded(error, [&] { given(grid, "grid").value.set(row, column, enumerator(cell, Cell::none, "cell")); });
}

latchwork_status latchwork_grid_cross(latchwork_grid* grid, const latchwork_crossing* crossing,
                                      latchwork_error* error) {
  return guarded(error, [&] { given(grid, "grid").value.cross(crossing_for_grid(given(crossing, "crossing"))); });
}

latchwork_status latchwork_grid_uncross(latchwork_grid* grid, int32_t row, int32_t column, latchwork_error* error) {
  return guarded(error, [&] { given(grid, "grid").value.uncross(row, column); });
}

latchwork_status latchwork_grid_paste(latchwork_grid* grid, const latchwork_grid* patch, int32_t row, int32_t column,
                                      latchwork_error* error) {
  return guarded(error, [&] { given(grid, "grid").value.paste(given(patch, "patch").value, row, column); });
}

latchwork_status latchwork_grid_rows(const latchwork_grid* grid, int32_t* rows, latchwork_error* error) {
  return guarded(error, [&] { given(rows, "rows") = given(grid, "grid").value.rows(); });
}

latchwork_status latchwork_grid_columns(const latchwork_grid* grid, int32_t* columns, latchwork_error* error) {
  return guarded(error, [&] { given(columns, "columns") = given(grid, "grid").value.columns(); });
}

latchwork_status latchwork_grid_at(const latchwork_grid* grid, int32_t row, int32_t column, int32_t* cell,
                                   latchwork_error* error) {
  return guarded(error, [&] { given(cell, "cell") = static_cast<int32_t>(given(grid, "grid").value.at(row, column)); });
}

latchwork_status latchwork_grid_cells(const latchwork_grid* grid, uint8_t* cells, size_t capacity, size_t* needed,
                                      latchwork_error* error) {
  return guarded(error, [&] {
    Room room(cells, capacity, needed, "cells");
    room.take(given(grid, "grid").value.cells());
  });
}

latchwork_status latchwork_grid_crossings(const latchwork_grid* grid, latchwork_crossing* crossings, size_t capacity,
                                          size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(crossings, capacity, needed, "crossings");
    room.take(given(grid, "grid").value.crossings(), crossing_out);
  });
}

latchwork_status latchwork_grid_hash(const latchwork_grid* grid, uint64_t* hash, latchwork_error* error) {
  return guarded(error, [&] { given(hash, "hash") = given(grid, "grid").value.hash(); });
}

latchwork_status latchwork_grid_describe(const latchwork_grid* grid, char* text, size_t capacity, size_t* needed,
                                         latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(given(grid, "grid").value.describe());
  });
}

latchwork_status latchwork_grid_to_text(const latchwork_grid* grid, char* text, size_t capacity, size_t* needed,
                                        latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(given(grid, "grid").value.to_text());
  });
}

latchwork_status latchwork_grid_mirrored(const latchwork_grid* grid, latchwork_grid** out, latchwork_error* error) {
  return derive(grid, out, error, [](const Grid& value) { return value.mirrored(); });
}

latchwork_status latchwork_grid_upside_down(const latchwork_grid* grid, latchwork_grid** out, latchwork_error* error) {
  return derive(grid, out, error, [](const Grid& value) { return value.upside_down(); });
}

latchwork_status latchwork_grid_half_turn(const latchwork_grid* grid, latchwork_grid** out, latchwork_error* error) {
  return derive(grid, out, error, [](const Grid& value) { return value.half_turn(); });
}

latchwork_status latchwork_grid_turned(const latchwork_grid* grid, latchwork_grid** out, latchwork_error* error) {
  return derive(grid, out, error, [](const Grid& value) { return value.turned(); });
}

latchwork_status latchwork_grid_unfolded(const latchwork_grid* grid, int32_t axis, latchwork_grid** out,
                                         latchwork_error* error) {
  return derive(grid, out, error,
                [&](const Grid& value) { return value.unfolded(enumerator(axis, Axis::stitch, "axis")); });
}

latchwork_status latchwork_grid_repeated_across(const latchwork_grid* grid, int32_t times, int32_t shift,
                                                latchwork_grid** out, latchwork_error* error) {
  return derive(grid, out, error, [&](const Grid& value) { return value.repeated_across(times, shift); });
}

latchwork_status latchwork_grid_repeated_up(const latchwork_grid* grid, int32_t times, int32_t shift,
                                            latchwork_grid** out, latchwork_error* error) {
  return derive(grid, out, error, [&](const Grid& value) { return value.repeated_up(times, shift); });
}

latchwork_status latchwork_grid_rolled_up(const latchwork_grid* grid, int32_t shift, latchwork_grid** out,
                                          latchwork_error* error) {
  return derive(grid, out, error, [&](const Grid& value) { return value.rolled_up(shift); });
}

latchwork_status latchwork_grid_beside(const latchwork_grid* grid, const latchwork_grid* right, latchwork_grid** out,
                                       latchwork_error* error) {
  return derive(grid, out, error, [&](const Grid& value) { return value.beside(given(right, "right").value); });
}

latchwork_status latchwork_grid_above(const latchwork_grid* grid, const latchwork_grid* below, latchwork_grid** out,
                                      latchwork_error* error) {
  return derive(grid, out, error, [&](const Grid& value) { return value.above(given(below, "below").value); });
}

latchwork_status latchwork_grid_sliced(const latchwork_grid* grid, int32_t row, int32_t column, int32_t rows,
                                       int32_t columns, latchwork_grid** out, latchwork_error* error) {
  return derive(grid, out, error, [&](const Grid& value) { return value.sliced(row, column, rows, columns); });
}
