"""Plain data of the proof that no plan takes less. Each class is the C++ struct of the same name; edited as plans are."""

from dataclasses import dataclass, field

from . import _core
from ._copy import Copied, certificate_from_text
from ._data import Place
from ._enums import BranchEnd
from ._late import Late
from ._words import count_of, extent


@dataclass(slots=True)
class StopPrice:
    """What a class of wales pays for a stop."""

    row: int = 0
    """The stop's, 0..R; not a forced stop."""
    price: int = 0
    """Above 0; in 1/unit milliseconds, for all wales of the class together."""


@dataclass(slots=True)
class WaleClass:
    """Wales with the same hand cells, limits and costs: what is best for one is best for all."""

    wales: list[int] = field(default_factory=list)
    """Indices into Wales(grid).all, rising."""
    prices: list[StopPrice] = field(default_factory=list)
    """By row; a stop that is not listed is free to this class."""
    least: int = 0
    """The cheapest way of making them all under these prices, in 1/unit milliseconds."""


@dataclass(slots=True)
class Branch:
    """All schedules that stop, up to a row, at the same rows."""

    row: int = 0
    """Decided up to here, 0..R."""
    below: int = -1
    """Index of the kept branch of the row below that it continues; -1 in row 0."""
    stop: bool = False
    end: BranchEnd = BranchEnd.kept
    by: int = -1
    """Dominated: index of a kept branch of the same row; else -1."""


@dataclass(slots=True)
class Stretch:
    """What is to come from some row on: every way on costs more than the prices' ways to go."""

    row: int = 0
    """After the decision at this row, 0..R-1."""
    gain: int = 0
    """How much more, above 0; in 1/unit milliseconds."""
    branches: list[Branch] = field(default_factory=list)
    """From row + 1 on, where ``below`` is -1."""


class _LateProof(Late):
    __slots__ = ("_late_classes", "_late_stretches", "_late_branches")


@dataclass(slots=True)
class Certificate(Copied, _LateProof):
    """A proof that no plan by the planner's rules (see plan()) takes less than ``bound_ms``. Plain data: nothing in it is believed until it is checked.

    A stop serves many wales, so its cost is shared out among them as prices; no plan can be cheaper than the forced stops
    and each class's cheapest way under its prices. Where that stays below the total, branches close the gap.
    """

    rows: int = 0
    columns: int = 0
    bound_ms: int = 0
    """What is proven, hand work and carriage passes."""
    unit: int = 1
    """Prices are in 1/unit milliseconds, 1..rows + 2."""
    forced: list[int] = field(default_factory=list)
    """Rows of the stops that every plan makes: crossings, wales that begin or end."""
    classes: list[WaleClass] = field(default_factory=list)
    """Every wale with hand cells is in one of them."""
    stretches: list[Stretch] = field(default_factory=list)
    """From the top down; each may use those above it, and ``branches`` all of them."""
    branches: list[Branch] = field(default_factory=list)
    """By row; empty where the prices suffice."""

    def __repr__(self) -> str:
        return (
            f"<latchwork.Certificate of {self.bound_ms} ms, {extent(self.columns, self.rows)}, "
            f"{count_of(len(self.classes), 'class', 'es')}, {count_of(len(self.branches), 'branch', 'es')}>"
        )

    def __reduce__(self) -> tuple[object, ...]:
        return certificate_from_text, (_core.write(self),)


@dataclass(frozen=True, slots=True)
class CertificateCheck:
    """What check_certificate() found."""

    holds: bool = False
    """Every plan for this panel that keeps the planner's rules takes at least ``bound_ms``."""
    bound_ms: int = 0
    """The certificate's when it holds, else 0."""
    place: Place = Place()
    """Where it fails: a row, a column, and the field ("classes[3].prices[2]")."""
    message: str = ""
    """"holds", or what is wrong."""
