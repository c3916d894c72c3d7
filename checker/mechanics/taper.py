"""A tapered seat: torque, pressure on the hub, and the couple that lifts an end of it."""

import math

from checker.mechanics.equation import OutOfRange, equation

_COULOMB = "derived: Coulomb friction"


@equation(
    "T_f",
    "T_f = μ F d_m / (2 (sin α + μ cos α))",
    unit="N m",
    source=_COULOMB,
    friction="μ [1]",
    force="F [N]",
    mean_diameter="d_m [m]",
    half_angle="α [rad]",
)
def taper_torque(friction: float, force: float, mean_diameter: float, half_angle: float) -> float:
    """Torque of a taper of half angle α that a nut pulls up with a force F.

    Raises:
        OutOfRange: half angle not between 0 and 90 deg, or no force.
    """
    return friction * _normal(friction, force, half_angle) * mean_diameter / 2.0


@equation(
    "p",
    "p = F cos α / ((sin α + μ cos α) π d_m L)",
    unit="Pa",
    source=f"{_COULOMB}; even pressure on a seat of the area π d_m L/cos α",
    friction="μ [1]",
    force="F [N]",
    mean_diameter="d_m [m]",
    half_angle="α [rad]",
    length="L [m]",
)
def taper_pressure(
    friction: float, force: float, mean_diameter: float, half_angle: float, length: float
) -> float:
    """Mean pressure p [Pa] on a tapered seat of length L [m] along the shaft.

    Raises:
        OutOfRange: half angle not between 0 and 90 deg, or no force.
    """
    normal = _normal(friction, force, half_angle)
    return normal * math.cos(half_angle) / (math.pi * mean_diameter * length)


def _normal(friction: float, force: float, half_angle: float) -> float:
    if not 0.0 < half_angle < math.pi / 2.0:
        raise OutOfRange("half_angle must be above 0 and below 90 deg")
    if force <= 0.0:
        raise OutOfRange("force must be above zero: nothing holds the hub on its taper")
    return force / (math.sin(half_angle) + friction * math.cos(half_angle))


@equation(
    "d_b",
    "d_b = d_m + L tan α",
    unit="m",
    source="geometry of a cone",
    mean_diameter="d_m [m]",
    length="L [m]",
    half_angle="α [rad]",
)
def large_end(mean_diameter: float, length: float, half_angle: float) -> float:
    """Diameter d_b [m] of the thick end of a taper, where the wall of its hub is thinnest."""
    return mean_diameter + length * math.tan(half_angle)


@equation(
    "F_s",
    "F_s = F_V − F_x, F_x where it pulls",
    unit="N",
    source="statics: a thrust that pulls the hub off its seat takes from the force of the nut",
    preload="F_V [N]",
    thrust="F_x [N]",
)
def seating_force(preload: float, thrust: float) -> float:
    """Force F_s [N] that holds a hub on its taper while a thrust pulls at it.

    On the careful side: the nut stretches with the hub and gives up only a part of it.
    """
    return preload - max(0.0, thrust)


@equation(
    "p_M",
    "p_M = 12 |M| / (π d_m L²)",
    unit="Pa",
    source="derived: ∫ p_M (2x/L) cos θ · x cos θ · d_m/2 dθ dx over a stiff seat",
    moment="M [N m]",
    mean_diameter="d_m [m]",
    length="L [m]",
)
def couple_pressure(moment: float, mean_diameter: float, length: float) -> float:
    """Pressure p_M [Pa] that a couple M [N m] across the shaft adds at the ends of a seat.

    It grows along the seat from its middle and goes with cos θ around. Where it reaches the mean
    pressure, the seat gapes at one end. Leaves out what the slope of the taper bears endways, a
    share of tan²α: for half angles up to some 10 deg.
    """
    return 12.0 * abs(moment) / (math.pi * mean_diameter * length**2)


@equation(
    "x_m",
    "x_m = (x₁ + x₂) / 2",
    unit="m",
    source="definition",
    start="x₁ [m]",
    end="x₂ [m]",
)
def middle(start: float, end: float) -> float:
    """Middle of a seat along the shaft."""
    return (start + end) / 2.0
