"""A tapered seat: torque, pressure, and the couple that lifts an end of it."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate

from checker.mechanics import taper
from checker.mechanics.equation import OutOfRange

ANGLE = math.radians(5.71)  # 1:10 on the radius: sin 0.0995, cos 0.9950


@given(st.floats(0.02, 0.3), st.floats(0.02, 0.3))
def test_a_steeper_taper_holds_less(angle, friction):
    assert taper.taper_torque(friction, 1e4, 0.04, angle * 1.1) < taper.taper_torque(
        friction, 1e4, 0.04, angle
    )


def test_torque_by_hand():  # μ 0.12: N = F/0.2189
    found = taper.taper_torque(0.12, 1e4, 0.04, ANGLE)
    assert found == pytest.approx(0.12 * 1e4 / 0.21890 * 0.02, rel=1e-3)


def test_pressure_by_hand():  # N = 45 683 N on π 40 × 50 mm²/0.995
    found = taper.taper_pressure(0.12, 1e4, 0.04, ANGLE, 0.05)
    assert found / 1e6 == pytest.approx(45683 * 0.9950 / (math.pi * 40 * 50), rel=1e-3)


@given(st.floats(0.02, 0.3), st.floats(0.03, 0.4))
def test_pressure_and_friction_hold_the_force_of_the_nut(angle, friction):
    """Summed over the cone, what presses and rubs endways is the force again."""
    diameter, length, force = 0.05, 0.06, 3e4
    pressure = taper.taper_pressure(friction, force, diameter, angle, length)

    def endways(x):
        around = math.pi * (diameter + 2.0 * x * math.tan(angle)) / math.cos(angle)
        return pressure * (math.sin(angle) + friction * math.cos(angle)) * around

    held, _ = integrate.quad(endways, -length / 2.0, length / 2.0)
    assert held == pytest.approx(force, rel=1e-9)


def test_the_pressure_of_a_couple_gives_the_couple_back():
    """Integrated over the surface of the seat."""
    moment, diameter, length = 800.0, 0.05, 0.06
    most = taper.couple_pressure(moment, diameter, length)

    def about_the_middle(angle, x):
        pressure = most * 2.0 * x / length * math.cos(angle)
        return pressure * x * math.cos(angle) * diameter / 2.0

    summed, _ = integrate.dblquad(about_the_middle, -length / 2, length / 2, 0.0, 2.0 * math.pi)
    assert summed == pytest.approx(moment, rel=1e-9)
    assert taper.couple_pressure(-moment, diameter, length) == most


def test_the_thick_end():  # 50 mm at 1:10 on the radius: 2.5 mm more on each side of 40 mm
    assert taper.large_end(0.04, 0.05, ANGLE) == pytest.approx(0.045, rel=1e-4)


@pytest.mark.parametrize(("thrust", "left"), [(2e3, 8e3), (-2e3, 10e3), (0.0, 10e3)])
def test_only_a_pulling_thrust_takes_from_the_nut(thrust, left):
    assert taper.seating_force(10e3, thrust) == left


@pytest.mark.parametrize("angle", [0.0, math.pi / 2.0])
def test_no_taper_is_refused(angle):
    for formula, more in ((taper.taper_torque, ()), (taper.taper_pressure, (0.05,))):
        with pytest.raises(OutOfRange, match="half_angle"):
            formula(0.12, 1e4, 0.04, angle, *more)


def test_a_thrust_that_takes_all_of_the_nuts_force_is_refused():
    with pytest.raises(OutOfRange, match="force"):
        taper.taper_pressure(0.12, taper.seating_force(1e3, 1e3), 0.04, ANGLE, 0.05)
