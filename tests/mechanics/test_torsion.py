"""Trees of inertias: published examples, scipy as second opinion, and laws."""

import math
from pathlib import Path

import numpy as np
import pytest
import scipy.fft
import scipy.integrate
import scipy.linalg
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.mechanics import torsional_parts as parts
from checker.mechanics.coupling import resonance_factor
from checker.mechanics.equation import OutOfRange
from checker.mechanics.torsion import (
    RIGID,
    Tree,
    forced_response,
    natural_modes,
    over_cycle,
    swing,
)

_REFERENCE = Path(__file__).parents[1] / "reference" / "torsion.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}
INCH, POUND, PSI = 0.0254, 0.45359237, 6894.757


def bar(size, modulus, key="diameter"):
    return parts.cylinder_stiffness(size["length"], size[key], 0.0, modulus)


def test_stepped_shaft():  # TV-01, Bevan Ch 15 Example 8
    case = CASES["TV-01"]
    given_ = case["inputs"]
    lengths = [each * INCH for each in given_["segment_lengths_in"]]
    diameters = [each * INCH for each in given_["segment_diameters_in"]]
    modulus = given_["shear_modulus_psi"] * PSI
    spring = parts.cylinder_stiffness(lengths[0], diameters[0], 0.0, modulus)
    for each, diameter in zip(lengths[1:], diameters[1:], strict=True):
        stretch = parts.cylinder_stiffness(each, diameter, 0.0, modulus)
        spring = parts.in_series(spring, stretch)
    length = parts.cylinder_stiffness(1.0, diameters[0], 0.0, modulus) / spring
    assert length / INCH == pytest.approx(
        case["expected"]["equivalent_length_in_of_3in_shaft"], rel=case["tolerance"]
    )
    inertias = [each * POUND * (12 * INCH) ** 2 for each in given_["inertias_lb_ft2"]]
    frequency = parts.two_mass_frequency(spring, *inertias)
    assert frequency == pytest.approx(
        case["expected"]["natural_frequency_Hz"], rel=case["tolerance"]
    )


def test_geared_pump():  # TV-04, Sarkar Ch 11 Illustration 12
    case = CASES["TV-04"]
    given_ = case["inputs"]
    ratio = given_["motor_speed_rpm"] / given_["pump_speed_rpm"]
    modulus = given_["shear_modulus_GPa"] * 1e9
    first = bar(given_["shaft1_m"], modulus)
    second = parts.reflected_stiffness(bar(given_["shaft2_m"], modulus), ratio)
    pump = parts.reflected_inertia(given_["pump_inertia_kgm2"], ratio)
    tree = Tree(
        (given_["motor_inertia_kgm2"], 0.0, pump), (-1, 0, 1), (RIGID, first, second), (0,) * 3
    )
    with pytest.raises(OutOfRange, match="inertia"):
        natural_modes(tree)
    spring = parts.in_series(first, second)
    frequency = natural_modes(
        Tree((given_["motor_inertia_kgm2"], pump), (-1, 0), (RIGID, spring), (0, 0))
    ).frequency
    assert frequency[1] == pytest.approx(
        case["expected"]["natural_frequency_Hz"], rel=case["tolerance"]
    )


def test_flywheel_between_fixed_ends():  # TV-05, Sarkar Ch 11 Illustration 3
    case = CASES["TV-05"]
    given_ = case["inputs"]
    springs = [
        parts.cylinder_stiffness(
            length, given_["shaft_diameter_m"], 0.0, given_["shear_modulus_GPa"] * 1e9
        )
        for length in given_["lengths_each_side_m"]
    ]
    flywheel = given_["flywheel_mass_kg"] * given_["radius_of_gyration_m"] ** 2
    # Fixed ends are one very large inertia to which the wheel is joined by both springs together.
    tree = Tree((1e12, flywheel), (-1, 0), (RIGID, sum(springs)), (0, 0))
    assert natural_modes(tree).frequency[1] == pytest.approx(
        case["expected"]["torsional_frequency_Hz"], rel=case["tolerance"]
    )


