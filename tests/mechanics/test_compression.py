"""Torque of one compressed cylinder."""

import math

import pytest
from scipy.optimize import minimize_scalar

from checker.mechanics.compression import compression_torque
from checker.mechanics.equation import OutOfRange

ATMOSPHERE = 101325.0


def work(angle, bore, stroke, rod, ratio, intake):
    """Work done on the charge from the lower dead centre, less that of the air below the piston."""
    crank = stroke / 2
    pin = crank * math.cos(angle) + math.sqrt(rod**2 - (crank * math.sin(angle)) ** 2)
    area = math.pi / 4 * bore**2
    largest = area * stroke * ratio / (ratio - 1)
    volume = area * (crank + rod - pin) + largest / ratio
    squeezed = intake * largest / 0.3 * ((largest / volume) ** 0.3 - 1)
    return squeezed - ATMOSPHERE * (largest - volume)


@pytest.mark.parametrize(
    "cylinder",
    [
        (0.084, 0.078, 0.136, 10.5, ATMOSPHERE),
        (0.084, 0.078, 0.136, 10.5, 0.3 * ATMOSPHERE),
        (0.084, 0.072, 0.128, 9.8, ATMOSPHERE),
        (0.098, 0.072, 0.125, 11.0, ATMOSPHERE),
    ],
)
def test_it_is_the_steepest_rise_of_the_work(cylinder):
    """Against the slope of the work of compression, found by scipy before the dead centre."""

    def falling(angle):
        step = 1e-5
        return -(work(angle + step, *cylinder) - work(angle - step, *cylinder)) / (2 * step)

    steepest = minimize_scalar(falling, bounds=(-1.2, -0.05), method="bounded")
    assert compression_torque(*cylinder) == pytest.approx(-steepest.fun, rel=2e-4)


def test_thirty_degrees_before_the_dead_centre_by_hand():
    # Square 100 mm cylinder, rod without end, ratio 9: the clearance is 12.5 mm. There
    # x = 50 (1 - cos 30) = 6.699 mm, (112.5/19.199)^1.3 = 9.959, the gauge pressure 907.8 kPa and
    # the lever 50 sin 30 = 25 mm: 907.8e3 x 7.854e-3 x 0.025 = 178.2 N m. The peak is near.
    found = compression_torque(0.1, 0.1, 1e3, 9.0, ATMOSPHERE)
    assert 178.2 < found < 1.05 * 178.2


def test_a_cylinder_that_compresses_nothing():
    with pytest.raises(OutOfRange, match="compression_ratio"):
        compression_torque(0.084, 0.078, 0.136, 1.0, ATMOSPHERE)
    with pytest.raises(OutOfRange, match="rod_length"):
        compression_torque(0.084, 0.078, 0.03, 9.0, ATMOSPHERE)
