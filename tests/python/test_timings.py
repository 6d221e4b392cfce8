"""Timed spells and the efforts fitted to them, against SciPy and NumPy."""

import copy
import dataclasses
import itertools
import pickle

import latchwork as lw
import numpy
import pytest
import scipy.optimize
import scipy.stats
from hypothesis import given
from hypothesis import strategies as st

COUNTS = [field.name for field in dataclasses.fields(lw.Spell)][:12]
TERMS = list(lw.EffortTerm)
CSV = """stops,batches,rows,time,unit,note
# in the evening
1,3,0,1.5,min,"left, upper"

,,24,96,s,
"""


def timings_of(counts, times, terms=TERMS):
    """Counts as a (spells, terms) array, times in ms."""
    names = [COUNTS[term] for term in terms]
    return lw.Timings(
        [lw.Spell(**dict(zip(names, map(int, row))), time_ms=int(time)) for row, time in zip(counts, times)]
    )


def of(fit, term):
    assert fit.terms[term].term is term
    return fit.terms[term]


def test_timings_are_read_with_their_units_notes_and_lines():
    timings = lw.read_timings(CSV)
    first = lw.Spell(stops=1, batches=3, time_ms=90_000, note="left, upper", line=3)
    assert timings.spells == (first, lw.Spell(rows=24, time_ms=96_000, line=5))
    assert timings == lw.Timings([dataclasses.replace(spell, line=0) for spell in timings.spells])
    assert timings != lw.Timings() == lw.Timings([]) and timings != 3
    assert repr(timings) == "<latchwork.Timings 2 spells>" and repr(lw.Timings([first])) == "<latchwork.Timings 1 spell>"
    assert lw.Timings.max_spells == 50_000 and lw.max_timings_bytes == 1 << 26
    assert (lw.max_spell_count, lw.max_spell_ms) == (1_000_000, 100 * 3600 * 1000)


@pytest.mark.parametrize(
    "text, code, line, field",
    [
        (CSV + "1,,,5,days,\n", lw.ErrorCode.bad_unit, 6, "unit"),
        (CSV + "1.5,,,5,s,\n", lw.ErrorCode.bad_value, 6, "stops"),
        (CSV + "1,,,-5,s,\n", lw.ErrorCode.bad_value, 6, "time"),
        (CSV + "1,,,101,h,\n", lw.ErrorCode.bad_value, 6, "time"),
        (CSV + ",,,5,s,\n", lw.ErrorCode.bad_value, 6, "time"),
        ("time,unit\n", lw.ErrorCode.missing_field, 1, "stops"),
        (b"rows,time,unit,note\n1,1,s,\xff\n", lw.ErrorCode.bad_encoding, 2, ""),
    ],
)
def test_bad_timings_files_are_refused_with_line_and_field(text, code, line, field):
    with pytest.raises(lw.Error) as caught:
        lw.read_timings(csv=text)
    assert (caught.value.code, caught.value.line, caught.value.field) == (code, line, field)


def test_bad_spells_and_defaults_are_refused_by_name():
    for spells, field in (
        ([lw.Spell(rows=1, time_ms=1), lw.Spell(rows=-1, time_ms=1)], "spells[1].rows"),
        ([lw.Spell(rows=1)], "spells[0].time_ms"),
        ([lw.Spell(time_ms=1)], "spells[0].time_ms"),
    ):
        with pytest.raises(lw.Error) as caught:
            lw.Timings(spells)
        assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_value, field)
    with pytest.raises(lw.Error) as caught:
        lw.fit_effort(lw.Timings(), lw.Effort(drop=-1))
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, "defaults.drop")
    with pytest.raises(lw.Error) as caught:
        lw.fit_effort(timings=lw.Timings([lw.Spell(rows=1, time_ms=3_600_001)]))
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.too_large, "effort.row")
    with pytest.raises(TypeError, match="spells"):
        lw.Timings(spells=3)


notes = st.text(st.characters(blacklist_categories=("Cs",), blacklist_characters="\0"), max_size=12)
spells = st.builds(
    lambda counts, time, note, line: lw.Spell(*counts, 1, time, note, line),
    st.lists(st.integers(0, lw.max_spell_count), min_size=11, max_size=11),
    st.integers(1, lw.max_spell_ms),
    notes,
    st.integers(0, 1000),
)


@given(st.lists(spells, max_size=6))
def test_what_is_written_is_read_back_equal_and_copies_keep_their_lines(values):
    timings = lw.Timings(values)
    assert lw.read_timings(lw.write(timings)) == timings
    for twin in (copy.copy(timings), copy.deepcopy(timings), pickle.loads(pickle.dumps(timings))):
        assert twin == timings and twin is not timings and twin.spells == tuple(values)


