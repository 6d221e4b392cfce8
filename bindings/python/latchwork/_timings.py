"""Plain data about timed work: spells, and the efforts fitted to them.

Each class is the C++ struct of the same name, as in _data.py. All are frozen: timings hand out what they hold, and a fit
is a result.
"""

from dataclasses import dataclass, field

from ._data import Effort
from ._enums import EffortTerm, TermState


@dataclass(frozen=True, slots=True)
class Spell:
    """One spell of work by the clock: what was done in it, and how long all of it took.

    Each count is 0..max_spell_count, and one at least is above 0. What each count is worth is the field of Effort that is
    named beside it.
    """

    stops: int = 0
    """Effort.stop"""
    batches: int = 0
    """Wales found and re-formed: Effort.batch"""
    drops: int = 0
    """Rungs laddered down, of all batches: Effort.drop"""
    rungs_knit: int = 0
    """Rungs re-formed as a knit: Effort.rung_knit"""
    rungs_purl: int = 0
    """As a purl: Effort.rung_purl"""
    rungs_tuck: int = 0
    """As a tuck: Effort.rung_tuck"""
    rungs_slip: int = 0
    """Passed by: Effort.rung_slip"""
    crossings: int = 0
    """Effort.crossing"""
    stitches_crossed: int = 0
    """Stitches lifted for them: Effort.crossing_stitch"""
    holds: int = 0
    """Needles put in hold and released again: Effort.hold"""
    shapings: int = 0
    """Needles cast on or bound off at a stop: Effort.shaping"""
    rows: int = 0
    """Plain carriage passes: Effort.row"""
    time_ms: int = 0
    """1..max_spell_ms"""
    note: str = ""
    """Free text without NUL, to 256 bytes of UTF-8: "the telephone rang"."""
    line: int = 0
    """Line of the file it was read from; 0: from none."""


@dataclass(frozen=True, slots=True)
class TermFit:
    """One term of a fitted Effort."""

    term: EffortTerm = EffortTerm.stop
    state: TermState = TermState.no_data
    value_ms: int = 0
    """As in EffortFit.effort: estimate_ms to the nearest millisecond, a half goes up."""
    estimate_ms: float = 0.0
    """0 or more, finite."""
    standard_error_ms: float | None = None
    """Of estimate_ms; only where ``fitted`` and there is a spread."""
    spells: int = 0
    """Spells that have any of it."""
    tied_with: tuple[EffortTerm, ...] = ()
    """The others it is tied with, by number; empty unless ``tied``."""


@dataclass(frozen=True, slots=True)
class OutlyingSpell:
    """A spell that took longer or shorter than the others let expect."""

    spell: int = 0
    """Index into Timings.spells."""
    line: int = 0
    """Spell.line"""
    residual_ms: float = 0.0
    """Its time, less what the estimates make of its work."""
    studentized: float = 0.0
    """Residual over its own standard deviation, as fitted without this spell; finite."""


@dataclass(frozen=True, slots=True)
class EffortFit:
    """Efforts from timings, and how far they may be trusted. Every number is finite."""

    effort: Effort = field(default_factory=Effort)
    """Each within Effort's limits."""
    terms: tuple[TermFit, ...] = ()
    """Every term, by number."""
    outlying: tuple[OutlyingSpell, ...] = ()
    """By spell; they took part in the fit all the same."""
    spells: int = 0
    """Spells fitted to."""
    rank: int = 0
    """How many costs, or sums of tied ones, were free to be set."""
    degrees_of_freedom: int = 0
    """spells - rank"""
    spread_ms: float | None = None
    """Root of (sum of squared residuals / degrees of freedom); without those, none."""
