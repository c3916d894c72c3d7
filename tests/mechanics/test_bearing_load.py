"""Equivalent loads of the bearing kinds and induced axial force."""

import math
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from checker.mechanics import bearing_load as loads
from checker.mechanics.equation import OutOfRange

_REFERENCE = Path(__file__).parents[1] / "reference" / "loads.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}
FORTY = math.radians(40.0)
FORCES = st.floats(1.0, 1e5)
ANGLES = st.floats(math.radians(20.0), math.radians(45.0))


def test_angular_contact_of_forty_degrees():  # BR-17, SEED rolling-element bearing guide
    factors = CASES["BR-17"]["expected"]
    limit, x, y = factors["e"], factors["X"], factors["Y"]
    assert loads.angular_single_load(1.0, limit, FORTY) == 1.0
    above = loads.angular_single_load(1.0, limit * 1.01, FORTY)
    assert above == pytest.approx(x + y * limit * 1.01)
    assert loads.angular_single_load(0.0, 1.0, FORTY) == pytest.approx(y)
    static = loads.angular_single_static_load(1.0, 3.0, FORTY)
    assert static == pytest.approx(factors["X0"] + 3.0 * factors["Y0"])
    assert loads.angular_single_static_load(1.0, 0.5, FORTY) == 1.0


def test_angular_contact_pair_of_forty_degrees():  # note of BR-17, from memory
    assert loads.angular_pair_load(1.0, 1.0, FORTY) == pytest.approx(1.0 + 0.55)
    assert loads.angular_pair_load(1.0, -2.0, FORTY) == pytest.approx(0.57 + 0.93 * 2.0)


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
    for formula in (
        loads.tapered_load,
        loads.tapered_static_load,
        loads.angular_single_load,
        loads.angular_single_static_load,
    ):
        with pytest.raises(OutOfRange, match="against the one way"):
            formula(100.0, -1.0, math.radians(30.0))
    with pytest.raises(OutOfRange, match="outside 20 to 45"):
        loads.angular_pair_load(100.0, 1.0, math.radians(15.0))
    with pytest.raises(OutOfRange, match="contact_angle"):
        loads.tapered_load(100.0, 1.0, 0.0)
    assert loads.radial_load(5.0) == 5.0
    assert loads.thrust_load(-5.0) == 5.0
