from math import pi
from pathlib import Path

import pytest
import yaml
from fluids import dP_from_K
from fluids import friction_factor as colebrook
from fluids.fittings import diffuser_sharp
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.mechanics import air, line_liquid, oil, vent
from checker.mechanics.equation import OutOfRange

REFERENCE = Path(__file__).parents[1] / "reference" / "oil.yaml"
CASES = {
    case["id"]: case for case in yaml.safe_load(REFERENCE.read_text(encoding="utf-8"))["cases"]
}
LITRE, MINUTE = 1e-3, 60.0
AIR_DENSITY, AIR_VISCOSITY = 1.0, 2.0e-5  # near 350 K, round figures


def test_sealed_air():
    case = CASES["OIL-A12"]
    given_ = case["inputs"]
    start = 1000 * given_["p0_kPa"]
    hot = vent.sealed_air_pressure(start, given_["T0_C"] + 273.15, given_["T1_C"] + 273.15)
    gauge = vent.gauge_pressure(hot, start)
    assert gauge == pytest.approx(1000 * case["expected"]["gauge_kPa"], rel=case["tolerance"])


@pytest.mark.parametrize(
    ("fill", "altitude_ft", "gauge_kpa"),
    # Published as a range without its assumptions: 33 to 49 kPa on the ground, 65 to 81 kPa at
    # 10 000 ft. Closed at 20 °C and 101.325 kPa, run to 100 °C, oil of 880 kg/m3 at 15 °C:
    #   air alone      101.325 x 373.15/293.15 = 128.98 kPa
    #   oil growth     CTL(20)/CTL(100) - 1 with α = 0.6278/880: 6.18 %
    #   case 40 % full 128.98 x 60/(60 - 40 x 0.0618) = 134.5 kPa
    #   case 70 % full 128.98 x 30/(30 - 70 x 0.0618) = 150.7 kPa
    # and the ambient of 101.325 or 69.69 kPa (OIL-A14) is taken off.
    [(0.4, 0, 33), (0.7, 0, 49), (0.4, 10_000, 65), (0.7, 10_000, 81)],
)
def test_sealed_case(fill, altitude_ft, gauge_kpa):
    growth = oil.thermal_growth(880.0, 293.15, 373.15)
    hot = vent.sealed_case_pressure(101_325.0, 293.15, 373.15, 5 * LITRE, fill * 5 * LITRE, growth)
    gauge = vent.gauge_pressure(hot, air.pressure(0.3048 * altitude_ft))
    assert gauge == pytest.approx(1000 * gauge_kpa, abs=500)  # half of the last printed digit


@given(st.floats(0.05, 0.85), st.floats(0.0, 0.12), st.floats(250.0, 420.0))
def test_a_sealed_case_keeps_its_air(fill, growth, temperature):
    """p V / T of the air is the same before and after."""
    hot = vent.sealed_case_pressure(101_325.0, 293.15, temperature, 1.0, fill, growth)
    air_left = 1.0 - fill * (1.0 + growth)
    assert hot * air_left / temperature == pytest.approx(101_325.0 * (1.0 - fill) / 293.15)


def test_a_case_without_oil_is_one_of_air():
    dry = vent.sealed_air_pressure(101_325.0, 293.15, 373.15)
    assert vent.sealed_case_pressure(101_325.0, 293.15, 373.15, 1.0, 0.0, 0.06) == dry


def test_a_full_case_has_no_air_left():
    with pytest.raises(OutOfRange, match=r"oil volume of .* L fills"):
        vent.sealed_case_pressure(101_325.0, 293.15, 373.15, 1.0, 0.95, 0.06)


def test_climb_breathing():
    case = CASES["OIL-A15"]
    given_ = case["inputs"]
    altitude = 0.3048 * given_["altitude_ft"]
    pressure = air.pressure(altitude)
    flow = vent.climb_breathing_flow(
        given_["air_volume_L"] * LITRE,
        air.density(pressure, air.temperature(altitude, 0.0)),
        pressure,
        0.3048 * given_["climb_ft_min"] / MINUTE,
    )
    expected = case["expected"]["flow_L_min"] * LITRE / MINUTE
    assert flow == pytest.approx(expected, rel=case["tolerance"])


