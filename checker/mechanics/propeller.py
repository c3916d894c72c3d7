"""The propeller in its air: tip speed, thrust, advance ratio and power coefficient; its inertia.

Angular speeds are those of the propeller, never of the engine.
"""

import math

from checker.mechanics.equation import OutOfRange, equation

_DISC = "Rankine-Froude actuator disc"


@equation(
    "v_tip",
    "v_tip = ω D / 2",
    unit="m/s",
    source="kinematics",
    diameter="D [m]",
    angular_speed="ω [rad/s]",
)
def tip_speed(diameter: float, angular_speed: float) -> float:
    """Speed of the blade tips about the axis [m/s], for diameter D [m] and ω [rad/s].

    Source: kinematics.
    """
    return angular_speed * diameter / 2


@equation(
    "v_helical",
    "v_helical = √((ω D / 2)² + V²)",
    unit="m/s",
    source="kinematics",
    diameter="D [m]",
    angular_speed="ω [rad/s]",
    airspeed="V [m/s]",
)
def helical_tip_speed(diameter: float, angular_speed: float, airspeed: float) -> float:
    """Speed of the blade tips through the air [m/s], at true airspeed V [m/s].

    Source: kinematics.
    """
    return math.hypot(tip_speed(diameter, angular_speed), airspeed)


@equation(
    "Ma_tip",
    "Ma_tip = √((ω D / 2)² + V²) / a",
    unit="1",
    source="kinematics",
    diameter="D [m]",
    angular_speed="ω [rad/s]",
    airspeed="V [m/s]",
    speed_of_sound="a [m/s]",
)
def helical_tip_mach(
    diameter: float, angular_speed: float, airspeed: float, speed_of_sound: float
) -> float:
    """Helical tip speed over the speed of sound a [m/s]; to be taken in the coldest, highest air.

    Source: kinematics.
    """
    return helical_tip_speed(diameter, angular_speed, airspeed) / speed_of_sound


@equation(
    "A",
    "A = π D² / 4",
    unit="m2",
    source="definition",
    diameter="D [m]",
)
def disc_area(diameter: float) -> float:
    """Area A [m²] swept by a propeller of diameter D [m]. Source: definition."""
    return math.pi * diameter**2 / 4


@equation(
    "T/A",
    "T/A = 4 T / (π D²)",
    unit="Pa",
    source=_DISC,
    thrust="T [N]",
    diameter="D [m]",
)
def disc_loading(thrust: float, diameter: float) -> float:
    """Thrust T [N] per swept area: the rise of pressure [Pa] through the disc.

    Source: actuator disc.
    """
    return thrust / disc_area(diameter)


@equation(
    "w",
    "w² (w − V) = P / (2 ρ A)",
    unit="m/s",
    source=_DISC,
    power="P [W]",
    airspeed="V [m/s]",
    diameter="D [m]",
    density="ρ [kg/m3]",
)
def disc_speed(power: float, airspeed: float, diameter: float, density: float) -> float:
    """Speed w [m/s] of the air through the disc of an ideal propeller that takes up power P [W].

    The airspeed V [m/s] plus the induced speed. The cubic has one real root above V; it is taken
    in Cardano's form, in which nothing cancels.

    Source: actuator disc, P = T w and T = 2 ρ A w (w − V). Valid for forward flight and at rest.

    Raises:
        OutOfRange: power not above zero, or flight backwards.
    """
    if power <= 0:
        raise OutOfRange("the power is not above zero: the disc would take energy from the air")
    if airspeed < 0:
        raise OutOfRange("the airspeed is below zero")
    third = airspeed / 3
    half = power / (4 * density * disc_area(diameter))
    root = math.cbrt(third**3 + half + math.sqrt(half * (half + 2 * third**3)))
    return third + root + third**2 / root


@equation(
    "w",
    "w = V/2 + √(V²/4 + T/(2 ρ A)); w = V where T < 0",
    unit="m/s",
    source=_DISC,
    thrust="T [N]",
    airspeed="V [m/s]",
    diameter="D [m]",
    density="ρ [kg/m3]",
)
def disc_speed_of_thrust(thrust: float, airspeed: float, diameter: float, density: float) -> float:
    """Speed w [m/s] of the air through the disc that gives a thrust T [N]; V [m/s], ρ [kg/m³].

    A propeller that brakes slows the air; it is taken as undisturbed there, which is more.

    Source: actuator disc, T = 2 ρ A w (w − V).

    Raises:
        OutOfRange: flight backwards.
    """
    if airspeed < 0:
        raise OutOfRange("the airspeed is below zero")
    pressure = max(thrust, 0.0) / (2 * density * disc_area(diameter))
    return airspeed / 2 + math.sqrt(airspeed**2 / 4 + pressure)


@equation(
    "T",
    "T = P / w, with w² (w − V) = P / (2 ρ A)",
    unit="N",
    source=_DISC,
    power="P [W]",
    airspeed="V [m/s]",
    diameter="D [m]",
    density="ρ [kg/m3]",
)
def ideal_thrust(power: float, airspeed: float, diameter: float, density: float) -> float:
    """Thrust T [N] of an ideal propeller in flight: an upper bound; symbols as in the disc speed.

    Source: actuator disc.

    Raises:
        OutOfRange: power not above zero, or flight backwards.
    """
    return power / disc_speed(power, airspeed, diameter, density)


@equation(
    "J",
    "J = 2 π V / (ω D)",
    unit="1",
    source="definition",
    airspeed="V [m/s]",
    angular_speed="ω [rad/s]",
    diameter="D [m]",
)
def advance_ratio(airspeed: float, angular_speed: float, diameter: float) -> float:
    """Advance ratio J: way flown in one revolution over the diameter.

    Source: definition.

    Raises:
        OutOfRange: the propeller does not turn.
    """
    if angular_speed <= 0:
        raise OutOfRange("the propeller does not turn")
    return math.tau * airspeed / (angular_speed * diameter)


@equation(
    "C_P",
    "C_P = P / (ρ (ω / 2 π)³ D⁵)",
    unit="1",
    source="definition",
    power="P [W]",
    density="ρ [kg/m3]",
    angular_speed="ω [rad/s]",
    diameter="D [m]",
)
def power_coefficient(power: float, density: float, angular_speed: float, diameter: float) -> float:
    """Power coefficient C_P of a propeller.

    Source: definition.

    Raises:
        OutOfRange: the propeller does not turn.
    """
    if angular_speed <= 0:
        raise OutOfRange("the propeller does not turn")
    return power / (density * (angular_speed / math.tau) ** 3 * diameter**5)


@equation(
    "I_rod",
    "I_rod = m D² / 12",
    unit="kg m2",
    source="uniform slender rod, derived",
    mass="m [kg]",
    diameter="D [m]",
)
def slender_rod_inertia(mass: float, diameter: float) -> float:
    """Polar inertia [kg·m²] if the mass m [kg] lay evenly along the blades: an upper bound.

    It holds for any number of equal blades. Real blades are heavier inboard; a stated inertia
    above it points to a slip of units.

    Source: uniform slender rod, derived.
    """
    return mass * diameter**2 / 12
