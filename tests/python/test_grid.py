"""Grid and Wales: every call, arrays in and out, laws against NumPy."""

import copy
import gc
import pickle

import latchwork as lw
import numpy as np
import pytest
from conftest import cell_lists, grids
from hypothesis import given
from hypothesis import strategies as st

TEXT = "kpts\nkpkk\nx 0 1/1 L\nkkkk\n"


def refused(code, row=0, column=-1, line=0, field=""):
    """Checks what an Error says beside its words."""

    def check(error):
        got = (error.code, error.row, error.column, error.line, error.field)
        assert got == (code, row, column, line, field), str(error)
        assert str(error)

    return check


def test_a_new_grid_is_all_knit():
    grid = lw.Grid(rows=3, columns=4)
    assert (grid.rows, grid.columns, grid.crossings) == (3, 4, ())
    assert all(grid.at(row, column) is lw.Cell.knit for row in (1, 2, 3) for column in range(4))
    assert lw.Grid.max_side == 65536 and lw.Grid.max_cells == 1 << 28


def test_text_goes_in_top_row_first_and_comes_out_as_it_went_in():
    grid = lw.Grid.from_text(TEXT)
    assert (grid.rows, grid.columns) == (3, 4)
    assert [grid.at(3, column).name for column in range(4)] == ["knit", "purl", "tuck", "slip"]
    assert grid.at(1, 1) is lw.Cell.knit
    assert grid.crossings == (lw.Crossing(row=1, column=0, lean=lw.Lean.left),)
    assert lw.Grid.from_text(grid.to_text()) == grid
    assert lw.Grid.from_text(TEXT.encode()) == grid
    assert str(grid) == grid.to_text()
    assert grid.describe() in repr(grid) and "\n" not in repr(grid)


def test_changes_change_and_refused_ones_do_not():
    grid = lw.Grid(4, 6)
    grid.set(2, 3, lw.Cell.purl)
    assert grid.at(2, 3) is lw.Cell.purl
    grid.set(row=2, column=3, cell=0)  # a number, as out of an array
    assert grid.at(2, 3) is lw.Cell.knit
    grid.cross(lw.Crossing(row=2, column=1, left=2, right=2))
    before = grid.to_text()
    for call, check in [
        (lambda: grid.set(5, 0, lw.Cell.purl), refused(lw.ErrorCode.off_grid, 5, 0)),
        (lambda: grid.at(0, 0), refused(lw.ErrorCode.off_grid, 0, 0)),
        (lambda: grid.set(1, 1, 9), refused(lw.ErrorCode.bad_argument, field="cell")),
        (lambda: grid.set(2, 2, lw.Cell.tuck), refused(lw.ErrorCode.crossing_over_stack, 2, 2)),
        (lambda: grid.set(3, 2, lw.Cell.none), refused(lw.ErrorCode.crossing_over_none, 3, 2)),
    ]:
        with pytest.raises(lw.Error) as caught:
            call()
        check(caught.value)
        assert isinstance(caught.value, ValueError)
    for field in ("lean", "place"):
        with pytest.raises(lw.Error) as caught:
            grid.cross(lw.Crossing(row=3, column=1, **{field: 9}))
        assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, field)
    with pytest.raises(lw.Error) as caught:
        grid.cross(lw.Crossing(row=2, column=4))
    assert caught.value.code is lw.ErrorCode.stitch_taken
    assert grid.to_text() == before
    with pytest.raises(TypeError):
        grid.set(1, 1, lw.Lean.left)
    with pytest.raises(TypeError):
        grid.set(1, 1, "k")
    grid.uncross(2, 1)
    assert grid == lw.Grid(4, 6)
    grid.paste(lw.Grid.from_text("pp"), row=4, column=4)
    assert grid.to_text().splitlines()[0].split() == ["kkkkpp"]


def test_errors_tell_line_and_pickle_whole():
    with pytest.raises(lw.Error) as caught:
        lw.Grid.from_text("kk\nkz\n")
    error = caught.value
    assert error.code is lw.ErrorCode.bad_letter and error.line == 2
    twin = pickle.loads(pickle.dumps(error))
    assert type(twin) is lw.Error and str(twin) == str(error)
    refused(error.code, error.row, error.column, error.line, error.field)(twin)
    with pytest.raises(lw.Error) as caught:
        lw.Grid.from_text("k\ud800")
    assert caught.value.code is lw.ErrorCode.bad_encoding
    with pytest.raises(lw.Error) as caught:
        lw.Grid(0, 5)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, "rows")
    with pytest.raises(lw.Error) as caught:
        lw.Grid(1 << 16, 1 << 16)
    assert caught.value.code is lw.ErrorCode.too_large


# Arrays out.


