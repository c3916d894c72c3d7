"""What can be asked of a part: computed measures by name."""

import importlib
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

from checker.known import Value

if TYPE_CHECKING:
    from checker.measures.design import Design
    from checker.spec.subject import Subject

FAMILIES = (
    "train",
    "gears",
    "mates",
    "gear_rating",
    "gear_duty",
    "gear_life",
    "gear_limits",
    "gear_surface",
    "gear_heat",
    "thrust",
    "bearings",
    "bearing_life",
    "bearing_loads",
    "plain_bearings",
    "clearance",
    "shafts",
    "fits",
    "clutch",
    "clutch_duty",
    "failure",
    "retention",
    "states",
    "starting",
    "damper",
    "torsion",
    "torsion_states",
    "vibration",
    "oil",
    "supply",
    "losses",
    "heat",
    "warm_up",
    "hottest",
    "vent",
    "supply_network",
    "supply_balance",
    "wetted_damper",
    "aeration",
    "level",
    "vent_network",
    "transfer",
    "seals",
    "housing",
    "monitoring",
    "propeller",
    "propeller_match",
    "joints",
    "fastening",
    "tightening",
    "mounting",
    "taper",
    "records",
)


@dataclass(frozen=True, slots=True)
class Measure:
    """A computed quantity of one kind of part.

    Attributes:
        name: what rules call it.
        of: kind of part.
        unit: SI unit, ``"1"`` for a pure number, ``""`` for text and truths.
        title: what it is, in words.
        varies: whether it depends on the operation point.
        at: field of the part that a finding points at; empty for the part itself.
        function: computes it from the design, the part and, if it varies, the point.
    """

    name: str
    of: str
    unit: str
    title: str
    varies: bool
    at: str
    function: Callable[..., Value]


_MEASURES: dict[tuple[str, str], Measure] = {}


def measure(
    of: str, unit: str, title: str, *, at: str = ""
) -> Callable[[Callable[["Design", "Subject"], Value]], Callable[["Design", "Subject"], Value]]:
    """Register a measure of a kind of part under the name of the function."""

    def register(
        function: Callable[["Design", "Subject"], Value],
    ) -> Callable[["Design", "Subject"], Value]:
        name = function.__name__
        _MEASURES[of, name] = Measure(name, of, unit, title, False, at, function)
        return function

    return register


Varying = Callable[["Design", "Subject", "Subject"], Value]


def varying_measure(
    of: str, unit: str, title: str, *, at: str = ""
) -> Callable[[Varying], Varying]:
    """Register a measure that depends on the operation point."""

    def register(function: Varying) -> Varying:
        name = function.__name__
        _MEASURES[of, name] = Measure(name, of, unit, title, True, at, function)
        return function

    return register


@cache
def measures() -> dict[tuple[str, str], Measure]:
    """Every computed measure, by kind of part and name."""
    for family in FAMILIES:
        importlib.import_module(f"checker.measures.{family}")
    return _MEASURES
