"""Quantities: a type each, so that no length is taken for a weight, and one unit inside, which is the field's name.

Each class is the C++ struct of the same name. ``read_length`` and its kin make them from text.
"""

from dataclasses import dataclass

from ._enums import Counted


@dataclass(frozen=True, slots=True, order=True)
class Length:
    """A length of cloth or yarn."""

    mm: float = 0.0
    """0, or 1e-6..1e12."""


@dataclass(frozen=True, slots=True, order=True)
class Weight:
    """A weight of cloth or yarn."""

    g: float = 0.0
    """0, or 1e-6..1e12."""


@dataclass(frozen=True, slots=True, order=True)
class Duration:
    """A time that work takes."""

    ms: int = 0
    """0..1e12."""


@dataclass(frozen=True, slots=True)
class CountPerLength:
    """Stitches or rows over a length, as they were counted: 28 over 10 cm and 28 over 4 in stay two things."""

    counted: Counted = Counted.stitches
    count: float = 0.0
    """1e-6..1e12; parts of a stitch count."""
    length_mm: float = 0.0
    """1e-6..1e12: 10 cm is 100 mm, 4 in is 101.6 mm."""
