"""The enumerations, with the numbers that stand in files and in the C ABI.

They are written here, and not made by the extension module, so that they are ordinary ``IntEnum`` classes: type checkers
see their members, they pickle, and they compare with the elements of a cell array. tests/python holds them against the
C++ headers.
"""

from enum import IntEnum


class Cell(IntEnum):
    """What is seen on the right side (RS) at one row and column."""

    knit = 0
    """Face loop; letter k."""
    purl = 1
    """Back loop; letter p."""
    tuck = 2
    """This row's strand is held with the loop below, and the closing cell takes both; letter t."""
    slip = 3
    """This row's strand passes by uncaught; letter s."""
    none = 4
    """No stitch: outside a shaped edge, or inside as a ladder of bare strands; letter ``.``."""


class Lean(IntEnum):
    """Lean, on the right side (RS), of the outer group of a crossing that passes in front."""

    left = 0
    right = 1


class Centre(IntEnum):
    """Where the centre group of a crossing lies, from the RS."""

    front = 0
    between = 1
    behind = 2


class Axis(IntEnum):
    """Where a mirror axis lies: on the line between two stitches, or on a stitch that both halves share."""

    line = 0
    stitch = 1


class MachineClass(IntEnum):
    """Generic classes of single-bed machines by needle pitch."""

    fine = 0
    standard = 1
    mid = 2
    bulky = 3


class Severity(IntEnum):
    """How bad a finding is: an error cannot be made, a warning is hard or risky, advice is worth knowing."""

    advice = 0
    warning = 1
    error = 2


class FindingCode(IntEnum):
    """What a bed, tool or method cannot do or finds hard. Numbers never change; the list only grows."""

    off_bed = 1
    """The panel reaches past the bed where it is placed, or is wider than it."""
    no_tool = 2
    """A crossing's groups do not hang on one tool each, of two of each size: a group needs several, or there are too
    few; limit: the widest tool's prongs, where a group is wider."""
    tight_crossing = 3
    """A crossing travels further than is comfortable."""
    short_interval = 4
    """Crossings on the same stitches follow each other in fewer rows than they have stitches."""
    open_crossing = 5
    """A crossing after the panel's last row."""
    open_stack = 6
    """Tucks or slips that no knit or purl closes."""
    no_held_loop = 7
    """Tucks or slips with no loop below to hold."""
    high_stack = 8
    """More tucks or slips in a stack than the machine's limit."""
    tuck_at_edge = 9
    """A tuck in the outermost wale or beside a ladder."""
    slip_at_edge = 10
    """A slip there."""
    purl_at_edge = 11
    """A re-formed purl there: two rows come as one long loop."""
    long_float = 12
    """Slips side by side in a row over more needles than the limit."""
    tucks_side_by_side = 13
    """Neighbouring tucks in a row: by hold they would carry one straight strand."""
    wale_begins = 14
    """A stitch above ``none`` inside the panel: a shaping event (at a ladder, an eyelet)."""
    wale_ends = 15
    """``none`` above a stitch: a shaping event."""
    out_of_reach = 16
    """No batch that the rules allow can re-form this cell."""
    no_edge_stitch = 17
    """An outermost column that is not knit all the way."""
    carriage_side = 18
    """Plans: a stop is needed where the carriage is on the left, and only the right is allowed."""
    stops_too_near = 19
    """Plans: stops are needed nearer to each other than allowed."""
    too_deep = 20
    """Plans: a cell that only a deeper re-form than allowed can make."""
    off_rhythm = 21
    """Plans: wales that cannot be kept to their rhythm, or to any."""
    too_many_kinds = 22
    """Plans: more kinds of stop are needed than allowed."""
    row_closed = 23
    """Plans: a stop is needed after a row that is closed."""
    few_places = 24
    """Swatches: measured in fewer places than is usual."""
    short_measure = 25
    """Swatches: counted over less than is usual."""
    odd_one_out = 26
    """Swatches: one place that does not belong to the others."""
    half_measured = 27
    """Swatches: stitches alone, or rows alone, were measured."""
    no_swatch = 28
    """Sizes: a texture that was not measured, and that no other stands in for."""
    borrowed_gauge = 29
    """Sizes: a texture measured by another's gauge, as told."""
    mixed_states = 30
    """Sizes: textures that were measured in unlike states."""
    unknown_spread = 31
    """Sizes: textures measured in one place only."""
    unlike_heights = 32
    """Sizes: textures side by side that are not equally high."""
    unlike_widths = 33
    """Sizes: bands that are not equally wide."""
    crossing_cut = 34
    """Shaping: a crossing of which a part is outside the shape."""
    stack_cut = 35
    """Shaping: tucks or slips cut off from the loop they hold or from what closes them."""
    column_cut = 36
    """Shaping: hand cells in the edge stitches, which are knitted plain; crossings that reach into them."""
    no_stitch = 37
    """A panel without a single stitch."""
    two_pieces = 38
    """A row of which no stitch stands on one of the row below: the cloth comes apart there."""
    yarn_away = 39
    """Two stitches or more bound off or cast on at once at the edge where the carriage, and with it the yarn, is not after
    that row: a row later it is (common practice, no source)."""
    unlike_swatches = 40
    """Swatches: pieces whose gauges differ by more than their places explain."""
    narrow_texture = 41
    """Sizes: a texture that is one or two wales wide wherever it stands, none of them at an edge: so few have no gauge of
    their own (common practice, no source)."""


