"""Torque cycles, drag and race of a one-way clutch."""

import math

import pytest
from scipy.optimize import brentq

from checker.mechanics import auxiliary_loss, clutch, clutch_duty, engine, hertz
from checker.mechanics.equation import OutOfRange

RPM = math.tau / 60


@pytest.mark.parametrize(
    ("cylinders", "strokes", "speed", "cycles"),
    [
        (4, 4, 5000.0, 600_000.0),  # two firings a turn
        (2, 4, 6000.0, 360_000.0),  # one a turn
        (2, 2, 6000.0, 720_000.0),  # two a turn
    ],
)
def test_firing_cycles(cylinders, strokes, speed, cycles):
    firings = engine.firing_events_per_revolution(cylinders, strokes)
    found = clutch_duty.firing_cycles_per_hour(speed * RPM, firings)
    assert found == pytest.approx(cycles)
    half = clutch_duty.cycles_of_point(found, 0.5, 7200.0)
    assert clutch_duty.cycle_sum(half, half) == pytest.approx(2 * cycles)


def test_clutch_lets_go_where_the_torque_reverses():
    assert clutch_duty.least_torque_share(100.0, 120.0) == pytest.approx(-0.2)
    with pytest.raises(OutOfRange, match="overrunning"):
        clutch_duty.least_torque_share(0.0, 1.0)


def test_drag_heats_the_oil():
    heat = auxiliary_loss.overrunning_loss(0.5, 0.0, 2000 * RPM)
    assert heat == pytest.approx(104.72, rel=1e-4)
    # 0.25 L/min of 850 kg/m3: 3.542e-3 kg/s, 6.906 W/K
    assert clutch_duty.oil_warming(heat, 850.0, 0.25e-3 / 60) == pytest.approx(15.16, rel=1e-3)
    with pytest.raises(OutOfRange, match="flow"):
        clutch_duty.oil_warming(1.0, 850.0, 0.0)


def test_race_and_case():
    assert clutch_duty.race_thickness_ratio(0.046, 0.035) == pytest.approx(11 / 35)
    with pytest.raises(OutOfRange, match="wall"):
        clutch_duty.race_thickness_ratio(0.03, 0.035)
    # hertz: HZ-03 puts the greatest shear at 0.230 mm; a case of 1.3 mm is 5.6 times that
    depth = hertz.depth_of_greatest_shear(0.292757e-3)
    assert clutch_duty.case_over_shear_depth(1.3e-3, depth) == pytest.approx(5.65, rel=1e-3)


@pytest.mark.parametrize("ramps", ["outer", "inner"])
@pytest.mark.parametrize("offset", [0.02e-3, 0.1e-3])
def test_roller_out_of_centre_as_drawn(ramps, offset):
    """Against a drawing: a circle put between a circle and a line, and the angle of its normals."""
    race, roller, angle = 0.026, 0.0045, math.radians(3.0)

    def steeper(shift):
        """Half the angle between the normals, the inner race shifted along that of the flat."""
        if ramps == "outer":
            flat = roller + (race + roller) * math.cos(2.0 * angle)
            at = brentq(
                lambda turn: flat - shift - (race + roller) * math.cos(turn) - roller, 0.0, 1.5
            )
        else:
            outer = (race + roller) / math.cos(2.0 * angle) + roller
            at = brentq(
                lambda turn: (outer - roller) * math.cos(turn) - (race - shift) - roller, 0.0, 1.5
            )
        return at / 2.0

    assert steeper(0.0) == pytest.approx(angle)
    found = clutch_duty.roller_angle_out_of_centre(angle, offset, race, roller)
    if ramps == "outer":
        assert found == pytest.approx(steeper(offset), rel=1e-9)
    else:  # the smaller length is taken: a little steeper, never less
        assert steeper(offset) < found < steeper(1.01 * offset)


def test_eccentric_races_take_from_the_grip():
    # By hand: cos 6 deg less 0.02/30.5 is the cosine of 6.3493 deg.
    angle = math.radians(3.0)
    found = clutch_duty.roller_angle_out_of_centre(angle, 0.02e-3, 0.026, 0.0045)
    assert math.degrees(found) == pytest.approx(3.17465, abs=1e-5)
    small = clutch_duty.roller_angle_out_of_centre(angle, 1e-9, 0.026, 0.0045) - angle
    assert small / 1e-9 == pytest.approx(1.0 / (2.0 * 0.0305 * math.sin(2.0 * angle)), rel=1e-4)
    assert clutch.grip_margin(0.085, found) < clutch.grip_margin(0.085, angle)
    with pytest.raises(OutOfRange, match="no roller fits"):
        clutch_duty.roller_angle_out_of_centre(angle, 0.031, 0.026, 0.0045)


def test_sprag_out_of_centre_is_its_makers():
    assert clutch_duty.sprag_angle_out_of_centre(0.052, 0.06) == 0.06
    with pytest.raises(OutOfRange, match="at least the gripping angle"):
        clutch_duty.sprag_angle_out_of_centre(0.052, 0.05)


def test_rows_add_up():
    assert clutch_duty.torque_of_rows(600.0, 2) == 1200.0
