"""Fitting: what an article shall measure, and the ways to make it so."""

import copy
import pickle

import latchwork as lw
import pytest


@pytest.fixture(scope="module")
def swatch():
    """30 stitches and 40 rows to 10 cm of everything."""
    textures = [lw.stockinette(1), lw.reverse(1), lw.rope(2, 2, 8, lw.Lean.right)]
    return lw.Swatch(
        [
            lw.Measurement(strip.texture, counted, count, 100)
            for strip in textures
            for counted, count in ((lw.Counted.stitches, 30), (lw.Counted.rows, 40))
        ]
    )


def cables(**changes):
    request = lw.FitRequest(width_mm=200, height_mm=100, edge=lw.stockinette(1), rows_step=8, most=5)
    request.groups.append(lw.FitGroup([lw.reverse(2), lw.rope(2, 2, 8, lw.Lean.right)], 1, 20))
    request.groups.append(lw.FitGroup([lw.reverse(2)]))
    for name, value in changes.items():
        setattr(request, name, value)
    return request


def test_candidates_meet_the_target_in_the_order_of_their_errors(swatch):
    request = cables()
    found = lw.fit(request, swatch)
    candidates = found.candidates
    assert len(candidates) == 5 and list(candidates) == sorted(candidates, key=lambda candidate: candidate.error)
    assert found.nearest == () and found.nearest_complete
    best = candidates[0]
    # 200 mm are 60 stitches; 1 + 9 * 6 + 2 + 1 = 58, or 64; 100 mm are 40 rows.
    assert (best.panels, best.times, best.edge_columns, best.columns, best.rows) == (1, (9, 1), 1, 58, 40)
    assert best.width_error_mm == pytest.approx(58 / 30 * 100 - 200)
    assert best.width_error_percent == pytest.approx(58 / 60 * 100 - 100)
    assert (best.height_error_mm, best.height_error_percent) == (0, 0)
    panel = lw.fitted(request, best)
    assert (panel.grid.columns, panel.grid.rows) == (58, 40)
    assert lw.size(panel, swatch).width_mm == best.width_mm
    assert copy.deepcopy(request) == request == pickle.loads(pickle.dumps(request))
    assert pickle.loads(pickle.dumps(found)) == found


def test_a_range_a_tolerance_and_seams_mean_what_they_mean_to_size(swatch):
    request = cables(width_most_mm=220, seam_left=1, seam_top=0.5, tolerance_percent=3.0)
    for candidate in lw.fit(request, swatch).candidates:
        size = lw.size(lw.fitted(request, candidate), swatch, seam_left=1, seam_top=0.5)
        assert (size.width_mm, size.height_mm) == (candidate.width_mm, candidate.height_mm)
        assert candidate.width_error_mm == max(size.width_mm - 220, 0) + min(size.width_mm - 200, 0)
        assert abs(candidate.width_error_percent) <= 3 and abs(candidate.height_error_percent) <= 3


def test_a_finished_panel_is_parted_for_the_bed(swatch):
    rope = lw.rope(3, 3, 8, lw.Lean.right)
    plain = lw.stockinette(10)
    panel = lw.join_strips("two ropes", 16, [plain, rope, plain, rope.mirrored(), plain])
    assert lw.split(panel) == [lw.SplitPart(0, 42)]
    bed = lw.Machine(needles=30)
    parts = lw.split(panel, bed, seam_stitches=2)
    assert parts == [lw.SplitPart(0, 21, 0, 2), lw.SplitPart(21, 21, 2, 0)]
    left, right = (lw.split_part(panel, part) for part in parts)
    assert left.grid == right.grid.mirrored() and left.name == "two ropes, columns 0 to 20"
    assert (left.grid.cells[:, -2:] == int(lw.Cell.knit)).all()
    as_plain = [lw.Substitute(rope.texture, "stockinette")]
    whole = lw.size(panel, swatch, substitutes=as_plain).width_mm
    sewn = [
        lw.size(each, swatch, substitutes=as_plain, seam_left=part.seam_left, seam_right=part.seam_right).width_mm
        for each, part in zip((left, right), parts)
    ]
    assert sum(sewn) == pytest.approx(whole)
    for call, code, field in [
        (lambda: lw.split(panel, lw.Machine(needles=7), 0.5), lw.ErrorCode.bad_argument, "seam_stitches"),
        (lambda: lw.split(panel, lw.Machine(needles=7)), lw.ErrorCode.too_large, "panel"),
        (lambda: lw.split(panel, bed, seam_stitches=11), lw.ErrorCode.bad_argument, "seam_stitches"),
        (lambda: lw.split_part(panel, lw.SplitPart(40, 3)), lw.ErrorCode.bad_argument, "part.columns"),
        (lambda: lw.split_part(panel, lw.SplitPart(0, 12)), lw.ErrorCode.crossing_cut, None),
    ]:
        with pytest.raises(lw.Error) as caught:
            call()
        assert caught.value.code == code
        assert field is None or caught.value.field == field
    with pytest.raises(lw.Error) as caught:
        lw.split(panel, lw.Machine(needles=7))
    assert caught.value.column == 10
    assert lw.split(panel, bed, 2.0) == parts


