"""Reactions, moments and bending of a shaft on two and more supports."""

import itertools
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import linalg

from checker.mechanics.beam import (
    Load,
    Stretch,
    bend,
    bending_moment,
    bending_stiffness,
    deflection,
    slope,
    solved,
)
from checker.mechanics.equation import OutOfRange

EI = 4.0e4


def test_bending_stiffness_of_a_tube():
    # I = π (D⁴ − d⁴)/64, worked by hand for 50 x 30 mm: 2.67035e-7 m4
    assert bending_stiffness(0.05, 0.03, 1.0) == pytest.approx(2.67035e-7, rel=1e-5)
    with pytest.raises(OutOfRange, match="no wall"):
        bending_stiffness(0.03, 0.03, 1.0)


def test_middle_force_deflects_by_the_handbook():
    # P L³ / 48 E I and P L² / 16 E I: simply supported beam, any handbook
    length, force = 0.4, 1000.0
    supports, stretches = (0.0, length), (Stretch(0.0, length, EI),)
    bent = bend(supports, (Load(length / 2, force),), stretches)
    assert bent.reactions == pytest.approx((-500.0, -500.0))
    assert bending_moment(bent, length / 2, False) == pytest.approx(-force * length / 4)
    middle = deflection(bent, length / 2, supports, stretches)
    assert middle == pytest.approx(force * length**3 / (48 * EI))
    assert slope(bent, 0.0, supports, stretches) == pytest.approx(force * length**2 / (16 * EI))


def test_overhung_force_loads_the_front_bearing_more_than_itself():
    # statics: span 0.1, overhang 0.08, force 100: front 180, rear 80 the other way
    bent = bend((0.0, 0.1), (Load(0.18, 100.0),), ())
    assert bent.reactions == pytest.approx((80.0, -180.0))


def test_couple_over_span_loads_both_bearings():
    # AMC 23.371 couple through a span: C / L on both, opposite
    bent = bend((0.0, 0.1), (Load(0.18, couple=389.114),), ())
    assert bent.reactions == pytest.approx((3891.14, -3891.14))


def test_two_equal_spans_with_middle_forces():
    # handbook: continuous beam, P at the middle of both spans: 5/16, 11/8, 5/16 of P
    bent = bend((0.0, 1.0, 2.0), (Load(0.5, -16.0), Load(1.5, -16.0)), (Stretch(0.0, 2.0, EI),))
    assert bent.reactions == pytest.approx((5.0, 22.0, 5.0))


def test_one_support_is_no_shaft():
    with pytest.raises(OutOfRange, match="two radial bearings"):
        bend((0.0,), (), ())


stations = st.lists(
    st.integers(0, 40).map(lambda step: step * 0.01), min_size=2, max_size=4, unique=True
)
loads = st.lists(
    st.builds(
        Load,
        st.integers(-10, 60).map(lambda step: step * 0.01),
        st.floats(-5e3, 5e3),
        st.floats(-500, 500),
    ),
    min_size=1,
    max_size=5,
)
STEPPED = (Stretch(-0.1, 0.12, 1.5e4), Stretch(0.12, 0.25, 6e4), Stretch(0.25, 0.6, 2.5e4))


@given(stations, loads)
@settings(max_examples=60, deadline=None)
def test_forces_and_moments_always_close(supports, acting):
    bent = bend(supports, acting, STEPPED)
    size = max(1.0, *(abs(each) for each in bent.reactions), *(abs(load.force) for load in acting))
    size = max(size, *(abs(load.couple) for load in acting))
    assert abs(sum(load.force for load in bent.acting)) <= 1e-9 * size
    balance = sum(load.force * load.station + load.couple for load in bent.acting)
    assert abs(balance) <= 1e-9 * size


def by_stiffness(supports, acting):
    """Independent: Euler beam elements assembled and solved by scipy."""
    ends = [stretch.start for stretch in STEPPED] + [STEPPED[-1].end]
    nodes = sorted({round(x, 6) for x in (*ends, *supports, *(load.station for load in acting))})
    size = 2 * len(nodes)
    stiffness, force = np.zeros((size, size)), np.zeros(size)
    for index, (a, b) in enumerate(itertools.pairwise(nodes)):
        length, middle = b - a, (a + b) / 2
        rigidity = next(s.stiffness for s in STEPPED if s.start <= middle <= s.end)
        element = (
            rigidity
            / length**3
            * np.array(
                [
                    [12, 6 * length, -12, 6 * length],
                    [6 * length, 4 * length**2, -6 * length, 2 * length**2],
                    [-12, -6 * length, 12, -6 * length],
                    [6 * length, 2 * length**2, -6 * length, 4 * length**2],
                ]
            )
        )
        stiffness[2 * index : 2 * index + 4, 2 * index : 2 * index + 4] += element
    for load in acting:
        at = nodes.index(round(load.station, 6))
        force[2 * at] += load.force
        force[2 * at + 1] += load.couple
    held = [2 * nodes.index(round(x, 6)) for x in supports]
    free = [each for each in range(size) if each not in held]
    moved = np.zeros(size)
    moved[free] = linalg.solve(stiffness[np.ix_(free, free)], force[free])
    return nodes, moved, [float(stiffness[each] @ moved - force[each]) for each in held]


@given(stations, loads)
@settings(max_examples=40, deadline=None)
def test_reactions_and_bending_agree_with_a_stiffness_solution(supports, acting):
    bent = bend(supports, acting, STEPPED)
    nodes, moved, reactions = by_stiffness(supports, acting)
    size = max(1.0, *(abs(each) for each in reactions))
    assert bent.reactions == pytest.approx(reactions, abs=2e-7 * size)
    for index, x in enumerate(nodes):
        at = deflection(bent, x, supports, STEPPED)
        assert at == pytest.approx(moved[2 * index], rel=1e-5, abs=1e-9 * size)
        turned = slope(bent, x, supports, STEPPED)
        assert turned == pytest.approx(moved[2 * index + 1], rel=1e-5, abs=1e-8 * size)


def test_elimination_agrees_with_scipy():
    matrix = [[2.0, 1.0, 0.5], [1.0, 3.0, -1.0], [0.5, -1.0, 4.0]]
    right = [1.0, 2.0, 3.0]
    assert solved(matrix, right) == pytest.approx(list(linalg.solve(matrix, right)))
    assert math.isfinite(solved([[2.0]], [1.0])[0])