def spells_by_hand(rng, count, terms, noise):
    """Counts that a knitter could have, and times: 1..60 s a piece with noise in ms."""
    counts = rng.integers(0, 13, (count, len(terms)))
    counts[:, -1] += 1
    costs = rng.integers(200, 20_000, len(terms)) * (rng.random(len(terms)) < 0.8)
    times = counts @ costs + rng.normal(0, noise, count) if noise else counts @ costs
    return counts, numpy.maximum(numpy.rint(times), 1).astype(int)


@pytest.mark.parametrize("seed", range(60))
def test_costs_are_those_of_scipys_nnls_and_errors_those_of_the_textbook(seed):
    rng = numpy.random.default_rng(seed)
    terms = sorted(rng.choice(12, rng.integers(2, 13), replace=False))
    terms = [lw.EffortTerm(int(term)) for term in terms]
    counts, times = spells_by_hand(rng, int(rng.integers(len(terms) + 3, 80)), terms, rng.choice([300, 5_000, 40_000]))
    fit = lw.fit_effort(timings_of(counts, times, terms))

    # scipy.optimize.nnls, Lawson and Hanson's algorithm in another's hands.
    costs, distance = scipy.optimize.nnls(counts.astype(float), times.astype(float))
    numpy.testing.assert_allclose([of(fit, term).estimate_ms for term in terms], costs, rtol=1e-8, atol=1e-4)

    # The costs above 0 are ordinary least squares among themselves: numpy.linalg.lstsq, and the formula
    # s^2 (X'X)^-1 for their errors.
    free = costs > 0
    used = counts[:, free].astype(float)
    least, _, rank, _ = numpy.linalg.lstsq(used, times, rcond=None)
    numpy.testing.assert_allclose(costs[free], least, rtol=1e-8)
    degrees = len(times) - rank
    spread = distance / numpy.sqrt(degrees)
    assert (fit.spells, fit.rank, fit.degrees_of_freedom) == (len(times), rank, degrees)
    assert fit.spread_ms == pytest.approx(spread, rel=1e-8)
    errors = iter(spread * numpy.sqrt(numpy.diag(numpy.linalg.inv(used.T @ used))))
    for term, cost in zip(terms, costs):
        if cost > 0:
            assert of(fit, term).state is lw.TermState.fitted
            assert of(fit, term).standard_error_ms == pytest.approx(next(errors), rel=1e-7)
        else:
            assert of(fit, term).state is lw.TermState.at_zero
            assert of(fit, term).standard_error_ms is None
    for term in lw.EffortTerm:
        assert of(fit, term).tied_with == ()
        if term not in terms:
            assert of(fit, term).state is lw.TermState.no_data
            assert getattr(fit.effort, term.name) == getattr(lw.Effort(), term.name)
        else:
            assert getattr(fit.effort, term.name) == int(numpy.floor(of(fit, term).estimate_ms + 0.5))


@pytest.mark.parametrize("seed", range(60))
def test_outlying_spells_are_those_beyond_bonferronis_limit(seed):
    rng = numpy.random.default_rng(1000 + seed)
    terms = [lw.EffortTerm.stop, lw.EffortTerm.batch, lw.EffortTerm.row]
    counts, times = spells_by_hand(rng, int(rng.integers(6, 40)), terms, 2_000)
    odd = rng.choice(len(times), rng.integers(0, 3), replace=False)
    times[odd] += rng.integers(5_000, 30_000, len(odd))
    fit = lw.fit_effort(timings_of(counts, times, terms))
    if any(of(fit, term).state is not lw.TermState.fitted for term in terms):
        counts = counts[:, [of(fit, term).state is lw.TermState.fitted for term in terms]]

    # Externally studentized residuals by their definition: each spell against a fit without it.
    degrees = len(times) - counts.shape[1]
    limit = scipy.stats.t.isf(0.05 / len(times) / 2, degrees - 1)
    hat = counts @ numpy.linalg.pinv(counts.astype(float))
    residuals = times - hat @ times
    expected = {}
    for i in range(len(times)):
        rest = numpy.delete(counts, i, axis=0).astype(float)
        least, *_ = numpy.linalg.lstsq(rest, numpy.delete(times, i), rcond=None)
        without = numpy.sum((numpy.delete(times, i) - rest @ least) ** 2) / (degrees - 1)
        studentized = residuals[i] / numpy.sqrt(without * (1 - hat[i, i]))
        if abs(studentized) > limit:
            expected[i] = studentized
    assert {one.spell: one.studentized for one in fit.outlying} == pytest.approx(expected, rel=1e-6)
    assert {one.spell: one.residual_ms for one in fit.outlying} == pytest.approx({i: residuals[i] for i in expected})