@given(st.floats(0.0, 6000.0))
def test_climb_breathing_is_the_expansion_of_the_air_kept(altitude):
    """In one second at 1 m/s the air of the case grows by its fall in pressure."""
    volume, pressure = 3 * LITRE, air.pressure(altitude)
    density = air.density(pressure, air.temperature(altitude, 0.0))
    grown = volume * (pressure / air.pressure(altitude + 1.0) - 1.0)
    flow = vent.climb_breathing_flow(volume, density, pressure, 1.0)
    # gravity at altitude is up to 0.2 % below the standard value of the formula
    assert flow == pytest.approx(grown, rel=3e-3)


@given(st.floats(260.0, 390.0), st.floats(0.0, 4.0), st.floats(0.5, 5.0))
def test_warm_up_breathing_is_the_air_pushed_out(temperature, oil_litres, air_litres):
    """Mass balance over a hundredth of a kelvin, oil growth from its density."""
    step, oil_volume, air_volume = 0.01, oil_litres * LITRE, air_litres * LITRE
    oil_grown = oil_volume * oil.thermal_growth(880.0, temperature, temperature + step)
    kept = (air_volume - oil_grown) * temperature / (temperature + step)
    flow = vent.warm_up_breathing_flow(
        air_volume, temperature, oil_volume, oil.thermal_expansion(880.0, temperature), step
    )
    assert flow == pytest.approx(air_volume - kept, rel=1e-3)


def test_scavenged_air():
    case = CASES["OIL-A05"]
    given_, expected = case["inputs"], case["expected"]
    oil_flow = given_["pressure_flow_L_min"] * LITRE / MINUTE
    returned = vent.scavenged_air_flow(oil_flow, given_["scavenge_ratio"])
    expected_flow = expected["air_returned_L_min"] * LITRE / MINUTE
    assert returned == pytest.approx(expected_flow, rel=case["tolerance"])
    assert returned / oil_flow == pytest.approx(expected["air_to_oil"], rel=case["tolerance"])


def test_a_small_scavenge_pump_returns_no_air():
    assert vent.scavenged_air_flow(1e-4, 0.8) == 0.0


def test_residence_time():
    case = CASES["OIL-A03"]
    given_ = case["inputs"]
    time = vent.residence_time(
        given_["tank_working_volume_L"] * LITRE, given_["flow_L_min"] * LITRE / MINUTE
    )
    assert time == pytest.approx(case["expected"]["residence_s"], rel=case["tolerance"])


def test_oil_that_stands_has_no_residence():
    with pytest.raises(OutOfRange, match="oil flow"):
        vent.residence_time(1.0, 0.0)


@given(st.floats(1.0, 2000.0))
def test_laminar_friction_agrees_with_the_fluids_library(reynolds):
    assert vent.friction_factor(reynolds) == pytest.approx(colebrook(reynolds))


@given(st.floats(4000.0, 1e5))
def test_turbulent_friction_agrees_with_the_colebrook_equation(reynolds):
    """Blasius is known to lie within 3 % of the smooth pipe from Re 4000 to 1e5."""
    assert vent.friction_factor(reynolds) == pytest.approx(colebrook(reynolds), rel=0.03)


@pytest.mark.parametrize("reynolds", [0.0, 1.01e5])
def test_friction_outside_its_range(reynolds):
    with pytest.raises(OutOfRange, match="Reynolds number"):
        vent.friction_factor(reynolds)


def test_laminar_drop_is_hagen_poiseuille():
    """Δp = 128 μ L Q/(π d⁴): 0.6 m of 8 mm bore at 2 L/min, textbook law."""
    flow, bore, length = 2 * LITRE / MINUTE, 0.008, 0.6
    drop = vent.bore_pressure_drop(flow, bore, length, 0.0, AIR_DENSITY, AIR_VISCOSITY)
    assert drop == pytest.approx(128 * AIR_VISCOSITY * length * flow / (pi * bore**4))


