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
    "Δα",
    "Δα = e / l",
    unit="rad",
    source="derived: the gap of races out of centre changes the strut angle",
    eccentricity="e [m]",
    strut="l [m]",
)
def angle_change_of_eccentricity(eccentricity: float, strut: float) -> float:
    """Change of the gripping angle of an element of length l by races out of centre by e."""
    return eccentricity / strut


@equation(
    "α′",
    "α′ = α + Δα",
    unit="rad",
    source="definition",
    gripping_angle="α [rad]",
    change="Δα [rad]",
)
def widened_angle(gripping_angle: float, change: float) -> float:
    """Gripping angle at the wide side of races out of centre."""
    return gripping_angle + change


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
    "l",
    "l = r_o − r_i",
    unit="m",
    source="definition",
    outer_race="r_o [m]",
    inner_race="r_i [m]",
)
def gap_of_races(outer_race: float, inner_race: float) -> float:
    """Gap between the races, which an element bridges.

    Raises:
        OutOfRange: the races leave no gap.
    """
    if outer_race <= inner_race:
        raise OutOfRange("outer_race must be above inner_race: the races leave no gap")
    return outer_race - inner_race
