"""A root between two ends of opposite sign, by Brent's method."""

from collections.abc import Callable
from dataclasses import dataclass

_MOST_STEPS = 100


class NoConvergence(RuntimeError):
    """A bracketed root was not found: a fault of ours, which makes a finding broken."""


@dataclass(frozen=True, slots=True)
class Root:
    """Where a function is zero.

    Attributes:
        value: the argument.
        residual: the function there.
        steps: evaluations after the two ends.
    """

    value: float
    residual: float
    steps: int


def bracketed_root(
    function: Callable[[float], float], low: float, high: float, *, tolerance: float
) -> Root:
    """Find where a continuous function is zero between two ends.

    The bracket only ever shrinks, so the method cannot leave it: interpolation where it helps,
    halving where it does not.

    Args:
        function: continuous between the ends.
        low: one end.
        high: the other; the function has the opposite sign there.
        tolerance: the function at the root is at most this, or the bracket can shrink no more.

    Raises:
        NoConvergence: both ends have one sign, or the steps run out.
    """
    a, b = low, high
    at_a, at_b = function(a), function(b)
    if at_a * at_b > 0.0:
        raise NoConvergence(f"no sign change between {low:g} ({at_a:g}) and {high:g} ({at_b:g})")
    if abs(at_a) < abs(at_b):
        a, b, at_a, at_b = b, a, at_b, at_a
    c, at_c, before, halved = a, at_a, a, True
    for step in range(_MOST_STEPS):
        if abs(at_b) <= tolerance or a == b:
            return Root(b, at_b, step)
        trial = _interpolated(a, at_a, b, at_b, c, at_c)
        past = abs(b - c) if halved else abs(c - before)
        inside = min((3.0 * a + b) / 4.0, b) < trial < max((3.0 * a + b) / 4.0, b)
        halved = not inside or abs(trial - b) >= past / 2.0
        if halved:
            trial = (a + b) / 2.0
        if trial in (a, b):  # neighbouring numbers: the bracket can shrink no more
            return Root(b, at_b, step)
        at_trial = function(trial)
        before, c, at_c = c, b, at_b
        if at_a * at_trial <= 0.0:
            b, at_b = trial, at_trial
        else:
            a, at_a = trial, at_trial
        if abs(at_a) < abs(at_b):
            a, b, at_a, at_b = b, a, at_b, at_a
    raise NoConvergence(f"no root within {_MOST_STEPS} steps between {low:g} and {high:g}")


def _interpolated(a: float, at_a: float, b: float, at_b: float, c: float, at_c: float) -> float:
    if at_c not in (at_a, at_b):
        return (
            a * at_b * at_c / ((at_a - at_b) * (at_a - at_c))
            + b * at_a * at_c / ((at_b - at_a) * (at_b - at_c))
            + c * at_a * at_b / ((at_c - at_a) * (at_c - at_b))
        )
    return b - at_b * (b - a) / (at_b - at_a)
