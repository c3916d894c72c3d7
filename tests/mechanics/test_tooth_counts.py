"""Proposed tooth counts: near the ratio, hunting, not undercut."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.mechanics.tooth_counts import LEAST_TEETH, idler_teeth, step_teeth


@settings(max_examples=200)
@given(st.floats(1.0, 6.0))
def test_a_pair_hunts_and_is_near_its_ratio(ratio):
    pinion, wheel = step_teeth(ratio)
    assert math.gcd(pinion, wheel) == 1
    assert pinion >= LEAST_TEETH > 2 / math.sin(math.radians(20)) ** 2
    assert wheel / pinion == pytest.approx(ratio, abs=max(0.0101 * ratio, 1 / 35))


@settings(max_examples=200)
@given(st.floats(1.05, 6.0))
def test_an_idler_hunts_with_both(ratio):
    pinion, wheel = step_teeth(ratio)
    idler = idler_teeth(pinion, wheel)
    assert math.gcd(idler, pinion) == math.gcd(idler, wheel) == 1
    assert pinion * 0.7 < idler < wheel * 1.4


@pytest.mark.parametrize("ratio", [0.5, 0.0, -1.0])
def test_a_step_is_a_reduction(ratio):
    with pytest.raises(ValueError, match="is no reduction"):
        step_teeth(ratio)
