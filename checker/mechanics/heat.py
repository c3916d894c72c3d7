"""Heat that leaves or enters the oil of a drive, and how fast the drive warms."""

import math

from checker.mechanics.equation import OutOfRange, equation

_DENSITY_15_WATER = 999.1  # kg/m3, density of water at 15 °C


@equation(
    "c_p",
    "c_p = (1685 + 3.4 t)/√s, s = ρ₁₅/999.1, t in °C",
    unit="J/kg K",
    source="Petroleum oils, credited to NBS Misc. Publ. 97 (1929) (from memory)",
    density_15="ρ₁₅ [kg/m3]",
    temperature="T [K]",
)
def oil_heat_capacity(density_15: float, temperature: float) -> float:
    """Specific heat ``c_p`` of an oil, in J/(kg K). Source: NBS Misc. Publ. 97 (from memory).

    Raises:
        OutOfRange: ``density_15`` is not positive.
    """
    if density_15 <= 0.0:
        raise OutOfRange(f"density_15 {density_15:g} kg/m³ is not positive")
    gravity = density_15 / _DENSITY_15_WATER
    return (1685.0 + 3.4 * (temperature - 273.15)) / math.sqrt(gravity)


@equation(
    "Φ",
    "Φ = h A (T_s - T_a)",
    unit="W",
    source="Newton's law of cooling",
    coefficient="h [W/m2 K]",
    area="A [m2]",
    warm="T_s [K]",
    cold="T_a [K]",
)
def surface_flow(coefficient: float, area: float, warm: float, cold: float) -> float:
    """Heat flow ``Φ`` from a surface, in W; negative where the surface is the colder."""
    return coefficient * area * (warm - cold)


@equation(
    "A_e",
    "A_e = A + η_f A_f",
    unit="m2",
    source="Fins with their efficiency (handbooks)",
    plain="A [m2]",
    fins="A_f [m2]",
    efficiency="η_f [1]",
)
def effective_area(plain: float, fins: float, efficiency: float) -> float:
    """Surface ``A_e`` that is as warm as the wall and gives off as much, in m2."""
    return plain + efficiency * fins


@equation(
    "Φ_j",
    "Φ_j = h_c A_j (T_oil - T_e)",
    unit="W",
    source="Contact conductance of a joint; sign by the hotter side",
    conductance="h_c [W/m2 K]",
    area="A_j [m2]",
    oil_temperature="T_oil [K]",
    engine_temperature="T_e [K]",
)
def joint_flow(
    conductance: float, area: float, oil_temperature: float, engine_temperature: float
) -> float:
    """Heat ``Φ_j`` from the drive into the engine case, in W; negative where the engine heats it.

    The case near the joint is taken as warm as the oil, which overstates the exchange.
    """
    return conductance * area * (oil_temperature - engine_temperature)


@equation(
    "L_eq",
    "L_eq = λ/h_c",
    unit="m",
    source="Contact conductance as a thickness of solid",
    conductance="h_c [W/m2 K]",
    conductivity="λ [W/m K]",
)
def equivalent_thickness(conductance: float, conductivity: float) -> float:
    """Thickness ``L_eq`` of solid metal that resists as much as a joint, in m."""
    return conductivity / conductance


@equation(
    "Φ_s",
    "Φ_s = ρ c_p Q (T_oil - T_in)",
    unit="W",
    source="Heat balance of an oil stream",
    density="ρ [kg/m3]",
    heat_capacity="c_p [J/kg K]",
    flow="Q [m3/s]",
    oil_temperature="T_oil [K]",
    inlet_temperature="T_in [K]",
)
def stream_flow(
    density: float,
    heat_capacity: float,
    flow: float,
    oil_temperature: float,
    inlet_temperature: float,
) -> float:
    """Heat ``Φ_s`` that a stream of oil carries away, in W; negative where it comes in hotter."""
    return density * heat_capacity * flow * (oil_temperature - inlet_temperature)


@equation(
    "Q",
    "Q = P/(ρ c_p ΔT)",
    unit="m3/s",
    source="Heat balance of an oil stream",
    loss="P [W]",
    density="ρ [kg/m3]",
    heat_capacity="c_p [J/kg K]",
    rise="ΔT [ΔK]",
)
def flow_for_heat(loss: float, density: float, heat_capacity: float, rise: float) -> float:
    """Oil flow ``Q`` that carries a loss at a rise of temperature, in m3/s.

    Raises:
        OutOfRange: ``rise`` is not positive.
    """
    if rise <= 0.0:
        raise OutOfRange(f"rise {rise:g} K carries no heat")
    return loss / (density * heat_capacity * rise)


