"""One-way clutch of sprags or rollers: grip, torque capacity, overrunning and lift-off.

A margin here is a ratio that is 1 at the limit and larger when better. The gripping angle is always
the single angle between the line through the two contacts and the radius; of a roller between a
ramp and a race it is half the angle that the two surfaces enclose.
"""

import math

from checker.mechanics.equation import OutOfRange, equation

_GRIP = "Nagler & Lohrengel, Forschung im Ingenieurwesen 85 (2021), Eq. (1)"
_SPEED = "kinematics"
# Share of the summed capacity that clutches side by side can use.
_USABLE = {1: 1.0, 2: 0.9, 3: 0.8}


@equation(
    "S_g",
    "S_g = μ / tan α",
    unit="1",
    source=_GRIP,
    friction="μ [1]",
    gripping_angle="α [rad]",
)
def grip_margin(friction: float, gripping_angle: float) -> float:
    """Friction at hand over friction needed; the elements slip where it is below 1.

    μ is the lowest friction to be expected in oil, α [rad] the gripping angle at that torque.

    Source: Nagler & Lohrengel (2021), Eq. (1): tan α = F_t/F_n ≤ μ.

    Raises:
        OutOfRange: gripping angle not between 0 and 90 deg.
    """
    return friction / _tangent(gripping_angle)


@equation(
    "F_n",
    "F_n = T / (z r tan α)",
    unit="N",
    source="derived: equilibrium of one element",
    torque="T [N m]",
    elements="z [1]",
    race_radius="r [m]",
    gripping_angle="α [rad]",
)
def element_normal_force(
    torque: float, elements: int, race_radius: float, gripping_angle: float
) -> float:
    """Force F_n [N] of each of z elements on a race of radius r [m] at torque T [N·m].

    α [rad] is the gripping angle at that race; equal sharing is assumed. To be taken at the peak
    torque: the contact pressure grows as √T.

    Source: derived.

    Raises:
        OutOfRange: gripping angle not between 0 and 90 deg.
    """
    return torque / (elements * race_radius * _tangent(gripping_angle))


@equation(
    "T_cap",
    "T_cap = z r F_n tan α",
    unit="N m",
    source="derived: equilibrium of one element",
    elements="z [1]",
    race_radius="r [m]",
    gripping_angle="α [rad]",
    normal="F_n [N]",
)
def torque_capacity(
    elements: int, race_radius: float, gripping_angle: float, normal: float
) -> float:
    """Torque [N·m] at which each of z elements presses with F_n [N] on a race of radius r [m].

    F_n is the force at the allowed contact pressure (``hertz.line_contact_force``), α [rad] the
    gripping angle at that race. The inner race, convex and smaller, usually governs.

    Source: derived.

    Raises:
        OutOfRange: gripping angle not between 0 and 90 deg.
    """
    return elements * race_radius * normal * _tangent(gripping_angle)


@equation(
    "k_n",
    "k_n = table(n)",
    unit="1",
    source="sprag-clutch maker's engineering page, trade source",
    clutches="n [1]",
)
def usable_fraction_side_by_side(clutches: int) -> float:
    """Share of the summed capacity that n clutches side by side can use: they share unevenly.

    Source: trade source. Valid for one to three clutches.

    Raises:
        OutOfRange: more clutches than the source covers.
    """
    if clutches not in _USABLE:
        raise OutOfRange(f"no usable share is known for {clutches} clutches side by side")
    return _USABLE[clutches]


@equation(
    "T_use",
    "T_use = k_n T_r",
    unit="N m",
    source="sprag-clutch maker's engineering page, trade source",
    rated="T_r [N m]",
    usable_fraction="k_n [1]",
)
def usable_torque(rated: float, usable_fraction: float) -> float:
    """Torque T_use [N m] of clutches side by side whose rated torques sum up to T_r [N m].

    k_n is the share that ``usable_fraction_side_by_side`` gives.

    Source: trade source.
    """
    return usable_fraction * rated


@equation(
    "T_row",
    "T_row = T / (n k_n)",
    unit="N m",
    source="derived from the usable share of the sum",
    torque="T [N m]",
    clutches="n [1]",
    usable_fraction="k_n [1]",
)
def most_loaded_row_torque(torque: float, clutches: int, usable_fraction: float) -> float:
    """Torque T_row [N m] of the most loaded of n clutches side by side that carry T [N m] together.

    Source: derived from the usable share k_n of the sum.
    """
    return torque / (clutches * usable_fraction)


@equation(
    "S_T",
    "S_T = T_cap / (K T_peak)",
    unit="1",
    source="common practice, no source",
    capacity="T_cap [N m]",
    service_factor="K [1]",
    peak="T_peak [N m]",
)
def engagement_torque_margin(capacity: float, service_factor: float, peak: float) -> float:
    """Torque capacity over the peak torque [N·m] times a service factor K.

    The peak torque is that of ``engine.peak_torque``, at the clutch. K covers what the peak does
    not hold (engagement blow, unequal sharing, scatter), not the pulsation again.

    Source: common practice, no source.

    Raises:
        OutOfRange: no torque to carry.
    """
    if service_factor * peak <= 0:
        raise OutOfRange("the peak torque is not above zero: there is no torque to carry")
    return capacity / (service_factor * peak)


