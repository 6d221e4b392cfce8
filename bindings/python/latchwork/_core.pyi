# Made by make_stub.py from the extension module; a test makes it again and compares.
import os
from collections.abc import Callable, Sequence
from typing import ClassVar, overload

import numpy
import numpy.typing

from ._article import (
    Article,
    ArticleChoices,
    TargetPiece,
    Targets,
)
from ._article_fit import (
    ArticleFit,
    ArticleRequest,
)
from ._brief import (
    Brief,
    Job,
)
from ._certificate import (
    Certificate,
    CertificateCheck,
)
from ._choice import (
    ConditionPrice,
    Front,
    Period,
    StopReason,
    Tolerance,
    TwoRhythms,
)
from ._data import (
    Band,
    Crossing,
    Effort,
    Finding,
    Gauge,
    Machine,
    MachineFile,
    Measurement,
    Shrinkage,
    Size,
    Strip,
    Substitute,
    Wale,
)
from ._enums import (
    Axis,
    Blank,
    Cell,
    ClothState,
    Counted,
    CutWork,
    EffortTerm,
    ErrorCode,
    FindingCode,
    Lean,
    LengthUnit,
    MachineClass,
    PlainState,
    PlanStatus,
    Side,
    SpacingEnds,
    StopCause,
    TermState,
    WeightUnit,
    YarnSystem,
)
from ._fit import (
    FitCandidate,
    FitRequest,
    FitResult,
    GradeRequest,
    Grading,
)
from ._plan import (
    Conditions,
    HandWork,
    Plan,
    Progress,
    Rest,
    Session,
    WorkTimes,
)
from ._quantity import (
    CountPerLength,
    Duration,
    Length,
    Weight,
)
from ._shape import (
    EdgeEvent,
    EdgeShape,
    Outline,
    Schematic,
    SchematicPiece,
    ShapingStep,
    Spacing,
    SplitPart,
)
from ._simulate import (
    Bed,
    Fabric,
    Move,
    Verification,
)
from ._timings import (
    EffortFit,
    Spell,
)
from ._yarn import (
    PlainConstants,
    YarnCategory,
    YarnNeed,
    YarnNumber,
    YarnRequest,
)

def version() -> str:
    """The library's version, "0.1.0" (semantic versioning)."""

def error_name(code: ErrorCode) -> str:
    """The code's name ("off_grid")."""

def error_codes() -> list[ErrorCode]:
    """Every code, in order of its number."""

def cell_letter(cell: Cell) -> str:
    """The letter of a cell: k, p, t, s or . (none)."""

def cell_of(letter: str) -> Cell | None:
    """The cell of a letter; None for text that is no letter of a cell (capitals are not)."""

def crossing_name(crossing: Crossing) -> str:
    """The trade's name: "3/3 RC", "2/1 LC"; with a centre "2/1/2 RC, centre behind"."""

class Grid:
    """A stitch chart as seen from the right side (RS): rows of cells, and the crossings between rows.

    Rows are numbered from 1 up from the cast-on, columns from 0 from the left on the RS. The size is fixed at birth.
    """
    def __init__(self, rows: int, columns: int) -> None:
        """A grid of knit stitches. Raises Error bad_argument (rows, columns below 1), too_large."""
    max_side: int
    max_cells: int
    @staticmethod
    def from_text(text: str | bytes) -> Grid:
        """A grid from rows of letters, top row first, one row a line: k knit, p purl, t tuck, s slip, . none. A line `x
        COLUMN LEFT/RIGHT R|L` or `x COLUMN LEFT/CENTRE/RIGHT R|L front|between|behind` puts a crossing after the row
        written just below it.

        Raises Error bad_letter (the cell's row and column; the message counts the letters of a line from 1, as in files),
        bad_syntax, too_large (rows, columns), size_mismatch (columns) and what cross() raises, all with line.
        """
    @staticmethod
    def from_cells(cells: numpy.typing.NDArray[numpy.uint8] | memoryview) -> Grid:
        """A grid from a (rows, columns) array of uint8, row 1 first, contiguous or not: a NumPy array or any other buffer of
        two dimensions. The cells are copied.

        Raises TypeError for items that are not uint8; Error bad_argument (cells), too_large, bad_value (row, column).
        """
    def set(self, row: int, column: int, cell: Cell) -> None:
        """Puts a cell at (row, column). On error the grid is as it was.

        Raises Error off_grid, bad_argument, crossing_over_stack, crossing_over_none.
        """
    def cross(self, crossing: Crossing) -> None:
        """Adds a crossing. On error the grid is as it was.

        Raises Error off_grid; bad_argument (left, centre, right); stitch_taken; crossing_over_stack; crossing_over_none.
        """
    def uncross(self, row: int, column: int) -> None:
        """Takes away the crossing after `row` that starts at `column`. Raises Error off_grid when there is none."""
    def paste(self, patch: Grid, row: int, column: int) -> None:
        """Writes `patch` over this grid with its row 1, column 0 at (row, column), and its crossings in place of those whose
        span and row lie inside. On error the grid is as it was.

        Raises Error off_grid; crossing_cut, when a crossing here lies partly under the patch; crossing_over_none, when a
        crossing below or on top of the patch would have no stitch above it.
        """
    @property
    def rows(self) -> int:
        """Rows, 1 or more; fixed at birth."""
    @property
    def columns(self) -> int:
        """Columns, 1 or more; fixed at birth."""
    def at(self, row: int, column: int) -> Cell:
        """The cell at (row, column). Raises Error off_grid."""
    @property
    def cells(self) -> numpy.typing.NDArray[numpy.uint8]:
        """Cells as a (rows, columns) array of uint8, row 1 first. A read-only view: nothing is copied, and what is changed
        in the grid shows in it. Needs NumPy.
        """
    @property
    def crossings(self) -> tuple[Crossing, ...]:
        """The crossings by row, then column, as a tuple. Use cross() and uncross() to change them."""
    def hash(self) -> int:
        """One value for equal grids, the same on every machine and in every version of one file format (FNV-1a, 64 bits).
        """
    def describe(self) -> str:
        """One line for people: size, cells by kind, crossings."""
    def to_text(self) -> str:
        """The letters and crossing lines that from_text() reads back to an equal grid."""
    def mirrored(self) -> Grid:
        """Reflected left to right: knit and purl stay, every lean flips."""
    def upside_down(self) -> Grid:
        """Reflected top to bottom: leans flip; a stack of tucks or slips and the cell that closes it keep their own order.
        Raises Error crossing_over_none, when a stack just above a crossing ends on no stitch, or one just below a bare
        centre.
        """
    def half_turn(self) -> Grid:
        """Turned by 180 degrees in its plane: mirrored().upside_down(); leans keep. Raises as upside_down()."""
    def turned(self) -> Grid:
        """The same cloth seen from the other side: columns mirrored, knit and purl swapped, leans keep, centre front and
        behind swapped.
        """
    def unfolded(self, axis: Axis) -> Grid:
        """This grid and, on its right, its mirror image: 2W columns about a line, 2W-1 about a shared last stitch.

        Raises Error crossing_cut when the shared stitch is in a crossing; too_large.
        """
    def repeated_across(self, times: int, shift: int = 0) -> Grid:
        """`times` copies side by side; copy i is moved up by i * shift rows, wrapping over the tile's seam (half-drop: shift
        = R/2). Raises Error bad_argument (times below 1), too_large.
        """
    def repeated_up(self, times: int, shift: int = 0) -> Grid:
        """`times` copies upward; copy i is moved right by i * shift columns, and what leaves there comes in on the left (as
        bricks lie: shift = W/2). Raises Error bad_argument (times below 1), too_large; crossing_cut, when a crossing
        would leave in part; crossing_over_none, when a shifted copy has no stitch above one.
        """
    def rolled_up(self, shift: int) -> Grid:
        """Row y moves to y + shift, wrapping over the tile's seam. Any shift that 32 bits hold."""
    def beside(self, right: Grid) -> Grid:
        """This grid with `right` on its right. Raises Error size_mismatch (unequal rows), too_large."""
    def above(self, below: Grid) -> Grid:
        """This grid on top of `below`. Raises Error size_mismatch (unequal columns); too_large; crossing_over_none, when a
        crossing on one's seam would have no stitch above it in the other.
        """
    def sliced(self, row: int, column: int, rows: int, columns: int) -> Grid:
        """Rows row..row+rows-1 and columns column..column+columns-1; a crossing belongs to the row it follows.

        Raises Error bad_argument (rows, columns below 1); off_grid; crossing_cut, at the crossing; crossing_over_none,
        when one after the slice's last row would have no stitch in its first.
        """
    def __eq__(self, other: object) -> bool:
        """Equal in size, cells and crossings."""
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    def __copy__(self) -> Grid: ...
    def __deepcopy__(self, memo: dict[int, object]) -> Grid: ...
    def _repr_svg_(self) -> str | None:
        """The chart on the right side, for notebooks; None for a grid too big to show."""
    __hash__: ClassVar[None]  # type: ignore[assignment]

