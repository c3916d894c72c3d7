"""One-way clutch: grip, capacity, overrunning."""

import math
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from checker.mechanics.clutch import (
    cold_start_reserve,
    drive_lift_off_margin,
    element_normal_force,
    engagement_speed_margin,
    engagement_torque_margin,
    grip_margin,
    most_loaded_row_torque,
    outer_race_hoop_stress,
    overrun_lift_off_margin,
    overrun_speed,
    race_pressure,
    race_sliding_speed,
    torque_capacity,
    usable_fraction_side_by_side,
    usable_torque,
)
from checker.mechanics.engine import peak_torque
from checker.mechanics.equation import OutOfRange
from checker.mechanics.hertz import line_contact_force, line_contact_pressure, reduced_radius

_REFERENCE = Path(__file__).parents[1] / "reference" / "loads.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}
RPM = math.tau / 60

frictions = st.floats(0.01, 0.3)
angles = st.floats(0.01, 0.5)
elements = st.integers(3, 40)
radii = st.floats(0.01, 0.2)
forces = st.floats(1.0, 1e5)


def test_grip_by_angle():  # CL-01 Nagler & Lohrengel (2021), Eq. (1); CL-02 derived
    case = CASES["CL-02"]
    friction = case["inputs"]["friction_coefficient"]
    close = {"rel": case["tolerance"]}
    degrees = case["inputs"]["gripping_angle_deg"]
    margins = [grip_margin(friction, math.radians(angle)) for angle in degrees]
    assert [friction / margin for margin in margins] == pytest.approx(
        case["expected"]["tan_alpha"], **close
    )
    assert [margin >= 1 for margin in margins] == case["expected"]["grips"]
    steepest = math.radians(case["expected"]["max_angle_deg"])
    assert grip_margin(friction, steepest) == pytest.approx(1.0, **close)


@pytest.mark.parametrize(("friction", "margin"), [(0.08, 1.15), (0.10, 1.4)])
def test_usual_grip_at_full_load(friction, margin):  # CL-13 and its note, from memory
    case = CASES["CL-13"]
    angle = math.radians(case["expected"]["typical_at_full_load_deg"])
    assert grip_margin(friction, angle) == pytest.approx(margin, rel=case["tolerance"])


@given(frictions, st.floats(1.0, 1e4), elements, radii, angles)
def test_grip_is_the_ratio_of_the_forces(friction, torque, count, radius, angle):
    # CL-01: tan α = F_t / F_n, with the tangential force of each element by the torque
    tangential = torque / (count * radius)
    normal = element_normal_force(torque, count, radius, angle)
    assert grip_margin(friction, angle) == pytest.approx(friction * normal / tangential)


@pytest.mark.parametrize("angle", [0.0, -0.1, math.pi / 2])
def test_angles_that_wedge_nothing_are_refused(angle):
    with pytest.raises(OutOfRange, match="gripping angle"):
        grip_margin(0.08, angle)
    with pytest.raises(OutOfRange, match="gripping angle"):
        element_normal_force(100.0, 12, 0.03, angle)
    with pytest.raises(OutOfRange, match="gripping angle"):
        torque_capacity(12, 0.03, angle, 1e4)


@given(st.floats(1.0, 1e4), elements, radii, angles)
def test_capacity_undoes_the_element_force(torque, count, radius, angle):
    normal = element_normal_force(torque, count, radius, angle)
    assert torque_capacity(count, radius, angle, normal) == pytest.approx(torque)


@given(st.floats(1.0, 4.0), elements, radii, angles)
def test_pressure_grows_as_the_root_of_the_torque(times, count, radius, angle):
    # elastic line contact, notes of CL-03: the limits are for the peak of an engagement
    contact = (0.015, reduced_radius(0.005, radius), 113e9)
    once = line_contact_pressure(element_normal_force(50.0, count, radius, angle), *contact)
    more = line_contact_pressure(element_normal_force(50.0 * times, count, radius, angle), *contact)
    assert more == pytest.approx(once * math.sqrt(times))


def test_capacity_at_the_allowed_pressure():  # CL-03, trade source
    case = CASES["CL-03"]
    contact = (0.015, reduced_radius(0.005, 0.03), 113.2e9)

    def capacity(pressure):
        return torque_capacity(16, 0.03, math.radians(3.5), line_contact_force(pressure, *contact))

    nominal = case["expected"]["nominal_MPa"] * 1e6
    maximum = case["expected"]["maximum_MPa"] * 1e6
    # by hand: R = 4.2857 mm, F = π·0.015·4.2857e-3·(4.2e9)²/113.2e9 = 31 471 N,
    # T = 16·0.03·31 471·0.061163 = 923.9 N·m
    assert capacity(nominal) == pytest.approx(923.9, rel=1e-3)
    assert capacity(maximum) / capacity(nominal) == pytest.approx((4600 / 4200) ** 2)


def test_clutches_side_by_side():  # CL-09, trade source
    case = CASES["CL-09"]
    fractions = [
        usable_fraction_side_by_side(count) for count in case["inputs"]["clutches_side_by_side"]
    ]
    assert fractions == case["expected"]["usable_fraction_of_sum"]
    assert usable_fraction_side_by_side(1) == 1