def tied_groups(columns):
    """By the definition: columns that stand in one smallest dependent set, or in a chain of such, found by trying all."""
    group = list(range(columns.shape[1]))
    for size in range(1, columns.shape[1] + 1):
        for some in itertools.combinations(range(columns.shape[1]), size):
            if numpy.linalg.matrix_rank(columns[:, some]) != size - 1:
                continue
            if all(numpy.linalg.matrix_rank(numpy.delete(columns[:, some], k, axis=1)) == size - 1 for k in range(size)):
                group = [group[some[0]] if g in {group[k] for k in some} else g for g in group]
    return [frozenset(k for k, g in enumerate(group) if g == mine) for mine in group]


@pytest.mark.parametrize("seed", range(60))
def test_ties_are_told_by_name_and_shared_out_nearest_to_the_defaults(seed):
    rng = numpy.random.default_rng(2000 + seed)
    terms = [lw.EffortTerm(int(term)) for term in sorted(rng.choice(12, 6, replace=False))]
    count = int(rng.integers(1, 12))
    counts, times = spells_by_hand(rng, count, terms, rng.choice([0, 1_000]))
    if rng.random() < 0.6:
        counts[:, 1] = counts[:, 0] * rng.integers(1, 3)
    if rng.random() < 0.6:
        counts[:, 4] = counts[:, 2] + counts[:, 3]
    counts[:, 5] += 1
    fit = lw.fit_effort(timings_of(counts, times, terms))
    costs = numpy.array([of(fit, term).estimate_ms for term in terms])
    used = [k for k in range(6) if counts[:, k].any()]
    columns = counts[:, used].astype(float)

    groups = tied_groups(columns)
    for k, group in zip(used, groups):
        others = tuple(terms[used[other]] for other in sorted(group) if used[other] != k)
        assert of(fit, terms[k]).tied_with == others
        assert (of(fit, terms[k]).state is lw.TermState.tied) == bool(others)
        assert (of(fit, terms[k]).standard_error_ms is None) or not others

    # As near to the times as any costs can be ...
    best, distance = scipy.optimize.nnls(columns, times.astype(float))
    assert numpy.linalg.norm(times - columns @ costs[used]) == pytest.approx(distance, abs=1e-6 * numpy.linalg.norm(times))
    # ... and of those the nearest to the defaults: the same sums held by a heavy weight (Lawson and Hanson, chapter 22).
    defaults = numpy.array([getattr(lw.Effort(), terms[k].name) for k in used], float)
    heavy = 1e6 * columns * defaults / numpy.linalg.norm(columns * defaults)
    wanted, _ = scipy.optimize.nnls(
        numpy.vstack([heavy, numpy.eye(len(used))]), numpy.concatenate([heavy @ (best / defaults), numpy.ones(len(used))])
    )
    numpy.testing.assert_allclose(costs[used] / defaults, wanted, rtol=1e-4, atol=1e-4)


def test_a_fit_plans_and_describes():
    timings = lw.read_timings("stops,batches,rows,time,unit\n1,2,0,40,s\n2,1,0,42.5,s\n0,0,30,150,s\n1,1,10,77,s\n")
    fit = lw.fit_effort(timings)
    assert fit == lw.fit_effort(timings, lw.Effort()) == pickle.loads(pickle.dumps(fit)) == copy.deepcopy(fit)
    assert lw.fit_effort(timings, lw.Effort(hold=1)).effort.hold == 1
    text = lw.describe(fit)
    assert text.startswith("Efforts from 4 timed spells: 3 costs free, 1 degree of freedom, spread ")
    assert text.count("default, no spell has any") == 9 and "\nrow                  4.996 s  +- " in text
    grid = lw.Grid.from_text("kpk\nkpk\nkkk\nkpk\n")
    plan = lw.plan(grid, lw.Machine(), fit.effort)
    assert lw.hand_work(plan, fit.effort).carriage_ms == 4 * fit.effort.row
    assert [lw.effort_term_name(term) for term in lw.EffortTerm] == [term.name for term in lw.EffortTerm]
    assert [field.name for field in dataclasses.fields(lw.Effort)] == [term.name for term in lw.EffortTerm]
    assert [lw.term_state_name(state) for state in lw.TermState] == [state.name for state in lw.TermState]