def test_cells_is_a_read_only_view_that_keeps_its_grid():
    grid = lw.Grid(3, 5)
    cells = grid.cells
    assert cells.dtype == np.uint8 and cells.shape == (3, 5) and cells.flags.c_contiguous
    assert not cells.flags.writeable and not cells.flags.owndata and cells.base is grid
    assert cells.ctypes.data == grid.cells.ctypes.data  # nothing is copied
    with pytest.raises(ValueError):
        cells[0, 0] = 1
    with pytest.raises(ValueError):
        cells.flags.writeable = True
    grid.set(2, 4, lw.Cell.purl)
    assert cells[1, 4] == lw.Cell.purl
    grid.paste(lw.Grid.from_text("pp\npp"), 1, 0)
    assert cells[:2, :2].tolist() == [[1, 1], [1, 1]]
    assert cells.ctypes.data == grid.cells.ctypes.data  # changing in place never moves the cells
    grid.__init__(50, 50)  # a second birth is passed over
    grid.__setstate__(lw.write(lw.Grid(9, 9)))
    assert grid.rows == 3
    del grid
    gc.collect()
    assert cells.sum() == 5


# Arrays in.


@given(cell_lists(cells=(0, 1, 2, 3, 4)))
def test_an_array_goes_in_and_comes_out_equal(values):
    array = np.array(values, dtype=np.uint8)
    grid = lw.Grid.from_cells(array)
    assert np.array_equal(grid.cells, array)
    assert lw.Grid.from_cells(grid.cells) == grid


@given(cell_lists(), st.sampled_from([1, -1, 2, -2]), st.sampled_from([1, -1, 2]), st.booleans())
def test_arrays_that_are_not_contiguous_are_read_right(values, row_step, column_step, transposed):
    array = np.array(values, dtype=np.uint8)[::row_step, ::column_step]
    array = array.T if transposed else array
    assert np.array_equal(lw.Grid.from_cells(array).cells, array)
    fortran = np.asfortranarray(array)
    assert lw.Grid.from_cells(fortran) == lw.Grid.from_cells(np.ascontiguousarray(array))


def test_zero_strides_are_read_right():
    assert lw.Grid.from_cells(np.broadcast_to(np.uint8(1), (3, 4))) == lw.Grid.from_text("pppp\n" * 3)


def test_buffers_need_no_numpy():
    view = memoryview(bytes([0, 1, 2, 3])).cast("B", (2, 2))
    assert lw.Grid.from_cells(view).to_text() == lw.Grid.from_text("ts\nkp").to_text()


@pytest.mark.parametrize(
    "array", [np.zeros((2, 2), t) for t in ("int8", "int64", "float64", "bool", ">u2")] + [np.zeros((2, 2), "O")]
)
def test_items_that_are_not_uint8_are_refused(array):
    with pytest.raises(TypeError, match="uint8|incompatible"):
        lw.Grid.from_cells(array)


@pytest.mark.parametrize(
    "array, code",
    [
        (np.zeros(4, np.uint8), lw.ErrorCode.bad_argument),
        (np.zeros((2, 2, 2), np.uint8), lw.ErrorCode.bad_argument),
        (np.zeros((), np.uint8), lw.ErrorCode.bad_argument),
        (np.zeros((0, 3), np.uint8), lw.ErrorCode.bad_argument),
        (np.zeros((3, 0), np.uint8), lw.ErrorCode.bad_argument),
        (np.broadcast_to(np.uint8(0), (1, 65537)), lw.ErrorCode.too_large),
        (np.broadcast_to(np.uint8(0), (65537, 1)), lw.ErrorCode.too_large),
        (np.broadcast_to(np.uint8(0), (65536, 65536)), lw.ErrorCode.too_large),
        (np.broadcast_to(np.uint8(0), (1 << 40, 1 << 22)), lw.ErrorCode.too_large),
    ],
)
def test_arrays_of_a_wrong_shape_are_refused_before_they_are_read(array, code):
    with pytest.raises(lw.Error) as caught:
        lw.Grid.from_cells(array)
    assert (caught.value.code, caught.value.field) == (code, "cells")


def test_a_value_that_is_no_cell_is_refused_at_its_place():
    array = np.zeros((3, 4), np.uint8)
    array[1, 2] = 5
    with pytest.raises(lw.Error) as caught:
        lw.Grid.from_cells(array)
    refused(lw.ErrorCode.bad_value, 2, 2, field=caught.value.field)(caught.value)


# Laws, against NumPy where NumPy has the same operation.


