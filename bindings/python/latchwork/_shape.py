"""Even spacing, shapes of panels, parts of wide ones, and schematic drawings.

Each class is the C++ struct of the same name, with the same fields in the same order and the same defaults.
"""

from dataclasses import dataclass, field
from typing import ClassVar

from ._enums import EdgeLine, LengthUnit, MeasureSide, SpacingEnds


@dataclass(frozen=True, slots=True)
class Spacing:
    """Events spread over stitches or rows as evenly as whole ones allow."""

    length: int = 1
    """Stitches or rows, 1..max_spacing."""
    events: int = 1
    """k, 1 or more."""
    ends: SpacingEnds = SpacingEnds.in_the_round
    """Where the first and the last event stand."""
    step: int = 1
    """Every gap is a multiple of it: 2 for shaping in even rows only."""
    every: int = 1
    """The shorter gap."""
    times: int = 1
    """How many gaps of `every`."""
    longer_times: int = 0
    """How many gaps of every + step."""
    rest: int = 0
    """length mod step: what no gap takes, at the far end."""
    gaps: tuple[int, ...] = ()
    """In order, their sum length - rest; with half_ends the first and last are the halves."""
    positions: tuple[int, ...] = ()
    """Of each event: stitches or rows worked before it, in order."""


@dataclass(frozen=True, slots=True)
class SplitPart:
    """A part of a panel that is knitted by itself and sewn to its neighbours."""

    column: int = 0
    """The panel's column that it begins with, from the left on the RS."""
    columns: int = 1
    """Of the panel."""
    seam_left: int = 0
    """Stitches more at its left edge, which the seam takes in; 0..max_seam_stitches."""
    seam_right: int = 0
    """Likewise."""


@dataclass(frozen=True, slots=True)
class EdgePoint:
    """A point that an edge passes through."""

    row: int = 0
    """When the row counter reads this: 0 (the cast-on) to R."""
    columns: float = 0.0
    """In from the panel's edge, 0..W."""


@dataclass(frozen=True, slots=True)
class EdgeEvent:
    """Stitches that leave or join at an edge, some times over.

    One stitch is a decrease or an increase, several are bound off or cast on at once; fully fashioned moves, further in
    from the edge, are not modelled.
    """

    row: int = 1
    """After this row the first time, 1..R-1."""
    stitches: int = 1
    """That leave; below 0: that join; not 0."""
    every: int = 1
    """Rows from one time to the next, 1 or more."""
    times: int = 1
    """1 or more."""


@dataclass(slots=True)
class EdgeShape:
    """One side edge, from the bottom up: points, or a start and events, not both. Neither: straight up."""

    points: list[EdgePoint] = field(default_factory=list)
    """Rows never falling; below the first and above the last straight up; two points at one row are a step there."""
    line: EdgeLine = EdgeLine.straight
    start: int = 0
    """Columns in from the panel's edge in row 1, with events."""
    events: list[EdgeEvent] = field(default_factory=list)
    """In any order; those after one row are added up."""


@dataclass(frozen=True, slots=True)
class RowSpan:
    """The columns in work in one row, from the left on the RS."""

    first: int = 0
    last: int = 0


@dataclass(slots=True)
class Outline:
    """A panel's shape: where each row begins and ends. What lies outside is no stitch."""

    rows: list[RowSpan] = field(default_factory=list)
    """Row 1 first."""


@dataclass(frozen=True, slots=True)
class ShapingStep:
    """What changes after a row."""

    row: int = 1
    """After this row."""
    left: int = 0
    """Stitches that leave at the left edge on the RS; below 0: that join."""
    right: int = 0
    """At the right edge."""


@dataclass(frozen=True, slots=True)
class OutlinePoint:
    """A corner of a piece's outline."""

    x_mm: float = 0.0
    """From the left on the RS, -1e6..1e6."""
    y_mm: float = 0.0
    """Up from the cast-on, -1e6..1e6."""


@dataclass(slots=True)
class SchematicMeasure:
    """One measure of a piece: where it is taken on the drawn outline, and what it is in each size."""

    label: str = ""
    """"width at the cast-on"."""
    side: MeasureSide = MeasureSide.bottom
    start: OutlinePoint = OutlinePoint()
    """A width (bottom, top) is taken between the x of both, a height between the y."""
    end: OutlinePoint = OutlinePoint()
    """Extension lines are drawn from both points."""
    mm: float = 0.0
    """In the drawn size, 0..1e6; written, not taken from the points."""
    others_mm: list[float] = field(default_factory=list)
    """In the other sizes, in order."""


@dataclass(slots=True)
class SchematicPiece:
    """A piece: one panel off the machine."""

    name: str = ""
    """"front"."""
    outline: list[OutlinePoint] = field(default_factory=list)
    """Its corners in order, three or more; closed by itself. Its edges meet at the corners alone, each the next."""
    measures: list[SchematicMeasure] = field(default_factory=list)
    seam_left: bool = False
    """Its left side is sewn to the piece before it: they are drawn edge to edge, the seam dashed."""
    seam_right: bool = False
    """Its right side to the piece after it, likewise."""
    others: list[list[OutlinePoint]] = field(default_factory=list)
    """The same piece in the other sizes, in order, where `outline` lies in the drawn one's place: all of them, or none.
    Drawn thin."""
    notes: list[str] = field(default_factory=list)
    """What its measures rest on, for people: below the drawing, before the schematic's; what two pieces say once."""


@dataclass(slots=True)
class Schematic:
    """What a schematic drawing shows. Plain data, so that an article can fill it."""

    max_pieces: ClassVar[int] = 50
    max_sizes: ClassVar[int] = 50
    max_points: ClassVar[int] = 200_000
    max_measures: ClassVar[int] = 26
    title: str = ""
    """"cushion cover, three sizes"."""
    sizes: list[str] = field(default_factory=list)
    """Their names, the drawn one first; empty: one size without a name."""
    pieces: list[SchematicPiece] = field(default_factory=list)
    """From the left on the RS, one or more."""
    notes: list[str] = field(default_factory=list)
    """Lines for people, below the drawing."""
    unit: LengthUnit = LengthUnit.cm
    """Of the measures: cm, to one decimal, or inch, to a quarter; what is less than half of that "under 0.05",
    "under 1/8"."""
