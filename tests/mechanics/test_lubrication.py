"""Oil on its way."""

from math import radians, tan
from pathlib import Path

import pytest
import yaml
from fluids import dP_from_K, friction_laminar
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon

from checker.mechanics import line_liquid, lubrication
from checker.mechanics.equation import OutOfRange

REFERENCE = Path(__file__).parents[1] / "reference" / "oil-heat.yaml"
CASES = {
    case["id"]: case for case in yaml.safe_load(REFERENCE.read_text(encoding="utf-8"))["cases"]
}


def case_of(name):
    case = CASES[f"OIL-{name}"]
    return case["inputs"], case["expected"], case["tolerance"]


def test_dip_by_the_handbook_in_modules():
    given_, expected, tolerance = case_of("L05")
    dip = 2.0 * given_["full_tooth_depth_modules"] * given_["module_mm"]
    assert dip == pytest.approx(expected["dip_depth_mm"], rel=tolerance)
    modules = lubrication.dip_in_modules(dip / 1e3, given_["module_mm"] / 1e3)
    assert modules == pytest.approx(4.5)


def test_jet():
    # 0.5 L/min through 0.9 mm: 8.333e-6/6.362e-7 = 13.10 m/s, which 72.9 kPa drive at 850 kg/m3
    speed = lubrication.jet_speed(0.5e-3 / 60.0, 0.9e-3)
    assert speed == pytest.approx(13.10, abs=0.01)
    assert lubrication.jet_pressure(speed, 850.0) == pytest.approx(72.9e3, rel=1e-3)
    with pytest.raises(OutOfRange, match="not open"):
        lubrication.jet_speed(1e-5, 0.0)


def test_level_tilts_about_the_middle_of_the_sump():
    ends = (0.08, 0.23)
    level = lubrication.oil_height(-0.096, 0.015, *ends, 0.155, radians(10.0), 1)
    assert level == pytest.approx(-0.081)
    # nose up, a tractor's oil leaves the propeller end: 35 mm ahead of the middle, tan 10°
    ahead = lubrication.oil_height(-0.096, 0.015, *ends, 0.190, radians(10.0), 1)
    assert ahead == pytest.approx(-0.081 - 0.035 * tan(radians(10.0)))
    pusher = lubrication.oil_height(-0.096, 0.015, *ends, 0.190, radians(10.0), -1)
    assert ahead + pusher == pytest.approx(2 * level)


@given(level=st.floats(0.0005, 0.05), length=st.floats(0.05, 0.4), degrees=st.floats(-25.0, 25.0))
@settings(max_examples=60, deadline=None)
def test_tilted_oil_keeps_its_volume(level, length, degrees):
    """Area under the surface, by Shapely, is that of the level box: as a wedge or not."""
    depths = [
        lubrication.oil_height(0.0, level, 0.0, length, station, radians(degrees), 1)
        for station in (0.0, length)
    ]
    box = Polygon([(0, 0), (length, 0), (length, 1), (0, 1)])
    slope = (depths[1] - depths[0]) / length
    left, right = -10 * length, 11 * length
    surface = [(x, depths[0] + slope * x) for x in (left, right)]
    below = Polygon([*surface, (right, -99.0), (left, -99.0)])
    assert box.intersection(below).area == pytest.approx(level * length, rel=1e-6)
    deepest = lubrication.deepest_level(level, 0.0, length, radians(degrees))
    assert deepest == pytest.approx(max(depths))


def test_wedge_by_hand():
    # 6 mm in a sump of 125 mm, 11° nose up: d²/(2 tan 11°) = 6 x 125, d = 17.1 mm
    assert lubrication.deepest_level(6e-3, 0.110, 0.235, radians(11.0)) == pytest.approx(
        17.1e-3, abs=5e-5
    )


def test_suction_line_against_fluids():
    flow, bore, length, viscosity, density = 4e-5, 0.014, 0.45, 0.05, 860.0
    speed = flow / (3.14159265 * bore**2 / 4)
    reynolds = density * speed * bore / viscosity
    loss = friction_laminar(reynolds) * length / bore + 1.5
    expected = dP_from_K(loss, rho=density, V=speed)
    found = lubrication.suction_loss(flow, bore, length, viscosity, density)
    assert found == pytest.approx(expected, rel=1e-6)


def test_pump_inlet():
    # 90 kPa air, 3 kPa suction, 0.2 m of oil of 850 kg/m3 over it (1667 Pa), 5 kPa lost
    found = lubrication.pump_inlet_pressure(90e3, -3e3, 850.0, 0.2, 5e3)
    assert found == pytest.approx(83_667.0, abs=1.0)


def test_line_that_rises_higher_than_the_lift():
    # 3 kPa lift 0.356 m of oil of 860 kg/m3 (the notes on venting); the line rises 0.51 m
    top = lubrication.highest_rise((0.05, 0.46, -0.5))
    assert top == pytest.approx(0.51)
    assert lubrication.lift_reserve(top, line_liquid.oil_lift(3e3, 860.0)) == pytest.approx(
        0.51 - 0.3557, abs=1e-3
    )


def test_vent_speed_either_way():
    # 1.2 L/min in 12 mm: 2e-5/1.131e-4 = 0.1768 m/s
    assert lubrication.vent_speed(-2e-5, 0.012) == pytest.approx(0.1768, abs=1e-4)


def test_sums():
    assert lubrication.flow_sum((1e-5, 2e-5)) == pytest.approx(3e-5)
    assert lubrication.oil_in_case(4.6e-3, 4.3e-3) == pytest.approx(0.3e-3)
    assert lubrication.oil_in_case(4.0e-3, 4.3e-3) == 0.0
