"""Certificates: made, checked by the library and by a second checker of our own that imports nothing of it, and spoiled."""

import copy
import dataclasses
import json
import random
import subprocess
import sys
import threading

import certificate_checker
import conftest
import latchwork as lw
import pytest
from hypothesis import given


def refused_by_both(grid, machine, effort, certificate):
    """Whether the two checkers refuse it; they must agree."""
    mine = lw.check_certificate(grid, machine, effort, certificate=certificate)
    try:
        bound = certificate_checker.check(
            lw.write(grid), lw.write(certificate), dataclasses.asdict(machine), dataclasses.asdict(effort)
        )
        assert mine.holds, f"only the library refuses it: {mine.message}"
        assert mine.bound_ms == bound == certificate.bound_ms
        assert (mine.message, mine.place) == ("holds", lw.Place())
        return False
    except certificate_checker.Refused as refused:
        assert not mine.holds, f"only the second checker refuses it: {refused}"
        assert mine.message and mine.bound_ms == 0
        return True


def random_panel(seed):
    """Purl ribs of different periods, stacks of tucks, crossings: small, and dear stops, so that prices leave gaps."""
    dice = random.Random(seed)
    rows, columns = dice.randint(8, 26), dice.randint(3, 8)
    grid = lw.Grid(rows, columns)
    for column in range(columns):
        period, shift = dice.randint(2, 7), dice.randint(0, 6)
        for row in range(1, rows + 1):
            if (row + shift) % period == 0:
                grid.set(row, column, lw.Cell.purl)
    for _ in range(dice.randint(0, 3)):
        column, row, height = dice.randrange(columns), dice.randint(1, rows - 4), dice.randint(1, 3)
        for r in range(row, row + height):
            grid.set(r, column, lw.Cell.tuck)
        grid.set(row + height, column, dice.choice([lw.Cell.knit, lw.Cell.purl]))
    for _ in range(dice.randint(0, 2)):
        try:
            grid.cross(lw.Crossing(row=dice.randint(1, rows - 1), column=dice.randrange(columns)))
        except lw.Error:
            pass
    machine = lw.Machine(max_ladder=dice.choice([5, 8, 12]))
    effort = lw.Effort(stop=dice.choice([15_000, 40_000, 90_000]), hold=dice.choice([3_000, 9_000]))
    return grid, machine, effort


def test_both_checkers_follow_a_stretch_over_stacks_that_cannot_be_held():
    # Made up by the generator of the tests (tuck stacks, seed 51, 36 rows): slips, and tucks beside tucks.
    rows = (
        "kpkkkkkkkkkkkkk kskkkksktkkkpkk ksktkkkktkkkskk kkkkkksktkptkkk kkkkkkkktkttktk kkktkkskkkttptk "
        "kkkkkkkkkktkskk kkkkskskkkpkkkk kkktskkkkstkkkk kpkksksktktkktk kskkkkkktktkptk ksktkksktkpkskk "
        "kkkkkkkktkttkkk kkkkkkskkkttkkk kkktkkkkkkttptk kkkkkkskkkpkstk kkkkskkkkstkkkk kkktsksktktkkkk "
        "kpkkskkktktkpkk kskkkksktkpkstk ksktkkkktktkktk kkkkkkskkktkkkk kkkkkkkkkkttpkk kkktkkskkkptskk "
        "kkkkkkkkksttkkk kkkksksktktkktk kkktskkktktkptk kpkksksktkpkskk kskkkkkktktkkkk ksktkkskkktkkkk "
        "kkkkkkkkkktkptk kkkkkkskkkptstk kkktkkkkksttkkk kkkkkkskkkttkkk kkkkkkkkkktkpkk kkktkkskkkkkskk "
    )
    grid, machine, effort = lw.Grid.from_text("\n".join(rows.split())), lw.Machine(), lw.Effort()
    plan = lw.plan(grid, machine, effort)
    certificate = lw.certify(grid, machine, effort, total_ms=plan.total_ms)
    assert plan.status is lw.PlanStatus.optimal and certificate.stretches
    assert not refused_by_both(grid, machine, effort, certificate)
    certificate.stretches[0].gain += 1
    assert refused_by_both(grid, machine, effort, certificate)


