"""The seals: pressure with its sense, what they bear, and what they run on."""

import math
from pathlib import Path

import pytest
import yaml

from checker.known import Unknown

REFERENCE = Path(__file__).parents[1] / "reference" / "oil.yaml"
CASES = {
    case["id"]: case for case in yaml.safe_load(REFERENCE.read_text(encoding="utf-8"))["cases"]
}
SEAL = "seals.input_seal"
TAKE_OFF = 6000 * math.pi / 30  # rad/s of the crankshaft, and of the carrier it turns


def ask(design, name, part="input_seal", point="take-off"):
    return design.measure(
        name, design.subjects.the("seal", part), design.subjects.the("point", point)
    )


def test_surface_speed(solve):
    """v = ω d/2 by hand: 38 mm at 6000 rpm; the propeller shaft at 27/67 of it."""
    design = solve({})
    assert ask(design, "surface_speed").number == pytest.approx(TAKE_OFF * 0.019)
    prop = ask(design, "surface_speed", "prop_seal").number
    assert prop == pytest.approx(TAKE_OFF * 27 / 67 * 0.0325)


@pytest.mark.parametrize(
    ("kind", "speed", "kilopascals"),
    # OIL-S04, note: 48, 34 and 21 kPa to 5.08, 10.16 m/s and above; OIL-S06: 340 kPa to 5 m/s.
    [
        ("plain lip", 4.9, 48),
        ("plain lip", 10, 34),
        ("double lip", 12, 21),
        ("pressure lip", 4.9, 340),
    ],
)
def test_pressure_borne_without_a_makers_figure(solve, kind, speed, kilopascals):
    diameter = f"{2000 * speed / TAKE_OFF} mm"
    design = solve(
        {f"{SEAL}.kind": kind, f"{SEAL}.diameter": diameter, f"{SEAL}.pressure_limit": None}
    )
    assert ask(design, "pressure_borne").number == pytest.approx(1000 * kilopascals)


def test_a_labyrinth_has_no_general_limit(solve):
    borne = ask(
        solve({f"{SEAL}.kind": "labyrinth", f"{SEAL}.pressure_limit": None}), "pressure_borne"
    )
    assert isinstance(borne, Unknown)
    assert borne.missing == (("seals", "input_seal", "pressure_limit"),)


@pytest.mark.parametrize(
    ("to", "other_side", "across", "behind"),
    # By hand with -6 kPa in the crankcase; what the line drops, a few pascals, apart.
    [
        ("outside", "outside air", 0.0, 0.0),
        ("outside", "engine crankcase", 6000.0, 0.0),
        ("crankcase", "outside air", -6000.0, 6000.0),
        ("crankcase", "engine crankcase", 0.0, 0.0),
    ],
)
def test_sense_of_the_pressure(solve, to, other_side, across, behind):
    design = solve(
        {"vent.to": to, f"{SEAL}.other_side": other_side, "engine.crankcase.pressure": "-6 kPa"}
    )
    assert ask(design, "pressure_across").number == pytest.approx(across, abs=5.0)
    assert ask(design, "pressure_behind_lip").number == pytest.approx(behind, abs=5.0)


def test_heat_and_cold_of_the_lip(solve):
    """OIL-S07: NBR -40 to 100 °C; marram runs to 90 °C, the lip at least 20 K over it."""
    design = solve({f"{SEAL}.material": "NBR", "lubrication.cold_start_temperature": "-5 degC"})
    assert ask(design, "lip_heat_reserve").number == pytest.approx(100 - 90 - 20)
    assert ask(design, "lip_cold_reserve").number == pytest.approx(35)


def test_nothing_is_known_of_other_rubbers(solve):
    speed = ask(solve({f"{SEAL}.material": "EPDM"}), "speed_share")
    assert isinstance(speed, Unknown)
    assert "EPDM" in speed.because


def test_hardness_under_the_lip(solve):
    """OIL-S09: 45 HRC at idle without dirt, 55 HRC fast or with dirt."""
    hardness = {f"{SEAL}.shaft_hardness": "50 +/- 2 HRC"}
    outside = solve(hardness)
    inside = solve(hardness | {f"{SEAL}.other_side": "engine crankcase"})
    shares = [
        ask(outside, "hardness_share", point="idle").number,
        ask(inside, "hardness_share", point="idle").number,  # 3.2 m/s
        ask(inside, "hardness_share").number,
    ]
    assert shares == pytest.approx([48 / 55, 48 / 45, 48 / 55])
