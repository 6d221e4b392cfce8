"""Plain data of knitting by single motions, and of what comes of it. Each class is the C++ struct of the same name."""

from dataclasses import dataclass, field

from ._core import Grid
from ._data import Place
from ._enums import MoveKind


@dataclass(slots=True)
class Move:
    """One motion of carriage or hands. No move names a stitch pattern: what comes of it is for simulate() to find out."""

    kind: MoveKind = MoveKind.carriage
    needle: int = 0
    """Operator's view; 0: none."""
    last_needle: int = 0
    """At or right of ``needle``; same as ``needle`` for one."""
    row: int = -1
    """Loop or rung meant; -1: none."""
    tool: int = -1
    """Pronged tool, counted from 0 within the stop; -1: none."""


@dataclass(slots=True)
class Bed:
    """The needles that make the panel."""

    leftmost: int = -1
    """Operator's leftmost needle of the panel."""
    columns: int = 1
    """Needles in a run; RS column 0 is the rightmost."""


@dataclass(frozen=True, slots=True)
class Fault:
    """Something that hands could not do, or a loop left in a state no fabric has."""

    move: int = -1
    """Index of the move; -1: found when the fabric was read."""
    place: Place = Place()
    """RS row and column."""
    message: str = ""


@dataclass(slots=True)
class Fabric:
    """What came off the bed."""

    grid: Grid | None = None
    """The fabric read back as cells and crossings, RS; None when a fault bars it."""
    faults: list[Fault] = field(default_factory=list)
    """In the order found; empty for a sound fabric."""
    loops: int = 0
    """Loops drawn in all, by carriage and by hand."""


@dataclass(frozen=True, slots=True)
class Verification:
    """What came of a plan when its cloth was held against a chart."""

    verified: bool = False
    """All could be done, the fabric is sound and equals the chart, crossings' front to back order included, and the plan
    says of itself what is so, but for its times and their bound, which go by efforts: see hand_work()."""
    difference: Place = Place()
    """First differing place of the cloth, by row and then column. Where the cloth is the chart's and yet not verified: the
    place of ``fault``, or where the plan says what is not so. None when verified."""
    message: str = ""
    """"verified", and what of it is needless; or what differs there, and what could not be done."""
    loops: int = 0
    wale: int = -1
    """Index into ``Wales(grid).all`` of the chart's wale at that place of the cloth; -1: none."""
    expected: str = ""
    """What the chart has there: "purl", "no stitch", "1/2 RC", "no crossing"; empty when the cloth is the chart's."""
    found: str = ""
    """What the cloth has there: likewise, or "a stitch that no cell describes", "a passing that no crossing describes"."""
    fault: Fault | None = None
    """The first move that hands could not make; its ``move`` is the index in ``moves(plan)``."""
    needless: int = 0
    """Steps that hands do for nothing: without them the cloth is the same. A needle brought back that is not in hold, put
    in hold that is, or put in hold and brought back before a row is knitted; a wale re-formed as it stood; a crossing that
    puts every stitch back where it was and behind none. Of two that undo each other both are counted."""
    first_needless: Fault | None = None
    """The first of them; its ``move`` is the index of its first move in ``moves(plan)``."""
