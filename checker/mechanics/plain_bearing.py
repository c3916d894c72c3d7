"""Pressure and rubbing of a plain bearing and its thrust face.

The oil film itself is not computed: mean pressure and pressure times speed are held against what
the maker of the lining allows, which is how bushes of small machines are chosen.
"""

import math

from checker.mechanics.equation import OutOfRange, equation

_PRACTICE = "textbook practice for bushes (from memory)"


@equation(
    "p",
    "p = F_r / (d B)",
    unit="Pa",
    source=_PRACTICE,
    radial="F_r [N]",
    bore="d [m]",
    width="B [m]",
)
def mean_pressure(radial: float, bore: float, width: float) -> float:
    """Mean pressure on the projected area of a bush. Valid for any size above zero."""
    return radial / (bore * width)


@equation(
    "A",
    "A = π (D_t² − d²) / 4",
    unit="m2",
    source="geometry of a ring",
    outside="D_t [m]",
    bore="d [m]",
)
def thrust_face(outside: float, bore: float) -> float:
    """Area of a thrust face that reaches from the bore outwards.

    Raises:
        OutOfRange: the face does not reach beyond the bore.
    """
    if outside <= bore:
        raise OutOfRange("thrust_outside must be above the bore: there is no face")
    return math.pi * (outside**2 - bore**2) / 4.0


@equation(
    "F_a,max",
    "F_a,max = p_lim A",
    unit="N",
    source=_PRACTICE,
    pressure="p_lim [Pa]",
    area="A [m2]",
)
def axial_limit(pressure: float, area: float) -> float:
    """Axial load at which the mean pressure on a thrust face reaches its limit."""
    return pressure * area


@equation(
    "p_a",
    "p_a = F_a / A",
    unit="Pa",
    source=_PRACTICE,
    axial="F_a [N]",
    area="A [m2]",
)
def face_pressure(axial: float, area: float) -> float:
    """Mean pressure on a thrust face."""
    return axial / area


@equation(
    "p v",
    "p v = p ω d / 2",
    unit="W/m2",
    source=_PRACTICE,
    pressure="p [Pa]",
    speed="ω [rad/s]",
    diameter="d [m]",
)
def pressure_speed(pressure: float, speed: float, diameter: float) -> float:
    """Pressure times sliding speed: the heat of a square metre over its coefficient of friction.

    Of a thrust face the diameter is the mean one.
    """
    return pressure * abs(speed) * diameter / 2.0
