"""Bubbles in oil, drops in air."""

from pathlib import Path

import pytest
import yaml
from fluids import v_terminal
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.mechanics import bubbles
from checker.mechanics.equation import OutOfRange

REFERENCE = Path(__file__).parents[1] / "reference" / "oil-heat.yaml"
CASES = {
    case["id"]: case for case in yaml.safe_load(REFERENCE.read_text(encoding="utf-8"))["cases"]
}
AIR = 1.2  # kg/m3


def case_of(name):
    case = CASES[f"OIL-{name}"]
    return case["inputs"], case["expected"], case["tolerance"]


def test_bubbles_that_just_rise():
    given_, expected, tolerance = case_of("A01")
    for row, value in zip(given_, expected, strict=True):
        size = bubbles.cleared_bubble(
            0.1, value["time_for_100mm_s"], row["nu_cSt"] * 1e-6, row["rho_oil_kgm3"], AIR
        )
        assert size * 1e6 == pytest.approx(row["bubble_um"], rel=tolerance)


def test_bubbles_of_the_foam_test():
    given_, expected, tolerance = case_of("A20")
    depth, viscosity = given_["depth_mm"] / 1e3, given_["nu_cSt"] * 1e-6
    for micrometres, time in zip(given_["bubble_um"], expected["time_s"], strict=True):
        size = bubbles.cleared_bubble(depth, time, viscosity, 850.0, AIR)
        assert size * 1e6 == pytest.approx(micrometres, rel=tolerance)


@pytest.mark.parametrize("diameter", [0.05e-3, 0.2e-3, 0.5e-3])
def test_drops_fall_as_in_fluids(diameter):
    expected = v_terminal(D=diameter, rhop=830.0, rho=1.0, mu=2.0e-5)
    found = bubbles.drop_fall_speed(diameter, 830.0, 1.0, 2.0e-5)
    assert found == pytest.approx(expected, rel=0.07)


@settings(max_examples=30)
@given(st.floats(0.005, 0.3), st.floats(20.0, 600.0), st.floats(5e-6, 100e-6))
def test_the_cleared_bubble_just_rises(depth, time, viscosity):
    size = bubbles.cleared_bubble(depth, time, viscosity, 850.0, AIR)
    stokes = 9.80665 * size**2 * (850.0 - AIR) / (18.0 * 850.0 * viscosity)
    assert stokes * time == pytest.approx(depth, rel=1e-9)


def test_oil_that_does_not_rest_clears_nothing():
    with pytest.raises(OutOfRange, match="does not rest"):
        bubbles.cleared_bubble(0.1, 0.0, 20e-6, 850.0, AIR)


@pytest.mark.parametrize(
    ("cleared", "kept"), [(5e-6, 0.0), (10e-6, 0.0), (100e-6, 0.1), (1e-3, 0.2), (5e-3, 0.2)]
)
def test_retained_air(cleared, kept):
    # half of the two decades from 10 to 1000 µm at 100 µm
    assert bubbles.retained_air(0.2, cleared) == pytest.approx(kept, abs=1e-12)


def test_growth_with_air_under_suction():
    # 7 % of warmth over 10 % of air: 1.07/0.9 = 1.18889; at half the pressure 1.07/0.8 = 1.3375
    assert bubbles.aerated_growth(0.07, 0.10, 1.0) == pytest.approx(1.18889, rel=1e-5)
    assert bubbles.aerated_growth(0.07, 0.10, bubbles.swelling(1e5, -0.5e5)) == pytest.approx(
        1.3375
    )
    with pytest.raises(OutOfRange, match="foam"):
        bubbles.aerated_growth(0.07, 0.6, 2.0)
    with pytest.raises(OutOfRange, match="no air"):
        bubbles.swelling(1e5, -1e5)
