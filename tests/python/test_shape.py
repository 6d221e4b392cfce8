"""Even spacing, shapes of panels, and schematic drawings."""

import math
import xml.etree.ElementTree

import latchwork as lw
import numpy as np
import pytest
import scipy.interpolate


def test_events_are_spread_evenly():
    spacing = lw.spaced_evenly(108, 11)
    assert (spacing.every, spacing.times, spacing.longer_times, spacing.rest) == (9, 2, 9, 0)
    assert sum(spacing.gaps) == 108 and spacing.positions[-1] == 108 and len(spacing.gaps) == 11
    assert lw.spacing_text(spacing, lw.Counted.rows) == "every 9th row 2 times, every 10th row 9 times"
    assert lw.spaced_evenly(length=51, events=4, ends=lw.SpacingEnds.half_ends).positions == (6, 19, 32, 45)
    assert set(lw.spaced_evenly(40, 3, lw.SpacingEnds.flat, step=2).gaps) == {10}
    assert lw.spaced_evenly(lw.max_spacing, 1).gaps == (lw.max_spacing,)


def test_more_events_than_fit_are_refused():
    with pytest.raises(lw.Error) as refused:
        lw.spaced_evenly(10, 10, ends=lw.SpacingEnds.flat)
    assert refused.value.code is lw.ErrorCode.bad_argument and refused.value.field == "events"
    with pytest.raises(lw.Error, match="counted is 5"):
        lw.spacing_text(lw.spaced_evenly(8, 3), 5)


def test_a_strip_that_is_cut_off_wholly_needs_no_gauge():
    """Of 10 columns at 25 to 10 cm alone something stands."""
    swatch = lw.Swatch([lw.Measurement("stockinette", counted, count, 100) for counted, count in zip(lw.Counted, (25, 40))])
    panel = lw.join_strips("p", 20, [lw.reverse(6), lw.stockinette(10), lw.reverse(6)])
    edge = lw.EdgeShape(start=6)
    cut = lw.shaped(panel, lw.outlined(20, 22, edge, edge))
    size = lw.size(cut, swatch)
    assert size.width_mm == pytest.approx(40)
    assert [strip.width_mm for strip in size.strips] == [0, pytest.approx(40), 0]
    assert lw.FindingCode.no_swatch not in {finding.code for finding in lw.measuring_findings(cut, swatch)}
    assert [measure.mm for measure in lw.schematic_piece(cut, swatch).measures] == pytest.approx([40, 50])
    for refused in (panel, lw.shaped(panel, lw.outlined(20, 22, lw.EdgeShape(start=5), edge))):
        with pytest.raises(lw.Error) as caught:
            lw.size(refused, swatch)
        assert (caught.value.code, caught.value.field) == (lw.ErrorCode.no_gauge, "reverse")


@pytest.fixture
def roped():
    """Eight stitches with a 2/2 cross at the left edge."""
    text = "kkkkkkkk\nkkkkkkkk\nkkkkkkkk\nkkkkkkkk\nx 0 2/2 R\nkkkkkkkk\nkkkkkkkk"
    return lw.Panel("roped", lw.Strip("s", "s", lw.Grid.from_text(text)))


def test_a_panel_is_shaped_planned_and_verified(roped):
    edge = lw.EdgeShape(events=[lw.EdgeEvent(3, 1, 2, 2)])
    outline = lw.outlined(6, 8, edge, edge)
    assert outline.rows[2] == lw.RowSpan(0, 7) and outline.rows[5] == lw.RowSpan(2, 5)
    assert lw.shaping_steps(outline) == [lw.ShapingStep(3, 1, 1), lw.ShapingStep(5, 1, 1)]
    assert lw.outline_text(outline).splitlines()[1] == "RC 3: decrease 1 at each side, then every 2nd row 1 time."
    assert [(f.code, f.severity) for f in lw.shape_findings(roped.grid, outline)] == [
        (lw.FindingCode.column_cut, lw.Severity.advice)  # the crossing is kept, and reaches into the edge stitches
    ]
    assert lw.shape_findings(roped.grid, outline, edge_stitches=0) == []
    shaped = lw.shaped(roped, outline)
    assert lw.outline_of(shaped.grid) == outline
    machine = lw.Machine.generic(lw.MachineClass.standard)
    plan = lw.plan(shaped.grid, machine)
    assert lw.verify(shaped.grid, plan).verified
    assert sum(len(stop.shapings) for stop in plan.stops) == 4
    swatch = lw.Swatch(
        [lw.Measurement("s", lw.Counted.stitches, 20, 100), lw.Measurement("s", lw.Counted.rows, 30, 100)]
    )
    size = lw.size(shaped, swatch)
    assert size.width_mm == size.cast_on.width_mm == pytest.approx(40) and size.bind_off.width_mm == pytest.approx(20)
    assert (size.cast_on.columns, size.widest_columns, size.bind_off.columns, size.widest_row) == (8, 8, 4, 1)
    assert isinstance(size.bind_off, lw.RowWidth) and size.bind_off.row == 6 and size.bind_off.spread_mm == 0