class Wales:
    """All wales of a grid read as a panel (no seam), followed through crossings, ordered by (row, column) of their lowest
    cell. `none` cells belong to no wale. What is changed in the grid later does not show here.
    """
    def __init__(self, grid: Grid) -> None:
        """Follows the wales of the grid as it is now."""
    @property
    def all(self) -> tuple[Wale, ...]:
        """The wales, as a tuple."""
    def at(self, row: int, column: int) -> int:
        """Index into `all` of the wale at (row, column); -1 where the cell is `none`. Raises Error off_grid."""
    def __len__(self) -> int: ...
    def __eq__(self, other: object) -> bool:
        """The same wales in a grid of the same size."""
    def __repr__(self) -> str: ...
    def __copy__(self) -> Wales: ...
    def __deepcopy__(self, memo: dict[int, object]) -> Wales: ...
    __hash__: ClassVar[None]  # type: ignore[assignment]

def _strip_mirrored(strip: Strip) -> Strip: ...

def _strip_repeated_across(strip: Strip, times: int) -> Strip: ...

def _strip_repeated_up(strip: Strip, times: int) -> Strip: ...

def _strip_filled_up(strip: Strip, rows: int) -> Strip: ...

def stockinette(columns: int = 1) -> Strip:
    """All knit; 1 row. Raises Error bad_argument (columns below 1), too_large."""

def reverse(columns: int = 1) -> Strip:
    """Reverse stockinette: all purl; 1 row. Raises Error bad_argument (columns below 1), too_large."""

def garter(knit_rows: int = 1, purl_rows: int = 1, columns: int = 1) -> Strip:
    """Rows of knit, then rows of purl. Raises Error bad_argument for a number below 1, too_large."""

def moss(columns: int = 2) -> Strip:
    """Knit and purl alternate both ways; 2 rows. Raises Error bad_argument (columns below 1), too_large."""

def basket(block_columns: int = 3, block_rows: int = 4) -> Strip:
    """Two by two blocks of knit and purl. Raises Error bad_argument for a number below 1, too_large."""

def tuck_rib(height: int = 1) -> Strip:
    """One wale: `height` tucks closed by a purl; height + 1 rows. Raises Error bad_argument (height below 1), too_large."""

def ladder(columns: int = 1) -> Strip:
    """Needles out of work: bare strands; 1 row. Raises Error bad_argument (columns below 1), too_large."""

def rope(front: int, back: int, interval: int, lean: Lean) -> Strip:
    """A crossing of `front` over `back` stitches on the same stitches every `interval` rows (2 or more), half way up the
    interval. Raises Error bad_argument (the parameter's name), too_large.
    """

def plait(stitches: int, interval: int, lean: Lean = Lean.right) -> Strip:
    """Three groups of `stitches`; every `interval` rows the left pair crosses with `lean`, then the right pair with the
    other. Raises Error bad_argument (the parameter's name), too_large.
    """

def wave(stitches: int, interval: int, lean: Lean = Lean.right) -> Strip:
    """A crossing of n over n whose lean changes each time: `lean` first. 2 * interval rows. Raises Error bad_argument (the
    parameter's name), too_large.
    """

class Panel:
    """What is knitted: a grid that ends, and which texture measures which part of it. Bands cover the rows from row 1 up.
    """
    @overload
    def __init__(self, name: str, strip: Strip) -> None:
        """A panel of one band and one strip. Raises Error bad_encoding (name, strip.name, strip.texture) for a lone
        surrogate, bad_value for a NUL.
        """
    @overload
    def __init__(self, name: str, grid: Grid, bands: Sequence[Band]) -> None:
        """Raises Error size_mismatch (row, column) when the bands do not cover the grid exactly; bad_argument (rows,
        columns, repeat_rows below 1); bad_encoding (name, bands[0].strips[2].texture) for a lone surrogate, bad_value for
        a NUL.
        """
    @property
    def name(self) -> str:
        """What people call it."""
    @property
    def grid(self) -> Grid:
        """A copy of the panel's grid. Changing it does not change the panel, whose bands and axis tell of the grid it has;
        Panel(name, grid, bands) makes a panel of a changed one.
        """
    @property
    def bands(self) -> tuple[Band, ...]:
        """The bands from row 1 up, as a tuple."""
    @property
    def axis_half_columns(self) -> int | None:
        """The mirror axis in half columns from the left edge (W when it is the panel's middle); None when none was named.
        Setting it outside 1..2W-1 raises Error bad_argument.
        """
    @axis_half_columns.setter
    def axis_half_columns(self, value: int | None) -> None: ...
    def above(self, below: Panel) -> Panel:
        """This panel on top of `below`; the name is this panel's, the axis kept if both have the same. Raises as
        Grid.above().
        """
    def mirrored(self) -> Panel:
        """Reflected left to right, strips and axis too."""
    def __eq__(self, other: object) -> bool:
        """Equal in name, grid, bands and axis."""
    def __repr__(self) -> str: ...
    def __copy__(self) -> Panel: ...
    def __deepcopy__(self, memo: dict[int, object]) -> Panel: ...
    def _repr_svg_(self) -> str | None:
        """The chart on the right side, for notebooks; None for a panel too big to show."""
    __hash__: ClassVar[None]  # type: ignore[assignment]

def build_panel(
    name: str,
    rows: int,
    *,
    edge: Strip | None = None,
    left: Sequence[Strip] = (),
    centre: Strip | None = None,
    axis: Axis = Axis.line,
) -> Panel:
    """Builds a mirrored panel in one call: edge + left half + centre + mirrored half + edge, every strip filled up to
    `rows`. `left` goes from the left edge towards the middle; without a centre the mirror axis is the line after `left`,
    or its shared last stitch.

    Raises Error bad_argument (rows; parts, when there is nothing); crossing_cut, when the shared stitch is in a crossing;
    crossing_over_none, as Strip.filled_up(); too_large.
    """

def join_strips(name: str, rows: int, strips: Sequence[Strip]) -> Panel:
    """Strips side by side from the left on the RS, each filled up to `rows`. Raises Error bad_argument (rows below 1;
    strips, when there is none); crossing_over_none, as Strip.filled_up(); too_large.
    """

def _machine_generic(machine_class: MachineClass) -> Machine: ...

def needle_name(needle: int) -> str:
    """"L3" for -3, "R12" for 12. Raises Error bad_argument for 0."""

def needle_beside(needle: int, steps: int) -> int:
    """The needle `steps` places to the operator's right of `needle`, over the centre without a needle 0. Raises Error
    bad_argument for needle 0.
    """

def leftmost_needle(machine: Machine, columns: int) -> int:
    """The panel's leftmost needle in the operator's view: machine.leftmost, or centred. Not checked against the bed. Raises
    Error bad_argument (columns below 1).
    """

def needle_of(machine: Machine, columns: int, column: int) -> int:
    """The needle of an RS column: column 0 is the operator's rightmost stitch. Raises Error bad_argument (columns below 1,
    column outside 0..columns-1).
    """

def findings(grid: Grid, machine: Machine) -> list[Finding]:
    """Everything this machine cannot make or will find hard about the grid read as a panel, worst first, then by row and
    column. Raises Error bad_argument for a machine out of its ranges.
    """

def finding_name(code: FindingCode) -> str:
    """The code's name ("off_bed")."""

max_quantity_bytes: int

def read_length(text: str | bytes, field: str = '') -> Length:
    """Reads a length: "45 cm", "17 3/4 in", "5 ft 6 in". Units are mm, cm, m, in (also " for inches), ft and yd. `field` is
    what you call it, for errors.

    Raises Error with field and character: bad_syntax, bad_unit (missing, unknown, ambiguous, of another kind or another
    system), bad_value, bad_encoding, too_large.
    """

def read_weight(text: str | bytes, field: str = '') -> Weight:
    """Reads a weight: "50 g", "1.75 oz", "1 lb 4 oz". Units are g, kg, oz, lb and grain.

    Raises Error with field and character: bad_syntax, bad_unit (missing, unknown, ambiguous, of another kind or another
    system), bad_value, bad_encoding, too_large.
    """

def read_duration(text: str | bytes, field: str = '') -> Duration:
    """Reads a duration: "90 min", "1 h 20 min". Units are h, min, s and ms; it must be a whole number of milliseconds.

    Raises Error with field and character: bad_syntax, bad_unit (missing, unknown, ambiguous, of another kind or another
    system), bad_value, bad_encoding, too_large.
    """

def read_count_per_length(text: str | bytes, field: str = '') -> CountPerLength:
    """Reads stitches or rows over a length: "28 sts / 10 cm", "7 sts/in", "28 rows / 4 in". Two lengths, as in "10 cm / 4
    in", are refused: they are 1.6 % apart.

    Raises Error with field and character: bad_syntax, bad_unit (missing, unknown, ambiguous, of another kind or another
    system), bad_value, bad_encoding, too_large.
    """

def length_text(length: Length, unit: LengthUnit) -> str:
    """"450.85 mm": the shortest decimal number of that unit that reads back to an equal length. Raises Error bad_argument
    (field "mm") for a length out of its range.
    """

def weight_text(weight: Weight, unit: WeightUnit) -> str:
    """"50 g": the shortest decimal number of that unit that reads back to an equal weight. Raises Error bad_argument (field
    "g").
    """

def duration_text(duration: Duration) -> str:
    """"1 h 20 min": reads back to an equal duration. Raises Error bad_argument (field "ms")."""

def rounded_duration_text(duration: Duration) -> str:
    """For people, rounded: "40 s", "3 min 20 s", "12 min", "5 h 12 min"; from ten minutes on to the minute, and below a
    second as it is ("0.5 s"). As summaries and instructions have it. Raises Error bad_argument (field "ms").
    """

