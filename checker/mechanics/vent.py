"""Pressure in a gear case, the gas that must leave it, and its vent line."""

import math
from dataclasses import dataclass
from itertools import pairwise

from checker.mechanics.air import STANDARD_GRAVITY
from checker.mechanics.equation import OutOfRange, equation

_LAMINAR_REYNOLDS = 2300.0
_BLASIUS_REYNOLDS = 1.0e5
# Flow above a third of the speed of sound compresses too much for an incompressible pressure drop.
_INCOMPRESSIBLE_SPEED = 100.0
_ENTRY_LOSS = 0.5  # sharp-edged, flush (handbook value, from memory)
_EXIT_LOSS = 1.0  # the velocity head is lost


@dataclass(frozen=True, slots=True)
class Segment:
    """A stretch of vent line of one bore.

    Attributes:
        bore: inner diameter, m.
        length: length along the line, m.
        loss_coefficient: of the bends, screens and valves in it, referred to its bore.
    """

    bore: float
    length: float
    loss_coefficient: float = 0.0


@equation(
    "p_1",
    "p_1 = p_0 T_1 / T_0",
    unit="Pa",
    source="Ideal gas at constant volume",
    closing_pressure="p_0 [Pa]",
    closing_temperature="T_0 [K]",
    temperature="T_1 [K]",
)
def sealed_air_pressure(
    closing_pressure: float, closing_temperature: float, temperature: float
) -> float:
    """Absolute pressure ``p_1`` of air closed in at ``p_0``, ``T_0`` and brought to ``T_1``, in Pa.

    Pressures in Pa absolute, temperatures in K. Valid for dry air at constant volume: oil vapour
    is nothing at gearbox temperatures. Source: ideal gas law.

    Raises:
        OutOfRange: ``closing_temperature`` is not above absolute zero.
    """
    if closing_temperature <= 0.0:
        raise OutOfRange("the temperature at which the case was closed is not above absolute zero")
    return closing_pressure * temperature / closing_temperature


@equation(
    "p_1",
    "p_1 = p_0 (T_1 / T_0) (V - V_oil) / (V - V_oil (1 + ε))",
    unit="Pa",
    source="Ideal gas over a liquid that grows in a rigid case",
    closing_pressure="p_0 [Pa]",
    closing_temperature="T_0 [K]",
    temperature="T_1 [K]",
    case_volume="V [m3]",
    oil_volume="V_oil [m3]",
    oil_growth="ε [1]",
)
def sealed_case_pressure(
    closing_pressure: float,
    closing_temperature: float,
    temperature: float,
    case_volume: float,
    oil_volume: float,
    oil_growth: float,
) -> float:
    """Absolute pressure ``p_1`` in a case without a vent, its air squeezed by the oil, in Pa.

    ``case_volume`` is the free volume for oil and air, ``oil_volume`` the oil in it when closed
    (m3), ``oil_growth`` the thermal growth of the oil as a fraction. Valid for a rigid case.
    Source: ideal gas law.

    Raises:
        OutOfRange: ``closing_temperature`` is not above absolute zero, or ``oil_volume`` fills the
            case when hot.
    """
    air_left = case_volume - oil_volume * (1.0 + oil_growth)
    if air_left <= 0.0:
        raise OutOfRange(
            f"an oil volume of {oil_volume * 1e3:.4g} L fills the case when hot: no air is left"
        )
    squeeze = (case_volume - oil_volume) / air_left
    return sealed_air_pressure(closing_pressure, closing_temperature, temperature) * squeeze


@equation(
    "Δp",
    "Δp = p - p_a",
    unit="Pa",
    source="Definition of gauge pressure",
    absolute_pressure="p [Pa]",
    ambient_pressure="p_a [Pa]",
)
def gauge_pressure(absolute_pressure: float, ambient_pressure: float) -> float:
    """Pressure ``Δp`` over the local ambient, in Pa; both pressures in Pa absolute.

    Valid for any value. Source: definition.
    """
    return absolute_pressure - ambient_pressure


@equation(
    "Q_climb",
    "Q_climb = V_air ρ g w / p",
    unit="m3/s",
    source="Ideal gas of constant temperature in hydrostatic air, dp/dt = -ρ g w",
    air_volume="V_air [m3]",
    air_density="ρ [kg/m3]",
    ambient_pressure="p [Pa]",
    climb_rate="w [m/s]",
)
def climb_breathing_flow(
    air_volume: float, air_density: float, ambient_pressure: float, climb_rate: float
) -> float:
    """Volume flow ``Q_climb`` out of a vented case in a climb, at ambient pressure, in m3/s.

    ``air_volume`` in m3, ``air_density`` (kg/m3) and ``ambient_pressure`` (Pa) of the air outside,
    ``climb_rate`` in m/s; negative, inwards, in a descent. Valid while the case keeps its
    temperature. Source: ideal gas law and hydrostatics.
    """
    return air_volume * air_density * STANDARD_GRAVITY * climb_rate / ambient_pressure


