"""Tooth forces against worked examples, and the signs of thrust against equilibrium."""

from itertools import product
from math import cos, hypot, pi, radians, sin, tan
from pathlib import Path

import numpy as np
import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.mechanics.involute import working_pitch_diameter, working_pressure_angle
from checker.mechanics.tooth import (
    base_diameter,
    base_helix_angle,
    helix_angle_at_diameter,
    reference_diameter,
    transverse_pressure_angle,
)
from checker.mechanics.tooth_forces import (
    axial_couple,
    axial_force,
    axial_size_sum,
    axial_sum,
    couple_sum,
    peripheral_force,
    radial_force,
    residual_thrust_share,
    tangential_force,
)

INCH = 0.0254
POUND = 4.4482216152605
HORSEPOWER = 550.0 * POUND * 12.0 * INCH
RPM = pi / 30.0
ALPHA = radians(20.0)
SIGNS = (-1, 1)
_FILE = Path(__file__).parents[1] / "reference" / "gears.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_FILE.read_text("utf-8"))["cases"]}


def published(case_id, key):
    """The expected value of a case, with the case's own tolerance."""
    case = CASES[case_id]
    tolerance = case.get("tolerance_by_key", {}).get(key, case["tolerance"])
    return pytest.approx(case["expected"][key], rel=tolerance)


def test_total_tooth_load_of_khurmi_12_1():
    tangential = tangential_force(120e3 / (650.0 * RPM), 0.250)
    load = hypot(tangential, radial_force(tangential, ALPHA))
    assert load / 1e3 == published("khurmi-12-1-force", "F_total_kN")


def test_spur_forces_of_wentzell_12_1():
    # The book takes T = 63 000 hp/rpm lbf in, 0.04 % less than the true constant.
    torque = 63000.0 * 5.0 / 1725.0 * POUND * INCH
    tangential = tangential_force(torque, 20.0 / 8.0 * INCH)
    assert tangential / POUND == published("wentzell-12-1-spur", "Ft_lbf")
    radial = radial_force(tangential, ALPHA)
    assert radial / POUND == published("wentzell-12-1-spur", "Fr_lbf")
    load = hypot(tangential, radial)
    assert load / POUND == published("wentzell-12-1-spur", "F_lbf")


def test_spur_forces_of_shigley_13_31():
    case = "shigley-13-31-bearings"
    torque = 32.0 * HORSEPOWER / (1800.0 * RPM)
    assert torque / (POUND * INCH) == published(case, "T_lbf_in")
    tangential = tangential_force(torque, 18.0 / 5.0 * INCH)
    radial = radial_force(tangential, ALPHA)
    assert tangential / POUND == published(case, "Wt_lbf")
    assert radial / POUND == published(case, "Wr_lbf")
    assert hypot(tangential, radial) / 2.0 / POUND == published(case, "bearing_each_lbf")


def test_countershaft_forces_of_shigley_13_30():
    case = "shigley-13-30-two-mesh-shaft"
    torque = 200.0 * HORSEPOWER / (1800.0 * RPM)
    first = tangential_force(torque, 9.0 * INCH)
    second = tangential_force(torque * 32.0 / 18.0, 9.0 * INCH)
    assert first / POUND == published(case, "Wt_23_lbf")
    assert radial_force(first, ALPHA) / POUND == published(case, "Wr_23_lbf")
    assert second / POUND == published(case, "Wt_45_lbf")
    assert radial_force(second, ALPHA) / POUND == published(case, "Wr_45_lbf")


def test_helical_forces_of_wentzell_13_1():
    case, psi = "wentzell-13-1-helical", radians(15.0)
    tangential = tangential_force(5.0 * HORSEPOWER / (1750.0 * RPM), 2.0 * INCH)
    assert tangential / POUND == published(case, "Ft_lbf")
    assert axial_force(tangential, psi, -1, 1, 1) / POUND == published(case, "Fa_lbf")
    radial = radial_force(tangential, transverse_pressure_angle(ALPHA, psi))
    assert radial / POUND == published(case, "Fr_lbf")


def test_helical_forces_of_shigley_13_35():
    case, psi = "shigley-13-35-helical", radians(30.0)
    diameter = reference_diameter(18, INCH / 4.0, psi)
    assert diameter / INCH == published(case, "d2_in")
    alpha_t = transverse_pressure_angle(ALPHA, psi)
    radial, axial = radial_force(800.0, alpha_t), axial_force(800.0, psi, 1, 1, -1)
    assert radial == published(case, "Wr_lbf")
    assert axial == published(case, "Wa_lbf")
    load = hypot(800.0, radial, axial)
    assert load == published(case, "W_lbf")


def test_helical_forces_of_the_overhung_pinion():
    case, psi = "shigley-13-9-overhung-pinion", radians(30.0)
    diameter = reference_diameter(18, INCH / 12.0, psi)
    tangential = tangential_force(HORSEPOWER / (1800.0 * RPM), diameter)
    alpha_t = transverse_pressure_angle(ALPHA, psi)
    assert tangential / POUND == published(case, "Wt_lbf")
    assert radial_force(tangential, alpha_t) / POUND == published(case, "Wr_lbf")
    assert abs(axial_force(tangential, psi, 1, 1, -1)) / POUND == published(case, "Wa_lbf")


def test_net_thrust_of_a_compound_shaft():
    case, beta = "compound-shaft-equal-helix", radians(20.0)
    driven = axial_force(tangential_force(120.0, 0.160), beta, 1, 1, 1)
    driving = axial_force(tangential_force(120.0, 0.070), beta, 1, 1, -1)
    assert driven + driving == published(case, "net_thrust_N")