def count_per_length_text(density: CountPerLength, unit: LengthUnit) -> str:
    """"28 sts / 10 cm": reads back to an equal value. Raises Error bad_argument (field "count", "length_mm")."""

def length_of(value: float, unit: LengthUnit) -> Length:
    """The length of a number of units, the nearest double. Raises Error bad_argument (field "value")."""

def length_in(length: Length, unit: LengthUnit) -> float:
    """How many units a length is. Raises Error bad_argument (field "mm")."""

def weight_of(value: float, unit: WeightUnit) -> Weight:
    """The weight of a number of units, the nearest double. Raises Error bad_argument (field "value")."""

def weight_in(weight: Weight, unit: WeightUnit) -> float:
    """How many units a weight is. Raises Error bad_argument (field "g")."""

def per_10cm(density: CountPerLength) -> float:
    """Stitches or rows per 10 cm: 28 over 4 in are 27.56 over 10 cm. Raises Error bad_argument (field); bad_value when the
    result is out of range.
    """

def read_yarn_number(text: str | bytes, field: str = '') -> YarnNumber:
    """Reads a yarn number: "20 tex", "Nm 28/2", "2/24 worsted", "cotton 5/2", "1000 yd/lb", "50 g = 120 m". "Nm 28 x 2" is
    two plies of 28; of "28/2" the plies are the number that can be plies, 12 or less.

    Raises Error with field and character: bad_syntax (also where either number may be the plies), bad_unit (no name, an
    unknown one), bad_value, bad_encoding, too_large.
    """

def yarn_number_text(yarn: YarnNumber) -> str:
    """"Nm 28 x 2": reads back to an equal number. Raises Error bad_argument (field "number", "plies")."""

def yarn_tex(yarn: YarnNumber) -> float:
    """g per 1000 m of the whole yarn: plies times one single's. Raises Error bad_argument (field "number", "plies");
    bad_value when it is out of 1e-6..1e9.
    """

def yarn_number_in(yarn: YarnNumber, system: YarnSystem) -> YarnNumber:
    """The whole yarn's number in another system, as one single. Raises Error bad_argument (field "number", "plies");
    bad_value when it is out of 1e-6..1e9.
    """

def yarns_together(yarns: Sequence[YarnNumber]) -> YarnNumber:
    """Yarns knitted or twisted together, as one of that many tex. Raises Error bad_argument (field "yarns" for none,
    "yarns[1].number"); bad_value when it is out of 1e-6..1e9.
    """

def yarn_number_of(length: Length, weight: Weight, system: YarnSystem) -> YarnNumber:
    """The number of a yarn of which this length has this weight. Raises Error bad_argument (field "mm", "g"), for 0 too;
    bad_value when it is out of 1e-6..1e9.
    """

def yarn_weight(yarn: YarnNumber, length: Length) -> Weight:
    """What a length of yarn weighs. Raises Error bad_argument (field); bad_value when the weight is out of range."""

def yarn_length(yarn: YarnNumber, weight: Weight) -> Length:
    """How long yarn of a weight is. Raises Error bad_argument (field); bad_value when the length is out of range."""

def yarn_diameter_mm(yarn: YarnNumber, fibre_density: float) -> float:
    """Diameter of a yarn of that fibre density (g/cm3, 0.1..25; cotton 1.54): 0.0444 mm * sqrt(tex / density), a model of
    packed fibres. Raises Error bad_argument (field); bad_value, as yarn_tex().
    """

def yarn_categories() -> list[YarnCategory]:
    """The classes of the Craft Yarn Council's Standard Yarn Weight System, 0 to 7. Guidelines only."""

def yarn_categories_at(gauge: CountPerLength) -> list[YarnCategory]:
    """The classes that a gauge of stockinette falls in, taken over 4 in and rounded to whole stitches: none, one or two.
    Raises Error bad_argument (field "counted", when rows were counted); bad_value, as per_10cm().
    """

def plain_constants_of(state: PlainState) -> PlainConstants:
    """Munden's constants of plain wool in that state of relaxation. Raises Error bad_argument (field "state")."""

def plain_loop_mm(gauge: CountPerLength, constants: PlainConstants) -> float:
    """Loop length in mm of plain knit of that gauge, by its stitches or by its rows. Raises Error bad_argument (field);
    bad_value, as per_10cm().
    """

def plain_per_10cm(counted: Counted, loop_mm: float, constants: PlainConstants) -> float:
    """Stitches or rows per 10 cm of plain knit of that loop length (0.1..1000 mm). Raises Error bad_argument (field)."""

def tightness_factor(yarn: YarnNumber, loop_mm: float) -> float:
    """Tightness, sqrt(tex) / loop length in mm; the other custom, per cm, is ten times this. Raises Error bad_argument
    (field); bad_value, as yarn_tex().
    """

def area_density_g_m2(stitches: CountPerLength, rows: CountPerLength, loop_mm: float, yarn: YarnNumber) -> float:
    """Weight of a cloth in g/m2: stitches and rows per cm, times loop length in mm, times tex, over 100. Raises Error
    bad_argument (field); bad_value, as per_10cm() and yarn_tex().
    """

max_swatch_bytes: int

class Swatch:
    """All measurements of the swatches, and the gauge of each texture in each state. Where no state is asked for, a
    texture's is the most finished one in which both its stitches and its rows were measured.
    """
    @overload
    def __init__(self) -> None:
        """A swatch without measurements."""
    @overload
    def __init__(self, measurements: Sequence[Measurement]) -> None:
        """Raises Error bad_value for a count, length or text out of its range; too_large."""
    max_measurements: int
    @property
    def measurements(self) -> tuple[Measurement, ...]:
        """The measurements in their order, as a tuple."""
    def textures(self) -> list[str]:
        """Textures in the order first measured."""
    def states(self, texture: str) -> list[ClothState]:
        """The states in which both stitches and rows of a texture were measured, the least finished first."""
    def has(self, texture: str, state: ClothState | None = None) -> bool:
        """Whether both stitches and rows were measured in that state; in any, when none is named."""
    def gauge(self, texture: str, state: ClothState | None = None) -> Gauge:
        """Stitches and rows per 10 cm. Raises Error no_gauge (field = the texture) when stitches or rows were not measured
        in that state, or in any; bad_argument (state).
        """
    def __eq__(self, other: object) -> bool:
        """The same measurements in the same order, whichever lines they stood on."""
    def __repr__(self) -> str: ...
    def __copy__(self) -> Swatch: ...
    def __deepcopy__(self, memo: dict[int, object]) -> Swatch: ...
    __hash__: ClassVar[None]  # type: ignore[assignment]

usual_places: int

usual_length_mm: float

def cloth_state_name(state: ClothState) -> str:
    """What a swatch file calls a state: off the machine, rested, washed."""

def shrinkages(swatch: Swatch) -> list[Shrinkage]:
    """How much each texture shrinks between each two states that it has a gauge in, with the standard error."""

def swatch_findings(swatch: Swatch) -> list[Finding]:
    """What is doubtful in a swatch, in the order first measured: half_measured, few_places (below usual_places),
    short_measure (below usual_length_mm), odd_one_out (Grubbs's test, two-sided at 5 %, and a whole stitch or row off the
    others, one and a half where all counts are whole), unlike_swatches (two swatches further apart than their places
    explain). Nothing is left out of a gauge for it. place.field is the measurement, place.line its line.
    """

max_spacing: int

def spaced_evenly(length: int, events: int, ends: SpacingEnds = SpacingEnds.in_the_round, step: int = 1) -> Spacing:
    """Events spread over `length` stitches or rows as evenly as whole ones allow; step=2 for even rows only. Any m gaps in a
    row sum to within one step of any other m.

    Raises Error bad_argument (field "length", "events" for more than fit, "ends", "step").
    """

def spacing_text(spacing: Spacing, counted: Counted) -> str:
    """For people: "every 9th row 2 times, every 10th row 9 times". How many of each, not in which order: that is in `gaps`.
    Raises Error bad_argument (field "counted").
    """

max_seam_stitches: int

def split(panel: Panel, machine: Machine | None = None, seam_stitches: float = 1.0) -> list[SplitPart]:
    """Parts a finished panel that is wider than the bed, from the left on the RS. Between two parts the panel is cut between
    two columns, and each gets `seam_stitches` columns of knit at that edge, so that sewn together they are as wide as the
    panel: a seam takes a stitch of each edge (common practice, no source). They are whole: half a stitch of each edge has
    no column that could be added at both. A panel that the bed has needles for is one part, as it is.

    It is never cut inside a strip, since that is a motif, but where all the strip's cells in that band and inside the
    panel's shape are knit; nor through a crossing; nor between two columns of which one has a stitch in a row and the
    other has none. Where the panel's grid is its own mirror image, so are the cuts, if they can be with the fewest parts
    or one more (a motif in the middle takes an odd number): then the halves mirror each other. Else it is parted in the
    fewest. Of all ways that are left it is one with the widest part (with its seams) as narrow as can be; and of those
    each part from the left, up to the middle of a mirrored one, as wide as can be.

    Raises Error bad_argument (field "seam_stitches", also for a fraction; "machine.needles"); too_large (field "panel",
    with the column of the part that there is no end for).
    """

