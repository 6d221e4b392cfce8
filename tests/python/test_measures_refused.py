"""Numbers that no measure, yarn or session can be, in every argument that takes one: each is refused by its field, and
what is not refused gives no number that is not finite."""

import dataclasses
import math

import latchwork as lw
import pytest

NAN, INF = math.nan, math.inf
ENDLESS = (NAN, INF, -INF, 1e300, 1e18, -1.0)
ZERO = (0.0, -0.0)
DUST = (5e-324,)  # the least double above 0
ALL = ENDLESS + ZERO + DUST

PANEL = lw.join_strips("panel", 12, [lw.stockinette(20)])
GAUGE = [
    lw.Measurement("stockinette", lw.Counted.stitches, 28, 100),
    lw.Measurement("stockinette", lw.Counted.rows, 40, 100),
]
SWATCH = lw.Swatch(GAUGE)
PLAN = lw.plan(PANEL.grid, lw.Machine())


def fit(**changed):
    groups = [lw.FitGroup([lw.stockinette(4)], 1, 20)]
    base = {"width_mm": 100, "height_mm": 100, "groups": groups, "edge": lw.stockinette(1), "rows_step": 2}
    return lw.fit(lw.FitRequest(**base | changed), SWATCH)


def need(**changed):
    base = {
        "yarns": [lw.Yarn("a", lw.YarnNumber(lw.YarnSystem.tex, 50.0), 25.0)],
        "weighed": [lw.WeighedSwatch("stockinette", 10.0, 0.0, 100.0, 100.0)],
    }
    return lw.yarn_need(PANEL, SWATCH, lw.YarnRequest(**base | changed))


def weighed(**changed):
    swatch = lw.WeighedSwatch("stockinette", 10.0, 0.0, 100.0, 100.0)
    return need(weighed=[dataclasses.replace(swatch, **changed)])


def unravelled(stitches=100.0, length_mm=100.0):
    return need(weighed=[], loops=[lw.MeasuredLoops("stockinette", stitches, length_mm)])


def yarn(number=50.0, ball_g=25.0):
    return need(yarns=[lw.Yarn("a", lw.YarnNumber(lw.YarnSystem.tex, number), ball_g)])


def measured(count=28.0, length_mm=100.0):
    return lw.Swatch([lw.Measurement("stockinette", lw.Counted.stitches, count, length_mm)]).measurements


def size(**changed):
    return lw.size(PANEL, SWATCH, **changed)


def plain(courses=5.0, wales=4.0):
    return need(plain=lw.PlainConstants(courses, wales))


SEAMS = ("seam_left", "seam_right", "seam_top", "seam_bottom")
ROWS = [  # call, its argument, what that cannot be, the field that the error names
    (measured, "count", ALL, "measurements[0].count"),
    (measured, "length_mm", ALL, "measurements[0].length_mm"),
    *[(call, seam, ENDLESS + DUST, seam) for call in (size, fit) for seam in SEAMS],
    (size, "level", ALL, "level"),
    (fit, "width_mm", ALL, "width_mm"),
    (fit, "width_most_mm", ENDLESS + DUST, "width_most_mm"),
    (fit, "height_mm", ALL, "height_mm"),
    (fit, "height_most_mm", ENDLESS + DUST, "height_most_mm"),
    (fit, "tolerance_percent", ENDLESS, "tolerance_percent"),
    (fit, "seam_stitches", ENDLESS + DUST, "seam_stitches"),
    (need, "cast_on_rows", ENDLESS, "cast_on_rows"),
    (need, "bind_off_rows", ENDLESS, "bind_off_rows"),
    (need, "waste_rows", ENDLESS, "waste_rows"),
    (need, "seam_mm", ENDLESS, "seam_mm"),
    (need, "seam_ratio", ALL, "seam_ratio"),
    (need, "sureness", ENDLESS, "sureness"),
    (need, "allowance", ENDLESS, "allowance"),
    (weighed, "weight_g", ALL, "weighed[0].weight_g"),
    (weighed, "scale_g", ENDLESS, "weighed[0].scale_g"),
    (weighed, "width_mm", ALL, "weighed[0].width_mm"),  # 0 without the other's being 0
    (weighed, "height_mm", ALL, "weighed[0].height_mm"),
    (weighed, "stitches", ENDLESS + DUST, "weighed[0].stitches"),
    (weighed, "rows", ENDLESS + DUST, "weighed[0].rows"),
    (weighed, "tex", ENDLESS + DUST, "weighed[0].tex"),
    (unravelled, "stitches", ALL, "loops[0].stitches"),
    (unravelled, "length_mm", ALL, "loops[0].length_mm"),
    (yarn, "ball_g", ENDLESS + DUST, "yarns[0].ball_g"),
    (yarn, "number", ENDLESS + DUST, "yarns[0].number.number"),
    (plain, "courses", ALL, "plain.courses"),
    (plain, "wales", ALL, "plain.wales"),
]


