"""Equivalent loads of the bearing kinds and induced axial force."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.mechanics import bearing
from checker.mechanics import bearing_load as loads
from checker.mechanics.equation import OutOfRange

FORTY = math.radians(40.0)
FORCES = st.floats(1.0, 1e5)
ANGLES = st.floats(math.radians(20.0), math.radians(45.0))


@given(FORCES, FORCES)
def test_forty_degrees_agree_with_the_single_functions_of_the_sources(radial, axial):
    # BR-17 (SEED guide) single; pair 0.55 / 0.57, 0.93
    assert loads.angular_single_load(radial, axial, FORTY) == pytest.approx(
        bearing.angular_contact_load(radial, axial)
    )
    assert loads.angular_pair_load(radial, axial, FORTY) == pytest.approx(
        bearing.angular_contact_pair_load(radial, axial)
    )
    assert loads.angular_single_static_load(radial, axial, FORTY) == pytest.approx(
        bearing.angular_contact_static_load(radial, axial)
    )


@pytest.mark.parametrize(
    ("formula", "radial", "axial", "angle", "expected"),
    [
        # by hand from e = 1.5 tan α, Y = 0.4 cot α at 14 deg: e 0.3740, Y 1.6043
        (loads.tapered_load, 1000.0, 300.0, 14.0, 1000.0),
        (loads.tapered_load, 1000.0, 1000.0, 14.0, 2004.3),
        # Y1 = 0.45 cot 14 = 1.8049, Y2 = 0.67 cot 14 = 2.6872
        (loads.double_row_roller_load, 1000.0, 300.0, 14.0, 1541.5),
        (loads.double_row_roller_load, 1000.0, 1000.0, 14.0, 3357.2),
        # Y1 = 0.42 cot 10 = 2.3820; e = 0.2645
        (loads.self_aligning_load, 1000.0, 200.0, 10.0, 1476.4),
        (loads.tapered_static_load, 1000.0, 1000.0, 14.0, 1382.4),
        (loads.double_row_static_load, 1000.0, 1000.0, 14.0, 2764.7),
    ],
)
def test_factors_by_hand(formula, radial, axial, angle, expected):
    assert formula(radial, axial, math.radians(angle)) == pytest.approx(expected, rel=2e-4)


@given(FORCES, st.floats(0.0, 1e5), ANGLES)
def test_more_thrust_never_lightens_a_pair(radial, axial, angle):
    assert loads.angular_pair_load(radial, 1.1 * axial, angle) >= loads.angular_pair_load(
        radial, axial, angle
    ) * (1 - 1e-3)  # the table's own step at e


def test_adjusted_pair_shares_by_balance():
    # K = 1000 presses on the first; induced 300 and 500: 1500 and 500, difference K
    first = loads.adjusted_axial_load(300.0, 500.0, 1000.0)
    second = loads.adjusted_axial_load(500.0, 300.0, -1000.0)
    assert (first, second) == (1500.0, 500.0)


@given(FORCES, FORCES, st.floats(-1e5, 1e5))
def test_adjusted_pair_is_in_balance(induced, other, outside):
    first = loads.adjusted_axial_load(induced, other, outside)
    second = loads.adjusted_axial_load(other, induced, -outside)
    assert first - second == pytest.approx(outside, abs=1e-6 * max(induced, other, abs(outside)))
    assert first >= induced
    assert second >= other


def test_tapered_induces_by_its_angle():
    # F_r / (2 Y), Y = 0.4 cot 14 deg = 1.6043
    assert loads.tapered_induced_force(1000.0, math.radians(14.0)) == pytest.approx(
        311.66, rel=1e-4
    )


def test_set_ratings():
    assert loads.set_dynamic_rating(61e3, 2, 0.7) == pytest.approx(61e3 * 1.6245, rel=1e-4)
    assert loads.set_static_rating(45.5e3, 2) == 91e3


def test_pressure_centres_of_a_back_to_back_pair_lie_outside_it():
    angle = FORTY
    rear = loads.pressure_centre(0.245, 0.06, 0.11, angle, +1)
    front = loads.pressure_centre(0.267, 0.06, 0.11, angle, -1)
    assert rear < 0.245
    assert front > 0.267
    assert 0.245 - rear == pytest.approx(0.0425 * math.tan(angle))


def test_one_way_bearings_refuse_the_other_way():
    for formula in (loads.tapered_load, loads.angular_single_load, loads.tapered_static_load):
        with pytest.raises(OutOfRange, match="against the one way"):
            formula(100.0, -1.0, math.radians(30.0))
    with pytest.raises(OutOfRange, match="outside 20 to 45"):
        loads.angular_pair_load(100.0, 1.0, math.radians(15.0))
    with pytest.raises(OutOfRange, match="contact_angle"):
        loads.tapered_load(100.0, 1.0, 0.0)
    assert loads.radial_load(5.0) == 5.0
    assert loads.thrust_load(-5.0) == 5.0
