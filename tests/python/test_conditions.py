"""Plans that can be kept in the head: conditions and their prices."""

import latchwork as lw
import pytest


@pytest.fixture
def purls():
    """A purl in row 2 and one in row 4, in neighbouring columns."""
    return lw.Grid.from_text("kkkk\nkkkk\nkkpk\nkkkk\nkpkk\nkkkk")


CHEAP = lw.Effort(stop=1_000)


def under(grid, effort=None, machine=None, **asked):
    return lw.plan(grid, machine or lw.Machine(), effort, conditions=lw.Conditions(**asked))


def rows(plan):
    return [stop.row for stop in plan.stops]


def test_no_condition_is_the_plain_plan(purls):
    assert under(purls) == lw.plan(purls, lw.Machine()) == lw.plan(purls, lw.Machine(), conditions=None)


@pytest.mark.parametrize(
    "asked, where, more",
    [
        ({"rows_apart": 3}, [2, 5], 4_500),  # the upper purl takes one knit rung along
        ({"rows_apart": 5}, [4], 8_000),  # both at once: two knit rungs, one stop saved
        ({"max_kinds": 1}, [4], 8_000),
        ({"carriage_right_only": True}, [2, 4], 0),
        ({"max_depth": 1}, [2, 4], 0),
        ({"rhythms": [lw.KeptRhythm(1, 1, 2, lw.Rhythm(3, 2))]}, [2, 5], 4_500),
        ({"rhythms": [lw.KeptRhythm(1, 1, 2)]}, [2, 4], 0),
    ],
)
def test_a_condition_costs_what_is_worked_out_by_hand(purls, asked, where, more):
    plan = under(purls, CHEAP, **asked)
    assert plan.status is lw.PlanStatus.optimal
    assert rows(plan) == where
    assert plan.total_ms == plan.bound_ms == lw.plan(purls, lw.Machine(), CHEAP).total_ms + more
    assert lw.verify(purls, plan).verified


@pytest.mark.parametrize(
    "asked, code, place",
    [
        ({"rows_apart": 3, "max_depth": 1}, lw.FindingCode.stops_too_near, (4, 2)),
        ({"max_kinds": 1, "max_depth": 1}, lw.FindingCode.too_many_kinds, None),
        ({"rhythms": [lw.KeptRhythm(1, 1, 2, lw.Rhythm(4, 6))], "max_depth": 4}, lw.FindingCode.off_rhythm, (2, 1)),
    ],
)
def test_what_nothing_keeps_is_told_with_the_place(purls, asked, code, place):
    plan = under(purls, **asked)
    assert plan.status is lw.PlanStatus.infeasible and not plan.stops
    assert plan.findings[0].code is code and plan.findings[0].message and plan.findings[0].suggestion
    if place:
        assert (plan.findings[0].place.row, plan.findings[0].place.column) == place


@pytest.mark.parametrize(
    "ladder, asked, codes",
    [
        (1, {"max_kinds": 1}, ["stops_too_near"]),
        (2, {"max_kinds": 1}, ["too_many_kinds", "stops_too_near"]),
        (1, {"rhythms": [lw.KeptRhythm(3, 1, 1)]}, ["stops_too_near"]),
    ],
)
def test_only_conditions_that_bar_a_panel_are_blamed(ladder, asked, codes):
    """Purls in rows 2 and 4, in reach of one rung: two stops of one kind, two rows apart; of two: 2 and 5, of two kinds."""
    wale = lw.Grid.from_text("kkk\nkkk\nkpk\nkkk\nkpk\nkkk")
    none = lw.plan(wale, lw.Machine(max_ladder=ladder), conditions=lw.Conditions(rows_apart=3, **asked))
    assert [finding.code.name for finding in none.findings] == codes
    for finding in none.findings:
        assert wale.at(finding.place.row, finding.place.column) is lw.Cell.purl
        assert ("only together with" in finding.message) == (len(codes) > 1)


def test_kinds_of_stops_are_counted_in_their_order(purls):
    plan = lw.plan(purls, lw.Machine(), CHEAP)
    assert lw.stop_kinds(plan) == [0, 1]
    plan.stops.append(plan.stops[0])
    assert lw.stop_kinds(plan) == [0, 1, 0]


