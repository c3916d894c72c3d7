"""Lateral critical speed of a shaft with masses, by Rayleigh and by Dunkerley.

Rayleigh's is a little high, Dunkerley's low: the first critical speed lies between. The gyroscopic
stiffening of a disc is left out, which is on the low side for a forward whirl.
"""

import math
from collections.abc import Sequence

from checker.mechanics.equation import OutOfRange, equation

_GRAVITY = 9.80665


@equation(
    "ω_1",
    "ω_1 = √(g Σ m y / Σ m y²)",
    unit="rad/s",
    source="Rayleigh; Shigley's Mechanical Engineering Design, Eq. 7-23",
    masses="m [kg]",
    sags="y [m]",
)
def rayleigh_speed(masses: Sequence[float], sags: Sequence[float]) -> float:
    """First critical speed from the sag y of each mass under the weight of all.

    Raises:
        OutOfRange: no mass that sags.
    """
    first = sum(mass * abs(sag) for mass, sag in zip(masses, sags, strict=True))
    second = sum(mass * sag**2 for mass, sag in zip(masses, sags, strict=True))
    if second <= 0.0:
        raise OutOfRange("sags: no mass bends the shaft")
    return math.sqrt(_GRAVITY * first / second)


@equation(
    "ω_1",
    "1/ω_1² = Σ m δ",
    unit="rad/s",
    source="Dunkerley; Shigley's Mechanical Engineering Design, Eq. 7-32",
    masses="m [kg]",
    flexibilities="δ [m/N]",
)
def dunkerley_speed(masses: Sequence[float], flexibilities: Sequence[float]) -> float:
    """First critical speed from the deflection δ of each place under a unit force there.

    Raises:
        OutOfRange: no mass on a place that gives.
    """
    total = sum(mass * give for mass, give in zip(masses, flexibilities, strict=True))
    if total <= 0.0:
        raise OutOfRange("flexibilities: no mass bends the shaft")
    return 1.0 / math.sqrt(total)


@equation(
    "m",
    "m = ρ π (D² − d²)/4 l, ρ = 7850 kg/m³",
    unit="kg",
    source="density of steel (from memory)",
    length="l [m]",
    outside="D [m]",
    inside="d [m]",
)
def section_mass(length: float, outside: float, inside: float) -> float:
    """Mass of a stretch of steel shaft."""
    return 7850.0 * math.pi / 4.0 * (outside**2 - inside**2) * length
