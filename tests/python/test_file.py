"""Files: read(write(x)) == x, schemas, and errors with their place."""

import json

import conftest
import jsonschema
import latchwork as lw
import pytest
from hypothesis import given
from hypothesis import strategies as st

SCHEMAS = conftest.TOP / "src/file/schema"


def strips():
    return [lw.rope(2, 1, 4, lw.Lean.left), lw.tuck_rib(2), lw.ladder(1)]


def valid(text, kind):
    """Held against the installed schema by a general JSON Schema library."""
    schema = json.loads((SCHEMAS / f"{kind}.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator(schema).validate(json.loads(text))


@given(conftest.grids())
def test_grids_are_read_back_equal_and_fit_the_schema(grid):
    text = lw.write(grid)
    valid(text, "grid")
    assert lw.read_grid(text) == lw.read_grid(json=text.encode()) == grid


@pytest.mark.parametrize("strip", strips(), ids=lambda strip: strip.name)
def test_strips_are_read_back_equal_and_fit_the_schema(strip):
    valid(lw.write(strip), "strip")
    assert lw.read_strip(lw.write(strip=strip)) == strip


def test_panels_are_read_back_equal_and_fit_the_schema(panel):
    valid(lw.write(panel), "panel")
    assert lw.read_panel(lw.write(panel)) == panel


def test_panels_by_parts_are_built_by_the_reader():
    text = """{"format": "latchwork-panel", "version": 1, "name": "p", "parts":
      [{"rows": 8, "strips": [{"motif": "moss"}, {"motif": "rope", "front": 2, "back": 2, "interval": 4, "lean": "left"}]}]}"""
    valid(text, "panel")
    assert lw.read_panel(text) == lw.join_strips("p", 8, [lw.moss(), lw.rope(2, 2, 4, lw.Lean.left)])


@given(
    st.builds(
        lw.Machine,
        name=st.text(st.characters(blacklist_categories=("Cs",), blacklist_characters="\0"), max_size=8),
        needles=st.integers(2, 4000),
        pitch_mm=st.floats(0.5, 50),
        leftmost=st.integers(-100, 100),
        prongs=st.lists(st.integers(1, 20), max_size=4, unique=True).map(sorted),
        cast_on_loops=st.booleans(),
    ),
    st.builds(lw.Effort, *[st.integers(0, 3_600_000)] * 12),
)
def test_machines_are_read_back_equal_and_fit_the_schema(machine, effort):
    file = lw.MachineFile(machine, effort)
    valid(lw.write(file), "machine")
    assert lw.read_machine(lw.write(file)) == file


def test_plans_are_read_back_equal_and_fit_the_schema(cable):
    for plan in (lw.plan(cable, lw.Machine()), lw.plan_regular(cable, lw.Machine()), lw.Plan(rows=1, columns=1)):
        valid(lw.write(plan), "plan")
        assert lw.read_plan(lw.write(plan)) == plan


def test_certificates_are_read_back_equal_and_fit_the_schema(cable):
    total = lw.plan(cable, lw.Machine()).total_ms
    for certificate in (lw.certify(cable, lw.Machine(), total_ms=total), lw.Certificate(branches=[lw.Branch()])):
        valid(lw.write(certificate), "certificate")
        assert lw.read_certificate(lw.write(certificate=certificate)) == certificate


READERS = {
    "grid": lw.read_grid,
    "strip": lw.read_strip,
    "panel": lw.read_panel,
    "machine": lw.read_machine,
    "article": lw.read_article,
    "article-choices": lw.read_article_request,
    "yarn": lw.read_yarn_request,
    "plan": lw.read_plan,
    "certificate": lw.read_certificate,
    "swatch": lw.read_swatch,
    "timings": lw.read_timings,
}


def refused_files():
    """The entries of tests/golden/file/refused.txt, whose head says how they are written: (kind, code, place, the name meant, reason, text)."""
    text = (conftest.TOP / "tests/golden/file/refused.txt").read_text(encoding="utf-8")
    found = []
    for entry in ("\n" + text).split("\n@ ")[1:]:
        head, _, body = entry.partition("\n")
        words, _, reason = head.partition(": ")
        kind, code, *rest = words.split()
        place = {"line": 0, "field": "", "row": 0, "column": -1}
        near = ""
        for word in rest:
            name, equals, value = word.partition("=")
            if name == "near":
                near = value
            elif equals:
                place[name] = type(place[name])(value)
        found.append(pytest.param(kind, lw.ErrorCode[code], place, near, body + "\n", id=f"{kind}: {reason}"))
    return found


def place_of(error):
    return {name: getattr(error, name) for name in ("line", "field", "row", "column")}


@pytest.mark.parametrize("kind, code, place, near, text", refused_files())
def test_bad_files_are_refused_with_their_code_at_their_place(kind, code, place, near, text):
    for given_as in (text, text.encode()):
        with pytest.raises(lw.Error) as caught:
            READERS[kind](given_as)
        assert caught.value.code is code, str(caught.value)
        assert place_of(caught.value) == place
        assert str(caught.value).startswith("line ")
        assert not near or f'; perhaps "{near}" was meant' in str(caught.value)


def test_every_reader_has_bad_files():
    assert {entry.values[0] for entry in refused_files()} == set(READERS)


@pytest.mark.parametrize("kind", READERS)
def test_bytes_that_are_no_text_are_refused_at_their_line(kind):
    for spoiled in (b"\n\n\xff", b'{"format":\n "latchwork",\n "\xc3\x28": 1}', b"rows,time\n10,\n\xed\xa0\x80"):
        with pytest.raises(lw.Error) as caught:
            READERS[kind](spoiled)
        assert caught.value.code is lw.ErrorCode.bad_encoding, str(caught.value)
        assert place_of(caught.value) == {"line": 3, "field": "", "row": 0, "column": -1}


def test_a_file_beyond_the_limit_is_refused_at_once():
    assert lw.max_file_bytes == 64 << 20
    huge = b" " * 100_000_000
    for read in READERS.values():
        with pytest.raises(lw.Error) as caught:
            read(huge)
        assert caught.value.code is lw.ErrorCode.too_large
        assert place_of(caught.value) == {"line": 1, "field": "", "row": 0, "column": -1}
    with pytest.raises(lw.Error) as caught:
        lw.read_grid(b" " * (lw.max_file_bytes + 1))
    assert (caught.value.code, caught.value.line) == (lw.ErrorCode.too_large, 1)
    with pytest.raises(lw.Error) as caught:
        lw.read_swatch("\n" * (lw.max_swatch_bytes + 1))
    assert (caught.value.code, caught.value.line) == (lw.ErrorCode.too_large, lw.max_swatch_bytes + 1)


@pytest.mark.parametrize("read", [lw.read_grid, lw.read_strip, lw.read_panel, lw.read_machine, lw.read_yarn_request, lw.read_plan, lw.read_certificate, lw.read_swatch])
def test_readers_take_text_and_nothing_else(read):
    for wrong in (None, 3, bytearray(b"{}"), ["{}"]):
        with pytest.raises(TypeError):
            read(wrong)


def test_what_has_no_file_cannot_be_written():
    for wrong in (lw.Machine(), lw.Effort(), lw.Stop(), None, "text"):
        with pytest.raises(TypeError):
            lw.write(wrong)


def test_a_lone_surrogate_is_refused_on_its_line():
    with pytest.raises(lw.Error, match="surrogate") as caught:
        lw.read_grid('{\n"format":\n"\ud800"}')
    assert (caught.value.code, caught.value.line) == (lw.ErrorCode.bad_encoding, 3)


@pytest.mark.parametrize("spoilt, code", [("ro\0pe", lw.ErrorCode.bad_value), ("ro\ud800pe", lw.ErrorCode.bad_encoding)])
def test_a_name_that_c_or_utf_8_cannot_tell_whole_is_refused_by_its_field(spoilt, code):
    strip = lw.Strip(spoilt, "moss", lw.Grid(1, 1))
    for call, field in (
        (lambda: lw.Panel(spoilt, lw.moss()), "name"),
        (lambda: lw.Panel(spoilt, lw.Grid(1, 1), []), "name"),
        (lambda: lw.join_strips(spoilt, 4, [lw.moss()]), "name"),
        (lambda: lw.build_panel(spoilt, 4, left=[lw.moss()]), "name"),
        (lambda: lw.Panel("p", strip), "strip.name"),
        (lambda: lw.Swatch([lw.Measurement(spoilt, lw.Counted.rows, 20, 100)]), "texture"),
        (lambda: lw.Swatch([]).has(spoilt), "texture"),
        (lambda: lw.Swatch([]).gauge(spoilt), "texture"),
        (lambda: lw.Swatch([]).states(spoilt), "texture"),
        (lambda: lw.built_in_article(spoilt), "name"),
    ):
        with pytest.raises(lw.Error) as caught:
            call()
        assert caught.value.code == code
        assert caught.value.field.endswith(field)
