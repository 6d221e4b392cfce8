"""Yarn for a panel by every route, and the geometry of plain knit."""

import dataclasses
import math
import statistics

import latchwork as lw
import pytest


@pytest.fixture
def request_by_loops():
    """One yarn and nothing but the cloth: no allowance, no cast-on."""
    request = lw.YarnRequest(yarns=[lw.Yarn("main", lw.read_yarn_number("50 g = 250 m"), 50.0)])
    request.cast_on_rows = request.bind_off_rows = request.sureness = request.allowance = 0.0
    request.loops = [lw.MeasuredLoops("stockinette", 100, 1000), lw.MeasuredLoops("stockinette", 100, 1100)]
    return request


@pytest.fixture
def plain():
    return lw.join_strips("plain", 20, [lw.stockinette(30)])


def test_places_times_loops_times_tex(plain, request_by_loops):
    need = lw.yarn_need(plain, lw.Swatch(), request_by_loops)
    (estimate,) = need.estimates
    assert estimate.route is lw.YarnRoute.measured_loops
    assert estimate.length_m == pytest.approx(600 * 0.0105)
    assert estimate.weight_g == pytest.approx(600 * 0.0105 / 5)  # 5 m to the gram
    assert estimate.spread_g / estimate.weight_g == pytest.approx(
        statistics.stdev([1000, 1100]) / 1050 * math.sqrt(1.5)
    )
    assert estimate.shares == (
        lw.YarnShare(0, estimate.weight_g, estimate.spread_g, 0.0, estimate.length_m, estimate.weight_g, 1),
    )
    assert estimate.notes == () and need.apart == 0 and len(need.missing) == 3 and need.warnings == ()


def test_two_routes_are_both_told_with_how_far_apart_they_are(plain, swatch, request_by_loops):
    request_by_loops.plain = lw.plain_constants_of(lw.PlainState.wet_relaxed)
    need = lw.yarn_need(plain, swatch, request_by_loops)
    loops, geometry = need.estimates
    assert geometry.route is lw.YarnRoute.plain_geometry
    gauge = swatch.gauge("stockinette")
    loop_mm = math.sqrt(
        lw.plain_loop_mm(lw.CountPerLength(lw.Counted.stitches, gauge.stitches.per_10cm, 100), request_by_loops.plain)
        * lw.plain_loop_mm(lw.CountPerLength(lw.Counted.rows, gauge.rows.per_10cm, 100), request_by_loops.plain)
    )
    assert geometry.length_m == pytest.approx(600 * loop_mm / 1000)
    mean = (loops.weight_g + geometry.weight_g) / 2
    assert need.apart == pytest.approx(abs(loops.weight_g - geometry.weight_g) / mean)


def test_the_narrowest_margin_decides_unless_another_route_says_that_it_is_wrong(plain, request_by_loops):
    request = dataclasses.replace(request_by_loops, sureness=2.0)
    request.loops = [lw.MeasuredLoops("stockinette", 100, mm) for mm in (1000, 1010, 1020)]
    # Two swatches that weigh as much on the mean, and differ more.
    request.weighed = [lw.WeighedSwatch("stockinette", g, stitches=20.0, rows=30.0) for g in (1.0, 1.4)]
    need = lw.yarn_need(plain, lw.Swatch(), request)
    by_stitches, by_loops = need.estimates
    assert by_stitches.margin_g > by_loops.margin_g and by_stitches.shares[0].buy_g > by_loops.shares[0].buy_g
    assert need.decides == 1 and need.why.startswith("measured loops: the narrowest margin")
    # Three that weigh twice as much: one of the two cannot be right.
    request.weighed = [lw.WeighedSwatch("stockinette", g, stitches=20.0, rows=30.0) for g in (2.3, 2.4, 2.5)]
    need = lw.yarn_need(plain, lw.Swatch(), request)
    assert need.warnings and need.decides == 0 and "the dearest" in need.why
    assert lw.yarn_need(plain, lw.Swatch(), dataclasses.replace(request, loops=[], weighed=[])).decides == -1


def test_a_texture_without_a_figure_needs_to_be_told(request_by_loops):
    cable = lw.rope(3, 3, 8, lw.Lean.right)
    panel = lw.join_strips("cable", 16, [lw.stockinette(4), cable])
    barred = lw.yarn_need(panel, lw.Swatch(), request_by_loops)
    assert barred.estimates == () and any(cable.texture in reason for reason in barred.missing)
    request_by_loops.substitutes.append(lw.Substitute(cable.texture, "stockinette"))
    (told,) = lw.yarn_need(panel, lw.Swatch(), request_by_loops).estimates
    assert any("as told" in note for note in told.notes)


def test_states_are_kept_apart_and_what_is_not_known_is_told(plain, request_by_loops):
    rested = [
        lw.Measurement("stockinette", lw.Counted.stitches, 28.0, 100.0),
        lw.Measurement("stockinette", lw.Counted.rows, 40.0, 100.0),
    ]
    washed = [dataclasses.replace(each, count=each.count + 2, state=lw.ClothState.washed) for each in rested]
    request = dataclasses.replace(request_by_loops, loops=[])
    request.weighed = [lw.WeighedSwatch("stockinette", 5.0, width_mm=100.0, height_mm=100.0)]
    grams = 600 * 5 / (28 * 40)
    for measurements in (rested, rested + washed):
        area, geometry = lw.yarn_need(plain, lw.Swatch(measurements), request).estimates
        assert area.weight_g == pytest.approx(grams) and not area.spread_known
    assert any("fully relaxed" in note for note in geometry.notes) and geometry.spread_g > 0
    request.weighed = [dataclasses.replace(request.weighed[0], state=lw.ClothState.washed)]
    assert any("weighed washed" in reason for reason in lw.yarn_need(plain, lw.Swatch(rested), request).missing)

    request_by_loops.sureness = 2.0
    (loops,) = lw.yarn_need(plain, lw.Swatch(), request_by_loops).estimates
    # Of one degree of freedom Student's t is Cauchy's distribution.
    times = math.tan(math.pi / 2 * math.erf(math.sqrt(2)))
    assert loops.spread_known and loops.margin_g == pytest.approx(times * loops.spread_g, rel=1e-5)
    assert loops.shares[0].buy_g == pytest.approx(loops.weight_g + loops.margin_g)


