"""Press fits, splines, lugs, wood and case bolts; fits of bearing rings."""

import math
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from checker.mechanics import bearing_fit, fastening, joint
from checker.mechanics.equation import OutOfRange

_REFERENCE = Path(__file__).parents[1] / "reference" / "loads-bearings-shafts.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}


def test_wood_across_the_grain():  # SK-12
    case = CASES["SK-12"]
    for species, pressure in zip(
        ("birch", "maple"), case["expected"]["compression_perpendicular_MPa"], strict=True
    ):
        found = fastening.wood_crush_limit(species)
        assert found / 1e6 == pytest.approx(pressure, rel=case["tolerance"])
    for species, psi in zip(("birch", "maple"), case["expected"]["psi"], strict=True):
        found = fastening.wood_crush_limit(species)
        assert found / constants.psi == pytest.approx(psi, rel=case["tolerance"])
    with pytest.raises(OutOfRange, match="balsa"):
        fastening.wood_crush_limit("balsa")


def test_press_fit_of_like_solid_parts():
    # both parts steel, shaft solid: p = E U/(2 d) (1 − d²/D²); Shigley Eq. 3-57
    pressure = bearing_fit.fit_pressure(40e-6, 0.04, 0.08, 0.0, 206e9, 0.3, 206e9, 0.3)
    assert pressure == pytest.approx(206e9 * 40e-6 / (2 * 0.04) * (1 - 0.25))
    torque = fastening.press_fit_torque(0.12, pressure, 0.04, 0.03)
    assert torque == pytest.approx(0.12 * pressure * math.pi * 0.04 * 0.03 * 0.02)
    # Lamé: equal pressure at twice the bore: (4 + 1)/(4 − 1)
    assert fastening.hub_hoop_stress(pressure, 0.04, 0.08) == pytest.approx(pressure * 5 / 3)
    with pytest.raises(OutOfRange, match="loose"):
        bearing_fit.fit_pressure(0.0, 0.04, 0.08, 0.0, 206e9, 0.3, 206e9, 0.3)
    with pytest.raises(OutOfRange, match="wall"):
        bearing_fit.fit_pressure(1e-6, 0.04, 0.04, 0.0, 206e9, 0.3, 206e9, 0.3)


def test_spline_stresses():
    # solid root of 30 mm, 500 N m: 16 T/(π d³) = 94.3 MPa
    assert fastening.spline_root_shear(500.0, 0.03, 0.0) / 1e6 == pytest.approx(94.31, rel=1e-3)
    # all teeth share: π D/2 of the pitch circle over L at D/2
    assert fastening.spline_tooth_shear(500.0, 0.032, 0.03, 1.0) == pytest.approx(
        500.0 / 0.016 / (math.pi * 0.032 / 2 * 0.03) * 1.0
    )
    assert fastening.uneven_pressure(10e6, 0.5) == 20e6
    with pytest.raises(OutOfRange, match="carrying"):
        fastening.uneven_pressure(1.0, 0.0)


def test_lugs_in_shear():
    # six lugs of 13 mm on 50 mm radius, 800 N m
    shear = fastening.pin_shear(800.0, 6, 0.013, 0.05)
    assert shear == pytest.approx(800.0 / (6 * 0.05) / (math.pi / 4 * 0.013**2))
    assert fastening.shear_yield_factor(640e6, shear) == pytest.approx(640e6 / math.sqrt(3) / shear)


@given(st.integers(4, 16), st.floats(10.0, 900.0))
def test_most_loaded_bolt_of_a_circle(bolts, moment):
    """Tension by a rigid plate on N bolts, summed: M = Σ F r cos θ, F = F_max cos θ."""
    largest = fastening.bolt_tension(moment, 0.0, bolts, 0.06)
    angles = [math.tau * index / bolts for index in range(bolts)]
    carried = sum(largest * math.cos(angle) ** 2 * 0.06 for angle in angles)
    assert carried == pytest.approx(moment)


def test_case_bolts():
    # a train that turns the same way: the case takes the difference
    assert fastening.case_torque(240.0, 100.0, 1, 1) == 140.0
    assert fastening.case_torque(240.0, 100.0, -1, 1) == -340.0
    assert fastening.bolt_shear_force(-340.0, 600.0, 8, 0.1) == pytest.approx(425.0 + 75.0)
    assert fastening.slip_use(0.12, 15e3, 3e3, 500.0) == pytest.approx(1 / 2.88)
    with pytest.raises(OutOfRange, match="opens"):
        fastening.slip_use(0.12, 3e3, 3e3, 500.0)
    assert fastening.cross_force(300.0, 40.0, 1.0) == pytest.approx(math.hypot(300.0, 392.266))
    assert fastening.weight_moment(100.0, 0.3, 0.1) == pytest.approx(-20.0)
    assert fastening.moment_sum(1.0, 2.0, -4.0) == -1.0
    assert fastening.mass_sum(1.0, 2.0) == 3.0
    assert fastening.pitch_diameter(0.03, 0.02) == 0.025
    assert fastening.opening_factor(15e3, 3e3) == 5.0
    area = joint.stress_area(0.008, 0.00125)
    assert fastening.bolt_stress_amplitude(0.2, 3e3, area) / 1e6 == pytest.approx(16.4, rel=5e-3)
    # VDI 2230: M8: 0.85 (18.75 + 45) = 54.2 MPa
    assert fastening.bolt_fatigue_strength(0.008) / 1e6 == pytest.approx(54.19, rel=1e-3)


def test_fits_of_rings():
    assert bearing_fit.interference_at(20e-6, 30e-6) == pytest.approx(-10e-6)
    assert bearing_fit.mounted_clearance(20e-6, 10e-6, 10e-6) == pytest.approx(5e-6)
    assert bearing_fit.mounted_clearance(20e-6, -10e-6, -5e-6) == 20e-6
    # 50 mm, 10 K: 6 um
    assert bearing_fit.running_clearance(20e-6, 0.05, 10.0) == pytest.approx(14e-6)
    # aluminium 23e-6 against steel 12e-6 over 80 mm and 75 K: 66 um
    assert bearing_fit.span_growth(0.08, 23e-6, 75.0) == pytest.approx(66e-6)
    assert bearing_fit.ring_creeps(-1e-6, True, False)
    assert not bearing_fit.ring_creeps(-1e-6, True, True)
    assert not bearing_fit.ring_creeps(1e-6, True, False)
    assert not bearing_fit.ring_creeps(-1e-6, False, False)