def test_line_with_a_wider_second_segment_agrees_with_the_fluids_library():
    flow, narrow, wide = 60 * LITRE / MINUTE, 0.008, 0.012
    segments = (vent.Segment(narrow, 0.2), vent.Segment(wide, 0.7))
    speeds = [4 * flow / (pi * bore**2) for bore in (narrow, wide)]
    frictions = [
        colebrook(AIR_DENSITY * speed * bore / AIR_VISCOSITY)
        for speed, bore in zip(speeds, (narrow, wide), strict=True)
    ]
    losses = [
        0.5 + frictions[0] * 0.2 / narrow + diffuser_sharp(Di1=narrow, Di2=wide),
        frictions[1] * 0.7 / wide + 1.0,
    ]
    expected = sum(
        dP_from_K(loss, rho=AIR_DENSITY, V=speed)
        for loss, speed in zip(losses, speeds, strict=True)
    )
    drop = vent.line_pressure_drop(flow, segments, AIR_DENSITY, AIR_VISCOSITY)
    assert drop == pytest.approx(expected, rel=0.02)  # Blasius against Colebrook


def test_a_sudden_narrowing_costs_half_of_the_area_left_out():
    """Handbook form 0.5 (1 - A₂/A₁), referred to the narrow bore; lengths of nothing."""
    flow, wide, narrow = 30 * LITRE / MINUTE, 0.016, 0.008
    segments = (vent.Segment(wide, 0.0), vent.Segment(narrow, 0.0))
    wide_head, narrow_head = (
        AIR_DENSITY / 2 * (4 * flow / (pi * bore**2)) ** 2 for bore in (wide, narrow)
    )
    expected = 0.5 * wide_head + (0.5 * (1 - 0.25) + 1.0) * narrow_head
    drop = vent.line_pressure_drop(flow, segments, AIR_DENSITY, AIR_VISCOSITY)
    assert drop == pytest.approx(expected)


@settings(max_examples=50)
@given(st.floats(1e-9, 2e-3), st.floats(1e-9, 2e-3), st.floats(0.008, 0.02), st.floats(0.05, 2.0))
def test_more_gas_drops_more_pressure(one, other, bore, length):
    less, more = (
        vent.line_pressure_drop(flow, (vent.Segment(bore, length),), AIR_DENSITY, AIR_VISCOSITY)
        for flow in sorted((one, other))
    )
    assert 0.0 < less <= more


def test_no_gas_drops_no_pressure():
    """Darcy-Weisbach at rest."""
    assert vent.bore_pressure_drop(0.0, 0.01, 1.0, 1.5, AIR_DENSITY, AIR_VISCOSITY) == 0.0


@given(st.floats(1e-6, 1e-3), st.floats(0.008, 0.02), st.floats(0.1, 1.0))
def test_two_equal_segments_are_one(flow, bore, length):
    whole = (vent.Segment(bore, 2 * length),)
    halves = (vent.Segment(bore, length),) * 2
    drop = vent.line_pressure_drop(flow, whole, AIR_DENSITY, AIR_VISCOSITY)
    split = vent.line_pressure_drop(flow, halves, AIR_DENSITY, AIR_VISCOSITY)
    assert split == pytest.approx(drop)


@pytest.mark.parametrize(
    ("flow", "bore", "named"),
    [(1e-3, 0.0, "bore of 0 mm"), (-1e-3, 0.01, "flow of -60 L"), (0.01, 0.01, "of 600 L/min")],
)
def test_a_line_that_cannot_be_computed(flow, bore, named):
    with pytest.raises(OutOfRange, match=named):
        vent.bore_pressure_drop(flow, bore, 0.5, 1.0, AIR_DENSITY, AIR_VISCOSITY)


def test_a_line_of_nothing():
    with pytest.raises(OutOfRange, match="no segments"):
        vent.line_pressure_drop(1e-4, (), AIR_DENSITY, AIR_VISCOSITY)


