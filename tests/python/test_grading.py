"""One design in several sizes."""

import latchwork as lw
import pytest


@pytest.fixture
def plain():
    """A stitch is 4 mm wide, a row 2.5 mm high."""
    return lw.Swatch(
        [
            lw.Measurement("plain", lw.Counted.stitches, 25, 100),
            lw.Measurement("plain", lw.Counted.rows, 40, 100),
        ]
    )


def family(*sizes):
    design = lw.FitRequest(
        groups=[lw.FitGroup([lw.Strip("motif", "plain", lw.Grid(8, 10))], 1, 50)],
        edge=lw.Strip("edge", "plain", lw.Grid(1, 1)),
        rows_step=8,
    )
    return lw.GradeRequest(design, [lw.GradeSize(name, width_mm=wide, height_mm=high) for name, wide, high in sizes])


def test_a_family_shares_its_edges_and_grows_by_motifs(plain):
    grading = lw.grade(family(("S", 208, 200), ("M", 248, 240), ("L", 288, 300)), plain)
    assert grading.names == ("S", "M", "L") and grading.missing == -1 and grading.message == "" and grading.complete
    assert [candidate.times for candidate in grading.candidates] == [(5,), (6,), (7,)]
    assert [candidate.rows for candidate in grading.candidates] == [80, 96, 120]
    assert grading.groups == ("motif",)
    assert "Columns of a panel: 52 (62, 72): 1 at each edge, 5 (6, 7) times motif." in lw.grading_words(grading)
    assert lw.grading_table(grading).splitlines()[2].split()[:5] == ["M", "1", "6", "x", "1"]
    assert lw.graded_text([4, 6, 8]) == "4 (6, 8)"


def test_a_size_that_nothing_fits_is_told_with_what_would_have_to_give(plain):
    request = family(("S", 208, 200), ("XL", 900, 200))
    request.design.tolerance_percent = 5
    request.design.groups[0].most = 8
    grading = lw.grade(request, plain)
    assert grading.candidates == () and grading.missing == 1 and grading.nearest[0].gives and grading.nearest_complete
    assert grading.message.startswith("nothing fits size 'XL'; it would with: ")
    assert "repeats of group 1" in grading.message
    assert lw.grading_table(grading) == grading.message + "\n" == lw.grading_words(grading)


def test_sizes_that_do_not_go_together_tell_what_would_have_to_give(plain):
    request = family(("S", 40, 200), ("M", 56, 200))
    request.design.edge_least, request.design.edge_most = 0, 2
    request.design.groups[0].most = 1
    request.design.tolerance_percent = 1
    grading = lw.grade(request, plain)
    assert grading.candidates == () and grading.missing == -1 and grading.complete and grading.nearest_complete
    assert [each.candidate.columns for each in grading.nearest] == [12, 12]
    assert [each.gives[0].bound for each in grading.nearest] == [lw.FitBound.width] * 2
    assert "size 'S' 8.0 mm wider than wanted" in grading.message


@pytest.mark.parametrize(
    ("spoil", "field"),
    [
        (lambda request: request.sizes.clear(), "sizes"),
        (lambda request: setattr(request.sizes[0], "name", ""), "sizes[0].name"),
        (lambda request: setattr(request.sizes[1], "name", "S"), "sizes[1].name"),
        (lambda request: setattr(request.sizes[1], "width_mm", 0), "sizes[1].width_mm"),
        (lambda request: setattr(request.design, "rows_step", 0), "design.rows_step"),
    ],
)
def test_what_is_wrong_with_a_family_is_told_by_field(plain, spoil, field):
    request = family(("S", 208, 200), ("M", 248, 240))
    spoil(request)
    with pytest.raises(lw.Error) as caught:
        lw.grade(request, plain)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, field)


def test_a_family_is_drawn_in_all_its_sizes(plain):
    request = family(("S", 208, 200), ("M", 248, 240), ("L", 288, 300))
    grading = lw.grade(request, plain)
    drawn = lw.graded_schematic(request, grading, plain)
    (piece,) = drawn.pieces
    assert drawn.sizes == ["S", "M", "L"] and len(piece.others) == 2 and drawn.unit is lw.LengthUnit.cm
    assert piece.measures[0].mm == pytest.approx(208) and piece.measures[0].others_mm == pytest.approx([248, 288])
    # Each outline as wide as its size, about one middle.
    for outline, mm in zip((piece.outline, *piece.others), (208, 248, 288)):
        xs = [point.x_mm for point in outline]
        assert max(xs) - min(xs) == pytest.approx(mm) and max(xs) + min(xs) == pytest.approx(208)
    assert "20.8 (24.8, 28.8) cm" in lw.schematic_svg(drawn)
    inches = lw.graded_schematic(request, grading, plain, lw.LengthUnit.inch)
    assert inches.unit is lw.LengthUnit.inch
    with pytest.raises(lw.Error) as refused:
        lw.graded_schematic(request, lw.Grading(), plain)
    assert (refused.value.code, refused.value.field) == (lw.ErrorCode.bad_argument, "candidates")
    request.design.groups[0].strips[0] = lw.Strip("motif", "moss", request.design.groups[0].strips[0].grid)
    request.design.substitutes = [lw.Substitute("moss", "plain")]
    (borrowed,) = lw.graded_schematic(request, lw.grade(request, plain), plain).pieces
    assert len(borrowed.notes) == 1 and "measured by the gauge of 'plain'" in borrowed.notes[0]


def test_panels_of_a_family_are_drawn_edge_to_edge_with_the_width_of_all(plain):
    request = family(("S", 408, 200), ("M", 488, 240))
    request.design.panels_least = request.design.panels_most = 2
    grading = lw.grade(request, plain)
    drawn = lw.graded_schematic(request, grading, plain)
    left, right = drawn.pieces
    assert (left.seam_left, left.seam_right, right.seam_left, right.seam_right) == (False, True, True, False)
    # A stitch of each edge goes into the seam: 51 and 61 are left.
    own, both = left.measures
    assert (own.mm, both.mm) == (pytest.approx(204), pytest.approx(408))
    assert (own.others_mm, both.others_mm) == ([pytest.approx(244)], [pytest.approx(488)])
    assert both.label == "both panels, width at the cast-on" and drawn.notes == []
    assert [measure.label for measure in right.measures] == ["height"]
    assert min(point.x_mm for point in left.others[0]) == pytest.approx(-40)  # about the middle of both
    svg = lw.schematic_svg(drawn)
    assert "b = 40.8 (48.8) cm" in svg and "Dashed: a seam to the piece beside it." in svg