def test_marine_step_up_gear():  # TV-06, Rao, inputs from memory
    case = CASES["TV-06"]
    given_, expected = case["inputs"], case["expected"]
    ratio = given_["teeth"][1] / given_["teeth"][0]
    modulus = given_["shear_modulus_GPa"] * 1e9
    gear = parts.reflected_inertia(given_["gear2_kgm2"], ratio)
    engine = given_["engine_kgm2"] + given_["gear1_kgm2"] + gear
    propeller = parts.reflected_inertia(given_["propeller_kgm2"], ratio)
    springs = (
        bar(given_["shaft1_m"], modulus),
        parts.reflected_stiffness(bar(given_["shaft2_m"], modulus), ratio),
    )
    close = {"rel": case["tolerance"]}
    assert engine == pytest.approx(expected["J1_equivalent_kgm2"], **close)
    assert propeller == pytest.approx(expected["J2_equivalent_kgm2"], **close)
    assert springs[0] == pytest.approx(expected["kt1_Nm_rad"], **close)
    assert springs[1] == pytest.approx(expected["kt2_equivalent_Nm_rad"], **close)
    tree = Tree((1e15, engine, propeller), (-1, 0, 1), (RIGID, *springs), (0,) * 3)
    omega = natural_modes(tree).frequency[1:] * math.tau
    assert omega == pytest.approx(expected["natural_frequencies_rad_s"], **close)


def test_three_equal_discs():  # TV-07, closed form
    case = CASES["TV-07"]
    inertia, spring = case["inputs"].values()
    tree = Tree((inertia,) * 3, (-1, 0, 1), (RIGID, spring, spring), (0,) * 3)
    modes = natural_modes(tree)
    assert modes.frequency == pytest.approx(
        case["expected"]["natural_frequencies_Hz"], rel=case["tolerance"]
    )
    assert modes.shape[1] == pytest.approx(modes.shape[1][0] * np.array([1, 0, -1]), abs=1e-12)
    assert modes.energy[1] == pytest.approx([0, 0.5, 0.5])


def test_coupling_and_propeller():  # TV-08, two inertias
    case = CASES["TV-08"]
    given_, expected = case["inputs"], case["expected"]
    propeller = parts.reflected_inertia(given_["propeller_inertia_kgm2"], given_["reduction_ratio"])
    close = {"rel": case["tolerance"]}
    assert propeller == pytest.approx(expected["propeller_inertia_at_engine_kgm2"], **close)
    spring = given_["coupling_dynamic_stiffness_Nm_rad"]
    closed = parts.two_mass_frequency(spring, given_["engine_inertia_kgm2"], propeller)
    assert closed == pytest.approx(expected["natural_frequency_Hz"], **close)
    tree = Tree((given_["engine_inertia_kgm2"], propeller), (-1, 0), (RIGID, spring), (0, 0))
    assert natural_modes(tree).frequency == pytest.approx([0.0, closed])


def test_four_inertias_with_a_rigid_mesh():  # TV-09, eigen-solution with Holzer check
    case = CASES["TV-09"]
    given_ = case["inputs"]
    ratio = given_["reduction_ratio"]
    tree = Tree(
        (
            given_["engine_kgm2"],
            given_["pinion_kgm2"],
            parts.reflected_inertia(given_["gear_kgm2"], ratio),
            parts.reflected_inertia(given_["propeller_kgm2"], ratio),
        ),
        (-1, 0, 1, 2),
        (
            RIGID,
            given_["coupling_Nm_rad_engine_side"],
            RIGID,
            parts.reflected_stiffness(given_["propeller_shaft_Nm_rad_output_side"], ratio),
        ),
        (0,) * 4,
    )
    assert natural_modes(tree).frequency[1:] == pytest.approx(
        case["expected"]["natural_frequencies_Hz"], rel=case["tolerance"]
    )


@st.composite
def trees(draw, rigid=False):
    count = draw(st.integers(2, 9))
    numbers = st.floats(-3.0, 0.0).map(lambda power: 10.0**power)
    inertia = tuple(draw(numbers) for _ in range(count))
    parent = (-1, *(draw(st.integers(0, node - 1)) for node in range(1, count)))
    springs = st.floats(2.0, 6.0).map(lambda power: 10.0**power)
    if rigid:
        springs = st.one_of(springs, st.just(RIGID))
    stiffness = (RIGID, *(draw(springs) for _ in range(1, count)))
    damping = tuple(draw(st.floats(0.02, 1.5)) for _ in range(count))
    return Tree(inertia, parent, stiffness, damping)


