"""Barred speed ranges: what is proved without every rating, and what yields a shaft."""

import math

import numpy as np
import pytest

from checker.known import Known, Unknown
from tests.train.test_torsional_survey import RPM, STIFF, ask, design

RESONANT = {
    "damper.dynamic_stiffness": "8000 N m/rad",
    "shafts.out.torsional_stiffness": STIFF,
    "operation.2": {"name": "slow", "engine_speed": "2600 rpm", "power": "9 kW"},
}
RATED = {
    "damper.vibratory_torque_rating": "100000 N m",
    "damper.peak_torque_rating": "100000 N m",
    "gears.p.peak_torque_rating": "100000 N m",
    "gears.w.peak_torque_rating": "100000 N m",
}


def sections(outside):
    return [{"from": "0 mm", "to": "60 mm", "outside": outside, "inside": "0 mm"}]


STRONG = {
    f"shafts.{name}.{field}": value
    for name in ("in", "pinion", "out")
    for field, value in (("yield_strength", "800 MPa"), ("sections", sections("300 mm")))
}


def covered(barred, speed):
    return np.array([any(low <= each <= high for low, high in barred.proved) for each in speed])


def test_reversal_bars_a_speed_whatever_rating_is_missing():
    solved = design(RESONANT)
    assert ("gears", "w", "peak_torque_rating") in solved.barred.missing.missing
    assert ("shafts", "out", "sections") in solved.barred.missing.missing
    low, high = solved.barred.proved[0]
    inside = f"{(low + high) / 2.0 / RPM:.1f} rpm"
    found = design({**RESONANT, "engine.idle_speed": inside})
    assert ask(found, "drive", "dwell_outside_barred").value is False
    ranges = ask(solved, "drive", "barred_ranges")
    assert isinstance(ranges, Unknown)
    assert "rpm" in ranges.at_best.value


def test_without_every_rating_no_speed_is_shown_to_lie_outside():
    found = ask(design(), "drive", "outside_barred", "cruise")
    assert isinstance(found, Unknown)
    assert found.at_best.value is True
    whole = ask(design({**RATED, **STRONG}), "drive", "outside_barred", "cruise")
    assert whole.value is True


@pytest.mark.parametrize("field", ["damper.peak_torque_rating", "gears.w.peak_torque_rating"])
def test_a_missing_rating_hides_nothing_that_another_proves(field):
    tight = {**STRONG, **RATED, "damper.vibratory_torque_rating": "60 N m"}
    whole = design(tight).barred
    assert whole.proved
    assert whole.missing is None
    part = design({each: value for each, value in tight.items() if each != field}).barred
    assert part.proved == whole.proved
    assert part.missing.missing == (tuple(field.split(".")),)


def test_a_shaft_that_would_yield_bars_its_speeds():
    # T = π D³/16 R_e/√3 (Beer, Johnston & DeWolf); the out shaft turns at 1/2.5 of the crankshaft.
    outside = 0.0135
    thin = {"shafts.out.sections": sections(f"{1e3 * outside} mm")}
    solved = design({**STRONG, **RATED, **thin})
    allowed = math.pi * outside**3 / 16.0 * 800e6 / math.sqrt(3.0) / 2.5
    survey = solved.survey
    nodes = survey.model.joints_of("out")
    torque = np.max(
        [abs(survey.carried[nodes]) + each.up[nodes] for each in survey.responses], axis=(0, 1)
    )[:400]
    assert 0 < (torque > allowed).sum() < 400
    reversing = survey.least[[survey.model.joint("mesh", "m")], :400].min(axis=0) < 0.0
    speed = survey.speed[:400]
    beyond = (torque > allowed) | reversing
    assert covered(solved.barred, speed[beyond]).all()
    near = beyond | np.roll(beyond, 1) | np.roll(beyond, -1)
    assert not covered(solved.barred, speed[~near]).any()
    assert solved.barred.missing is None


CRANK = {
    "throw_inertia": "0.01 kg m2",
    "throw_stiffness": "300 kN m/rad",
    "output_stiffness": "300 kN m/rad",
    "cylinders_per_throw": 1,
}


def test_a_crankshaft_bars_where_it_swings_by_more_than_it_bears():
    crank = {**CRANK, "firing_order": [1, 2]}
    stated = {**STRONG, **RATED}
    bare = design({**stated, "engine.crankshaft": crank})
    assert bare.barred.missing.missing == (("engine", "crankshaft", "vibratory_torque_rating"),)
    survey = bare.survey
    throws = [i for i, node in enumerate(survey.model.nodes) if i and node.kind == "crank"]
    speed, swing = survey.speed[:400], survey.alternating[throws, :400].max(axis=0)
    allowed = float(np.quantile(swing, 0.7))
    crank["vibratory_torque_rating"] = f"{allowed} N m"
    barred = design({**stated, "engine.crankshaft": crank}).barred
    assert barred.missing is None
    beyond = (swing > allowed) | covered(bare.barred, speed)
    assert covered(barred, speed[beyond]).all()
    near = beyond | np.roll(beyond, 1) | np.roll(beyond, -1)
    assert not covered(barred, speed[~near]).any()


def test_a_run_through_falls_short_on_the_ratings_there_are():
    weak = {"damper.peak_torque_rating": "20 N m"}
    margin = ask(design(weak), "damper", "run_through_margin")
    assert isinstance(margin, Known)
    assert margin.number < 1.0


def test_a_point_beyond_the_survey_is_judged_by_itself():
    beyond = {"operation.0": {"name": "cruise", "engine_speed": "9000 rpm", "power": "41 kW"}}
    assert ask(design(RATED | STRONG | beyond), "drive", "outside_barred", "cruise").value is True
    low = {"damper.vibratory_torque_rating": "0.01 N m"}
    bound = design(RATED | STRONG | beyond | low)
    assert ask(bound, "drive", "outside_barred", "cruise").value is False


def test_speeds_that_are_held_are_looked_at():
    solved = design(RESONANT)
    low, high = solved.barred.proved[0]
    held = {"engine.dwell_speeds": [f"{(low + high) / 2 / RPM!r} rpm"]}
    assert ask(design({**RESONANT, **held}), "drive", "dwell_outside_barred").value is False


def test_each_range_says_what_bars_it():
    solved = design({**RESONANT, **RATED, **STRONG})
    (first, *_) = solved.barred.proved
    assert solved.barred.causes(*first) == "teeth of m part"
    weak = design({**RESONANT, **RATED, **STRONG, "damper.vibratory_torque_rating": "1 N m"})
    (first, *_) = weak.barred.proved
    assert weak.barred.causes(*first) == "too much for damper, teeth of m part"
    assert "too much for damper" in ask(weak, "drive", "barred_ranges").value
