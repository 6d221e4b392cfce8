"""Plain data about fitting: what an article shall measure, and the ways to make it so."""

from dataclasses import dataclass, field
from typing import ClassVar

from ._data import Finding, Strip, Substitute
from ._enums import ClothState, FitBound


@dataclass(slots=True)
class FitGroup:
    """Strips that stand beside each other, all together so many times.

    A motif with its ground, or what closes a panel (1 to 1 times) so that its other side balances.
    """

    strips: list[Strip] = field(default_factory=list)
    """From the left on the RS, one or more; 65536 columns at most, together."""
    least: int = 1
    """Times, 0..65536."""
    most: int = 1
    """``least``..65536."""
    as_group: int = -1
    """Index of an earlier group that this one stands as often as, so that the halves of a symmetric design grow alike.

    Its own ``least`` and ``most`` are then not what counts, but those of that group (of the first, where that one is tied
    itself). -1: as often as it likes."""


@dataclass(slots=True)
class FitRequest:
    """What an article shall measure, and what may vary.

    It is made of panels sewn side by side, all alike in their counts. A panel is, from the left on the RS: edge columns,
    each group so many times in order, the same number of edge columns. Panels right of the middle are mirrored, so that
    the halves mirror each other; a panel in the middle stands as it is. Each panel is whole, so a seam cuts no motif and
    no crossing. Rows are rows_extra + m * rows_step, m from 0.

    The measure is that of size() with the same state, substitutes and seams: those at left and right are the article's
    two sides, and each seam between two panels takes in ``seam_stitches`` of either edge.
    """

    max_groups: ClassVar[int] = 8
    max_panels: ClassVar[int] = 100
    max_candidates: ClassVar[int] = 10_000

    width_mm: float = 0.0
    """Between the seams: the target, or the least of a range; 1..1000000."""
    width_most_mm: float = 0.0
    """The greatest of the range, width_mm..1000000; 0: width_mm, a value."""
    height_mm: float = 0.0
    """Likewise."""
    height_most_mm: float = 0.0
    """Likewise."""
    tolerance_percent: float | None = None
    """Candidates further off than this, in either direction, are none; 0..100. Without it nothing is ever too far off: the
    best of what the other bounds allow is a candidate, be it a third of the width that was asked for."""
    groups: list[FitGroup] = field(default_factory=list)
    """From the left on the RS, 1..max_groups."""
    edge: Strip | None = None
    """One column wide; without it ``edge_least`` and ``edge_most`` count as 0."""
    edge_least: int = 1
    """Fewest columns of edge at each side of each panel; 0..65536."""
    edge_most: int = 1
    """Most of them; edge_least..65536."""
    panels_least: int = 1
    """1..max_panels."""
    panels_most: int = 1
    """panels_least..max_panels."""
    seam_stitches: float = 1.0
    """Of each edge, that a seam between panels takes in: 0, 0.5 or 1; edge columns only."""
    rows_step: int = 1
    """The vertical repeat, 1..65536: rows are rows_extra + a multiple of this."""
    rows_extra: int = 0
    """Rows beyond whole repeats, so that both ends balance; 0..65536."""
    vary_start: bool = False
    """Look for the row of the vertical repeat to begin with; see FitCandidate.start_row."""
    needles: int = 0
    """Bed: panels of more columns are left out; 0: no limit."""
    most: int = 10
    """Candidates returned at most, 1..max_candidates."""
    state: ClothState | None = None
    """Of all gauges, as of size()."""
    substitutes: list[Substitute] = field(default_factory=list)
    """As of size()."""
    seam_left: float = 0.0
    """Stitches that the seam at the article's left takes in: 0..1000, whole or half."""
    seam_right: float = 0.0
    seam_bottom: float = 0.0
    """Rows, likewise."""
    seam_top: float = 0.0


@dataclass(frozen=True, slots=True)
class FitCandidate:
    """One way to meet the target.

    An error is the signed distance to the nearer end of the range, 0 inside, in mm and in percent of that end. The measures
    are what the swatch's means come to. How sure they are, and strips whose heights differ, size() tells of the panel:
    ``size(fitted(request, candidate), swatch, ...)`` with the request's state, substitutes and seams (``seam_stitches``
    where another panel is sewn to it).
    """

    panels: int = 1
    times: tuple[int, ...] = ()
    """Of each group, in order."""
    edge_columns: int = 0
    """At each side of each panel."""
    columns: int = 0
    """Of one panel."""
    rows: int = 0
    start_row: int = 1
    """The row of each strip's own vertical repeat that row 1 is made as: 1 without ``vary_start``, else the one whose ends
    balance best, of all up to where all strips stand as they do from row 1 (65536 at most). First come starts whose ends
    are not open, then those of the least imbalance, then the lowest."""
    imbalance_rows: int = 0
    """Summed over the strips of a panel: how far the rows below a strip's first crossing differ from those above its last.

    In a strip that has no crossings its first and last row with a cell that is not knit count instead, rows below the one
    and above the other; a strip of knit cells only counts nothing. All rows count where what is looked for falls outside
    them."""
    open_ends: bool = False
    """A tuck or slip in the last row, which nothing closes, or a crossing after it. One in row 1 is held with the cast-on's
    loop, so that the first row is never open."""
    width_mm: float = 0.0
    """Of the outer left panel, plus (panels - 2) times an inner one's, plus the outer right's."""
    height_mm: float = 0.0
    """The width-weighted mean of the same."""
    width_error_mm: float = 0.0
    height_error_mm: float = 0.0
    width_error_percent: float = 0.0
    height_error_percent: float = 0.0
    error: float = 0.0
    """The rank: root of the sum of the squared relative errors, rounded to 1e-12 so that ties tie."""


