"""Oil on its way: jets, pump inlet, level in a tilted case; air and oil in a vent line."""

import math

from checker.mechanics.air import STANDARD_GRAVITY
from checker.mechanics.equation import OutOfRange, equation


@equation(
    "v_j",
    "v_j = 4 Q/(π d²)",
    unit="m/s",
    source="Continuity",
    flow="Q [m3/s]",
    diameter="d [m]",
)
def jet_speed(flow: float, diameter: float) -> float:
    """Speed ``v_j`` of an oil jet, in m/s. Source: continuity.

    Raises:
        OutOfRange: ``diameter`` is not positive.
    """
    if diameter <= 0.0:
        raise OutOfRange(f"diameter {diameter:g} m is not open")
    return 4.0 * flow / (math.pi * diameter**2)


@equation(
    "Δp_j",
    "Δp_j = ρ v_j²/2",
    unit="Pa",
    source="Torricelli, loss-free",
    speed="v_j [m/s]",
    density="ρ [kg/m3]",
)
def jet_pressure(speed: float, density: float) -> float:
    """Least pressure ``Δp_j`` ahead of a jet, in Pa. Source: Torricelli."""
    return density * speed**2 / 2.0


@equation(
    "y_oil",
    "y_oil = y_b + h_m + u tan θ, u = s (x_m - x); h_m = h while h ≥ L |tan θ|/2, else of a wedge "
    "h_m = √(2 h L |tan θ|) - L |tan θ|/2; h_m = h where h ≤ 0",
    unit="m",
    source="Level surface of oil at rest in a box of length L tilted with its oil",
    bottom="y_b [m]",
    level="h [m]",
    start="x_1 [m]",
    end="x_2 [m]",
    station="x [m]",
    nose_up="θ [rad]",
    forward="s [1]",
)
def oil_height(
    bottom: float,
    level: float,
    start: float,
    end: float,
    station: float,
    nose_up: float,
    forward: int,
) -> float:
    """Height ``y_oil`` of the oil at a station of a tilted case, over the first shaft's axis, in m.

    ``level`` above the bottom with the case level, ``start`` and ``end`` of the sump along the
    shafts, ``forward`` +1 where stations count towards the nose (tractor), -1 where to the tail.
    Oil too little to reach both ends stands as a wedge at one, and below the bottom it is none.
    Stations beyond an end count as that end. Source: hydrostatics, volume kept.

    Raises:
        OutOfRange: ``end`` is not beyond ``start``.
    """
    if end <= start:
        raise OutOfRange(f"a sump from {start:g} m to {end:g} m has no length")
    if level <= 0.0:
        return bottom + level
    length, slope = end - start, math.tan(nose_up)
    half_rise = length * abs(slope) / 2.0
    middle = level
    if level < half_rise:
        middle = math.sqrt(2.0 * level * length * abs(slope)) - half_rise
    within = min(max(station, start), end)
    return bottom + middle + forward * ((start + end) / 2.0 - within) * slope


@equation(
    "h_max",
    "h_max = h + L |tan θ|/2, of a wedge √(2 h L |tan θ|)",
    unit="m",
    source="Level surface of oil at rest in a box of length L tilted with its oil",
    level="h [m]",
    start="x_1 [m]",
    end="x_2 [m]",
    nose_up="θ [rad]",
)
def deepest_level(level: float, start: float, end: float, nose_up: float) -> float:
    """Depth ``h_max`` of the oil at the deep end of a tilted sump, in m.

    Arguments as ``oil_height``. Source: hydrostatics, volume kept.

    Raises:
        OutOfRange: ``end`` is not beyond ``start``.
    """
    ends = [oil_height(0.0, level, start, end, each, nose_up, 1) for each in (start, end)]
    return max(ends)


@equation(
    "h/m",
    "h/m = h/m_n",
    unit="1",
    source="The Tribology Handbook C16 counts dip in tooth depths, 2.25 modules each",
    dip="h [m]",
    normal_module="m_n [m]",
)
def dip_in_modules(dip: float, normal_module: float) -> float:
    """Dip of a gear in modules. Source: definition."""
    return dip / normal_module


