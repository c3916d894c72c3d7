"""Scatter of preload by the tightening factor."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.mechanics import preload
from checker.mechanics.equation import OutOfRange


@given(st.floats(1.0, 1e5), st.floats(1.0, 4.0))
def test_the_ends_stand_at_the_factor_about_the_mean(mean, factor):  # the definition of VDI 2230
    least, greatest = (
        preload.least_preload(mean, factor),
        preload.greatest_preload(mean, factor),
    )
    assert greatest / least == pytest.approx(factor)
    assert (greatest + least) / 2.0 == pytest.approx(mean)


def test_by_hand():  # 26 kN at 1.6: 20 kN to 32 kN
    assert preload.least_preload(26e3, 1.6) == pytest.approx(20e3)
    assert preload.greatest_preload(26e3, 1.6) == pytest.approx(32e3)


def test_a_factor_below_one_is_none():
    for formula in (preload.least_preload, preload.greatest_preload):
        with pytest.raises(OutOfRange, match="factor"):
            formula(1.0, 0.9)
