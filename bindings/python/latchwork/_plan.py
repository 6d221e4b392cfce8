"""Plain data about how it is knitted: plans and their steps, moves, fabrics, briefs and jobs.

Plans are made to be edited: every attribute may be set, lists are ordinary lists, and nothing is checked until a plan is
handed to a function. Each class is the C++ struct of the same name.
"""

from dataclasses import dataclass, field

from . import _core, _html
from ._copy import Copied, certificate_from_text, plan_from_text
from ._core import Grid, Panel, Swatch
from ._data import Crossing, Effort, Finding, Machine, Place, Size
from ._enums import BranchEnd, Cell, GroupName, MoveKind, PlanStatus
from ._words import count_of, extent


@dataclass(slots=True)
class GroupReturn:
    """One group put back on the needles. Needles are the operator's leftmost of the group."""

    group: GroupName = GroupName.left
    stitches: int = 1
    from_needle: int = 1
    """Lifted from here."""
    to_needle: int = 1
    """Put back here."""
    prongs: list[int] = field(default_factory=list)
    """Tools that lift it, operator's left to right; empty: it stays on its needles."""


@dataclass(slots=True)
class CrossingStep:
    """A crossing made at a stop.

    All lifted groups leave their needles first; then they return in this order: the group put back first shows in front
    on the RS.
    """

    crossing: Crossing = Crossing()
    returns: list[GroupReturn] = field(default_factory=list)
    ease: bool = False
    """Hint: bring the crossed needles out to hold and let the carriage knit them back on the next row."""


@dataclass(slots=True)
class Reform:
    """A batch: one wale dropped to the loop of row ``from_row`` and re-formed up to the stop's row."""

    needle: int = 1
    """Operator's view."""
    column: int = 0
    """RS column at the stop."""
    wale: int = 0
    """Index into Wales(grid).all."""
    from_row: int = 0
    """The tool goes into this row's loop (0: the cast-on's)."""
    rungs: list[Cell] = field(default_factory=list)
    """What the rungs of rows from_row+1, from_row+2, ... become; the lowest row is always taken first."""


@dataclass(slots=True)
class Shaping:
    """A needle that begins (``on``) or ends work at a stop, by cast-on or bind-off: where ``none`` cells start or end."""

    needle: int = 1
    """Operator's view."""
    column: int = 0
    """RS column."""
    on: bool = True


@dataclass(slots=True)
class Stop:
    """All that is done after row ``row`` is knitted; re-forms go in one sweep of the bed from the operator's left."""

    row: int = 0
    """0 only for needles put in hold on the cast-on row."""
    carriage_right: bool = True
    """COR, else COL."""
    releases: list[int] = field(default_factory=list)
    """Needles taken out of hold, operator's left to right."""
    reforms: list[Reform] = field(default_factory=list)
    crossings: list[CrossingStep] = field(default_factory=list)
    shapings: list[Shaping] = field(default_factory=list)
    holds: list[int] = field(default_factory=list)
    """Needles put in hold for the coming rows."""
    effort_ms: int = 0
    """The stop and all that is done at it, in milliseconds."""


@dataclass(frozen=True, slots=True)
class Rhythm:
    """A regular schedule: stop after rows first, first + every, first + 2 * every, ... and do all that is due."""

    every: int = 1
    first: int = 1


@dataclass(slots=True)
class Plan(Copied):
    """A schedule of hand work for a panel on a machine. Plain data: nothing in it is checked until it is simulated."""

    rows: int = 0
    columns: int = 0
    leftmost: int = 0
    """The panel's leftmost needle, operator's view."""
    carriage_starts_right: bool = True
    columns_on: list[int] = field(default_factory=list)
    """RS columns with a stitch in row 1: the needles cast on."""
    stops: list[Stop] = field(default_factory=list)
    """By row."""
    total_ms: int = 0
    """All hand work and all carriage passes, in milliseconds."""
    bound_ms: int = 0
    """No plan of this kind can take less."""
    status: PlanStatus = PlanStatus.infeasible
    rhythm: Rhythm | None = None
    """Set on a regular plan."""
    findings: list[Finding] = field(default_factory=list)
    """Of an infeasible plan: why, and where; else empty."""

    def _regular(self) -> str:
        """What the status is said of, where that is not every plan."""
        return f" of the regular ones, every {count_of(self.rhythm.every, 'row')}" if self.rhythm else ""

    def __repr__(self) -> str:
        return (
            f"<latchwork.Plan {self.status.name}{self._regular()}, {extent(self.columns, self.rows)}, "
            f"{count_of(len(self.stops), 'stop')}, {self.total_ms} ms>"
        )

    def _repr_html_(self) -> str:
        return _html.plan_table(self)

    def __reduce__(self) -> tuple[object, ...]:
        return plan_from_text, (_core.write(self),)


@dataclass(frozen=True, slots=True)
class HandWork:
    """Totals of a plan."""

    stops: int = 0
    """Stops of the carriage."""
    batches: int = 0
    """Wales dropped and re-formed, each time counted."""
    crossings: int = 0
    """Crossings made."""
    holds: int = 0
    """Needles put in hold, each time counted."""
    shapings: int = 0
    """Needles on which a wale begins or ends at a stop."""
    rungs_knit: int = 0
    """Rungs re-formed as knits."""
    rungs_purl: int = 0
    """As purls."""
    rungs_tuck: int = 0
    """Taken into the stitch."""
    rungs_slip: int = 0
    """Passed by."""
    stitches_crossed: int = 0
    """Stitches lifted for crossings."""
    hand_ms: int = 0
    """All but the carriage passes, in milliseconds."""
    carriage_ms: int = 0
    """The carriage passes, in milliseconds."""


@dataclass(frozen=True, slots=True)
class Progress:
    """Told now and then during a long call, on the calling thread."""

    bound_ms: int = 0
    """plan: proven so far (simulate: 0)."""
    best_ms: int = 0
    """plan: best so far; -1: none yet (simulate: 0)."""
    share: float = 0.0
    """Of the work, 0..1; never falls."""


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


@dataclass(slots=True)
class Certificate(Copied):
    """A proof that no plan takes less than ``bound_ms``. Plain data: nothing in it is believed until it is checked.

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
    """Every plan for this panel takes at least ``bound_ms``."""
    bound_ms: int = 0
    """The certificate's when it holds, else 0."""
    place: Place = Place()
    """Where it fails: a row, a column, and the field ("classes[3].prices[2]")."""
    message: str = ""
    """"holds", or what is wrong."""


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
    """What simulate() found when it was held against a chart."""

    verified: bool = False
    """The fabric is sound and equals the chart, crossings' front to back order included."""
    difference: Place = Place()
    """First differing place, by row and then column; none when verified."""
    message: str = ""
    """"verified", or what differs there."""
    loops: int = 0


@dataclass(slots=True)
class Brief:
    """What a designer hands over: a folder with panel.json, swatch.csv and machine.json (which may hold efforts)."""

    panel: Panel
    swatch: Swatch
    machine: Machine = field(default_factory=Machine)
    effort: Effort = field(default_factory=Effort)


@dataclass(slots=True)
class Job:
    """What comes back from run()."""

    findings: list[Finding] = field(default_factory=list)
    plan: Plan = field(default_factory=Plan)
    regular: Plan = field(default_factory=Plan)
    verification: Verification = Verification()
    """Of ``plan``."""
    regular_verification: Verification = Verification()
    """Of ``regular``; not verified when there is none."""
    size: Size = Size()
