"""Firing intervals of the engine against its working cycle and its cylinders."""

import math
from collections.abc import Iterator
from typing import Any

from checker.spec.document import Document
from checker.spec.problem import Problem
from checker.spec.quantity import QuantityError, parse_quantity

_CYCLES = {"four-stroke": 720, "two-stroke": 360}  # degrees of crank angle
_SLACK = 1.0  # degrees, for intervals that are written rounded


def firing_problems(document: Document) -> Iterator[Problem]:
    """What firing intervals, cycle and number of cylinders say against each other.

    Args:
        document: the spec as written; intervals that cannot be read are passed over.
    """
    engine = document.data.get("engine")
    intervals = engine.get("firing_intervals") if isinstance(engine, dict) else None
    if not isinstance(engine, dict) or not isinstance(intervals, list):
        return
    path = ("engine", "firing_intervals")
    cycle = _CYCLES.get(str(engine.get("cycle")))
    total = _total(intervals)
    if cycle is not None and total is not None and abs(total - cycle) > _SLACK:
        yield document.problem(
            path,
            "the firing intervals do not fill the cycle",
            f"{total:g} deg in all",
            f"{cycle} deg in all ({engine['cycle']})",
        )
    cylinders = engine.get("cylinders")
    if type(cylinders) is int and cylinders != len(intervals):
        yield document.problem(
            path,
            "not as many firing intervals as cylinders",
            f"{len(intervals)}",
            f"{cylinders}, one for each cylinder",
        )


def _total(intervals: list[Any]) -> float | None:
    """The sum in degrees; ``None`` if an interval cannot be read."""
    try:
        read = [parse_quantity(each, "angle").value for each in intervals if isinstance(each, str)]
    except QuantityError:
        return None
    return math.degrees(math.fsum(read)) if len(read) == len(intervals) else None
