"""The damper's own limits: stops, slip, and what is stated of it."""

import math

import pytest

TAKE_OFF = 95e3 / (5400 * math.tau / 60)  # P / ω of sorrel by hand [N m]


def ask(design, name, point=None):
    damper = design.subjects.the("damper")
    return design.measure(name, damper, design.subjects.the("point", point) if point else None)


def test_stops_are_held_against_the_peak(solve):  # four cylinders: twice the mean, CS-VLA 361(b)
    margin = ask(solve({"damper.torque_limiter": "150 N m"}, "sorrel"), "limiter_margin")
    assert margin.number == pytest.approx(150.0 / (2.0 * TAKE_OFF))
    without = {"damper.torque_limiter": "150 N m", "propeller.inertia": None}
    at_best = ask(solve(without, "sorrel"), "limiter_margin").at_best
    assert at_best.number == pytest.approx(150.0 / (2.0 * TAKE_OFF))
    # With a stiff damper of little damping the swing of the survey is above the floor, and governs.
    stiff = {"damper.hot_relative_damping": 0.2, "damper.relative_damping": 0.2} | {
        f"damper.{name}": "20 kN m/rad"
        for name in ("dynamic_stiffness", "hot_stiffness", "cold_stiffness")
    }
    swinging = solve(stiff, "sorrel")
    peak = swinging.survey.highest("flywheel", "damper")
    assert peak > 2.0 * TAKE_OFF
    assert ask(swinging, "limiter_margin").number == pytest.approx(880.0 / peak)


def test_a_start_that_meets_the_stops_says_so(solve):
    bound = {
        limit: next(
            value
            for value in ask(
                solve({"damper.torque_limiter": limit}, "sorrel"), "run_through_margin"
            ).inputs
            if value.symbol == "T_bound"
        )
        for limit in ("200 N m", "880 N m", "none")
    }
    assert 200.0 < bound["880 N m"].number < 880.0
    said = {limit: [each.symbol for each in value.inputs] for limit, value in bound.items()}
    assert "stops" in said["200 N m"]
    assert "stops" not in said["880 N m"] + said["none"]


def test_a_wetted_viscous_damper_without_survey_asks_for_what_the_survey_misses(solve):
    dry = {
        "hot_stiffness": None,
        "cold_stiffness": None,
        "relative_damping": None,
        "hot_relative_damping": None,
        "kind": "viscous",
        "in_oil": True,
    }
    design = solve({f"damper.{field}": value for field, value in dry.items()}, "sorrel")
    losses = design.measure(
        "losses", design.subjects.the("drive"), design.subjects.the("point", "cruise")
    )
    assert ("damper", "hot_damping_coefficient") in losses.missing
    assert ("damper", "relative_damping") not in losses.missing