def test_a_shaped_panel_is_as_high_as_the_stitches_that_stand():
    """Borders of garter are bound off after row 60 of 140: below, both by width; above, the plain middle alone."""
    gauges = {"stockinette": (28, 40), "garter 2/2": (26, 58)}
    swatch = lw.Swatch(
        [
            lw.Measurement(texture, counted, count, 100)
            for texture, counts in gauges.items()
            for counted, count in zip((lw.Counted.stitches, lw.Counted.rows), counts)
        ]
    )
    panel = lw.join_strips("back", 140, [lw.garter(2, 2, 12), lw.stockinette(60), lw.garter(2, 2, 12)])
    edge = lw.EdgeShape([lw.EdgePoint(60, 0), lw.EdgePoint(60, 12)])
    size = lw.size(lw.shaped(panel, lw.outlined(140, 84, edge, edge)), swatch)
    garter_mm, plain_mm = 24 * 100 / 26, 60 * 100 / 28
    below = (garter_mm * 60 * 100 / 58 + plain_mm * 60 * 100 / 40) / (garter_mm + plain_mm)
    assert size.height_mm == pytest.approx(below + 80 * 100 / 40, rel=1e-12)
    assert [finding.message[:10] for finding in size.findings if finding.code is lw.FindingCode.unlike_heights] == ["rows 1-60:"]


def test_cloth_in_two_pieces_is_refused_and_found():
    left = lw.EdgeShape(points=[lw.EdgePoint(0, 0), lw.EdgePoint(2, 0), lw.EdgePoint(2, 20), lw.EdgePoint(4, 20)])
    right = lw.EdgeShape(points=[lw.EdgePoint(0, 20), lw.EdgePoint(2, 20), lw.EdgePoint(2, 0), lw.EdgePoint(4, 0)])
    with pytest.raises(lw.Error, match="rows 2 and 3 have no column in common: they are two pieces") as refused:
        lw.outlined(4, 40, left, right)
    assert (refused.value.code, refused.value.row, refused.value.field) == (lw.ErrorCode.bad_argument, 3, "outline")
    machine = lw.Machine.generic(lw.MachineClass.standard)
    found = lw.findings(lw.Grid.from_text("..kk\nkk.."), machine)[0]
    assert (found.code, found.severity) == (lw.FindingCode.two_pieces, lw.Severity.error)
    assert (found.place.row, found.place.column, found.last_column, found.limit) == (2, 2, 3, 1)
    assert found.suggestion


def test_edges_that_take_turns_are_told_each_by_itself():
    outline = lw.outlined(
        60, 40, lw.EdgeShape(events=[lw.EdgeEvent(6, 1, 6, 8)]), lw.EdgeShape(events=[lw.EdgeEvent(9, 1, 6, 8)])
    )
    assert lw.outline_text(outline).splitlines()[1:-1] == [
        "RC 6: decrease 1 at the left edge, then every 6th row 7 times.",
        "Meanwhile, RC 9: decrease 1 at the right edge, then every 6th row 7 times.",
    ]


