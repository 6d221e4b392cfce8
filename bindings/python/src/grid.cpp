// Grid and crossings.

#include "latchwork/grid.hpp"

#include <pybind11/numpy.h>

#include <cstdint>

#include "bind.hpp"

namespace latchwork::python {

namespace {

[[noreturn]] void bad_array(const std::string& message) {
  throw Error(ErrorCode::bad_argument, Place{.field = "cells"}, message);
}

/// Everything about the array is checked before its first byte is read.
Grid grid_from_cells(const py::buffer& cells) {
  const py::buffer_info info = cells.request();
  if (info.format != py::format_descriptor<std::uint8_t>::format() || info.itemsize != 1)
    throw py::type_error("cells must hold uint8, not items of " + std::to_string(info.itemsize) +
                         " bytes with format " + info.format);
  if (info.ndim != 2)
    bad_array("cells has " + std::to_string(info.ndim) + " dimensions; it must have 2, (rows, columns)");
  const py::ssize_t rows = info.shape[0];
  const py::ssize_t columns = info.shape[1];
  if (rows < 1 || columns < 1)
    bad_array("cells is " + std::to_string(rows) + " x " + std::to_string(columns) + "; both must be 1 or more");
  if (rows > Grid::max_side || columns > Grid::max_side || rows * columns > Grid::max_cells)
    throw Error(ErrorCode::too_large, Place{.field = "cells"},
                "cells is " + std::to_string(rows) + " x " + std::to_string(columns) + "; a grid has at most " +
                    std::to_string(Grid::max_side) + " rows or columns and " + std::to_string(Grid::max_cells) +
                    " cells");
  const auto* first = static_cast<const std::uint8_t*>(info.ptr);
  const auto count = static_cast<std::size_t>(rows * columns);
  if (info.strides[1] == 1 && (rows == 1 || info.strides[0] == columns))
    return Grid::from_cells(static_cast<int>(rows), static_cast<int>(columns), {first, count});
  std::vector<std::uint8_t> packed;  // a slice, a transpose or a flip: gathered row by row
  packed.reserve(count);
  for (py::ssize_t row = 0; row < rows; ++row)
    for (py::ssize_t column = 0; column < columns; ++column)
      packed.push_back(first[row * info.strides[0] + column * info.strides[1]]);
  return Grid::from_cells(static_cast<int>(rows), static_cast<int>(columns), packed);
}

py::object cells_of(const py::object& self) {
  const auto& grid = self.cast<const Grid&>();
  py::array_t<std::uint8_t> view({grid.rows(), grid.columns()},
                                 reinterpret_cast<const std::uint8_t*>(grid.cells().data()), self);
  view.attr("setflags")("write"_a = false);  // self keeps the storage alive; writes would go round our checks
  return view;
}

void bind_changes(py::class_<Grid>& grid) {
  grid.def(
          "set", [](Grid& self, Whole<"row"> row, Whole<"column"> column, Cell cell) { self.set(row, column, cell); },
          "row"_a, "column"_a, "cell"_a,
          "Puts a cell at (row, column). On error the grid is as it was.\n\n"
          "Raises Error off_grid, bad_argument, crossing_over_stack, crossing_over_none.")
      .def("cross", &Grid::cross, "crossing"_a,
           "Adds a crossing. On error the grid is as it was.\n\n"
           "Raises Error off_grid; bad_argument (left, centre, right); stitch_taken; crossing_over_stack; "
           "crossing_over_none.")
      .def(
          "uncross", [](Grid& self, Whole<"row"> row, Whole<"column"> column) { self.uncross(row, column); }, "row"_a,
          "column"_a,
          "Takes away the crossing after `row` that starts at `column`. Raises Error off_grid when there is none.")
      .def(
          "paste",
          [](Grid& self, const Grid& patch, Whole<"row"> row, Whole<"column"> column) {
            self.paste(patch, row, column);
          },
          "patch"_a, "row"_a, "column"_a,
          "Writes `patch` over this grid with its row 1, column 0 at (row, column), and its crossings in place of "
          "those whose span and row lie inside. On error the grid is as it was.\n"
          "\n"
          "Raises Error off_grid; crossing_cut, when a crossing here lies partly under the patch; "
          "crossing_over_none, when a crossing below or on top of the patch would have no stitch above it.");
}

void bind_questions(py::class_<Grid>& grid) {
  grid.def_property_readonly("rows", &Grid::rows, "Rows, 1 or more; fixed at birth.")
      .def_property_readonly("columns", &Grid::columns, "Columns, 1 or more; fixed at birth.")
      .def(
          "at", [](const Grid& self, Whole<"row"> row, Whole<"column"> column) { return self.at(row, column); },
          "row"_a, "column"_a, "The cell at (row, column). Raises Error off_grid.")
      .def_property_readonly("cells", &cells_of,
                             "Cells as a (rows, columns) array of uint8, row 1 first. A read-only view: nothing is "
                             "copied, and what is changed in the grid shows in it. Needs NumPy.")
      .def_property_readonly(
          "crossings",
          [](const Grid& self) {
            return py::tuple(
                list_to_python(std::vector<Crossing>(self.crossings().begin(), self.crossings().end()), true));
          },
          "The crossings by row, then column, as a tuple. Use cross() and uncross() to change them.")
      .def("hash", &Grid::hash,
           "One value for equal grids, the same on every machine and in every version of one file format (FNV-1a, 64 "
           "bits).")
      .def("describe", &Grid::describe, "One line for people: size, cells by kind, crossings.")
      .def("to_text", &Grid::to_text, "The letters and crossing lines that from_text() reads back to an equal grid.");
}

void bind_derivations(py::class_<Grid>& grid) {
  grid.def("mirrored", &Grid::mirrored, "Reflected left to right: knit and purl stay, every lean flips.")
      .def("upside_down", &Grid::upside_down,
           "Reflected top to bottom: leans flip; a stack of tucks or slips and the cell that closes it keep their own "
           "order. Raises Error crossing_over_none, when a stack just above a crossing ends on no stitch, or one "
           "just below a bare centre.")
      .def("half_turn", &Grid::half_turn,
           "Turned by 180 degrees in its plane: mirrored().upside_down(); leans keep. Raises as upside_down().")
      .def("turned", &Grid::turned,
           "The same cloth seen from the other side: columns mirrored, knit and purl swapped, leans keep, centre front "
           "and behind swapped.")
      .def(
          "unfolded", &Grid::unfolded, "axis"_a,
          "This grid and, on its right, its mirror image: 2W columns about a line, 2W-1 about a shared last stitch.\n\n"
          "Raises Error crossing_cut when the shared stitch is in a crossing; too_large.")
      .def(
          "repeated_across",
          [](const Grid& self, Count<"times"> times, Whole<"shift"> shift) {
            return self.repeated_across(times, shift);
          },
          "times"_a, "shift"_a = 0,
          "`times` copies side by side; copy i is moved up by i * shift rows, wrapping over the tile's seam "
          "(half-drop: shift = R/2). Raises Error bad_argument (times below 1), too_large.")
      .def(
          "repeated_up",
          [](const Grid& self, Count<"times"> times, Whole<"shift"> shift) { return self.repeated_up(times, shift); },
          "times"_a, "shift"_a = 0,
          "`times` copies upward; copy i is moved right by i * shift columns, and what leaves there comes in on the "
          "left (as bricks lie: shift = W/2). Raises Error bad_argument (times below 1), too_large; crossing_cut, "
          "when a crossing would leave in part; crossing_over_none, when a shifted copy has no stitch above one.")
      .def(
          "rolled_up", [](const Grid& self, Whole<"shift"> shift) { return self.rolled_up(shift); }, "shift"_a,
          "Row y moves to y + shift, wrapping over the tile's seam. Any shift that 32 bits hold.")
      .def("beside", &Grid::beside, "right"_a,
           "This grid with `right` on its right. Raises Error size_mismatch (unequal rows), too_large.")
      .def("above", &Grid::above, "below"_a,
           "This grid on top of `below`. Raises Error size_mismatch (unequal columns); too_large; "
           "crossing_over_none, when a crossing on one's seam would have no stitch above it in the other.")
      .def(
          "sliced",
          [](const Grid& self, Whole<"row"> row, Whole<"column"> column, Count<"rows"> rows, Count<"columns"> columns) {
            return self.sliced(row, column, rows, columns);
          },
          "row"_a, "column"_a, "rows"_a, "columns"_a,
          "Rows row..row+rows-1 and columns column..column+columns-1; a crossing belongs to the row it follows.\n\n"
          "Raises Error bad_argument (rows, columns below 1); off_grid; crossing_cut, at the crossing; "
          "crossing_over_none, when one after the slice's last row would have no stitch in its first.");
}

}  // namespace

void bind_grid(py::module_& m) {
  m.def("crossing_name", &crossing_name, "crossing"_a,
        "The trade's name: \"3/3 RC\", \"2/1 LC\"; with a centre \"2/1/2 RC, centre behind\".");

  py::class_<Grid> grid(
      m, "Grid",
      "A stitch chart as seen from the right side (RS): rows of cells, and the crossings between "
      "rows.\n\nRows are numbered from 1 up from the cast-on, columns from 0 from the left on the RS. "
      "The size is fixed at birth.");
  grid.attr("max_side") = Grid::max_side;
  grid.attr("max_cells") = Grid::max_cells;
  grid.def(py::init([](Count<"rows"> rows, Count<"columns"> columns) { return Grid(rows, columns); }), "rows"_a,
           "columns"_a, "A grid of knit stitches. Raises Error bad_argument (rows, columns below 1), too_large.")
      .def_static(
          "from_text", [](const Text& text) { return Grid::from_text(text.view); }, "text"_a,
          "A grid from rows of letters, top row first, one row a line: k knit, p purl, t tuck, s slip, . none. A "
          "line `x COLUMN LEFT/RIGHT R|L` or `x COLUMN LEFT/CENTRE/RIGHT R|L front|between|behind` puts a crossing "
          "after the row written just below it.\n"
          "\n"
          "Raises Error bad_letter (the cell's row and column; the message counts the letters of a line from 1, as "
          "in files), bad_syntax, too_large (rows, columns), size_mismatch (columns) and what cross() raises, all "
          "with line.")
      .def_static("from_cells", &grid_from_cells, "cells"_a,
                  "A grid from a (rows, columns) array of uint8, row 1 first, contiguous or not: a NumPy array or any "
                  "other buffer of two dimensions. The cells are copied.\n\nRaises TypeError for items that are not "
                  "uint8; Error bad_argument (cells), too_large, bad_value (row, column).");
  bind_changes(grid);
  bind_questions(grid);
  bind_derivations(grid);
  grid.def(
          "__eq__",
          [](const Grid& self, const py::object& other) -> py::object {
            if (!py::isinstance<Grid>(other)) return py::reinterpret_borrow<py::object>(Py_NotImplemented);
            return py::bool_(self == other.cast<const Grid&>());
          },
          "other"_a, "Equal in size, cells and crossings.")
      .def("__repr__", [](const Grid& self) { return "<latchwork.Grid " + self.describe() + ">"; })
      .def("__str__", &Grid::to_text)
      .def("__copy__", [](const Grid& self) { return Grid(self); })
      .def(
          "__deepcopy__", [](const Grid& self, const py::dict&) { return Grid(self); }, "memo"_a)
      .def(
          "_repr_svg_",
          [](const Grid& self) {
            return notebook_svg(Panel("grid", Strip{"", "", self}));
          },
          "The chart on the right side, for notebooks; None for a grid too big to show.")
      .def("__reduce_ex__", &reduced, "protocol"_a)
      .def(py::pickle([](const Grid& self) { return write(self); },
                      [](const std::string& text) { return read_grid(text); }));
}

}  // namespace latchwork::python
