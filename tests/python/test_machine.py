"""Machines, needles and findings."""

import latchwork as lw
import pytest


def test_generic_machines_are_named_after_their_class():
    for machine_class in lw.MachineClass:
        machine = lw.Machine.generic(machine_class)
        assert machine.name == machine_class.name
    assert lw.Machine.generic(machine_class=lw.MachineClass.standard) == lw.Machine()
    # Published: 4.5 mm standard, 9 mm bulky (shared reference values, NP).
    assert lw.Machine.generic(lw.MachineClass.standard).pitch_mm == 4.5
    assert lw.Machine.generic(lw.MachineClass.bulky).pitch_mm == 9.0


def test_needles_are_named_from_the_centre_and_the_odd_one_is_on_the_left():
    assert [lw.needle_name(needle) for needle in (-3, -1, 1, 12)] == ["L3", "L1", "R1", "R12"]
    assert [lw.needle_beside(-2, steps) for steps in range(-1, 4)] == [-3, -2, -1, 1, 2]
    assert lw.needle_beside(needle=2, steps=-3) == -2
    # DEVELOPERS.md, sides: 5 stitches are L3..R2, and RS column 0 is the operator's rightmost stitch.
    machine = lw.Machine()
    assert lw.leftmost_needle(machine, 5) == -3
    assert [lw.needle_of(machine, columns=5, column=column) for column in range(5)] == [2, 1, -1, -2, -3]
    machine.leftmost = 7
    assert lw.leftmost_needle(machine=machine, columns=5) == 7
    for call in (lambda: lw.needle_name(0), lambda: lw.needle_beside(0, 1)):
        with pytest.raises(lw.Error) as caught:
            call()
        assert caught.value.code is lw.ErrorCode.bad_argument


def test_findings_tell_what_where_and_by_how_much():
    grid = lw.Grid(6, 12)
    grid.cross(lw.Crossing(row=3, column=2, left=4, right=4))
    found = lw.findings(grid, lw.Machine())
    tight = next(finding for finding in found if finding.code is lw.FindingCode.tight_crossing)
    assert (tight.place.row, tight.place.column, tight.value, tight.limit) == (3, 2, 4, 3)
    assert tight.severity is lw.Severity.warning and tight.message and tight.suggestion
    assert lw.FindingCode.no_tool in {finding.code for finding in found}
    machine = lw.Machine(prongs=[1, 2, 4], comfortable_crossing=4)
    assert not {lw.FindingCode.no_tool, lw.FindingCode.tight_crossing} & {f.code for f in lw.findings(grid, machine)}
    assert [finding.severity for finding in found] == sorted((f.severity for f in found), reverse=True)


def test_a_crossing_wants_tools_that_are_not_at_hand():
    def told(machine):
        return [finding for finding in lw.findings(grid, machine) if finding.code is lw.FindingCode.no_tool]

    grid = lw.Grid(4, 10)
    grid.cross(lw.Crossing(row=2, column=1, left=2, centre=2, right=2))
    (found,) = told(lw.Machine(prongs=[2]))
    assert (found.severity, found.value, found.limit) == (lw.Severity.error, 2, 0)
    assert "lifts 2 + 2 stitches and 2 of the centre at once" in found.message
    assert found.suggestion.startswith("have 3-pronged tools at hand, or for the centre a third 2-pronged tool or ")
    assert not told(lw.Machine(prongs=[2, 3]))


@pytest.mark.parametrize("field, value", [("needles", 1), ("pitch_mm", 0.0), ("prongs", [0]), ("max_ladder", 0)])
def test_a_machine_out_of_its_ranges_is_refused_with_its_field(field, value):
    machine = lw.Machine()
    setattr(machine, field, value)
    with pytest.raises(lw.Error) as caught:
        lw.findings(lw.Grid(2, 2), machine)
    assert caught.value.code is lw.ErrorCode.bad_argument
    assert field in caught.value.field