@dataclass(frozen=True, slots=True)
class FitGive:
    """One bound that a candidate does not keep."""

    bound: FitBound = FitBound.width
    group: int = -1
    """Index, where the bound is a group's (the first of tied ones); else -1."""
    value: float = 0.0
    """The candidate's: mm off the range (signed), or a count."""
    limit: float = 0.0
    """The nearest that is allowed, likewise."""
    words: str = ""
    """"21 repeats of group 1; at most 20 are allowed"; of tied groups "21 repeats of groups 1 and 3; ..."."""


@dataclass(frozen=True, slots=True)
class FitNearest:
    """A candidate that would do if some bounds gave."""

    candidate: FitCandidate = FitCandidate()
    gives: tuple[FitGive, ...] = ()
    """In the order of FitBound, groups in theirs."""


@dataclass(frozen=True, slots=True)
class FitResult:
    """What fit() finds."""

    candidates: tuple[FitCandidate, ...] = ()
    """Ranked; empty when nothing fits."""
    nearest: tuple[FitNearest, ...] = ()
    """Only when nothing fits: three, or all there are.

    One bound is loosened, or more together, and of all that is then allowed the candidate taken for which the bound
    that must give most gives least. The tolerance of the width, that of the height, each free group's times, edge
    columns, rows, panels and needles are bounds. How far one gives is in proportion to what is allowed: a count by
    |value - limit| / limit (a limit of 0 taken as 1), width and height by what is beyond the tolerance, as a share of
    the tolerance (one below 1 % taken as 1 %; without one, all that they are off, though it is no bound then), rows
    that are no whole repeats by 1; rounded up to a millionth. Of more bounds, each is taken to give as far as the one
    that gives most. At most: 1000 % each; 1 (0 where it was allowed) to 65536; 0 to 65536; any number; 1 to
    max_panels; no limit. Of candidates for which it is the same the first in the ranking is taken. Each bound is
    tried alone and with each other one; where these come to fewer than three, three together, and so on up. Bounds
    are left out where some of them by themselves give no further in all. They are ranked by how far they give in all,
    then fewer bounds, then as candidates. If fewer than three, so ranked follow the best three each that any bound
    without end lets in, then any two, and so on; at last those of no bound at all, above 1000 % too."""
    nearest_complete: bool = True
    """False when the search for the nearest was cut short: there may be nearer ones."""
    findings: tuple[Finding, ...] = ()
    """What measuring_findings() says of the request's strips, as a panel of them all.

    borrowed_gauge for each texture that is measured by another's gauge, as told, mixed_states, unknown_spread, and the
    swatch's odd ones. Then of the best candidate, where its ends are open: open_crossing, open_stack (row: its last). What
    else is to be said of one (its margins, strips of unlike heights, narrow_texture) size() says of its fitted() panel."""


@dataclass(slots=True)
class GradeSize:
    """One size of a family: a target or a range each way, as in FitRequest."""

    name: str = ""
    """"45 x 45", "M"; no two alike."""
    width_mm: float = 0.0
    width_most_mm: float = 0.0
    """0: width_mm."""
    height_mm: float = 0.0
    height_most_mm: float = 0.0
    """0: height_mm."""


@dataclass(slots=True)
class GradeRequest:
    """One design in several sizes."""

    max_sizes: ClassVar[int] = 50

    design: FitRequest = field(default_factory=FitRequest)
    """What may vary; its targets and ``most`` are not read."""
    sizes: list[GradeSize] = field(default_factory=list)
    """1..max_sizes, in the order in which they are written: as a rule from the smallest up."""


@dataclass(frozen=True, slots=True)
class Grading:
    """What a design comes to in its sizes."""

    names: tuple[str, ...] = ()
    """Of the sizes, in order."""
    groups: tuple[str, ...] = ()
    """What the design's groups are made of, in order: their strips' names, each once, "ground + rope"; where two groups would
    be told alike, with their numbers, "ground + rope (group 3)"."""
    candidates: tuple[FitCandidate, ...] = ()
    """One for each; empty when the sizes cannot be graded."""
    complete: bool = True
    """False: a better choice, or where there is none the only one, may not have been looked at."""
    missing: int = -1
    """The first size that nothing fits; -1: none such."""
    nearest: tuple[FitNearest, ...] = ()
    """For the missing size as FitResult has them.

    Where every size is fitted and none go together: a candidate for each size, in order, that would go together if one
    bound gave for all, with what each does not keep (nothing, where it keeps all). Each bound of FitBound is loosened
    alone, the tolerances of width and height together only where neither is enough; edge columns and panels no further than 1000 fits go; that choice is taken whose greatest error is least, of
    these the first in the order of FitBound. None where ``complete`` is False."""
    nearest_complete: bool = True
    """False: there may be nearer ones."""
    message: str = ""
    """For people, where there are no candidates: which size nothing fits, or that none go together, and what would have to
    give: of ``nearest`` the first, or all of the sizes'."""
    findings: tuple[Finding, ...] = ()
    """As FitResult has them, of the design: the same for every size; then of each size that ends open, by its name."""
