"""Plans: made, shown, edited and spoiled; long calls that can be watched, stopped and interrupted."""

import concurrent.futures
import copy
import dataclasses
import functools
import html
import html.parser
import pickle
import random
import signal
import subprocess
import sys
import threading
import time

import latchwork as lw
import numpy
import pytest


def hard_grid(rows=100, columns=40):
    """Half knit, half purl, at random: the planner has to search, and tells how far it is."""
    draw = random.Random(1).random
    cells = bytes(draw() < 0.5 for _ in range(rows * columns))
    return lw.Grid.from_cells(memoryview(cells).cast("B", (rows, columns)))


@pytest.fixture
def plan(cable):
    return lw.plan(cable, lw.Machine())


def long_grid():
    """Enough that a call takes a good part of a second."""
    return lw.build_panel(
        "long",
        192,
        edge=lw.stockinette(1),
        left=[lw.reverse(2), lw.moss(4), lw.garter(2, 2, 3), lw.basket(2, 3), lw.tuck_rib(2), lw.stockinette(2)],
        centre=lw.basket(3, 4),
    ).grid


def test_a_plan_tells_what_to_do_stop_by_stop(cable, plan):
    assert plan.status is lw.PlanStatus.optimal and plan.total_ms == plan.bound_ms > 0
    assert (plan.rows, plan.columns, plan.leftmost) == (6, 8, -4)
    assert plan.columns_on == list(range(8)) and plan.rhythm is None and plan.findings == []
    crossing_stop = next(stop for stop in plan.stops if stop.crossings)
    assert crossing_stop.row == 2
    assert crossing_stop.carriage_right  # after an even row, from the right
    (step,) = crossing_stop.crossings
    assert step.crossing == cable.crossings[0]
    assert {reform.column for stop in plan.stops for reform in stop.reforms} == {1, 6}
    work = lw.hand_work(plan)
    assert (work.stops, work.crossings, work.stitches_crossed) == (len(plan.stops), 1, 4)
    assert work.rungs_purl == 12 and work.hand_ms + work.carriage_ms == plan.total_ms
    assert work.carriage_ms == 6 * lw.Effort().row


def test_in_a_right_cross_the_group_on_the_operators_right_goes_back_first(plan):
    # S. Guagliumi, machine cable notes, susanguagliumi.com/category/cables [CB-21]: the group returned to the needles
    # first shows on the knit side. The operator sees the chart mirrored, so the RS left group, in front in a right cross,
    # stands on the operator's right.
    (step,) = [step for stop in plan.stops for step in stop.crossings]
    assert [back.group for back in step.returns] == [lw.GroupName.left, lw.GroupName.right]
    first, second = step.returns
    assert (first.from_needle, first.to_needle) == (1, -2)
    assert (second.from_needle, second.to_needle) == (-2, 1)


def test_efforts_price_the_plan_and_none_is_the_default(cable):
    assert lw.plan(cable, lw.Machine(), None) == lw.plan(cable, lw.Machine(), lw.Effort())
    free = lw.Effort(*[0] * 12)
    assert lw.plan(cable, lw.Machine(), effort=free).total_ms == 0
    assert lw.hand_work(lw.plan(cable, lw.Machine()), effort=free).hand_ms == 0
    with pytest.raises(lw.Error) as caught:
        lw.plan(cable, lw.Machine(), lw.Effort(rung_purl=-1))
    assert caught.value.code is lw.ErrorCode.bad_argument and "rung_purl" in caught.value.field


def test_a_regular_plan_has_a_rhythm_and_costs_no_less(cable, plan):
    regular = lw.plan_regular(cable, lw.Machine())
    assert regular.rhythm is not None and regular.total_ms >= plan.total_ms
    rows = {stop.row for stop in regular.stops}
    assert all((row - regular.rhythm.first) % regular.rhythm.every == 0 for row in rows)
    assert lw.verify(cable, regular).verified


