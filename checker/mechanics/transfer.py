"""What moves air and oil out of a gear case, into it and between it and the engine."""

import math

from checker.mechanics.air import STANDARD_GRAVITY
from checker.mechanics.equation import OutOfRange, equation

# Most that a pipe end takes of the dynamic pressure (handbooks of airspeed systems, from memory).
_FACING = {"forward": 1.0, "across": -1.0, "aft": -1.0, "sheltered": 0.0}
_ORIFICE = 0.6  # discharge of a sharp gap (handbook value, from memory)


@equation(
    "v_s",
    "v_s = √(w² + 2 T/(ρ π D²/4)), T not below 0",
    unit="m/s",
    source="Momentum theory of the propeller, far behind the disc",
    airspeed="w [m/s]",
    thrust="T [N]",
    diameter="D [m]",
    density="ρ [kg/m3]",
)
def slipstream_speed(airspeed: float, thrust: float, diameter: float, density: float) -> float:
    """Speed ``v_s`` of a fully grown slipstream, in m/s: the most that a part behind it meets.

    SI arguments; a braking propeller leaves the airspeed. Source: momentum theory.

    Raises:
        OutOfRange: ``diameter`` or ``density`` is not positive.
    """
    if diameter <= 0.0 or density <= 0.0:
        raise OutOfRange("diameter and density of a slipstream must be positive")
    added = 2.0 * max(thrust, 0.0) / (density * math.pi * diameter**2 / 4.0)
    return math.sqrt(airspeed**2 + added)


@equation(
    "p_out",
    "p_out = c ρ v_s²/2; c = 1 facing forward, -1 aft and across the stream, 0 sheltered",
    unit="Pa",
    source="Bernoulli; the most of each sign for a pipe end in a stream (from memory)",
    facing="outlet faces []",
    speed="v_s [m/s]",
    density="ρ [kg/m3]",
)
def outlet_pressure(facing: str, speed: float, density: float) -> float:
    """Pressure ``p_out`` at the end of a pipe in a stream, over the still air, in Pa.

    ``facing`` is forward, across, aft or sheltered; ``speed`` in m/s. Source: Bernoulli.

    Raises:
        OutOfRange: ``facing`` is none of the four.
    """
    if facing not in _FACING:
        raise OutOfRange(f"facing {facing!r} is none of {', '.join(_FACING)}")
    return _FACING[facing] * density * speed**2 / 2.0


@equation(
    "Q_s",
    "Q_s = (|Δp| - ρ g z_max) / Σ 128 η L/(π d⁴), not below 0",
    unit="m3/s",
    source="Hagen-Poiseuille along the line, hydrostatics over its top",
    pressure="Δp [Pa]",
    rise="z_max [m]",
    density="ρ [kg/m3]",
    dynamic_viscosity="η [Pa s]",
    bores="d [m]",
    lengths="L [m]",
)
def siphon_flow(
    pressure: float,
    rise: float,
    density: float,
    dynamic_viscosity: float,
    bores: tuple[float, ...],
    lengths: tuple[float, ...],
) -> float:
    """Flow ``Q_s`` of oil that a pressure draws along a line with a wet mouth, in m3/s.

    ``rise`` of its highest point over the mouth in m. Laminar, without single losses: the most.
    Source: Hagen-Poiseuille.

    Raises:
        OutOfRange: a bore is not positive, or the line has no length.
    """
    if min(bores, default=0.0) <= 0.0 or sum(lengths) <= 0.0:
        raise OutOfRange("the line has no length, or a bore of it is not open")
    driving = abs(pressure) - density * STANDARD_GRAVITY * rise
    resistance = sum(
        128.0 * dynamic_viscosity * length / (math.pi * bore**4)
        for bore, length in zip(bores, lengths, strict=True)
    )
    return max(driving, 0.0) / resistance


@equation(
    "Q_l",
    "Q_l = ± 0.6 π d g √(2 |Δp|/ρ), the sign of Δp",
    unit="m3/s",
    source="Sharp-edged orifice (handbooks)",
    pressure="Δp [Pa]",
    diameter="d [m]",
    gap="g [m]",
    density="ρ [kg/m3]",
)
def leak_flow(pressure: float, diameter: float, gap: float, density: float) -> float:
    """Flow ``Q_l`` through the gap round a shaft, in m3/s; outwards is positive.

    ``gap`` radial in m, ``density`` of what flows. The most: a land or steps resist besides.
    Source: orifice formula.

    Raises:
        OutOfRange: ``density`` is not positive or ``gap`` negative.
    """
    if density <= 0.0 or gap < 0.0:
        raise OutOfRange(f"gap {gap:g} m and density {density:g} kg/m³ leak nothing")
    speed = math.sqrt(2.0 * abs(pressure) / density)
    return math.copysign(_ORIFICE * math.pi * diameter * gap * speed, pressure)


@equation(
    "x_h",
    "x_h = |Q| 3600 s/V_oil",
    unit="1",
    source="Definition",
    flow="Q [m3/s]",
    fill="V_oil [m3]",
)
def share_in_an_hour(flow: float, fill: float) -> float:
    """Share ``x_h`` of the oil of a drive that a flow moves in an hour.

    Raises:
        OutOfRange: the drive holds no oil.
    """
    if fill <= 0.0:
        raise OutOfRange(f"fill {fill:g} m³: the drive holds no oil")
    return abs(flow) * 3600.0 / fill


@equation(
    "Δp",
    "Δp = |p|",
    unit="Pa",
    source="Definition",
    pressure="p [Pa]",
)
def pressure_size(pressure: float) -> float:
    """Size of a pressure difference of either sign, in Pa."""
    return abs(pressure)
