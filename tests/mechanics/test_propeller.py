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
    combined_turn_rate,
    disc_area,
    disc_loading,
    disc_speed,
    gyroscopic_couple,
    helical_tip_mach,
    helical_tip_speed,
    ideal_efficiency,
    ideal_thrust,
    power_coefficient,
    slender_rod_inertia,
    static_thrust,
    thrust_from_efficiency,
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
    thrusts = [static_thrust(power, *disc, merit) for merit in given_["figure_of_merit"]]
    assert thrusts == pytest.approx(expected["static_thrust_N"], **close)
    assert disc_speed(power, 0.0, *disc) == pytest.approx(expected["induced_velocity_m_s"], **close)


@pytest.mark.parametrize("merit", [0.0, 1.01])
def test_no_propeller_beats_the_disc(merit):
    with pytest.raises(OutOfRange, match="figure of merit"):
        static_thrust(6e4, 1.75, 1.225, merit)


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
    assert ideal_efficiency(airspeed, through) == pytest.approx(
        expected["ideal_efficiency"], **close
    )
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
    assert ideal_thrust(power, 0.0, diameter, density) == pytest.approx(
        static_thrust(power, diameter, density, 1.0)
    )


@given(powers, airspeeds, diameters, densities)
def test_thrust_falls_with_airspeed_and_stays_below_all_power_used(
    power, airspeed, diameter, density
):
    thrust = ideal_thrust(power, airspeed, diameter, density)
    assert ideal_thrust(power, airspeed + 1, diameter, density) < thrust
    assert thrust * airspeed < power
    through = disc_speed(power, airspeed + 1, diameter, density)
    efficiency = ideal_efficiency(airspeed + 1, through)
    assert thrust_from_efficiency(power, airspeed + 1, efficiency) == pytest.approx(
        ideal_thrust(power, airspeed + 1, diameter, density)
    )


@pytest.mark.parametrize(
    ("call", "named"),
    [
        (lambda: disc_speed(0.0, 50.0, 1.75, 1.225), "power"),
        (lambda: disc_speed(6e4, -1.0, 1.75, 1.225), "airspeed"),
        (lambda: thrust_from_efficiency(6e4, 0.0, 0.8), "airspeed"),
        (lambda: advance_ratio(50.0, 0.0, 1.75), "does not turn"),
        (lambda: power_coefficient(6e4, 1.225, 0.0, 1.75), "does not turn"),
        (lambda: gyroscopic_couple(0.6, 240.0, 2.5, 1), "blades"),
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


def test_couple_by_number_of_blades():  # GY-02, EASA AMC 23.371
    case = CASES["GY-02"]
    couples = [gyroscopic_couple(1.0, 1.0, 1.0, blades) for blades in case["inputs"]["blades"]]
    assert couples == case["expected"]["couple_multiplier_on_I_omega_rate"]


def test_couple_at_the_rates_of_the_regulation():  # GY-03, derived; GY-01, CS 23.371(a)(2)
    case, rates = CASES["GY-03"], CASES["GY-01"]["expected"]
    given_, expected, close = case["inputs"], case["expected"], {"rel": case["tolerance"]}
    yaw, pitch = rates["yaw_rate_rad_s"], rates["pitch_rate_rad_s"]
    both = combined_turn_rate(yaw, pitch)
    rotor = (given_["propeller_inertia_kgm2"], given_["propeller_speed_rpm"] * RPM)
    for rate, blades, name in [
        (yaw, 3, "yaw_couple_3blade_Nm"),
        (pitch, 3, "pitch_couple_3blade_Nm"),
        (both, 3, "combined_couple_3blade_Nm"),
        (yaw, 2, "yaw_peak_couple_2blade_Nm"),
        (both, 2, "combined_peak_couple_2blade_Nm"),
    ]:
        assert gyroscopic_couple(*rotor, rate, blades) == pytest.approx(expected[name], **close)


def test_couple_of_a_turning_rotor():  # GY-04, Khurmi & Gupta, Theory of Machines, Example 14.3
    case = CASES["GY-04"]
    given_ = case["inputs"]
    inertia = given_["rotating_mass_kg"] * given_["radius_of_gyration_m"] ** 2
    rate = given_["airspeed_km_h"] / 3.6 / given_["turn_radius_m"]
    couple = gyroscopic_couple(inertia, given_["speed_rpm"] * RPM, rate, 3)
    assert couple / 1e3 == pytest.approx(
        case["expected"]["gyroscopic_couple_kNm"], rel=case["tolerance"]
    )


@given(st.integers(2, 6), st.floats(0.0, math.tau))
def test_couple_of_point_masses(blades, angle):
    # Rate of change of angular momentum of equal masses on a turning axis, about the axis across
    # the turn: 2 ω Ω Σ m r² cos²θ. Its greatest value is the couple of the regulation.
    def couple(at):
        return 2 * sum(
            math.cos(at + math.tau * blade / blades) ** 2 / blades for blade in range(blades)
        )

    peak = gyroscopic_couple(1.0, 1.0, 1.0, blades)
    assert couple(angle) <= peak + 1e-12
    assert couple(0.0) == pytest.approx(peak)


def test_rod_inertia():  # GY-09, derived
    case = CASES["GY-09"]
    inertia = slender_rod_inertia(case["inputs"]["propeller_mass_kg"], case["inputs"]["diameter_m"])
    assert inertia == pytest.approx(
        case["expected"]["rod_model_inertia_kgm2"], rel=case["tolerance"]
    )
