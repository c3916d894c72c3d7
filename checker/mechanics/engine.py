"""Torque of a piston engine: its mean, the factor the regulations put on it, its firing orders.

The factor of the regulations already stands for the pulsation of the gas torque. It multiplies the
mean torque once; it is never put on top of a computed alternating torque.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from checker.mechanics.equation import OutOfRange, equation

FOUR_STROKE = 4
TWO_STROKE = 2
_STROKES = {"four-stroke": FOUR_STROKE, "two-stroke": TWO_STROKE}

# Printed angles are rounded (seven cylinders: 102.9 deg); half a degree covers a whole cycle.
_ANGLE_ROUNDING = math.radians(0.5)


@dataclass(frozen=True, slots=True)
class TorqueFactors:
    """Factor on the mean torque by number of cylinders, as one regulation lists it.

    Attributes:
        source: regulation, paragraph and amendment.
        strokes: the engines it is worded for, by strokes per cycle.
        factors: the factor by number of cylinders; that of the most cylinders holds for any more.
    """

    source: str
    strokes: tuple[int, ...]
    factors: dict[int, float]

    def factor(self, cylinders: int) -> float:
        """Return the factor on the mean torque of an engine that the table covers."""
        return self.factors[min(cylinders, max(self.factors))]


CS_VLA_FOUR_STROKE = TorqueFactors(
    "CS-VLA 361(b)(1), amendment not stated in the copy read",
    (FOUR_STROKE,),
    {1: 8.0, 2: 4.0, 3: 3.0, 4: 2.0, 5: 1.33},
)
CS_VLA_TWO_STROKE = TorqueFactors(
    "CS-VLA 361(b)(2), amendment not stated in the copy read",
    (TWO_STROKE,),
    {1: 6.0, 2: 3.0, 3: 2.0},
)
CFR_23 = TorqueFactors(
    "14 CFR 23.361(c) before Amdt 23-64",
    (FOUR_STROKE, TWO_STROKE),
    {2: 4.0, 3: 3.0, 4: 2.0, 5: 1.33},
)
CFR_27 = replace(CFR_23, source="14 CFR 27.361(b), Amdt 27-23 (1988)")
CS_22 = replace(CFR_23, source="CS 22.361(b), UK CAA retained text, ORS9 Decision No. 1")
_REGULATIONS = (CS_VLA_FOUR_STROKE, CS_VLA_TWO_STROKE, CFR_23, CFR_27, CS_22)


@equation(
    "T",
    "T = P / ω",
    unit="N m",
    source="definition of power",
    power="P [W]",
    angular_speed="ω [rad/s]",
)
def mean_torque(power: float, angular_speed: float) -> float:
    """Mean torque T [N·m] of a shaft that passes power P [W] at angular speed ω [rad/s].

    Source: definition of power. In trade units 30000/π = 9549.30 N·m·rpm/kW.

    Raises:
        OutOfRange: the shaft is at rest.
    """
    if angular_speed <= 0:
        raise OutOfRange("the shaft does not turn: at rest it passes no power")
    return power / angular_speed


@equation(
    "strokes",
    "strokes = 4 of a four-stroke, 2 of a two-stroke",
    unit="1",
    source="definition",
    cycle="cycle []",
)
def strokes_of(cycle: str) -> int:
    """Strokes per working cycle of an engine named four-stroke or two-stroke.

    Source: definition.

    Raises:
        OutOfRange: another word.
    """
    if cycle not in _STROKES:
        raise OutOfRange(f"the cycle is neither four-stroke nor two-stroke, but {cycle}")
    return _STROKES[cycle]


@equation(
    "k_T",
    "k_T = largest of the regulations' tables(cylinders, strokes)",
    unit="1",
    source="; ".join(table.source for table in _REGULATIONS),
    cylinders="z [1]",
    strokes="strokes [1]",
)
def torque_factor(cylinders: int, strokes: int) -> float:
    """Largest factor k_T on the mean torque that a regulation puts on an engine.

    CS-VLA alone covers one cylinder and tells two-strokes apart. Part 23, part 27 and CS-22 do not
    tell the strokes apart: they ask the same of a four-stroke, and more of a two-stroke of two or
    three cylinders. CS-VLA asks more of a two-stroke of five and more.

    Source: CS-VLA 361(b), 14 CFR 23.361(c) before Amdt 23-64, 14 CFR 27.361(b), CS 22.361(b). Valid
    for one cylinder and more.

    Raises:
        OutOfRange: no cylinder, or neither a two-stroke nor a four-stroke.
    """
    return max(table.factor(cylinders) for table in _that_cover(cylinders, strokes))


def source_of_torque_factor(cylinders: int, strokes: int) -> str:
    """Name every regulation that asks for the factor k_T: those that govern.

    Raises:
        OutOfRange: as for the factor.
    """
    governing = torque_factor(cylinders, strokes)
    return "; ".join(
        table.source
        for table in _that_cover(cylinders, strokes)
        if table.factor(cylinders) == governing
    )


def _that_cover(cylinders: int, strokes: int) -> list[TorqueFactors]:
    worded = [table for table in _REGULATIONS if strokes in table.strokes]
    if not worded:
        raise OutOfRange(f"no regulation gives a torque factor for {strokes} strokes per cycle")
    found = [table for table in worded if cylinders >= min(table.factors)]
    if not found:
        raise OutOfRange(f"no regulation gives a torque factor for {cylinders} cylinders")
    return found


@equation(
    "T_limit",
    "T_limit = k_T T",
    unit="N m",
    source="CS-VLA 361(b); 14 CFR 23.361(c) before Amdt 23-64; 14 CFR 27.361(b); CS 22.361(b)",
    mean="T [N m]",
    factor="k_T [1]",
)
def limit_torque(mean: float, factor: float) -> float:
    """Limit torque [N·m]: the factor k_T once on the mean torque T [N·m], and nothing besides.

    CS-VLA and part 27 word it for maximum continuous power, CS-22 and part 23 for take-off power as
    well.

    Source: CS-VLA 361(b); 14 CFR 23.361(c) before Amdt 23-64; 14 CFR 27.361(b); CS 22.361(b).
    """
    return factor * mean


@equation(
    "T_peak",
    "T_peak = max(k_T T, T + T_a)",
    unit="N m",
    source="derived: both terms stand for the same pulsation, so the larger counts",
    mean="T [N m]",
    factor="k_T [1]",
    alternating="T_a [N m]",
)
def peak_torque(mean: float, factor: float, alternating: float) -> float:
    """Highest torque [N·m] of a cycle, for mean T and alternating amplitude T_a [N·m].

    The larger of the regulation's k_T T and the computed T + T_a. Never their product: the factor
    is itself an allowance for the alternating torque, which would then count twice.

    Source: derived.
    """
    return max(factor * mean, mean + alternating)


@equation(
    "h_1",
    "h_1 = 2 z / strokes",
    unit="1",
    source="Automotive Engineering: Powertrain, Chassis System and Vehicle Body (2009), "
    "Ch 2.1 Eq. (2a); two-stroke from memory",
    cylinders="z [1]",
    strokes="strokes [1]",
)
def firing_events_per_revolution(cylinders: int, strokes: int) -> float:
    """Firings per crank revolution; with even firing also the first major order.

    Source: Automotive Engineering (2009), Ch 2.1 Eq. (2a), for four-strokes; two-strokes from
    memory.

    Raises:
        OutOfRange: neither a two-stroke nor a four-stroke.
    """
    return cylinders / _revolutions_per_cycle(strokes)


@equation(
    "φ_k",
    "φ_k = sum of the intervals before firing k",
    unit="rad",
    source="definition",
    firing_intervals="Δφ_k [rad]",
)
def firing_angles(firing_intervals: Sequence[float]) -> tuple[float, ...]:
    """Crank angle [rad] of each firing, the first at zero, from the intervals between firings.

    Source: definition.
    """
    return tuple(sum(firing_intervals[:index]) for index in range(len(firing_intervals)))


@equation(
    "even",
    "every Δφ_k = 180° strokes / z",
    unit="",
    source="definition",
    firing_intervals="Δφ_k [rad]",
    strokes="strokes [1]",
)
def firing_is_even(firing_intervals: Sequence[float], strokes: int) -> bool:
    """Whether the firings are equally spaced, from the intervals [rad] of one whole cycle.

    Source: definition; half a degree is left for printed angles that were rounded.

    Raises:
        OutOfRange: the intervals do not make up a cycle (720 deg for a four-stroke, 360 deg for a
            two-stroke), or neither a two-stroke nor a four-stroke.
    """
    cycle = math.tau * _revolutions_per_cycle(strokes)
    total = sum(firing_intervals)
    if abs(total - cycle) > _ANGLE_ROUNDING:
        raise OutOfRange(
            f"the firing intervals add up to {math.degrees(total):.1f} deg, "
            f"a cycle of {strokes} strokes is {math.degrees(cycle):.0f} deg"
        )
    even = cycle / len(firing_intervals)
    return all(abs(interval - even) <= _ANGLE_ROUNDING for interval in firing_intervals)


@equation(
    "f",
    "f = h ω / (2 π)",
    unit="Hz",
    source="definition of an order",
    order="h [1]",
    angular_speed="ω [rad/s]",
)
def excitation_frequency(order: float, angular_speed: float) -> float:
    """Frequency f [Hz] of order h per revolution of a shaft at angular speed ω [rad/s].

    Behind a reduction of ratio i the same frequency is order h i of the slower shaft.

    Source: definition of an order.
    """
    return order * angular_speed / math.tau


def _revolutions_per_cycle(strokes: int) -> int:
    if strokes not in {TWO_STROKE, FOUR_STROKE}:
        raise OutOfRange(f"a cycle has 2 or 4 strokes, not {strokes}")
    return strokes // 2


@equation(
    "T_ult",
    "T_ult = 1.5 T_limit",
    unit="N m",
    source="CS-VLA 303; 14 CFR 23.303 (at amendment 23-62), factor of safety",
    limit_torque="T_limit [N m]",
)
def ultimate_torque(limit_torque: float) -> float:
    """Ultimate torque of a limit torque [N m]."""
    return 1.5 * limit_torque


@equation(
    "f_rated",
    "f_rated = min(P / P_rated, (P / ω) / (P_rated / ω_rated))",
    unit="1",
    source="definition",
    power="P [W]",
    speed="ω [rad/s]",
    rated_power="P_rated [W]",
    rated_speed="ω_rated [rad/s]",
)
def rating_reached(power: float, speed: float, rated_power: float, rated_speed: float) -> float:
    """How far a state of operation reaches a rating, in power and in torque.

    Raises:
        OutOfRange: the shaft is at rest, or the rating is zero.
    """
    if rated_power <= 0.0:
        raise OutOfRange("rated_power: a rating of nothing is not reached")
    torque_share = mean_torque(power, speed) / mean_torque(rated_power, rated_speed)
    return min(power / rated_power, torque_share)


@equation(
    "f_pulses",
    "f_pulses = T / (T_rated K_A)",
    unit="1",
    source="ISO 6336-6:2006, K_A is 1 with a spectrum that holds the dynamic torque (from memory)",
    torque="T [N m]",
    rated_torque="T_rated [N m]",
    application_factor="K_A [1]",
)
def pulses_held(torque: float, rated_torque: float, application_factor: float) -> float:
    """Torque of a spectrum over the rated mean torque with its pulses; from 1 it holds them.

    Raises:
        OutOfRange: the rated torque is zero.
    """
    if rated_torque <= 0.0:
        raise OutOfRange("rated_torque: the rating is of nothing")
    return torque / (rated_torque * application_factor)
