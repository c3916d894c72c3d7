"""Room between parts on neighbouring axes, each taken as a cylinder."""

import math

from checker.mechanics.equation import equation


@equation(
    "x_a",
    "x_a = x − B/2",
    unit="m",
    source="definition",
    station="x [m]",
    width="B [m]",
)
def start(station: float, width: float) -> float:
    """Where a part begins along its axis [m].

    Source: definition.
    """
    return station - width / 2.0


@equation(
    "x_e",
    "x_e = x + B/2",
    unit="m",
    source="definition",
    station="x [m]",
    width="B [m]",
)
def end(station: float, width: float) -> float:
    """Where a part ends along its axis [m].

    Source: definition.
    """
    return station + width / 2.0


@equation(
    "a",
    "a = √((y₂ − y₁)² + (z₂ − z₁)²)",
    unit="m",
    source="definition",
    right="y₁ [m]",
    up="z₁ [m]",
    right_of_other="y₂ [m]",
    up_of_other="z₂ [m]",
)
def axis_distance(right: float, up: float, right_of_other: float, up_of_other: float) -> float:
    """Distance of two parallel axes [m].

    Source: definition.
    """
    return math.hypot(right_of_other - right, up_of_other - up)


@equation(
    "s",
    "s = a − r₁ − r₂",
    unit="m",
    source="definition",
    distance="a [m]",
    radius_of_one="r₁ [m]",
    radius_of_other="r₂ [m]",
)
def gap(distance: float, radius_of_one: float, radius_of_other: float) -> float:
    """Room between two cylinders on parallel axes [m]; below zero where they cut each other.

    Source: definition.
    """
    return distance - radius_of_one - radius_of_other
