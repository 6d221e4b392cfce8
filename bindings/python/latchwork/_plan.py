"""Plain data about how it is knitted: plans and their steps.

Plans are made to be edited: every attribute may be set, lists are ordinary lists, and nothing is checked until a plan is
handed to a function. Each class is the C++ struct of the same name.
"""

from dataclasses import dataclass, field

from . import _core, _html
from ._copy import Copied, plan_from_text
from ._data import Crossing, Finding
from ._enums import Cell, GroupName, PlanStatus
from ._late import Late
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
    """A regular schedule: stop after rows first, first + every, first + 2 * every, ... and do all that is due.
    `first` may be greater than `every`: then nothing is due before."""

    every: int = 1
    first: int = 1


@dataclass(frozen=True, slots=True)
class KeptRhythm:
    """Neighbouring wales whose re-forms keep to one rhythm.

    At each of its stops all that is due in them is re-formed, from just below the lowest hand cell not yet worked, unless
    the wale's row is a tuck or slip (then it waits). They are worked at no other stop, and never by hold.
    """

    row: int = 1
    """The wales that stand, in this row, ..."""
    first_column: int = 0
    """... in columns first_column..last_column, from the left on the RS."""
    last_column: int = 0
    rhythm: Rhythm | None = None
    """None: the best one, by trying every rhythm."""


@dataclass(slots=True)
class Conditions:
    """What a knitter asks of a plan beside the least effort, so that it can be kept in the head. By default nothing."""

    carriage_right_only: bool = False
    """Stops only where the carriage stands on the right."""
    rows_apart: int = 0
    """No two stops nearer than so many rows (row 0 counts); 0 or 1: none."""
    max_depth: int = 0
    """No re-form deeper than so many rows; 0: the machine's greatest ladder."""
    max_kinds: int = 0
    """At most so many kinds of stop (stop_kinds() says what one is); 0: any."""
    rhythms: list[KeptRhythm] = field(default_factory=list)
    """No wale in two of them; at most one without a rhythm of its own."""
    closed_rows: list[int] = field(default_factory=list)
    """No stop after these rows, 0..R."""
    forced_exempt: bool = False
    """Side, distance and closed rows do not bind the stops that crossings and shapings force; else such a stop bars the plan."""


class _LateStops(Late):
    __slots__ = ("_late_stops",)


@dataclass(slots=True)
class Plan(Copied, _LateStops):
    """A schedule of hand work for a panel on a machine. Plain data, checked where it is told or simulated."""

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
    """No plan of this kind, by the planner's rules (see plan()), can take less."""
    status: PlanStatus = PlanStatus.infeasible
    rhythm: Rhythm | None = None
    """Set on a regular plan."""
    findings: list[Finding] = field(default_factory=list)
    """Of an infeasible plan: why, and where; else empty."""

    def _regular(self) -> str:
        """What the status is said of, where that is not every plan."""
        if not self.rhythm:
            return ""
        return f" of the regular ones, every {count_of(self.rhythm.every, 'row')} from RC {self.rhythm.first:03}"

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
    """Told now and then during a long call, on the calling thread, and once more, with share 1, before it gives its
    result, also after it was asked to stop. A call of several plans tells bound and best of the first, its least plan,
    and those of stop_reasons() and certify() are of the plan that is handed in."""

    bound_ms: int = 0
    """Plans: proven so far; never falls (others: 0)."""
    best_ms: int = 0
    """Plans: best so far; -1: none yet; never rises once there is one (others: 0)."""
    share: float = 0.0
    """Of the work, 0..1; never falls."""


@dataclass(frozen=True, slots=True)
class WorkTimes:
    """A plan's time by kind of work, in whole milliseconds; they add up to the total."""

    stops_ms: int = 0
    """The stops themselves: parking the carriage, taking up the tools."""
    reforms_ms: int = 0
    """Stitches dropped and re-formed, rung by rung."""
    crossings_ms: int = 0
    """Groups lifted, crossed and put back."""
    holds_ms: int = 0
    """Needles put in hold and taken out."""
    shapings_ms: int = 0
    """Needles cast on and bound off."""
    carriage_ms: int = 0
    """Plain rows."""
    total_ms: int = 0


@dataclass(frozen=True, slots=True)
class Session:
    """One sitting at the machine: rows from_row + 1 to to_row with their stops; the first takes in a stop at row 0 too."""

    from_row: int = 0
    """The row counter when it begins."""
    to_row: int = 0
    """And when it ends."""
    carriage_right: bool = True
    """Where the carriage stands at its end."""
    clear: bool = True
    """At its end no needle is in hold and none was brought out to be knit back."""
    work_ms: int = 0
    """Hand work and carriage."""
    hand_ms: int = 0
    """Hand work alone."""


@dataclass(frozen=True, slots=True)
class Rest:
    """A rest for the hands."""

    session: int = 0
    """Index of the session it falls in."""
    row: int = 0
    """After this row and its stop."""
    hand_ms: int = 0
    """Hand work since the last rest, or since the session began."""
