"""Bolted flange, key and spline."""

from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from checker.mechanics.equation import OutOfRange
from checker.mechanics.joint import (
    bolt_class,
    clamping_pressure,
    friction_torque,
    key_shear_stress,
    key_side_pressure,
    preload_fraction,
    proof_stress,
    spline_side_pressure,
    stress_area,
    tightening_torque,
)

_REFERENCE = Path(__file__).parents[1] / "reference" / "loads.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}
INCH = constants.inch
KSI = 1e3 * constants.psi


def test_friction_torque_of_a_propeller_flange():  # SK-10, derived
    case = CASES["SK-10"]
    given_, expected, close = case["inputs"], case["expected"], {"rel": case["tolerance"]}
    force = expected["preload_per_bolt_kN"] * 1e3
    torque = friction_torque(
        given_["bolts"],
        given_["friction_coefficient"],
        force,
        given_["effective_radius_mm"] / 1e3,
    )
    assert torque == pytest.approx(expected["friction_torque_Nm"], **close)
    # the case has the proof load of M8 class 8.8 to three figures
    area, proof = stress_area(0.008, 0.00125), proof_stress("8.8", 0.008)
    assert proof * area / 1e3 == pytest.approx(given_["proof_load_kN"], abs=0.05)
    assert preload_fraction(force, proof, area) == pytest.approx(
        given_["preload_fraction_of_proof"], rel=0.05 / given_["proof_load_kN"]
    )


def test_preload_and_torque_of_an_inch_bolt():  # SK-04, Wentzell, Machine Design, Example 6.1
    case = CASES["SK-04"]
    given_, expected, close = case["inputs"], case["expected"], {"rel": case["tolerance"]}
    force = expected["preload_lbf"] * constants.lbf
    fraction = preload_fraction(
        force,
        proof_stress("SAE 5", 0.75 * INCH),  # 85 ksi
        given_["stress_area_in2"] * INCH**2,
    )
    torque = tightening_torque(given_["K"], 0.75 * INCH, force)
    assert fraction == pytest.approx(given_["preload_fraction"], **close)
    assert torque / (constants.lbf * INCH) == pytest.approx(expected["torque_lbf_in"], **close)


def test_torque_of_a_metric_bolt():  # SK-06, U. C. Jindal, Machine Design, Example 9-5
    case = CASES["SK-06"]
    given_ = case["inputs"]
    diameter = given_["d_mm"] / 1e3
    proof, area = given_["proof_MPa"] * 1e6, given_["stress_area_mm2"] / 1e6
    # the preload that the torque of the case stands for
    force = case["expected"]["torque_Nm"] / tightening_torque(given_["K"], diameter, 1.0)
    assert preload_fraction(force, proof, area) == pytest.approx(
        given_["preload_fraction"], rel=case["tolerance"]
    )


# ISO 261, coarse pitches, and ISO 898-1, nominal stress areas in mm² to three figures (both from
# memory)
@pytest.mark.parametrize(
    ("diameter", "pitch", "area"),
    [
        (5, 0.8, 14.2),
        (6, 1.0, 20.1),
        (8, 1.25, 36.6),
        (10, 1.5, 58.0),
        (12, 1.75, 84.3),
        (14, 2.0, 115),
        (16, 2.0, 157),
        (18, 2.5, 192),
        (20, 2.5, 245),
        (22, 2.5, 303),
        (24, 3.0, 353),
    ],
)
def test_stress_areas(diameter, pitch, area):
    assert float(f"{stress_area(diameter / 1e3, pitch / 1e3) * 1e6:.3g}") == area


# SK-08, SAE J429 as tabulated in Shigley & Mischke 5e; sizes at both ends of each range
@pytest.mark.parametrize(
    ("row", "name", "sizes"),
    [
        (0, "SAE 2", (0.25, 0.75)),
        (1, "SAE 2", (0.875, 1.5)),
        (2, "SAE 5", (0.25, 1.0)),
        (3, "SAE 5", (1.125, 1.5)),
        (4, "SAE 8", (0.25, 1.5)),
    ],
)
def test_inch_bolt_classes(row, name, sizes):
    expected = CASES["SK-08"]["expected"]
    for size in sizes:
        listed = bolt_class(name, size * INCH)
        assert listed.proof / KSI == pytest.approx(expected["proof_ksi"][row])
        assert listed.yield_strength / KSI == pytest.approx(expected["yield_ksi"][row])
        assert listed.tensile_strength / KSI == pytest.approx(expected["tensile_ksi"][row])


# ISO 898-1 (from memory): proof, yield and tensile in MPa
@pytest.mark.parametrize(
    ("name", "diameter", "strengths"),
    [
        ("8.8", 8, (580, 640, 800)),
        ("8.8", 16, (580, 640, 800)),
        ("8.8", 18, (600, 660, 830)),
        ("10.9", 10, (830, 940, 1040)),
        ("12.9", 12, (970, 1100, 1220)),
    ],
)
def test_metric_bolt_classes(name, diameter, strengths):
    listed = bolt_class(name, diameter / 1e3)
    found = (listed.proof, listed.yield_strength, listed.tensile_strength)
    assert found == pytest.approx([strength * 1e6 for strength in strengths])
    assert proof_stress(name, diameter / 1e3) == listed.proof


@pytest.mark.parametrize(
    ("call", "named"),
    [
        (lambda: bolt_class("9.9", 0.008), "the bolt class 9.9 is not listed"),
        (lambda: bolt_class("8.8", 0.042), "diameter of 42 mm"),
        (lambda: proof_stress("SAE 8", 1.75 * INCH), "diameter of 44.45 mm"),
        (lambda: spline_side_pressure(1.0, 6, 0.02, 0.03, 0.03), "outer diameter of the spline"),
    ],
)
def test_what_no_table_or_flank_covers_is_refused(call, named):
    with pytest.raises(OutOfRange, match=named):
        call()


def test_clamping_pressure():
    # by hand: 6 bolts of 5 kN on 60 cm²
    assert clamping_pressure(6, 5e3, 60e-4) == pytest.approx(5e6)


def test_key():  # SK-01, Wentzell, Machine Design, Example 15.1
    case = CASES["SK-01"]
    given_, expected, close = case["inputs"], case["expected"], {"rel": case["tolerance"]}
    torque = given_["torque_lbf_in"] * constants.lbf * INCH * given_["SF"]
    diameter = given_["shaft_d_in"] * INCH
    shear = key_shear_stress(
        torque, diameter, given_["key_width_in"] * INCH, expected["length_shear_in"] * INCH
    )
    pressure = key_side_pressure(
        torque, diameter, given_["key_height_in"] * INCH, expected["length_compression_in"] * INCH
    )
    assert shear / constants.psi == pytest.approx(given_["Ss_psi"], **close)
    assert pressure / constants.psi == pytest.approx(given_["Sc_psi"], **close)


@given(
    st.floats(1.0, 5e3),
    st.integers(4, 40),
    st.floats(0.01, 0.1),
    st.floats(0.02, 0.1),
    st.floats(0.7, 0.95),
)
def test_spline_pressure_carries_the_torque(torque, splines, length, outer, ratio):
    inner = outer * ratio
    pressure = spline_side_pressure(torque, splines, length, outer, inner)
    # notes of the joint cases: T = p n L (D − d)/2 · (D + d)/4
    assert pressure * splines * length * (outer - inner) / 2 * (outer + inner) / 4 == pytest.approx(
        torque
    )