@equation(
    "Δω",
    "Δω = ω_driven − ω_driving",
    unit="rad/s",
    source=_SPEED,
    driven_speed="ω_driven [rad/s]",
    driving_speed="ω_driving [rad/s]",
)
def overrun_speed(driven_speed: float, driving_speed: float) -> float:
    """Relative speed Δω [rad/s] of the races; negative where the clutch grips and drives.

    Both speeds are those of the clutch's own shaft: a propeller behind the ratio i turns the driven
    race of a clutch on the pinion shaft i times as fast. With the engine stopped ω_driving is zero.

    Source: kinematics.
    """
    return driven_speed - driving_speed


@equation(
    "v_s",
    "v_s = r Δω",
    unit="m/s",
    source=_SPEED,
    race_radius="r [m]",
    relative_speed="Δω [rad/s]",
)
def race_sliding_speed(race_radius: float, relative_speed: float) -> float:
    """Sliding speed v_s [m/s] of the elements on a race of radius r [m] while overrunning.

    Source: kinematics. Valid while the elements touch the race: not above their lift-off speed.
    """
    return race_radius * relative_speed


@equation(
    "S_lift",
    "S_lift = ω / ω_lift",
    unit="1",
    source=_SPEED,
    carrier_speed="ω [rad/s]",
    lift_off_speed="ω_lift [rad/s]",
)
def overrun_lift_off_margin(carrier_speed: float, lift_off_speed: float) -> float:
    """How far lift-off elements are above their lift-off speed while overrunning.

    ω [rad/s] is the speed of the race that carries the elements round. Below 1 they drag.

    Source: kinematics; the lift-off speed [rad/s] is the maker's.
    """
    return carrier_speed / lift_off_speed


@equation(
    "S_drive",
    "S_drive = ω_lift / ω",
    unit="1",
    source=_SPEED,
    lift_off_speed="ω_lift [rad/s]",
    carrier_speed="ω [rad/s]",
)
def drive_lift_off_margin(lift_off_speed: float, carrier_speed: float) -> float:
    """How far lift-off elements stay below their lift-off speed while driving.

    Below 1 they have left the race and take up no torque. A propeller drive turns the same race
    faster when it drives than when it windmills, so it can hardly have both this margin and that
    of the overrun above 1.

    Source: kinematics; the lift-off speed [rad/s] is the maker's.

    Raises:
        OutOfRange: the race that carries the elements is at rest.
    """
    if carrier_speed <= 0:
        raise OutOfRange(
            "the part that carries the elements does not turn: at rest nothing lifts them"
        )
    return lift_off_speed / carrier_speed


@equation(
    "S_e",
    "S_e = ω_min / ω_e",
    unit="1",
    source=_SPEED,
    lowest_driving_speed="ω_min [rad/s]",
    engagement_speed="ω_e [rad/s]",
)
def engagement_speed_margin(lowest_driving_speed: float, engagement_speed: float) -> float:
    """How far the lowest driving speed is above the speed at which rotation engages the elements.

    Only for elements that their own rotation presses on the race. Below 1 they may slip at idle.

    Source: kinematics; the engagement speed [rad/s] is the maker's.
    """
    return lowest_driving_speed / engagement_speed


@equation(
    "ΔT",
    "ΔT = T_start − T_min",
    unit="ΔK",
    source="definition",
    start="T_start [K]",
    lowest="T_min [K]",
)
def cold_start_reserve(start: float, lowest: float) -> float:
    """How far the coldest oil [K] at a start is above the lowest the clutch may have [K].

    Source: definition.
    """
    return start - lowest


@equation(
    "p",
    "p = z F_n / (2 π r b)",
    unit="Pa",
    source="derived: element forces spread evenly over the race, an estimate",
    elements="z [1]",
    normal="F_n [N]",
    race_radius="r [m]",
    width="b [m]",
)
def race_pressure(elements: int, normal: float, race_radius: float, width: float) -> float:
    """Even pressure p [Pa] that stands for z element forces F_n [N] on a race of width b [m].

    An estimate: it leaves out the bending of the ring between few elements.

    Source: derived.
    """
    return elements * normal / (math.tau * race_radius * width)


@equation(
    "σ_h",
    "σ_h = p (r_o² + r_i²) / (r_o² − r_i²)",
    unit="Pa",
    source="Lamé, thick ring under internal pressure",
    pressure="p [Pa]",
    inner_radius="r_i [m]",
    outer_radius="r_o [m]",
)
def outer_race_hoop_stress(pressure: float, inner_radius: float, outer_radius: float) -> float:
    """Hoop stress σ_h [Pa] at the bore of an outer race under pressure p [Pa] from within.

    An estimate as the pressure is one; spin and an interference fit come on top.

    Source: Lamé. Valid for a ring of uniform section.

    Raises:
        OutOfRange: no wall between the radii [m].
    """
    if outer_radius <= inner_radius:
        raise OutOfRange("the outer radius of the race is not above the inner one: it has no wall")
    return pressure * (outer_radius**2 + inner_radius**2) / (outer_radius**2 - inner_radius**2)


def _tangent(gripping_angle: float) -> float:
    if not 0 < gripping_angle < math.pi / 2:
        raise OutOfRange("the gripping angle is not above 0 and below 90 deg")
    return math.tan(gripping_angle)