class Condition(IntEnum):
    """One of the conditions of a plan, or all of them together."""

    carriage_right_only = 0
    rows_apart = 1
    max_depth = 2
    max_kinds = 3
    rhythms = 4
    closed_rows = 5
    all = 6


class StopCause(IntEnum):
    """Why a plan stops where it does."""

    crossing = 0
    shaping = 1
    hand_cells = 2
    """No plan makes them without this stop."""
    saving = 3
    """Plans without it take more, or as much."""
    unknown = 4
    """The search for a plan without the stop came to no end."""


class LengthUnit(IntEnum):
    """Units of length."""

    mm = 0
    cm = 1
    m = 2
    inch = 3
    """25.4 mm."""
    foot = 4
    """12 in."""
    yard = 5
    """36 in."""


class WeightUnit(IntEnum):
    """Units of weight (textile: mass)."""

    gram = 0
    kilogram = 1
    ounce = 2
    """28.349523125 g, avoirdupois."""
    pound = 3
    """16 oz."""
    grain = 4
    """1/7000 lb."""


class MeasureSide(IntEnum):
    """On which side of a piece a measure's line is drawn."""

    bottom = 0
    top = 1
    left = 2
    right = 3


class EdgeLine(IntEnum):
    """How the points of an edge are joined."""

    straight = 0
    """By straight lines: slopes."""
    curve = 1
    """By a smooth curve that passes no point's columns between two points: a monotone cubic."""


class CutWork(IntEnum):
    """What shaped() does with a crossing or a stack that the edge cuts."""

    refuse = 0
    """Nothing is shaped: an error at the place."""
    knit = 1
    """The crossing is left out, and its span in its row and the next, or the stack, is knitted plain."""


class SpacingEnds(IntEnum):
    """Where the first and the last of evenly spaced events stand."""

    in_the_round = 0
    """k gaps, an event at the end of each: round a tube, or up rows, the last event in the last row."""
    flat = 1
    """k + 1 gaps, one at each edge and one between two events."""
    half_ends = 2
    """k gaps, the one across the ends cut in two: half of it at each edge."""


class Counted(IntEnum):
    """What is counted on cloth."""

    stitches = 0
    rows = 1


class EffortTerm(IntEnum):
    """The parts of an Effort by number, in their order."""

    stop = 0
    batch = 1
    drop = 2
    rung_knit = 3
    rung_purl = 4
    rung_tuck = 5
    rung_slip = 6
    crossing = 7
    crossing_stitch = 8
    hold = 9
    shaping = 10
    row = 11


