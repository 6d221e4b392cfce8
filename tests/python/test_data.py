"""Enumerations and plain data are the C++ ones: same names, numbers, order and defaults."""

import copy
import dataclasses
import enum
import gc
import pickle
import sys

import headers
import latchwork as lw
import pytest

ENUMS = {name: getattr(lw, name) for name in headers.enums()}
OPTIONS = {"PlanOptions", "FitOptions", "SessionOptions", "WatchOptions", "ChartOptions", "PanelParts", "ShapeOptions", "SizeOptions"}  # keyword arguments in Python
STRUCTS = {name: getattr(lw, name) for name in headers.structs() if name not in OPTIONS}

# One of each with every field away from its default; what is not here has only fields that are.
SAMPLES = [
    lw.Place(3, 4, 5, "left", 6),
    lw.Crossing(2, 1, 2, 1, 3, lw.Lean.left, lw.Centre.behind),
    lw.Wale(3, 2, (3, 4, 4)),
    lw.StripSpan("a", "b", 1, 2, 3),
    lw.Band(2, 3, (lw.StripSpan("a", "b", 0, 2, 3),)),
    lw.Machine("m", 100, 9.0, -4, [1, 2], 2, 3, 5, 8, False, False),
    lw.Effort(*range(1, 13)),
    lw.MachineFile(lw.Machine(name="mine"), lw.Effort(stop=1)),
    lw.Finding(
        lw.FindingCode.no_tool, lw.Severity.warning, lw.Place(1, 2), 3, 4, 5, 6, "a message", "a suggestion"
    ),
    lw.Measurement("moss", lw.Counted.rows, 40.0, 100.0, "left"),
    lw.Density(30.0, 0.5, 3),
    lw.Gauge("moss", lw.Density(30.0), lw.Density(40.0)),
    lw.StripSize("a", "b", 1, 2, 3, 4.0, 5.0),
    lw.Size(1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, (lw.StripSize("a"),), ("wavy",)),
    lw.FitGroup([lw.Strip("a", "b", lw.Grid(1, 1))], 2, 3),
    lw.FitCandidate(2, (3, 1), 4, 5, 6, 7, 8, True, 9.0, 10.0, 11.0, 12.0, 13.0, 14.0, 15.0),
    lw.FitGive(lw.FitBound.times, 1, 21.0, 20.0, "too many"),
    lw.FitNearest(lw.FitCandidate(2), (lw.FitGive(),)),
    lw.FitResult((lw.FitCandidate(),), (lw.FitNearest(),), False),
    lw.GradeSize("M", 1.0, 2.0, 3.0, 4.0),
    lw.GradeRequest(lw.FitRequest(width_mm=1.0), [lw.GradeSize("M")]),
    lw.Grading(("M",), (lw.FitCandidate(2),), 0, (lw.FitNearest(lw.FitCandidate(2)),), False, "nothing fits"),
    lw.Length(1.5),
    lw.Weight(2.5),
    lw.Duration(3),
    lw.CountPerLength(lw.Counted.rows, 28.0, 101.6),
    lw.YarnNumber(lw.YarnSystem.worsted, 24.0, 2),
    lw.PlainConstants(5.0, 3.8),
    lw.WeighedSwatch("moss", 5.0, 0.1, 100.0, 120.0, 30.0, 40.0, 400.0),
    lw.MeasuredLoops("moss", 100.0, 1200.0),
    lw.Substitute("rope", "moss"),
    lw.Yarn("main", lw.YarnNumber(lw.YarnSystem.metric, 28.0, 2), 50.0),
    lw.YarnRows(3, 8, 1),
    lw.YarnRequest(
        [lw.Yarn("main")],
        [lw.YarnRows()],
        [lw.WeighedSwatch("moss")],
        [lw.MeasuredLoops("moss")],
        [lw.Substitute("rope", "moss")],
        lw.PlainConstants(5.0, 3.8),
        2,
        0.5,
        1.5,
        6.0,
        0,
        800.0,
        2.5,
        1,
        1.0,
        0.2,
    ),
    lw.YarnShare(1, 100.0, 5.0, 250.0, 120.0, 3),
    lw.YarnEstimate(lw.YarnRoute.measured_loops, 100.0, 5.0, 250.0, (lw.YarnShare(),), ("a note",)),
    lw.YarnNeed((lw.YarnEstimate(),), 0.1, ("missing",), ("warning",)),
    lw.StripRun(1, 3, 2, 9),
    lw.ArticleRequest(
        "scarf",
        lw.ArticleChoices("list", "size"),
        ["panel"],
        [lw.StripRun(1, 2)],
        3,
        lw.FitRequest(rows_step=8),
        600_000,
    ),
    lw.PieceFit(lw.TargetPiece("front"), lw.FitCandidate(2), lw.FitResult((lw.FitCandidate(),))),
    lw.ArticleFit(lw.Targets(sources=("a table",)), (lw.PieceFit(lw.TargetPiece("front")),), "several bands"),
    lw.PieceWork(3, True, lw.Plan(rows=4), lw.Verification(True)),
    lw.SplitPart(20, 21, 0, 1),
    lw.FittedPanel("fitted-front", "front", 0, 0, 2),
    lw.ArticleJob(
        lw.ArticleFit(message="bands"),
        [lw.PieceWork(2)],
        [lw.FittedPanel("fitted-front")],
        lw.WorkTimes(5, total_ms=5),
        1200.0,
        6,
        lw.YarnNeed((), 0.1),
        ["a note"],
    ),
    lw.NamedMeasure("chest", 711.2, 762.0, "28-30 in"),
    lw.ArticleSize("XS", [lw.NamedMeasure("chest")]),
    lw.SizeList("women", "a table", lw.SourceMark.from_memory, lw.SizeOf.body, [lw.ArticleSize("XS")]),
    lw.LengthTerm("chest", 0.5),
    lw.Extent([lw.LengthTerm("chest")], 1.0, 2.0, ["panels"]),
    lw.ShapePoint(lw.Extent(least_mm=1.0), lw.Extent(least_mm=2.0)),
    lw.ArticlePiece(
        "front",
        2,
        ["panels"],
        "across",
        "up",
        lw.Extent(least_mm=1.0),
        lw.Extent(least_mm=2.0),
        lw.EdgeUse.seamed,
        lw.EdgeUse.seamed,
        lw.EdgeUse.closure,
        lw.EdgeUse.closure,
        [lw.ShapePoint()],
        ["buttons"],
    ),
    lw.ArticleSeam("side", 2, ["panels"], ["across"], lw.Extent(least_mm=1.0), ["buttons"]),
    lw.Closure("buttons", lw.ClosureKind.buttons, 25.0, 50.0, "a note", lw.SourceMark.published),
    lw.RulePair(400.0, 390.0),
    lw.FillingRule("graded", "a note", lw.SourceMark.practice, 1.0, 2.0, [lw.RulePair()]),
    lw.ArticleInput("ease", "room", 1.0, 2.0),
    lw.ArticleCount("panels", "in a ring", 2, 3),
    lw.Caution("hot", "a note", lw.SourceMark.practice),
    lw.Article(
        "mat",
        ["width"],
        [lw.SizeList()],
        [lw.ArticleInput()],
        [lw.ArticleCount()],
        [lw.Closure()],
        [lw.FillingRule()],
        [lw.ArticlePiece()],
        [lw.ArticleSeam()],
        [lw.Caution()],
    ),
    lw.NamedCount("panels", 3),
    lw.ArticleChoices("a", "b", "c", "d", [lw.NamedMeasure()], [lw.NamedCount()]),
    lw.TargetPoint(1.0, 2.0, 3.0, 4.0),
    lw.TargetPiece(
        "front",
        2,
        1.0,
        2.0,
        3.0,
        4.0,
        lw.EdgeUse.seamed,
        lw.EdgeUse.seamed,
        lw.EdgeUse.closure,
        lw.EdgeUse.closure,
        (lw.TargetPoint(),),
    ),
    lw.TargetSeam("side", 2, 3.0, 4.0),
    lw.Targets((lw.TargetPiece(),), (lw.TargetSeam(),), (lw.NamedMeasure(),), (lw.Caution(),), ("a",), 1.0, 2.0),
    lw.YarnCategory(3, "Light", 21, 24, 3.75, 4.5),
    lw.GroupReturn(lw.GroupName.right, 2, -1, 1, [2]),
    lw.CrossingStep(lw.Crossing(2, 1), [lw.GroupReturn()], True),
    lw.Reform(-2, 3, 4, 1, [lw.Cell.purl, lw.Cell.knit]),
    lw.Shaping(-3, 2, False),
    lw.Stop(4, False, [-1], [lw.Reform()], [lw.CrossingStep()], [lw.Shaping()], [1], 500),
    lw.Rhythm(8, 4),
    lw.KeptRhythm(2, 1, 3, lw.Rhythm(8, 4)),
    lw.Conditions(True, 4, 6, 3, [lw.KeptRhythm()], [5], True),
    lw.TwoRhythms(lw.Rhythm(4, 2), lw.Rhythm(6, 3), lw.Plan(rows=3)),
    lw.ConditionPrice(lw.Condition.max_kinds, lw.PlanStatus.optimal, 3, 2, 1, 2),
    lw.FrontPoint(3, lw.Plan(rows=3)),
    lw.Front([lw.FrontPoint()], True, [lw.Finding()]),
    lw.StopReason(3, lw.StopCause.crossing, lw.Place(3, 4), 1, 2, 3, "a crossing"),
    lw.Period(1, 20, 8, 2, 3),
    lw.WorkTimes(*range(1, 8)),
    lw.Session(3, 9, False, False, 50, 40),
    lw.Rest(1, 4, 30),
    lw.Tolerance(lw.EffortTerm.hold, 3, 2, 4, True, True, True),
    lw.HandWork(*range(1, 13)),
    lw.Progress(1, 2, 0.5),
    lw.StopPrice(3, 700),
    lw.WaleClass([1, 5], [lw.StopPrice(3, 700)], 1400),
    lw.Branch(2, 1, True, lw.BranchEnd.dominated, 4),
    lw.Certificate(4, 6, 81_500, 6, [2], [lw.WaleClass([2])], [lw.Stretch(1, 2)], [lw.Branch()]),
    lw.Stretch(1, 2, [lw.Branch()]),
    lw.CertificateCheck(True, 81_500, lw.Place(), "holds"),
    lw.Move(lw.MoveKind.drop, -2, -2, 5, 0),
    lw.Bed(-4, 8),
    lw.Fault(3, lw.Place(1, 2), "no loop"),
    lw.Verification(True, lw.Place(), "verified", 10),
    lw.Verification(False, lw.Place(2, 1), "no", 9, 1, "purl", "knit", lw.Fault(3, lw.Place(2, 1), "cannot")),
    lw.Verification(True, lw.Place(), "verified; one step is needless: x", 9, needless=1, first_needless=lw.Fault(2)),
    lw.Fabric(lw.Grid(2, 2), [lw.Fault()], 4),
    lw.Spell(*range(1, 13), 5_000, "the telephone rang", 7),
    lw.TermFit(lw.EffortTerm.row, lw.TermState.tied, 4, 4.2, 0.5, 3, (lw.EffortTerm.stop,)),
    lw.OutlyingSpell(3, 9, 1_500.0, 4.5),
    lw.EffortFit(lw.Effort(stop=1), (lw.TermFit(),), (lw.OutlyingSpell(),), 5, 2, 3, 700.0),
]


