"""Plans are plain data and may hold any number: what is made of them is an answer or an Error with its place."""

import dataclasses

import latchwork as lw
import pytest

LEAST, MOST = -(1 << 31), (1 << 31) - 1


@pytest.fixture
def panel():
    """Six columns on L3..R3: one purl, on R1, below a 2/2 right cross after row 2."""
    grid = lw.Grid.from_text("kkkkkk\nkkkkkk\nx 1 2/2 R\nkkkkkk\nkkpkkk\n")
    return lw.Panel("sample", lw.Strip("rope", "rope", grid))


def plan_of(panel):
    return lw.plan(panel.grid, lw.Machine())


def drop_last(step):
    step.returns = step.returns[:-1]


def widen(step):
    step.crossing = dataclasses.replace(step.crossing, left=MOST)


@pytest.mark.parametrize(
    "field, row, column, spoil",
    [
        ("stops[0].row", MOST, -1, lambda stop: setattr(stop, "row", MOST)),
        ("stops[0].effort_ms", 2, -1, lambda stop: setattr(stop, "effort_ms", -1)),
        ("stops[0].holds[0]", 2, -1, lambda stop: setattr(stop, "holds", [LEAST])),
        ("stops[0].reforms[0].needle", 2, -1, lambda stop: setattr(stop.reforms[0], "needle", 0)),
        ("stops[0].reforms[0].from_row", 2, 2, lambda stop: setattr(stop.reforms[0], "from_row", LEAST)),
        ("stops[0].reforms[0].rungs", 2, 2, lambda stop: setattr(stop.reforms[0], "rungs", [lw.Cell.purl] * 3)),
        ("stops[0].crossings[0].crossing.left", 2, -1, lambda stop: widen(stop.crossings[0])),
        (
            "stops[0].crossings[0].returns[1].to_needle",
            2,
            1,
            lambda stop: setattr(stop.crossings[0].returns[1], "to_needle", MOST),
        ),
        ("stops[0].carriage_right", 2, -1, lambda stop: setattr(stop, "carriage_right", False)),
        ("stops[0].reforms[0].column", 2, 2, lambda stop: setattr(stop.reforms[0], "column", 3)),
        ("stops[0].reforms[0].wale", 2, 2, lambda stop: setattr(stop.reforms[0], "wale", 3)),
        ("stops[0].crossings[0].returns", 2, 1, lambda stop: drop_last(stop.crossings[0])),
        ("stops[0].reforms[1].needle", 2, 2, lambda stop: setattr(stop, "reforms", stop.reforms * 2)),
        ("stops[0].crossings[1].crossing.column", 2, 1, lambda stop: setattr(stop, "crossings", stop.crossings * 2)),
        ("stops[0].shapings[0]", 2, 2, lambda stop: setattr(stop, "shapings", [lw.Shaping(1, 2, True)])),
    ],
)
def test_instructions_refuse_numbers_that_no_words_can_tell(panel, field, row, column, spoil):
    plan = plan_of(panel)
    assert lw.instructions(panel, plan, lw.Machine())
    spoil(plan.stops[0])
    with pytest.raises(lw.Error) as caught:
        lw.instructions(panel, plan, lw.Machine())
    assert caught.value.code is lw.ErrorCode.bad_argument
    assert (caught.value.field, caught.value.row, caught.value.column) == (field, row, column)


def test_instructions_refuse_a_needle_left_out_of_the_cast_on(panel):
    plan = plan_of(panel)
    plan.columns_on = [0, 1, 3, 4, 5]
    with pytest.raises(lw.Error, match="does not cast on column 2") as caught:
        lw.instructions(panel, plan, lw.Machine())
    assert (caught.value.code, caught.value.field, caught.value.column) == (lw.ErrorCode.bad_argument, "columns_on", 2)


def test_instructions_refuse_a_stop_at_the_cast_on_that_names_the_wrong_side(panel):
    plan = plan_of(panel)
    plan.stops = [lw.Stop(row=0, carriage_right=False), *plan.stops]
    with pytest.raises(lw.Error, match="stop 1, after row 0: the carriage is told to be on the left") as caught:
        lw.instructions(panel, plan, lw.Machine())
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, "stops[0].carriage_right")