def test_blocking_by_a_low_loop():
    case = CASES["OIL-A16"]
    given_ = case["inputs"]
    blocking = line_liquid.blocking_pressure(given_["loop_height_mm"] / 1000, given_["rho_kgm3"])
    expected = 1000 * case["expected"]["blocking_kPa"]
    assert blocking == pytest.approx(expected, rel=case["tolerance"])


def test_oil_lift():
    """3 kPa lifts oil of 860 kg/m3 by 356 mm: hydrostatics by hand, 3000/(860 x 9.80665)."""
    assert line_liquid.oil_lift(3000.0, 860.0) == pytest.approx(0.356, abs=0.0005)


@given(st.floats(0.0, 2.0), st.floats(800.0, 1100.0))
def test_a_loop_holds_back_what_lifts_oil_over_it(height, density):
    assert line_liquid.oil_lift(
        line_liquid.blocking_pressure(height, density), density
    ) == pytest.approx(height)


@pytest.mark.parametrize(
    ("rises", "depth"),
    # Communicating vessels by hand: heights at the ends of the stretches, and what stands between.
    [
        ((0.2, 0.1), 0.0),
        ((0.1, -0.3), 0.0),
        ((0.3, -0.1, 0.2), 0.1),
        ((0.3, -0.4, 0.2), 0.2),
        ((-0.05, 0.3), 0.05),
        ((0.2, -0.1, 0.05, -0.3, 0.4), 0.35),
        ((), 0.0),
    ],
)
def test_trapped_depth(rises, depth):
    assert line_liquid.trapped_depth(rises) == pytest.approx(depth)


@given(st.lists(st.floats(-0.5, 0.5), max_size=6))
def test_a_line_traps_the_same_from_either_end(rises):
    backwards = [-rise for rise in reversed(rises)]
    assert line_liquid.trapped_depth(tuple(backwards)) == pytest.approx(
        line_liquid.trapped_depth(tuple(rises)), abs=1e-12
    )


def test_losses_of_a_stretch_add_to_its_own():
    """Darcy-Weisbach: ζ of a bend costs ζ velocity heads of its bore."""
    flow, bore = 60 * LITRE / MINUTE, 0.012
    plain, bent = (
        vent.line_pressure_drop(flow, (vent.Segment(bore, 0.5, loss),), AIR_DENSITY, AIR_VISCOSITY)
        for loss in (0.0, 0.9)
    )
    speed = 4 * flow / (pi * bore**2)
    assert bent - plain == pytest.approx(dP_from_K(0.9, rho=AIR_DENSITY, V=speed))


@pytest.mark.parametrize(
    ("climb", "warm", "case", "flow"),
    # Volume balance by hand, in L/min: warming adds in a climb, cooling takes off in a descent.
    [(0.2, 0.1, 1.0, 1.3), (0.0, 0.1, 1.0, 1.1), (-0.2, 0.1, 0.1, -0.2), (-0.2, 0.1, 1.0, 0.7)],
)
def test_vent_flow(climb, warm, case, flow):
    assert vent.vent_flow(climb, warm, case) == pytest.approx(flow)


@given(st.floats(1e-6, 1e-3), st.floats(0.008, 0.02), st.floats(0.008, 0.02))
def test_a_line_drops_as_much_inwards_from_its_other_end(flow, one, other):
    line = (vent.Segment(one, 0.3, 0.5), vent.Segment(other, 0.6))
    inwards = vent.line_pressure_drop(-flow, line, AIR_DENSITY, AIR_VISCOSITY)
    outwards = vent.line_pressure_drop(flow, line[::-1], AIR_DENSITY, AIR_VISCOSITY)
    assert inwards == -outwards < 0.0


def test_a_mouth_under_oil_is_below_zero():
    assert vent.height_above_oil(0.10, 0.14) == pytest.approx(-0.04)


def test_a_case_stands_over_the_place_it_breathes_into():
    """3 kPa of suction less 0.2 kPa of line leaves 2.8 kPa of suction."""
    assert vent.case_pressure(-3e3, 200.0) == pytest.approx(-2.8e3)
