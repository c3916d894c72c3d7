"""Peak torque of a shaft, and the least that it can be."""

import math
from pathlib import Path

import pytest
import yaml

from checker.known import Known, Unknown

_REFERENCE = Path(__file__).parents[1] / "reference" / "loads.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}
PAIR = {
    "gears": {"p": ("in", 20, "3 mm", None), "w": ("out", 46, "3 mm", None)},
    "meshes": {"m": ("p", "w", {})},
}
IDLE = [{"name": "idle", "engine_speed": "1500 rpm", "power": "1 kW"}]


def engine(cylinders=4, cycle="four-stroke", **more):
    rating = {"power": "70 kW", "speed": "5200 rpm"}
    ratings = {"maximum_continuous": rating, "take_off": rating}
    return {"cylinders": cylinders, "cycle": cycle, **ratings, **more}


def test_limit_torque_behind_a_reduction(make_design):  # TQ-06, derived from CS-VLA 361(b)(1)
    expected = CASES["TQ-06"]["expected"]
    close = {"rel": CASES["TQ-06"]["tolerance"]}
    peaks = make_design(**PAIR, engine=engine(), operation=IDLE).peaks
    assert peaks.least_crank_mean.number == pytest.approx(
        expected["mean_engine_torque_Nm"], **close
    )
    assert peaks.mean("out").number == pytest.approx(expected["mean_propshaft_torque_Nm"], **close)
    assert peaks.floor("out").number == pytest.approx(
        expected["limit_propshaft_torque_Nm"], **close
    )


@pytest.mark.parametrize(
    ("cylinders", "cycle", "factor", "governs"),
    [
        (1, "four-stroke", 8.0, "CS-VLA 361(b)(1)"),
        (3, "four-stroke", 3.0, "14 CFR 27.361(b)"),
        (1, "two-stroke", 6.0, "CS-VLA 361(b)(2)"),
        (2, "two-stroke", 4.0, "CS 22.361(b)"),
        (6, "two-stroke", 2.0, "CS-VLA 361(b)(2)"),
    ],
)  # TQ-01 to TQ-05: the largest of the regulations
def test_factor_by_cylinders_and_cycle(make_design, cylinders, cycle, factor, governs):
    peaks = make_design(**PAIR, engine=engine(cylinders, cycle), operation=IDLE).peaks
    floor = peaks.floor("in")
    assert floor.number / peaks.mean("in").number == pytest.approx(factor)
    sources = [each.origin.source for each in floor.inputs if each.symbol == "k_T"]
    assert governs in sources[0]


@pytest.mark.parametrize(
    ("more", "points", "power", "rpm"),
    [
        ({}, IDLE, 70e3, 5200),
        ({"take_off": {"power": "80 kW", "speed": "5500 rpm"}}, IDLE, 80e3, 5500),
        ({}, [{"name": "lugging", "engine_speed": "4000 rpm", "power": "60 kW"}], 60e3, 4000),
    ],
)  # T = P/ω by hand; CS 22.361 puts the factor on take-off power as well
def test_the_largest_of_ratings_and_points_counts(make_design, more, points, power, rpm):
    peaks = make_design(**PAIR, engine=engine(**more), operation=points).peaks
    torque = power / (rpm * math.tau / 60)
    assert peaks.least_crank_mean.number == pytest.approx(torque)
    assert peaks.floor("in").number == pytest.approx(2.0 * torque)


def test_a_reduction_in_the_engine_multiplies(make_design):  # power balance
    internal = {"ratio": 1.5, "reverses": False}
    more = {"engine": engine(internal_reduction=internal), "operation": IDLE}
    peaks = make_design(**PAIR, **more).peaks
    assert peaks.mean("in").number == pytest.approx(1.5 * peaks.least_crank_mean.number)
    assert peaks.mean("out").number == pytest.approx(1.5 * 2.3 * peaks.least_crank_mean.number)


def test_a_value_with_the_floor_is_never_more_than_the_best(make_design):
    peaks = make_design(**PAIR, engine=engine(take_off="unknown")).peaks
    judged = peaks.judged(lambda peak: Known(1.2, "1", "S"), "out")
    assert isinstance(judged, Unknown)
    assert judged.at_best.value == 1.2
    assert "torsional survey" in judged.because
    assert ("engine", "take_off", "power") in judged.missing


def test_a_floor_that_is_not_known_names_what_is_missing(make_design):
    missing = {"cylinders": "unknown", "cycle": "unknown"}
    peaks = make_design(**PAIR, engine=engine(**missing)).peaks
    floor = peaks.floor("out")
    assert set(floor.missing) == {("engine", "cylinders"), ("engine", "cycle")}
    judged = peaks.judged(lambda peak: peak, "out")
    assert judged.at_best is None
    assert set(floor.missing) <= set(judged.missing)


def test_without_any_power_the_ratings_are_asked_for(make_design):
    bare = {"cylinders": 4, "cycle": "four-stroke"}
    peaks = make_design(**PAIR, engine=bare, operation=[]).peaks
    assert ("engine", "maximum_continuous", "power") in peaks.floor("out").missing