@pytest.mark.parametrize(("hand", "rotation", "role"), list(product(SIGNS, SIGNS, SIGNS)))
def test_thrusts_of_a_pair_are_equal_and_opposite(hand, rotation, role):
    # External mesh: the mate has the other hand, turns the other way and has the other role.
    torque, teeth, mate = 130.0, 27, 62
    beta, module, centre = radians(18.0), 3e-3, 0.1408
    tangential = {}
    helix = {}
    for own, other in ((teeth, mate), (mate, teeth)):
        working = working_pitch_diameter(own, other, centre)
        tangential[own] = tangential_force(torque * own / teeth, working)
        reference = reference_diameter(own, module, beta)
        helix[own] = helix_angle_at_diameter(beta, reference, working)
    on_gear = axial_force(tangential[teeth], helix[teeth], hand, rotation, role)
    on_mate = axial_force(tangential[mate], helix[mate], -hand, -rotation, -role)
    assert on_gear == pytest.approx(-on_mate, rel=1e-13)
    assert abs(on_gear) > 0.0
    # Seen from the same side, the peripheral forces about opposite shafts have the same sign:
    # at the mesh e_θ of the mate is the reverse of the gear's.
    on_gear = peripheral_force(tangential[teeth], rotation, role)
    assert on_gear == pytest.approx(peripheral_force(tangential[mate], -rotation, -role))


@pytest.mark.parametrize(("hand", "rotation", "role"), list(product(SIGNS, SIGNS, SIGNS)))
def test_contact_force_has_no_part_along_the_tooth_trace(hand, rotation, role):
    # A right-hand trace is the path of a right-hand screw: it turns with +x as it advances.
    beta, tangential = 0.35, 1000.0
    trace = np.array([cos(beta), hand * sin(beta)])
    force = np.array(
        [
            axial_force(tangential, beta, hand, rotation, role),
            peripheral_force(tangential, rotation, role),
        ]
    )
    assert trace @ force == pytest.approx(0.0, abs=1e-9)
    # The torque of the force drives a driven gear and brakes a driving one.
    assert force[1] * rotation * role > 0.0


@pytest.mark.parametrize(("hand", "rotation"), list(product(SIGNS, SIGNS)))
def test_lay_shaft_thrust_cancels_with_gears_of_one_hand(hand, rotation):
    # gears-notes.md: tan β1 / r1 = tan β2 / r2, both of the same hand, one driven, one driving
    torque, driven_diameter, driving_diameter = 120.0, 0.160, 0.070
    driven_helix = radians(25.0)
    driving_helix = helix_angle_at_diameter(driven_helix, driven_diameter, driving_diameter)
    driven = axial_force(tangential_force(torque, driven_diameter), driven_helix, hand, rotation, 1)
    driving_tangential = tangential_force(torque, driving_diameter)
    driving = axial_force(driving_tangential, driving_helix, hand, rotation, -1)
    assert driven + driving == pytest.approx(0.0, abs=1e-9)
    opposite = axial_force(driving_tangential, driving_helix, -hand, rotation, -1)
    assert driven + opposite == pytest.approx(2.0 * driven)


@given(
    centre_factor=st.floats(min_value=1.0, max_value=1.05),
    beta=st.floats(min_value=0.0, max_value=0.6),
)
@settings(max_examples=50)
def test_forces_at_a_spread_centre_distance(centre_factor, beta):
    # gears-notes.md: F_r = (T / r_b) sin α_wt and F_x = T tan β / r at any centre distance; the
    # whole force is the root of the sum of squares of its parts.
    torque, teeth, mate, module = 100.0, 21, 49, 2.5e-3
    reference = reference_diameter(teeth, module, beta)
    reference_centre = (reference + reference_diameter(mate, module, beta)) / 2.0
    alpha_t = transverse_pressure_angle(ALPHA, beta)
    centre = reference_centre * centre_factor
    alpha_wt = working_pressure_angle(reference_centre, alpha_t, centre)
    working = working_pitch_diameter(teeth, mate, centre)
    tangential = tangential_force(torque, working)
    radial = radial_force(tangential, alpha_wt)
    base = base_diameter(reference, alpha_t)
    assert radial == pytest.approx(2.0 * torque / base * sin(alpha_wt), rel=1e-12)
    helix = helix_angle_at_diameter(beta, reference, working)
    axial = axial_force(tangential, helix, 1, 1, -1)
    assert axial == pytest.approx(2.0 * torque * tan(beta) / reference, rel=1e-12, abs=1e-12)
    # the whole force is normal to the flanks: F_tw / (cos α_wt cos β_b)
    whole = tangential / (cos(alpha_wt) * cos(base_helix_angle(beta, alpha_t)))
    assert whole == pytest.approx(hypot(tangential, radial, axial), rel=1e-12)


def test_a_reversed_torque_changes_role_not_size():
    assert tangential_force(-50.0, 0.1) == tangential_force(50.0, 0.1) == pytest.approx(1000.0)


@given(forces=st.lists(st.floats(min_value=-1e4, max_value=1e4), min_size=1, max_size=4))
@settings(max_examples=50)
def test_what_is_left_over_lies_between_nothing_and_all(forces):
    net = sizes = 0.0
    for force in forces:
        net, sizes = axial_sum(net, force), axial_size_sum(sizes, force)
    share = residual_thrust_share(net, sizes)
    assert 0.0 <= share <= 1.0 + 1e-12
    if sizes > 0.0 and all(force >= 0.0 for force in forces):
        assert share == pytest.approx(1.0)


def test_equal_and_opposite_forces_leave_nothing_but_their_couples():
    assert residual_thrust_share(axial_sum(500.0, -500.0), axial_size_sum(500.0, -500.0)) == 0.0
    couples = couple_sum(axial_couple(500.0, 0.16), axial_couple(-500.0, 0.07))
    assert couples == pytest.approx(500.0 * (0.08 + 0.035))
