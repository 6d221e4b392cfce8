"""Quantities: read with their units, written back, and converted as an independent library of units does it."""

import itertools
import math
from fractions import Fraction

import latchwork as lw
import pytest
from hypothesis import given
from hypothesis import strategies as st

pint = pytest.importorskip("pint")
UNITS = pint.UnitRegistry()
EXACT = pint.UnitRegistry(non_int_type=Fraction)
# Ours, and pint's names for them.
LENGTHS = dict(zip(lw.LengthUnit, ("mm", "cm", "m", "inch", "foot", "yard"), strict=True))
WEIGHTS = dict(zip(lw.WeightUnit, ("gram", "kilogram", "ounce", "pound", "grain"), strict=True))
# 1 in = 25.4 mm and 1 lb = 453.59237 g exactly (NIST SP 811, appendix B.8).
MM = dict(zip(lw.LengthUnit, map(Fraction, ("1", "10", "1000", "25.4", "304.8", "914.4")), strict=True))
GRAMS = dict(zip(lw.WeightUnit, map(Fraction, ("1", "1000", "28.349523125", "453.59237", "0.06479891")), strict=True))


@pytest.mark.parametrize("first, second", itertools.product(lw.LengthUnit, repeat=2))
def test_lengths_convert_as_in_pint(first, second):
    for value in (1.0, 17.75, 0.1, 28.0, 12345.678):
        ours = lw.length_in(lw.length_of(value, first), second)
        assert math.isclose(ours, UNITS.Quantity(value, LENGTHS[first]).m_as(LENGTHS[second]), rel_tol=1e-15)


@pytest.mark.parametrize("first, second", itertools.product(lw.WeightUnit, repeat=2))
def test_weights_convert_as_in_pint(first, second):
    for value in (1.0, 17.75, 0.1, 28.0, 12345.678):
        ours = lw.weight_in(lw.weight_of(value, first), second)
        assert math.isclose(ours, UNITS.Quantity(value, WEIGHTS[first]).m_as(WEIGHTS[second]), rel_tol=1e-15)


@pytest.mark.parametrize("text", ["45 cm", "17.75 in", "2 yd", "0.5 ft", "1.75 oz", "50 g", "2 lb", "7 grain", "90 min", "1.5 h"])
def test_text_is_read_as_in_pint(text):
    theirs = UNITS.Quantity(text)
    if theirs.check("[length]"):
        assert math.isclose(lw.read_length(text).mm, theirs.m_as("mm"), rel_tol=1e-15)
    elif theirs.check("[mass]"):
        assert math.isclose(lw.read_weight(text).g, theirs.m_as("g"), rel_tol=1e-15)
    else:
        assert lw.read_duration(text).ms == theirs.m_as("ms")


@given(
    st.integers(0, 99),
    st.integers(0, 59),
    st.decimals(0, 59, places=4, allow_nan=False),
    st.sampled_from(("h", "hr", "hrs", "hour", "hours")),
    st.sampled_from(("min", "mins", "minute", "minutes")),
    st.sampled_from(("s", "sec", "secs", "second", "seconds")),
)
def test_a_duration_is_the_sum_of_its_parts_as_in_pint(hours, minutes, seconds, hour, minute, second):
    """By pint's units with Python's fractions: exact, so that what is no whole number of milliseconds is seen."""
    parts = [(Fraction(hours), "hour", hour), (Fraction(minutes), "minute", minute), (Fraction(seconds), "second", second)]
    theirs = sum(EXACT.Quantity(value, unit) for value, unit, _ in parts).m_as("ms")
    text = f"{hours} {hour} {minutes} {minute} {seconds} {second}"
    if theirs.denominator == 1:
        assert lw.read_duration(text).ms == theirs
    else:
        with pytest.raises(lw.Error) as refused:
            lw.read_duration(text)
        assert refused.value.code == lw.ErrorCode.bad_value
    for value, unit, word in parts[:2]:
        assert lw.read_duration(f"{value} {word}").ms == EXACT.Quantity(value, unit).m_as("ms")


