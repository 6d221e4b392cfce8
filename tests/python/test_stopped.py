"""Long calls that are ended: asked to stop at any word they give what their docstrings promise, and a work limit ends
them at the same place, in this process and in another."""

import dataclasses
import gc
import hashlib
import os
import subprocess
import sys

import conftest
import latchwork as lw
import pytest

MACHINE = lw.Machine()


def panel(rows=60, columns=12):
    """Purls of co-prime periods with tucks between: the search is told of more than once."""
    grid = lw.Grid(rows, columns)
    for column in range(1, columns - 1):
        for row in range(1, rows + 1):
            if (row + 2 * column) % (column % 5 + 3) == 0:
                grid.set(row, column, lw.Cell.purl)
    return grid


def under(**asked):
    return lambda grid, _, **options: lw.plan(grid, MACHINE, conditions=lw.Conditions(**asked), **options)


# name: the call on a grid, from a plan for it, and whether it may end in `cancelled`, with nothing to show.
CALLS = {
    "plan": (under(), False),
    "side": (under(carriage_right_only=True, max_depth=9), False),
    "apart": (under(rows_apart=3), True),
    "kinds": (under(max_kinds=60), True),
    "rhythm": (under(rhythms=[lw.KeptRhythm(1, 0, 2)]), True),
    "regular": (lambda grid, _, **options: lw.plan_regular(grid, MACHINE, **options), True),
    "two rhythms": (lambda grid, _, **options: lw.plan_two_rhythms(grid, MACHINE, **options), True),
    "front": (lambda grid, _, **options: lw.plan_front(grid, MACHINE, **options), False),
    "prices": (
        lambda grid, _, **options: lw.condition_prices(
            grid, MACHINE, conditions=lw.Conditions(rows_apart=2, carriage_right_only=True), **options
        ),
        False,
    ),
    "reasons": (lambda grid, plan, **options: lw.stop_reasons(grid, MACHINE, plan=plan, **options), False),
    "tolerances": (lambda grid, plan, **options: lw.plan_tolerances(grid, MACHINE, plan=plan, **options), False),
    "certify": (lambda grid, plan, **options: lw.certify(grid, MACHINE, total_ms=plan.total_ms, **options), False),
}


def look_at(grid, mine, made):
    """Whatever a call gave: what can be checked of it."""
    match made:
        case lw.TwoRhythms():
            look_at(grid, mine, made.plan)
        case lw.Plan():
            assert made.status is not lw.PlanStatus.infeasible and lw.verify(grid, made).verified
            assert made.bound_ms <= made.total_ms >= mine.total_ms
            assert (made.status is lw.PlanStatus.optimal) == (made.bound_ms == made.total_ms)
        case lw.Front():
            for point in made.points:
                look_at(grid, mine, point.plan)
            assert made.points
        case lw.Certificate():
            assert made.bound_ms <= mine.total_ms
            assert lw.check_certificate(grid, MACHINE, certificate=made).holds
        case [lw.ConditionPrice(), *_]:
            for price in made:
                if price.total_ms < 0:  # no plan was found, and none is had without a search
                    assert (price.total_ms, price.price_ms, price.most_price_ms) == (-1, -1, -1)
                else:
                    assert price.total_ms >= mine.total_ms
                    assert price.least_price_ms <= price.price_ms <= price.most_price_ms
        case [lw.StopReason(), *_]:
            assert len(made) == len(mine.stops) and all(reason.message for reason in made)
        case [lw.Tolerance(), *_]:
            assert all(one.least_ms <= one.value_ms <= one.most_ms for one in made)
        case _:
            raise AssertionError(made)


@pytest.fixture(scope="module")
def grid():
    return panel()


@pytest.fixture(scope="module")
def mine(grid):
    plan = lw.plan(grid, MACHINE)
    assert plan.status is lw.PlanStatus.optimal
    return plan