def test_weighed_swatches_and_stripes(plain, swatch, request_by_loops):
    request = dataclasses.replace(request_by_loops, loops=[])
    request.yarns = [lw.Yarn("main", lw.read_yarn_number("Nm 5"), 50.0), lw.Yarn("stripe", lw.read_yarn_number("Nm 5"))]
    request.rows = [lw.YarnRows(1, 15, 0), lw.YarnRows(16, 0, 1)]
    request.weighed = [lw.WeighedSwatch("stockinette", 6.0, 0.1, stitches=30, rows=40)]
    (estimate, *_) = lw.yarn_need(plain, lw.Swatch(), request).estimates
    assert estimate.route is lw.YarnRoute.weighed_stitches and estimate.weight_g == pytest.approx(3.0)
    assert [share.weight_g for share in estimate.shares] == pytest.approx([2.25, 0.75])
    assert [share.balls for share in estimate.shares] == [1, 0]
    assert lw.YarnRequest.max_yarns == 100 and lw.YarnRequest.max_items >= 1000


@pytest.mark.parametrize(
    "change, field",
    [
        ({"yarns": []}, "yarns"),
        ({"rows": [lw.YarnRows(1, 21, 0)]}, "rows[0].last"),
        ({"loops": [lw.MeasuredLoops("x", 1, math.nan)]}, "loops[0].length_mm"),
        ({"weighed": [lw.WeighedSwatch("x", -1.0)]}, "weighed[0].weight_g"),
        ({"allowance": math.inf}, "allowance"),
        ({"yarns": [lw.Yarn("fine", lw.YarnNumber(lw.YarnSystem.yards_per_pound, 1e-6))]}, "yarns[0].number.number"),
    ],
)
def test_bad_requests_are_refused_with_their_field(plain, request_by_loops, change, field):
    with pytest.raises(lw.Error) as caught:
        lw.yarn_need(plain, lw.Swatch(), dataclasses.replace(request_by_loops, **change))
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, field)


def test_plain_knit_by_its_constants():
    constants = lw.plain_constants_of(lw.PlainState.fully_relaxed)
    assert constants == lw.PlainConstants() == lw.PlainConstants(5.5, 4.2)
    # Munden's relation at 18 stitches: 23.33 mm (check value KG-20).
    gauge = lw.read_count_per_length("18 sts / 10 cm")
    assert lw.plain_loop_mm(gauge, constants) == pytest.approx(23.3333, abs=1e-4)
    assert lw.plain_per_10cm(lw.Counted.stitches, 70 / 3, constants) == pytest.approx(18)
    yarn = lw.YarnNumber(lw.YarnSystem.tex, 25.0)
    assert lw.tightness_factor(yarn, 3.5) == pytest.approx(1.42857, abs=1e-5)  # KG-18
    rows = lw.read_count_per_length("30 rows / 10 mm")
    stitches = lw.read_count_per_length("1 st / 1 cm")
    twenty = lw.YarnNumber(lw.YarnSystem.tex, 20.0)
    assert lw.area_density_g_m2(stitches, rows, 3.0, twenty) == pytest.approx(18)  # KG-12
    with pytest.raises(lw.Error) as caught:
        lw.area_density_g_m2(rows, rows, 3.0, twenty)
    assert caught.value.field == "stitches"


def test_a_request_goes_to_a_file_and_back(request_by_loops):
    request_by_loops.yarns = [dataclasses.replace(request_by_loops.yarns[0], name="köper \"grey\"")]
    assert lw.read_yarn_request(lw.write(request_by_loops)) == request_by_loops
    with pytest.raises(lw.Error) as refused:
        lw.read_yarn_request('{"format": "latchwork-yarn", "version": 1,\n "yarns": [{"ball_g": -1}]}')
    assert (refused.value.line, refused.value.field) == (2, "yarns[0].ball_g")


def test_a_file_from_before_swatches_had_states_is_read():
    request = lw.read_yarn_request(
        '{"format": "latchwork-yarn", "version": 1, "yarns": [{"number": "20 tex"}],'
        ' "weighed": [{"texture": "s", "weight_g": 5, "width_mm": 100, "height_mm": 100}],'
        ' "plain": {"courses": 5.5, "wales": 4.2}}'
    )
    assert request.weighed[0].state is lw.ClothState.rested and request.plain == lw.PlainConstants(5.5, 4.2)
    assert lw.read_yarn_request(lw.write(request)) == request


def test_a_brief_reckons_its_yarn(plain, swatch, request_by_loops):
    brief = lw.Brief(plain, swatch)
    assert lw.run(brief).yarn is None
    brief.yarn = request_by_loops
    job = lw.run(brief)
    assert job.yarn == lw.yarn_need(plain, swatch, request_by_loops)
    assert "To buy" in lw.summary(brief, job)
