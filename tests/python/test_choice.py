"""What to choose from: rhythms, prices of conditions, fronts; why stops are there, and how far costs may move."""

import latchwork as lw
import pytest

CHEAP = lw.Effort(stop=1_000)


@pytest.fixture
def purls():
    """A purl in row 2 and one in row 4, in neighbouring columns: with cheap stops, a stop each."""
    return lw.Grid.from_text("kkkk\nkkkk\nkkpk\nkkkk\nkpkk\nkkkk")


@pytest.fixture
def ropes():
    strips = [lw.stockinette(), lw.rope(2, 2, 4, lw.Lean.right), lw.reverse(1), lw.rope(2, 2, 8, lw.Lean.left)]
    return lw.join_strips("two ropes", 32, [*strips, lw.stockinette()]).grid


def test_two_rhythms_cost_no_more_than_one(ropes):
    two = lw.plan_two_rhythms(ropes, lw.Machine())
    assert two.crossings == lw.Rhythm(2, 2) and two.reforms.every > 0 and two.plan.rhythm is None
    assert lw.verify(ropes, two.plan).verified
    assert lw.plan(ropes, lw.Machine()).total_ms <= two.plan.total_ms <= lw.plan_regular(ropes, lw.Machine()).total_ms


def test_every_condition_has_a_price(purls):
    asked = lw.Conditions(max_kinds=1, closed_rows=[2])
    prices = lw.condition_prices(purls, lw.Machine(), CHEAP, conditions=asked)
    assert [(price.condition, price.price_ms, price.least_price_ms, price.most_price_ms) for price in prices] == [
        (lw.Condition.max_kinds, 8_000, 8_000, 8_000),  # both at once: two knit rungs, a stop saved
        (lw.Condition.closed_rows, 4_500, 4_500, 4_500),  # one knit rung
        (lw.Condition.all, 8_000, 8_000, 8_000),
    ]
    assert all(price.status is lw.PlanStatus.optimal for price in prices)
    assert lw.condition_prices(purls, lw.Machine(), CHEAP) == []


def test_a_front_gives_plans_that_no_other_beats_in_both(purls, ropes):
    front = lw.plan_front(purls, lw.Machine(), CHEAP)
    assert front.fewest_proven and not front.findings
    assert [point.kinds for point in front.points] == [1, 2]
    assert front.points[0].plan.total_ms == front.points[1].plan.total_ms + 8_000
    assert front.points[1].plan == lw.plan(purls, lw.Machine(), CHEAP)
    points = lw.plan_front(ropes, lw.Machine()).points
    assert points[-1].plan.total_ms == lw.plan(ropes, lw.Machine()).total_ms
    for point in points:
        assert len(set(lw.stop_kinds(point.plan))) == point.kinds
        assert point.plan.bound_ms <= point.plan.total_ms and lw.verify(ropes, point.plan).verified


def test_every_stop_says_why_it_is_there(purls, ropes):
    first, second = lw.stop_reasons(purls, lw.Machine(), CHEAP, plan=lw.plan(purls, lw.Machine(), CHEAP))
    assert (first.row, first.cause, first.saves_ms, first.beside_ms) == (2, lw.StopCause.saving, 4_500, 8_000)
    assert (second.row, second.beside_ms) == (4, -1)  # the other stop lies below it
    reasons = lw.stop_reasons(ropes, lw.Machine(), plan=lw.plan(ropes, lw.Machine()))
    assert reasons[0].cause is lw.StopCause.crossing and "2/2" in reasons[0].message
    assert [lw.stop_cause_name(cause) for cause in lw.StopCause] == [cause.name for cause in lw.StopCause]
    with pytest.raises(lw.Error) as refused:
        lw.stop_reasons(purls, lw.Machine(), plan=lw.plan(ropes, lw.Machine()))
    assert refused.value.code is lw.ErrorCode.size_mismatch and refused.value.field == "plan"


def test_a_panel_repeated_upward_has_a_periodic_plan(purls):
    period = lw.plan_period(lw.plan(purls.repeated_up(5), lw.Machine(), CHEAP))
    assert (period.rows, period.stops, period.times) == (6, 2, 5)
    assert lw.plan_period(lw.Plan()) == lw.Period()


