"""What seals, pump, an overrunning clutch and a damper turn into heat."""

import math

from checker.mechanics import coupling
from checker.mechanics.equation import OutOfRange, equation


@equation(
    "P_s",
    "P_s = N_lip max(T ω, (145 - 1.6 t + 350 lg lg(ν_40 + 0.8)) d² n 1e-7); T = 3.737e-3 d FKM and "
    "others, 2.429e-3 d NBR and HNBR; N m, °C, mm²/s, mm, rpm",
    unit="W",
    source="ISO/TR 14179-1 by lip material and -2 by oil, each whole, the larger (from memory)",
    lips="N_lip [1]",
    material="material []",
    diameter="d [m]",
    speed="ω [rad/s]",
    viscosity_40="ν_40 [m2/s]",
    oil_temperature="T [K]",
)
def lip_loss(
    lips: int,
    material: str,
    diameter: float,
    speed: float,
    viscosity_40: float,
    oil_temperature: float,
) -> float:
    """Friction power ``P_s`` of the lips of a radial seal, in W, good to half or double.

    SI arguments. The two parts of the report give whole formulas of their own that differ by up
    to two: the larger is taken. Source: ISO/TR 14179-1 and -2 (from memory).
    """
    by_material = lip_loss_by_material(material, diameter, speed)
    return lips * max(by_material, lip_loss_by_oil(diameter, speed, viscosity_40, oil_temperature))


@equation(
    "P_s",
    "P_s = T ω, T = 3.737e-3 d FKM and others, 2.429e-3 d NBR and HNBR; N m, mm",
    unit="W",
    source="ISO/TR 14179-1 (from memory)",
    material="material []",
    diameter="d [m]",
    speed="ω [rad/s]",
)
def lip_loss_by_material(material: str, diameter: float, speed: float) -> float:
    """Friction power ``P_s`` of one lip by its material, in W.

    ``diameter`` in m, ``speed`` in rad/s. Source: ISO/TR 14179-1 (from memory).
    """
    per_millimetre = 2.429e-3 if material in ("NBR", "HNBR") else 3.737e-3
    return per_millimetre * diameter * 1.0e3 * speed


@equation(
    "P_s",
    "P_s = (145 - 1.6 t + 350 lg lg(ν_40 + 0.8)) d² n 1e-7, °C, mm²/s, mm, rpm",
    unit="W",
    source="ISO/TR 14179-2 (from memory)",
    diameter="d [m]",
    speed="ω [rad/s]",
    viscosity_40="ν_40 [m2/s]",
    oil_temperature="T [K]",
)
def lip_loss_by_oil(
    diameter: float, speed: float, viscosity_40: float, oil_temperature: float
) -> float:
    """Friction power ``P_s`` of one lip by the oil, in W; not below zero in hot thin oil.

    SI arguments. Source: ISO/TR 14179-2 (from memory).
    """
    thickness = 350.0 * math.log10(math.log10(viscosity_40 * 1.0e6 + 0.8))
    level = 145.0 - 1.6 * (oil_temperature - 273.15) + thickness
    return max(level, 0.0) * (diameter * 1.0e3) ** 2 * speed * 30.0 / math.pi * 1.0e-7


@equation(
    "P_p",
    "P_p = Q Δp/η_p",
    unit="W",
    source="Definition",
    flow="Q [m3/s]",
    pressure="Δp [Pa]",
    efficiency="η_p [1]",
)
def pump_loss(flow: float, pressure: float, efficiency: float) -> float:
    """Power ``P_p`` that an oil pump takes, all of which ends in the oil, in W.

    ``flow`` in m3/s, ``pressure`` in Pa. Source: definition.

    Raises:
        OutOfRange: ``efficiency`` is not within 0 to 1.
    """
    if not 0.0 < efficiency <= 1.0:
        raise OutOfRange(f"efficiency {efficiency:g} is outside 0 to 1")
    return flow * pressure / efficiency


@equation(
    "P_c",
    "P_c = T_drag |ω_a - ω_b|",
    unit="W",
    source="Definition",
    drag="T_drag [N m]",
    one_speed="ω_a [rad/s]",
    other_speed="ω_b [rad/s]",
)
def overrunning_loss(drag: float, one_speed: float, other_speed: float) -> float:
    """Heat ``P_c`` of a one-way clutch whose elements slide, in W; 0 while it grips.

    ``drag`` in N m, speeds of its two sides in rad/s. Source: definition.
    """
    return drag * abs(one_speed - other_speed)


@equation(
    "P_d",
    "P_d = P",
    unit="W",
    source="what the damper takes out of the vibration goes into the oil that wets it",
    vibration="P [W]",
)
def damper_heat(vibration: float) -> float:
    """Heat ``P_d`` that a wetted damper gives to the oil, in W."""
    return vibration


@equation(
    "P_d",
    "P_d ≤ min(P_rated, ψ T_a² f/(2 k)), T_a the vibratory rating, f the firing frequency",
    unit="W",
    source="DIN 740-2 with the ratings of the damper as its most (from memory)",
    heat_rating="P_rated [W]",
    relative_damping="ψ [1]",
    vibratory_rating="T_a [N m]",
    firings="N_f [1]",
    crank_speed="ω_e [rad/s]",
    stiffness="k [N m/rad]",
)
def damper_heat_at_most(
    heat_rating: float,
    relative_damping: float,
    vibratory_rating: float,
    firings: float,
    crank_speed: float,
    stiffness: float,
) -> float:
    """Most heat ``P_d`` that a damper within its own ratings makes, in W.

    ``firings`` per revolution of the crank at ``crank_speed`` in rad/s. Source: DIN 740-2 (from
    memory).
    """
    frequency = firings * crank_speed / (2.0 * math.pi)
    made = coupling.heat(relative_damping, frequency, vibratory_rating, stiffness)
    return min(heat_rating, made)
