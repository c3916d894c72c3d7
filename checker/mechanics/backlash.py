"""Room between the teeth of an external pair: at the tips, and between the flanks.

After ISO 21771:2007, in the transverse section unless "normal" is said. Circular backlash is an
arc on the working pitch circles; normal backlash is what a feeler between the flanks finds.
"""

from math import cos, pi

from checker.mechanics.equation import equation
from checker.mechanics.tooth import involute

_PAIR = "ISO 21771:2007, cylindrical gear pairs (from memory)"
_GEAR_STEEL = 11.5e-6  # 1/K, case-carburising steels (from memory)


@equation(
    "c",
    "c = a_w − (d_a + d_f,mate) / 2",
    unit="m",
    source=_PAIR,
    centre_distance="a_w [m]",
    tip_diameter="d_a [m]",
    root_diameter_of_mate="d_f,mate [m]",
)
def tip_clearance(
    centre_distance: float, tip_diameter: float, root_diameter_of_mate: float
) -> float:
    """Radial room between this gear's tip and the mate's root; negative where they clash."""
    return centre_distance - 0.5 * (tip_diameter + root_diameter_of_mate)


@equation(
    "j_wt",
    "j_wt = π d_w1 / z_1 − s_wt1 − s_wt2",
    unit="m",
    source=_PAIR,
    working_pitch_diameter_1="d_w1 [m]",
    teeth_1="z_1 [1]",
    working_thickness_1="s_wt1 [m]",
    working_thickness_2="s_wt2 [m]",
)
def circular_backlash(
    working_pitch_diameter_1: float,
    teeth_1: int,
    working_thickness_1: float,
    working_thickness_2: float,
) -> float:
    """Circular backlash at the working circles; negative where the teeth would jam."""
    pitch = pi * working_pitch_diameter_1 / teeth_1
    return pitch - working_thickness_1 - working_thickness_2


@equation(
    "j_bn",
    "j_bn = j_wt cos α_wt cos β_b",
    unit="m",
    source=_PAIR,
    circular_backlash="j_wt [m]",
    working_pressure_angle="α_wt [rad]",
    base_helix_angle="β_b [rad]",
)
def normal_backlash(
    circular_backlash: float, working_pressure_angle: float, base_helix_angle: float
) -> float:
    """Shortest distance of the rear flanks while the working flanks touch."""
    return circular_backlash * cos(working_pressure_angle) * cos(base_helix_angle)


@equation(
    "Δj_bn",
    "Δj_bn = (d_b1 + d_b2) (inv α_wt,to − inv α_wt,from) cos β_b",
    unit="m",
    source=_PAIR,
    base_diameter_1="d_b1 [m]",
    base_diameter_2="d_b2 [m]",
    pressure_angle_from="α_wt,from [rad]",
    pressure_angle_to="α_wt,to [rad]",
    base_helix_angle="β_b [rad]",
)
def normal_backlash_gained(
    base_diameter_1: float,
    base_diameter_2: float,
    pressure_angle_from: float,
    pressure_angle_to: float,
    base_helix_angle: float,
) -> float:
    """Normal backlash gained as the centre distance moves between two working pressure angles.

    It needs no tooth thickness: added to a backlash measured at one centre distance it gives that
    at another (tolerance corners, a warm housing); from the zero-backlash pressure angle it gives
    the whole backlash. Negative where the centres come closer.
    """
    opening = involute(pressure_angle_to) - involute(pressure_angle_from)
    return (base_diameter_1 + base_diameter_2) * opening * cos(base_helix_angle)


@equation(
    "j_bn,rec",
    "j_bn,rec = ⅔ (0.06 mm + 0.0005 a_w + 0.03 m_n)",
    unit="m",
    source="ISO/TR 10064-2:1996, industrial drives of steel in iron or steel cases (from memory)",
    centre_distance="a_w [m]",
    normal_module="m_n [m]",
)
def recommended_normal_backlash(centre_distance: float, normal_module: float) -> float:
    """Least normal backlash recommended for gears that run warm.

    It allows for pitch-line velocities below 15 m/s and usual tolerances of case and bearings; an
    aluminium case moves more than the iron one that it was drawn up for.
    """
    return 2.0 / 3.0 * (0.06e-3 + 0.0005 * centre_distance + 0.03 * normal_module)


@equation(
    "a_w,θ",
    "a_w,θ = a_w (1 + (α_h − 11.5e-6/K) (θ − θ_0))",
    unit="m",
    source="thermal expansion of case and steel gears at one temperature",
    centre_distance="a_w [m]",
    case_expansion="α_h [1/K]",
    temperature="θ [K]",
    build_temperature="θ_0 [K]",
)
def centre_distance_at_temperature(
    centre_distance: float,
    case_expansion: float,
    temperature: float,
    build_temperature: float,
) -> float:
    """Centre distance in the measure of steel gears that keep their size.

    Case and gears stand at one temperature; what both change alike leaves the mesh as it is.
    """
    growth = (case_expansion - _GEAR_STEEL) * (temperature - build_temperature)
    return centre_distance * (1.0 + growth)


@equation(
    "j",
    "j = j_0 + Δj",
    unit="m",
    source="definition",
    backlash="j_0 [m]",
    gained="Δj [m]",
)
def backlash_sum(backlash: float, gained: float) -> float:
    """Backlash with what a change of the centre distance adds to it."""
    return backlash + gained