def test_a_cut_crossing_is_found_refused_or_knitted_plain(roped):
    outline = lw.outlined(6, 8, lw.EdgeShape(start=1), lw.EdgeShape())
    (finding,) = lw.shape_findings(roped.grid, outline, edge_stitches=1)
    assert finding.code is lw.FindingCode.crossing_cut and finding.value == 1 and "move the edge" in finding.suggestion
    with pytest.raises(lw.Error) as refused:
        lw.shaped(roped, outline)
    assert refused.value.code is lw.ErrorCode.crossing_cut and (refused.value.row, refused.value.column) == (2, 0)
    assert lw.shaped(roped, outline, cut=lw.CutWork.knit, edge_stitches=2).grid.crossings == ()


def test_spacing_becomes_the_events_of_an_edge():
    spacing = lw.spaced_evenly(10, 3)
    assert lw.edge_events(spacing, -1, above=20) == [lw.EdgeEvent(23, -1, 3, 2), lw.EdgeEvent(30, -1, 1, 1)]
    edge = lw.EdgeShape(events=lw.edge_events(spacing))
    assert [step.row for step in lw.shaping_steps(lw.outlined(12, 9, edge, lw.EdgeShape()))] == list(spacing.positions)
    with pytest.raises(lw.Error) as refused:
        lw.edge_events(spacing, 0)
    assert (refused.value.code, refused.value.field) == (lw.ErrorCode.bad_argument, "stitches")


def test_a_piece_in_mm_becomes_a_shape():
    # A stitch is 5 mm wide, ten rows 33.3 mm high. From 60 mm to 100 mm over 30 rows: numpy's line, read in mid row.
    swatch = lw.Swatch(
        [lw.Measurement("plain", lw.Counted.stitches, 20, 100), lw.Measurement("plain", lw.Counted.rows, 30, 100)]
    )
    panel = lw.Panel("sleeve", lw.Strip("plain", "plain", lw.Grid(60, 20)))
    piece = lw.TargetPiece("sleeve", 1, 60, 60, 200, 200, shape=(lw.TargetPoint(100, 100, 100, 100),))
    outline = lw.piece_outline(piece, panel, swatch)
    middles = (np.arange(60) + 0.5) / 0.3
    missing = (100 - np.interp(middles, [0, 100], [60, 100])) / 2 / 5
    assert [row.first for row in outline.rows] == [math.floor(columns + 0.5) for columns in missing]
    assert all(row.first + row.last == 19 for row in outline.rows)
    even = lw.piece_outline(piece, panel, swatch, step=2)
    assert [step.row for step in lw.shaping_steps(even)] == [4, 12, 18, 26]
    assert lw.size(lw.shaped(panel, even), swatch).cast_on.width_mm == pytest.approx(60)
    sewn = lw.TargetPiece("sleeve", 1, 60, 60, 200, 200, left=lw.EdgeUse.seamed)
    assert lw.piece_outline(sewn, panel, swatch, seam_left=1, seam_right=9).rows[9] == lw.RowSpan(4, 15)
    with pytest.raises(lw.Error) as refused:
        lw.piece_outline(lw.TargetPiece("sleeve", 1, 120, 120, 200, 200), panel, swatch)
    assert (refused.value.code, refused.value.field, refused.value.row) == (
        lw.ErrorCode.bad_argument,
        "piece.width_least_mm",
        1,
    )
    with pytest.raises(lw.Error) as refused:
        lw.piece_outline(piece, panel, lw.Swatch())
    assert (refused.value.code, refused.value.field) == (lw.ErrorCode.no_gauge, "plain")
    borrowed = lw.Panel("sleeve", lw.Strip("moss", "moss", lw.Grid(60, 20)))
    assert lw.piece_outline(piece, borrowed, swatch, substitutes=[lw.Substitute("moss", "plain")]) == outline