@equation(
    "v",
    "v = 4 |Q|/(π d²)",
    unit="m/s",
    source="Continuity",
    flow="Q [m3/s]",
    bore="d [m]",
)
def vent_speed(flow: float, bore: float) -> float:
    """Speed ``v`` of the air in a vent, either way, in m/s. Source: continuity.

    Raises:
        OutOfRange: ``bore`` is not positive.
    """
    if bore <= 0.0:
        raise OutOfRange(f"bore {bore:g} m is not open")
    return 4.0 * abs(flow) / (math.pi * bore**2)


@equation(
    "Δh",
    "Δh = z_max - h",
    unit="m",
    source="Hydrostatics of a line with a wet mouth",
    rise="z_max [m]",
    lift="h [m]",
)
def lift_reserve(rise: float, lift: float) -> float:
    """Height ``Δh`` by which a line rises beyond what the pressure lifts oil, in m.

    ``rise`` of its highest point over the mouth, ``lift`` of the oil. Source: hydrostatics.
    """
    return rise - lift


@equation(
    "z_max",
    "z_max = max of the running sum of Δz",
    unit="m",
    source="Plane geometry",
    rises="Δz [m]",
)
def highest_rise(rises: tuple[float, ...]) -> float:
    """Height ``z_max`` of the highest point of a line over its mouth, in m. Source: geometry."""
    height = highest = 0.0
    for rise in rises:
        height += rise
        highest = max(highest, height)
    return highest


@equation(
    "p_s",
    "p_s = p_a + p_case + ρ g h - Δp_s",
    unit="Pa",
    source="Hydrostatics of a pump inlet",
    ambient="p_a [Pa]",
    case_pressure="p_case [Pa]",
    density="ρ [kg/m3]",
    head="h [m]",
    line_loss="Δp_s [Pa]",
)
def pump_inlet_pressure(
    ambient: float, case_pressure: float, density: float, head: float, line_loss: float
) -> float:
    """Absolute pressure ``p_s`` at the inlet of the oil pump, in Pa.

    ``head`` of oil over the inlet in m, negative where the pump lifts. Source: hydrostatics.
    """
    return ambient + case_pressure + density * STANDARD_GRAVITY * head - line_loss


@equation(
    "Δp_s",
    "Δp_s = 128 η L Q/(π d⁴) + 1.5 ρ v²/2",
    unit="Pa",
    source="Hagen-Poiseuille with an entry loss (handbooks)",
    flow="Q [m3/s]",
    bore="d [m]",
    length="L [m]",
    dynamic_viscosity="η [Pa s]",
    density="ρ [kg/m3]",
)
def suction_loss(
    flow: float, bore: float, length: float, dynamic_viscosity: float, density: float
) -> float:
    """Pressure ``Δp_s`` lost along a suction line, in Pa. Valid for laminar flow of oil.

    Raises:
        OutOfRange: ``bore`` is not positive.
    """
    if bore <= 0.0:
        raise OutOfRange(f"bore {bore:g} m is not open")
    speed = 4.0 * flow / (math.pi * bore**2)
    friction = 128.0 * dynamic_viscosity * length * flow / (math.pi * bore**4)
    return friction + 1.5 * density * speed**2 / 2.0


@equation(
    "Q",
    "Q = Σ Q_i",
    unit="m3/s",
    source="Continuity",
    flows="Q_i [m3/s]",
)
def flow_sum(flows: tuple[float, ...]) -> float:
    """Sum ``Q`` of flows, in m3/s. Source: continuity."""
    return sum(flows)


@equation(
    "Q",
    "Q = Q_r Q_p/Q_p,r",
    unit="m3/s",
    source="A share of the flow of a pump without relief",
    rated="Q_r [m3/s]",
    pump="Q_p [m3/s]",
    rated_pump="Q_p,r [m3/s]",
)
def flow_in_proportion(rated: float, pump: float, rated_pump: float) -> float:
    """Flow ``Q`` of a way at another flow of its pump, in m3/s. Source: proportion.

    Raises:
        OutOfRange: ``rated_pump`` is not positive.
    """
    if rated_pump <= 0.0:
        raise OutOfRange(f"rated_pump {rated_pump:g} m³/s moves no oil")
    return rated * pump / rated_pump


@equation(
    "V",
    "V = max(V_oil - V_res, 0)",
    unit="m3",
    source="Volume balance",
    whole="V_oil [m3]",
    reservoir="V_res [m3]",
)
def oil_in_case(whole: float, reservoir: float) -> float:
    """Oil ``V`` that stands in the gear case beside a reservoir, in m3. Source: balance."""
    return max(whole - reservoir, 0.0)
