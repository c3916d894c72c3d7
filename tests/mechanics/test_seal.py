from math import pi
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from checker.mechanics.equation import OutOfRange
from checker.mechanics.seal import (
    LIP_MATERIALS,
    lip_speed,
    lip_temperature,
    plain_lip_pressure,
    pressure_across,
    pressure_behind_lip,
    pressure_share,
    profile_lip_pressure,
    shaft_hardness,
)

REFERENCE = Path(__file__).parents[1] / "reference" / "oil.yaml"
CASES = {
    case["id"]: case for case in yaml.safe_load(REFERENCE.read_text(encoding="utf-8"))["cases"]
}
SPEEDS = st.floats(0.0, 50.0)


def test_lip_speed():
    case = CASES["OIL-S01"]
    for given_, expected in zip(case["inputs"], case["expected"], strict=True):
        speed = lip_speed(given_["speed_rpm"] * pi / 30, given_["shaft_mm"] / 1000)
        assert speed == pytest.approx(expected["v_m_s"], rel=case["tolerance"])


@pytest.mark.parametrize("material", ["NBR", "FKM"])
def test_speed_of_lip_materials(material):
    case = CASES["OIL-S02"]
    limit = LIP_MATERIALS[material].speed
    borne = [speed <= limit for speed in case["inputs"]["v_m_s"]]
    assert borne == case["expected"][f"{material}_ok"]


def test_nitrile_has_a_strict_and_a_loose_speed():
    """OIL-S02, note: between 14 and 15 m/s the sources differ."""
    nitrile = LIP_MATERIALS["NBR"]
    assert (nitrile.speed, nitrile.speed_at_most) == (14.0, 15.0)


def test_pressure_of_a_plain_lip():
    case = CASES["OIL-S04"]
    for given_, expected in zip(case["inputs"], case["expected"], strict=True):
        borne = 1e5 * given_["dp_bar"] <= plain_lip_pressure(given_["v_m_s"])
        assert borne == expected["ok"]


@pytest.mark.parametrize(
    ("feet_per_minute", "psi"),
    # OIL-S04, note: US trade values 7 psi to 1000 ft/min, 5 psi to 2000 ft/min, 3 psi above.
    [(0, 7), (1000, 7), (1001, 5), (2000, 5), (2001, 3), (6000, 3)],
)
def test_pressure_steps_are_the_trade_values_rounded(feet_per_minute, psi):
    speed = feet_per_minute * 0.00508
    assert plain_lip_pressure(speed) == pytest.approx(6894.757 * psi, rel=0.016)


def test_pressure_of_a_profiled_lip():
    case = CASES["OIL-S06"]
    for given_, expected in zip(case["inputs"], case["expected"], strict=True):
        borne = 1e6 * given_["dp_MPa"] <= profile_lip_pressure(given_["v_m_s"])
        assert borne == expected["ok"]


def test_temperature_range_is_the_tighter_of_the_two_sources():
    case = CASES["OIL-S07"]
    for name, handbook, supplier in zip(
        case["inputs"]["material"],
        case["expected"]["handbook_C"],
        case["expected"]["supplier_C"],
        strict=True,
    ):
        ranges = [each for each in (handbook, supplier) if each is not None]
        material = LIP_MATERIALS[name]
        assert material.coldest - 273.15 == pytest.approx(max(low for low, _ in ranges))
        assert material.hottest - 273.15 == pytest.approx(min(high for _, high in ranges))


def test_shaft_hardness():
    case = CASES["OIL-S09"]
    for given_, expected in zip(case["inputs"], case["expected"], strict=True):
        too_soft = given_["HRC"] < shaft_hardness(given_["v_m_s"], False)
        assert too_soft == (expected["fault"] == "hardness")


def test_dirt_asks_for_the_hard_shaft_at_any_speed():
    """OIL-S09, source: 55 HRC at 4 m/s and over or with dirt."""
    assert shaft_hardness(1.0, True) == shaft_hardness(4.0, False) == 55.0


@given(SPEEDS, SPEEDS)
def test_a_faster_lip_bears_no_more(one, other):
    slow, fast = sorted((one, other))
    assert plain_lip_pressure(fast) <= plain_lip_pressure(slow)
    assert profile_lip_pressure(fast) <= profile_lip_pressure(slow)


@given(SPEEDS)
def test_a_profiled_lip_bears_at_least_what_a_plain_one_does(speed):
    assert profile_lip_pressure(speed) >= plain_lip_pressure(speed)


@pytest.mark.parametrize(
    ("inside", "other", "lip", "behind"),
    # By the sense of the lip: pressed on from the side it faces, lifted from the other.
    [
        (2e3, 0.0, "inside", 0.0),
        (-3e3, 0.0, "inside", 3e3),
        (-3e3, 0.0, "outside", 0.0),
        (2e3, -3e3, "outside", 5e3),
        (-3e3, 0.0, "both", 0.0),
    ],
)
def test_pressure_behind_a_lip(inside, other, lip, behind):
    assert pressure_behind_lip(pressure_across(inside, other), lip) == behind


@given(st.floats(-5e4, 5e4), st.floats(1e3, 5e4))
def test_a_seal_bears_its_share_in_either_sense(difference, limit):
    assert pressure_share(difference, limit) == pressure_share(-difference, limit) >= 0.0
    assert (pressure_share(difference, limit) <= 1.0) == (abs(difference) <= limit)


def test_a_seal_that_bears_nothing():
    with pytest.raises(OutOfRange, match="limit"):
        pressure_share(1.0, 0.0)


def test_a_lip_runs_hotter_than_its_oil():
    """Seal makers (seen): 20 to 50 K over the oil."""
    assert lip_temperature(363.15, 20.0) == pytest.approx(383.15)