@pytest.mark.parametrize("count", [0, 4])
def test_no_usable_fraction_beyond_the_source(count):
    with pytest.raises(OutOfRange, match="no usable share"):
        usable_fraction_side_by_side(count)


def test_torque_margin_is_taken_at_the_peak():
    # by hand: mean 100 N·m, factor 4 gives 400; 100 + 250 gives 350; 1200 / (1.5·400) = 2
    assert engagement_torque_margin(1200.0, 1.5, peak_torque(100.0, 4.0, 250.0)) == pytest.approx(2)
    # by hand: 100 + 500 = 600 governs over 400; 1200 / (1.5·600) = 4/3
    assert engagement_torque_margin(1200.0, 1.5, peak_torque(100.0, 4.0, 500.0)) == pytest.approx(
        4 / 3
    )


def test_no_torque_margin_without_torque():
    with pytest.raises(OutOfRange, match="peak torque"):
        engagement_torque_margin(1200.0, 1.5, 0.0)


def test_sliding_speed():  # CL-11, derived
    case = CASES["CL-11"]
    relative = overrun_speed(case["inputs"]["differential_speed_rpm"] * RPM, 0.0)
    assert race_sliding_speed(case["inputs"]["race_diameter_mm"] / 2e3, relative) == pytest.approx(
        case["expected"]["sliding_speed_m_s"], rel=case["tolerance"]
    )


def test_overrun_is_counted_at_the_shaft_of_the_clutch():  # note of CL-11
    propeller, idle, ratio = 1200 * RPM, 1000 * RPM, 2.5
    assert overrun_speed(propeller * ratio, 0.0) == pytest.approx(3000 * RPM)
    assert overrun_speed(propeller * ratio, idle) == pytest.approx(2000 * RPM)


def test_the_lead_of_a_driving_clutch_is_negative():
    assert overrun_speed(100.0, 100.0) == 0
    assert overrun_speed(100.0, 101.0) == -1


@given(st.floats(1.0, 500.0), st.floats(1.0, 500.0), st.floats(1.0, 3.0))
def test_lift_off_serves_overrun_or_drive_but_not_both(windmilling, lift_off, faster):
    driving = windmilling * faster  # the same race, faster under power
    lifted = overrun_lift_off_margin(windmilling, lift_off) > 1
    in_touch = drive_lift_off_margin(lift_off, driving) > 1
    assert not (lifted and in_touch)


def test_at_rest_nothing_lifts_the_elements():
    assert overrun_lift_off_margin(0.0, 80.0) == 0
    with pytest.raises(OutOfRange, match="does not turn"):
        drive_lift_off_margin(80.0, 0.0)


def test_engagement_speed():
    # by hand: 1800 rpm at idle over 1500 rpm
    assert engagement_speed_margin(1800 * RPM, 1500 * RPM) == pytest.approx(1.2)


@given(elements, forces, radii, st.floats(0.005, 0.05))
def test_race_pressure_carries_the_element_forces(count, normal, radius, width):
    area = math.tau * radius * width
    assert race_pressure(count, normal, radius, width) * area == pytest.approx(count * normal)


@given(st.floats(1e5, 1e9), radii, st.floats(1.05, 3.0))
def test_hoop_stress_balances_the_pressure(pressure, inner, ratio):
    outer = inner * ratio

    # Lamé: σ(r) = p r_i² (1 + r_o²/r²) / (r_o² − r_i²); its integral over the wall carries p r_i
    def wall_force(radius):
        return pressure * inner**2 * (radius - outer**2 / radius) / (outer**2 - inner**2)

    assert wall_force(outer) - wall_force(inner) == pytest.approx(pressure * inner)
    at_bore = outer_race_hoop_stress(pressure, inner, outer)
    assert at_bore == pytest.approx(
        pressure * inner**2 * (1 + outer**2 / inner**2) / (outer**2 - inner**2)
    )
    assert at_bore > pressure * inner / (outer - inner)


def test_hoop_stress_of_a_thin_ring():
    # thin ring p r / t, within its own error t / (2 r)
    assert outer_race_hoop_stress(1e6, 0.1, 0.101) == pytest.approx(1e6 * 0.1 / 0.001, rel=0.006)


def test_a_race_without_wall_is_refused():
    with pytest.raises(OutOfRange, match="outer radius of the race"):
        outer_race_hoop_stress(1e6, 0.05, 0.05)


@pytest.mark.parametrize(("clutches", "fraction"), [(2, 0.9), (3, 0.8)])  # CL-09
def test_usable_torque_loads_one_row_to_its_rating(clutches, fraction):
    usable = usable_torque(clutches * 100.0, fraction)
    assert usable == pytest.approx(clutches * fraction * 100.0)
    assert most_loaded_row_torque(usable, clutches, fraction) == pytest.approx(100.0)


def test_cold_start_reserve_is_positive_above_the_lowest():  # by definition
    assert cold_start_reserve(273.15, 263.15) == pytest.approx(10.0)
