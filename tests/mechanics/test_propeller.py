"""Loads of a propeller on its drive."""

import math
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants, optimize

from checker.mechanics.equation import OutOfRange
from checker.mechanics.propeller import (
    advance_ratio,
    disc_area,
    disc_loading,
    disc_speed,
    helical_tip_mach,
    helical_tip_speed,
    ideal_thrust,
    power_coefficient,
    slender_rod_inertia,
    tip_speed,
)

_REFERENCE = Path(__file__).parents[1] / "reference" / "loads.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}
RPM = math.tau / 60
FOOT = constants.foot

powers = st.floats(1e3, 3e5)
airspeeds = st.floats(0.0, 120.0)
diameters = st.floats(1.0, 3.0)
densities = st.floats(0.5, 1.4)


def test_tip_speed_and_mach():  # PR-06, derived; speed of sound at 1000 m from PR-04
    case, air = CASES["PR-06"], CASES["PR-04"]
    given_, expected, close = case["inputs"], case["expected"], {"rel": case["tolerance"]}
    row = air["inputs"]["geometric_altitude_m"].index(given_["altitude_m"])
    sound = air["expected"]["speed_of_sound_m_s"][row]
    turning = (given_["diameter_m"], given_["propeller_speed_rpm"] * RPM)
    assert tip_speed(*turning) == pytest.approx(expected["rotational_tip_speed_m_s"], **close)
    assert helical_tip_mach(*turning, 0.0, sound) == pytest.approx(
        expected["rotational_tip_mach"], **close
    )
    assert helical_tip_mach(*turning, given_["true_airspeed_m_s"], sound) == pytest.approx(
        expected["helical_tip_mach"], **close
    )


@given(diameters, st.floats(1.0, 400.0), airspeeds)
def test_helix_is_a_right_triangle(diameter, speed, airspeed):
    helical = helical_tip_speed(diameter, speed, airspeed)
    assert helical**2 == pytest.approx(tip_speed(diameter, speed) ** 2 + airspeed**2)
    # Mach number 1 where the speed of sound is that speed
    assert helical_tip_mach(diameter, speed, airspeed, helical) == pytest.approx(1.0)


def test_static_thrust():  # PR-11, derived
    case = CASES["PR-11"]
    given_, expected, close = case["inputs"], case["expected"], {"rel": case["tolerance"]}
    power = given_["shaft_power_kW"] * 1e3
    disc = (given_["diameter_m"], given_["density_kg_m3"])
    # at a figure of merit a propeller gives the thrust of an ideal one of so much less power
    thrusts = [ideal_thrust(merit * power, 0.0, *disc) for merit in given_["figure_of_merit"]]
    assert thrusts == pytest.approx(expected["static_thrust_N"], **close)
    assert disc_speed(power, 0.0, *disc) == pytest.approx(expected["induced_velocity_m_s"], **close)


def test_actuator_disc_in_flight():  # PR-09, Irfan A. Khan, Fluid Mechanics, Example 5.8
    case = CASES["PR-09"]
    given_, expected, close = case["inputs"], case["expected"], {"rel": case["tolerance"]}
    airspeed = given_["airspeed_mph"] * constants.mph
    diameter = given_["diameter_ft"] * FOOT
    density = given_["density_slug_ft3"] * constants.slug / FOOT**3
    flow = given_["disc_flow_ft3_s"] * FOOT**3
    through = flow / disc_area(diameter)
    wake = 2 * through - airspeed
    power = density * flow * (wake**2 - airspeed**2) / 2  # gain of kinetic energy
    thrust = ideal_thrust(power, airspeed, diameter, density)
    assert disc_speed(power, airspeed, diameter, density) == pytest.approx(through)
    assert thrust / constants.lbf == pytest.approx(expected["thrust_lbf"], **close)
    efficiency = thrust * airspeed / power
    assert efficiency == pytest.approx(expected["ideal_efficiency"], **close)
    assert disc_loading(thrust, diameter) / constants.lbf * FOOT**2 == pytest.approx(
        expected["pressure_rise_lbf_ft2"], **close
    )


@given(powers, airspeeds, diameters, densities)
def test_disc_speed_is_the_root_of_the_cubic(power, airspeed, diameter, density):
    loading = power / (2 * density * disc_area(diameter))
    # bracketed root of the same momentum equation: scipy.optimize.brentq
    expected = optimize.brentq(
        lambda speed: speed**2 * (speed - airspeed) - loading,
        airspeed,
        airspeed + loading ** (1 / 3) + 1,
        xtol=1e-12,
    )
    assert disc_speed(power, airspeed, diameter, density) == pytest.approx(expected, rel=1e-9)


@given(powers, diameters, densities)
def test_at_rest_the_disc_gives_its_static_bound(power, diameter, density):
    # at rest the wake carries all of the power: T_0³ = 2 ρ A P²
    thrust = ideal_thrust(power, 0.0, diameter, density)
    assert thrust**3 == pytest.approx(2 * density * disc_area(diameter) * power**2)


@given(powers, airspeeds, diameters, densities)
def test_thrust_falls_with_airspeed_and_stays_below_all_power_used(
    power, airspeed, diameter, density
):
    thrust = ideal_thrust(power, airspeed, diameter, density)
    assert ideal_thrust(power, airspeed + 1, diameter, density) < thrust
    assert thrust * airspeed < power


@pytest.mark.parametrize(
    ("call", "named"),
    [
        (lambda: disc_speed(0.0, 50.0, 1.75, 1.225), "power"),
        (lambda: disc_speed(6e4, -1.0, 1.75, 1.225), "airspeed"),
        (lambda: advance_ratio(50.0, 0.0, 1.75), "does not turn"),
        (lambda: power_coefficient(6e4, 1.225, 0.0, 1.75), "does not turn"),
    ],
)
def test_states_without_meaning_are_refused(call, named):
    with pytest.raises(OutOfRange, match=named):
        call()


def test_coefficients():
    # by hand: 60 m/s, 40 rev/s, 1.5 m: J = 60/(40·1.5) = 1;
    # 60 kW, 1.2 kg/m³: C_P = 6e4/(1.2·6.4e4·7.59375) = 0.102881
    speed = 40 * math.tau
    assert advance_ratio(60.0, speed, 1.5) == pytest.approx(1.0)
    assert power_coefficient(6e4, 1.2, speed, 1.5) == pytest.approx(0.102881, rel=1e-5)


def test_rod_inertia():  # GY-09, derived
    case = CASES["GY-09"]
    inertia = slender_rod_inertia(case["inputs"]["propeller_mass_kg"], case["inputs"]["diameter_m"])
    assert inertia == pytest.approx(
        case["expected"]["rod_model_inertia_kgm2"], rel=case["tolerance"]
    )
