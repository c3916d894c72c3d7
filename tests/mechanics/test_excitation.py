"""Gas and inertia torque by order, and the speeds of a survey."""

import math
from pathlib import Path

import numpy as np
import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.mechanics import critical_speed, excitation
from checker.mechanics.engine import (
    excitation_frequency,
    firing_angles,
    firing_events_per_revolution,
)
from checker.mechanics.equation import OutOfRange
from checker.review.rulebook import shipped_rulebook

_REFERENCE = Path(__file__).parents[1] / "reference" / "torsion.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}
RPM = math.tau / 60
TWIN = excitation.Cylinder(0.098, 0.072, 0.125, 11.0, 4)


def test_major_orders():  # TV-11
    case = CASES["TV-11"]
    found = [firing_events_per_revolution(z, 4) for z in case["inputs"]["cylinders"]]
    assert found == case["expected"]["first_major_order_per_rev"]
    for cylinders, order in zip(case["inputs"]["cylinders"], found, strict=True):
        angles = firing_angles([math.radians(720 / cylinders)] * cylinders)
        orders = [0.5 * step for step in range(1, round(2 * order) + 1)]
        sizes = abs(excitation.phase_vectors(orders, angles))
        assert sizes[:-1] == pytest.approx(np.zeros(len(orders) - 1), abs=1e-9)
        assert sizes[-1] == pytest.approx(cylinders)


def test_phase_vectors():  # TV-13, phase-vector sum
    case = CASES["TV-13"]
    orders = case["inputs"]["orders_per_rev"]
    for name, degrees in case["inputs"]["firing_angles_deg"].items():
        sizes = abs(excitation.phase_vectors(orders, [math.radians(each) for each in degrees]))
        assert sizes == pytest.approx(case["expected"][name], abs=case["tolerance"])


def test_order_and_speed():  # TV-14
    case = CASES["TV-14"]
    given_, expected = case["inputs"], case["expected"]
    found = excitation_frequency(given_["order_per_rev"], given_["engine_speed_rpm"] * RPM)
    assert found == pytest.approx(expected["excitation_Hz"])
    order = given_["order_per_rev"]
    critical = critical_speed.critical_speed(given_["natural_frequency_Hz"], order)
    assert critical / RPM == pytest.approx(expected["critical_engine_speed_rpm"])
    with pytest.raises(OutOfRange, match="order"):
        critical_speed.critical_speed(18.0, 0.0)


def test_marine_barred_range():  # TV-21, from memory
    case = CASES["TV-21"]
    for index, ratio in enumerate(case["inputs"]["critical_speed_ratio_lambda"]):
        expected = case["expected"]
        assert critical_speed.marine_lower_limit(ratio) == pytest.approx(
            expected["lower_limit_over_critical"][index], rel=case["tolerance"]
        )
        assert critical_speed.marine_upper_limit(ratio) == pytest.approx(
            expected["upper_limit_over_critical"][index], rel=case["tolerance"]
        )
    with pytest.raises(OutOfRange, match="no barred range"):
        critical_speed.marine_lower_limit(0.9)


def test_limits_are_those_of_the_sources():  # TV-24, TV-25 and TV-27
    limits = shipped_rulebook().rule("torsion.separation").limits
    assert limits["warning"].values[0] == CASES["TV-24"]["expected"]["minimum_margin"]
    below = CASES["TV-25"]["expected"]["subcritical_if_speed_ratio_below"]
    assert limits["caution"].values[0] == pytest.approx(1 - below)
    share = shipped_rulebook().rule("torsion.alternating-at-rating").limits
    expected = CASES["TV-27"]["expected"]
    assert share["caution"].values[0] == expected["LR_limit"]
    assert share["advisory"].values[0] == expected["DNV_limit"]


def test_survey_range():  # TV-26, 14 CFR 33.43
    case = CASES["TV-26"]
    top = critical_speed.survey_upper_speed(
        case["inputs"]["max_continuous_rpm"], case["inputs"]["takeoff_rpm"]
    )
    assert top == pytest.approx(case["expected"]["survey_upper_speed_rpm"])


@pytest.mark.parametrize(
    ("frequency", "expected"), [(80.0, 0.2), (100.0, 0.0), (110.0, 0.0), (132.0, 0.2)]
)
def test_separation_is_counted_from_the_nearer_end(frequency, expected):  # by hand
    found = critical_speed.separation(frequency, 100.0, 110.0)
    assert found == pytest.approx(expected)


def test_application_factor():
    assert critical_speed.application_factor(90.0, 27.0) == pytest.approx(1.3)
    assert critical_speed.share_of_mean(27.0, 90.0) == pytest.approx(0.3)
    with pytest.raises(OutOfRange, match="mean"):
        critical_speed.application_factor(0.0, 27.0)


@given(st.floats(2e5, 15e5), st.floats(0.3e5, 1.1e5), st.sampled_from([2, 4]))
@settings(max_examples=25, deadline=None)
def test_the_pressure_cycle_does_the_indicated_work(indicated, intake, strokes):
    # Work per cycle is p_i V_h, plus what the intake stroke takes from air below one atmosphere.
    cylinder = excitation.Cylinder(0.084, 0.078, 0.136, 10.5, strokes)
    harmonics = excitation.gas_harmonics(cylinder, [0.0]).at(indicated, intake)
    mean = harmonics[0].real / 2.0
    pumping = (intake - excitation.ATMOSPHERE) if strokes == 4 else 0.0
    work = (indicated + pumping) * excitation.displacement(cylinder.bore, cylinder.stroke)
    assert mean * math.tau * strokes / 2.0 == pytest.approx(work, rel=2e-3, abs=0.3)