@given(grids())
def test_reflections_are_numpy_flips(grid):
    cells = grid.cells
    assert np.array_equal(grid.mirrored().cells, np.fliplr(cells))
    assert np.array_equal(grid.upside_down().cells, np.flipud(cells))
    assert np.array_equal(grid.half_turn().cells, np.rot90(cells, 2))
    assert np.array_equal(grid.turned().cells, 1 - np.fliplr(cells))  # knit and purl only: swapped
    for view in (lw.Grid.mirrored, lw.Grid.upside_down, lw.Grid.half_turn, lw.Grid.turned):
        assert view(view(grid)) == grid
    assert grid.half_turn() == grid.mirrored().upside_down() == grid.upside_down().mirrored()


@given(grids(), st.integers(1, 3), st.integers(-9, 9))
def test_repeats_are_numpy_tiles_and_rolls_are_numpy_rolls(grid, times, shift):
    cells = grid.cells
    assert np.array_equal(grid.repeated_across(times).cells, np.tile(cells, (1, times)))
    assert np.array_equal(grid.repeated_up(times).cells, np.tile(cells, (times, 1)))
    if not grid.crossings:
        bricks = np.concatenate([np.roll(cells, copy * 2, axis=1) for copy in range(times)])
        assert np.array_equal(grid.repeated_up(times, shift=2).cells, bricks)
    assert np.array_equal(grid.rolled_up(shift).cells, np.roll(cells, shift, axis=0))
    assert grid.rolled_up(shift).rolled_up(-shift) == grid
    shifted = np.hstack([np.roll(cells, i * shift, axis=0) for i in range(times)])
    assert np.array_equal(grid.repeated_across(times, shift=shift).cells, shifted)
    assert len(grid.repeated_up(times).crossings) == times * len(grid.crossings)


@given(grids())
def test_joins_are_numpy_stacks(grid):
    other = grid.mirrored()
    assert np.array_equal(grid.beside(other).cells, np.hstack([grid.cells, other.cells]))
    assert np.array_equal(grid.above(below=other).cells, np.vstack([other.cells, grid.cells]))
    assert grid.unfolded(lw.Axis.line) == grid.beside(other)
    assert grid.beside(right=other).sliced(row=1, column=0, rows=grid.rows, columns=grid.columns) == grid


def test_a_shared_stitch_stands_once_and_not_in_a_crossing():
    assert lw.Grid.from_text("kp").unfolded(lw.Axis.stitch) == lw.Grid.from_text("kpk")
    with pytest.raises(lw.Error) as caught:
        lw.Grid.from_text("kk\nx 0 1/1 R\nkk").unfolded(lw.Axis.stitch)
    assert caught.value.code is lw.ErrorCode.crossing_cut


@pytest.mark.parametrize(
    "call, code",
    [
        (lambda g: g.beside(lw.Grid(1, 1)), lw.ErrorCode.size_mismatch),
        (lambda g: g.above(lw.Grid(1, 1)), lw.ErrorCode.size_mismatch),
        (lambda g: g.sliced(1, 0, 9, 9), lw.ErrorCode.off_grid),
        (lambda g: g.sliced(1, 3, 6, 2), lw.ErrorCode.crossing_cut),
        (lambda g: g.repeated_across(0), lw.ErrorCode.bad_argument),
        (lambda g: g.repeated_up(0), lw.ErrorCode.bad_argument),
        (lambda g: g.repeated_up(1 << 20), lw.ErrorCode.too_large),
        (lambda g: g.paste(lw.Grid(2, 2), 1, 7), lw.ErrorCode.off_grid),
        (lambda g: g.paste(lw.Grid(2, 2), 2, 3), lw.ErrorCode.crossing_cut),
        (lambda g: g.uncross(1, 0), lw.ErrorCode.off_grid),
        (lambda g: g.set(-1, 0, lw.Cell.knit), lw.ErrorCode.off_grid),
    ],
)
def test_what_cannot_be_done_is_refused_with_its_code(cable, call, code):
    with pytest.raises(lw.Error) as caught:
        call(cable)
    assert caught.value.code is code


@given(grids())
def test_copies_pickles_and_text_are_equal_and_independent(grid):
    twins = [copy.copy(grid), copy.deepcopy(grid), pickle.loads(pickle.dumps(grid)), lw.Grid.from_text(grid.to_text())]
    for twin in twins:
        assert twin == grid and twin is not grid and twin.hash() == grid.hash()
        twin.set(1, 0, lw.Cell.purl if grid.at(1, 0) is lw.Cell.knit else lw.Cell.knit)
        assert twin != grid and twin.hash() != grid.hash()
    assert grid != "a grid" and not grid == None  # noqa: E711
    with pytest.raises(TypeError):
        hash(grid)  # it can be changed; grid.hash() is its value now


def test_a_pickle_is_the_text_of_the_file_format(cable):
    data = pickle.dumps(cable)
    assert b"latchwork-grid" in data
    with pytest.raises(lw.Error):
        pickle.loads(data.replace(b"latchwork-grid", b"latchwork-plan"))