@equation(
    "Q_warm",
    "Q_warm = (V_air / T + V_oil β) dT/dt",
    unit="m3/s",
    source="Ideal gas at constant pressure over a growing liquid",
    air_volume="V_air [m3]",
    temperature="T [K]",
    oil_volume="V_oil [m3]",
    oil_expansion="β [1/K]",
    heating_rate="dT/dt [K/s]",
)
def warm_up_breathing_flow(
    air_volume: float,
    temperature: float,
    oil_volume: float,
    oil_expansion: float,
    heating_rate: float,
) -> float:
    """Volume flow ``Q_warm`` out of a vented case that warms up, in m3/s.

    Volumes in m3, ``temperature`` of oil and air in K, ``oil_expansion`` per K, ``heating_rate``
    in K/s; negative, inwards, while it cools. Valid while oil and air warm together. Source:
    ideal gas law.
    """
    return (air_volume / temperature + oil_volume * oil_expansion) * heating_rate


@equation(
    "Q",
    "Q = Q_climb + Q_warm + Q_case, in a descent Q_climb - Q_warm + Q_case",
    unit="m3/s",
    source="Volume balance; a drive warms in level flight and climb, and cools in a descent",
    climb_flow="Q_climb [m3/s]",
    warm_up_flow="Q_warm [m3/s]",
    case_air_flow="Q_case [m3/s]",
)
def vent_flow(climb_flow: float, warm_up_flow: float, case_air_flow: float) -> float:
    """Flow ``Q`` out of a case through its vent, in m3/s; negative where it breathes in.

    ``climb_flow`` is negative in a descent; ``warm_up_flow`` is its size for the greatest change of
    temperature, either way. Valid as the worst case of each state. Source: volume balance.
    """
    warming = warm_up_flow if climb_flow >= 0.0 else -warm_up_flow
    return climb_flow + warming + case_air_flow


@equation(
    "Q_s",
    "Q_s = max(r_s - 1, 0) Q",
    unit="m3/s",
    source="Balance of a scavenge pump that outruns the pressure pump",
    oil_flow="Q [m3/s]",
    scavenge_ratio="r_s [1]",
)
def scavenged_air_flow(oil_flow: float, scavenge_ratio: float) -> float:
    """Air ``Q_s`` that scavenging returns with the oil, at line conditions, in m3/s.

    ``oil_flow`` of the pressure pump in m3/s, ``scavenge_ratio`` of the pump capacities; none
    where the scavenge pump is the smaller. Source: volume balance.
    """
    return max(scavenge_ratio - 1.0, 0.0) * oil_flow


@equation(
    "t_r",
    "t_r = V_oil / Q",
    unit="s",
    source="Definition; limits in The Tribology Handbook C20",
    working_volume="V_oil [m3]",
    oil_flow="Q [m3/s]",
)
def residence_time(working_volume: float, oil_flow: float) -> float:
    """Mean time ``t_r`` that oil rests in its reservoir to give up air, in s.

    ``working_volume`` of oil in m3, ``oil_flow`` through it in m3/s. Valid where the flow does not
    short-circuit. Source: The Tribology Handbook C20.

    Raises:
        OutOfRange: ``oil_flow`` is not positive.
    """
    if oil_flow <= 0.0:
        raise OutOfRange(f"an oil flow of {oil_flow * 6e4:.4g} L/min does not circulate")
    return working_volume / oil_flow


@equation(
    "f",
    "f = 64/Re for Re < 2300, else 0.3164/Re^0.25",
    unit="1",
    source="Hagen-Poiseuille and Blasius, smooth round bore (from memory)",
    reynolds_number="Re [1]",
)
def friction_factor(reynolds_number: float) -> float:
    """Darcy friction factor ``f`` of a smooth round bore.

    Valid for Re from above 0 to 1e5. Source: Hagen-Poiseuille below Re 2300, Blasius above.

    Raises:
        OutOfRange: ``reynolds_number`` is not positive or above 1e5.
    """
    if not 0.0 < reynolds_number <= _BLASIUS_REYNOLDS:
        raise OutOfRange(f"a Reynolds number of {reynolds_number:.4g} is outside 0 to 100000")
    if reynolds_number < _LAMINAR_REYNOLDS:
        return 64.0 / reynolds_number
    return 0.3164 / math.pow(reynolds_number, 0.25)