class TermState(IntEnum):
    """Where a cost of a fitted Effort comes from."""

    fitted = 0
    """From the timings."""
    at_zero = 1
    """The timings would have it at or below 0; it is 0, which is the least it may be."""
    tied = 2
    """The timings tell only what it and others cost together (TermFit.tied_with)."""
    no_data = 3
    """No spell has any of it: the default is kept."""


class FitBound(IntEnum):
    """What a FitRequest holds to, and what would have to give."""

    width = 0
    """tolerance_percent of the width."""
    height = 1
    """tolerance_percent of the height."""
    times = 2
    """Least and most of a group."""
    edge_columns = 3
    """edge_least, edge_most."""
    rows = 4
    """rows_step, rows_extra."""
    panels = 5
    """panels_least, panels_most."""
    needles = 6


class ClothState(IntEnum):
    """What has been done to a cloth since it was knitted, the least finished first.

    Cloth measures differently in each, so measurements of two states are never put together.
    """

    off_machine = 0
    """Just taken off."""
    rested = 1
    """Lain without pull until it moves no more, overnight at least."""
    washed = 2
    """Washed and dried as the article will be."""


class PlainState(IntEnum):
    """How far a cloth of plain knit has come to rest."""

    dry_relaxed = 0
    """Off the machine and rested."""
    wet_relaxed = 1
    """Soaked and dried flat."""
    fully_relaxed = 2
    """Washed with agitation."""


class SizeOf(IntEnum):
    """What the measures of a size list are taken on."""

    finished = 0
    """The finished article."""
    filling = 1
    """What goes into it: a cushion's insert. A rule tells the article's measures."""
    body = 2
    """The wearer's body, without ease."""


class ClosureKind(IntEnum):
    """How an opening is closed."""

    open = 0
    overlap = 1
    seam = 2
    buttons = 3


class EdgeUse(IntEnum):
    """What becomes of an edge of a piece."""

    free = 0
    """Seen: nothing is sewn to it."""
    seamed = 1
    """Sewn to another edge, all of it or a part, so that a seam allowance is lost there."""
    closure = 2
    """At the opening: buttoned, lapped, or left open."""


class SourceMark(IntEnum):
    """How a figure or a statement is known."""

    published = 0
    """Its source prints it."""
    from_memory = 1
    """Its source is said to, and was not at hand."""
    practice = 2
    """Common practice, no source."""


class YarnRoute(IntEnum):
    """How a need of yarn was found."""

    weighed_area = 0
    """From weighed swatches, by their area and the gauge of the state they were weighed in."""
    weighed_stitches = 1
    """From weighed swatches, by their stitches and the panel's; needs no gauge."""
    measured_loops = 2
    """From the length of unravelled stitches; needs no gauge."""
    plain_geometry = 3
    """From the gauge of plain knit and Munden's constants, for stockinette only."""


class YarnSystem(IntEnum):
    """Ways of saying how fine a yarn is. With 1 yd = 0.9144 m and 1 lb = 453.59237 g all are exact multiples of tex."""

    tex = 0
    """g per 1000 m."""
    dtex = 1
    """g per 10 000 m."""
    denier = 2
    """g per 9000 m."""
    metric = 3
    """Nm: km per kg."""
    cotton = 4
    """Ne: hanks of 840 yd per lb."""
    spun_silk = 5
    """As cotton."""
    worsted = 6
    """Hanks of 560 yd per lb."""
    linen = 7
    """Leas of 300 yd per lb."""
    woollen_cut = 8
    """Cuts of 300 yd per lb."""
    woollen_run = 9
    """Runs of 1600 yd per lb."""
    yorkshire = 10
    """YSW: skeins of 256 yd per lb."""
    galashiels = 11
    """Cuts of 200 yd per lb."""
    west_of_england = 12
    """Snaps of 320 yd per lb."""
    jute = 13
    """lb per spindle of 14 400 yd: the greater, the thicker."""
    yards_per_pound = 14
    metres_per_100g = 15


class GroupName(IntEnum):
    """Which of a crossing's groups, named by where it stands on the RS before the crossing."""

    left = 0
    centre = 1
    right = 2


