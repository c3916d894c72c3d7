"""Losses of bearings, seals, gears in oil and air, pump, clutch and damper."""

from math import acos, pi, radians
from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.mechanics import auxiliary_loss, bearing_loss, churning, coupling
from checker.mechanics.equation import OutOfRange

REFERENCE = Path(__file__).parents[1] / "reference" / "oil-heat.yaml"
CASES = {
    case["id"]: case for case in yaml.safe_load(REFERENCE.read_text(encoding="utf-8"))["cases"]
}
RPM = 2.0 * pi / 60.0


def case_of(name):
    case = CASES[f"OIL-{name}"]
    return case["inputs"], case["expected"], case["tolerance"]


def test_palmgren_bearing():
    given_, expected, tolerance = case_of("P06")
    speed, diameter = given_["speed_rpm"] * RPM, given_["dm_mm"] / 1e3
    idle = bearing_loss.oil_drag_moment(given_["f0"], speed, diameter, given_["nu_cSt"] * 1e-6)
    assert idle == pytest.approx(expected["M0_Nmm"] / 1e3, rel=tolerance)
    loaded = bearing_loss.load_moment(given_["f1"], given_["P1_N"], diameter)
    assert loaded == pytest.approx(expected["M1_Nmm"] / 1e3, rel=tolerance)
    lost = bearing_loss.bearing_loss(idle, loaded, speed)
    assert lost == pytest.approx(expected["loss_W"], rel=tolerance)


def test_both_branches_of_the_oil_drag_join():
    """At ν n = 2000 mm²/s rpm: 2000^(2/3) = 158.7 against 160 (note of OIL-P06)."""
    below = bearing_loss.oil_drag_moment(2.0, 199.9 * RPM, 0.07, 10e-6)
    above = bearing_loss.oil_drag_moment(2.0, 200.1 * RPM, 0.07, 10e-6)
    assert below == pytest.approx(above * 160.0 / 158.7, rel=2e-3)


def test_jets_double_the_oil_drag_and_plain_bearings_have_another_law():
    assert bearing_loss.oil_drag_factor("deep groove ball", "oil jet") == 4.0  # from memory
    assert bearing_loss.oil_drag_factor("deep groove ball", "oil splash") == 2.0
    with pytest.raises(OutOfRange, match="plain"):
        bearing_loss.load_factor("plain")


def test_load_of_a_bearing_is_estimated_from_above():
    # two meshes of 1000 and 600 N on two bearings, 300 N of thrust on one: 800 + 300
    assert bearing_loss.estimated_load((1000.0, 600.0), 2, -300.0) == 1100.0


def test_lip_by_material():
    given_, expected, tolerance = case_of("P10")
    for material, torque, loss in zip(
        given_["material"], expected["torque_Nm"], expected["loss_W"], strict=True
    ):
        speed = given_["speed_rpm"] * RPM
        found = auxiliary_loss.lip_loss_by_material(material, given_["shaft_mm"] / 1e3, speed)
        assert found == pytest.approx(loss, rel=tolerance)
        assert found / speed == pytest.approx(torque, rel=tolerance)


def test_lip_by_oil_is_up_to_twice_that_by_material():
    """50 mm at 2400 rpm in VG 100 of 60 °C: 145 - 96 + 350 lg lg 100.8 = 154.6; 92.8 W (by hand).

    The two parts of ISO/TR 14179 differ by up to a factor of two (notes of OIL-P10).
    """
    by_oil = auxiliary_loss.lip_loss_by_oil(0.05, 2400 * RPM, 100e-6, 333.15)
    assert by_oil == pytest.approx(92.8, abs=0.1)
    assert auxiliary_loss.lip_loss(1, "FKM", 0.05, 2400 * RPM, 100e-6, 333.15) == by_oil
    assert auxiliary_loss.lip_loss(0, "FKM", 0.05, 2400 * RPM, 100e-6, 333.15) == 0.0


def test_windage():
    given_, expected, tolerance = case_of("P12")
    for row, value in zip(given_, expected, strict=True):
        found = churning.windage_loss(
            row["speed_rpm"] * RPM,
            row["face_mm"] / 1e3,
            2.0 * row["pitch_radius_mm"] / 1e3,
            row["eta_mPas"] / 1e3,
        )
        assert found == pytest.approx(value["loss_W"], rel=tolerance)


