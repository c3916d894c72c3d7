"""Load cases of the regulations."""

import math
from pathlib import Path

import numpy as np
import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from checker.mechanics import critical_speed, load_cases, torsional_parts
from checker.mechanics.equation import OutOfRange

_HERE = Path(__file__).parents[1] / "reference"
CASES = {
    case["id"]: case
    for name in ("loads.yaml", "loads-bearings-shafts.yaml")
    for case in yaml.safe_load((_HERE / name).read_text())["cases"]
}
RPM = math.tau / 60


def test_gyroscopic_rates():  # GY-01
    expected = CASES["GY-01"]["expected"]
    assert load_cases.CS_23_371.yaw_rate == expected["yaw_rate_rad_s"]
    assert load_cases.CS_23_371.pitch_rate == expected["pitch_rate_rad_s"]
    assert load_cases.CS_23_371.load_factor == expected["normal_load_factor"]


def test_gyroscopic_couples():  # GY-03, with the doubling of GY-02
    case = CASES["GY-03"]
    given_, expected, close = case["inputs"], case["expected"], {"rel": case["tolerance"]}
    inertia, speed = given_["propeller_inertia_kgm2"], given_["propeller_speed_rpm"] * RPM
    yaw, pitch = given_["yaw_rate_rad_s"], given_["pitch_rate_rad_s"]
    for blades, prefix in ((3, ""), (2, "peak_")):
        in_yaw = load_cases.couple_of_yaw(inertia, speed, 1, yaw, blades)
        in_pitch = load_cases.couple_of_pitch(inertia, speed, 1, pitch, blades)
        key = f"{prefix}couple_{blades}blade_Nm"
        assert abs(in_yaw) == pytest.approx(expected[f"yaw_{key}"], **close)
        assert math.hypot(in_yaw, in_pitch) == pytest.approx(expected[f"combined_{key}"], **close)
    assert abs(load_cases.couple_of_pitch(inertia, speed, 1, pitch, 3)) == pytest.approx(
        expected["pitch_couple_3blade_Nm"], **close
    )


@given(st.floats(-2.5, 2.5), st.floats(-1.0, 1.0), st.sampled_from([-1, 1]))
def test_couples_are_the_cross_product_of_momentum_and_turning(yaw, pitch, sense):
    """H × Ω in the axes x forward, right, down; independent by numpy."""
    momentum = np.array([sense * 0.5 * 200.0, 0.0, 0.0])
    vector = np.cross(momentum, np.array([0.0, pitch, yaw]))
    # a couple about right lifts the nose of the shaft; about down it swings it to the right
    assert load_cases.couple_of_yaw(0.5, 200.0, sense, yaw, 3) == pytest.approx(vector[1])
    assert load_cases.couple_of_pitch(0.5, 200.0, sense, pitch, 3) == pytest.approx(vector[2])


def test_couple_by_number_of_blades():  # GY-02, EASA AMC 23.371
    case = CASES["GY-02"]
    expected = case["expected"]["couple_multiplier_on_I_omega_rate"]
    for blades, times in zip(case["inputs"]["blades"], expected, strict=True):
        assert load_cases.couple_of_yaw(1.0, 1.0, 1, 1.0, blades) == -times
        assert load_cases.couple_of_pitch(1.0, 1.0, 1, 1.0, blades) == times
    for couple in (load_cases.couple_of_yaw, load_cases.couple_of_pitch):
        with pytest.raises(OutOfRange, match="two and more"):
            couple(0.5, 200.0, 1, 1.0, 1)


def test_couple_of_a_turning_rotor():  # GY-04, Khurmi & Gupta, Theory of Machines, Example 14.3
    case = CASES["GY-04"]
    given_ = case["inputs"]
    inertia = given_["rotating_mass_kg"] * given_["radius_of_gyration_m"] ** 2
    rate = given_["airspeed_km_h"] / 3.6 / given_["turn_radius_m"]
    couple = load_cases.couple_of_yaw(inertia, given_["speed_rpm"] * RPM, -1, rate, 3)
    assert couple / 1e3 == pytest.approx(
        case["expected"]["gyroscopic_couple_kNm"], rel=case["tolerance"]
    )