@pytest.mark.parametrize("name", headers.enums())
def test_an_enumeration_has_the_names_and_numbers_of_its_header(name):
    assert issubclass(ENUMS[name], enum.IntEnum)
    assert {member.name: member.value for member in ENUMS[name]} == headers.enums()[name]
    assert ENUMS[name].__doc__ and "IntEnum" not in ENUMS[name].__doc__


@pytest.mark.parametrize("name", STRUCTS)
def test_a_struct_has_the_fields_of_its_header_in_their_order_with_their_defaults(name):
    fields = {field.name: field for field in dataclasses.fields(STRUCTS[name])}
    assert list(fields) == list(headers.structs()[name])
    for field, text in headers.structs()[name].items():
        default = fields[field].default
        if fields[field].default_factory is not dataclasses.MISSING:
            default = fields[field].default_factory()
        if text:
            assert default == headers.value(text, ENUMS), field
            assert type(default) in (type(headers.value(text, ENUMS)), float), field
        elif default is not dataclasses.MISSING:  # std::string, vector, optional or a struct: empty
            assert default in ("", [], (), None) or default == type(default)(), field
    assert STRUCTS[name].__doc__ and "(" not in STRUCTS[name].__doc__.split("\n")[0].split(" ")[0]


def test_error_codes_and_names_are_those_of_the_enumeration():
    assert lw.error_codes() == list(lw.ErrorCode)
    assert [lw.error_name(code) for code in lw.ErrorCode] == [code.name for code in lw.ErrorCode]
    assert [lw.finding_name(code) for code in lw.FindingCode] == [code.name for code in lw.FindingCode]
    assert [lw.plan_status_name(status) for status in lw.PlanStatus] == [status.name for status in lw.PlanStatus]