@equation(
    "Δp",
    "Δp = (ρ v²/2)(f L/d + ζ), v = 4Q/(π d²), Re = ρ v d/μ",
    unit="Pa",
    source="Darcy-Weisbach, incompressible",
    flow="Q [m3/s]",
    bore="d [m]",
    length="L [m]",
    loss_coefficient="ζ [1]",
    gas_density="ρ [kg/m3]",
    gas_viscosity="μ [Pa s]",
)
def bore_pressure_drop(
    flow: float,
    bore: float,
    length: float,
    loss_coefficient: float,
    gas_density: float,
    gas_viscosity: float,
) -> float:
    """Pressure drop ``Δp`` of gas through one bore, in Pa.

    ``flow`` in m3/s, ``bore`` and ``length`` in m, ``loss_coefficient`` of the single losses
    referred to this bore, ``gas_density`` in kg/m3, ``gas_viscosity`` in Pa s. Valid for a smooth
    round bore, up to 100 m/s (little compression) and Re 1e5. Source: Darcy-Weisbach.

    Raises:
        OutOfRange: ``bore`` is not positive, ``flow`` is negative, or runs faster than 100 m/s or
            Re 1e5.
    """
    if bore <= 0.0:
        raise OutOfRange(f"a bore of {bore * 1e3:.4g} mm is not open")
    if flow < 0.0:
        raise OutOfRange(f"a flow of {flow * 6e4:.4g} L/min runs inwards")
    if flow == 0.0:
        return 0.0
    speed = flow / (math.pi * bore**2 / 4.0)
    if speed > _INCOMPRESSIBLE_SPEED:
        raise OutOfRange(
            f"a flow of {flow * 6e4:.4g} L/min needs {speed:.0f} m/s in a bore of"
            f" {bore * 1e3:.4g} mm: too fast for this formula"
        )
    friction = friction_factor(gas_density * speed * bore / gas_viscosity)
    return gas_density * speed**2 / 2.0 * (friction * length / bore + loss_coefficient)


@equation(
    "Δp",
    "Δp = Σ (ρ v²/2)(f L/d + ζ), entry 0.5, exit 1, steps between bores after Borda-Carnot",
    unit="Pa",
    source="Darcy-Weisbach with handbook entry, exit and step losses (from memory)",
    flow="Q [m3/s]",
    segments="d, L [m]",
    gas_density="ρ [kg/m3]",
    gas_viscosity="μ [Pa s]",
)
def line_pressure_drop(
    flow: float, segments: tuple[Segment, ...], gas_density: float, gas_viscosity: float
) -> float:
    """Pressure drop ``Δp`` of a vent line of segments in series, case to outlet, in Pa.

    ``flow`` of all gas that leaves (breathing, scavenged air, blow-by) in m3/s, negative where it
    comes in, as is the drop then; ``gas_density`` in kg/m3, ``gas_viscosity`` in Pa s. Valid as
    ``bore_pressure_drop``. Source: Darcy-Weisbach; entry 0.5, exit 1, steps after Borda-Carnot.

    Raises:
        OutOfRange: as ``bore_pressure_drop``, or ``segments`` is empty.
    """
    if not segments:
        raise OutOfRange("the vent line has no segments")
    return sum(stretch_drops(flow, segments, gas_density, gas_viscosity))


def stretch_drops(
    flow: float, segments: tuple[Segment, ...], gas_density: float, gas_viscosity: float
) -> tuple[float, ...]:
    """Pressure drop of each stretch of ``line_pressure_drop``, case to outlet, in Pa.

    The first holds the entry, the last the exit; all are negative where the flow comes in.
    """
    if flow < 0.0:
        inwards = stretch_drops(-flow, segments[::-1], gas_density, gas_viscosity)
        return tuple(-each for each in inwards[::-1])
    return tuple(
        bore_pressure_drop(
            flow,
            segment.bore,
            segment.length,
            segment.loss_coefficient + loss,
            gas_density,
            gas_viscosity,
        )
        for segment, loss in zip(segments, _series_losses(segments), strict=True)
    )


def _series_losses(segments: tuple[Segment, ...]) -> list[float]:
    """Entry, step and exit losses, each added to the narrower bore it belongs to."""
    losses = [0.0] * len(segments)
    losses[0] += _ENTRY_LOSS
    losses[-1] += _EXIT_LOSS
    for index, (before, after) in enumerate(pairwise(segments)):
        if after.bore > before.bore:
            losses[index] += (1.0 - (before.bore / after.bore) ** 2) ** 2
        elif before.bore > after.bore:
            losses[index + 1] += _ENTRY_LOSS * (1.0 - (after.bore / before.bore) ** 2)
    return losses


@equation(
    "Δh",
    "Δh = h_mouth - h_oil",
    unit="m",
    source="Definition",
    mouth="h_mouth [m]",
    oil_level="h_oil [m]",
)
def height_above_oil(mouth: float, oil_level: float) -> float:
    """Height ``Δh`` of the vent's mouth above the oil, in m; both over the same datum.

    Valid for any value; negative where the mouth is under oil. Source: definition.
    """
    return mouth - oil_level


@equation(
    "p_in",
    "p_in = p_out + Δp",
    unit="Pa",
    source="Series of outlet and line",
    outlet_pressure="p_out [Pa]",
    line_drop="Δp [Pa]",
)
def case_pressure(outlet_pressure: float, line_drop: float) -> float:
    """Pressure ``p_in`` in a case that breathes out through a line, in Pa.

    ``outlet_pressure`` where the line ends and ``p_in`` over the local ambient, ``line_drop``
    outwards (Pa). Valid while the case breathes out. Source: definition.
    """
    return outlet_pressure + line_drop