def numbers(value):
    """Every float within."""
    if isinstance(value, float):
        yield value
    elif dataclasses.is_dataclass(value):
        for field in dataclasses.fields(value):
            yield from numbers(getattr(value, field.name))
    elif isinstance(value, (list, tuple)):
        for item in value:
            yield from numbers(item)


@pytest.mark.parametrize("call, argument, bad, field", ROWS, ids=[f"{call.__name__}-{name}" for call, name, *_ in ROWS])
def test_what_no_measure_can_be_is_refused_by_its_field(call, argument, bad, field):
    for value in ALL:
        if any(value is each for each in bad):
            with pytest.raises(lw.Error) as caught:
                call(**{argument: value})
            assert caught.value.field == field, value
            assert caught.value.code in (lw.ErrorCode.bad_argument, lw.ErrorCode.bad_value)
            assert str(caught.value).startswith(field + " is ")
        else:
            got = list(numbers(call(**{argument: value})))
            assert got and all(math.isfinite(number) for number in got), value


LENGTH = "60000..86400000"
TIMES = [  # argument, what it is given, the code, and the range that the message tells
    *[("session_ms", each, "bad_argument", LENGTH) for each in (0, -1, 59_999, 86_400_001, 2**63 - 1)],
    *[("rest_ms", each, "bad_argument", "0 or " + LENGTH) for each in (-1, 59_999, 86_400_001, 2**63 - 1)],
    *[("from_row", each, "bad_argument", "0..12") for each in (-1, 13, 59_999)],
    *[("from_row", each, "too_large", "at most 2147483647") for each in (2**31, 2**70)],
    *[(name, 2**70, "too_large", f"at most {2**63 - 1}") for name in ("session_ms", "rest_ms")],
]


@pytest.mark.parametrize("argument, value, code, told", TIMES)
def test_times_and_rows_past_a_session_are_refused_with_their_range(argument, value, code, told):
    for call in (lw.sessions, lw.rests):
        with pytest.raises(lw.Error) as caught:
            call(PLAN, **{argument: value})
        assert (caught.value.code, caught.value.field) == (lw.ErrorCode[code], argument)
        assert str(caught.value) == f"{argument} is {value}; " + ("" if code == "too_large" else "it must be ") + told


def test_no_rests_at_all_may_be_asked_for():
    assert lw.rests(PLAN, rest_ms=0) == [] and lw.sessions(PLAN, rest_ms=0) == lw.sessions(PLAN)


PIECES = [(0, "bad_argument"), (-1, "bad_argument"), (1001, "bad_argument"), (2**31, "too_large")]


@pytest.mark.parametrize("pieces, code", PIECES)
def test_no_pieces_and_too_many_are_refused(pieces, code):
    with pytest.raises(lw.Error) as caught:
        lw.work_times(PLAN, pieces=pieces)
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode[code], "pieces")


READERS = {
    "length": (lw.read_length, "45 cm"),
    "weight": (lw.read_weight, "50 g"),
    "duration": (lw.read_duration, "20 min"),
    "gauge": (lw.read_count_per_length, "28 sts / 10 cm"),
    "yarn": (lw.read_yarn_number, "Nm 2/28"),
}
NO_QUANTITY = [
    *("", "45", "nan cm", "inf in", "1e400 cm", "-3 cm", "17 3/0 in", "17 3/4", "1/3/4 in", "0x10 cm", "1 e5 mm"),
    *("\0 cm", "９ cm", "1,5 cm", "1 cm 2 in", "28 sts/0 cm", "28 sts / 10", "28 sts / 10 cm / 4 in"),
    *("1" * 500 + " cm", "1" * 255 + "é cm"),
]