def test_letters_and_cells_are_those_of_the_table():
    assert {lw.cell_letter(cell): cell.name for cell in lw.Cell} == {
        "k": "knit",
        "p": "purl",
        "t": "tuck",
        "s": "slip",
        ".": "none",
    }
    assert all(lw.cell_of(lw.cell_letter(cell)) is cell for cell in lw.Cell)
    assert [lw.cell_of(text) for text in ("K", "x", "", "kk", "é", "\0")] == [None] * 6


@pytest.mark.parametrize("protocol", range(pickle.HIGHEST_PROTOCOL + 1))
def test_what_is_made_in_cpp_is_pickled_in_every_protocol(protocol):
    strip = lw.rope(1, 1, 4, lw.Lean.right)
    swatch = lw.Swatch([lw.Measurement("rope", lw.Counted.rows, 40, 100, "")])
    timings = lw.Timings([lw.Spell(stops=1, batches=2, time_ms=1000)])
    for made in (strip.grid, lw.join_strips("rope", 8, [strip]), swatch, timings):
        twin = pickle.loads(pickle.dumps(made, protocol))
        assert twin == made and type(twin) is type(made) and twin is not made
    assert pickle.loads(pickle.dumps(lw.Wales(strip.grid), protocol)).all == lw.Wales(strip.grid).all


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda sample: type(sample).__name__)
def test_every_kind_of_data_is_shown_in_one_line_copied_compared_and_pickled(sample):
    assert "\n" not in repr(sample)
    for twin in (copy.copy(sample), copy.deepcopy(sample), pickle.loads(pickle.dumps(sample))):
        assert twin == sample and twin is not sample
        assert type(twin) is type(sample)
    for field in dataclasses.fields(sample):
        other = getattr(type(sample)(), field.name) if not isinstance(sample, lw.Fabric) else None
        if other != getattr(sample, field.name):
            assert dataclasses.replace(sample, **{field.name: other}) != sample, field.name
    assert sample != "something else"


