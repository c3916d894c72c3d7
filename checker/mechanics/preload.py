"""Scatter of the preload that tightening leaves in a bolt or nut."""

from checker.mechanics.equation import OutOfRange, equation

_VDI_2230 = "VDI 2230:2015, definition of the tightening factor (from memory)"


@equation(
    "F_min",
    "F_min = 2 F / (1 + α_A)",
    unit="N",
    source=f"{_VDI_2230}: α_A = F_max/F_min, about their mean",
    mean="F [N]",
    factor="α_A [1]",
)
def least_preload(mean: float, factor: float) -> float:
    """Least preload F_min [N] of bolts that are tightened to a mean of F with a factor α_A.

    Raises:
        OutOfRange: factor below 1.
    """
    _check(factor)
    return 2.0 * mean / (1.0 + factor)


@equation(
    "F_max",
    "F_max = 2 α_A F / (1 + α_A)",
    unit="N",
    source=f"{_VDI_2230}: α_A = F_max/F_min, about their mean",
    mean="F [N]",
    factor="α_A [1]",
)
def greatest_preload(mean: float, factor: float) -> float:
    """Greatest preload F_max [N] of bolts that are tightened to a mean of F with a factor α_A.

    Raises:
        OutOfRange: factor below 1.
    """
    _check(factor)
    return 2.0 * factor * mean / (1.0 + factor)


def _check(factor: float) -> None:
    if factor < 1.0:
        raise OutOfRange("factor must be 1 or more: no tightening scatters less than not at all")