def test_panels_are_sewn_of_halves_that_mirror_each_other(swatch):
    request = cables(width_mm=600, needles=70, panels_most=3, most=1)
    (best,) = lw.fit(request, swatch).candidates
    assert best.panels == 3 and best.columns <= 70
    panels = [lw.fitted(request, best, i) for i in range(best.panels)]
    assert panels[0].grid == panels[1].grid == panels[2].grid.mirrored()
    assert panels[2].name.endswith("panel 3 of 3")
    widths = [
        lw.size(panel, swatch, seam_left=min(i, 1), seam_right=min(2 - i, 1)).width_mm for i, panel in enumerate(panels)
    ]
    assert best.width_mm == pytest.approx(sum(widths))
    with pytest.raises(lw.Error) as caught:
        lw.fitted(request, best, panel=3)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, "panel")


def test_the_start_is_told_and_made(swatch):
    request = cables(vary_start=True)
    best = lw.fit(request, swatch).candidates[0]
    assert (best.imbalance_rows, best.open_ends) == (0, False)
    rows = [crossing.row for crossing in lw.fitted(request, best).grid.crossings]
    assert min(rows) == best.rows - max(rows)
    assert lw.fit(cables(), swatch).candidates[0].start_row == 1


def test_a_borrowed_gauge_is_told(swatch):
    request = cables(substitutes=[lw.Substitute("waves", "stockinette")])
    assert lw.FindingCode.borrowed_gauge not in [each.code for each in lw.fit(request, swatch).findings]
    request.groups[1] = lw.FitGroup([lw.Strip("waves", "waves", lw.Grid(1, 3))])
    found = lw.fit(request, swatch)
    told = [each for each in found.findings if each.code is lw.FindingCode.borrowed_gauge]
    assert [each.place.field for each in told] == ["waves"]
    panel = lw.fitted(request, found.candidates[0])
    narrow = lw.FindingCode.narrow_texture  # is of a panel: a group that stands often enough is wide
    of_panel = lw.measuring_findings(panel, swatch, substitutes=request.substitutes)
    assert list(found.findings) == [each for each in of_panel if each.code is not narrow]
    grading = lw.grade(lw.GradeRequest(request, [lw.GradeSize("S", 200, 0, 100)]), swatch)
    assert grading.findings == found.findings
    assert lw.grading_table(grading).splitlines()[-1] == told[0].message
    assert lw.grading_words(grading).splitlines()[-1] == told[0].message