@given(st.integers(2, 6), st.floats(0.0, math.tau))
def test_couple_of_point_masses(blades, angle):
    # Rate of change of angular momentum of equal masses on a turning axis, about the axis across
    # the turn: 2 ω Ω Σ m r² cos²θ. Its greatest value is the couple of the regulation.
    def couple(at):
        return 2 * sum(
            math.cos(at + math.tau * blade / blades) ** 2 / blades for blade in range(blades)
        )

    peak = load_cases.couple_of_pitch(1.0, 1.0, 1, 1.0, blades)
    assert couple(angle) <= peak + 1e-12
    assert couple(0.0) == pytest.approx(peak)


def test_side_load_on_the_mount():  # TQ-09
    expected = CASES["TQ-09"]["expected"]
    assert load_cases.side_load_factor(2.5) == expected["min_lateral_limit_load_factor_CS_VLA"]
    assert load_cases.side_load_factor(4.5) == 1.5  # a third of condition A where that is more


@given(st.integers(3, 6), st.floats(0.05, 1.0), st.floats(100.0, 3e3))
def test_yawed_flow_moment_is_the_sum_over_the_blades(blades, variation, thrust):
    """Σ ΔT sin ψ · r sin ψ over equally spaced blades, whatever the blade angle."""
    change, radius = variation * thrust / blades, 0.7 * 1.75 / 2
    for turned in (0.0, 0.3, 1.1):
        angles = [turned + math.tau * index / blades for index in range(blades)]
        summed = sum(change * radius * math.sin(angle) ** 2 for angle in angles)
        assert summed == pytest.approx(
            load_cases.yawed_flow_moment(variation, thrust, 1.75, blades)
        )


def test_unbalance():  # PR-15
    case = CASES["PR-15"]
    given_ = case["inputs"]
    unbalance = given_["mass_difference_g"] / 1e3 * given_["effective_radius_m"]
    found = load_cases.unbalance_force(unbalance, given_["propeller_speed_rpm"] * RPM)
    assert found == pytest.approx(case["expected"]["unbalance_force_N"], rel=case["tolerance"])


def test_locked_chain():  # TV-08: the natural frequency; order 1 turns once for each swing
    case = CASES["TV-08"]
    given_, expected = case["inputs"], case["expected"]
    reflected = torsional_parts.reflected_inertia(
        given_["propeller_inertia_kgm2"], given_["reduction_ratio"]
    )
    assert reflected == pytest.approx(expected["propeller_inertia_at_engine_kgm2"])
    frequency = torsional_parts.two_mass_frequency(
        given_["coupling_dynamic_stiffness_Nm_rad"], given_["engine_inertia_kgm2"], reflected
    )
    assert critical_speed.critical_speed(frequency, 1.0) / math.tau == pytest.approx(
        expected["natural_frequency_Hz"], rel=case["tolerance"]
    )


def test_small_formulas():
    assert load_cases.reverse_torque(40.0, 2.5) == -100.0
    assert load_cases.weight(10.0, 2.5) == pytest.approx(245.166, rel=1e-5)
    # ½ J ω² = ½ T²/c
    torque = load_cases.stopping_torque(100.0, 400.0, 0.09)
    assert torque**2 / 400.0 == pytest.approx(0.09 * 100.0**2)


def test_orders_of_blades_and_firing():
    # three blades behind 2.4815: 1.209 a turn of the crank; a twin fires once
    assert load_cases.order_distance(3, 1, 67 / 27, 1.0, 1) == pytest.approx(0.20896, rel=1e-4)
    # three blades behind 3.0 on a twin: both once a turn
    assert load_cases.order_distance(3, 1, 3.0, 1.0, 1) == pytest.approx(0.0, abs=1e-12)


def test_kick_back_is_twice_the_gas_torque():
    """A step torque on two masses and a spring, integrated: J/(J + J_e) of it, doubled."""
    from scipy.integrate import solve_ivp

    gas, engine, behind, stiffness = 150.0, 0.01, 10.0, 500.0

    def motion(_, state):
        twist, rate = state
        return [rate, gas / engine - stiffness * twist * (1 / engine + 1 / behind)]

    swung = solve_ivp(motion, (0.0, 0.1), (0.0, 0.0), max_step=1e-4, rtol=1e-8)
    most = stiffness * max(swung.y[0])
    bound = -load_cases.kick_back_torque(gas)
    assert most == pytest.approx(bound * behind / (behind + engine), rel=1e-4)
    assert most < bound


@pytest.mark.parametrize("torque", [-300.0, 300.0])
def test_sudden_share_counts_both_ways(torque):
    assert load_cases.sudden_share(torque, 200.0) == pytest.approx(1.5)  # by hand
    with pytest.raises(OutOfRange, match="peak"):
        load_cases.sudden_share(torque, 0.0)
