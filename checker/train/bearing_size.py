"""Outside diameter and width of a bearing: stated, or of its generic series by ISO 15."""

from collections.abc import Callable

from checker.known import Known, Value, compute
from checker.mechanics import bearing_sizes as generic
from checker.spec.subject import Subject


def outside(bearing: Subject) -> Value:
    """D [m]: stated, or of the generic series."""
    return _size(bearing, "outside", "D", generic.generic_outside)


def width(bearing: Subject) -> Value:
    """B [m]: stated, or of the generic series."""
    return _size(bearing, "width", "B", generic.generic_width)


def _size(bearing: Subject, field: str, symbol: str, formula: Callable[..., float]) -> Value:
    stated = bearing.given(field, symbol)
    if isinstance(stated, Known) or bearing.raw("generic_series") is None:
        return stated
    return compute(formula, bearing.given("generic_series"), bearing.given("bore", "d"))