def test_what_cannot_be_made_is_an_infeasible_plan_with_its_findings():
    grid = lw.Grid(20, 4)
    for row in range(1, 21):
        grid.set(row, 1, lw.Cell.tuck)  # never closed
    plan = lw.plan(grid, lw.Machine())
    assert plan.status is lw.PlanStatus.infeasible and plan.findings and not plan.stops
    assert all(isinstance(finding, lw.Finding) for finding in plan.findings)
    assert all(finding.message and html.escape(finding.message) in plan._repr_html_() for finding in plan.findings)
    with pytest.raises(lw.Error, match="infeasible") as refused:
        lw.work_times(plan)
    assert refused.value.field == "plan" and plan.findings[0].message in str(refused.value)
    assert pickle.loads(pickle.dumps(plan)) == plan


def test_a_plan_is_shown_as_a_table_of_stops(plan):
    assert repr(plan).startswith("<latchwork.Plan optimal, 8 stitches x 6 rows") and "\n" not in repr(plan)

    class Table(html.parser.HTMLParser):
        def __init__(self):
            super().__init__()
            self.rows, self.caption, self.inside = 0, "", []

        def handle_starttag(self, tag, attrs):
            self.inside.append(tag)
            self.rows += tag == "tr"

        def handle_endtag(self, tag):
            assert self.inside.pop() == tag

        def handle_data(self, data):
            if "caption" in self.inside:
                self.caption += data

    table = Table()
    table.feed(plan._repr_html_())
    assert table.inside == [] and table.rows == 1 + len(plan.stops)
    assert "operator's view" in table.caption
    plan.findings = [lw.Finding(message="<b>&</b>")]
    assert "&lt;b&gt;&amp;&lt;/b&gt;" in plan._repr_html_() and "<b>" not in plan._repr_html_()
    plan.stops = plan.stops * 100
    assert " more row" in plan._repr_html_()
    plan.stops[0].reforms = [lw.Reform(needle=0)]  # wrong, and shown all the same
    assert "(none)" in plan._repr_html_()
    assert "put back" in plan._repr_html_() and "nothing put back" not in plan._repr_html_()
    plan.stops[0].crossings = [lw.CrossingStep()]
    assert "1/1 RC (nothing put back)" in plan._repr_html_()


def test_a_plans_table_has_a_crossings_groups_as_the_operator_sees_them():
    # Common practice, no source: of a right cross the right side's left group is put back first, and lies in front; from
    # behind, on the bed, it is the group at the right. Columns 3 to 6 of ten are R2 to L2.
    machine = lw.Machine.generic(lw.MachineClass.standard)
    panel = lw.join_strips("rope", 8, [lw.stockinette(3), lw.rope(2, 2, 4, lw.Lean.right), lw.stockinette(3)])
    plan = lw.plan(panel.grid, machine)
    assert "2/2 RC (put back right 2 from R1 on L2, left 2 from L2 on R1)" in plan._repr_html_()
    words = " ".join(lw.instructions(panel, plan, machine).split())
    assert "put back first the right 2 on the left 2 needles, then the left 2 on the right 2 needles" in words


def test_editing_a_plan_in_place_changes_it_and_no_copy_of_it(plan):
    shallow, deep, pickled = copy.copy(plan), copy.deepcopy(plan), pickle.loads(pickle.dumps(plan))
    assert shallow == deep == pickled == plan
    stop = next(stop for stop in plan.stops if stop.reforms)
    stop.reforms[0].rungs[0] = lw.Cell.tuck
    assert shallow == plan and deep != plan and deep == pickled
    assert lw.hand_work(plan).rungs_tuck == 1 and lw.hand_work(deep).rungs_tuck == 0


def spoil_order(plan):
    for stop in plan.stops:
        for step in stop.crossings:
            step.returns.reverse()


def spoil_crossing(plan):
    for stop in plan.stops:
        stop.crossings.clear()


def spoil_rung(plan):
    next(stop for stop in plan.stops if stop.reforms).reforms[0].rungs[0] = lw.Cell.knit


def spoil_needle(plan):
    reform = next(stop for stop in plan.stops if stop.reforms).reforms[0]
    reform.needle, reform.column = -4, 7


