"""Preload of bolts and nuts at the ends of its scatter: stated, or that of a torque wrench."""

from checker.known import Value, assumed, compute
from checker.mechanics import preload as formulas
from checker.spec.subject import Subject

_WRENCH = (
    "tightening factor by torque wrench, the upper of 1.4 to 1.6, as the spec states no range of "
    "the preload; VDI 2230 (from memory)"
)


def least_preload(part: Subject, field: str = "preload") -> Value:
    """The preload of the slackest bolt [N]."""
    if _has_range(part, field):
        return part.given(field, "F_V", "low")
    return compute(formulas.least_preload, part.given(field, "F_V"), _factor())


def greatest_preload(part: Subject, field: str = "preload") -> Value:
    """The preload of the tightest bolt [N]."""
    if _has_range(part, field):
        return part.given(field, "F_V", "high")
    return compute(formulas.greatest_preload, part.given(field, "F_V"), _factor())


def _has_range(part: Subject, field: str) -> bool:
    stated = part.raw(field)
    return stated is not None and stated.low != stated.high


def _factor() -> Value:
    return assumed(1.6, "1", "α_A", _WRENCH)