def test_dip_of_a_gear():
    # axis 53.4 mm under the datum, tip circle 68 mm, oil at -80 mm: its tips reach -87.4 mm
    assert churning.dip_depth(-0.0534, 0.068, -0.080) == pytest.approx(0.0074)
    assert churning.dip_depth(0.0, 0.068, -0.080) == 0.0


def test_wetted_surface_to_the_axis_is_half_of_all():
    """A gear in oil to its axis wets half of both faces, of its rim and of its flanks."""
    radius, face = 0.05, 0.02
    found = churning.wetted_surface(radius, 2 * radius, face, 40, 0.104, 0.094, radians(20.0), 0.0)
    angle = acos(0.0)
    flanks = 2 * 40 * 0.005 * face * angle / (pi * 0.9396926)
    assert found == pytest.approx(pi * radius**2 + pi * radius * face + flanks, rel=1e-6)


def test_churning_of_a_standard_case():
    """By hand: r 50 mm, b 20 mm, 100 rad/s, h 10 mm, 1 L, S 5e-3 m2, 850 kg/m3, 50 mm²/s.

    Fr = 50.99, Re = 2000 (below 6000), h/d 0.1, V/d³ 1, b/r 0.4: C = 1.366 · 0.3548 · 0.09450 ·
    0.2027 · 0.8250 = 7.659e-3; ½ 850 · 1e6 · 1.25e-4 · 5e-3 · C = 2.034 W.
    """
    found = churning.churning_loss(100.0, 0.01, 5e-3, 0.1, 0.02, 1e-3, 850.0, 50e-6)
    assert found == pytest.approx(2.034, rel=2e-3)


def test_churning_between_its_two_laws_is_continuous():
    def at(reynolds):
        return churning.churning_loss(100.0, 0.01, 5e-3, 0.1, 0.02, 1e-3, 850.0, 0.1 / reynolds)

    assert at(5999.9) == pytest.approx(at(6000.1), rel=1e-3)
    assert at(8999.9) == pytest.approx(at(9000.1), rel=1e-3)
    low, high = sorted((at(6000.0), at(9000.0)))
    assert low <= at(7500.0) <= high


@settings(max_examples=40)
@given(st.floats(0.001, 0.04), st.floats(1.01, 2.0))
def test_churning_grows_with_dip(dip, more):
    def loss(depth):
        surface = churning.wetted_surface(depth, 0.1, 0.02, 40, 0.104, 0.094, 0.35, 0.0)
        return churning.churning_loss(200.0, depth, surface, 0.1, 0.02, 1e-3, 850.0, 30e-6)

    assert loss(dip * more) > loss(dip)
    assert loss(0.0) == 0.0


def test_pump_clutch_and_damper():
    # 2 L/min at 300 kPa and 60 %: 3.333e-5 · 3e5/0.6 = 16.67 W
    assert auxiliary_loss.pump_loss(2e-3 / 60.0, 3e5, 0.6) == pytest.approx(16.667, rel=1e-3)
    # 0.5 N m at 80 rad/s of slip: 40 W; none while it grips
    assert auxiliary_loss.overrunning_loss(0.5, 100.0, 180.0) == 40.0
    assert auxiliary_loss.overrunning_loss(0.5, 100.0, 100.0) == 0.0
    # ψ 1, 60 N m at 100 Hz, 360 N m/rad: 3600 · 100/720 = 500 W; held by a rating of 150 W
    assert coupling.heat(1.0, 100.0, 60.0, 360.0) == pytest.approx(500.0)
    held = auxiliary_loss.damper_heat_at_most(150.0, 1.0, 60.0, 1.0, 100.0 * 2 * pi, 360.0)
    assert held == 150.0


def test_hysteresis_is_the_area_of_the_loop():
    """A viscous element c ω = ψ k/(2 π) turns π c ω φ² per cycle into heat, integrated in time."""
    from math import cos

    from scipy.integrate import quad

    stiffness, damping, torque, frequency = 360.0, 0.8, 60.0, 50.0
    swing, turning = torque / stiffness, 2 * pi * frequency
    viscous = damping * stiffness / (2 * pi) / turning
    heat = quad(lambda t: viscous * (swing * turning * cos(turning * t)) ** 2, 0, 1 / frequency)[0]
    found = coupling.heat(damping, frequency, torque, stiffness)
    assert found == pytest.approx(heat * frequency, rel=1e-6)