def test_the_period_of_a_tall_plan_is_found_and_that_of_one_too_tall_refused():
    most = lw.Grid.max_side
    status = lw.PlanStatus.feasible
    plan = lw.Plan(rows=most, columns=1, status=status, stops=[lw.Stop(row=row, holds=[1 + row % 2]) for row in range(0, most, 1000)])
    assert lw.plan_period(plan) == lw.Period(0, most, 1000, 65, 1)
    plan.status = lw.PlanStatus.infeasible
    assert lw.plan_period(plan) == lw.Period()
    for rows in (most + 1, 2**31 - 1):
        plan.rows = rows
        with pytest.raises(lw.Error) as refused:
            lw.plan_period(plan)
        assert refused.value.code is lw.ErrorCode.too_large and refused.value.field == "rows"


def test_stops_out_of_order_have_no_period():
    status = lw.PlanStatus.feasible
    with pytest.raises(lw.Error) as refused:
        lw.plan_period(lw.Plan(rows=8, columns=1, status=status, stops=[lw.Stop(row=4), lw.Stop(row=2)]))
    assert refused.value.code is lw.ErrorCode.bad_argument
    assert (refused.value.row, refused.value.field) == (2, "stops[1].row")


def test_how_far_each_cost_may_move(purls):
    plan = lw.plan(purls, lw.Machine(), CHEAP)
    tolerances = lw.plan_tolerances(purls, lw.Machine(), CHEAP, plan=plan)
    assert [tolerance.term for tolerance in tolerances] == list(lw.EffortTerm)
    assert tolerances[0] == lw.Tolerance(lw.EffortTerm.stop, 1_000, 0, 9_000, True, True, True)  # a stop against two knit rungs
    with pytest.raises(lw.Error) as refused:
        lw.plan_tolerances(purls, lw.Machine(), plan=plan)
    assert refused.value.code is lw.ErrorCode.bad_argument and refused.value.field == "plan"
    with pytest.raises(lw.Error) as refused:
        lw.plan_tolerances(lw.Grid(3, 3), lw.Machine(), plan=plan)
    assert refused.value.code is lw.ErrorCode.size_mismatch and refused.value.field == "plan"


def test_a_stop_of_a_panel_without_a_plan_has_no_reason(purls):
    wide = lw.Grid(6, 20)
    wide.set(2, 3, lw.Cell.purl)
    both = lw.Conditions(rows_apart=3, max_depth=1)  # each alone leaves a plan
    for grid, machine, conditions in ((wide, lw.Machine(needles=10), None), (purls, lw.Machine(), both)):
        plan = lw.plan(grid, lw.Machine(), CHEAP)
        with pytest.raises(lw.Error) as refused:
            lw.stop_reasons(grid, machine, CHEAP, plan=plan, conditions=conditions)
        assert refused.value.code is lw.ErrorCode.bad_argument and refused.value.field == "plan"


def test_a_plan_that_breaks_conditions_has_no_tolerances_under_them():
    grid = lw.Grid.from_text("kkkkkk\nkkkkkk\nkkkkkk\nkpkkkk\nkkkkkk\nkkkkkk")
    grid.cross(lw.Crossing(row=4, column=2, left=1, right=1))
    near = lw.plan(grid, lw.Machine(), lw.Effort(stop=0))
    assert [stop.row for stop in near.stops] == [3, 4]
    free = lw.Effort(stop=0, drop=0, rung_knit=0)  # later takes as long
    for asked, message in (
        (lw.Conditions(rows_apart=3, forced_exempt=True), "nearer than 3 rows"),
        (lw.Conditions(rhythms=[lw.KeptRhythm(3, 1, 1, lw.Rhythm(3, 6))]), "their rhythm, every 3 rows from row 6"),
    ):
        with pytest.raises(lw.Error) as refused:
            lw.plan_tolerances(grid, lw.Machine(), free, plan=near, conditions=asked)
        assert refused.value.code is lw.ErrorCode.bad_argument and refused.value.field == "plan"
        assert message in str(refused.value)
        least = lw.plan(grid, lw.Machine(), free, conditions=asked)
        assert lw.plan_tolerances(grid, lw.Machine(), free, plan=least, conditions=asked)[0].proven


