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