def split_part(panel: Panel, part: SplitPart) -> Panel:
    """One part of a panel as a panel, named after its columns: also one that is cut where you choose, inside a strip too.
    Seam stitches are knit in each row that has a stitch beside them; for a gauge they count as the strip beside them, and
    size() with `seam_left` and `seam_right` measures what is left of the part when it is sewn.

    Raises Error bad_argument (field "part.column", "part.columns", "part.seam_left", "part.seam_right"); crossing_cut
    (row, column), as Grid.sliced(); too_large.
    """

max_edge_items: int

def outlined(rows: int, columns: int, left: EdgeShape, right: EdgeShape, step: int = 1) -> Outline:
    """The shape of rows x columns between two edges, as seen on the right side; for edges that mirror each other give the
    same one twice. An edge of points lies in each row where the line is in the middle of that row, rounded to the nearest
    column, halves up; with step=2 it changes after even rows only, and events have to be after such rows.

    Raises Error bad_argument (field "rows", "left.points[2].row"; "outline", with the row, where no stitch is left, or
    none on a stitch of the row below: two pieces); too_large.
    """

def edge_events(spacing: Spacing, stitches: int = 1, above: int = 0) -> list[EdgeEvent]:
    """Events spread over rows as those of an edge: `stitches` leave (below 0: join) after the row in which each stands,
    counted from row `above`. Like gaps become one event with its times.

    Raises Error bad_argument (field "stitches", "above", "spacing.positions[1]"); too_large (field "spacing").
    """

def outline_of(grid: Grid) -> Outline:
    """The shape that a grid has: the outermost stitches of each row. Raises Error bad_argument (row) for a row without a
    stitch, or with no column in common with the row below: two pieces.
    """

def shape_findings(
    grid: Grid,
    outline: Outline,
    *,
    edge_stitches: int = 1,
    cut: CutWork = CutWork.refuse,
) -> list[Finding]:
    """What the shape does to the hand work, worst first: crossings and stacks that it cuts (errors), hand cells that come to
    lie in the edge stitches, and crossings that are kept and reach into them (advice). What lies outside altogether is
    not told.

    Raises Error bad_argument (field "outline", "edge_stitches"); size_mismatch.
    """

def shaped(panel: Panel, outline: Outline, *, edge_stitches: int = 1, cut: CutWork = CutWork.refuse) -> Panel:
    """The panel in that shape: no stitch outside, `edge_stitches` columns at each edge knitted plain, crossings outside left
    out. A crossing or a stack that the edge cuts is refused, or with CutWork.knit knitted plain.

    Raises Error crossing_cut (row, column); bad_argument (row, column for a stack; field); size_mismatch.
    """

def shaping_steps(outline: Outline) -> list[ShapingStep]:
    """Every change of a shape, from the bottom up. Raises Error bad_argument (field "outline")."""

def outline_text(outline: Outline) -> str:
    """A shape for people, a line each: "RC 12: decrease 1 at each side, then every 6th row 4 times." Edges that shape at
    different rows are told each by itself where that is shorter, the second with "Meanwhile". Raises Error bad_argument
    (field "outline").
    """

def schematic_svg(schematic: Schematic) -> str:
    """The drawing as SVG 1.1, black on white: each piece to one scale, every measure on a dimension line as "a = 45 (50, 55)
    cm", a list of the measures below, and a title that says that the right side is shown. Pieces sewn together stand edge
    to edge, the seam dashed; a width of the first of them may go on over the others, whose place its x then counts on to.

    Raises Error bad_argument (field "pieces", "pieces[0].outline[2].x_mm", "pieces[0].measures[1].others_mm",
    "pieces[0].others", "unit"; "pieces[0].outline[2]" for an outline that crosses or touches itself or folds back there);
    too_large; bad_encoding for text that is not UTF-8.
    """

def schematic_piece(
    panel: Panel,
    swatch: Swatch,
    *,
    state: ClothState | None = None,
    substitutes: Sequence[Substitute] = (),
    seam_left: float = 0.0,
    seam_right: float = 0.0,
    seam_bottom: float = 0.0,
    seam_top: float = 0.0,
    level: float = 0.95,
) -> SchematicPiece:
    """A panel as a piece, between its seams as size() measures it with the same options: its shape, and its widths at the
    cast-on, the widest and the last row, its height, and where it is shaped the heights of its straight parts. A note
    names the textures that are measured by another's gauge.

    Raises Error no_gauge (field = texture); bad_argument (row) for a row without a stitch, without a column in common
    with the row below, or that its seams take wholly; as size().
    """

def graded_schematic(
    request: GradeRequest,
    grading: Grading,
    swatch: Swatch,
    unit: LengthUnit = LengthUnit.cm,
) -> Schematic:
    """One design in all its sizes, on one drawing: the panels edge to edge as they are sewn, as schematic_piece() has
    fitted() with the design's state, substitutes and seams; the first size is drawn, the others thin over it, their lower
    edges in line and their middles, each of all its panels, one above the other. Panels alike are measured once, heights
    on the last one; where there are two or more the first has the width of them all too. Notes tell what the measures
    rest on. The title is the caller's to set.

    Raises Error bad_argument (field "candidates" for a grading without, or of other sizes than the request's; "panels"
    where sizes differ in them; as fitted()); too_large (field "panels"); as schematic_piece().
    """

def size(
    panel: Panel,
    swatch: Swatch,
    *,
    state: ClothState | None = None,
    substitutes: Sequence[Substitute] = (),
    seam_left: float = 0.0,
    seam_right: float = 0.0,
    seam_bottom: float = 0.0,
    seam_top: float = 0.0,
    level: float = 0.95,
) -> Size:
    """Size of a panel in mm, between its seams, from the swatch's gauges: each texture's in `state`, or in its most finished
    one; of a texture without one by its substitute, which a finding tells. Seams take whole or half stitches (left and
    right on the RS) and rows. `level` is that of the margins, 0.5..0.999. A ladder is measured like any texture.

    Raises Error no_gauge (field = texture); bad_argument (field "seam_left", "level", "substitutes[1].use"), also for
    seams that leave nothing; too_large.
    """

def measuring_findings(
    panel: Panel,
    swatch: Swatch,
    *,
    state: ClothState | None = None,
    substitutes: Sequence[Substitute] = (),
    seam_left: float = 0.0,
    seam_right: float = 0.0,
    seam_bottom: float = 0.0,
    seam_top: float = 0.0,
    level: float = 0.95,
) -> list[Finding]:
    """How far a panel's measure can be trusted before it is sized: no_swatch for each texture that size() would refuse,
    borrowed_gauge, mixed_states, unknown_spread, narrow_texture, and what swatch_findings() says of the gauges that are
    used.

    Raises Error bad_argument (field); too_large.
    """

def fit(
    request: FitRequest,
    swatch: Swatch,
    *,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
) -> FitResult:
    """The ways to meet the target, ranked by error, then fewer panels, fewer columns, fewer rows, fewer edge columns, then
    fewer times of the first group, the second, and so on. Every combination that makes a grid, fits the needles, leaves
    something between the seams and, where panels are sewn together, has the edge columns that their seam takes in is
    considered. Without a tolerance_percent nothing is ever too far off. When nothing fits, the nearest and what would
    have to give.

    The work is counted: a width takes 16 and one for each strip of the groups and each texture in each group, a height 16
    and one for each texture, a start two for each strip; candidates may take 400 million, a second or so, and the nearest
    as many again.

    `stop`: a StopSource; once asked to stop, the call raises Error cancelled. `progress`: called with Progress (only the
    share is told) on this thread; when it returns False the call is asked to stop.

    Raises Error bad_argument (field "width_mm", "groups[1].least"; "edge" where two panels or more are asked for and a
    seam has no edge columns to take in; "edge", "groups[0].strips" where a panel's outermost column could have no stitch
    in some row), no_gauge (field = texture), too_large (field "substitutes"; "groups" when the combinations take more
    work than that, "vary_start" when the starts do), cancelled.
    """

def fitted(request: FitRequest, candidate: FitCandidate, panel: int = 0) -> Panel:
    """One panel of a candidate: the one at index `panel`, 0..panels-1, from the left on the RS. It may break the request's
    bounds, as those of FitResult.nearest do. Of the request all but the targets is read, so that a GradeRequest's design
    will do. Raises Error bad_argument (field) when its numbers are no candidate's of this request with whatever bounds
    loosened; what join_strips() raises.
    """

def grade(
    request: GradeRequest,
    swatch: Swatch,
    *,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
) -> Grading:
    """Fits every size so that all are one design: as many panels and as many edge columns in each. Of any two sizes,
    neighbours or not, no group stands fewer times in the wider one, and as often where they are as wide; rows likewise go
    with the heights. A range is as wide as its middle. Of all ways to choose so, the one whose greatest error is least;
    of these that with the least sum of errors; of these fewer panels, then fewer edge columns. From each size's best
    candidates under each construction, 300 at first, and twice as many until what is not listed cannot be part of a
    better choice. Where that would take more than 10000 candidates of a size, the work of fit(), or 400 million
    comparisons of two candidates in all (20 million a search, which only sizes can come to whose heights do not go with
    their widths), the best choice so far is returned, and `complete` is False. Each fit has the work of fit() to itself;
    `stop` and `progress` watch over all.

    Raises Error bad_argument (field "sizes", "sizes[2].name", "sizes[2].width_mm", or "design." and a field of
    FitRequest), bad_encoding ("sizes[2].name"), no_gauge, too_large, cancelled, as fit(); too_large (field
    "design.edge_most") for more than 1000 constructions times sizes.
    """