def test_a_picture_says_which_side_it_shows_and_is_left_out_when_too_big(cable):
    svg = cable._repr_svg_()
    assert svg.startswith(("<svg", "<?xml")) and "right side" in svg.lower()
    assert lw.Grid(300, 300)._repr_svg_() is None


# Wales.


def test_wales_follow_crossings(cable):
    wales = lw.Wales(cable)
    assert len(wales) == len(wales.all) == cable.columns
    wale = wales.all[wales.at(6, 2)]
    assert wale.columns == (4, 4, 2, 2, 2, 2)  # crossed after row 2 from the right group
    assert (wale.row, wale.column, wale.last_row) == (1, 4, 6)
    assert (wale.column_at(2), wale.column_at(row=3)) == (4, 2)
    with pytest.raises(lw.Error) as caught:
        wale.column_at(7)
    assert caught.value.code is lw.ErrorCode.off_grid
    with pytest.raises(lw.Error):
        wales.at(7, 0)
    for twin in (copy.copy(wales), copy.deepcopy(wales), pickle.loads(pickle.dumps(wales)), lw.Wales(grid=cable)):
        assert twin == wales
    assert wales != lw.Wales(lw.Grid(6, 8)) and wales != 3
    assert lw.Wales(lw.Grid.from_text("..")) != lw.Wales(lw.Grid.from_text("...\n..."))  # none in either
    assert "8 wales" in repr(wales)


def test_a_ladder_belongs_to_no_wale():
    wales = lw.Wales(lw.Grid.from_text("k.k\nk.k"))
    assert (wales.at(1, 0), wales.at(1, 1), wales.at(2, 2)) == (0, -1, 1)


@pytest.mark.parametrize(
    ("call", "field"),
    [
        (lambda number: lw.Grid(number, 3), "rows"),
        (lambda number: lw.Grid(3, number), "columns"),
        (lambda number: lw.Grid(2, 2).repeated_across(number), "times"),
        (lambda number: lw.Grid(2, 2).repeated_up(number), "times"),
        (lambda number: lw.moss(2).filled_up(number), "rows"),
        (lambda number: lw.stockinette(number), "columns"),
        (lambda number: lw.garter(1, number), "purl_rows"),
        (lambda number: lw.rope(1, number, 4, lw.Lean.left), "back"),
        (lambda number: lw.plait(2, number), "interval"),
        (lambda number: lw.wave(number, 4), "stitches"),
        (lambda number: lw.join_strips("a", number, [lw.moss()]), "rows"),
        (lambda number: lw.build_panel("a", number, left=[lw.moss()]), "rows"),
        (lambda number: lw.Grid(2, 2).sliced(1, 0, number, 1), "rows"),
        (lambda number: lw.Grid(2, 2).at(number, 0), "row"),
        (lambda number: lw.Grid(2, 2).at(1, number), "column"),
        (lambda number: lw.Grid(2, 2).set(number, 0, lw.Cell.purl), "row"),
        (lambda number: lw.Grid(2, 2).uncross(1, number), "column"),
        (lambda number: lw.Grid(2, 2).paste(lw.Grid(1, 1), number, 0), "row"),
        (lambda number: lw.Grid(2, 2).rolled_up(number), "shift"),
        (lambda number: lw.Grid(2, 2).repeated_across(2, number), "shift"),
        (lambda number: lw.Grid(2, 2).repeated_up(2, shift=number), "shift"),
        (lambda number: lw.Wales(lw.Grid(2, 2)).at(1, number), "column"),
        (lambda number: lw.needle_name(number), "needle"),
        (lambda number: lw.needle_beside(1, number), "steps"),
        (lambda number: lw.needle_of(lw.Machine(), number, 0), "columns"),
        (lambda number: lw.needle_of(lw.Machine(), 4, number), "column"),
        (lambda number: lw.leftmost_needle(lw.Machine(), number), "columns"),
        (lambda number: lw.spaced_evenly(number, 2), "length"),
        (lambda number: lw.spaced_evenly(9, number), "events"),
    ],
)
@pytest.mark.parametrize("number", [2**31, 2**40, 2**80, -(2**31) - 1, -(2**80)])
def test_a_number_past_any_int_is_refused_like_any_that_does_not_fit(call, field, number):
    with pytest.raises(lw.Error) as caught:
        call(number)
    code = lw.ErrorCode.too_large if number > 0 else lw.ErrorCode.bad_argument
    assert (caught.value.code, caught.value.field) == (code, field)
    assert str(caught.value).startswith(f"{field} is {number};")


def test_what_is_no_whole_number_is_of_a_wrong_type():
    for number in (1.5, "3", None):
        with pytest.raises(TypeError):
            lw.Grid(number, 3)