def test_words_tell_which_tools_are_not_at_hand():
    grid = lw.Grid(6, 8)
    grid.cross(lw.Crossing(row=3, column=1, left=3, right=3))
    panel = lw.Panel("sample", lw.Strip("sample", "sample", grid))
    for prongs, missing in (([3], ""), ([1], "4 of the 1-prong"), ([], "2 of the 3-prong")):
        machine = lw.Machine(prongs=prongs)
        words = lw.instructions(panel, lw.plan(grid, machine), machine)
        assert ("Not at hand" in words) == bool(missing) and missing in words


def test_counts_and_times_stay_within_their_numbers(panel):
    plan = plan_of(panel)
    for back in plan.stops[0].crossings[0].returns:
        back.stitches = MOST
    work = lw.hand_work(plan)
    assert work.stitches_crossed == MOST
    assert work.hand_ms == 65_500 - 16_000 + 4000 * MOST
    plan.rows = LEAST
    assert lw.hand_work(plan).carriage_ms == 0


def test_times_of_two_stops_that_pass_every_number_are_told_as_the_greatest(panel):
    plan = plan_of(panel)
    plan.stops[0].effort_ms = (1 << 63) - 1
    plan.stops.append(lw.Stop(row=3, carriage_right=False, effort_ms=(1 << 63) - 1))
    assert "About 2562047788015 h 13 min of hand work" in lw.instructions(panel, plan, lw.Machine())


def test_a_chart_shows_needles_however_far_out(panel):
    plan = plan_of(panel)
    plan.leftmost = LEAST
    assert ">L2147483645<" in lw.chart_svg(panel, lw.Side.operator_view, plan=plan)


def test_the_words_sweep_the_bed_from_the_left(panel):
    words = lw.instructions(panel, plan_of(panel), lw.Machine())
    assert "one at a time, in the order listed: one sweep of the bed from your left" in words


def words_of(cells):
    grid = lw.Grid.from_text(cells)
    panel = lw.Panel("sample", lw.Strip("sample", "sample", grid))
    return lw.instructions(panel, lw.plan(grid, lw.Machine()), lw.Machine())


def test_words_tell_the_cast_on_that_the_plan_relies_on():
    assert "Cast on L3-R2 (5 needles, each with a loop of its own)." in words_of("kkkkk\nkkpkk\n")
    assert "a loop of its own" not in words_of("kkkkk\nkkkkk\n")


def test_one_stitch_at_an_edge_is_decreased_and_several_are_bound_off():
    words = words_of("..kkk.\nkkkkkk\n")
    assert "decrease 1: move the stitch on L3 to L2 and put L3 out of work; bind off R2-R3" in words


def test_the_words_end_where_the_last_stitch_is_bound_off():
    words = words_of(".....\n.....\nkkkkk\n")
    assert words.endswith("the panel ends here. Nothing is knitted in rows 2 to 3.\n") and "waste yarn" not in words
    assert words_of("kkkkk\nkkkkk\n").endswith("Bind off, or take the panel off on waste yarn.\n")


def test_a_crossing_whose_needles_the_next_row_cannot_knit_back_is_refused():
    strip = lw.Strip("own", "own", lw.Grid.from_text("kkkkkkkkkkkkk\nkkkkkkkkkktkk\nx 2 2/2 L\nkkkkkkkkkkkkk\nkkkkkkkkkkkkk"))
    panel, machine = lw.join_strips("strap", 4, [strip]), lw.Machine()
    plan = lw.plan(panel.grid, machine)
    assert plan.stops[0].holds and not plan.stops[0].crossings[0].ease
    plan.stops[0].crossings[0].ease = True
    told = lw.verify(panel.grid, plan)
    assert not told.verified and (told.difference.row, told.difference.column) == (2, 2)
    with pytest.raises(lw.Error) as caught:
        lw.instructions(panel, plan, machine)
    assert caught.value.field == "stops[0].crossings[0].ease"
