"""Loads that a propeller puts on its drive: tip speed, thrust, gyroscopic couple, unbalance.

Angular speeds are those of the propeller, never of the engine.
"""

import math

from checker.mechanics.equation import OutOfRange, equation

_DISC = "Rankine-Froude actuator disc"
_TWO_BLADES = 2


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
    "T_0",
    "T_0 = (2 ρ A)^⅓ (FM P)^⅔",
    unit="N",
    source=_DISC + ", static",
    power="P [W]",
    diameter="D [m]",
    density="ρ [kg/m3]",
    figure_of_merit="FM [1]",
)
def static_thrust(power: float, diameter: float, density: float, figure_of_merit: float) -> float:
    """Static thrust T_0 [N] from shaft power P [W] in air of density ρ [kg/m³].

    With FM = 1 it is an upper bound that no propeller reaches; 0.6 to 0.8 is realistic (from
    memory).

    Source: static actuator disc.

    Raises:
        OutOfRange: figure of merit not above 0 and at most 1.
    """
    if not 0 < figure_of_merit <= 1:
        raise OutOfRange(f"a figure of merit of {figure_of_merit:.4g} is not above 0 and at most 1")
    induced_power = figure_of_merit * power
    return math.cbrt(2 * density * disc_area(diameter) * induced_power**2)


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
    "η_i",
    "η_i = V / w",
    unit="1",
    source=_DISC,
    airspeed="V [m/s]",
    through_disc="w [m/s]",
)
def ideal_efficiency(airspeed: float, through_disc: float) -> float:
    """Efficiency η_i of an ideal propeller, from airspeed V and disc speed w [m/s].

    Source: actuator disc. No propeller of that diameter and power does better.
    """
    return airspeed / through_disc


@equation(
    "T",
    "T = η P / V",
    unit="N",
    source="definition of propeller efficiency",
    power="P [W]",
    airspeed="V [m/s]",
    efficiency="η [1]",
)
def thrust_from_efficiency(power: float, airspeed: float, efficiency: float) -> float:
    """Thrust T [N] of a propeller of known efficiency η at airspeed V [m/s].

    Source: definition of propeller efficiency.

    Raises:
        OutOfRange: no airspeed, at which the efficiency is zero whatever the thrust.
    """
    if airspeed <= 0:
        raise OutOfRange("the airspeed is not above zero: at rest the efficiency says nothing")
    return efficiency * power / airspeed


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
    "ω_turn",
    "ω_turn = √(ω_yaw² + ω_pitch²)",
    unit="rad/s",
    source="derived: yaw and pitch rates at once add as vectors",
    yaw_rate="ω_yaw [rad/s]",
    pitch_rate="ω_pitch [rad/s]",
)
def combined_turn_rate(yaw_rate: float, pitch_rate: float) -> float:
    """Turn rate [rad/s] of the propeller axis when yaw and pitch come at once.

    Source: derived.
    """
    return math.hypot(yaw_rate, pitch_rate)


@equation(
    "M_g",
    "M_g = I ω ω_turn, twice that for two blades",
    unit="N m",
    source="EASA AMC 23.371, amendment not stated in the copy read",
    inertia="I [kg m2]",
    angular_speed="ω [rad/s]",
    turn_rate="ω_turn [rad/s]",
    blades="N [1]",
)
def gyroscopic_couple(inertia: float, angular_speed: float, turn_rate: float, blades: int) -> float:
    """Peak gyroscopic couple M_g [N·m] of a propeller of polar inertia I [kg·m²].

    Steady in the airframe for three and more evenly spaced blades; with two it swings between zero
    and twice the value within half a turn. The turning shaft sees it fully reversed once a turn.

    Source: EASA AMC 23.371.

    Raises:
        OutOfRange: fewer than two blades.
    """
    if blades < _TWO_BLADES:
        raise OutOfRange(f"AMC 23.371 covers two blades and more, not {blades}")
    steady = inertia * angular_speed * turn_rate
    return 2 * steady if blades == _TWO_BLADES else steady


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
