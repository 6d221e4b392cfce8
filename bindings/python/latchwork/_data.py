"""Plain data about what is knitted: places, crossings, strips, bands, machines, findings, gauges and sizes.

Each class is the C++ struct of the same name, with the same fields in the same order and the same defaults. Data that a
Grid, Panel, Swatch or Wales hands out is frozen, since changing it would change nothing there; the rest is free to be
edited. tests/python holds both facts against the headers.
"""

from dataclasses import dataclass, field

from . import _core, _html
from ._copy import Copied, machine_from_text, strip_from_text
from ._core import Grid
from ._enums import Centre, ClothState, Counted, ErrorCode, FindingCode, Lean, MachineClass, Severity
from ._error import Error
from ._words import count_of, extent


@dataclass(frozen=True, slots=True)
class Place:
    """Where something is. What does not apply is left at its default."""

    row: int = 0
    """Grid row 1..R, counted up from the cast-on; 0: none."""
    column: int = -1
    """Grid column 0..W-1 from the left on the RS; -1: none."""
    line: int = 0
    """Line of a text or file, from 1; 0: none."""
    field: str = ""
    """Argument, or path of a field in a file; "": none."""
    character: int = 0
    """Character of the text of a field, from 1; 0: none."""


@dataclass(frozen=True, slots=True)
class Crossing:
    """Two neighbouring groups of stitches that change places between two rows; a centre group may stay between them.

    In a right cross the left group passes in front and travels right (n/m RC has left = n); in a left cross the right
    group passes in front (n/m LC has right = n).
    """

    row: int = 1
    """Crossed after this row is knitted: 1..R; after R it sits on a tile's seam."""
    column: int = 0
    """Leftmost stitch: 0..W-1, from the left on the RS."""
    left: int = 1
    """Stitches in the left group, 1 or more."""
    centre: int = 0
    """Stitches in the centre group, 0 or more."""
    right: int = 1
    """Stitches in the right group, 1 or more."""
    lean: Lean = Lean.right
    """Lean on the RS of the front outer group."""
    place: Centre = Centre.between
    """Where the centre lies; ``between`` when there is no centre."""

    @property
    def width(self) -> int:
        """Stitches in all: left + centre + right."""
        return self.left + self.centre + self.right

    @property
    def travel(self) -> int:
        """Longest sideways travel in stitches: max(left, right) + centre."""
        return max(self.left, self.right) + self.centre


@dataclass(frozen=True, slots=True)
class Wale:
    """A physical chain of loops, followed through crossings."""

    column: int = 0
    """Column of its lowest cell: with ``row``, its name."""
    row: int = 1
    """Row of its lowest cell."""
    columns: tuple[int, ...] = ()
    """columns[i]: its column in row ``row + i``."""

    @property
    def last_row(self) -> int:
        """Row of its highest cell."""
        return self.row + len(self.columns) - 1

    def column_at(self, row: int) -> int:
        """Its column in that row. Raises Error off_grid for a row it does not have."""
        if not self.row <= row <= self.last_row:
            raise Error(f"the wale has rows {self.row}..{self.last_row}, not {row}", ErrorCode.off_grid, row=row)
        return self.columns[row - self.row]