@pytest.mark.parametrize("name", CALLS)
@pytest.mark.parametrize("nth", [0, 1, 2, 3, 8])
@pytest.mark.parametrize("by", ["the callback", "a stop source"])
def test_a_call_asked_to_stop_at_any_word_gives_what_it_promises(name, nth, by, grid, mine):
    call, may_have_none = CALLS[name]
    source, told = lw.StopSource(), []

    def hear(progress):
        told.append(progress)
        if len(told) >= nth and by == "a stop source":
            source.request_stop()
        return len(told) < nth or by != "the callback"

    if nth == 0 and by == "a stop source":
        source.request_stop()
    try:
        look_at(grid, mine, call(grid, mine, stop=source, progress=hear, work_limit=3_000_000))
    except lw.Error as error:
        assert may_have_none and error.code is lw.ErrorCode.cancelled
    assert len(told) <= max(nth, 1) + len(mine.stops) + 24
    assert (by == "a stop source" and (nth == 0 or len(told) >= nth)) == source.stop_requested()


def digests():
    """What each call gives within some counts of work."""
    grid = panel(40, 10)
    mine = lw.plan(grid, MACHINE, work_limit=5_000_000)
    lines = []
    for name, (call, _) in CALLS.items():
        for limit in (1, 3_000, 60_000, 500_000):
            try:
                made = call(grid, mine, work_limit=limit)
                made = repr([dataclasses.asdict(one) for one in (made if isinstance(made, list) else [made])])
            except lw.Error as error:
                made = f"{error.code} {error}"
            lines.append(f"{name} {limit} {hashlib.sha256(made.encode()).hexdigest()}")
    return lines


def test_a_work_limit_ends_a_call_at_the_same_place_here_and_in_another_process():
    here = digests()
    assert here == digests()
    for seed in ("1", "2"):  # nothing goes by addresses or by Python's hashes either
        there = subprocess.run(
            [sys.executable, "-c", "import test_stopped; print(*test_stopped.digests(), sep='\\n')"],
            check=True, capture_output=True, text=True, cwd=conftest.TOP / "tests/python",
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": os.pathsep.join(p for p in sys.path if p)},
        )  # fmt: skip
        assert there.stdout.splitlines() == here


def test_what_a_plan_is_made_of_is_filled_in_without_running_python():
    """Making a large plan's objects is part of the call, and of its time: no function of Python is called for each."""
    grid = panel(60, 40)
    lw.plan(grid, MACHINE, work_limit=1)  # classes and members are looked up once
    called = []
    sys.setprofile(lambda frame, event, _: called.append(frame.f_code.co_name) if event == "call" else None)
    try:
        plan = lw.plan(grid, MACHINE, work_limit=1)
    finally:
        sys.setprofile(None)
    assert sum(len(reform.rungs) for stop in plan.stops for reform in stop.reforms) > 500
    assert len(called) < 10, called
    called.clear()
    sys.setprofile(lambda frame, event, _: called.append(frame.f_code.co_name) if event == "call" else None)
    try:
        reasons = lw.stop_reasons(grid, MACHINE, plan=plan, work_limit=1)  # and read again
    finally:
        sys.setprofile(None)
    assert len(reasons) == len(plan.stops) and len(called) < 10, called
    # Garbage is looked for again once they are made, where it was before, and not where it was not.
    assert gc.isenabled()
    gc.disable()
    try:
        lw.plan(grid, MACHINE, work_limit=1)
        assert not gc.isenabled()
    finally:
        gc.enable()
    # They are as if made in Python: equal, with slots, and a frozen one stays so.
    stop = plan.stops[0]
    assert stop == lw.Stop(*(getattr(stop, field.name) for field in dataclasses.fields(stop)))
    assert type(plan.stops[0].reforms[0].rungs[0]) is lw.Cell and plan.stops[0].reforms[0].rungs[0] in list(lw.Cell)
    with pytest.raises(dataclasses.FrozenInstanceError):
        reasons[0].row = 3