def test_a_shaped_piece_is_fitted_and_cut_by_one_design():
    swatch = lw.Swatch(
        [lw.Measurement("stockinette", way, count, 100) for way, count in zip(lw.Counted, (20, 30), strict=True)]
    )
    rope = lw.rope(2, 2, 4, lw.Lean.right)
    design = lw.FitRequest(
        groups=[lw.FitGroup([rope], 1, 1)],
        edge=lw.stockinette(1),
        edge_most=30,
        rows_step=4,
        substitutes=[lw.Substitute(rope.texture, "stockinette")],
        tolerance_percent=5,
        seam_left=1,
        seam_right=1,
    )
    widest = lw.TargetPoint(100, 100, 100, 100)
    piece = lw.TargetPiece("sleeve", 1, 60, 60, 200, 200, lw.EdgeUse.seamed, lw.EdgeUse.seamed, shape=(widest,))
    best = lw.fit_piece(piece, design, swatch).candidates[0]
    panel = lw.fitted_piece(piece, design, best, swatch)
    by_hand = lw.piece_outline(
        piece,
        lw.fitted(lw.piece_request(piece, design), best),
        swatch,
        substitutes=design.substitutes,
        seam_left=1,
        seam_right=1,
    )
    assert lw.outline_of(panel.grid) == by_hand
    made = lw.size(panel, swatch, substitutes=design.substitutes, seam_left=1, seam_right=1)
    assert (made.cast_on.width_mm, made.width_mm) == (pytest.approx(60), pytest.approx(100))
    assert lw.verify(panel.grid, lw.plan(panel.grid, lw.Machine.generic(lw.MachineClass.mid))).verified
    tip = lw.TargetPiece("tip", 1, 60, 60, 200, 200, shape=(lw.TargetPoint(200, 200, 8, 8),))
    with pytest.raises(lw.Error) as refused:
        lw.fitted_piece(tip, design, best, swatch)
    assert refused.value.code is lw.ErrorCode.crossing_cut
    assert len(lw.fitted_piece(tip, design, best, swatch, cut=lw.CutWork.knit).grid.crossings) < len(panel.grid.crossings)


def test_stitches_bound_off_away_from_the_yarn_are_found():
    # Common practice, no source: after an even row the carriage stands at the operator's right, the left of the RS.
    machine = lw.Machine.generic(lw.MachineClass.standard)

    def away(left_row, right_row):
        left, right = (lw.EdgeShape(events=[lw.EdgeEvent(row, 3)]) for row in (left_row, right_row))
        panel = lw.Panel("p", lw.Strip("p", "p", lw.Grid(12, 20)))
        found = lw.findings(lw.shaped(panel, lw.outlined(12, 20, left, right)).grid, machine)
        return [f for f in found if f.code is lw.FindingCode.yarn_away]

    assert away(4, 5) == []
    (found,) = away(4, 4)
    assert (found.place.row, found.place.column, found.last_column, found.value) == (4, 17, 19, 3)
    assert found.severity is lw.Severity.warning and "a row later" in found.suggestion


def test_curves_are_those_of_scipys_pchip():
    # scipy.interpolate.PchipInterpolator: the same slopes at inner points, the curve's inner intervals by another hand.
    # At the first and the last point its slopes are of another rule, so the outer intervals are left out.
    points = [(0, 0), (10, 5), (30, 8), (40, 20), (60, 22)]
    shape = lw.EdgeShape([lw.EdgePoint(row, columns) for row, columns in points], lw.EdgeLine.curve)
    outline = lw.outlined(60, 40, shape, lw.EdgeShape())
    curve = scipy.interpolate.PchipInterpolator([row for row, _ in points], [columns for _, columns in points])
    rows = range(11, 41)
    assert [outline.rows[row - 1].first for row in rows] == [math.floor(curve(row - 0.5) + 0.5) for row in rows]


def test_curves_and_slopes():
    points = [lw.EdgePoint(0, 0), lw.EdgePoint(8, 4)]
    slope = lw.outlined(8, 10, left=lw.EdgeShape(points), right=lw.EdgeShape())
    assert [span.first for span in slope.rows] == [0, 1, 1, 2, 2, 3, 3, 4]
    even = lw.outlined(8, 10, lw.EdgeShape(points, lw.EdgeLine.curve), lw.EdgeShape(), step=2)
    assert all(step.row % 2 == 0 for step in lw.shaping_steps(even))
    with pytest.raises(lw.Error) as refused:
        lw.outlined(60, 30, lw.EdgeShape(events=[lw.EdgeEvent(11, 1, 7, 3)]), lw.EdgeShape(), step=2)
    assert (refused.value.code, refused.value.field) == (lw.ErrorCode.bad_argument, "left.events[0].row")
    with pytest.raises(lw.Error) as refused:
        lw.outlined(8, 10, lw.EdgeShape(points, start=1), lw.EdgeShape())
    assert refused.value.field == "left"
    with pytest.raises(lw.Error):
        lw.outlined(2, 2, lw.EdgeShape([lw.EdgePoint()] * (lw.max_edge_items + 1)), lw.EdgeShape())