def spoil_depth(plan):
    reform = next(stop for stop in plan.stops if stop.reforms).reforms[0]
    reform.from_row += 1
    del reform.rungs[0]


@pytest.mark.parametrize("spoil", [spoil_order, spoil_crossing, spoil_rung, spoil_needle, spoil_depth])
def test_a_spoiled_plan_is_found_different_with_the_place(cable, plan, spoil):
    whole = lw.verify(cable, plan)
    assert whole.verified and whole.message == "verified" and whole.difference == lw.Place()
    spoil(plan)
    spoiled = lw.verify(cable, plan)
    assert not spoiled.verified and spoiled.message != "verified"
    assert spoiled.difference.row in range(1, 7) and spoiled.difference.column in range(8)


def test_a_move_that_cannot_be_made_hides_no_difference(cable, plan):
    stop = next(stop for stop in plan.stops if stop.reforms)
    reform = stop.reforms[0]
    reform.from_row += 1  # its rungs come a row higher, and the topmost does not hang there
    spoiled = lw.verify(cable, plan)
    row, column = reform.from_row, spoiled.difference.column
    assert not spoiled.verified and spoiled.difference.row == row
    assert (spoiled.expected, spoiled.found) == (cable.at(row, column).name, "knit")
    assert spoiled.wale == lw.Wales(cable).at(row, column)
    assert spoiled.fault.place.row == stop.row and f"no rung of row {stop.row + 1}" in spoiled.fault.message
    assert lw.moves(plan)[spoiled.fault.move].row == stop.row + 1
    assert spoiled.message.endswith("left undone, for hands cannot do it: " + spoiled.fault.message)


def test_a_plan_for_another_size_is_refused(plan):
    with pytest.raises(lw.Error) as caught:
        lw.verify(lw.Grid(5, 8), plan)
    assert caught.value.code is lw.ErrorCode.size_mismatch


# Long calls.

# name: what makes the call from a grid. What the call needs is made before it, so that options and watchers meet that call only.
CALLS = {
    "plan": lambda grid: functools.partial(lw.plan, grid, lw.Machine()),
    "plan_regular": lambda grid: functools.partial(lw.plan_regular, grid, lw.Machine()),
    "verify": lambda grid: functools.partial(lw.verify, grid, lw.plan_regular(grid, lw.Machine())),
    "simulate": lambda grid: functools.partial(
        lw.simulate,
        lw.Bed(lw.leftmost_needle(lw.Machine(), grid.columns), grid.columns),
        lw.moves(lw.plan_regular(grid, lw.Machine())),
    ),
    "check_certificate": lambda grid: functools.partial(
        lw.check_certificate, grid, lw.Machine(), certificate=lw.certify(grid, lw.Machine(), total_ms=0)
    ),
}


@pytest.mark.parametrize("name", CALLS)
def test_progress_is_told_on_the_calling_thread_and_never_falls(name):
    told = []

    def watch(progress):
        assert threading.current_thread() is threading.main_thread()
        told.append(progress)

    CALLS[name](long_grid())(progress=watch)
    assert told and all(isinstance(progress, lw.Progress) for progress in told)
    shares = [progress.share for progress in told]
    assert shares == sorted(shares) and 0 <= shares[0] and shares[-1] == 1


@pytest.mark.parametrize("name", CALLS)
def test_what_the_callback_raises_ends_the_call_and_reaches_the_caller(name):
    class Enough(Exception):
        pass

    def watch(progress):
        raise Enough(progress.share)

    call = CALLS[name](long_grid())
    with pytest.raises(Enough):
        call(progress=watch)


def test_a_stop_source_is_asked_once_and_stays_asked():
    source = lw.StopSource()
    assert not source.stop_requested() and repr(source) == "<latchwork.StopSource not asked>"
    assert source.request_stop() and not source.request_stop() and source.stop_requested()
    assert repr(source) == "<latchwork.StopSource asked to stop>"


def stopped(name, grid, **options):
    """What a stopped call gives back, or the code of what it raises."""
    try:
        return CALLS[name](grid)(**options)
    except lw.Error as error:
        return error.code