def test_peak_pressure_of_a_known_cycle():
    # Otto cycle with n = 1.3 by its four corners: p_i V_h is the area between the polytropes.
    ratio, intake, rise = 10.5, 1e5, 3.5
    compressed = intake * ratio**1.3
    clearance = 1.0 / (ratio - 1.0)
    work = (compressed * rise - compressed) * clearance * (1.0 - ratio**-0.3) / 0.3
    found = excitation.combustion_pressure_ratio(work, intake, ratio)
    assert found == pytest.approx(rise)


def test_inertia_torque_by_its_series():
    # Handbook series (from memory): T = m r² ω²/2 (λ/2 sin θ − sin 2θ − 3λ/2 sin 3θ), λ = r/l
    mass, stroke, rod = 0.5, 0.08, 0.4
    crank = stroke / 2.0
    ratio = crank / rod
    found = excitation.inertia_harmonics(mass, stroke, rod, [1.0, 2.0, 3.0])
    scale = mass * crank**2 / 2.0
    series = np.array([ratio / 2.0, -1.0, -1.5 * ratio]) * scale
    # A sine is the real part of −i exp(iθ).
    assert found.imag == pytest.approx(-series, rel=0.02, abs=1e-4 * scale)
    assert found.real == pytest.approx(np.zeros(3), abs=1e-9)


def test_inertia_does_no_work_and_twins_at_half_a_cycle_keep_whole_orders():
    orders = excitation.survey_orders(4, 2)
    assert len(orders) == excitation.ORDERS == len(excitation.survey_orders(2, 2))
    harmonics = excitation.inertia_harmonics(0.52, 0.072, 0.125, [0.0, *orders])
    assert abs(harmonics[0]) < 1e-9 * abs(harmonics).max()
    sums = abs(excitation.phase_vectors(orders, [0.0, math.tau]))
    assert sums == pytest.approx([2.0 * (order % 1.0 == 0.0) for order in orders], abs=1e-9)


@given(st.lists(st.floats(0.3, 3.0), min_size=1, max_size=6), st.floats(0.0, math.tau))
@settings(max_examples=25, deadline=None)
def test_phase_vectors_do_not_grow_with_where_counting_begins(intervals, shift):
    scale = 2.0 * math.tau / sum(intervals)
    angles = firing_angles([each * scale for each in intervals])
    orders = excitation.survey_orders(4, 2)
    sizes = abs(excitation.phase_vectors(orders, angles))
    later = abs(excitation.phase_vectors(orders, [angle + shift for angle in angles]))
    assert later == pytest.approx(sizes, abs=1e-9)
    assert max(sizes) <= len(angles) + 1e-9


def test_rod_must_be_longer_than_the_crank():
    with pytest.raises(OutOfRange, match="rod_length"):
        excitation.slider_crank(0.08, 0.04)
    assert excitation.blade_order(3, 2.5) == pytest.approx(1.2)
    assert excitation.mean_pressure(100.0, 2, 5e-4, 4) == pytest.approx(100 * 4 * math.pi / 1e-3)


@pytest.mark.parametrize(
    ("degrees", "strokes", "order", "expected"),
    [
        ([720], 4, 0.5, 1.0),  # one cylinder excites every half order
        ([360, 360], 4, 0.5, 0.0),  # boxer or parallel twin
        ([270, 450], 4, 0.5, 2 * math.cos(math.radians(67.5))),  # V twin at 90 degrees
        ([270, 450], 4, 1.0, 2 * math.cos(math.radians(135))),
        ([240, 240, 240], 4, 1.5, 3.0),
        ([180, 180, 180, 180], 4, 1.0, 0.0),
        ([144] * 5, 4, 2.5, 5.0),
        ([90, 150] * 3, 4, 1.5, 6 * math.cos(math.radians(67.5))),  # V six, two by two
        ([180, 180], 2, 1.0, 0.0),  # two-stroke twin
        ([180, 180], 2, 2.0, 2.0),
    ],
)  # phase-vector sum by hand
def test_orders_of_real_engines(degrees, strokes, order, expected):
    assert order in excitation.survey_orders(strokes, len(degrees))
    angles = firing_angles([math.radians(each) for each in degrees])
    found = abs(excitation.phase_vectors([order], angles))[0]
    assert found == pytest.approx(abs(expected), abs=1e-9)


def test_a_weak_cylinder_leaves_a_remainder_in_every_order():
    # The phase-vector sum against the spectrum of the summed torque trace, scipy.fft.
    import scipy.fft

    angles = [0.0, math.pi, 2 * math.pi, 3 * math.pi]
    weights = excitation.cylinder_weights(4, 0.1)
    assert weights == pytest.approx((0.9, 31 / 30, 31 / 30, 31 / 30))
    theta = np.arange(1440) * 4 * math.pi / 1440
    one = np.exp(np.cos((theta - 0.6) / 2) * 4)  # some pulse once in two turns
    trace = sum(
        weight * np.roll(one, round(angle / (4 * math.pi) * 1440))
        for weight, angle in zip(weights, angles, strict=True)
    )
    alone, summed = scipy.fft.rfft(one), scipy.fft.rfft(trace)
    orders = [0.5, 1.0, 1.5, 2.0, 2.5]
    found = excitation.phase_vectors(orders, angles, weights)
    index = [round(2 * order) for order in orders]
    assert found == pytest.approx(summed[index] / alone[index], rel=1e-9, abs=1e-9)
    assert abs(found[0]) == pytest.approx(0.1 * 4 / 3)  # q + q/(z-1)
    assert abs(found[3]) == pytest.approx(4.0)  # the firing order keeps the whole


@pytest.mark.parametrize("spread", [-0.1, 1.1])
def test_a_spread_is_a_share(spread):
    with pytest.raises(OutOfRange, match="spread"):
        excitation.cylinder_weights(2, spread)
