"""Python's whole numbers have no end: whatever passes C++'s is refused by its name, by every call that takes one."""

import ast
import pathlib

import pytest

import latchwork as lw

STUB = pathlib.Path(lw.__file__).with_name("_core.pyi")


def calls():
    """Every function of the stub with its class, its arguments' types, those it needs, and each that is a whole number."""
    for node in ast.parse(STUB.read_text(encoding="utf-8")).body:
        members = node.body if isinstance(node, ast.ClassDef) else [node]
        for call in members:
            if not isinstance(call, ast.FunctionDef):
                continue
            arguments = call.args.posonlyargs + call.args.args
            needed = arguments[: len(arguments) - len(call.args.defaults)]
            needed += [each for each, default in zip(call.args.kwonlyargs, call.args.kw_defaults) if default is None]
            types = {each.arg: ast.unparse(each.annotation) for each in needed if each.annotation is not None}
            for each in arguments + call.args.kwonlyargs:
                if each.annotation is not None and ast.unparse(each.annotation) == "int":
                    yield node.name, call.name, each.arg, types


# Arguments that are members of an option struct in C++ and C, whose errors name them so in Python too.
FIELDS = {each: "options." + each for each in ("work_limit", "time_limit_ms", "memory_limit")}
CALLS = [pytest.param(*call, id=".".join(dict.fromkeys(call[:3]))) for call in calls()]


@pytest.fixture(scope="module")
def sound():
    """An argument of each type that some call needs."""
    strip = lw.rope(1, 1, 4, lw.Lean.right)
    panel = lw.join_strips("panel", 8, [lw.stockinette(), strip, lw.stockinette()])
    machine = lw.Machine.generic(lw.MachineClass.standard)
    return {
        "int": 1,
        "str": "panel",
        "Cell": lw.Cell.knit,
        "Lean": lw.Lean.left,
        "Grid": panel.grid,
        "Strip": strip,
        "Sequence[Strip]": [strip],
        "Panel": panel,
        "Machine": machine,
        "Plan": lw.plan(panel.grid, machine),
        "EdgeShape": lw.EdgeShape(),
        "Outline": lw.outline_of(panel.grid),
        "Spacing": lw.spaced_evenly(10, 2),
        "FitRequest": lw.FitRequest(),
        "TargetPiece": lw.TargetPiece(),
        "Swatch": lw.Swatch(),
        "FitCandidate": lw.FitCandidate(),
        "Brief": lw.Brief(panel, lw.Swatch(), machine),
        "Job": lw.Job(),
    }


@pytest.mark.parametrize("home, name, argument, types", CALLS)
def test_a_number_past_64_bits_is_refused_by_its_argument(sound, home, name, argument, types):
    if home == name:
        call = getattr(lw._core, name)
    elif name == "__init__":
        call = getattr(lw, home)
    else:
        call = getattr(lw.Wales(sound["Grid"]) if home == "Wales" else sound[home], name)
    given = {each: sound[type_name] for each, type_name in types.items()}
    for number, code in ((1 << 63, lw.ErrorCode.too_large), (-(1 << 70), lw.ErrorCode.bad_argument)):
        with pytest.raises(lw.Error, match=str(number)) as caught:
            call(**given | {argument: number})
        assert (caught.value.code, caught.value.field) == (code, FIELDS.get(argument, argument))


def test_the_stub_tells_of_many_such_calls():
    assert len(CALLS) > 80


GRID = lw.stockinette(6).grid.repeated_up(8)
PANEL = lw.join_strips("panel", 8, [lw.stockinette(8)])


def under(**conditions):
    return lw.plan(GRID, lw.Machine(), conditions=lw.Conditions(**conditions))


MEMBERS = {  # a member of an argument that is a struct: by its argument, in every call, and in or past 64 bits
    "effort.drop": lambda number: lw.plan(GRID, lw.Machine(), lw.Effort(drop=number)),
    "effort.row": lambda number: lw.work_times(lw.plan(GRID, lw.Machine()), lw.Effort(row=number)),
    "machine.needles": lambda number: lw.findings(GRID, lw.Machine(needles=number)),
    "machine.prongs[1]": lambda number: lw.plan(GRID, lw.Machine(prongs=[2, number])),
    "options.conditions.rows_apart": lambda number: under(rows_apart=number),
    "options.conditions.closed_rows[0]": lambda number: under(closed_rows=[number]),
    "options.conditions.rhythms[0].row": lambda number: under(rhythms=[lw.KeptRhythm(row=number)]),
    "options.work_limit": lambda number: lw.plan(GRID, lw.Machine(), work_limit=number),
    "options.time_limit_ms": lambda number: lw.certify(GRID, lw.Machine(), total_ms=1, time_limit_ms=number),
    "options.memory_limit": lambda number: lw.run(lw.Brief(PANEL, lw.Swatch(), lw.Machine()), memory_limit=number),
    "defaults.row": lambda number: lw.fit_effort(lw.read_timings("rows,time,unit\n1,5,s\n"), lw.Effort(row=number)),
    "part.column": lambda number: lw.split_part(PANEL, lw.SplitPart(column=number)),
    "left.start": lambda number: lw.outlined(8, 8, lw.EdgeShape(start=number), lw.EdgeShape()),
    "right.start": lambda number: lw.outlined(8, 8, lw.EdgeShape(), lw.EdgeShape(start=number)),
}


@pytest.mark.parametrize("field", MEMBERS)
def test_a_member_is_refused_by_the_same_field_in_and_past_64_bits(field):
    for number in (-2, -(1 << 31), -(1 << 70), 1 << 70):
        with pytest.raises(lw.Error) as caught:
            MEMBERS[field](number)
        assert caught.value.field == field, number