def graded_text(numbers: Sequence[int]) -> str:
    """Numbers of several sizes as written patterns give them: "4 (6, 8)"; where all are the same, or there is one, "4";
    nothing for none.
    """

def grading_table(grading: Grading) -> str:
    """A line a size, for a terminal: panels, times of each group, edge columns, columns and rows of a panel, width and
    height in cm with their errors in percent; below it what each group is, and that there may be a better choice where
    the grading is not `complete`. Where there are no candidates, the message. Below either, a line for each texture that
    is measured by another's gauge, and for each size that ends open.
    """

def grading_words(grading: Grading) -> str:
    """The lines of a written pattern that differ between sizes: "Knit 120 (144, 168) rows". Where there are no candidates,
    the message. Groups are told by what they are made of; what is not `complete`, measured by another's gauge or open at
    its end as in grading_table().
    """

def yarn_need(panel: Panel, swatch: Swatch, request: YarnRequest) -> YarnNeed:
    """Yarn for a panel by every route that can be gone: weighed swatches by area or by stitches, measured loops, the
    geometry of plain knit. Each has its spread, and the reasons of the others are in `missing`. A texture without a
    figure bars a route unless `request.substitutes` names one for it; none is built in.

    Raises Error bad_argument (field "yarns", "rows[1].last", "weighed[0].weight_g"); bad_encoding ("yarns[0].name");
    too_large.
    """

max_spell_count: int

max_spell_ms: int

max_timings_bytes: int

class Timings:
    """Timed spells of work in their order."""
    @overload
    def __init__(self) -> None:
        """Timings without spells."""
    @overload
    def __init__(self, spells: Sequence[Spell]) -> None:
        """Raises Error bad_value for a count, time, text or line out of its range, or a spell in which nothing was done
        (field "spells[3].rows"; "spells[3].time_ms"); too_large.
        """
    max_spells: int
    @property
    def spells(self) -> tuple[Spell, ...]:
        """The spells in their order, as a tuple."""
    def __eq__(self, other: object) -> bool:
        """The same spells in the same order, whichever lines they stood on."""
    def __repr__(self) -> str: ...
    def __copy__(self) -> Timings: ...
    def __deepcopy__(self, memo: dict[int, object]) -> Timings: ...
    __hash__: ClassVar[None]  # type: ignore[assignment]

def fit_effort(timings: Timings, defaults: Effort | None = None) -> EffortFit:
    """Efforts by non-negative least squares: of all costs of 0 or more, those under which the spells' times have the least
    sum of squared residuals, each spell counting the same.

    Terms of which no spell has any keep the default. Terms whose counts depend on each other (one column a weighted sum
    of others, to 1e-7 of its length) are tied: of all costs that fit as well they get those nearest to the defaults.
    Standard errors are the textbook's. Outlying spells have a studentized residual beyond Student's t at 0.05 / spells
    (Bonferroni's limit; Cook and Weisberg 1982), and take part in the fit all the same. Raises Error bad_argument (field
    "defaults.drop"); too_large (field "effort.row") for a cost that comes out above Effort's limit: a wrong unit,
    perhaps.
    """

@overload
def describe(fit: EffortFit) -> str:
    """The fit for people: a line for each term with its value and where it comes from, and the outlying spells by their
    lines.
    """
@overload
def describe(move: Move) -> str:
    """The move for people."""

def effort_term_name(term: EffortTerm) -> str:
    """The term's name as in Effort ("rung_purl")."""

def term_state_name(state: TermState) -> str:
    """"fitted", "at_zero", "tied" or "no_data"."""

class StopSource:
    """Asks a long call to stop, from any thread: hand it to the call as `stop`. One source can stop several calls, and stays
    asked.
    """
    def __init__(self) -> None: ...
    def request_stop(self) -> bool:
        """Asks; False when that was done before."""
    def stop_requested(self) -> bool:
        """Whether it was asked."""
    def __repr__(self) -> str: ...

def plan(
    grid: Grid,
    machine: Machine,
    effort: Effort | None = None,
    *,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
    work_limit: int = 0,
    time_limit_ms: int = 0,
    memory_limit: int = 0,
    conditions: Conditions | None = None,
) -> Plan:
    """The least-effort plan for the grid read as a panel; effort None is Effort(). Exact: `optimal` unless stopped or
    limited: `work_limit` counts search steps, and gives the same plan on every machine; `time_limit_ms` goes by the
    clock, and is passed by no more than 20 ms, or 5 % of it where that is more, as far as the machine lets it be
    foreseen; a plan's stops become Python objects when they are first asked for, which takes 1 ms for some 10,000 cells
    and is in no limit; `memory_limit` is bytes for the search's partial schedules, 0 for 1 GiB; 0: none. What cannot be
    scheduled gives status infeasible with findings, not an error. A batch starts right below a hand cell and passes no
    crossing of its wale; only tucks under a closing knit with no tuck beside them are held. These are the planner's
    rules: what is proven is proven of the plans that keep them, and one that does not may take less.

    The GIL is free meanwhile. `progress` is called with Progress now and then on this thread: when it returns False, or
    `stop` is asked, the best plan so far comes back with status `feasible`; what it raises, KeyboardInterrupt too, ends
    the call.

    Under `conditions` it is the least plan that keeps them; where nothing does, the findings name the condition and the
    place. With max_kinds the search is exact on small panels and else ends `feasible` with a bound.

    Raises Error bad_argument (machine, effort, options, conditions), too_large (effort; grid: kinds of wale, times rows +
    1, past 2^25; options.conditions.max_kinds: nobody limits the search, and its own allowance ends before it has a plan
    or knows that there is none); cancelled when stopped, limited, or out of its memory, before that. A plan without
    conditions is had before any search, however short the limit; only a panel of more than 200,000 cells, a crossing
    counted as twenty, or one of which many wales begin or end inside it, is cancelled where it would be had too late, and
    where the call is stopped with some 400,000 cells still to be passed. Under conditions a few cheap plans are tried
    first (rows_apart: as few stops as serve all; a rhythm to be found: the likely ones, down to the densest; max_kinds:
    stops each as late as can be, else rhythms), and only where none of them keeps the conditions a limit ends in
    cancelled.
    """

def plan_regular(
    grid: Grid,
    machine: Machine,
    effort: Effort | None = None,
    *,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
    work_limit: int = 0,
    time_limit_ms: int = 0,
    memory_limit: int = 0,
    conditions: Conditions | None = None,
) -> Plan:
    """The best regular plan, with its rhythm: it stops after rows first, first + every, ... and does all that is due.
    Infeasible when no rhythm works. Under `conditions` the best of the rhythms whose stops and works keep them; where
    none does, the findings name the condition and the place. Arguments and errors as in plan(). Stopped or limited before
    any was tried, it takes the first that does, down to every row; where none of these keeps the conditions it raises
    Error cancelled.
    """

def _late_list(instance: object, name: str) -> object: ...

def stop_kinds(plan: Plan) -> list[int]:
    """For each stop the number of its kind, from 0 in the order in which kinds first appear. Stops are of one kind when the
    same is done at them, whatever their row: the same needles released, re-formed to the same depth with the same rungs,
    the same crossings in the same columns, needles cast on, bound off and held.
    """

def hand_work(plan: Plan, effort: Effort | None = None) -> HandWork:
    """Counts and times of a plan under these efforts; effort None is Effort(). What a spoiled plan has below 0, rows or
    stitches of a group, counts as none; stitches crossed past 2**31 - 1 stay there. Raises Error bad_argument (effort).
    """

def plan_status_name(status: PlanStatus) -> str:
    """"optimal", "feasible" or "infeasible"."""

def certify(
    grid: Grid,
    machine: Machine,
    effort: Effort | None = None,
    *,
    total_ms: int,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
    work_limit: int = 0,
    time_limit_ms: int = 0,
    memory_limit: int = 0,
) -> Certificate:
    """A proof that no plan by the planner's rules (see plan()) takes less than `total_ms`, for check_certificate(): hand in
    the total of an optimal plan, or the bound of a feasible one. When that cannot be proven (a lower total is possible,
    or the call is stopped or limited), a certificate of the greatest bound that prices alone were found to prove; when
    prices prove more than `total_ms`, of that. It looks at no conditions: conditions only take plans away. The other
    arguments are those of plan(); `memory_limit` is as much again for the branches of the proof. Its lists become Python
    objects when they are first asked for, as a plan's stops do.

    Raises Error bad_argument (machine, effort, options, total_ms; grid, when it cannot be scheduled at all), too_large;
    cancelled when stopped or limited before the panel was read, as a large one may be.
    """

def check_certificate(
    grid: Grid,
    machine: Machine,
    effort: Effort | None = None,
    *,
    certificate: Certificate,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
) -> CertificateCheck:
    """Checks every word of a certificate, in whole numbers, against classes, ways and costs that it makes itself from the
    grid; it uses none of the planner's code: what both use is Wales, which follows the loops, and the library's checks of
    its arguments. What does not hold is told, not raised. A plan that verify() finds to make the panel, and whose
    hand_work() comes to `bound_ms`, is then a least one of those that keep the planner's rules. `stop` and `progress` as
    in verify().

    Raises Error bad_argument (machine, effort), size_mismatch (another panel's certificate), too_large (totals; branches
    kept in two rows that would take more than a gibibyte), cancelled.
    """

def moves(plan: Plan) -> list[Move]:
    """Every move of a plan from the cast-on to the last row, in order. Works for wrong plans too: it translates and does not
    judge. Raises Error too_large (rows).
    """