def matrices(tree, *, damped=False):
    """Mass and stiffness matrix, written down apart from the code under test."""
    count = len(tree.parent)
    stiffness = np.zeros((count, count), dtype=complex if damped else float)
    for node in range(1, count):
        spring = tree.stiffness[node]
        if damped:
            spring = spring * (1 + 1j * tree.damping[node] / math.tau)
        part = np.zeros(count)
        part[node], part[tree.parent[node]] = 1.0, -1.0
        stiffness = stiffness + spring * np.outer(part, part)
    return np.diag(tree.inertia), stiffness


@given(trees())
@settings(max_examples=60, deadline=None)
def test_modes_agree_with_scipy(tree):  # scipy.linalg.eigh, generalised problem
    mass, stiffness = matrices(tree)
    squares = scipy.linalg.eigh(stiffness, mass, eigvals_only=True)
    modes = natural_modes(tree)
    largest = modes.frequency[-1]
    expected = np.sqrt(np.maximum(squares, 0.0)) / math.tau
    assert modes.frequency[1:] == pytest.approx(expected[1:], rel=1e-6, abs=1e-6 * largest)
    assert modes.frequency[0] == 0.0
    # Free vibration holds no momentum, but for rotation as a whole; elastic energies add up.
    momentum = modes.shape[1:] @ np.array(tree.inertia)
    assert momentum == pytest.approx(np.zeros(len(momentum)), abs=1e-6 * sum(tree.inertia))
    assert modes.energy[1:].sum(axis=1) == pytest.approx(np.ones(len(momentum)))


@given(trees(), st.floats(1.0, 500.0), st.integers(0, 8))
@settings(max_examples=60, deadline=None)
def test_forced_response_agrees_with_a_dense_solution(tree, frequency, excited):
    # scipy.linalg.solve of the whole complex matrix
    node = min(excited, len(tree.parent) - 1)
    mass, stiffness = matrices(tree, damped=True)
    load = np.zeros(len(tree.parent), dtype=complex)
    load[node] = 3.0 - 4.0j
    angle = scipy.linalg.solve(stiffness - (math.tau * frequency) ** 2 * mass, load)
    passed, turned = forced_response(tree, np.array([frequency]), {node: load[[node]]})
    assert turned[:, 0] == pytest.approx(angle, rel=1e-6, abs=1e-7 * abs(angle).max())
    for each in range(1, len(tree.parent)):
        spring = tree.stiffness[each] * (1 + 1j * tree.damping[each] / math.tau)
        torque = spring * (angle[tree.parent[each]] - angle[each])
        assert passed[each, 0] == pytest.approx(torque, rel=1e-4, abs=1e-4 * abs(passed).max())


@given(trees(rigid=True), st.floats(1.0, 300.0))
@settings(max_examples=40, deadline=None)
def test_torque_balances_at_every_node(tree, frequency):  # Newton, also past rigid joints
    passed, angle = forced_response(tree, np.array([frequency]), {0: np.array([10.0 + 0j])})
    square = (math.tau * frequency) ** 2
    scale = abs(passed).max() + 10.0
    for node in range(len(tree.parent)):
        onward = sum(passed[each, 0] for each, parent in enumerate(tree.parent) if parent == node)
        arriving = passed[node, 0] if node else 10.0
        inertial = -square * tree.inertia[node] * angle[node, 0]
        assert inertial == pytest.approx(arriving - onward, abs=1e-6 * scale)


@given(st.floats(0.2, 4.0), st.floats(0.1, 1.8), st.floats(0.05, 20.0))
@settings(max_examples=40, deadline=None)
def test_two_masses_follow_the_resonance_factor(ratio, damping, share):
    # DIN 740-2: T = T_e J2/(J1 + J2) V
    first, second, spring = 0.1, 0.1 * share, 400.0
    natural = parts.two_mass_frequency(spring, first, second)
    tree = Tree((first, second), (-1, 0), (RIGID, spring), (0.0, damping))
    passed, _ = forced_response(tree, np.array([ratio * natural]), {0: np.array([50.0 + 0j])})
    expected = 50.0 * second / (first + second) * resonance_factor(ratio, damping)
    assert abs(passed[1, 0]) == pytest.approx(expected, rel=1e-9)


