"""Joints: friction of a flange, preload of its bolts."""

import math
from pathlib import Path

import pytest
import yaml

from checker.known import Unknown

_REFERENCE = Path(__file__).parents[1] / "reference" / "loads.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}
FLANGE = "joints.prop_flange"


def ask(design, name):
    return design.measure(name, design.subjects.the("joint", "prop_flange"))


def flange(case, **more):
    """The flange of SK-10 in place of the example's."""
    given = case["inputs"]
    fields = {
        "bolts": given["bolts"],
        "friction_coefficient": given["friction_coefficient"],
        "friction_radius": f"{given['effective_radius_mm']} mm",
        # a negligible range: without one, a wrench's scatter would count
        "preload": f"{case['expected']['preload_per_bolt_kN']} +/- 0.0001 kN",
        **more,
    }
    return {f"{FLANGE}.{field}": value for field, value in fields.items()}


def test_friction_of_a_flange_against_the_floor(solve):  # SK-10, Coulomb friction
    case = CASES["SK-10"]
    margin = ask(solve(flange(case)), "friction_margin")
    floor = 4 * 60e3 / (6000 * math.tau / 60) * 67 / 27  # CS-VLA 361(b)(1), tooth counts
    assert margin.number * floor == pytest.approx(
        case["expected"]["friction_torque_Nm"], rel=case["tolerance"]
    )


def test_preload_over_proof_load(solve):  # SK-10: 0.75 of the proof load of M8 8.8
    case = CASES["SK-10"]
    bolt = {"bolt_diameter": "8 mm", "bolt_pitch": "1.25 mm", "bolt_class": "8.8"}
    fraction = ask(solve(flange(case, **bolt)), "preload_fraction")
    assert fraction.number == pytest.approx(case["inputs"]["preload_fraction_of_proof"], rel=3e-3)


def test_tightening_torque_of_the_handbook(solve):  # SK-06, Jindal, Example 9-5
    case = CASES["SK-06"]
    given = case["inputs"]
    preload = given["preload_fraction"] * given["proof_MPa"] * given["stress_area_mm2"]
    fields = {
        "bolt_diameter": f"{given['d_mm']} mm",
        "preload": f"{preload} N",
        "nut_factor": given["K"],
        "tightening_torque": f"{case['expected']['torque_Nm']} N m",
    }
    for part, name, kind in (
        (FLANGE, "tightening_ratio", "joint"),
        ("housing.mounting", "mounting_tightening_ratio", "housing"),
    ):
        design = solve({f"{part}.{field}": value for field, value in fields.items()})
        subject = design.subjects.the(kind, "prop_flange" if kind == "joint" else "")
        ratio = design.measure(name, subject)
        assert ratio.number == pytest.approx(1.0, rel=case["tolerance"])


def test_a_torque_without_its_nut_factor_shows_nothing(solve):
    ratio = ask(solve({f"{FLANGE}.nut_factor": None}), "tightening_ratio")
    assert isinstance(ratio, Unknown)
    assert {path[-1] for path in ratio.missing} == {"nut_factor"}


def test_a_bolt_class_that_is_not_listed_is_not_shown(solve):
    fraction = ask(solve({f"{FLANGE}.bolt_class": "AN6"}), "preload_fraction")
    assert isinstance(fraction, Unknown)
    assert "AN6" in fraction.because


def test_without_a_range_the_scatter_of_a_torque_wrench_counts(solve):
    # α_A = 1.6 about the mean: 2/2.6 and 3.2/2.6 of it
    design = solve({f"{FLANGE}.preload": "26 kN"})
    slackest = solve({f"{FLANGE}.preload": "22 +/- 2 kN"})
    tightest = solve({f"{FLANGE}.preload": "31 +/- 1 kN"})
    for name, other in (("friction_margin", slackest), ("highest_preload_fraction", tightest)):
        assert ask(design, name).number == pytest.approx(ask(other, name).number, rel=1e-12)
    assumptions = [leaf.origin for leaf in ask(design, "friction_margin").leaves()]
    assert any("VDI 2230" in str(origin) for origin in assumptions)
    stated = [leaf.origin for leaf in ask(slackest, "friction_margin").leaves()]
    assert not any("VDI 2230" in str(origin) for origin in stated)


TAPER = {
    f"{FLANGE}.{field}": value
    for field, value in {
        "kind": "taper",
        "diameter": "56 mm",
        "half_angle": "5.71 deg",
        "length": "60 mm",
        "hub_outside": "90 mm",
        "yield_strength": "500 MPa",
        "preload": "90 +/- 10 kN",
    }.items()
}
ON_TAPER = {**TAPER, "shafts.prop.sections.4.notch": "taper"}


def pressure_on(seated):
    """Mean pressure on the seat of TAPER by hand: μ 0.12, 1:10 on the radius."""
    return seated / (0.0995 + 0.12 * 0.9950) * 0.9950 / (math.pi * 0.056 * 0.060)


def test_hub_of_a_taper_by_hand(solve):
    # the tightest nut; 62 mm at the thick end in 90 mm
    hoop = pressure_on(100e3) * (90**2 + 62**2) / (90**2 - 62**2)
    assert ask(solve(ON_TAPER), "taper_hub_safety").number == pytest.approx(500e6 / hoop, rel=1e-3)


def test_seat_of_a_taper_by_hand(solve):
    """Straight flow: gyroscopic couples of yaw and pitch, and the weight at 2.5 g."""
    design = solve({**ON_TAPER, "propeller.blade_thrust_variation": 0.0})
    turning = 0.52 * 5800 * math.tau / 60 * 27 / 67  # maximum continuous speed
    hanging = 2.5 * 9.8 * 9.80665 * (0.238 + 0.084 - 0.281)
    moment = math.hypot(2.5 * turning + hanging, 1.0 * turning)
    lifting = 12 * moment / (math.pi * 0.056 * 0.060**2)
    # the slackest nut, less the thrust of the take-off
    expected = pressure_on(80e3 - 1520) / lifting
    assert ask(design, "taper_seat_safety").number == pytest.approx(expected, rel=1e-3)