def test_bounds_that_give_together_are_told_beside_the_tolerance():
    """28 stitches and 40 rows to 10 cm; rows of 6 n + 2 are 1.1 % off 450 mm, and one panel is too narrow."""
    counts = ((lw.Counted.stitches, 28), (lw.Counted.rows, 40))
    plain = lw.Swatch([lw.Measurement("stockinette", counted, count, 100) for counted, count in counts])
    request = lw.FitRequest(
        width_mm=1200,
        height_mm=450,
        groups=[lw.FitGroup([lw.stockinette(10)], 1, 12)],
        edge=lw.stockinette(1),
        edge_most=3,
        rows_step=6,
        rows_extra=2,
        needles=200,
        tolerance_percent=1.0,
    )
    nearest = lw.fit(request, plain).nearest
    assert len(nearest) == 3
    assert [give.bound for give in nearest[0].gives] == [lw.FitBound.rows, lw.FitBound.panels]
    assert [give.bound for give in nearest[1].gives] == [lw.FitBound.height, lw.FitBound.panels]
    assert [each.candidate.error < most for each, most in zip(nearest, (0.01, 0.015))] == [True, True]


def test_what_would_have_to_give_is_told_when_nothing_fits(swatch):
    request = cables(width_mm=500, tolerance_percent=2.0)  # 150 stitches
    request.groups[0].least = 20
    found = lw.fit(request, swatch)
    assert found.candidates == () and len(found.nearest) == 3 and found.nearest_complete
    assert [give.words for near in found.nearest for give in near.gives] == [
        "24 repeats of group 1; at most 20 are allowed",  # 148 stitches, 1.3 % short: 4 / 20 more
        "86.7 mm narrower than wanted (17.3 %; at most 2 % is allowed)",  # 15.3 / 2
        "13 repeats of group 2; at most 1 is allowed",  # 1 + 20 * 6 + 13 * 2 + 1: 12 / 1
    ]
    give = found.nearest[0].gives[0]
    assert (give.bound, give.group, give.value, give.limit) == (lw.FitBound.times, 0, 24, 20)
    assert lw.fitted(request, found.nearest[0].candidate).grid.columns == 148


def test_three_are_told_however_far_off():
    """100 stitches, 400 mm, for 4 mm; 39 rows, 40 and 41."""
    counts = ((lw.Counted.stitches, 25), (lw.Counted.rows, 40))
    plain = lw.Swatch([lw.Measurement("stockinette", counted, count, 100) for counted, count in counts])
    request = lw.FitRequest(width_mm=4, height_mm=100, groups=[lw.FitGroup([lw.stockinette(100)])], tolerance_percent=1.0)
    found = lw.fit(request, plain)
    assert found.candidates == () and len(found.nearest) == 3 and found.nearest_complete
    words = "396.0 mm wider than wanted (9900.0 %; at most 1 % is allowed)"
    assert [give.words for give in found.nearest[0].gives] == [words]
    assert all(near.gives[0].words == words for near in found.nearest)


def test_tied_groups_stand_as_often_and_fitted_reads_no_target(swatch):
    side = lw.FitGroup([lw.stockinette(4)], 1, 30)
    again = lw.FitGroup([lw.stockinette(4)], as_group=0)
    request = cables(groups=[side, lw.FitGroup([lw.reverse(2)]), again])
    found = lw.fit(request, swatch)
    assert all(each.times[0] == each.times[2] and each.times[1] == 1 for each in found.candidates)
    best = found.candidates[0]
    grid = lw.fitted(request, best).grid
    request.width_mm = request.height_mm = 0
    assert lw.fitted(request, best).grid == grid
    request.groups[2].as_group = 2
    with pytest.raises(lw.Error) as caught:
        lw.fitted(request, best)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, "groups[2].as_group")


def test_a_best_fit_that_ends_open_is_told(swatch):
    crossed = lw.rope(2, 2, 8, lw.Lean.right).grid.crossings[0].row
    request = cables(rows_extra=crossed)
    found = lw.fit(request, swatch)
    open_ends = [each for each in found.findings if each.code is lw.FindingCode.open_crossing]
    assert found.candidates[0].open_ends and [each.place.row for each in open_ends] == [found.candidates[0].rows]
    request.vary_start = True
    found = lw.fit(request, swatch)
    assert not found.candidates[0].open_ends
    assert all(each.code is not lw.FindingCode.open_crossing for each in found.findings)