def test_a_call_that_was_asked_before_it_began_stops_at_once():
    asked = lw.StopSource()
    asked.request_stop()
    grid = hard_grid()
    plan = stopped("plan", grid, stop=asked)
    assert plan.status is lw.PlanStatus.feasible and lw.verify(grid, plan).verified
    assert plan.bound_ms <= lw.plan(grid, lw.Machine()).total_ms <= plan.total_ms
    regular = stopped("plan_regular", long_grid(), stop=asked)
    assert regular.rhythm is not None and lw.verify(long_grid(), regular).verified
    for name in ("verify", "simulate", "check_certificate"):  # these have nothing to show yet
        assert stopped(name, long_grid(), stop=asked) is lw.ErrorCode.cancelled


def test_false_from_the_callback_stops_its_own_call_and_no_other():
    fresh = lw.StopSource()
    grid = hard_grid()
    plan = stopped("plan", grid, stop=fresh, progress=lambda progress: False)
    assert plan.status is lw.PlanStatus.feasible and lw.verify(grid, plan).verified
    regular = stopped("plan_regular", long_grid(), stop=fresh, progress=lambda progress: progress.best_ms < 0)
    assert regular.status is lw.PlanStatus.feasible and regular.rhythm and lw.verify(long_grid(), regular).verified
    for name in ("verify", "simulate", "check_certificate"):
        assert stopped(name, long_grid(), stop=fresh, progress=lambda progress: False) is lw.ErrorCode.cancelled
        assert stopped(name, long_grid(), progress=lambda progress: numpy.float64(0) > 1) is lw.ErrorCode.cancelled
    assert not fresh.stop_requested()
    assert stopped("plan", grid, progress=lambda progress: None).status is lw.PlanStatus.optimal  # None goes on


def test_a_stop_source_stops_a_call_from_another_thread():
    grid = hard_grid(400, 60)
    source = lw.StopSource()
    timer = threading.Timer(0.02, source.request_stop)
    timer.start()
    plan = lw.plan(grid, lw.Machine(), stop=source)
    timer.join()
    assert plan.status is lw.PlanStatus.feasible and lw.verify(grid, plan).verified


def test_a_work_limit_is_kept_and_refused_below_none():
    assert lw.plan(hard_grid(), lw.Machine(), work_limit=1).status is lw.PlanStatus.feasible
    with pytest.raises(lw.Error) as caught:
        lw.plan(lw.Grid(2, 2), lw.Machine(), work_limit=-1)
    assert caught.value.code is lw.ErrorCode.bad_argument


@pytest.mark.parametrize("limit", ["time_limit_ms", "memory_limit"])
def test_limits_of_time_and_memory_leave_a_plan_with_its_bound(limit):
    grid = hard_grid()
    best = lw.plan(grid, lw.Machine())
    cut = lw.plan(grid, lw.Machine(), **{limit: 1})
    assert cut.bound_ms <= best.total_ms <= cut.total_ms and lw.verify(grid, cut).verified
    with pytest.raises(lw.Error) as caught:
        lw.plan(grid, lw.Machine(), **{limit: -1})
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, f"options.{limit}")


def test_a_limit_past_the_end_of_the_clock_is_none():
    grid = hard_grid()
    best = lw.plan(grid, lw.Machine())
    for limit in (9_300_000_000_000, 2**63 - 1):
        assert lw.plan(grid, lw.Machine(), time_limit_ms=limit) == best


DEEP = """
import resource, sys
import latchwork as lw
rows, wales = int(sys.argv[1]), int(sys.argv[2])
cells = bytearray(rows * (wales + 2))
for wale in range(wales):  # each begins a row above the last, so that none is like another
    cells[wale * (wales + 3) + 1 :: wales + 2] = bytes([1]) * len(cells[wale * (wales + 3) + 1 :: wales + 2])
grid = lw.Grid.from_cells(memoryview(bytes(cells)).cast("B", (rows, wales + 2)))
lw.plan(lw.Grid(2, 2), lw.Machine())
before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
lw.plan(grid, lw.Machine(max_ladder=rows), time_limit_ms=300, memory_limit=1_000_000)
print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before)
"""