def simulate(
    bed: Bed,
    moves: Sequence[Move],
    *,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
) -> Fabric:
    """Knits: executes the moves, right or wrong, on a bed that knows loops, strands and passings and nothing of charts, then
    reads the fabric back. A move that hands could not do is a fault, and the moves end there: nothing is read.

    The GIL is free meanwhile; `stop` and `progress` as in plan(), but a stopped call raises Error cancelled. Raises Error
    bad_argument (leftmost, columns); too_large (columns; moves; more than 2^26 passings); cancelled.
    """

def verify(
    grid: Grid,
    plan: Plan,
    *,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
) -> Verification:
    """Knits the plan and compares the fabric with the grid: the one way in which anything is called verified. A plan that
    makes the right cloth but tells a wrong carriage side, another crossing than the chart's, a stop at a row that the
    counter never reads, a column or wale that is not its needle's, other needles cast on than the chart's in row 1, a
    crossing's groups in another order than its name says, one twice or not at all, or tools that do not carry their
    stitches, is not. Work that changes nothing does no harm: the plan is verified all the same, and `needless` tells how
    much of it there is. An infeasible plan is none: nothing is knitted, and it is not verified. The order in which the
    plan lists its stops is not compared, for moves() goes by the row counter; charts, instructions, sessions, rests and
    plan_period() take only stops that rise.

    What hands cannot do of a plan is left undone and knitted on to its end, so that it hides no difference of the cloth:
    a rung that does not hang on the ladder is passed over, a batch without a loop at its from_row is not begun, of a
    crossing of which some stitch cannot be lifted or put back nothing is done, a needle that cannot be cast on, bound
    off, held or released is let be, one left in hold without a stitch goes back before the carriage comes.

    Raises Error size_mismatch when the plan is for another size; bad_argument when its leftmost needle is 0; too_large,
    as simulate(); cancelled. `stop` and `progress` as in simulate().
    """

max_file_bytes: int

def read_grid(json: str | bytes) -> Grid:
    """Reads "latchwork-grid", version 1.

    Raises Error with line and field: too_large, bad_encoding, bad_syntax, wrong_format, newer_version, duplicate_key,
    missing_field, unknown_field, bad_value; and what the types' own checks raise.
    """

def read_strip(json: str | bytes) -> Strip:
    """Reads "latchwork-strip", version 1.

    Raises Error with line and field: too_large, bad_encoding, bad_syntax, wrong_format, newer_version, duplicate_key,
    missing_field, unknown_field, bad_value; and what the types' own checks raise.
    """

def read_panel(json: str | bytes) -> Panel:
    """Reads "latchwork-panel", version 1: parts by motif, or cells in full.

    Raises Error with line and field: too_large, bad_encoding, bad_syntax, wrong_format, newer_version, duplicate_key,
    missing_field, unknown_field, bad_value; and what the types' own checks raise.
    """

def read_machine(json: str | bytes) -> MachineFile:
    """Reads "latchwork-machine", version 1.

    Raises Error with line and field: too_large, bad_encoding, bad_syntax, wrong_format, newer_version, duplicate_key,
    missing_field, unknown_field, bad_value; and what the types' own checks raise.
    """

def read_yarn_request(json: str | bytes) -> YarnRequest:
    """Reads "latchwork-yarn", version 1: what a need of yarn is reckoned from.

    Raises Error with line and field: too_large, bad_encoding, bad_syntax, wrong_format, newer_version, duplicate_key,
    missing_field, unknown_field, bad_value; and what the types' own checks raise.
    """

def read_article_request(json: str | bytes) -> ArticleRequest:
    """Reads "latchwork-article-choices", version 1: the members of ArticleRequest by their names, of `design` those that are
    read; what has a default may be left out, but for `article`, the names of measures and counts, and both textures of a
    substitute. `least_mm` and `greatest_mm` of a measure are numbers, or texts as read_length() takes them: "45 cm".

    Raises Error with line and field: too_large, bad_encoding, bad_syntax, wrong_format, newer_version, duplicate_key,
    missing_field, unknown_field, bad_value; bad_argument for what no panel's design can be; as read_length().
    """

def read_plan(json: str | bytes) -> Plan:
    """Reads "latchwork-plan", version 1.

    Raises Error with line and field: too_large, bad_encoding, bad_syntax, wrong_format, newer_version, duplicate_key,
    missing_field, unknown_field, bad_value; and what the types' own checks raise.
    """

def read_certificate(json: str | bytes) -> Certificate:
    """Reads "latchwork-certificate", version 1.

    Raises Error with line and field: too_large, bad_encoding, bad_syntax, wrong_format, newer_version, duplicate_key,
    missing_field, unknown_field, bad_value; and what the types' own checks raise.
    """

def read_swatch(csv: str | bytes) -> Swatch:
    """Reads a swatch file: CSV (RFC 4180) with a first line that names its columns, in any order:
    texture,counted,count,length,unit,place,swatch,state; the last four may be left out. counted is `stitches` or `rows`;
    unit is mm, cm, in or inches, m, ft or yd; without that column each length has its own ("10 cm"). state is `off the
    machine`, `rested` or `washed`, rested when it is left out. Lines that start with # and blank lines are passed over.

    Raises Error with line and field: bad_syntax, missing_field, unknown_field (field "column 3", counted from 1, for a
    column without a name), duplicate_key, bad_value, bad_unit, bad_encoding, too_large.
    """

def read_timings(csv: str | bytes) -> Timings:
    """Reads a timings file: CSV (RFC 4180), one spell a line, with a first line that names its columns, in any order: the
    counts stops, batches, drops, rungs_knit, rungs_purl, rungs_tuck, rungs_slip, crossings, stitches_crossed, holds,
    shapings, rows (those that no spell has may be left out, not all), time, unit (ms, s, min, h) and note (may be left
    out). A count is a whole number, nothing is 0; a time is a whole number of milliseconds (1.5 min is, 1.33333 min is
    refused). Lines that start with # and blank lines are passed over.

    Raises Error with line and field: bad_syntax, missing_field, unknown_field (field "column 3", counted from 1, for a
    column without a name), duplicate_key, bad_value, bad_unit, bad_encoding, too_large.
    """

@overload
def write(grid: Grid) -> str:
    """The JSON that read_grid() reads back to an equal grid."""
@overload
def write(strip: Strip) -> str:
    """The JSON that read_strip() reads back to an equal strip."""
@overload
def write(panel: Panel) -> str:
    """The JSON that read_panel() reads back to an equal panel: cells in full."""
@overload
def write(file: MachineFile) -> str:
    """The JSON that read_machine() reads back to an equal value."""
@overload
def write(request: YarnRequest) -> str:
    """The JSON that read_yarn_request() reads back to an equal request."""
@overload
def write(article: Article) -> str:
    """The JSON that read_article() reads back to an equal article."""
@overload
def write(article_request: ArticleRequest) -> str:
    """The JSON that read_article_request() reads back to an equal request; of the design, targets, groups and edge are not
    written.
    """
@overload
def write(plan: Plan) -> str:
    """The JSON that read_plan() reads back to an equal plan."""
@overload
def write(certificate: Certificate) -> str:
    """The JSON that read_certificate() reads back to an equal certificate."""
@overload
def write(swatch: Swatch) -> str:
    """The CSV that read_swatch() reads back to an equal swatch (lengths in mm)."""
@overload
def write(timings: Timings) -> str:
    """The CSV that read_timings() reads back to equal timings (every column, times in ms)."""

def article_names() -> list[str]:
    """Names of the articles that come with the library, in a fixed order: "cushion cover", "blanket of panels", "scarf",
    "bag panel", "straight garment pieces".
    """

def built_in_article(name: str) -> Article:
    """One of them.

    Raises Error bad_argument (field "name"), which names them all.
    """

def targets(article: Article, choices: ArticleChoices) -> Targets:
    """Pieces with their sizes, seams, filling and cautions. Where the list is of fillings the rule makes the article's
    measures of them; else the rule makes the filling. Ranges stay ranges: the least of a sum is the sum of what makes it
    least.

    Raises Error bad_argument for an article that contradicts itself or is out of its ranges (field
    "pieces[0].width.terms[1].of"), and for a choice that is missing, unknown, out of its range or not wanted (field
    "choices.list", "choices.measures[2].least_mm"): so too for a size that a graded rule does not know, and where a piece
    comes out without a width and length of 1..1e5 mm, a shape that does not rise within it, or a seam of less than 0 mm.
    """

def read_article(json: str | bytes) -> Article:
    """Reads "latchwork-article", version 1: the members of Article by their names; what has a default may be left out.

    Raises Error with line and field: too_large, bad_encoding, bad_syntax, wrong_format, newer_version, duplicate_key,
    missing_field, unknown_field, bad_value; bad_argument for what targets() refuses in an article.
    """

def piece_request(piece: TargetPiece, design: FitRequest) -> FitRequest:
    """What fits a piece: the design, with the piece for its target. The width is the piece's, where it is shaped that of its
    widest place, since the shape is cut from it; the height is its length. The design's seam_left, seam_right,
    seam_bottom and seam_top stay where the piece's edge is seamed, and are 0 where it is free or at the opening. Nothing
    is checked.
    """

