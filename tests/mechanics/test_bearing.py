"""Load and life of rolling bearings."""

import math
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from checker.mechanics.bearing import (
    BALL_EXPONENT,
    ROLLER_EXPONENT,
    axial_share,
    basic_life,
    deep_groove_axial_limit,
    deep_groove_load,
    deep_groove_load_without_f0,
    deep_groove_static_load,
    duration,
    induced_axial_force,
    mean_equivalent_load,
    speed_parameter,
    static_margin,
)
from checker.mechanics.equation import OutOfRange

_REFERENCE = Path(__file__).parents[1] / "reference" / "loads.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}
RPM = math.tau / 60

forces = st.floats(1.0, 1e5)
exponents = st.sampled_from([BALL_EXPONENT, ROLLER_EXPONENT])


def test_basic_life():  # BR-01, Wentzell, Machine Design, Example 20.1
    case = CASES["BR-01"]
    given_ = case["inputs"]
    life = basic_life(given_["C_lbf"] * constants.lbf, given_["P_lbf"] * constants.lbf, 3.0)
    hours = duration(life, given_["speed_rpm"] * RPM) / constants.hour
    assert hours == pytest.approx(case["expected"]["L10h_h"], rel=case["tolerance"])


def test_life_of_the_rating_it_needs():  # BR-02, Wentzell, Machine Design, Example 20.2
    case = CASES["BR-02"]
    given_ = case["inputs"]
    life = basic_life(case["expected"]["required_C_lbf"], given_["P_lbf"], BALL_EXPONENT)
    wanted = given_["life_h"] * 60 * given_["speed_rpm"]
    # the rating goes with the cube root of the life
    assert math.cbrt(life / wanted) == pytest.approx(1.0, rel=case["tolerance"])


def test_life_by_stated_factors():  # BR-05, U. C. Jindal, Machine Design, Example 18-2
    case = CASES["BR-05"]
    given_ = case["inputs"]
    lives = [
        basic_life(
            given_["C_N"],
            given_["X"] * rotation * given_["Fr_N"] + given_["Y"] * given_["Fa_N"],
            BALL_EXPONENT,
        )
        / 1e6
        for rotation in given_["V"]
    ]
    assert lives == pytest.approx(case["expected"]["life_million_rev"], rel=case["tolerance"])


@given(st.lists(st.tuples(forces, st.floats(1.0, 1e6)), min_size=1, max_size=6), forces, exponents)
def test_mean_load_wears_as_the_loads_together(points, rating, exponent):
    loads, revolutions = zip(*points, strict=True)
    mean = mean_equivalent_load(loads, revolutions, exponent)
    # linear summation of damage, point by point
    damage = sum(turns / basic_life(rating, load, exponent) for load, turns in points)
    assert sum(revolutions) / basic_life(rating, mean, exponent) == pytest.approx(damage)
    assert min(loads) * (1 - 1e-9) <= mean <= max(loads) * (1 + 1e-9)


def _without_f0(radial, axial, relative):
    """As though the static rating were such that F_a / C_0 is the relative axial load."""
    return deep_groove_load_without_f0(radial, axial, axial / relative)


def _with_f0(radial, axial, relative):
    return deep_groove_load(radial, axial, axial, relative)


# BR-12, ISO 281:2007 Table 3; BR-13, Shigley's MED Table 11-1 (memory)
@pytest.mark.parametrize(
    ("load", "name", "relative", "axial_factor"),
    [
        (_with_f0, "BR-12", "f0_Fa_over_C0", "Y_above_e"),
        (_without_f0, "BR-13", "Fa_over_C0", "Y"),
    ],
)
def test_deep_groove_tables(load, name, relative, axial_factor):
    case = CASES[name]
    rows = zip(
        case["inputs"][relative],
        case["expected"]["e"],
        case["expected"][axial_factor],
        strict=True,
    )
    for share, limit, factor in rows:
        axial = share  # so that axial / relative is exactly 1
        assert load(0.0, axial, share) == pytest.approx(factor * axial, rel=1e-12)
        below, above = axial / (0.999 * limit), axial / (1.001 * limit)
        assert load(below, axial, share) == below
        assert load(above, axial, share) == pytest.approx(0.56 * above + factor * axial)


def test_deep_groove_below_the_limit():  # BR-15, derived
    case = CASES["BR-15"]
    given_, expected, close = case["inputs"], case["expected"], {"rel": case["tolerance"]}
    radial, static_rating, f0 = given_["Fr_kN"], given_["C0_kN"], given_["f0"]
    load = deep_groove_load(radial, given_["Fa_kN"], static_rating, f0)
    life = basic_life(given_["C_kN"], load, BALL_EXPONENT)
    assert load == pytest.approx(expected["P_kN"], **close)
    assert duration(life, given_["speed_rpm"] * RPM) / constants.hour == pytest.approx(
        expected["L10h_h"], **close
    )
    # the interpolated e is where the branch changes, at the same axial load
    at_limit = given_["Fa_kN"] / expected["e"]
    assert deep_groove_load(at_limit * 1.0001, given_["Fa_kN"], static_rating, f0) == pytest.approx(
        at_limit * 1.0001, rel=1e-12
    )
    assert deep_groove_load(at_limit * 0.9999, given_["Fa_kN"], static_rating, f0) != pytest.approx(
        at_limit * 0.9999, rel=1e-6
    )


