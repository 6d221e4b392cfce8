"""Moves and the fabric they make."""

import latchwork as lw
import pytest


def knit(bed, *kinds):
    """Casts on the whole bed, then the moves."""
    last = bed.leftmost
    for _ in range(bed.columns - 1):
        last = lw.needle_beside(last, 1)
    return lw.simulate(bed, [lw.Move(lw.MoveKind.cast_on, bed.leftmost, last), *kinds])


def test_carriage_passes_alone_make_stockinette():
    fabric = knit(lw.Bed(-2, 4), *[lw.Move()] * 3)
    assert fabric.faults == [] and fabric.grid == lw.Grid(3, 4)
    assert fabric.loops >= 12


def test_a_rung_drawn_toward_the_operator_is_a_purl_on_the_right_side():
    # Trade fact, common practice, no source: the latch tool works from the operator's side, the wrong side.
    needle = 1
    moves = [
        lw.Move(),
        lw.Move(),
        lw.Move(lw.MoveKind.tool_into, needle, needle, row=1),
        lw.Move(lw.MoveKind.drop, needle, needle, row=1),
        lw.Move(lw.MoveKind.draw_toward, needle, needle, row=2),
        lw.Move(lw.MoveKind.hang, needle, needle),
        lw.Move(),
    ]
    fabric = knit(lw.Bed(-2, 4), *moves)
    expected = lw.Grid(3, 4)
    expected.set(2, 1, lw.Cell.purl)  # R1 of L2..R2 is the second from the left on the RS
    assert fabric.faults == [] and fabric.grid == expected


def test_what_hands_could_not_do_is_a_fault_and_not_an_error():
    fabric = knit(lw.Bed(-2, 4), lw.Move(), lw.Move(lw.MoveKind.put_back, 1, 1, tool=0))
    assert fabric.grid is None
    (fault,) = fabric.faults
    assert fault.move == 2 and fault.message
    with pytest.raises(lw.Error) as caught:
        lw.simulate(lw.Bed(0, 4), [])
    assert caught.value.code is lw.ErrorCode.bad_argument


def test_a_plans_moves_make_its_grid_also_after_a_detour_through_lists(cable):
    plan = lw.plan(cable, lw.Machine())
    moves = lw.moves(plan)
    assert moves[0].kind is lw.MoveKind.cast_on
    assert sum(move.kind is lw.MoveKind.carriage for move in moves) == cable.rows
    fabric = lw.simulate(bed=lw.Bed(plan.leftmost, plan.columns), moves=tuple(moves))
    assert fabric.grid == cable and fabric.faults == []
    verification = lw.verify(grid=cable, plan=plan)
    assert verification == lw.Verification(True, lw.Place(), "verified", fabric.loops)
    lifts = [index for index, move in enumerate(moves) if move.kind is lw.MoveKind.put_back]
    moves[lifts[0]], moves[lifts[1]] = moves[lifts[1]], moves[lifts[0]]
    other = lw.simulate(lw.Bed(plan.leftmost, plan.columns), moves).grid
    (crossing,) = other.crossings
    assert crossing.lean is lw.Lean.left  # the other group went back first, so it shows in front
    other.uncross(crossing.row, crossing.column)
    cable.uncross(2, 2)
    assert other == cable


def test_steps_that_change_nothing_are_counted_and_left_out_of_the_words(cable):
    plan = lw.plan(cable, lw.Machine())
    assert lw.verify(cable, plan).needless == 0
    assert lw.verify(cable, plan).first_needless is None
    plan.stops[0].releases = [plan.leftmost]
    verification = lw.verify(cable, plan)
    assert verification.verified and verification.needless == 1
    first = verification.first_needless
    assert first.place.row == plan.stops[0].row and first.place.column == cable.columns - 1
    assert lw.moves(plan)[first.move].kind is lw.MoveKind.release
    assert verification.message == "verified; one step is needless: " + first.message
    words = lw.instructions(lw.Panel("cable", lw.Strip("cable", "cable", cable)), plan, lw.Machine())
    assert f"1 step of the plan. {first.message}.\n" in words
    assert "release" not in words


def test_every_kind_of_move_is_told_in_words():
    told = {lw.describe(lw.Move(kind, 1, 1, 2, 0)) for kind in lw.MoveKind}
    assert len(told) == len(lw.MoveKind) and all(told)
    assert "R1" in lw.describe(move=lw.Move(lw.MoveKind.drop, 1, 1, row=2))