def test_a_plan_that_is_not_by_the_planners_rules_may_take_less_and_has_no_tolerances():
    # Two neighbouring needles held: the planner holds none with a tuck beside it.
    grid = lw.Grid.from_text("kkkkkk\nkkkkkk\nkkttkk\nkkkkkk\nkkkkkk")
    plan = lw.plan(grid, lw.Machine())
    needles = sorted({reform.needle for stop in plan.stops for reform in stop.reforms})
    held = lw.Plan(**{name: getattr(plan, name) for name in ("rows", "columns", "leftmost", "carriage_starts_right", "columns_on")})
    held.stops = [lw.Stop(row=2, carriage_right=True, holds=needles), lw.Stop(row=3, carriage_right=False, releases=needles)]
    work = lw.hand_work(held)
    held.total_ms, held.status = work.hand_ms + work.carriage_ms, lw.PlanStatus.feasible
    assert lw.verify(grid, held).verified and held.total_ms < plan.bound_ms
    with pytest.raises(lw.Error, match="by the planner's rules can take: it breaks them, or is for another panel"):
        lw.plan_tolerances(grid, lw.Machine(), plan=held)


def test_rows_that_need_not_be_apart_have_no_price(purls):
    assert lw.condition_prices(purls, lw.Machine(), CHEAP, conditions=lw.Conditions(rows_apart=1)) == []


@pytest.mark.parametrize("call", [lw.stop_reasons, lw.plan_tolerances])
def test_stops_that_do_not_rise_have_no_reasons_and_no_tolerances(purls, call):
    for rows, index in (([-5], 0), ([99], 0), ([3, 3], 1)):
        plan = lw.Plan(rows=purls.rows, columns=purls.columns, stops=[lw.Stop(row=row) for row in rows])
        with pytest.raises(lw.Error) as refused:
            call(purls, lw.Machine(), plan=plan)
        assert refused.value.code is lw.ErrorCode.bad_argument
        assert refused.value.field == f"stops[{index}].row" and refused.value.row == rows[index]


# name: the call of many plans on a grid, from a plan for it.
MANY = {
    "prices": lambda grid, plan, **options: lw.condition_prices(
        grid, lw.Machine(), conditions=lw.Conditions(rows_apart=2), **options
    ),
    "front": lambda grid, plan, **options: lw.plan_front(grid, lw.Machine(), **options),
    "reasons": lambda grid, plan, **options: lw.stop_reasons(grid, lw.Machine(), plan=plan, **options),
    "tolerances": lambda grid, plan, **options: lw.plan_tolerances(grid, lw.Machine(), plan=plan, **options),
}


@pytest.mark.parametrize("name", MANY)
@pytest.mark.parametrize("work", [200_000, 1])
def test_calls_of_many_plans_tell_what_stays_true_and_share_one_at_the_end(name, work, ropes):
    plan, told = lw.plan(ropes, lw.Machine()), []
    MANY[name](ropes, plan, progress=told.append, work_limit=work)
    shares, bounds = [each.share for each in told], [each.bound_ms for each in told]
    bests = [each.best_ms for each in told if each.best_ms >= 0]
    assert len(shares) > (3 if work > 1 else 1) and shares == sorted(shares) and 0 <= shares[0] and shares[-1] == 1
    assert bounds == sorted(bounds) and bests == sorted(bests, reverse=True)
    assert all(each.best_ms >= 0 for each in told[-len(bests) :])  # a best that was told is not none again


@pytest.mark.parametrize("name", ["plan", "plan_regular", "plan_two_rhythms", "plan_front"])
def test_that_there_is_no_plan_is_told_with_share_one(name, purls):
    for machine, conditions in ((lw.Machine(needles=3), None), (lw.Machine(), lw.Conditions(closed_rows=list(range(7))))):
        told = []
        getattr(lw, name)(purls, machine, conditions=conditions, progress=told.append)
        assert told and told[-1].share == 1 and told[-1].best_ms == -1


@pytest.mark.parametrize("name", MANY)
def test_what_is_raised_within_a_plan_ends_a_call_of_many(name, ropes):
    calls = []

    def interrupt(progress):
        calls.append(progress)
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        MANY[name](ropes, lw.plan(ropes, lw.Machine()), progress=interrupt)
    assert len(calls) == 1