def test_bad_conditions_are_refused_with_the_field(purls):
    for asked, field in [
        ({"rows_apart": -1}, "options.conditions.rows_apart"),
        ({"rhythms": [lw.KeptRhythm(7, 0, 1)]}, "options.conditions.rhythms[0].row"),
    ]:
        with pytest.raises(lw.Error) as refused:
            under(purls, **asked)
        assert refused.value.code is lw.ErrorCode.bad_argument and refused.value.field == field
    with pytest.raises(TypeError):
        lw.plan(purls, lw.Machine(), conditions={"rows_apart": 3})


@pytest.mark.parametrize("plan_in", [lw.plan_regular, lambda *panel, **asked: lw.plan_two_rhythms(*panel, **asked).plan])
def test_rhythms_keep_conditions_too(purls, plan_in):
    """Purls in rows 2 and 4: at best one stop, after row 4. With row 4 closed it is the one after row 5 or two."""
    assert [stop.row for stop in plan_in(purls, lw.Machine()).stops] == [4]
    kept = plan_in(purls, lw.Machine(), conditions=lw.Conditions(closed_rows=[4]))
    assert kept.status is lw.PlanStatus.optimal and [stop.row for stop in kept.stops] == [5]
    none = plan_in(purls, lw.Machine(), conditions=lw.Conditions(closed_rows=[4, 5, 6]))
    assert none.status is lw.PlanStatus.infeasible and none.findings[0].code is lw.FindingCode.row_closed
    assert none.findings[0].message.startswith("closed_rows: ") and none.findings[0].place.row == 4
    with pytest.raises(lw.Error) as refused:
        plan_in(purls, lw.Machine(), conditions=lw.Conditions(rows_apart=-1))
    assert refused.value.code is lw.ErrorCode.bad_argument and refused.value.field == "options.conditions.rows_apart"


@pytest.mark.parametrize("limit", [1, 2_000_000])
def test_with_few_kinds_what_is_told_as_the_best_is_a_plan(limit):
    grid = lw.Grid(40, 40)
    for row in range(1, 41):
        for column in range(1, 39):
            if (row * row + 3 * row * column + column * column) % 7 < 2:
                grid.set(row, column, lw.Cell.purl)
    told = []
    plan = lw.plan(
        grid, lw.Machine(), conditions=lw.Conditions(max_kinds=12), work_limit=limit, progress=lambda now: told.append(now)
    )
    assert lw.verify(grid, plan).verified and len(set(lw.stop_kinds(plan))) <= 12
    best = [now.best_ms for now in told if now.best_ms >= 0]
    assert best == sorted(best, reverse=True) and best[-1] == plan.total_ms
    assert all(now.bound_ms <= plan.bound_ms for now in told)


@pytest.mark.parametrize("asked", [dict(rhythms=[lw.KeptRhythm(1, 0, 20)]), dict(max_kinds=40)])
@pytest.mark.parametrize("limit", [1, 100_000])
def test_what_binds_all_plans_binds_those_that_keep_conditions(asked, limit):
    """However soon a search is ended: an open rhythm of many trials was once bound by the stops that are forced alone."""
    grid = lw.Grid(60, 40)
    for row in range(1, 61):
        for column in range(1, 39):
            if (row * row + 3 * row * column + column * column) % 7 < 2:
                grid.set(row, column, lw.Cell.purl)
    of_all = lw.plan(grid, lw.Machine(), work_limit=1).bound_ms
    plain = lw.plan(grid, lw.Machine(), work_limit=limit)
    kept = lw.plan(grid, lw.Machine(), work_limit=limit, conditions=lw.Conditions(**asked))
    assert 0 < of_all <= kept.bound_ms <= kept.total_ms and kept.bound_ms >= 0.98 * plain.bound_ms
    front = lw.plan_front(grid, lw.Machine(), work_limit=limit, conditions=lw.Conditions(**asked))
    assert front.points and all(of_all <= point.plan.bound_ms <= point.plan.total_ms for point in front.points)
