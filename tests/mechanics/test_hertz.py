"""Hertz line contact."""

import math
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from scipy import optimize

from checker.mechanics.equation import OutOfRange
from checker.mechanics.hertz import (
    depth_of_greatest_shear,
    line_contact_force,
    line_contact_half_width,
    line_contact_pressure,
    reduced_modulus,
    reduced_radius,
)

_REFERENCE = Path(__file__).parents[1] / "reference" / "loads.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}

forces = st.floats(1.0, 1e6)
lengths = st.floats(1e-3, 0.1)
radii = st.floats(1e-3, 1.0)
moduli = st.floats(1e9, 3e11)


def test_two_cylinders():  # HZ-01, Boresi & Schmidt (6e), Ch 17
    case = CASES["HZ-01"]
    given_, close = case["inputs"], {"rel": case["tolerance"]}
    modulus = reduced_modulus(*[given_["E_GPa"] * 1e9, given_["poisson"]] * 2)
    radius = reduced_radius(*[given_["two_cylinders_radius_mm"] / 1e3] * 2)
    pressure = line_contact_pressure(
        given_["force_kN"] * 1e3, given_["length_mm"] / 1e3, radius, modulus
    )
    assert pressure / 1e6 == pytest.approx(case["expected"]["max_pressure_MPa"], **close)


def test_roller_in_a_race():  # HZ-03, derived
    case = CASES["HZ-03"]
    given_, expected, close = case["inputs"], case["expected"], {"rel": case["tolerance"]}
    force, length = given_["force_N"], given_["length_mm"] / 1e3
    modulus = reduced_modulus(*[given_["E_GPa"] * 1e9, given_["poisson"]] * 2)
    radius = reduced_radius(given_["roller_radius_mm"] / 1e3, given_["race_radius_mm"] / 1e3)
    half_width = line_contact_half_width(force, length, radius, modulus)
    # the greatest shear of the case is 0.300 of the pressure (HZ-01)
    shear = 0.300 * line_contact_pressure(force, length, radius, modulus)
    assert half_width * 1e3 == pytest.approx(expected["half_width_mm"], **close)
    assert depth_of_greatest_shear(half_width) * 1e3 == pytest.approx(
        expected["depth_of_max_shear_mm"], **close
    )
    assert shear / 1e6 == pytest.approx(expected["tau_max_MPa"], **close)


def test_depth_of_the_greatest_shear():
    # stresses on the axis under line contact, Johnson, Contact Mechanics, Eqs. 4.46 (from memory):
    # σ_x = −p_0 ((1 + 2ζ²)/√(1 + ζ²) − 2ζ), σ_z = −p_0/√(1 + ζ²), with ζ = z/b
    def shear(depth):
        root = math.sqrt(1 + depth**2)
        return abs(1 / root - ((1 + 2 * depth**2) / root - 2 * depth)) / 2

    found = optimize.minimize_scalar(lambda depth: -shear(depth), bounds=(0.1, 3), method="bounded")
    assert depth_of_greatest_shear(1.0) == pytest.approx(found.x, rel=1e-3)


@given(forces, lengths, radii, moduli)
def test_pressure_and_width_carry_the_force(force, length, radius, modulus):
    pressure = line_contact_pressure(force, length, radius, modulus)
    half_width = line_contact_half_width(force, length, radius, modulus)
    # an ellipse of pressure over the band: π/2 p_0 b L
    assert math.pi / 2 * pressure * half_width * length == pytest.approx(force)
    assert line_contact_force(pressure, length, radius, modulus) == pytest.approx(force)


@given(radii, radii)
def test_a_hollow_eases_the_contact(one, other):
    assert reduced_radius(one, other) == reduced_radius(other, one)
    assert reduced_radius(one, other) < reduced_radius(one, math.inf) * (1 + 1e-12)
    assert reduced_radius(one, -(one + other)) > one * (1 - 1e-12)


def test_a_rigid_body_leaves_the_softness_of_the_other():
    assert reduced_modulus(206e9, 0.3, math.inf, 0.3) == pytest.approx(206e9 / (1 - 0.3**2))


@pytest.mark.parametrize("hollow", [-0.005, -0.004])
def test_a_hollow_no_wider_than_the_roller_is_refused(hollow):
    with pytest.raises(OutOfRange, match="do not touch along a line"):
        reduced_radius(0.005, hollow)
