"""What a one-way clutch goes through: torque cycles, drag while overrunning, load of its race."""

import math

from checker.mechanics.equation import OutOfRange, equation


@equation(
    "N_h",
    "N_h = 3600 s · ω/(2 π) · h_1",
    unit="1",
    source="each firing is a torque cycle",
    angular_speed="ω [rad/s]",
    firings="h_1 [1]",
)
def firing_cycles_per_hour(angular_speed: float, firings: float) -> float:
    """Torque cycles in an hour from so many firings in a turn at a crankshaft speed."""
    return 3600.0 * angular_speed / math.tau * firings


@equation(
    "N_k",
    "N_k = N_h q t / 3600 s",
    unit="1",
    source="definition",
    per_hour="N_h [1]",
    share="q [1]",
    time="t [s]",
)
def cycles_of_point(per_hour: float, share: float, time: float) -> float:
    """Torque cycles of a point that takes a share of a service life."""
    return per_hour * share * time / 3600.0


@equation(
    "N",
    "N = N₁ + N₂",
    unit="1",
    source="definition",
    cycles="N₁ [1]",
    other="N₂ [1]",
)
def cycle_sum(cycles: float, other: float) -> float:
    """Sum of torque cycles."""
    return cycles + other


@equation(
    "T_min/T",
    "T_min/T = 1 − T_a/T",
    unit="1",
    source="definition",
    mean="T [N m]",
    alternating="T_a [N m]",
)
def least_torque_share(mean: float, alternating: float) -> float:
    """Least torque of a cycle over the mean: below zero the clutch lets go in each cycle.

    Raises:
        OutOfRange: no mean torque.
    """
    if mean <= 0.0:
        raise OutOfRange("mean must be above zero: an overrunning clutch carries no torque")
    return 1.0 - alternating / mean


@equation(
    "ΔT_oil",
    "ΔT = P / (ρ c_p V̇)",
    unit="ΔK",
    source="heat balance of the oil",
    heat="P [W]",
    density="ρ [kg/m3]",
    flow="V̇ [m3/s]",
)
def oil_warming(heat: float, density: float, flow: float) -> float:
    """Warming of the oil that carries the heat off; c_p = 1950 J/kg K of mineral oil (from memory).

    Raises:
        OutOfRange: no flow.
    """
    if flow <= 0.0:
        raise OutOfRange("flow must be above zero: no oil carries the heat")
    return heat / (density * 1950.0 * flow)


@equation(
    "t/r",
    "t/r = (r_out − r_o) / r_o",
    unit="1",
    source="definition",
    outside="r_out [m]",
    race_radius="r_o [m]",
)
def race_thickness_ratio(outside: float, race_radius: float) -> float:
    """Wall of the outer race over its inside radius.

    Raises:
        OutOfRange: the race has no wall.
    """
    if outside <= race_radius:
        raise OutOfRange("outside must be above race_radius: the race has no wall")
    return (outside - race_radius) / race_radius


@equation(
    "d_c/z",
    "d_c / z",
    unit="1",
    source="definition",
    case_depth="d_c [m]",
    shear_depth="z [m]",
)
def case_over_shear_depth(case_depth: float, shear_depth: float) -> float:
    """Case depth over the depth of the greatest shear stress."""
    return case_depth / shear_depth


@equation(
    "α′",
    "cos 2α′ = cos 2α − e / (r_i + r)",
    unit="rad",
    source="geometry of a roller between a cylinder and a flat, derived",
    gripping_angle="α [rad]",
    eccentricity="e [m]",
    inner_race="r_i [m]",
    roller="r [m]",
)
def roller_angle_out_of_centre(
    gripping_angle: float, eccentricity: float, inner_race: float, roller: float
) -> float:
    """Largest gripping angle α′ [rad] of rollers on flat ramps whose races are out of centre by e.

    With the flats in the outer race, at the distance h from its axis, the centre of a roller of
    radius r stands r_i + r from the axis of the inner race and h − r from that of the outer one,
    along the normal of the flat. Race and flat thus enclose 2α by cos 2α = (h − r)/(r_i + r), and
    an offset e along the normal takes e from h on the narrow side. With the flats on the inner race
    cos 2α = (h + r)/(r_o − r), and the wide side is the steep one; r_i + r, with r_i = h, is then
    the smaller length and so the safe one. To first order Δα = e / (2 (r_i + r) sin 2α).

    An indicator between the races shows twice the offset; taken for e, its reading is safe.

    Source: derived. Valid for flat ramps; curved ones can keep their angle.

    Raises:
        OutOfRange: no roller fits into the narrowed gap.
    """
    cosine = math.cos(2.0 * gripping_angle) - eccentricity / (inner_race + roller)
    if cosine <= 0.0:
        raise OutOfRange("eccentricity: no roller fits into so narrow a gap")
    return math.acos(cosine) / 2.0


@equation(
    "α′",
    "α′ = α_e, not below α",
    unit="rad",
    source="the cam of the sprag, by its maker",
    gripping_angle="α [rad]",
    out_of_centre="α_e [rad]",
)
def sprag_angle_out_of_centre(gripping_angle: float, out_of_centre: float) -> float:
    """Gripping angle α′ [rad] of a sprag in the gap that the allowed runout widens the most.

    Two arcs and their centres decide how fast the angle of a sprag grows with its gap; a strut of
    fixed length would understate it many times. So it is the maker's figure or none.

    Raises:
        OutOfRange: smaller than the angle with the races in centre, which no runout makes it.
    """
    if out_of_centre < gripping_angle:
        raise OutOfRange("out_of_centre must be at least the gripping angle with centred races")
    return out_of_centre


@equation(
    "T",
    "T = N T_one",
    unit="N m",
    source="definition",
    one="T_one [N m]",
    rows="N [1]",
)
def torque_of_rows(one: float, rows: int) -> float:
    """Summed torque of clutches side by side."""
    return one * rows


@equation(
    "p_max",
    "p_max = min(p_nominal, p_maker)",
    unit="Pa",
    source="the lower of two limits",
    nominal="p_nominal [Pa]",
    maker="p_maker [Pa]",
)
def lower_pressure(nominal: float, maker: float) -> float:
    """Contact pressure [Pa] that a clutch is allowed where its maker states a limit of his own."""
    return min(nominal, maker)