def branched():
    """A panel whose certificate needs branches, with it."""
    for seed in range(1, 500):
        grid, machine, effort = random_panel(seed)
        plan = lw.plan(grid, machine, effort)
        if plan.status == lw.PlanStatus.optimal:
            certificate = lw.certify(grid, machine, effort, total_ms=plan.total_ms)
            if {branch.end for branch in certificate.branches} == set(lw.BranchEnd):
                return grid, machine, effort, certificate
    raise AssertionError("no panel needs branches of every kind")


def test_both_checkers_take_the_certificates_of_many_panels():
    with_branches = 0
    for seed in range(1, 301):
        grid, machine, effort = random_panel(seed)
        plan = lw.plan(grid, machine, effort)
        if plan.status != lw.PlanStatus.optimal:
            continue
        certificate = lw.certify(grid, machine, effort, total_ms=plan.total_ms)
        assert certificate.bound_ms == plan.total_ms
        assert not refused_by_both(grid, machine, effort, certificate), seed
        with_branches += bool(certificate.branches)
        claim = dataclasses.replace(certificate, bound_ms=certificate.bound_ms + 1)
        assert refused_by_both(grid, machine, effort, claim), seed
    assert with_branches >= 5


@given(conftest.grids())
def test_both_checkers_agree_on_small_charts(grid):
    machine = lw.Machine()
    plan = lw.plan(grid, machine)
    certificate = lw.certify(grid, machine, total_ms=plan.total_ms)
    assert certificate.bound_ms == plan.total_ms
    assert not refused_by_both(grid, machine, lw.Effort(), certificate)


# Each way of spoiling a certificate that needs branches. Where prices are changed, the sums are made anew.
def dearer_stop(c):
    c.classes[0].prices[0].price += 10**9


def other_least(c):
    c.classes[0].least += 1


def lower_least(c):
    c.classes[0].least -= 1


def lost_wale(c):
    c.classes[0].wales.pop()


def wale_twice(c):
    c.classes[1].wales = sorted({*c.classes[1].wales, c.classes[0].wales[0]})


def strange_wale(c):
    c.classes[0].wales.append(999)


def lost_class(c):
    c.classes.pop()


def negative_price(c):
    c.classes[0].prices[0].price = -5


def price_off_the_panel(c):
    c.classes[0].prices[-1].row = c.rows + 1


def prices_out_of_order(c):
    c.classes[0].prices.reverse()


def unit_of_none(c):
    c.unit = 0


def unit_too_fine(c):
    c.unit = c.rows + 3


def forced_stop_invented(c):
    c.forced = sorted({*c.forced, c.rows})