@equation(
    "ΔT",
    "ΔT = P/(ρ c_p Q)",
    unit="ΔK",
    source="Heat balance of an oil stream",
    loss="P [W]",
    density="ρ [kg/m3]",
    heat_capacity="c_p [J/kg K]",
    flow="Q [m3/s]",
)
def rise_of_oil(loss: float, density: float, heat_capacity: float, flow: float) -> float:
    """Rise ``ΔT`` of the oil that carries a loss away, in K.

    Raises:
        OutOfRange: no oil flows.
    """
    if flow <= 0.0:
        raise OutOfRange(f"flow {flow:g} m³/s carries no heat")
    return loss / (density * heat_capacity * flow)


@equation(
    "C",
    "C = m_oil c_oil + m_h c_h + m_s 460",
    unit="J/K",
    source="Heat capacities of oil, case and steel (handbooks, steel from memory)",
    oil_mass="m_oil [kg]",
    oil_heat_capacity="c_oil [J/kg K]",
    case_mass="m_h [kg]",
    case_heat_capacity="c_h [J/kg K]",
    steel_mass="m_s [kg]",
)
def heat_content(
    oil_mass: float,
    oil_heat_capacity: float,
    case_mass: float,
    case_heat_capacity: float,
    steel_mass: float,
) -> float:
    """Heat ``C`` that one kelvin of warming takes, in J/K; all parts warm together."""
    return oil_mass * oil_heat_capacity + case_mass * case_heat_capacity + steel_mass * 460.0


@equation(
    "c_h",
    "c_h = 900 aluminium, 1020 magnesium, 460 steel, 460 cast iron",
    unit="J/kg K",
    source="Handbook round figures (from memory)",
    material="material []",
)
def case_heat_capacity(material: str) -> float:
    """Specific heat ``c_h`` of a case material, in J/(kg K). Source: handbooks (from memory).

    Raises:
        OutOfRange: ``material`` is none of the four.
    """
    values = {"aluminium": 900.0, "magnesium": 1020.0, "steel": 460.0, "cast iron": 460.0}
    if material not in values:
        raise OutOfRange(f"material {material!r} is none of {', '.join(values)}")
    return values[material]


@equation(
    "dT/dt",
    "dT/dt = P/C",
    unit="K/s",
    source="Heat balance of a body",
    net="P [W]",
    content="C [J/K]",
)
def heating_rate(net: float, content: float) -> float:
    """Rate ``dT/dt`` at which a drive warms under a net heat in W, in K/s."""
    return net / content


@equation(
    "T_hot",
    "T_hot = T_0 - 2.0 z/304.8",
    unit="K",
    source="14 CFR 23.1043 as of 2014: less 3.6 °F per 1000 ft, from a stated day at sea level",
    sea_level="T_0 [K]",
    altitude="z [m]",
)
def hot_day(sea_level: float, altitude: float) -> float:
    """Air temperature ``T_hot`` at an altitude on a stated hot day, in K."""
    return sea_level - 2.0 * altitude / 304.8


@equation(
    "T_corr",
    "T_corr = T_meas + (T_hot - T_air)",
    unit="K",
    source="14 CFR 23.1043(c) as of 2014, degree for degree",
    measured="T_meas [K]",
    hot="T_hot [K]",
    air="T_air [K]",
)
def corrected_to_hot_day(measured: float, hot: float, air: float) -> float:
    """Measured fluid temperature ``T_corr`` corrected to the hot day, in K.

    For measured temperatures only: a computed one is computed for the hot day. Source: 14 CFR
    23.1043.
    """
    return measured + (hot - air)


@equation(
    "η",
    "η = 1 - P_loss/P",
    unit="1",
    source="Definition",
    loss="P_loss [W]",
    power="P [W]",
)
def efficiency(loss: float, power: float) -> float:
    """Efficiency ``η`` of the drive.

    Raises:
        OutOfRange: no power goes in.
    """
    if power <= 0.0:
        raise OutOfRange(f"power {power:g} W: no power goes through the drive")
    return 1.0 - loss / power


