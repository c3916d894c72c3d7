"""Engine torque, its factor and its firing orders."""

import math
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from checker.mechanics.engine import (
    firing_events_per_revolution,
    firing_is_even,
    limit_torque,
    mean_torque,
    peak_torque,
    source_of_torque_factor,
    strokes_of,
    torque_factor,
)
from checker.mechanics.equation import OutOfRange

_REFERENCE = Path(__file__).parents[1] / "reference" / "loads.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}
RPM = math.tau / 60

torques = st.floats(0.0, 5e3)


# TQ-01 CS-VLA 361(b)(1); TQ-03 CS 22.361; TQ-04 14 CFR 27.361(b); TQ-05 old 14 CFR 23.361(c)
@pytest.mark.parametrize("name", ["TQ-01", "TQ-03", "TQ-04", "TQ-05"])
def test_regulations_ask_the_same_of_a_four_stroke(name):
    case = CASES[name]
    factors = [torque_factor(count, 4) for count in case["inputs"]["cylinders"]]
    assert factors == case["expected"]["mean_torque_factor"]


# TQ-03 CS 22.361; TQ-04 14 CFR 27.361(b); TQ-05 old 14 CFR 23.361(c), from memory
@pytest.mark.parametrize("name", ["TQ-03", "TQ-04", "TQ-05"])
def test_other_regulations_ask_the_same_of_a_four_stroke(name):
    case = CASES[name]
    factors = [torque_factor(count, 4) for count in case["inputs"]["cylinders"]]
    assert factors == case["expected"]["mean_torque_factor"]


# Two-strokes by hand from TQ-02 (CS-VLA 361(b)(2)) and TQ-03 to TQ-05, which do not tell strokes
# apart: one cylinder is in CS-VLA alone, five are 1.33 in the others.
@pytest.mark.parametrize(
    ("cylinders", "factor", "governing"),
    [
        (1, 6.0, ["CS-VLA"]),
        (2, 4.0, ["14 CFR 23", "14 CFR 27", "CS 22"]),
        (3, 3.0, ["14 CFR 23", "14 CFR 27", "CS 22"]),
        (4, 2.0, ["CS-VLA", "14 CFR 23", "14 CFR 27", "CS 22"]),
        (5, 2.0, ["CS-VLA"]),
        (6, 2.0, ["CS-VLA"]),
    ],
)
def test_largest_factor_holds_for_a_two_stroke(cylinders, factor, governing):
    assert torque_factor(cylinders, 2) == factor
    named = source_of_torque_factor(cylinders, 2).split("; ")
    assert [each.split(".")[0].split(" 361")[0] for each in named] == governing


@pytest.mark.parametrize("name", ["TQ-01", "TQ-02", "TQ-03", "TQ-04", "TQ-05"])
def test_no_regulation_asks_for_more(name):
    cylinders, expected = CASES[name]["inputs"]["cylinders"], CASES[name]["expected"]
    strokes = {"TQ-01": [4], "TQ-02": [2]}.get(name, [2, 4])
    for count, factor in zip(cylinders, expected["mean_torque_factor"], strict=True):
        assert all(torque_factor(count, each) >= factor for each in strokes)


@pytest.mark.parametrize(
    ("cylinders", "strokes", "named"), [(0, 4, "cylinders"), (0, 2, "cylinders"), (4, 3, "strokes")]
)
def test_torque_factor_names_what_the_regulation_does_not_cover(cylinders, strokes, named):
    with pytest.raises(OutOfRange, match=named):
        torque_factor(cylinders, strokes)


@given(st.integers(1, 12), st.sampled_from([2, 4]))
def test_more_cylinders_never_ask_for_more(cylinders, strokes):
    assert 1 < torque_factor(cylinders + 1, strokes) <= torque_factor(cylinders, strokes)


def test_limit_torque_behind_a_reduction():  # TQ-06, derived
    case = CASES["TQ-06"]
    given_, expected = case["inputs"], case["expected"]
    power, ratio = given_["max_continuous_power_kW"] * 1e3, given_["reduction_ratio"]
    crank = given_["engine_speed_rpm"] * RPM
    mean = mean_torque(power, crank / ratio)
    factor = torque_factor(given_["cylinders"], given_["stroke"])
    close = {"rel": case["tolerance"]}
    assert mean_torque(power, crank) == pytest.approx(expected["mean_engine_torque_Nm"], **close)
    assert mean == pytest.approx(expected["mean_propshaft_torque_Nm"], **close)
    assert limit_torque(mean, factor) == pytest.approx(
        expected["limit_propshaft_torque_Nm"], **close
    )


