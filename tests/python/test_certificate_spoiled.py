"""Wrong proofs, record by record, before both checkers: what one refuses the other does, and neither believes a bound
above the least total. tests/property/certificate_spoiled_test.cpp has more of them before the library's own."""

import copy
import dataclasses
import random
import re

import latchwork as lw
import pytest
from test_certificate import branched, random_panel, refused_by_both, with_stretches

KEPT, BOUND, DOMINATED = lw.BranchEnd.kept, lw.BranchEnd.bound, lw.BranchEnd.dominated


def spoilings(branches, at, rows):
    """Every field of a record set wrong: (how, the records then, whether no proof can be so)."""
    was = branches[at]

    def changed(how, wrong=True, **fields):
        spoiled = copy.deepcopy(branches)
        spoiled[at] = dataclasses.replace(was, **fields)
        return how, spoiled, wrong

    for row in (-1, was.row - 1, was.row + 1, rows + 1):
        yield changed(f"row {row}", row=row)
    for below in (-2, was.below - 1, was.below + 1, at):
        yield changed(f"below {below}", below=below)
    yield changed("stop turned", stop=not was.stop)
    for by in (-2, at, 10**6):
        yield changed(f"by {by}", by=by)
    if was.end is DOMINATED:
        yield changed("by none", by=-1)
        yield changed("kept", end=KEPT, by=-1)
        yield changed("bound", wrong=False, end=BOUND, by=-1)  # it may be that as well
        yield changed("bound, by another", end=BOUND)
    elif was.end is BOUND:
        yield changed("kept", end=KEPT)
    else:
        yield changed("cut", end=BOUND)
    for other, by in enumerate(branches):
        if by.row == was.row and other != was.by:
            yield changed(f"by {other}", was.end is KEPT or by.end is not KEPT, end=DOMINATED, by=other)
    yield "lost", branches[:at] + branches[at + 1 :], True
    yield "twice", branches[: at + 1] + branches[at:], True
    if at:
        yield "changed places", branches[: at - 1] + [was, branches[at - 1]] + branches[at + 1 :], True


def some_of_each_end(records, most=3):
    """Places of a few records of each end, spread over all of them: each spoiling is read twice, one time in Python."""
    for end in (KEPT, BOUND, DOMINATED):
        places = [at for at, record in enumerate(records) if record.end is end]
        yield from places[:: -(-len(places) // most)] if places else []


def agree_on_spoilings(grid, machine, effort, sound, records, put_back):
    """How many spoilings of a record both refuse, in the mean."""
    assert not refused_by_both(grid, machine, effort, sound)
    refused = 0
    looked_at = list(some_of_each_end(records))
    assert len({records[at].end for at in looked_at}) > 1
    for at in looked_at:
        for how, spoiled, wrong in spoilings(records, at, grid.rows):
            if spoiled == records:
                continue
            certificate = copy.deepcopy(sound)
            put_back(certificate, spoiled)
            found = refused_by_both(grid, machine, effort, certificate)
            assert found or not wrong, (at, how)
            refused += found
    return refused / len(looked_at)


def test_each_field_of_each_branch_is_looked_at_by_both_checkers():
    grid, machine, effort, sound = branched()
    assert agree_on_spoilings(
        grid, machine, effort, sound, sound.branches, lambda c, spoiled: setattr(c, "branches", spoiled)
    ) > 10


def test_each_field_of_each_branch_of_a_stretch_is_looked_at_by_both_checkers():
    grid, machine, effort, sound = with_stretches()
    at = min(range(len(sound.stretches)), key=lambda i: len(sound.stretches[i].branches))
    records = sound.stretches[at].branches[:40]
    rest = sound.stretches[at].branches[40:]
    assert agree_on_spoilings(
        grid, machine, effort, sound, records, lambda c, spoiled: setattr(c.stretches[at], "branches", spoiled + rest)
    ) > 5


@pytest.mark.parametrize("seed", range(1, 25))
def test_no_branches_whatever_prove_more_than_some_plan_takes_to_either_checker(seed):
    dice = random.Random(seed)
    grid, machine, effort = random_panel(seed)
    try:
        grid = grid.sliced(row=1, column=0, rows=min(grid.rows, 7), columns=min(grid.columns, 4))
    except lw.Error:
        return  # it cuts a crossing
    plan = lw.plan(grid, machine, effort)
    if plan.status is not lw.PlanStatus.optimal or not plan.stops:
        return
    claim = lw.certify(grid, machine, effort, total_ms=plan.total_ms)
    if not claim.classes:
        return
    claim.bound_ms, claim.stretches = plan.total_ms + dice.randint(1, 30_000), []
    claim.branches = [lw.Branch(0, -1, False, KEPT, -1)]
    if "with a stop" in lw.check_certificate(grid, machine, effort, certificate=claim).message:
        claim.branches[0].stop = True
    for _ in range(300):
        assert refused_by_both(grid, machine, effort, claim)
        message = lw.check_certificate(grid, machine, effort, certificate=claim).message
        missing = re.fullmatch(
            rf"branches\[{len(claim.branches)}\]: it is missing: row (\d+), from branch (-?\d+), (with|without) a stop, .*",
            message,
        )
        if not missing:
            break  # the lie came out elsewhere: a schedule at the top
        row, below = int(missing[1]), int(missing[2])
        ends = [(BOUND, -1), *((DOMINATED, i) for i, b in enumerate(claim.branches) if b.row == row)]
        dice.shuffle(ends)
        for end, by in [*ends, (KEPT, -1)]:  # any lie that passes, else the truth
            claim.branches.append(lw.Branch(row, below, missing[3] == "with", end, by))
            if not lw.check_certificate(grid, machine, effort, certificate=claim).message.startswith(
                f"branches[{len(claim.branches) - 1}]"
            ):
                break
            if end is not KEPT:
                claim.branches.pop()
