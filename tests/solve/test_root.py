from math import cos, exp

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from checker.solve.root import NoConvergence, bracketed_root


@pytest.mark.parametrize(
    ("function", "low", "high"),
    [
        (lambda x: x**3 - 2 * x - 5, 2.0, 3.0),  # Wallis' equation, root 2.0945514815423265
        (lambda x: cos(x) - x, 0.0, 1.0),
        (lambda x: exp(-x) - 1e-6, 0.0, 100.0),
        (lambda x: -1.0 if x < 0.3 else 1.0, 0.0, 1.0),
    ],
)
def test_root_against_scipy(function, low, high):
    expected = brentq(function, low, high, xtol=1e-14)
    found = bracketed_root(function, low, high, tolerance=1e-12)
    assert found.value == pytest.approx(expected, abs=2e-6)
    assert low <= found.value <= high


def test_wallis():
    found = bracketed_root(lambda x: x**3 - 2 * x - 5, 2.0, 3.0, tolerance=1e-12)
    assert found.value == pytest.approx(2.0945514815423265, rel=1e-12)
    assert found.steps < 12


@settings(max_examples=60)
@given(st.floats(-5, 5), st.floats(0.1, 4), st.floats(0.1, 10))
def test_root_of_a_falling_curve(at, steep, spread):
    def function(x):
        return steep * (at - x) + 0.3 * (at - x) ** 3

    found = bracketed_root(function, at - spread, at + 2 * spread, tolerance=1e-12)
    assert found.value == pytest.approx(at, abs=1e-9)
    assert abs(found.residual) <= 1e-12


def test_one_sign_is_no_convergence():
    with pytest.raises(NoConvergence, match="no sign change"):
        bracketed_root(lambda x: x * x + 1.0, -1.0, 1.0, tolerance=1e-9)
