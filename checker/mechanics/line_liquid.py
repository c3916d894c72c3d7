"""Liquid in a vent line: what it holds back, how high it is lifted, how much a low loop keeps."""

from checker.mechanics.air import STANDARD_GRAVITY
from checker.mechanics.equation import equation


@equation(
    "p_b",
    "p_b = ρ g h",
    unit="Pa",
    source="Hydrostatics",
    height="h [m]",
    oil_density="ρ [kg/m3]",
)
def blocking_pressure(height: float, oil_density: float) -> float:
    """Pressure ``p_b`` that a low loop full of oil holds back before it spits, in Pa.

    ``height`` of the rise behind the low point in m, ``oil_density`` in kg/m3. Valid for a line
    at rest. Source: hydrostatics.
    """
    return oil_density * STANDARD_GRAVITY * height


@equation(
    "h",
    "h = Δp / (ρ g)",
    unit="m",
    source="Hydrostatics",
    pressure_difference="Δp [Pa]",
    oil_density="ρ [kg/m3]",
)
def oil_lift(pressure_difference: float, oil_density: float) -> float:
    """Height ``h`` to which a pressure difference in Pa lifts oil in a line with a wet mouth, in m.

    ``oil_density`` in kg/m3. Valid for a line at rest. Source: hydrostatics.
    """
    return pressure_difference / (oil_density * STANDARD_GRAVITY)


@equation(
    "h",
    "h = max over the low points of (lower of the highest points on either side - low point)",
    unit="m",
    source="Hydrostatics of communicating vessels",
    rises="Δz [m]",
)
def trapped_depth(rises: tuple[float, ...]) -> float:
    """Depth ``h`` of liquid that the deepest low loop of a line keeps, in m.

    ``rises`` of the stretches in turn, from the case outwards, in m; negative where one falls.
    Each stretch is taken as straight. What stands at either end drains into the case or out of
    the line. Source: hydrostatics.
    """
    heights = [0.0]
    for rise in rises:
        heights.append(heights[-1] + rise)
    return max(
        min(max(heights[: index + 1]), max(heights[index:])) - height
        for index, height in enumerate(heights)
    )