@pytest.mark.parametrize(("rows", "wales"), [(16_000, 1), (3_000, 10)])
def test_ladders_as_deep_as_the_panel_take_no_more_memory_than_is_said(rows, wales):
    """In a process of its own, so that nothing held before hides it. A number for each row and each hand cell open
    there would come to a gibibyte in the first case, 360 MB in the second."""
    child = subprocess.run([sys.executable, "-c", DEEP, str(rows), str(wales)], capture_output=True, text=True, check=True)
    said = 1_000_000 + 400 * rows * wales
    assert 1024 * int(child.stdout) < said + 4_000_000  # and what the allocator keeps beside it


MANY_KINDS = """
import random, resource, sys
import latchwork as lw
rows, columns, limit = int(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3])
any_of = random.Random(7)
grid = lw.Grid(rows, columns)
for row in range(2, rows):
    for column in range(1, columns - 1):
        if any_of.random() < 0.12:
            grid.set(row, column, lw.Cell.purl)
lw.plan(lw.Grid(2, 2), lw.Machine(), conditions=lw.Conditions(max_kinds=1))
before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
plan = lw.plan(grid, lw.Machine(), conditions=lw.Conditions(max_kinds=8), memory_limit=limit, work_limit=100_000_000)
assert lw.verify(grid, plan).verified and plan.bound_ms <= plan.total_ms
assert len(set(lw.stop_kinds(plan))) <= 8
print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before)
"""


@pytest.mark.parametrize("limit", [2_000_000, 20_000_000])
def test_kinds_of_stop_that_are_thought_of_take_no_more_memory_than_is_said(limit):
    """Nearly every stop that the search thinks of is a kind of its own. Kept for as long as it searches, 100 million
    states of it, they would take 150 MB whatever the limit."""
    rows, columns = 80, 20
    words = [str(rows), str(columns), str(limit)]
    child = subprocess.run([sys.executable, "-c", MANY_KINDS, *words], capture_output=True, text=True, check=True)
    said = limit + 400 * rows * columns
    assert 1024 * int(child.stdout) < said + 12_000_000  # and what the allocator keeps beside it


def test_the_deepest_ladder_of_the_tallest_panel_is_planned():
    rows = lw.Grid.max_side
    grid = lw.Grid.from_cells(memoryview(bytes([0, 1, 0]) * rows).cast("B", (rows, 3)))
    plan = lw.plan(grid, lw.Machine(max_ladder=rows), time_limit_ms=1)
    assert lw.hand_work(plan).rungs_purl == rows
    assert (plan.status is lw.PlanStatus.optimal) == (plan.bound_ms == plan.total_ms)


