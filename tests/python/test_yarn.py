"""Yarn numbers: every pair of systems as an independent library of units converts them, and Python's exact fractions."""

import itertools
import math
from fractions import Fraction

import latchwork as lw
import pytest
from hypothesis import given
from hypothesis import strategies as st

System = lw.YarnSystem
# Yards to the pound of one: the definitions (include/latchwork/yarn.hpp names their sources).
YARDS_PER_POUND = {
    System.cotton: 840,
    System.spun_silk: 840,
    System.worsted: 560,
    System.linen: 300,
    System.woollen_cut: 300,
    System.woollen_run: 1600,
    System.yorkshire: 256,
    System.galashiels: 200,
    System.west_of_england: 320,
    System.yards_per_pound: 1,
}


def exact_tex(yarn):
    number, plies = Fraction(yarn.number), yarn.plies
    pound, yard = Fraction("453.59237"), Fraction("0.9144")
    direct = {System.tex: Fraction(1), System.dtex: Fraction(1, 10), System.denier: Fraction(1, 9)}
    direct[System.jute] = pound / (14400 * yard) * 1000
    if yarn.system in direct:
        return plies * direct[yarn.system] * number
    indirect = {System.metric: Fraction(1000), System.metres_per_100g: Fraction(100000)}
    indirect |= {system: pound / (yards * yard) * 1000 for system, yards in YARDS_PER_POUND.items()}
    return plies * indirect[yarn.system] / number


@pytest.fixture(scope="module")
def units():
    return pytest.importorskip("pint").UnitRegistry()


@pytest.mark.parametrize("first, second", itertools.product(System, repeat=2))
def test_every_pair_of_systems_converts_as_in_pint(units, first, second):
    def density(number, system):
        if system in YARDS_PER_POUND:
            return units.Quantity(1 / (number * YARDS_PER_POUND[system]), "pound / yard")
        written = {
            System.tex: (number, "g / km"),
            System.dtex: (number, "g / (10 km)"),
            System.denier: (number, "g / (9 km)"),
            System.metric: (1 / number, "kg / km"),
            System.jute: (number / 14400, "pound / yard"),
            System.metres_per_100g: (100 / number, "g / m"),
        }
        return written[system][0] * units(written[system][1])

    for number in (1.0, 7.5, 28.0, 240.0):
        ours = lw.yarn_number_in(lw.YarnNumber(first, number), second).number
        assert math.isclose(density(ours, second).m_as("g / km"), density(number, first).m_as("g / km"), rel_tol=1e-14)


yarns = st.builds(lw.YarnNumber, st.sampled_from(System), st.floats(0.1, 10_000), st.integers(1, 100))


@given(yarns, st.sampled_from(System))
def test_conversions_are_exact_to_the_definitions(yarn, system):
    tex = exact_tex(yarn)
    assert lw.yarn_tex(yarn) == float(tex)
    if yarn.system == system and yarn.plies == 1:
        return
    one = exact_tex(lw.YarnNumber(system, 1.0))
    is_direct = system in (System.tex, System.dtex, System.denier, System.jute)
    wanted = tex / one if is_direct else one / tex
    assert lw.yarn_number_in(yarn, system) == lw.YarnNumber(system, float(wanted), 1)


@given(yarns)
def test_what_is_written_is_read_back_equal(yarn):
    assert lw.read_yarn_number(lw.yarn_number_text(yarn)) == yarn


@given(st.lists(yarns, min_size=1, max_size=4))
def test_strands_together_add_their_tex(strands):
    assert lw.yarn_tex(lw.yarns_together(strands)) == float(sum(map(exact_tex, strands)))


@given(st.text(max_size=20) | st.text("0123456789 /.x=NmegtdworstlbyJu", max_size=14))
def test_any_text_is_read_or_refused_with_its_place(text):
    try:
        lw.read_yarn_number(text, "yarn")
    except lw.Error as error:
        assert error.field == "yarn" and 1 <= error.character <= len(text) + 1


def test_lengths_weights_and_diameters():
    ball = lw.read_yarn_number("50 g = 120 m")
    assert lw.yarn_number_text(ball) == "240 m/100 g" and lw.yarn_length(ball, lw.Weight(50.0)) == lw.Length(120_000.0)
    assert lw.yarn_weight(ball, lw.Length(120_000.0)) == lw.Weight(50.0)
    assert lw.yarn_number_of(lw.Length(200_000.0), lw.Weight(100.0), System.tex).number == 500
    assert lw.yarn_diameter_mm(lw.YarnNumber(System.tex, 30.0), 1.54) == pytest.approx(0.19597, abs=1e-5)
    with pytest.raises(lw.Error) as caught:
        lw.read_yarn_number("Nm 8/3", field="yarn")
    assert (caught.value.code, caught.value.field, caught.value.character) == (lw.ErrorCode.bad_syntax, "yarn", 4)
    with pytest.raises(lw.Error) as caught:
        lw.yarns_together([lw.YarnNumber(System.tex, 20.0), lw.YarnNumber(System.tex, 20.0, 0)])
    assert (caught.value.code, caught.value.field) == (lw.ErrorCode.bad_argument, "yarns[1].plies")


def test_classes_of_yarn():
    assert [each.name for each in lw.yarn_categories()][3:5] == ["Light", "Medium"]
    gauge = lw.read_count_per_length("24 sts / 4 in")
    assert [each.number for each in lw.yarn_categories_at(gauge)] == [2, 3]
    with pytest.raises(lw.Error):
        lw.yarn_categories_at(lw.read_count_per_length("24 rows / 4 in"))
