"""Strips, motifs and panels."""

import copy
import pickle

import latchwork as lw
import numpy as np
import pytest

MOTIFS = [
    (lw.stockinette, dict(columns=2), (1, 2)),
    (lw.reverse, dict(columns=2), (1, 2)),
    (lw.garter, dict(knit_rows=2, purl_rows=2, columns=3), (4, 3)),
    (lw.moss, dict(columns=4), (2, 4)),
    (lw.basket, dict(block_columns=2, block_rows=3), (6, 4)),
    (lw.tuck_rib, dict(height=2), (3, 1)),
    (lw.ladder, dict(columns=2), (1, 2)),
    (lw.rope, dict(front=3, back=2, interval=6, lean=lw.Lean.left), (6, 5)),
    (lw.plait, dict(stitches=2, interval=4, lean=lw.Lean.left), (8, 6)),
    (lw.wave, dict(stitches=2, interval=4, lean=lw.Lean.left), (8, 4)),
]


@pytest.mark.parametrize("motif, arguments, size", MOTIFS, ids=lambda value: getattr(value, "__name__", ""))
def test_every_motif_gives_a_named_strip_of_its_size(motif, arguments, size):
    strip = motif(**arguments)
    assert isinstance(strip, lw.Strip) and strip.name and strip.texture
    assert (strip.grid.rows, strip.grid.columns) == size
    assert motif(*arguments.values()) == strip
    assert strip.mirrored().mirrored() == strip
    assert strip.mirrored().texture == strip.texture and strip.mirrored().grid == strip.grid.mirrored()
    for name in arguments:
        if name != "lean":
            with pytest.raises(lw.Error) as caught:
                motif(**{**arguments, name: 0})
            assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, name)


def test_motifs_have_the_defaults_of_the_header():
    assert lw.stockinette() == lw.stockinette(1)
    assert lw.reverse() == lw.reverse(1)
    assert lw.garter() == lw.garter(1, 1, 1)
    assert lw.moss() == lw.moss(2)
    assert lw.basket() == lw.basket(3, 4)
    assert lw.tuck_rib() == lw.tuck_rib(1)
    assert lw.ladder() == lw.ladder(1)
    assert lw.plait(2, 4) == lw.plait(2, 4, lw.Lean.right)
    assert lw.wave(2, 4) == lw.wave(2, 4, lw.Lean.right)


def test_garter_is_knit_rows_under_purl_rows():
    assert lw.garter(1, 2, 1).grid.cells.tolist() == [[0], [1], [1]]


def test_strips_repeat_and_fill_as_their_grids_do():
    strip = lw.rope(2, 2, 4, lw.Lean.right)
    assert strip.repeated_across(times=2).grid == strip.grid.repeated_across(2)
    assert strip.repeated_up(times=3).grid == strip.grid.repeated_up(3)
    filled = strip.filled_up(rows=10)
    assert filled.grid.rows == 10 and np.array_equal(filled.grid.cells, np.tile(strip.grid.cells, (3, 1))[:10])
    assert [crossing.row for crossing in filled.grid.crossings] == [2, 6, 10]
    assert "RC" in strip.name and "LC" in strip.mirrored().name
    for call in (strip.repeated_across, strip.repeated_up, strip.filled_up):
        with pytest.raises(lw.Error) as caught:
            call(0)
        assert caught.value.code is lw.ErrorCode.bad_argument


def test_a_strip_is_edited_through_its_grid_and_copied_apart_from_it():
    strip = lw.stockinette(2)
    twins = copy.deepcopy(strip), pickle.loads(pickle.dumps(strip)), lw.Strip("stockinette", "stockinette", lw.Grid(1, 2))
    shallow = copy.copy(strip)
    strip.grid.set(1, 0, lw.Cell.purl)
    assert strip.grid.at(1, 0) is lw.Cell.purl and shallow == strip
    assert all(twin != strip and twin == twins[0] for twin in twins)
    strip.name = "half purl"
    assert strip != shallow
    assert repr(strip) == "<latchwork.Strip 'half purl', 2 stitches x 1 row>"
    assert "<svg" in strip._repr_svg_()
    with pytest.raises(TypeError, match=r"Strip\.grid must be .*Grid, not None"):
        lw.Strip("a", "b", None).mirrored()