def test_deep_groove_between_two_rows():
    # by hand at f_0 F_a / C_0 = 0.517, halfway between 0.345 and 0.689: Y = 1.85
    assert deep_groove_load(1.0, 1.0, 1.0, 0.517) == pytest.approx(0.56 + 1.85)


def test_deep_groove_below_the_first_row():
    assert deep_groove_load(0.0, 1.0, 1.0, 0.05) == pytest.approx(2.30)
    assert deep_groove_load_without_f0(0.0, 1.0, 1e3) == pytest.approx(2.30)
    assert deep_groove_load(5.0, 0.0, 1.0, 13.0) == 5.0


@given(st.floats(0.1, 5.0), st.floats(0.014, 0.56))
def test_both_tables_agree_near_f0_of_12_3(radial, axial):  # note of BR-13
    # 4 %: the two tables round e and Y at different nodes
    assert deep_groove_load(radial, axial, 1.0, 12.3) == pytest.approx(
        deep_groove_load_without_f0(radial, axial, 1.0), rel=0.04
    )


@given(st.floats(0.0, 5.0), st.floats(0.0, 0.5), st.floats(1.0, 2.0))
def test_more_load_never_counts_as_less(radial, axial, times):
    # 1 %: the rounded e and Y leave a small step at the change of branch
    load = deep_groove_load_without_f0(radial, axial, 1.0)
    assert deep_groove_load_without_f0(radial * times, axial, 1.0) >= load * 0.99
    assert deep_groove_load_without_f0(radial, min(axial * times, 0.56), 1.0) >= load * 0.99
    assert load >= 0.99 * radial
    assert deep_groove_load_without_f0(radial, -axial, 1.0) == load


@pytest.mark.parametrize(
    "call",
    [
        lambda: deep_groove_load(1.0, 0.6, 1.0, 13.0),
        lambda: deep_groove_load_without_f0(1.0, -0.57, 1.0),
    ],
)
def test_axial_load_that_the_bearing_does_not_take_is_refused(call):
    with pytest.raises(OutOfRange, match="axial load"):
        call()


def test_static_load():  # BR-16, ISO 76 as given on a bearing maker's catalogue page
    case = CASES["BR-16"]
    given_, expected, close = case["inputs"], case["expected"], {"rel": case["tolerance"]}
    load = deep_groove_static_load(given_["Fr_kN"], given_["Fa_kN"])
    assert load == pytest.approx(expected["P0_kN"], **close)
    assert deep_groove_static_load(given_["Fr_kN"], -given_["Fa_kN"]) == load
    assert static_margin(given_["C0_kN"], load) == pytest.approx(expected["s0"], **close)
    for series in (2, 3, 4):
        assert deep_groove_axial_limit(1.0, series) == expected["pure_axial_limit_over_C0"]
    for series in (8, 9, 0, 1):
        limit = deep_groove_axial_limit(1.0, series)
        assert limit == expected["pure_axial_limit_light_series_over_C0"]


def test_induced_axial_force():  # BR-18, trade source
    case = CASES["BR-18"]
    factors = [
        induced_axial_force(1.0, math.radians(angle))
        for angle in case["inputs"]["contact_angle_deg"]
    ]
    assert factors == pytest.approx(case["expected"]["induced_axial_factor_R"], rel=1e-12)
    # by hand, halfway between 30 and 40 deg
    assert induced_axial_force(2.0, math.radians(35)) == pytest.approx(2 * 0.77)


@pytest.mark.parametrize("angle", [15, 45])
def test_induced_force_stays_within_its_source(angle):
    with pytest.raises(OutOfRange, match="contact angle"):
        induced_axial_force(1.0, math.radians(angle))


def test_speed_parameter():  # BR-21, derived
    case = CASES["BR-21"]
    given_, expected = case["inputs"], case["expected"]
    bore, outside = given_["bore_mm"] / 1e3, given_["outside_mm"] / 1e3
    parameter = speed_parameter(bore, outside, given_["speed_rpm"] * RPM)
    assert parameter * 60_000 == pytest.approx(expected["n_dm_mm_rpm"], rel=case["tolerance"])
    assert parameter / (given_["speed_rpm"] / 60) * 1e3 == pytest.approx(
        expected["dm_mm"], rel=case["tolerance"]
    )


def test_axial_share_counts_either_way():
    assert axial_share(-1.5, 6.0) == axial_share(1.5, 6.0) == 0.25  # by hand


@pytest.mark.parametrize(
    ("call", "named"),
    [
        (lambda: basic_life(1.0, 0.0, BALL_EXPONENT), "load"),
        (lambda: duration(1e6, 0.0), "does not turn"),
        (lambda: mean_equivalent_load((1.0,), (0.0,), BALL_EXPONENT), "does not turn under any"),
        (lambda: static_margin(1.0, 0.0), "static load"),
        (lambda: deep_groove_axial_limit(1.0, 7), "diameter series 7"),
    ],
)
def test_states_without_meaning_are_refused(call, named):
    with pytest.raises(OutOfRange, match=named):
        call()