def test_mean_torque_in_inch_units():  # PR-01, Wentzell, Machine Design, Example 15.1
    case = CASES["PR-01"]
    torque = mean_torque(
        case["inputs"]["power_hp"] * constants.hp, case["inputs"]["speed_rpm"] * RPM
    )
    assert torque / (constants.lbf * constants.inch) == pytest.approx(
        case["expected"]["torque_lbf_in"], rel=case["tolerance"]
    )


def test_mean_torque_sizes_a_shaft():  # PR-02, Hibbeler, Mechanics of Materials, Example 5.4
    case = CASES["PR-02"]
    torque = mean_torque(
        case["inputs"]["power_hp"] * constants.hp, case["inputs"]["speed_rpm"] * RPM
    )
    shear = case["inputs"]["allowable_shear_ksi"] * 1e3 * constants.psi
    diameter = (16 * torque / (math.pi * shear)) ** (1 / 3)
    assert diameter / constants.inch == pytest.approx(
        case["expected"]["shaft_diameter_in"], rel=case["tolerance"]
    )


def test_mean_torque_in_metric_units():  # PR-03, derived
    case = CASES["PR-03"]
    power, speed = case["inputs"]["power_kW"], case["inputs"]["propeller_speed_rpm"]
    close = {"rel": case["tolerance"]}
    assert mean_torque(power * 1e3, speed * RPM) == pytest.approx(
        case["expected"]["torque_Nm"], **close
    )
    assert 30000 / math.pi * power / speed == pytest.approx(
        case["expected"]["constant_9549_form_Nm"], **close
    )


def test_a_shaft_at_rest_has_no_mean_torque():
    with pytest.raises(OutOfRange, match="does not turn"):
        mean_torque(1e3, 0.0)


@given(torques, st.floats(1.0, 8.0), torques)
def test_peak_torque_counts_the_pulsation_once(mean, factor, alternating):
    peak = peak_torque(mean, factor, alternating)
    assert peak in (factor * mean, mean + alternating)
    assert peak >= limit_torque(mean, factor)
    assert peak <= factor * (mean + alternating)


def test_first_major_order():  # TV-11, Automotive Engineering (2009), Ch 2.1 Eq. (2a)
    case = CASES["TV-11"]
    orders = [firing_events_per_revolution(count, 4) for count in case["inputs"]["cylinders"]]
    assert orders == case["expected"]["first_major_order_per_rev"]


@given(st.integers(1, 12))
def test_a_two_stroke_fires_twice_as_often(cylinders):
    # every cylinder once a turn: definition of the two-stroke
    assert firing_events_per_revolution(cylinders, 2) == cylinders
    assert firing_events_per_revolution(cylinders, 4) == cylinders / 2


@pytest.mark.parametrize(
    ("degrees", "strokes", "even"),
    [
        ([240, 240, 240], 4, True),  # TV-13, three cylinders
        ([180, 180, 180, 180], 4, True),  # TV-13, four cylinders
        ([102.9] * 7, 4, True),  # 720/7 as printed to a tenth of a degree
        ([270, 450], 4, False),
        ([180, 180], 2, True),
        ([150, 210], 2, False),
    ],
)
def test_even_firing(degrees, strokes, even):
    assert firing_is_even([math.radians(angle) for angle in degrees], strokes) is even


@pytest.mark.parametrize(
    ("degrees", "strokes", "named"),
    [
        ([180, 180], 4, "firing intervals add up to 360.0 deg"),
        ([360, 360], 2, "firing intervals add up to 720.0 deg"),
        ([], 4, "firing intervals add up to 0.0 deg"),
        ([360, 360], 3, "strokes"),
    ],
)
def test_intervals_that_are_no_cycle_are_refused(degrees, strokes, named):
    with pytest.raises(OutOfRange, match=named):
        firing_is_even([math.radians(angle) for angle in degrees], strokes)


@pytest.mark.parametrize(("cycle", "strokes"), [("four-stroke", 4), ("two-stroke", 2)])
def test_strokes_of_a_named_cycle(cycle, strokes):  # by definition
    assert strokes_of(cycle) == strokes


def test_another_cycle_has_no_strokes():
    with pytest.raises(OutOfRange, match="cycle"):
        strokes_of("rotary")
