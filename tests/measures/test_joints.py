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
        "preload": f"{case['expected']['preload_per_bolt_kN']} kN",
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