@pytest.mark.parametrize("text, unit", [("28 sts / 10 cm", "10 cm"), ("28 sts / 4 in", "4 inch"), ("7 sts/in", "1 inch")])
def test_a_count_over_a_length_is_told_per_10_cm_as_in_pint(text, unit):
    density = lw.read_count_per_length(text)
    theirs = UNITS.Quantity(density.count) / UNITS(unit)
    assert math.isclose(lw.per_10cm(density), theirs.m_as("1 / dm"), rel_tol=1e-15)


@given(st.integers(1, 10**17 - 1), st.integers(0, 17), st.sampled_from(lw.LengthUnit), st.sampled_from(lw.WeightUnit))
def test_what_is_read_is_the_nearest_double(digits, decimals, length, weight):
    """Against Python's exact fractions."""
    number = f"{digits:0{decimals + 1}d}"
    number = number[: len(number) - decimals] + ("." + number[len(number) - decimals :] if decimals else "")
    for base, unit, read in (
        (MM[length], {v: k for k, v in {"in": 3, "ft": 4, "yd": 5, "mm": 0, "cm": 1, "m": 2}.items()}[length], lw.read_length),
        (GRAMS[weight], ("g", "kg", "oz", "lb", "grain")[weight], lw.read_weight),
    ):
        exact = Fraction(digits, 10**decimals) * base
        if not Fraction("1e-6") <= exact <= 10**12:
            with pytest.raises(lw.Error):
                read(f"{number} {unit}")
            continue
        (got,) = (getattr(read(f"{number} {unit}"), field) for field in ("mm" if read is lw.read_length else "g",))
        assert got == float(exact)


@given(st.floats(1e-6, 1e12), st.sampled_from(lw.LengthUnit), st.sampled_from(lw.WeightUnit), st.integers(0, 10**12))
def test_what_is_written_is_read_back_equal(value, length, weight, ms):
    assert lw.read_length(lw.length_text(lw.Length(value), length)) == lw.Length(value)
    assert lw.read_weight(lw.weight_text(lw.Weight(value), weight)) == lw.Weight(value)
    assert lw.read_duration(lw.duration_text(lw.Duration(ms))) == lw.Duration(ms)
    density = lw.CountPerLength(lw.Counted.rows, 28.0, value)
    assert lw.read_count_per_length(lw.count_per_length_text(density, length)) == density


@given(st.text(max_size=20) | st.text("0123456789 /.cmingyftszhrow\"", max_size=14))
def test_any_text_is_read_or_refused_with_its_place(text):
    for read in (lw.read_length, lw.read_weight, lw.read_duration, lw.read_count_per_length):
        try:
            read(text, "here")
        except lw.Error as error:
            assert error.field == "here" and 1 <= error.character <= len(text) + 1


def test_a_refusal_names_its_field_and_character():
    with pytest.raises(lw.Error) as caught:
        lw.read_length("45 g", field="width")
    assert (caught.value.code, caught.value.field, caught.value.character) == (lw.ErrorCode.bad_unit, "width", 4)
    with pytest.raises(lw.Error) as caught:
        lw.read_count_per_length("28 sts / 10 cm / 4 in")
    assert (caught.value.code, caught.value.field, caught.value.character) == (lw.ErrorCode.bad_unit, "", 16)
    with pytest.raises(lw.Error) as caught:
        lw.length_text(lw.Length(math.nan), lw.LengthUnit.mm)
    assert (caught.value.code, caught.value.field, caught.value.character) == (lw.ErrorCode.bad_argument, "mm", 0)
    assert lw.Length(1.0) < lw.Length(2.0) and lw.max_quantity_bytes >= 100
    with pytest.raises(lw.Error) as caught:
        lw.read_weight("1" * (lw.max_quantity_bytes + 1), "weight")
    assert (caught.value.code, caught.value.field, caught.value.character) == (lw.ErrorCode.too_large, "weight", 257)


def test_types_keep_quantities_apart():
    with pytest.raises(TypeError):
        lw.length_in(lw.Weight(1.0), lw.LengthUnit.mm)
    with pytest.raises(TypeError):
        lw.length_text(lw.Length(1.0), lw.WeightUnit.gram)