def fit_piece(
    piece: TargetPiece,
    design: FitRequest,
    swatch: Swatch,
    *,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
) -> FitResult:
    """fit() of piece_request(). `stop` and `progress` as in fit(). Raises Error as fit()."""

def piece_outline(
    piece: TargetPiece,
    panel: Panel,
    swatch: Swatch,
    *,
    step: int = 1,
    state: ClothState | None = None,
    substitutes: Sequence[Substitute] = (),
    seam_left: float = 0.0,
    seam_right: float = 0.0,
    seam_bottom: float = 0.0,
    seam_top: float = 0.0,
) -> Outline:
    """The shape of a piece on a panel that is to make it, for shaped(): in mm between the seams at the panel's own gauges,
    columns by their strips' widths, rows by the heights that size() gives the panel in that shape. Ranges are met in
    their middle; between two points of the piece's shape the width changes evenly. In each row half of what the panel has
    too much lies outside at each side, as seen on the right side, to the nearest column, halves out. A point at the
    piece's length is at the panel's last row. Seams are read where the piece's edge is seamed. With step=2 the edges
    change after even rows only, when the carriage stands where it stood at the cast-on.

    Raises Error no_gauge (field = texture); bad_argument (field "piece.width_least_mm" or
    "piece.shape[1].width_least_mm", with the row, where the piece is wider than the panel;
    "piece.shape[1].height_least_mm" where it is higher; those and ..._greatest_mm for what is no range or does not rise;
    "step"; "outline", with the row, where no stitch is left; as size()).
    """

def fitted_piece(
    piece: TargetPiece,
    design: FitRequest,
    candidate: FitCandidate,
    swatch: Swatch,
    panel: int = 0,
    *,
    step: int = 1,
    edge_stitches: int = 1,
    cut: CutWork = CutWork.refuse,
) -> Panel:
    """A panel that a piece is knitted of: fitted() of piece_request(), cut to the piece's shape, where it has one, by
    piece_outline(), measured by the design's state, substitutes and seams. Of a piece sewn of several panels the outer
    ones have its edges, and what lies between them stays whole. `step` as in piece_outline(), `edge_stitches` and `cut`
    as in shaped(). Raises Error as fitted(), piece_outline() and shaped(); bad_encoding.
    """

def panel_design(request: ArticleRequest, panel: Panel) -> FitRequest:
    """The design of a request, with groups and edge cut from the panel's strips: each one vertical repeat of its strip, from
    row 1 up. Only of a panel of one band.

    Raises Error bad_argument (field "made[1]", "groups[0].last", "edge", "design.rows_step", ...; "panel" for one of
    several bands; "groups[0]", "edge" for a strip that repeats in more rows than the panel has); crossing_cut.
    """

def fit_article(
    article: Article,
    request: ArticleRequest,
    panel: Panel,
    swatch: Swatch,
    *,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
) -> ArticleFit:
    """Targets of the article, the panel as it stands held against each piece that is made as it is, and the best fits, which
    fitted() makes panels of. Pieces alike are fitted once; pieces whose lengths are one target get one row count, those
    whose widths are one target too the same panels and times, chosen together by the least greatest error. A panel of
    several bands is held against the pieces and not fitted, and a message says so. `stop` and `progress` as in fit().

    Raises Error as targets(), panel_design(), size() and fit(); bad_argument (field "made[0]") for a name that is no
    piece's under these choices; bad_encoding for a name that is not UTF-8.
    """

def chart_svg(
    panel: Panel,
    side: Side = Side.right_side,
    *,
    plan: Plan | None = None,
    machine: Machine | None = None,
    stitch_width_mm: float = 1.3,
    stitch_height_mm: float = 1.0,
    blank: Blank = Blank.commoner,
    first_row: int = 1,
    last_row: int = 0,
    first_column: int = 0,
    columns: int = 0,
) -> str:
    """The chart as SVG 1.1, black on white: published standard symbols, crossings as slanted bands, row numbers, column or
    needle numbers, the stops of `plan`, a key of the symbols used, and a title that says which side is shown. `machine`
    names the needles in the operator's view; None is the standard machine. Only the proportion of the stitch counts.
    `blank` says which loops go without a mark; the rows shown are `first_row` to `last_row`, a sheet of a panel that is
    too high for one, both counted from 1 (last_row 0: the panel's last): a crossing stands on the sheet of the row above
    it, one after the panel's last row on that row's; the stop below the first row is marked on either sheet. Of a panel
    that is too wide for one, the columns shown: `first_column`, counted from 0 from the left on the right side from
    whichever side the chart is drawn, and how many (columns 0: all from there on); a crossing that reaches past them is
    not drawn, its cells are grey.

    Raises Error bad_argument (field; "stops[1].row" for a plan whose stops do not rise within its rows); size_mismatch
    (plan of another size).
    """

def chart_text(
    panel: Panel,
    side: Side = Side.right_side,
    *,
    plan: Plan | None = None,
    machine: Machine | None = None,
    stitch_width_mm: float = 1.3,
    stitch_height_mm: float = 1.0,
    blank: Blank = Blank.commoner,
    first_row: int = 1,
    last_row: int = 0,
    first_column: int = 0,
    columns: int = 0,
) -> str:
    """The same for a terminal; every loop is marked. Raises as chart_svg()."""

def instructions(panel: Panel, plan: Plan, machine: Machine) -> str:
    """Machine instructions in words: by row counter and carriage side, one line a stop, needles in the operator's view, re-
    forms as one sweep across the bed, crossings by marks of their own ("X1"; letters are strips of charts); a key of the
    abbreviations used; the cautions that fit. What findings() calls an error comes first; for an infeasible plan, why,
    and no steps.

    Verify the plan first: verify() alone says whether its work makes this panel. Here a plan is refused that no words can
    tell, that they would tell wrongly, or that asks what hands cannot do; one that hands can follow to another cloth is
    told as it stands. Steps that hands would do for nothing, which verify() counts, are left out, and a line at the top
    says so.

    Raises Error size_mismatch (plan of another size); bad_argument for a machine out of its ranges, and for such a plan:
    rows, columns and needles outside the panel, needles cast on other than the chart's in row 1, stops that are not by
    rising row, a carriage on the other side than its row's, columns and wales that are not the needle's, rungs that are
    not all those from `from_row` up to the stop's row or are no knit, purl, tuck or slip, a needle re-formed or a stitch
    crossed twice at one stop, crossings that lack a group or have it twice, put it on other needles or in another order,
    or have no tools for it, counts below 1 and times below 0, and the first step that hands cannot do, such as a batch
    from a row where its wale has no loop; too_large as simulate(). Its row is the stop's, its column that on the RS where
    there is one, its field one such as "stops[2].reforms[0].needle". Of an infeasible plan the stops are not looked at.
    """

def plan_two_rhythms(
    grid: Grid,
    machine: Machine,
    effort: Effort | None = None,
    *,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
    work_limit: int = 0,
    time_limit_ms: int = 0,
    memory_limit: int = 0,
    conditions: Conditions | None = None,
) -> TwoRhythms:
    """The best plan in two rhythms: crossings are made where the panel has them, which is every so many rows or at some of
    these; re-forms at the stops of a rhythm of their own, all that is due, the best of all by full enumeration. It takes
    no more than plan_regular(). Conditions are kept by all stops that are made, forced ones too. Arguments and errors as
    in plan_regular().
    """

def condition_prices(
    grid: Grid,
    machine: Machine,
    effort: Effort | None = None,
    *,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
    work_limit: int = 0,
    time_limit_ms: int = 0,
    memory_limit: int = 0,
    conditions: Conditions | None = None,
) -> list[ConditionPrice]:
    """The price of each condition that is asked (rows_apart 1 asks nothing), alone, and last of all together;
    `forced_exempt` goes with each. Each is a plan of its own; the work limit and the time limit are the whole call's.
    Stopped, or out of work or time, it tells the prices found so far, and of the others what is had without a search:
    first the plan under all conditions, which keeps each, then each alone, while the panel, read once for each, comes to
    no more than 150,000 cells. What has no plan then says so by a total of -1. Arguments and errors as in plan().
    """

def plan_front(
    grid: Grid,
    machine: Machine,
    effort: Effort | None = None,
    *,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
    work_limit: int = 0,
    time_limit_ms: int = 0,
    memory_limit: int = 0,
    conditions: Conditions | None = None,
) -> Front:
    """Effort against different kinds of stop: plans of which none beats another in both, each proven or bounded. max_kinds
    of the conditions, where it is set, is the most kinds that are of interest. After the least plan it looks at one kind,
    at the most, then at the middle of what no proof settles. Where neither work nor time is limited each number of kinds
    has an allowance of search of its own, a second or so: a panel with hundreds of kinds of stop takes minutes. The work
    limit and the time limit are the whole call's, an eighth of what is left or more for each number of kinds; the same
    work limit gives the same front. Stopped, or out of work or time, the points found so far. Arguments and errors as in
    plan().
    """

def stop_reasons(
    grid: Grid,
    machine: Machine,
    effort: Effort | None = None,
    *,
    plan: Plan,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
    work_limit: int = 0,
    time_limit_ms: int = 0,
    memory_limit: int = 0,
    conditions: Conditions | None = None,
) -> list[StopReason]:
    """The reason of each stop of a plan, in its order: what forces it, or what it saves, found exactly by planning again
    with its row closed. The other arguments are those of plan(); the work limit and the time limit are the whole call's:
    stopped, or out of work or time, the causes not yet found are `unknown`. Raises as plan(), and Error size_mismatch
    (plan) for a plan of another size, bad_argument ("stops[3].row") for stops that do not rise within its rows, before
    anything is planned; bad_argument (plan) where nothing forces a stop and no plan does without it, because there is
    none for the panel under these conditions at all.
    """