def branch_lost(c):
    c.branches.pop(len(c.branches) // 2)


def last_branch_lost(c):
    c.branches.pop()


def branch_added(c):
    c.branches.append(lw.Branch(c.rows, len(c.branches) - 1, False, lw.BranchEnd.bound))


def cut_without_cause(c):
    next(b for b in c.branches if b.end == lw.BranchEnd.kept).end = lw.BranchEnd.bound


def dominated_by_itself(c):
    at = next(i for i, b in enumerate(c.branches) if b.end == lw.BranchEnd.dominated)
    c.branches[at].by = at


def dominated_by_a_cut_one(c):
    at = next(i for i, b in enumerate(c.branches) if b.end == lw.BranchEnd.dominated)
    c.branches[at].by = next(i for i, b in enumerate(c.branches) if b.end == lw.BranchEnd.bound)


def kept_to_the_top(c):
    c.branches[-1].end = lw.BranchEnd.kept


def stop_turned_round(c):
    c.branches[-1].stop = not c.branches[-1].stop


def from_elsewhere(c):
    c.branches[-1].below -= 1


def bound_names_another(c):
    next(b for b in c.branches if b.end == lw.BranchEnd.bound).by = 0


def bound_raised(c):
    c.bound_ms += 1


def bound_below_zero(c):
    c.bound_ms = -1


SPOILINGS = [
    dearer_stop, other_least, lower_least, lost_wale, wale_twice, strange_wale, lost_class, negative_price,
    price_off_the_panel, prices_out_of_order, unit_of_none, unit_too_fine, forced_stop_invented, branch_lost,
    last_branch_lost, branch_added, cut_without_cause, dominated_by_itself, dominated_by_a_cut_one, kept_to_the_top,
    stop_turned_round, from_elsewhere, bound_names_another, bound_raised, bound_below_zero,
]  # fmt: skip


@pytest.fixture(scope="module")
def sound():
    grid, machine, effort, certificate = branched()
    assert not refused_by_both(grid, machine, effort, certificate)
    return grid, machine, effort, certificate


@pytest.mark.parametrize("spoil", SPOILINGS, ids=lambda spoil: spoil.__name__)
def test_a_spoiled_certificate_is_refused_by_both_checkers(sound, spoil):
    grid, machine, effort, certificate = sound
    spoiled = copy.deepcopy(certificate)
    spoil(spoiled)
    assert spoiled != certificate
    assert refused_by_both(grid, machine, effort, spoiled)


def test_both_checkers_agree_on_a_thousand_random_spoilings(sound):
    grid, machine, effort, certificate = sound
    dice, refused = random.Random(7), 0
    text = json.loads(lw.write(certificate))

    def numbers(value):
        for key, member in value.items() if isinstance(value, dict) else enumerate(value):
            if isinstance(member, (dict, list)):
                yield from numbers(member)
            elif (type(member) is int and key != "version") or key == "end":
                yield value, key

    for _ in range(1000):
        spoiled = copy.deepcopy(text)
        holder, key = dice.choice(list(numbers(spoiled)))
        if key in ("rows", "columns"):
            continue
        if key == "end":
            holder[key] = dice.choice([end for end in ("kept", "bound", "dominated") if end != holder[key]])
            kept = [at for at, b in enumerate(spoiled["branches"]) if b["row"] == holder["row"] and b["end"] == "kept"]
            holder["by"] = dice.choice(kept) if kept and holder[key] == "dominated" else -1
        else:
            holder[key] += dice.choice([-1, 1, -7, 7, 1000])
        refused += refused_by_both(grid, machine, effort, lw.read_certificate(json.dumps(spoiled)))
    assert refused > 800  # a price may be lowered where nobody's cheapest way goes, and a bound too


def test_both_checkers_agree_where_a_wale_can_no_longer_be_made():
    """Short ladders: rows passed without a stop leave wales that are stuck, whatever a branch says to have ended it."""
    dice, looked_at = random.Random(5), 0
    for seed in range(1, 121):
        grid, _, effort = random_panel(seed)
        machine = lw.Machine(max_ladder=dice.randint(2, 4))
        plan = lw.plan(grid, machine, effort)
        if plan.status != lw.PlanStatus.optimal or any(crossing.row < 6 for crossing in grid.crossings):
            continue
        certificate = lw.certify(grid, machine, effort, total_ms=plan.total_ms)
        certificate.bound_ms += 1_000_000  # the prices no longer suffice
        certificate.branches = [lw.Branch(0, -1, False, lw.BranchEnd.kept)]
        below = 0
        for row in range(1, 6):
            passes = dice.random() < 0.6
            first = len(certificate.branches)
            others = [(lw.BranchEnd.bound, -1), (lw.BranchEnd.dominated, first + passes)]
            for stops in (True, False):
                end, by = (lw.BranchEnd.kept, -1) if stops != passes else dice.choice(others)
                certificate.branches.append(lw.Branch(row, below, stops, end, by))
            below = first + passes
        assert refused_by_both(grid, machine, effort, certificate), seed
        looked_at += 1
    assert looked_at > 10


def with_stretches():
    """A panel whose certificate, made with little memory, has to look through its upper rows first."""
    for seed in range(1, 200):
        grid, machine, effort = random_panel(seed)
        grid = grid.repeated_up(3)
        plan = lw.plan(grid, machine, effort)
        if plan.status != lw.PlanStatus.optimal:
            continue
        for memory in (8_000, 16_000, 32_000):
            certificate = lw.certify(grid, machine, effort, total_ms=plan.total_ms, memory_limit=memory)
            proven = certificate.bound_ms == plan.total_ms
            if proven and len(certificate.stretches) == 1 and len(certificate.branches) > 100:
                return grid, machine, effort, certificate
    raise AssertionError("no panel needs stretches")


def test_stretches_are_checked_by_both_checkers():
    grid, machine, effort, certificate = with_stretches()
    assert not refused_by_both(grid, machine, effort, certificate)
    stretch = certificate.stretches[0]
    for spoil in (
        lambda c: setattr(c.stretches[0], "gain", stretch.gain + 1),
        lambda c: setattr(c.stretches[0], "gain", 0),
        lambda c: setattr(c.stretches[0], "row", grid.rows),
        lambda c: setattr(c.stretches[0], "row", -1),
        lambda c: c.stretches.append(c.stretches[0]),
        lambda c: c.stretches[0].branches.pop(),
        lambda c: c.stretches[0].branches.clear(),
        lambda c: setattr(c.stretches[0].branches[-1], "end", lw.BranchEnd.kept),
        lambda c: c.stretches.clear(),  # then the branches below come too short
    ):
        spoiled = copy.deepcopy(certificate)
        spoil(spoiled)
        assert refused_by_both(grid, machine, effort, spoiled)


def test_a_certificate_is_for_one_panel_machine_and_effort(sound):
    grid, machine, effort, certificate = sound
    with pytest.raises(lw.Error) as caught:
        lw.check_certificate(lw.Grid(3, 3), machine, effort, certificate=certificate)
    assert caught.value.code is lw.ErrorCode.size_mismatch
    cheaper = dataclasses.replace(effort, stop=effort.stop - 1_000)
    assert refused_by_both(grid, machine, cheaper, certificate)
    other = copy.copy(grid)
    other.set(grid.rows - 1, 0, lw.Cell.purl if grid.at(grid.rows - 1, 0) == lw.Cell.knit else lw.Cell.knit)
    assert refused_by_both(other, machine, effort, certificate)


def test_what_cannot_be_scheduled_or_proven_is_said(cable):
    machine = lw.Machine()
    total = lw.plan(cable, machine).total_ms
    with pytest.raises(lw.Error) as caught:
        lw.certify(cable, machine, total_ms=-1)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, "total_ms")
    with pytest.raises(lw.Error) as caught:
        lw.certify(lw.Grid(2, 300), machine, total_ms=1)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, "grid")
    assert lw.certify(cable, machine, total_ms=total + 60_000).bound_ms <= total
    stop = lw.StopSource()
    stop.request_stop()
    stopped = lw.certify(cable, machine, total_ms=total, stop=stop)
    assert stopped.bound_ms <= total and lw.check_certificate(cable, machine, certificate=stopped).holds
    told = []
    lw.certify(cable, machine, total_ms=total, progress=told.append)
    assert all(progress.best_ms == total and progress.bound_ms <= total for progress in told)


def test_certificates_are_checked_in_other_threads(sound):
    grid, machine, effort, certificate = sound
    found = []
    threads = [
        threading.Thread(
            target=lambda: found.append(lw.check_certificate(grid, machine, effort, certificate=certificate).holds)
        )
        for _ in range(4)
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert found == [True] * 4


def test_the_second_checker_needs_nothing_of_the_library():
    code = "import certificate_checker, sys; assert not any(m.startswith('latchwork') for m in sys.modules)"
    subprocess.run([sys.executable, "-c", code], check=True, cwd=conftest.TOP / "tests/python")


def test_a_panel_too_large_to_be_read_once_the_call_is_stopped_has_no_certificate():
    large = lw.Grid.from_text("kp\npk").repeated_across(100).repeated_up(3_000)
    asked = lw.StopSource()
    asked.request_stop()
    with pytest.raises(lw.Error) as ended:
        lw.certify(large, lw.Machine(), total_ms=1, stop=asked)
    assert ended.value.code is lw.ErrorCode.cancelled and ended.value.field == "options"