@equation(
    "Q",
    "Q = Q_r ω/ω_r",
    unit="m3/s",
    source="A flow in proportion to the speed that drives it",
    rated="Q_r [m3/s]",
    speed="ω [rad/s]",
    rated_speed="ω_r [rad/s]",
)
def flow_at_speed(rated: float, speed: float, rated_speed: float) -> float:
    """Flow ``Q`` at a speed, from that at a rated speed, in m3/s.

    Speeds both of shafts (rad/s) or both of air (m/s).

    Raises:
        OutOfRange: ``rated_speed`` is not positive.
    """
    if rated_speed <= 0.0:
        raise OutOfRange(f"rated_speed {rated_speed:g} drives no flow")
    return rated * speed / rated_speed


@equation(
    "v",
    "v = v_r w/w_r",
    unit="m/s",
    source="Ducted air in proportion to the airspeed",
    rated="v_r [m/s]",
    airspeed="w [m/s]",
    rated_airspeed="w_r [m/s]",
)
def ducted_speed(rated: float, airspeed: float, rated_airspeed: float) -> float:
    """Speed ``v`` of ducted air at an airspeed, from that in cruise, in m/s.

    Raises:
        OutOfRange: ``rated_airspeed`` is not positive.
    """
    if rated_airspeed <= 0.0:
        raise OutOfRange(f"rated_airspeed {rated_airspeed:g} m/s: the cruise stands still")
    return rated * airspeed / rated_airspeed


@equation(
    "T",
    "T = T_1 + ΔT",
    unit="K",
    source="Definition",
    temperature="T_1 [K]",
    rise="ΔT [ΔK]",
)
def warmer(temperature: float, rise: float) -> float:
    """A temperature raised by a difference, in K."""
    return temperature + rise


@equation(
    "|ΔT|",
    "|ΔT| = |T_1 - T_2|",
    unit="ΔK",
    source="Definition",
    one="T_1 [K]",
    other="T_2 [K]",
)
def distance(one: float, other: float) -> float:
    """Distance of two temperatures, in K."""
    return abs(one - other)


@equation(
    "T",
    "T = T_1 - ΔT",
    unit="K",
    source="Definition",
    temperature="T_1 [K]",
    drop="ΔT [ΔK]",
)
def cooler_than(temperature: float, drop: float) -> float:
    """A temperature lowered by a difference, in K."""
    return temperature - drop


@equation(
    "Φ_left",
    "Φ_left = Σ P_loss - Σ Φ",
    unit="W",
    source="Heat balance",
    losses="Σ P_loss [W]",
    rejected="Σ Φ [W]",
)
def heat_left(losses: float, rejected: float) -> float:
    """Heat ``Φ_left`` that still has to leave, in W; negative where there is room."""
    return losses - rejected


@equation("m", "m = ρ V", unit="kg", source="Definition", volume="V [m3]", density="ρ [kg/m3]")
def mass_of(volume: float, density: float) -> float:
    """Mass ``m`` of a volume, in kg."""
    return volume * density


@equation("m", "m = Σ m_i", unit="kg", source="Definition", masses="m_i [kg]")
def mass_sum(masses: tuple[float, ...]) -> float:
    """Sum ``m`` of masses, in kg."""
    return sum(masses)


@equation(
    "m",
    "m = 7850 π (D² - d²) L/4",
    unit="kg",
    source="Geometry; density of steel (handbooks)",
    outside="D [m]",
    inside="d [m]",
    length="L [m]",
)
def ring_mass(outside: float, inside: float, length: float) -> float:
    """Mass ``m`` of a steel tube, in kg; of a bearing as if solid, the most. Source: geometry."""
    return 7850.0 * math.pi * (outside**2 - inside**2) * length / 4.0


@equation("L", "L = x_2 - x_1", unit="m", source="Definition", start="x_1 [m]", end="x_2 [m]")
def length_between(start: float, end: float) -> float:
    """Length ``L`` from one station to another, in m."""
    return end - start


@equation(
    "T_soak",
    "T_soak ≤ max(T_run, T_eq)",
    unit="K",
    source="A body between a hotter and a colder one goes beyond neither start nor balance",
    running="T_run [K]",
    balance="T_eq [K]",
)
def soak_temperature(running: float, balance: float) -> float:
    """Most that the oil of a stopped drive comes to, in K. Source: first law."""
    return max(running, balance)
