"""Plain data to choose by: what conditions cost, effort against kinds of stop, why stops are there, how far costs may move.

Each class is the C++ struct of the same name.
"""

from dataclasses import dataclass, field

from ._data import Finding, Place
from ._enums import Condition, EffortTerm, PlanStatus, StopCause
from ._plan import Plan, Rhythm


@dataclass(slots=True)
class TwoRhythms:
    """A plan in two rhythms, one inside the other or not: crossings at ``crossings``, re-forms at ``reforms``."""

    crossings: Rhythm = Rhythm()
    """The widest rhythm that has every crossing of the panel; every = 0 when it has none."""
    reforms: Rhythm = Rhythm()
    """Stops at which all that is due is re-formed; every = 0 when nothing ever is."""
    plan: Plan = field(default_factory=Plan)
    """Infeasible when no rhythm works; its own ``rhythm`` is None."""


@dataclass(frozen=True, slots=True)
class ConditionPrice:
    """What a condition costs against the plan without any."""

    condition: Condition = Condition.all
    status: PlanStatus = PlanStatus.infeasible
    """Of the plan under it."""
    total_ms: int = 0
    """What that plan takes; 0 when there is none; -1, and ``price_ms`` too, with status ``feasible``: a limit, or
    the search's own allowance where nobody set one, ended it, and it had none."""
    price_ms: int = 0
    """More than the least plan without it that was found; 0 or more. Where there is none (``infeasible``) this and the
    next two are 0 and mean nothing."""
    least_price_ms: int = 0
    """The price is proven to be no less than this ..."""
    most_price_ms: int = 0
    """... and no more than this (-1: nothing is known): exact when both are the same."""


@dataclass(slots=True)
class FrontPoint:
    """A plan that no other of the front beats in both effort and kinds."""

    kinds: int = 0
    """Different kinds of stop, see stop_kinds()."""
    plan: Plan = field(default_factory=Plan)
    """``optimal``: none with so many kinds or fewer takes less; else its bound is of all such plans."""


@dataclass(slots=True)
class Front:
    """Effort against kinds of stop to be remembered: a knitter chooses. The last point is the least plan, or, where
    the options' max_kinds is below its kinds, the best with so many."""

    points: list[FrontPoint] = field(default_factory=list)
    """From the fewest kinds on; each takes less than the one before."""
    fewest_proven: bool = False
    """No plan has fewer kinds than the first."""
    findings: list[Finding] = field(default_factory=list)
    """Why there is no plan at all; else empty."""


@dataclass(frozen=True, slots=True)
class StopReason:
    """Why a stop is there: something forces it, or it saves work."""

    row: int = 0
    """The stop's."""
    cause: StopCause = StopCause.saving
    """crossing, shaping: made here and nowhere else; hand_cells: no plan makes them without this stop; saving: plans
    without it take more, or as much."""
    place: Place = Place()
    """The crossing's or shaping's row and column, or the lowest, leftmost of the hand cells."""
    saves_ms: int = 0
    """saving: so much more takes the best plan found that never stops here; never more than a beside_ms that is told."""
    least_saves_ms: int = 0
    """Every plan that never stops here takes at least so much more; the same as saves_ms when that plan is proven the
    least; may be far below 0 when not."""
    beside_ms: int = -1
    """0 or more: so much more it takes to do this stop's works at the other stops as they are, some of them perhaps
    differently there. -1, not told: these stops cannot make the panel, or take less than the plan, something forces the
    stop, or conditions are asked, which may bar those ways."""
    message: str = ""
    """For people, with place and time."""


@dataclass(frozen=True, slots=True)
class Period:
    """From which row on, up to which, and every how many rows a schedule repeats itself."""

    from_row: int = 0
    """Rows from_row..last_row."""
    last_row: int = 0
    rows: int = 0
    """The stop after row r and the one after row r + rows are of one kind, or neither is; 0: no period."""
    times: int = 0
    """How often it goes through in full: 2 or more."""
    stops: int = 0
    """Stops in one period."""


@dataclass(frozen=True, slots=True)
class Tolerance:
    """An effort, and how far it may move before another plan takes less."""

    term: EffortTerm = EffortTerm.stop
    value_ms: int = 0
    """What it is."""
    least_ms: int = 0
    """If proven, the plan stays a least one from here ..."""
    most_ms: int = 0
    """... to here, the other efforts as they are; within 0..3'600'000."""
    least_exact: bool = False
    """One millisecond below, where that may be, another plan takes less."""
    most_exact: bool = False
    """One millisecond above."""
    proven: bool = False
    """The plan is proven to be a least one at `value_ms`; if not, nothing is, and both ends are `value_ms`."""
