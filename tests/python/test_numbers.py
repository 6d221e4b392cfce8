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
        assert (caught.value.code, caught.value.field) == (code, argument)


def test_the_stub_tells_of_many_such_calls():
    assert len(CALLS) > 80