def stop_cause_name(cause: StopCause) -> str:
    """"crossing", "shaping", "hand_cells", "saving" or "unknown"."""

def plan_period(plan: Plan) -> Period:
    """Where a plan becomes periodic, as that of a panel repeated upward does: of all periods that are gone through at least
    twice, with a stop, the one that covers the most rows; then the shortest; then the lowest. An infeasible plan has
    none, and its stops are not looked at. Raises Error too_large (rows), above Grid.max_side rows; bad_argument (rows)
    below 0, and ("stops[3].row") for stops that do not rise within them.
    """

def plan_tolerances(
    grid: Grid,
    machine: Machine,
    effort: Effort | None = None,
    *,
    plan: Plan,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
    work_limit: int = 0,
    time_limit_ms: int = 0,
    memory_limit: int = 0,
    conditions: Conditions | None = None,
) -> list[Tolerance]:
    """For every field of Effort, in its order, how far it may move before this plan, a least one under the conditions, is
    none. Exact, and an end that no search proves, or past which the times of all plans cannot be counted, is told by its
    flag, as is one not yet looked at when the call is stopped, or its work or time is over. Some tens of plans; the work
    limit and the time limit are the whole call's. The other arguments are those of plan(). Raises as plan(), and before
    anything is planned Error size_mismatch (plan) for a plan of another size and bad_argument ("stops[3].row") for stops
    that do not rise within its rows; bad_argument (plan) when the panel has no plan, another takes less, this one breaks
    a condition, or takes less than any by the planner's rules can (see plan()); and, unless the call is over by then,
    when it works the wales of a rhythm otherwise, or does not make this panel.
    """

def work_times(plan: Plan, effort: Effort | None = None, pieces: int = 1) -> WorkTimes:
    """The time of `pieces` panels made by one plan, by kind of work, from its steps and these efforts; effort None is
    Effort(). An article of several plans takes the sums of theirs, field by field; sewing up is in none. Raises Error
    bad_argument (effort; pieces: 1..1000; field "plan", with the first of its findings, for one that is infeasible);
    too_large (field "pieces") for so much work that 64 bits do not hold it.
    """

def sessions(
    plan: Plan,
    effort: Effort | None = None,
    *,
    session_ms: int = 3600000,
    rest_ms: int = 1200000,
    from_row: int = 0,
) -> list[Session]:
    """Where to stop for the day, in sessions as few and as even as good ends allow. A session may end after each stop in the
    second half of its length that leaves nothing in hold; where there is no such stop, after each row in its length that
    does; where there is none either, after the first such row past its length, so that it lasts longer. The panel's end
    counts as such a stop. Of all ways with the fewest sessions it is the one whose longest session is shortest, of these
    the one whose shortest is longest, of these the one whose first session is longest, then the second, and so on. A plan
    that is infeasible has none.

    Raises Error bad_argument (effort; field "session_ms", "rest_ms", "from_row", "rows", or "stops[3].row" for stops that
    do not rise within 0..rows); too_large for a plan of more rows than Grid.max_side, or of more work than 2^60 ms.
    """

def rests(
    plan: Plan,
    effort: Effort | None = None,
    *,
    session_ms: int = 3600000,
    rest_ms: int = 1200000,
    from_row: int = 0,
) -> list[Rest]:
    """Where the hands rest within those sessions: after the stop at which the hand work since the last rest comes to
    `rest_ms`; 0: nowhere. Not at a session's end, nor inside a stop, however long. Raises as sessions().
    """

def read_brief(folder: str | os.PathLike[str]) -> Brief:
    """Reads a folder with panel.json, machine.json and, if there, swatch.csv (else an empty swatch), yarn.json, article.json
    and substitutes.csv (columns texture,use: a texture that lacks a swatch, and the one whose gauge is used for it) and
    brief.json (format "latchwork-brief": state, session_ms, rest_ms; each may be left out). Raises Error bad_argument
    (folder) for an empty name or a NUL in it; io (field = file name), and what the readers raise with the file's name
    before the field: of article.json also, with its line, what targets() and panel_design() refuse, and an article that
    is neither the library's nor a file "name.json" of the folder that is no other file of a brief or a job, as
    "plan.json" is; bad_encoding for text that is not UTF-8; of substitutes.csv, with its line, bad_syntax, missing_field,
    unknown_field ("column 3" for one without a name), bad_value for a texture that is empty, named twice or its own
    substitute, and too_large.
    """

def run(
    brief: Brief,
    *,
    stop: StopSource | None = None,
    progress: Callable[[Progress], object] | None = None,
    work_limit: int = 0,
    time_limit_ms: int = 0,
    memory_limit: int = 0,
    conditions: Conditions | None = None,
) -> Job:
    """Finds, plans both ways, verifies both, sizes, reckons the yarn; fits the article and plans the panels that fit. What
    wants a gauge that the swatch has not is None, and Job.missing tells which texture. `stop`, `progress` and the limits
    as in plan(), for each plan anew, but for a time limit, which is for `plan` and `unconditioned` together; `conditions`
    bind all plans but `unconditioned`. Raises what those calls raise; bad_argument (field "brief.state",
    "brief.session_ms", "brief.rest_ms"); too_large (field "article", "article.seam_ms_per_m") for an article of more than
    2^60 ms of work at the machine, or of sewing up.
    """

def fitted_brief(brief: Brief, job: Job, index: int) -> Brief:
    """A brief of its own for a panel of ArticleJob.panels, by its index, on which run() and write_job() go as on any other:
    panel, machine, efforts, swatch and the substitutes that it was fitted by, no article. Its yarn is that of one panel,
    without seams; where YarnRequest.rows say which yarns knit which rows, and the panel has other rows, it has none. Its
    size is told as any brief's, with what the seams take in, in the state that it was fitted in: the article's design's,
    or, where that names none, the brief's. The panel is called after the brief's and what it is for, "runner: front, left
    panels", and then ", seams included" where a seam takes in any of it, at the piece's edges or between panels.

    Raises Error bad_argument (field "brief.article", "index"; "job.article.fit" for a job of another brief);
    size_mismatch (field "job.article"); as fit_article().
    """

def summary(brief: Brief, job: Job) -> str:
    """For a terminal: size and the state of the cloth that it is of (or which textures of swatch.csv it wants), yarn,
    article, feasibility, stops, hand work by kind, hours, sessions and rests, bound, price of regularity, "verified" or
    not, and what is doubtful in the swatch.

    Raises Error size_mismatch (field "job.plan", "job.size", "job.size.strips[2]", "job.yarn", ...) for a job of another
    brief; bad_argument (field "job.verification", "job.plan.leftmost", "job.plan.total_ms", ...) for a plan that is
    called verified and does not knit the brief's panel, stands on other needles than its machine's, takes other times by
    its efforts, or breaks the job's conditions (but rhythms, which are not looked at); for findings of another machine;
    for another size or need of yarn than the brief's panel, swatch and yarns come to (field "job.size", "job.yarn"); for
    an article that is fitted or reckoned in another way than the brief's (field "job.article.fit",
    "job.article.works[0].plan", ...); as size(), yarn_need() and fit_article().
    """

def page_html(brief: Brief, job: Job) -> str:
    """One HTML5 page to print and take to the machine: summary, schematic, article, instructions, and both charts, cut at
    the same rows into as many A4 sheets as they take. Raises as summary(), chart_svg() and instructions().
    """

def write_job(brief: Brief, job: Job, folder: str | os.PathLike[str]) -> None:
    """Writes chart-rs.svg, chart-operator.svg, chart.txt, instructions.txt, plan.json, summary.txt, page.html and, for a
    panel with a size and in one piece (a stitch in every row, and a column in common with the row below), schematic.svg,
    for an article that is fitted article.txt, into `folder`, which is made if it is not there; an older schematic.svg or
    article.txt of which there is none now is taken away. The schematic is of the brief's panel, or, where an article is
    fitted, of its pieces as they are made, and of that panel as it stands where no piece is made of it: each piece's
    panels sewn together, seams dashed, measured between the seams, with the width of a panel and of all together. Pieces
    alike are drawn once; notes say which edges are sewn and what is not drawn. Raises Error bad_argument (folder) for an
    empty name or a NUL; io (field = file name, or folder); crossing_cut where a group of the article cuts a crossing;
    bad_encoding for a name that is not UTF-8; as page_html(), and as write() of a plan.
    """

def write_brief(brief: Brief, folder: str | os.PathLike[str]) -> None:
    """Writes the files that read_brief() reads back to an equal brief into `folder`, which is made if it is not there; an
    older yarn.json, article.json, substitutes.csv or brief.json of which there is none now is taken away. Where anything
    is refused nothing is written. Raises Error bad_argument (folder) for an empty name or a NUL; bad_argument (field
    "brief.article.article") for an own article that article.json does not name as a file of the folder, or names as one
    that a brief or a job has for something else ("yarn.json", "plan.json"), in whatever letters; bad_value, bad_encoding
    or too_large (field "brief.substitutes[0].use", "brief.substitutes") for what substitutes.csv does not take; io (field
    = file name, or folder); what write() of the parts raises.
    """