class PlanStatus(IntEnum):
    """Whether a plan is proven to be the least, is the best found, or there is none."""

    optimal = 0
    feasible = 1
    infeasible = 2


class BranchEnd(IntEnum):
    """What becomes of a branch of a certificate: it goes on in the next row, its bound is too high, or another is as good."""

    kept = 0
    bound = 1
    dominated = 2


class MoveKind(IntEnum):
    """What hands and carriage do, one thing at a time. Needles are the operator's; rows are RC rows, 0 the cast-on."""

    cast_on = 0
    """Needles needle..last_needle get a new loop each and are in work."""
    bind_off = 1
    """The loops on needle..last_needle are bound off; the needles are out of work."""
    carriage = 2
    """One pass: a needle in work and not in hold knits; a needle in hold takes the strand with its loop."""
    hold = 3
    """needle..last_needle go to hold."""
    release = 4
    """needle..last_needle come back to work."""
    tool_into = 5
    """The latch tool goes into the loop of ``row`` in the wale on ``needle``."""
    drop = 6
    """The stitch on ``needle`` is dropped and ladders down to the loop of ``row``."""
    rung_behind = 7
    """The tool passes behind the rung of ``row``: the rung is taken into the stitch."""
    rung_before = 8
    """The tool passes in front of the rung: it stays on the RS side of the stitch."""
    rung_aside = 9
    """The rung is left on the operator's side of the stitch, as when it is worked on its needle."""
    draw_toward = 10
    """The rung of ``row`` is drawn through, toward the operator: a back loop on the RS."""
    draw_away = 11
    """The rung of ``row`` is drawn through, away from the operator: a face loop on the RS."""
    hang = 12
    """The loop on the latch tool goes back on ``needle``."""
    lift = 13
    """The stitches on needle..last_needle go to pronged tool ``tool``."""
    put_back = 14
    """The stitches on ``tool`` go to needle..last_needle in their order; this tool now is nearest the operator."""


class Side(IntEnum):
    """Which side a picture shows: the right side, or the wrong side as the operator sees it on the bed."""

    right_side = 0
    operator_view = 1


class Blank(IntEnum):
    """Which loops an SVG chart leaves without a mark, as they look from the side shown."""

    commoner = 0
    """Those the panel has more of from this side, knit when equal: the picture is the lightest."""
    knit = 1
    purl = 2


class ErrorCode(IntEnum):
    """What went wrong. The numbers are the C ABI's status codes and never change; the list only grows."""

    internal = 1
    """An invariant of latchwork's own was broken: a bug in it."""
    no_memory = 2
    """Memory ran out."""
    bad_argument = 3
    """An argument is missing or out of its range; ``field`` names it."""
    off_grid = 4
    """A cell, crossing or slice reaches outside the grid."""
    stitch_taken = 5
    """Two crossings after one row share a column."""
    crossing_cut = 6
    """The operation would cut a crossing in two, or put an axis through it."""
    crossing_over_stack = 7
    """A tuck or slip in row r of a crossing's span."""
    crossing_over_none = 8
    """No stitch in rows r or r+1 of a crossing's span (the whole centre may be bare)."""
    size_mismatch = 9
    """Pieces of unequal size are put together."""
    too_large = 10
    """A size, count or cost beyond the documented limit."""
    bad_letter = 11
    """A letter that stands for no cell."""
    bad_syntax = 12
    """Text that is not well-formed (JSON, CSV, crossing line)."""
    bad_encoding = 13
    """Text that is not UTF-8."""
    newer_version = 14
    """A file of a newer format version than this library reads."""
    wrong_format = 15
    """A file of another kind than asked for."""
    duplicate_key = 16
    """A key that stands twice in one object."""
    missing_field = 17
    """A field that must be there is not."""
    unknown_field = 18
    """A field that the format does not know."""
    bad_value = 19
    """A field's value has the wrong type or is out of range."""
    bad_unit = 20
    """A unit that is missing, unknown, or not of the kind asked for."""
    io = 21
    """A file cannot be read or written."""
    no_gauge = 22
    """A texture has no measurements in the swatch."""
    cancelled = 23
    """The caller asked to stop."""