def test_what_a_class_hands_out_is_frozen_and_what_is_made_to_be_edited_is_not():
    with pytest.raises(dataclasses.FrozenInstanceError):
        lw.Crossing().lean = lw.Lean.left
    assert len({lw.Crossing(), lw.Crossing(), lw.Crossing(row=2)}) == 2
    stop = lw.Stop()
    stop.row = 7
    stop.holds.append(3)
    assert stop == lw.Stop(row=7, holds=[3])
    assert lw.Stop().holds == []  # lists are not shared
    with pytest.raises(AttributeError):
        stop.rwo = 8


def test_crossings_tell_their_width_and_travel_and_the_trades_name():
    crossing = lw.Crossing(row=1, column=0, left=2, centre=1, right=3, lean=lw.Lean.right, place=lw.Centre.behind)
    assert (crossing.width, crossing.travel) == (6, 4)
    assert lw.crossing_name(lw.Crossing(left=3, right=3)) == "3/3 RC"
    # Craft Yarn Council: in n/m LC the front group, n, stands on the right.
    assert lw.crossing_name(lw.Crossing(left=1, right=2, lean=lw.Lean.left)) == "2/1 LC"
    assert lw.crossing_name(crossing) == "2/1/3 RC, centre behind"


@pytest.mark.parametrize(
    "change, message",
    [
        (lambda plan: setattr(plan, "rows", "six"), r"Plan\.rows must be int, not str"),
        (lambda plan: setattr(plan, "rows", 6.0), r"Plan\.rows must be int, not float"),
        (lambda plan: setattr(plan, "stops", 3), r"Plan\.stops must be a list, not int"),
        (lambda plan: setattr(plan, "stops", "ab"), r"Plan\.stops must be a list, not str"),
        (lambda plan: setattr(plan, "stops", [lw.Stop(), lw.Reform()]), r"Plan\.stops\[1\] must be Stop, not .*Reform"),
        (lambda plan: setattr(plan, "stops", [lw.Stop(holds=[None])]), r"Plan\.stops\[0\]\.holds\[0\] must be int"),
        (lambda plan: setattr(plan, "status", lw.Lean.left), r"Plan\.status must be PlanStatus, not Lean"),
        (lambda plan: setattr(plan, "carriage_starts_right", 1), r"Plan\.carriage_starts_right must be bool, not int"),
        (lambda plan: setattr(plan, "findings", [lw.Finding(message=b"x")]), r"findings\[0\]\.message must be str"),
        (lambda plan: setattr(plan, "rhythm", (1, 2)), r"Plan\.rhythm must be Rhythm, not tuple"),
    ],
)
def test_data_of_a_wrong_type_is_refused_with_the_path_to_it(change, message):
    plan = lw.Plan()
    change(plan)
    with pytest.raises(TypeError, match=message):
        lw.hand_work(plan)