def test_a_panel_is_edge_left_centre_mirrored_left_edge(panel):
    assert (panel.name, panel.grid.rows, panel.grid.columns) == ("sampler", 16, 1 + 2 + 4 + 1 + 3 + 1 + 4 + 2 + 1)
    (band,) = panel.bands
    assert [strip.columns for strip in band.strips] == [1, 2, 4, 1, 3, 1, 4, 2, 1]
    assert [strip.column for strip in band.strips] == [0, 1, 3, 7, 8, 11, 12, 16, 18]
    assert panel.axis_half_columns == panel.grid.columns
    leans = {(crossing.column, crossing.lean) for crossing in panel.grid.crossings}
    assert leans == {(3, lw.Lean.left), (12, lw.Lean.right)}
    assert panel.mirrored().mirrored() == panel
    assert panel.mirrored().bands[0].strips[0].columns == 1


def test_build_panel_takes_keywords_and_both_axes():
    left = [lw.rope(2, 2, 4, lw.Lean.left), lw.stockinette(2)]
    about_line = lw.build_panel(name="a", rows=4, left=left)
    about_stitch = lw.build_panel(name="a", rows=4, left=left, axis=lw.Axis.stitch)
    assert (about_line.grid.columns, about_stitch.grid.columns) == (12, 11)
    assert about_stitch.axis_half_columns == 11
    only_centre = lw.build_panel("b", 4, centre=lw.moss(3))
    assert only_centre.grid.columns == 3
    for arguments, code in [
        (dict(rows=4), lw.ErrorCode.bad_argument),
        (dict(rows=0, left=left), lw.ErrorCode.bad_argument),
        (dict(rows=4, left=left[:1], axis=lw.Axis.stitch), lw.ErrorCode.crossing_cut),
    ]:
        with pytest.raises(lw.Error) as caught:
            lw.build_panel("c", **arguments)
        assert caught.value.code is code
    with pytest.raises(TypeError):
        lw.build_panel("d", 4, lw.moss(3))


def test_panels_are_made_joined_and_stacked():
    whole = lw.Panel("plain", lw.stockinette(3))
    assert whole.bands == (lw.Band(1, 1, (lw.StripSpan("stockinette", "stockinette", 0, 3, 1),)),)
    assert whole.axis_half_columns is None
    same = lw.Panel(name="plain", grid=lw.Grid(1, 3), bands=whole.bands)
    assert same == whole and same != "plain"
    joined = lw.join_strips("row", 4, [lw.moss(2), lw.reverse(1)])
    assert joined.grid.cells.tolist() == [[0, 1, 1], [1, 0, 1]] * 2
    stacked = joined.above(below=whole)
    assert stacked.grid.rows == 5 and len(stacked.bands) == 2 and stacked.name == "row"
    with pytest.raises(lw.Error) as caught:
        joined.above(lw.Panel("narrow", lw.stockinette(2)))
    assert caught.value.code is lw.ErrorCode.size_mismatch
    with pytest.raises(lw.Error) as caught:
        lw.Panel("holes", lw.Grid(2, 3), whole.bands)
    assert caught.value.code is lw.ErrorCode.size_mismatch
    with pytest.raises(lw.Error):
        lw.join_strips("none", 4, [])


def test_a_panel_hands_out_copies_of_its_grid_so_that_a_mirrored_panel_stays_mirrored(panel):
    before = copy.deepcopy(panel)
    grid = panel.grid
    grid.set(1, 2, lw.Cell.knit)
    grid.uncross(grid.crossings[0].row, grid.crossings[0].column)
    assert panel == before and panel.grid != grid
    assert panel.grid == panel.grid.mirrored() and grid != grid.mirrored()
    changed = lw.Panel(panel.name, grid, panel.bands)  # how a changed grid becomes a panel: one that names no axis
    assert changed.grid == grid and changed.bands == panel.bands and changed.axis_half_columns is None
    assert all(isinstance(handed_out, tuple) for handed_out in (panel.bands, grid.crossings, lw.Wales(grid).all))


def test_a_panels_axis_can_be_named(panel):
    cells = panel.grid.cells
    panel.axis_half_columns = 5
    assert panel.axis_half_columns == 5
    with pytest.raises(lw.Error) as caught:
        panel.axis_half_columns = 0
    assert caught.value.code is lw.ErrorCode.bad_argument and panel.axis_half_columns == 5
    assert caught.value.field == "axis_half_columns" and str(caught.value).startswith("axis_half_columns is 0;")
    panel.axis_half_columns = None
    for twin in (copy.copy(panel), copy.deepcopy(panel), pickle.loads(pickle.dumps(panel))):
        assert twin == panel and twin is not panel
    assert repr(panel) == "<latchwork.Panel 'sampler', 19 columns x 16 rows>"
    assert "right side" in panel._repr_svg_().lower()
    del panel
    assert cells[0, 2] == 1 and cells.shape == (16, 19)  # the view keeps its grid
