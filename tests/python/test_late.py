"""Lists that become objects when they are first asked for: a plan's stops, a certificate's classes, stretches and branches."""

import copy
import pickle

import pytest

import latchwork as lw


def panel():
    grid = lw.Grid(40, 30)
    for row in range(1, 41):
        for column in range(1, 29):
            if (row * 5 + column * column * 3) % 7 < 2:
                grid.set(row, column, lw.Cell.purl)
    return grid


def made_yet(value, name):
    try:
        object.__getattribute__(value, name)
    except AttributeError:
        return False
    return True


def late_values():
    grid, machine = panel(), lw.Machine()
    plan = lw.plan(grid, machine)
    return [
        (plan, "stops"),
        *((lw.certify(grid, machine, total_ms=plan.total_ms), name) for name in ("classes", "stretches", "branches")),
    ]


@pytest.mark.parametrize("which", range(4))
def test_a_late_list_is_made_once_when_it_is_asked_for(which):
    value, name = late_values()[which]
    assert not made_yet(value, name)
    made = getattr(value, name)
    assert made_yet(value, name)
    assert getattr(value, name) is made


@pytest.mark.parametrize("which", range(4))
def test_a_late_list_that_is_set_first_stays_as_it_was_set(which):
    value, name = late_values()[which]
    mine = []
    setattr(value, name, mine)
    assert getattr(value, name) is mine
    others = {"stops": (), "classes": ("branches",), "stretches": ("classes",), "branches": ("classes",)}[name]
    for other in others:
        assert getattr(value, other) is not mine
    assert getattr(value, name) is mine


def test_what_is_handed_in_before_it_is_asked_for_is_handed_in_whole_and_makes_no_objects():
    grid, machine = panel(), lw.Machine()
    plan = lw.plan(grid, machine)
    told = lw.plan(grid, machine)
    assert lw.hand_work(plan) == lw.hand_work(lw.read_plan(lw.write(told)))
    assert lw.verify(grid, plan).verified
    assert not made_yet(plan, "stops")
    proof = lw.certify(grid, machine, total_ms=plan.total_ms)
    assert lw.check_certificate(grid, machine, certificate=proof).holds
    assert not made_yet(proof, "classes")
    assert plan == told and plan.stops


def test_what_is_handed_in_with_lists_of_ones_own_is_handed_in_with_those():
    grid, machine = panel(), lw.Machine()
    plan = lw.plan(grid, machine)
    plan.stops = []
    assert lw.hand_work(plan).stops == 0
    plan = lw.plan(grid, machine)
    assert plan.stops.pop() is not None
    assert lw.hand_work(plan).stops == len(plan.stops)
    proof = lw.certify(grid, machine, total_ms=plan.total_ms)
    proof.classes[0].least += 1
    assert not lw.check_certificate(grid, machine, certificate=proof).holds
    proof = lw.certify(grid, machine, total_ms=plan.total_ms)
    proof.classes = proof.classes[1:]
    assert not lw.check_certificate(grid, machine, certificate=proof).holds


def test_a_copy_and_a_pickle_of_what_was_not_asked_for_yet_are_equal_to_it():
    for make in (lambda: lw.plan(panel(), lw.Machine()), lambda: lw.certify(panel(), lw.Machine(), total_ms=1)):
        for copied in (copy.copy, copy.deepcopy, lambda value: pickle.loads(pickle.dumps(value))):
            value = make()
            assert copied(value) == value


def test_a_class_made_from_a_late_one_may_have_its_own_list():
    class Mine(lw.Plan):
        @property
        def stops(self):
            return []

        @stops.setter
        def stops(self, value):
            pass

    plan = Mine(rows=1, columns=1)
    assert lw.hand_work(plan).stops == 0


def test_an_attribute_that_is_none_is_told_by_its_name():
    for value in (lw.plan(panel(), lw.Machine()), lw.certify(panel(), lw.Machine(), total_ms=1)):
        with pytest.raises(AttributeError, match="'moves'"):
            value.moves  # noqa: B018
        del value.rows
        with pytest.raises(AttributeError, match="rows"):
            value.rows  # noqa: B018
