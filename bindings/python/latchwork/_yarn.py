"""Yarn: how fine it is, in every system of numbers, and how much of it a panel takes.

Each class is the C++ struct of the same name, with the same fields in the same order and the same defaults.
"""

from dataclasses import dataclass, field
from typing import ClassVar

from ._data import Substitute
from ._enums import ClothState, YarnRoute, YarnSystem


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


@dataclass(frozen=True, slots=True)
class PlainConstants:
    """Munden's constants of plain knit: courses/cm = courses / l and wales/cm = wales / l, l the loop length in cm."""

    courses: float = 5.5
    """Kc, 0.1..100."""
    wales: float = 4.2
    """Kw, 0.1..100."""


@dataclass(frozen=True, slots=True)
class WeighedSwatch:
    """A swatch of one texture that was weighed. Give its width and height, or its stitches and rows, or both."""

    texture: str = ""
    weight_g: float = 0.0
    """1e-3..1e6."""
    scale_g: float = 0.0
    """The step of the scale it was weighed on, 0..1e6; 0: finer than matters."""
    width_mm: float = 0.0
    """In that state; 1..1e5, or 0 with height_mm."""
    height_mm: float = 0.0
    """1..1e5, or 0."""
    stitches: float = 0.0
    """Columns of its chart, 1..1e6, or 0 with rows."""
    rows: float = 0.0
    """1..1e6, or 0."""
    tex: float = 0.0
    """Of all its strands together, 1e-3..1e9; 0: of the yarns of the panel's first row."""
    state: ClothState = ClothState.rested
    """Of the swatch when its width and height were measured; the gauge of that state goes with them."""


@dataclass(frozen=True, slots=True)
class MeasuredLoops:
    """Stitches of one texture that were unravelled, and the length of yarn they gave."""

    texture: str = ""
    stitches: float = 0.0
    """1..1e9: places of the chart, columns times rows."""
    length_mm: float = 0.0
    """Of one strand, pulled straight; 0.1..1e9."""


@dataclass(frozen=True, slots=True)
class Yarn:
    """A yarn of the work."""

    name: str = ""
    number: YarnNumber = YarnNumber()
    """Number 0: not known, for one yarn alone and weighed swatches; lengths are then not known."""
    ball_g: float = 0.0
    """As sold, 1e-3..1e6; 0: not sold by the ball."""


@dataclass(frozen=True, slots=True)
class YarnRows:
    """Rows that one yarn is knitted in. Where the rows of several meet, they are knitted together."""

    first: int = 1
    """1..R."""
    last: int = 0
    """first..R; 0: R."""
    yarn: int = 0
    """Index into YarnRequest.yarns."""


@dataclass(slots=True)
class YarnRequest:
    """What a need of yarn is reckoned from."""

    max_yarns: ClassVar[int] = 100
    max_items: ClassVar[int] = 50_000
    yarns: list[Yarn] = field(default_factory=list)
    """One or more."""
    rows: list[YarnRows] = field(default_factory=list)
    """Empty: all yarns in all rows."""
    weighed: list[WeighedSwatch] = field(default_factory=list)
    loops: list[MeasuredLoops] = field(default_factory=list)
    substitutes: list[Substitute] = field(default_factory=list)
    state: ClothState | None = None
    """Of plain geometry's gauges; None: each texture's most finished one."""
    plain: PlainConstants | None = None
    """None: by the state of each gauge, dry relaxed for rested cloth and fully relaxed for washed, as a note says."""
    pieces: int = 1
    """Panels alike, 1..10000."""
    cast_on_rows: float = 1.0
    """Yarn of the cast-on, in rows like row 1; 0..1000; common practice, no source."""
    bind_off_rows: float = 1.0
    """Yarn of the bind-off, in rows like the last; 0..1000; common practice, no source. Neither counts what is cast on or
    bound off at a shaped edge: the allowance holds it."""
    waste_rows: float = 0.0
    """Knitted beside the panel, in rows like row 1; 0..1e6."""
    waste_yarn: int = -1
    """Index; -1: the yarns of row 1."""
    seam_mm: float = 0.0
    """Seams of the whole article, 0..1e6."""
    seam_ratio: float = 3.0
    """Sewing yarn for a length of seam, 1..20; common practice, no source."""
    seam_yarn: int = 0
    """Index."""
    sureness: float = 2.0
    """How sure it is to be enough, in standard deviations of a normal error, 0..6: 2 is enough in 97.7 of 100."""
    allowance: float = 0.1
    """Share on top of that, for joins, mistakes and a second swatch, 0..2; common practice."""


@dataclass(frozen=True, slots=True)
class YarnShare:
    """One yarn's part of a need."""

    yarn: int = 0
    """Index into YarnRequest.yarns."""
    weight_g: float = 0.0
    """The mean, without allowance."""
    spread_g: float = 0.0
    """One standard deviation of it."""
    margin_g: float = 0.0
    """What goes on top of weight_g for the sureness asked for."""
    length_m: float = 0.0
    """0 where the yarn's number is not known."""
    buy_g: float = 0.0
    """(weight_g + margin_g) * (1 + allowance)."""
    balls: int = 0
    """Whole balls that hold buy_g; 0 where it is not sold by the ball."""


@dataclass(frozen=True, slots=True)
class YarnEstimate:
    """The need by one route."""

    route: YarnRoute = YarnRoute.weighed_area
    weight_g: float = 0.0
    """Of all yarns."""
    spread_g: float = 0.0
    """One standard deviation of it."""
    margin_g: float = 0.0
    """As YarnShare has it, of all yarns together."""
    spread_known: bool = True
    """Every figure it rests on was measured twice or more, gauges too."""
    length_m: float = 0.0
    """Of all yarns; 0 where not known."""
    shares: tuple[YarnShare, ...] = ()
    """One a yarn."""
    notes: tuple[str, ...] = ()
    """For people: what was taken from another texture, what is not known."""


@dataclass(frozen=True, slots=True)
class YarnNeed:
    """The need by every route that can be gone."""

    estimates: tuple[YarnEstimate, ...] = ()
    """In the order of YarnRoute."""
    apart: float = 0.0
    """(greatest - least weight) / mean of them; 0 for one route."""
    missing: tuple[str, ...] = ()
    """For people: why each other route cannot be gone, in the order of YarnRoute."""
    warnings: tuple[str, ...] = ()
    """For people: routes that are further apart than their margins explain; where neither margin is known, by more than
    a fifth of the greater."""
    decides: int = -1
    """Index into `estimates` of the one to buy by, for all yarns; -1 where there is none. The one with the narrowest
    margin among those whose spread is known; where others, known or not, give more than that and both margins explain, the
    dearest of them, and where no spread is known the dearest of all; geometry of plain knit only where it is the only one: yarn left over is a smaller harm than yarn that is missing."""
    why: str = ""
    """For people: the route that decides, and by which of these rules; empty where none does."""