@pytest.mark.parametrize("kind", READERS)
def test_what_is_no_quantity_is_refused_by_its_name_and_character(kind):
    read, good = READERS[kind]
    assert all(math.isfinite(number) for number in numbers(read(good)))
    for text in NO_QUANTITY:
        with pytest.raises(lw.Error) as caught:
            read(text, "the label")
        assert caught.value.field == "the label"
        assert 1 <= caught.value.character <= min(len(text) + 1, 257), text


HEAD = "texture,counted,count,length"
TABLES = [
    ("", "texture", 1),
    (HEAD + ",unit\nstockinette,stitches,nan,10,cm\n", "count", 2),
    (HEAD + ",unit\nstockinette,stitches,1e999,10,cm\n", "count", 2),
    (HEAD + ",unit\nstockinette,stitches,28,0,cm\n", "length", 2),
    (HEAD + ",unit\nstockinette,stitches,28,10,\n", "unit", 2),
    (HEAD + "\nstockinette,stitches,28,10\n", "length", 2),
    (HEAD + "\nstockinette,stitches,28,10 cm\nstockinette,stitches,28,4 inn\n", "length", 3),
]


@pytest.mark.parametrize("text, field, line", TABLES)
def test_tables_of_no_measures_are_refused_at_their_field(text, field, line):
    with pytest.raises(lw.Error) as caught:
        lw.read_swatch(text)
    assert (caught.value.field, caught.value.line) == (field, line)


TWICE = [lw.Substitute("moss", "plain"), lw.Substitute("waves", "plain"), lw.Substitute("moss", "garter")]
SAME = [lw.Substitute("moss", "moss")]


def article(substitutes):
    request = lw.ArticleRequest(article="scarf", design=lw.FitRequest(substitutes=substitutes))
    return lw.fit_article(lw.built_in_article("scarf"), request, PANEL, SWATCH)


def brief(substitutes):
    return lw.run(lw.Brief(PANEL, SWATCH, lw.Machine(), substitutes=substitutes))


SUBSTITUTED = [  # who takes substitutes, and what stands before the field
    (lambda each: size(substitutes=each), ""),
    (lambda each: lw.measuring_findings(PANEL, SWATCH, substitutes=each), ""),
    (lambda each: fit(substitutes=each), ""),
    (lambda each: need(substitutes=each), ""),
    (article, "design."),
    (brief, "brief."),
]


@pytest.mark.parametrize("call, before", SUBSTITUTED)
def test_substitutes_that_contradict_each_other_are_refused(call, before):
    for substitutes, field in ((TWICE, "substitutes[2].texture"), (SAME, "substitutes[0].use")):
        with pytest.raises(lw.Error) as caught:
            call(substitutes)
        assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, before + field)
    with pytest.raises(lw.Error, match="'moss', which has a substitute already: 'plain', of .*substitutes.0.$"):
        call(TWICE)


def test_substitutes_of_files_are_refused_with_their_line():
    yarn = lw.YarnRequest(yarns=[lw.Yarn("a")], substitutes=TWICE[:2])
    scarf = lw.ArticleRequest(article="scarf", design=lw.FitRequest(substitutes=TWICE[:2]))
    for read, request in ((lw.read_yarn_request, yarn), (lw.read_article_request, scarf)):
        spoiled = lw.write(request).replace('"waves"', '"moss"')
        with pytest.raises(lw.Error) as caught:
            read(spoiled)
        assert caught.value.field.endswith("substitutes[1].texture")
        assert '"texture"' in spoiled.splitlines()[caught.value.line - 1]


def test_enums_are_refused_by_their_argument_and_elements_by_their_index():
    panel = lw.join_strips("p", 4, [lw.stockinette(3)])
    measurement = lw.Measurement("a", lw.Counted.rows, 1, 1)
    for call, field in (
        (lambda: lw.size(panel, lw.Swatch([]), state=7), "state"),
        (lambda: lw.length_text(lw.Length(1.0), 9), "unit"),
        (lambda: lw.yarn_number_in(lw.YarnNumber(lw.YarnSystem.tex, 1.0), 99), "system"),
        (lambda: lw.plain_constants_of(7), "state"),
        (lambda: lw.Swatch([measurement, lw.Measurement("a", 7, 1, 1)]), "measurements[1].counted"),
        (lambda: lw.yarns_together([lw.YarnNumber(99, 1.0)]), "yarns[0].system"),
    ):
        with pytest.raises(lw.Error) as caught:
            call()
        assert caught.value.field == field