@dataclass(slots=True)
class Strip(Copied):
    """A grid, the name people call it by, and the texture whose gauge measures it.

    Mirroring and repeating keep the texture: the cloth measures the same.
    """

    name: str
    """What people call it: "rope 3/3 RC every 8"."""
    texture: str
    """Key into a swatch's gauges: "rope 3/3 every 8"."""
    grid: Grid
    """One vertical repeat, as seen on the RS."""

    def mirrored(self) -> "Strip":
        """Reflected left to right; lean words in the name are exchanged (RC <-> LC)."""
        return _core._strip_mirrored(self)

    def repeated_across(self, times: int) -> "Strip":
        """``times`` copies side by side. Raises Error bad_argument (times below 1), too_large."""
        return _core._strip_repeated_across(self, times)

    def repeated_up(self, times: int) -> "Strip":
        """``times`` copies upward. Raises Error bad_argument (times below 1), too_large."""
        return _core._strip_repeated_up(self, times)

    def filled_up(self, rows: int) -> "Strip":
        """Repeated upward and cut at exactly ``rows`` rows, row 1 at the bottom.

        Raises Error bad_argument (rows below 1), too_large; crossing_over_none, as Grid.sliced().
        """
        return _core._strip_filled_up(self, rows)

    def __repr__(self) -> str:
        return f"<latchwork.Strip {self.name!r}, {extent(self.grid.columns, self.grid.rows)}>"

    def _repr_svg_(self) -> str | None:
        return self.grid._repr_svg_()

    def __reduce__(self) -> tuple[object, ...]:
        return strip_from_text, (_core.write(self),)


@dataclass(frozen=True, slots=True)
class StripSpan:
    """One strip's place in a band."""

    name: str = ""
    texture: str = ""
    """Key into a swatch's gauges."""
    column: int = 0
    """First column, from the left on the RS."""
    columns: int = 1
    """Columns in all, 1 or more."""
    repeat_rows: int = 1
    """The strip's vertical repeat in rows, 1 or more."""


@dataclass(frozen=True, slots=True)
class Band:
    """A run of rows in which the strips stand side by side."""

    row: int = 1
    """First row."""
    rows: int = 1
    """Rows in all, 1 or more."""
    strips: tuple[StripSpan, ...] = ()
    """From the left on the RS, covering every column once."""


@dataclass(slots=True)
class Machine:
    """The bed, the tools at hand, and what is comfortable on them.

    Needles are named as the operator sees them, outward from the bed's centre: ... L2 L1 | R1 R2 ...; in numbers
    -2, -1 | 1, 2: there is no needle 0. Functions that take a machine check it and raise Error bad_argument with the
    field.
    """

    name: str = "standard"
    needles: int = 200
    """2..4000; with an odd count the odd one is on the left."""
    pitch_mm: float = 4.5
    """Needle to needle, in mm; above 0, to 50."""
    leftmost: int = 0
    """The panel's leftmost needle, operator's view, -4000..4000; 0: centred, the odd one on the left."""
    prongs: list[int] = field(default_factory=lambda: [1, 2, 3])
    """Pronged tools at hand, two of each; up to 20 sizes, each 1..20 and named once; may be empty."""
    comfortable_crossing: int = 3
    """Travel in stitches above which a crossing is hard; 1..4000."""
    tuck_limit: int = 4
    """Most tucks or slips in a stack; 1..65536."""
    float_limit: int = 6
    """Most needles a float may pass; 1..4000."""
    max_ladder: int = 12
    """Most rows laddered down in one batch; 1..65536."""
    cast_on_loops: bool = True
    """The cast-on gives each needle a loop of its own, so a batch may start at row 0."""
    carriage_starts_right: bool = True
    """Where the carriage stands at RC 0."""

    @staticmethod
    def generic(machine_class: MachineClass) -> "Machine":
        """The generic machine of a class, named after it."""
        return _core._machine_generic(machine_class)


@dataclass(slots=True)
class Effort:
    """What hand work costs, in whole milliseconds.

    The defaults are estimates, meant to be replaced by your own timings. Each 0..3600000; functions that take it check
    that and raise Error bad_argument with the field.
    """

    stop: int = 15_000
    """Each stop: park the carriage, find the place, start again."""
    batch: int = 12_000
    """Each batch: count over, find the wale, tool in, hang."""
    drop: int = 500
    """Each rung laddered down."""
    rung_knit: int = 4_000
    """Each rung re-formed as a knit, on its needle."""
    rung_purl: int = 2_500
    """As a purl."""
    rung_tuck: int = 1_500
    """Taken into the stitch."""
    rung_slip: int = 1_500
    """Passed by."""
    crossing: int = 15_000
    """Each crossing."""
    crossing_stitch: int = 4_000
    """Each stitch lifted for it (not a centre that stays on its needles: one in front of equal groups)."""
    hold: int = 3_000
    """Each needle put in hold and released again."""
    shaping: int = 8_000
    """Each needle on which a wale begins or ends at a stop."""
    row: int = 4_000
    """Each plain carriage pass."""