def test_heavier_propeller_and_softer_damper_lower_the_first_mode():
    def first(spring, propeller):
        tree = Tree((0.13, 0.006, propeller), (-1, 0, 1), (RIGID, spring, 6e4), (0,) * 3)
        return natural_modes(tree).frequency[1]

    assert first(300.0, 0.08) > first(200.0, 0.08) > first(200.0, 0.10)


@given(st.lists(st.complex_numbers(max_magnitude=100.0), min_size=12, max_size=12))
@settings(max_examples=30, deadline=None)
def test_swing_lies_between_the_largest_order_and_the_sum(amplitudes):
    orders = np.arange(1, 13) / 2.0
    amplitude = np.array(amplitudes)
    high, low = swing(amplitude[None, :], orders)
    fine = np.linspace(0.0, 2.0 * math.tau, 4001)
    sums = (amplitude[:, None] * np.exp(1j * np.outer(orders, fine))).real.sum(axis=0)
    room = 1e-3 * abs(amplitude).sum() + 1e-9
    assert sums.max() - 30.0 * room <= high[0] <= sums.max() + room
    assert sums.min() - room <= low[0] <= sums.min() + 30.0 * room
    assert low[0] <= room
    assert high[0] >= -room


@pytest.mark.parametrize(
    ("orders", "turns"),
    [((1.0, 2.0), 1), ((0.5, 2.0), 2), (range(1, 13), 1), (np.arange(1, 13) / 2.0, 2)],
)
def test_a_cycle_of_whole_orders_is_one_turn(orders, turns):
    # The inverse transform of scipy over as many angles, zeros between the orders there are.
    orders = np.array(orders, dtype=float)
    rng = np.random.default_rng(5)
    amplitude = rng.normal(size=(3, len(orders))) + 1j * rng.normal(size=(3, len(orders)))
    found = over_cycle(amplitude, orders)
    count = found.shape[-1]
    assert count >= 16 * orders.max() * turns
    spectrum = np.zeros((3, count // 2 + 1), dtype=complex)
    spectrum[:, np.rint(orders * turns).astype(int)] = amplitude * count / 2.0
    assert found == pytest.approx(scipy.fft.irfft(spectrum, count), abs=1e-12)
    high, low = swing(amplitude, orders)
    assert high == pytest.approx(found.max(axis=-1))
    assert low == pytest.approx(found.min(axis=-1))


@pytest.mark.parametrize("order", [0.5, 1.0, 6.0, 12.0])
@given(st.floats(0.0, math.tau))
@settings(max_examples=20, deadline=None)
def test_the_crest_of_the_highest_order_is_met_within_two_percent(order, phase):
    high, low = swing(np.array([[0.0, np.exp(1j * phase)]]), np.array([order / 2.0, order]))
    assert 0.98 <= high[0] <= 1.0 + 1e-12
    assert 0.98 <= -low[0] <= 1.0 + 1e-12


# Engine, coupling, clutch and propeller in time. Rubber is taken as a dashpot that gives the same
# loss at the one frequency of the excitation, so that the steady state must agree.
ENGINE, RACE, PROPELLER = 0.13, 0.006, 0.085
COUPLING, CLUTCH, DAMPING, FREQUENCY = 300.0, 8000.0, 1.0, 26.7


def in_time(mean, amplitude, *, one_way):
    """Clutch torque over the last cycles of a time-domain run."""
    omega = math.tau * FREQUENCY
    dashpot = COUPLING * DAMPING / math.tau / omega
    clutch_dashpot = CLUTCH * 0.05 / math.tau / omega

    def clutch(state):
        twist, rate = state[1] - state[2], state[4] - state[5]
        torque = CLUTCH * twist + clutch_dashpot * rate
        return max(torque, 0.0) if one_way and (twist < 0.0 or torque < 0.0) else torque

    def motion(time, state):
        coupling = COUPLING * (state[0] - state[1]) + dashpot * (state[3] - state[4])
        driving = mean + amplitude * math.cos(omega * time)
        passed = clutch(state)
        return [
            *state[3:],
            (driving - coupling) / ENGINE,
            (coupling - passed) / RACE,
            (passed - mean) / PROPELLER,
        ]

    start = [mean / COUPLING + mean / CLUTCH, mean / CLUTCH, 0.0, 0.0, 0.0, 0.0]
    cycles = 100
    times = np.linspace(cycles - 6, cycles, 1200) / FREQUENCY
    run = scipy.integrate.solve_ivp(
        motion, (0.0, times[-1]), start, t_eval=times, rtol=1e-7, atol=1e-9, method="LSODA"
    )
    assert run.success
    return np.array([clutch(state) for state in run.y.T])


def linear(amplitude):
    tree = Tree(
        (ENGINE, RACE, PROPELLER), (-1, 0, 1), (RIGID, COUPLING, CLUTCH), (0, DAMPING, 0.05)
    )
    passed, _ = forced_response(tree, np.array([FREQUENCY]), {0: np.array([amplitude + 0j])})
    return abs(passed[2, 0])


def test_a_clutch_that_stays_engaged_follows_the_steady_response():
    # scipy.integrate.solve_ivp
    swing_ = linear(20.0)
    mean = 1.5 * swing_
    torque = in_time(mean, 20.0, one_way=True)
    assert torque.max() - mean == pytest.approx(swing_, rel=0.01)
    assert torque.min() - mean == pytest.approx(-swing_, rel=0.01)
    assert torque.min() > 0.0


def test_a_clutch_opens_just_where_the_steady_response_reverses():
    # scipy.integrate.solve_ivp: with the clutch open the torque is cut off at zero
    swing_ = linear(20.0)
    opened = in_time(0.8 * swing_, 20.0, one_way=True)
    assert opened.min() == pytest.approx(0.0, abs=1e-3 * swing_)
    assert np.mean(opened <= 1e-6) > 0.02
    held = in_time(1.02 * swing_, 20.0, one_way=True)
    assert held.min() > 0.0
    # The blow at re-engagement goes beyond the steady bound: reversal is barred, not only listed.
    assert opened.max() > 0.8 * swing_ + swing_
    locked = in_time(0.8 * swing_, 20.0, one_way=False)
    assert locked.min() == pytest.approx(-0.2 * swing_, rel=0.05)


def test_a_tree_must_hang_together():
    with pytest.raises(OutOfRange, match="parent"):
        Tree((1.0, 1.0), (-1, 1), (RIGID, 1.0), (0, 0))
    with pytest.raises(OutOfRange, match="stiffness"):
        Tree((1.0, 1.0), (-1, 0), (RIGID, 0.0), (0, 0))
    with pytest.raises(OutOfRange, match="inertia"):
        Tree((0.0, 0.0), (-1, 0), (RIGID, 1.0), (0, 0))


def test_a_viscous_joint_follows_the_motion_in_time():  # scipy.integrate.solve_ivp
    inertia, spring, viscous, turning = (0.2, 0.1), 300.0, 4.0, 70.0
    tree = Tree(inertia, (-1, 0), (RIGID, spring), (0.0, 0.0), (0.0, viscous))
    passed, _ = forced_response(tree, np.array([turning / math.tau]), {0: np.array([50.0 + 0j])})

    def motion(time, state):
        one, other, fast, slow = state
        through = spring * (one - other) + viscous * (fast - slow)
        drive = 50.0 * math.cos(turning * time)
        return [fast, slow, (drive - through) / inertia[0], through / inertia[1]]

    end = 60 * math.tau / turning
    times = np.linspace(end - math.tau / turning, end, 400)
    solved = scipy.integrate.solve_ivp(
        motion, (0.0, end), [0.0] * 4, t_eval=times, rtol=1e-9, atol=1e-11
    ).y
    through = spring * (solved[0] - solved[1]) + viscous * (solved[2] - solved[3])
    assert np.ptp(through) / 2 == pytest.approx(abs(passed[1, 0]), rel=1e-3)