def test_a_schematic_is_well_formed_and_has_every_measure(roped):
    swatch = lw.Swatch(
        [lw.Measurement("s", lw.Counted.stitches, 20, 100), lw.Measurement("s", lw.Counted.rows, 30, 100)]
    )
    piece = lw.schematic_piece(roped, swatch)
    assert [m.label for m in piece.measures] == ["width at the cast-on", "height"]
    assert piece.measures[0].mm == pytest.approx(40) and piece.measures[0].side is lw.MeasureSide.bottom
    for measure in piece.measures:
        measure.others_mm = [measure.mm + 10]
    piece.seam_right = True
    plain = lw.SchematicPiece("strap & band", [lw.OutlinePoint(0, 0), lw.OutlinePoint(30, 0), lw.OutlinePoint(15, 200)])
    schematic = lw.Schematic("bag <1>", ["small", "large"], [piece, plain], ["Line it."], lw.LengthUnit.cm)
    root = xml.etree.ElementTree.fromstring(lw.schematic_svg(schematic))
    words = [element.text for element in root.iter("{http://www.w3.org/2000/svg}text")]
    assert "a = 4 (5) cm" in words and "strap &" in words and "Line it." in words
    assert root.find("{http://www.w3.org/2000/svg}title").text == "bag <1>: schematic, right side shown"
    schematic.pieces[0].measures[0].others_mm = []
    with pytest.raises(lw.Error) as refused:
        lw.schematic_svg(schematic)
    assert refused.value.field == "pieces[0].measures[0].others_mm"


def test_a_piece_is_drawn_as_large_as_it_is_sized(roped):
    swatch = lw.Swatch(
        [
            lw.Measurement("t", lw.Counted.stitches, count, 100, state=state)
            for state, count in ((lw.ClothState.rested, 20), (lw.ClothState.washed, 22))
        ]
        + [
            lw.Measurement("t", lw.Counted.rows, count, 100, state=state)
            for state, count in ((lw.ClothState.rested, 30), (lw.ClothState.washed, 31))
        ]
    )
    options = {"state": lw.ClothState.rested, "substitutes": [lw.Substitute("s", "t")], "seam_left": 0.5}
    piece = lw.schematic_piece(roped, swatch, **options)
    size = lw.size(roped, swatch, **options)
    assert piece.measures[0].mm == pytest.approx(size.width_mm) == pytest.approx(37.5)
    assert piece.measures[1].mm == pytest.approx(size.height_mm)
    with pytest.raises(lw.Error) as refused:
        lw.schematic_piece(roped, swatch)
    assert refused.value.code is lw.ErrorCode.no_gauge


def test_an_outline_that_crosses_itself_is_refused_with_its_corner():
    corners = [lw.OutlinePoint(0, 0), lw.OutlinePoint(90, 0), lw.OutlinePoint(90, 90), lw.OutlinePoint(0, 90)]
    assert "<svg" in lw.schematic_svg(lw.Schematic(pieces=[lw.SchematicPiece("square", corners)]))
    bow = [corners[0], corners[1], corners[3], corners[2]]
    with pytest.raises(lw.Error, match="edges from corner 1 to 2 and from 3 to 0 meet") as refused:
        lw.schematic_svg(lw.Schematic(pieces=[lw.SchematicPiece("bow", bow)]))
    assert (refused.value.code, refused.value.field) == (lw.ErrorCode.bad_argument, "pieces[0].outline[1]")
    apart = lw.Panel("two", lw.Strip("s", "s", lw.Grid.from_text("..kk\nkk..")))
    swatch = lw.Swatch(
        [lw.Measurement("s", lw.Counted.stitches, 20, 100), lw.Measurement("s", lw.Counted.rows, 30, 100)]
    )
    with pytest.raises(lw.Error, match="no column in common") as refused:
        lw.schematic_piece(apart, swatch)
    assert (refused.value.row, refused.value.field) == (2, "grid")