@dataclass(slots=True)
class MachineFile(Copied):
    """What a machine file holds."""

    machine: Machine = field(default_factory=Machine)
    effort: Effort = field(default_factory=Effort)

    def __reduce__(self) -> tuple[object, ...]:
        return machine_from_text, (_core.write(self),)


@dataclass(frozen=True, slots=True)
class Finding:
    """What a bed, tool or method cannot do or finds hard, and what a measure cannot be trusted in."""

    code: FindingCode = FindingCode.off_bed
    severity: Severity = Severity.advice
    place: Place = Place()
    """Lowest row, leftmost column on the RS."""
    last_row: int = 0
    """The finding spans rows place.row..last_row."""
    last_column: int = -1
    """And columns place.column..last_column."""
    value: int = 0
    """What was found, in the finding's unit (needles, stitches, rows, places, mm)."""
    limit: int = 0
    """The limit it broke; 0: none."""
    message: str = ""
    """For people, with place, value and limit."""
    suggestion: str = ""
    """What would help."""


@dataclass(frozen=True, slots=True)
class Measurement:
    """How many stitches or rows were counted over what length, at one place of a swatch."""

    texture: str = ""
    """Without NUL, 1..256 bytes of UTF-8."""
    counted: Counted = Counted.stitches
    count: float = 0.0
    """0.1..10000; parts of a stitch count."""
    length_mm: float = 0.0
    """1..10000; 10 cm is 100 mm, 4 in is 101.6 mm."""
    place: str = ""
    """Free text without NUL, to 256 bytes of UTF-8: "left third"."""
    swatch: str = ""
    """The piece it was measured on, likewise, to 64 bytes: "second, looser"."""
    state: ClothState = ClothState.rested
    """Of that piece when it was measured."""
    line: int = 0
    """Line of the file it was read from; 0: from none."""


@dataclass(frozen=True, slots=True)
class Density:
    """The same thing measured in several places: its mean, and how far that is to be trusted."""

    per_10cm: float = 0.0
    """Mean of the places' count * 100 / length_mm."""
    spread: float = 0.0
    """Sample standard deviation (n - 1), per 10 cm; 0 for one place, where nothing is known of it."""
    standard_error: float = 0.0
    """Of the mean: spread / sqrt(places), and more where several swatches differ; 0 for one place."""
    places: int = 0
    swatches: int = 0
    """Pieces it was measured on, by their names."""
    freedom: float = 0.0
    """Degrees of freedom of spread^2 + standard_error^2: places - 1 of one swatch, fewer where several differ; 0 for one
    place."""


@dataclass(frozen=True, slots=True)
class Gauge:
    """Stitches and rows per 10 cm of one texture in one state."""

    texture: str = ""
    state: ClothState = ClothState.rested
    stitches: Density = Density()
    rows: Density = Density()


@dataclass(frozen=True, slots=True)
class Shrinkage:
    """How much a texture shrinks from one state to a more finished one, in per cent of its length in the first.

    Less than 0: it grows.
    """

    texture: str = ""
    from_state: ClothState = ClothState.off_machine
    to_state: ClothState = ClothState.rested
    width_percent: float = 0.0
    """100 (1 - q), q = stitches per 10 cm in the first state over those in the second."""
    width_error: float = 0.0
    """Its standard error, in the same per cent; 0 when not known."""
    length_percent: float = 0.0
    """The same by rows."""
    length_error: float = 0.0
    error_known: bool = False
    """Stitches and rows were measured in two places or more in both states."""