def test_bad_requests_are_refused_by_field(swatch):
    for changes, field in (
        ({"width_mm": 0.0}, "width_mm"),
        ({"height_most_mm": 5.0}, "height_most_mm"),
        ({"tolerance_percent": float("nan")}, "tolerance_percent"),
        ({"groups": []}, "groups"),
        ({"groups": [lw.FitGroup([lw.reverse(1)], 2, 1)]}, "groups[0].most"),
        ({"groups": [lw.FitGroup([lw.reverse(1)], as_group=0)]}, "groups[0].as_group"),
        ({"groups": [lw.FitGroup()] * (lw.FitRequest.max_groups + 1)}, "groups"),
        ({"panels_most": lw.FitRequest.max_panels + 1}, "panels_most"),
        ({"most": lw.FitRequest.max_candidates + 1}, "most"),
        ({"seam_stitches": 0.7}, "seam_stitches"),
        ({"substitutes": [lw.Substitute("moss", "")]}, "substitutes[0].use"),
    ):
        with pytest.raises(lw.Error) as caught:
            lw.fit(cables(**changes), swatch)
        assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, field)
    with pytest.raises(lw.Error) as caught:
        lw.fit(cables(state=lw.ClothState.washed), swatch)
    assert caught.value.code is lw.ErrorCode.no_gauge
    with pytest.raises(TypeError, match=r"FitRequest\.groups\[0\]\.strips\[0\] must be Strip"):
        lw.fit(cables(groups=[lw.FitGroup([lw.Grid(1, 1)])]), swatch)


def test_a_piece_of_an_article_is_fitted_in_one_call(swatch):
    choices = lw.ArticleChoices(list="covers, UK", size="40 x 40 cm", rule="same size", closure="overlap")
    made = lw.targets(lw.built_in_article("cushion cover"), choices)
    front, lower = made.pieces[0], made.pieces[1]
    design = cables(seam_left=1, seam_right=1, seam_bottom=1, seam_top=1)
    assert lw.fit_piece(front, design, swatch) == lw.fit(lw.piece_request(front, design), swatch)
    wanted = lw.piece_request(lower, design)
    assert (wanted.height_mm, wanted.height_most_mm) == (lower.length_least_mm, lower.length_greatest_mm)
    assert (wanted.seam_bottom, wanted.seam_top) == (1, 0)  # sewn below, lapped above
    best = lw.fit_piece(front, design, swatch).candidates[0]
    assert lw.fitted(lw.piece_request(front, design), best).grid.columns == best.columns


def test_the_choices_of_an_article_are_a_file():
    groups = [lw.StripRun(1, 3, 1, 9), lw.StripRun(5, 7, as_group=0)]
    request = lw.ArticleRequest("scarf", made=["scarf"], groups=groups, edge=0)
    request.choices.measures.append(lw.NamedMeasure("width", 300, 300))
    request.design.rows_step = 8
    text = lw.write(request)
    assert lw.read_article_request(text) == request == pickle.loads(pickle.dumps(request))
    with pytest.raises(lw.Error) as caught:
        lw.read_article_request(text.replace('"rows_step": 8', '"rows_step": 0'))
    assert caught.value.code is lw.ErrorCode.bad_value and caught.value.field == "design.rows_step"
    assert caught.value.line > 0


def test_a_fit_and_a_grading_tell_how_far_they_are_and_stop_when_asked(swatch):
    request = cables()
    request.groups = [lw.FitGroup([lw.reverse(2)], 0, 60)] * 3
    grading = lw.GradeRequest(request, [lw.GradeSize("S", 200, 0, 200, 0), lw.GradeSize("M", 250, 0, 240, 0)])
    for call in (lambda **how: lw.fit(request, swatch, **how), lambda **how: lw.grade(grading, swatch, **how)):
        shares = []
        found = call(progress=lambda now: shares.append(now.share))
        assert shares == sorted(shares) and shares[-1] == 1 and found == call()
        stop = lw.StopSource()
        stop.request_stop()
        for how in ({"stop": stop}, {"progress": lambda now: False}):
            with pytest.raises(lw.Error) as caught:
                call(**how)
            assert caught.value.code is lw.ErrorCode.cancelled
        with pytest.raises(ZeroDivisionError):
            call(progress=lambda now: 1 / 0)