@pytest.mark.parametrize(
    "plan, field, limit",
    [
        (lw.Plan(rows=1 << 31), "rows", "2147483647"),
        (lw.Plan(stops=[lw.Stop(), lw.Stop(row=-(1 << 40))]), "stops[1].row", "-2147483648"),
        (lw.Plan(total_ms=1 << 70), "total_ms", "9223372036854775807"),
        (lw.Plan(status=7), "status", "0..2"),
        (lw.Plan(stops=[lw.Stop(reforms=[lw.Reform(rungs=[9])])]), "stops[0].reforms[0].rungs[0]", "0..4"),
    ],
)
def test_numbers_that_do_not_fit_are_refused_with_field_and_limit(plan, field, limit):
    with pytest.raises(lw.Error) as caught:
        lw.hand_work(plan)
    assert caught.value.code is lw.ErrorCode.bad_argument
    assert caught.value.field == field
    assert limit in str(caught.value)


def test_a_list_that_shrinks_while_it_is_read_is_read_to_its_end_and_no_further():
    class Sly:
        def __init__(self, victim):
            self.victim = victim

        def __index__(self):
            self.victim.clear()
            return 1

    holds = []
    holds += [Sly(holds), 2, 3]
    assert lw.hand_work(lw.Plan(stops=[lw.Stop(holds=holds)])).holds <= 1
    assert holds == []


def test_text_that_utf8_cannot_write_is_refused():
    with pytest.raises(lw.Error) as caught:
        lw.findings(lw.Grid(2, 2), lw.Machine(name="\ud800"))
    assert caught.value.code is lw.ErrorCode.bad_encoding
    assert caught.value.field == "machine.name"


def test_calls_and_errors_leave_no_reference_behind(cable):
    plan = lw.plan(cable, lw.Machine())
    watched = [lw.Cell.knit, lw.Lean.right, lw.Place, lw.Move, lw.Plan, lw.Grid, lw.Error, lw.ErrorCode.bad_argument]

    def call():
        assert lw.verify(cable, plan).verified
        assert lw.read_plan(lw.write(plan)) == plan
        assert lw.moves(plan) and lw.Wales(cable).all and cable.crossings
        for wrong in (lw.Plan(stops=[lw.Stop(row=1 << 40)]), lw.Plan(rows="six"), lw.Plan(status=9)):
            with pytest.raises((lw.Error, TypeError)):
                lw.hand_work(wrong)

    for _ in range(3):
        call()
    gc.collect()
    before = [sys.getrefcount(thing) for thing in watched]
    for _ in range(100):
        call()
    gc.collect()
    after = [sys.getrefcount(thing) for thing in watched]
    assert max(abs(a - b) for a, b in zip(after, before)) < 50


@pytest.mark.parametrize("kind", [lw.Grid, lw.Panel, lw.Swatch, lw.Timings, lw.Wales], ids=lambda kind: kind.__name__)
def test_an_object_that_was_never_made_is_refused_wherever_it_is_read(kind):
    nothing = kind.__new__(kind)
    for use in (lambda: nothing == nothing, lambda: repr(nothing), lambda: pickle.dumps(nothing)):
        with pytest.raises(TypeError, match="__new__ alone"):
            use()


def test_a_grid_that_was_never_made_is_refused_as_an_argument():
    with pytest.raises(TypeError, match="__new__ alone"):
        lw.plan(lw.Grid.__new__(lw.Grid), lw.Machine())