@dataclass(frozen=True, slots=True)
class Substitute:
    """A texture that may be reckoned by another's figure, since it has none of its own.

    Wherever a list of these is taken, one that names a texture twice, or as its own substitute, is refused: Error
    bad_argument (field "substitutes[1].texture", "substitutes[0].use").
    """

    texture: str = ""
    use: str = ""
    """The texture whose figure is taken."""


@dataclass(frozen=True, slots=True)
class StripSize:
    """One strip of a band at its own gauge, whole: seams are not taken off."""

    name: str = ""
    texture: str = ""
    band: int = 0
    """Index, bottom first."""
    columns: int = 0
    rows: int = 0
    width_mm: float = 0.0
    height_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class RowWidth:
    """A row of a panel between its seams."""

    row: int = 1
    columns: int = 0
    """In work from its first stitch to its last: with what the seams take."""
    width_mm: float = 0.0
    spread_mm: float = 0.0
    """One standard deviation of width_mm."""
    margin_mm: float = 0.0
    """width_mm lies within so much of what it will be, at the size's level."""


@dataclass(frozen=True, slots=True)
class Size:
    """Size of a panel between its seams, in mm, in the state that the gauges were measured in.

    The width of a row is the sum of its strips' widths from its first stitch to its last, so that a shaped panel's rows
    have their own; the panel's is its widest row's, and those of the first and the last row are told beside it. A seam
    at the left or right follows the edge. Strips of unlike row gauge pull on each other, so heights are told as least, greatest and width-weighted mean (per band, summed).

    A spread is one standard deviation of what one panel may measure: of a gauge measured in n places with the sample
    deviation s, a panel's own differs from the mean by s * sqrt(1 + 1/n). What shares a gauge is off together, so its
    shares are added; different gauges, and stitches and rows, are independent. A margin is the spread times the point
    of Student's t for the level, with the degrees of freedom of Welch and Satterthwaite, cut to a whole number (JCGM
    100:2008, G.4.1).
    """

    width_mm: float = 0.0
    least_width_mm: float = 0.0
    """width_mm less what the narrowest band, over the columns that every row has, lacks of the widest: below width_mm the
    edges wave."""
    height_mm: float = 0.0
    """Width-weighted mean."""
    least_height_mm: float = 0.0
    greatest_height_mm: float = 0.0
    seam_width_mm: float = 0.0
    """What those at the sides take off the row that is widest between them."""
    seam_height_mm: float = 0.0
    """What they take off height_mm; below 0 where those at the sides take a short texture."""
    width_spread_mm: float = 0.0
    """One standard deviation of width_mm."""
    height_spread_mm: float = 0.0
    """One standard deviation of height_mm."""
    level: float = 0.95
    """Of the margins."""
    width_margin_mm: float = 0.0
    """width_mm lies within so much of what it will be, at that level."""
    height_margin_mm: float = 0.0
    spread_known: bool = True
    """Stitches and rows of every texture were measured in two places or more; else the spreads are too small."""
    widest_row: int = 1
    """The lowest of equal ones."""
    widest_columns: int = 0
    cast_on: RowWidth = RowWidth()
    """The lowest row that is not wholly in a seam."""
    bind_off: RowWidth = RowWidth()
    """The highest."""
    strips: tuple[StripSize, ...] = ()
    findings: tuple[Finding, ...] = ()
    """Each said once: unlike_heights and unlike_widths from 1 mm up, borrowed_gauge, mixed_states, unknown_spread,
    narrow_texture (with the columns of its first strip)."""

    def __repr__(self) -> str:
        return f"<latchwork.Size {self.width_mm:.1f} mm x {self.height_mm:.1f} mm, {count_of(len(self.strips), 'strip')}>"

    def _repr_html_(self) -> str:
        return _html.size_table(self)
