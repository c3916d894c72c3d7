"""Plain bearings: by hand, and heat against friction power."""

import pytest

from checker.mechanics import plain_bearing
from checker.mechanics.equation import OutOfRange


def test_pressure_of_a_bush_by_hand():
    """6 kN on a journal of 40 mm in a bush 30 mm long: 6000 N / 1200 mm2."""
    assert plain_bearing.mean_pressure(6e3, 0.040, 0.030) == pytest.approx(5e6)


def test_thrust_face_by_hand():
    """60 mm over 40 mm: π/4 (3600 - 1600) = 1570.8 mm2; 10 MPa on it are 15.708 kN."""
    area = plain_bearing.thrust_face(0.060, 0.040)
    assert area == pytest.approx(1570.796e-6)
    assert plain_bearing.axial_limit(10e6, area) == pytest.approx(15707.96)
    assert plain_bearing.face_pressure(15707.96, area) == pytest.approx(10e6)


def test_face_within_the_bore_is_none():
    with pytest.raises(OutOfRange, match="thrust_outside"):
        plain_bearing.thrust_face(0.040, 0.040)


def test_pressure_times_speed_is_friction_power_over_friction():
    """μ F ω r is the friction power; on the area d B it is μ p v, whichever way it turns."""
    force, bore, width, speed, friction = 6e3, 0.040, 0.030, 300.0, 0.05
    pressure = plain_bearing.mean_pressure(force, bore, width)
    power = friction * force * speed * bore / 2
    for sense in (1, -1):
        heat = friction * plain_bearing.pressure_speed(pressure, sense * speed, bore)
        assert heat * bore * width == pytest.approx(power)