def test_a_stopped_call_of_many_plans_says_what_it_does_not_know(ropes):
    asked, plan = lw.StopSource(), lw.plan(ropes, lw.Machine())
    asked.request_stop()
    causes = {reason.cause for reason in MANY["reasons"](ropes, plan, stop=asked)}
    assert causes <= {lw.StopCause.crossing, lw.StopCause.unknown}
    for price in MANY["prices"](ropes, plan, stop=asked):  # what is had without a search, of so small a panel
        assert price.total_ms >= plan.total_ms and price.least_price_ms <= price.price_ms <= price.most_price_ms
    large = lw.Grid(1_100, 200)
    large.set(7, 7, lw.Cell.purl)
    unknown = [(price.status, price.total_ms, price.price_ms) for price in MANY["prices"](large, None, stop=asked)]
    assert unknown == [(lw.PlanStatus.feasible, -1, -1)] * 2
    ends = MANY["tolerances"](ropes, plan, progress=lambda progress: False)
    assert not any(end.least_exact or end.most_exact for end in ends[:2])
    rough = lw.plan(ropes, lw.Machine(), work_limit=1)
    if rough.status is lw.PlanStatus.feasible:  # nobody has proven it a least one
        ends = MANY["tolerances"](ropes, rough, stop=asked)
        assert not any(end.proven or end.least_exact or end.most_exact or end.least_ms < end.most_ms for end in ends)


def test_a_search_that_nobody_ends_and_that_comes_to_no_end_says_so():
    # Purls anywhere, one cell in eight: four kinds of stop may serve them, or none.
    ribs = lw.Grid(60, 20)
    drawn = 1
    for row in range(1, 61):
        for column in range(1, 19):
            drawn = (drawn * 1103515245 + 12345) & 0x7FFFFFFF
            if (drawn >> 16) % 8 == 0:
                ribs.set(row, column, lw.Cell.purl)
    for limit, code in ((0, lw.ErrorCode.too_large), (1_000, lw.ErrorCode.cancelled)):
        with pytest.raises(lw.Error) as ended:
            lw.plan(ribs, lw.Machine(), conditions=lw.Conditions(max_kinds=4), work_limit=limit)
        assert ended.value.code is code
        if limit == 0:
            assert ended.value.field == "options.conditions.max_kinds"
    assert not lw.plan_front(ribs, lw.Machine(), conditions=lw.Conditions(max_kinds=4)).fewest_proven


def test_a_choice_is_watched_and_stopped_like_a_plan(ropes):
    shares = []

    def hear(progress):
        shares.append(progress.share)
        return len(shares) < 3

    front = lw.plan_front(ropes, lw.Machine(), progress=hear)
    assert len(shares) >= 3 and shares == sorted(shares)
    assert front.points[-1].plan.status in (lw.PlanStatus.optimal, lw.PlanStatus.feasible)


def test_a_front_stopped_before_it_looked_for_fewer_kinds_proves_none():
    grid = lw.Grid.from_text("kpkp\nkk.p\npk.k")
    whole = lw.plan_front(grid, lw.Machine())
    assert whole.points[0].kinds == 2 and whole.fewest_proven
    stop = lw.StopSource()
    stop.request_stop()
    stopped = lw.plan_front(grid, lw.Machine(), stop=stop)
    assert len(stopped.points) == 1 and not stopped.fewest_proven


def test_what_conditions_or_a_short_search_leave_open_is_not_told_as_a_fact(purls):
    two = lw.plan(purls, lw.Machine(), CHEAP)
    bound = lw.stop_reasons(purls, lw.Machine(), CHEAP, plan=two, conditions=lw.Conditions(max_depth=1))[0]
    assert (bound.cause, bound.beside_ms) == (lw.StopCause.hand_cells, -1)
    assert bound.message.endswith("can be made at no other stop under the conditions")
    spare = lw.stop_reasons(purls, lw.Machine(), plan=two)[0]
    assert (spare.saves_ms, spare.beside_ms) == (-6_000, -1)
    tall = purls.repeated_up(8)
    for reason in lw.stop_reasons(tall, lw.Machine(), plan=lw.plan(tall, lw.Machine()), work_limit=1):
        assert reason.least_saves_ms <= reason.saves_ms
        assert reason.beside_ms == -1 or reason.saves_ms <= reason.beside_ms
