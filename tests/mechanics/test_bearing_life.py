"""Reliability, oil film and least load of bearings."""

import math
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from checker.mechanics import bearing, bearing_life
from checker.mechanics.equation import OutOfRange

_REFERENCE = Path(__file__).parents[1] / "reference" / "loads-bearings-shafts.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}


def test_reliability_factors():  # BR-20
    case = CASES["BR-20"]
    found = [
        bearing_life.reliability_factor(percent)
        for percent in case["inputs"]["reliability_percent"]
    ]
    assert found == case["expected"]["a1"]
    with pytest.raises(OutOfRange, match="91"):
        bearing_life.reliability_factor(91)


def test_life_of_a_roller_bearing():  # BR-08, Shigley, Problem 11-3
    case = CASES["BR-08"]
    given_ = case["inputs"]
    life = bearing.basic_life(case["expected"]["C10_kN"], given_["FD_kN"], bearing.ROLLER_EXPONENT)
    # the rating goes with the life to the power of 3/10
    assert (life / 1e6 / given_["xD"]) ** 0.3 == pytest.approx(1.0, rel=case["tolerance"])


def test_system_of_three_bearings():  # BR-23
    case = CASES["BR-23"]
    given_ = case["inputs"]
    each = 0.94  # of the note
    pair = bearing_life.system_reliability(each, each)
    together = bearing_life.system_reliability(pair, each)
    assert together == pytest.approx(given_["system_reliability"], abs=5e-3)
    # two-parameter Weibull of the book's slope: L_10 = L (ln 1/0.9 / ln 1/R)^(1/1.17)
    each = given_["system_reliability"] ** (1 / given_["bearings"])
    wanted = given_["life_million_rev"] * (math.log(1 / 0.9) / math.log(1 / each)) ** (
        1 / given_["weibull_slope"]
    )
    rating = case["expected"]["required_C_kN"]
    life = bearing.basic_life(rating, given_["P_kN"], bearing.BALL_EXPONENT) / 1e6
    # the rating goes with the cube root of the life
    assert math.cbrt(life / wanted) == pytest.approx(1.0, rel=case["tolerance"])


def test_nine_of_ten_reach_the_basic_life():
    assert bearing_life.reliability_at(100.0, 100.0) == pytest.approx(0.9)


def test_reference_viscosity_meets_at_1000_rpm():
    # ISO 281: the two branches join near 1000 rpm: 45000·1000^-0.83 = 145.6, 4500/√1000 = 142.3
    below = bearing_life.reference_viscosity(999.9 * math.tau / 60, 0.05)
    above = bearing_life.reference_viscosity(1000.1 * math.tau / 60, 0.05)
    assert below == pytest.approx(above, rel=0.03)
    # by hand: 4500 / √3000 / √50 = 11.62 mm²/s
    found = bearing_life.reference_viscosity(3000 * math.tau / 60, 0.05)
    assert found == pytest.approx(11.62e-6, rel=1e-3)
    with pytest.raises(OutOfRange, match="film"):
        bearing_life.reference_viscosity(0.0, 0.05)


@given(st.floats(0.11, 4.0), st.floats(0.05, 1.0), st.floats(0.02, 0.6))
def test_cleaner_oil_and_thicker_film_never_shorten_the_life(film, dirt, share):
    for formula in (bearing_life.ball_life_factor, bearing_life.roller_life_factor):
        base = formula(film, dirt, share, 1.0)
        assert formula(min(4.0, film * 1.2), dirt, share, 1.0) >= base * (1 - 1e-3)
        assert formula(film, min(1.0, dirt * 1.2), share, 1.0) >= base
        assert 0.1 <= base <= 50.0


def test_life_factor_by_hand():
    # κ = 1, e_C C_u/P = 0.1: ball: (2.5671−1.9987)^0.83 = 0.6257, ·0.1^(1/3) = 0.2904,
    # 0.1 · 0.7096^−9.3 = 2.431; roller: 0.3511 · 0.1^0.4 = 0.13978; 0.1 · 0.86022^−9.185 = 0.3987
    assert bearing_life.ball_life_factor(1.0, 0.5, 0.2, 1.0) == pytest.approx(2.43, rel=3e-3)
    assert bearing_life.roller_life_factor(1.0, 0.5, 0.2, 1.0) == pytest.approx(0.3987, rel=3e-3)
    with pytest.raises(OutOfRange, match="no film"):
        bearing_life.ball_life_factor(0.05, 0.5, 0.2, 1.0)


def test_duty_life_is_the_harmonic_mean():
    assert bearing_life.duty_life((0.5, 0.5), (100.0, 300.0)) == pytest.approx(150.0)
    assert bearing_life.duty_life((0.5, 0.5), (100.0, math.inf)) == pytest.approx(200.0)
    with pytest.raises(OutOfRange, match="tires"):
        bearing_life.duty_life((1.0,), (math.inf,))


@given(st.lists(st.floats(10.0, 5e3), min_size=1, max_size=5))
def test_duty_life_agrees_with_the_mean_load(loads):
    revolutions = tuple(1.0 for _ in loads)
    mean = bearing.mean_equivalent_load(loads, revolutions, 3.0)
    lives = tuple(bearing.basic_life(2e4, load, 3.0) for load in loads)
    assert bearing_life.duty_life(revolutions, lives) == pytest.approx(
        bearing.basic_life(2e4, mean, 3.0)
    )


def test_small_formulas():
    assert bearing_life.mean_diameter(0.04, 0.08) == pytest.approx(0.06)
    assert bearing_life.viscosity_ratio(12.0, 6.0) == 2.0
    assert bearing_life.fatigue_load_limit(22e3, True) == 1e3
    assert bearing_life.fatigue_load_limit(8.2e3, False) == pytest.approx(1e3)
    assert bearing_life.least_load(1e4, True) == 100.0
    assert bearing_life.modified_life(0.25, 2.0, 100.0) == 50.0


@pytest.mark.parametrize("exponent", [3.0, 10.0 / 3.0])
@pytest.mark.parametrize("swing", [0.0, 0.4, 1.0, 1.8])
def test_pulsating_load_against_quadrature(swing, exponent):
    from scipy.integrate import quad

    worn, _ = quad(
        lambda turn: abs(1 + swing * math.sin(turn)) ** exponent, 0.0, math.tau, limit=200
    )
    expected = 500.0 * (worn / math.tau) ** (1 / exponent)
    found = bearing_life.pulsating_load(500.0, -80.0, swing * 80.0, exponent)
    assert found == pytest.approx(expected, rel=1e-5)


def test_pulsating_load_by_hand():
    # ∫(1 + a sin)³ over a cycle is 1 + 3 a²/2; without a torque nothing swings
    assert bearing_life.pulsating_load(1.0, 10.0, 5.0, 3.0) == pytest.approx(1.375 ** (1 / 3))
    assert bearing_life.pulsating_load(700.0, 0.0, 5.0, 3.0) == 700.0