@pytest.fixture
def control_c():
    """Heard as Python hears it by default: a job that a shell put in the background is started with it ignored."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)


@pytest.mark.usefixtures("control_c")
@pytest.mark.parametrize("name", CALLS)
def test_control_c_ends_a_long_call(name):
    fired = []

    def once(progress):
        if not fired:
            fired.append(progress)
            signal.raise_signal(signal.SIGINT)

    call = CALLS[name](long_grid())
    with pytest.raises(KeyboardInterrupt):
        call(progress=once)
        time.sleep(1)  # pragma: no cover
    assert len(fired) == 1


def test_control_c_is_heard_without_a_callback():
    grid = hard_grid(1000, 60)  # many times as long as is waited for
    heard = []
    before = signal.signal(signal.SIGALRM, lambda *_: heard.append(time.monotonic()) or (_ for _ in ()).throw(OSError))
    began = time.monotonic()
    try:
        signal.setitimer(signal.ITIMER_REAL, 0.2)
        with pytest.raises(OSError):
            lw.plan(grid, lw.Machine(), time_limit_ms=30_000)
        ended = time.monotonic()
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)
    assert len(heard) == 1
    assert heard[0] - began < 5 and ended - began < 5  # a signal that is heard only after the call is heard after the limit


@pytest.mark.parametrize("wrong", [dict(progress=3), dict(stop=3), dict(work_limit="many"), dict(other=1)])
def test_wrong_options_are_refused(wrong):
    with pytest.raises(TypeError):
        lw.plan(lw.Grid(2, 2), lw.Machine(), **wrong)


def test_a_plan_is_split_into_sessions_with_rests():
    plan = lw.Plan(rows=45, columns=4, leftmost=-2, status=lw.PlanStatus.feasible)
    plan.stops = [lw.Stop(row=row) for row in (10, 20, 30, 40)]
    effort = lw.Effort(stop=20_000, row=1_000)
    sessions = lw.sessions(plan, effort, session_ms=60_000, rest_ms=0)
    assert [session.to_row for session in sessions] == [20, 30, 45]
    assert sessions[0] == lw.Session(0, 20, True, True, 60_000, 40_000)
    assert lw.rests(plan, effort, session_ms=600_000, rest_ms=60_000) == [lw.Rest(0, 30, 60_000)]
    times = lw.work_times(plan, effort, pieces=2)
    assert times == lw.WorkTimes(stops_ms=160_000, carriage_ms=90_000, total_ms=250_000)
    for call, field in (
        (lambda: lw.sessions(plan, session_ms=1), "session_ms"),
        (lambda: lw.rests(plan, from_row=46), "from_row"),
        (lambda: lw.work_times(plan, pieces=0), "pieces"),
    ):
        with pytest.raises(lw.Error) as caught:
            call()
        assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, field)


def test_stops_of_a_plan_are_made_when_they_are_asked_for_and_are_the_plans_own():
    machine = lw.Machine()
    grid = lw.join_strips("p", 24, [lw.reverse(2), lw.rope(2, 2, 6, lw.Lean.right), lw.moss(2)]).grid
    fresh = lambda: lw.plan(grid, machine)  # noqa: E731: of a plan whose stops nobody has asked for
    asked = fresh()
    stops = asked.stops
    assert stops and asked.stops is stops  # one list, made once
    stops[0].row += 1
    assert asked.stops[0].row == stops[0].row  # which may be edited
    assert fresh() == fresh() and fresh() != asked
    assert copy.copy(fresh()) == copy.deepcopy(fresh()) == pickle.loads(pickle.dumps(fresh())) == fresh()
    assert dataclasses.replace(fresh(), rows=5).stops == fresh().stops
    assert dataclasses.asdict(fresh())["stops"] == [dataclasses.asdict(stop) for stop in fresh().stops]
    assert lw.verify(grid, fresh()).verified and lw.write(fresh()) == lw.write(lw.read_plan(lw.write(fresh())))
    assert all(point.plan.stops for point in lw.plan_front(grid, machine).points)
    other = fresh()
    other.stops = []
    assert other.stops == []
    del asked.stops
    with pytest.raises(AttributeError):
        asked.stops  # noqa: B018
    with pytest.raises(AttributeError, match="stop_list"):
        other.stop_list  # noqa: B018


def test_threads_that_ask_for_the_stops_of_one_plan_have_one_list():
    grid = lw.join_strips("p", 200, 10 * [lw.reverse(2), lw.moss(2)]).grid
    for _ in range(5):
        plan = lw.plan(grid, lw.Machine())
        with concurrent.futures.ThreadPoolExecutor(8) as pool:
            lists = list(pool.map(lambda _: plan.stops, range(32)))
        assert all(each is lists[0] for each in lists)


def test_more_kinds_of_wale_than_are_planned_at_once_are_refused_at_the_first_too_many():
    # Every other cell is not knitted, so that each is a wale, and those of each row are a kind.
    rows = 1 << 13
    grid = lw.Grid(rows, 8)
    for row in range(1, rows + 1):
        for column in range(8):
            grid.set(row, column, lw.Cell.none if (row + column) % 2 == 0 else lw.Cell.purl)
    with pytest.raises(lw.Error) as refused:
        lw.plan(grid, lw.Machine(cast_on_loops=True))
    assert refused.value.code is lw.ErrorCode.too_large
    assert (refused.value.field, refused.value.row) == ("grid", (1 << 25) // (rows + 1) + 1)
