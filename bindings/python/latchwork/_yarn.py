"""Yarn: how fine it is, in every system of numbers.

Each class is the C++ struct of the same name, with the same fields in the same order and the same defaults.
"""

from dataclasses import dataclass

from ._enums import YarnSystem


@dataclass(frozen=True, slots=True)
class YarnNumber:
    """How fine a yarn is: the number of one single, and how many of them are twisted together.

    The shortening by twist is not taken off: its amount differs from yarn to yarn.
    """

    system: YarnSystem = YarnSystem.tex
    number: float = 0.0
    """1e-6..1e9."""
    plies: int = 1
    """1..100."""


@dataclass(frozen=True, slots=True)
class YarnCategory:
    """One class of the Craft Yarn Council's Standard Yarn Weight System. Guidelines only."""

    number: int = 0
    """0..7."""
    name: str = ""
    """"Light"."""
    least_stitches: int = 0
    """Of stockinette over 4 in, which the table takes for 10 cm."""
    most_stitches: int = 0
    least_needle_mm: float = 0.0
    """Of hand needles."""
    most_needle_mm: float = 0.0
    """0: no upper end."""
