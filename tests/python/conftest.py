"""Shared by all tests: where things are, and grids to try them on."""

import importlib
import os
import pathlib

import hypothesis
import latchwork as lw
import pytest
from hypothesis import strategies as st

TOP = pathlib.Path(__file__).resolve().parents[2]
EXAMPLES = TOP / "examples"

# The same cases on every run and machine; a failure prints the smallest case that still fails.
# LATCHWORK_PART takes one in so many, where another run takes them all.
CASES = max(60 // int(os.environ.get("LATCHWORK_PART", "1")), 5)
hypothesis.settings.register_profile("latchwork", derandomize=True, database=None, deadline=None, max_examples=CASES)
hypothesis.settings.load_profile("latchwork")


def needed(name):
    """The module. Without it the test fails, since nobody reads of what was skipped; LATCHWORK_TESTS_MAY_SKIP=1 skips it."""
    try:
        return importlib.import_module(name)
    except ImportError:
        if os.environ.get("LATCHWORK_TESTS_MAY_SKIP") == "1":
            pytest.skip(f"{name} is not installed")
        raise


@st.composite
def cell_lists(draw, most_rows=8, most_columns=8, cells=(0, 1)):
    """Rows of cell values, row 1 first."""
    columns = draw(st.integers(1, most_columns))
    row = st.lists(st.sampled_from(cells), min_size=columns, max_size=columns)
    return draw(st.lists(row, min_size=1, max_size=most_rows))


@st.composite
def grids(draw, most_rows=8, most_columns=10):
    """Knit and purl, and crossings wherever the rules let them be."""
    values = draw(cell_lists(most_rows, most_columns))
    grid = lw.Grid(len(values), len(values[0]))
    for row, line in enumerate(values, 1):
        for column, value in enumerate(line):
            grid.set(row, column, lw.Cell(value))
    for _ in range(draw(st.integers(0, 3))):
        left, centre, right = draw(st.integers(1, 2)), draw(st.integers(0, 1)), draw(st.integers(1, 2))
        crossing = lw.Crossing(
            row=draw(st.integers(1, grid.rows)),
            column=draw(st.integers(0, grid.columns)),
            left=left,
            centre=centre,
            right=right,
            lean=draw(st.sampled_from(lw.Lean)),
            place=draw(st.sampled_from(lw.Centre)) if centre else lw.Centre.between,
        )
        try:
            grid.cross(crossing)
        except lw.Error as error:
            assert error.code in (lw.ErrorCode.off_grid, lw.ErrorCode.stitch_taken)
    return grid


@pytest.fixture
def cable():
    """A 2/2 rope on a purl ground with a knit stitch at each edge: small, and needs every kind of hand work but hold."""
    return lw.Grid.from_text(
        """
        kpkkkkpk
        kpkkkkpk
        kpkkkkpk
        kpkkkkpk
        x 2 2/2 R
        kpkkkkpk
        kpkkkkpk
        """
    )


@pytest.fixture
def panel():
    """Mirrored, with ropes, purl columns and moss."""
    return lw.build_panel(
        "sampler",
        16,
        edge=lw.stockinette(1),
        left=[lw.reverse(2), lw.rope(2, 2, 8, lw.Lean.left), lw.reverse(1)],
        centre=lw.moss(3),
    )


@pytest.fixture
def swatch():
    """Every texture of `panel`, round numbers: 30 stitches and 40 rows to 10 cm."""
    measurements = []
    for texture in ("stockinette", "reverse", "rope 2/2 every 8", "moss"):
        measurements.append(lw.Measurement(texture, lw.Counted.stitches, 30, 100, "middle"))
        measurements.append(lw.Measurement(texture, lw.Counted.rows, 40, 100, "middle"))
    return lw.Swatch(measurements)
