"""A pair of external cylindrical involute gears on parallel shafts: how they meet.

Geometry after ISO 21771:2007, in the transverse section. "Working" values hold at the actual
centre distance, which need not be the reference one nor the one without backlash. Functions that
speak of one gear and its mate serve both gears, by exchanging the arguments. Internal gears are
not covered.

Contact ends, at each end of the path, at whichever comes first along the line of action: the tip
circle of one gear, or the circle below which the other has no involute. That circle is the root
form circle, or the base circle where the tool is not stated (``start_of_involute`` in what
follows). The formula in common use knows only the tip circles; past the tangent point of a base
circle it goes on counting contact that does not exist. For 12 and 36 full-depth teeth at
20 degrees it gives 1.556, while stepping the two involutes through mesh shows contact over 1.405
base pitches: the tips of the larger gear reach past the tangent point by 0.151 base pitch.
"""

from math import acos, cos, gcd, pi, sin, tan

from checker.mechanics.equation import OutOfRange, equation
from checker.mechanics.tooth import (
    curvature_radius_at_diameter,
    diameter_at_curvature_radius,
)

_PAIR = "ISO 21771:2007, cylindrical gear pairs (from memory)"


@equation(
    "a",
    "a = m_n (z_1 + z_2) / (2 cos β)",
    unit="m",
    source=_PAIR,
    normal_module="m_n [m]",
    teeth_1="z_1 [1]",
    teeth_2="z_2 [1]",
    helix_angle="β [rad]",
)
def reference_centre_distance(
    normal_module: float, teeth_1: int, teeth_2: int, helix_angle: float
) -> float:
    """Centre distance at which the reference circles touch."""
    return normal_module * (teeth_1 + teeth_2) / (2.0 * cos(helix_angle))


@equation(
    "α_wt",
    "cos α_wt = a cos α_t / a_w",
    unit="rad",
    source=_PAIR,
    reference_centre_distance="a [m]",
    transverse_pressure_angle="α_t [rad]",
    centre_distance="a_w [m]",
)
def working_pressure_angle(
    reference_centre_distance: float, transverse_pressure_angle: float, centre_distance: float
) -> float:
    """Transverse pressure angle at the actual centre distance.

    Raises:
        OutOfRange: ``centre_distance`` is so small that the base circles touch or overlap.
    """
    base_radii = reference_centre_distance * cos(transverse_pressure_angle)
    if centre_distance <= base_radii:
        raise OutOfRange(
            f"at a centre distance of {centre_distance * 1e3:.4g} mm the base circles, whose radii"
            f" add up to {base_radii * 1e3:.4g} mm, leave no line of action"
        )
    return acos(base_radii / centre_distance)


@equation(
    "d_w",
    "d_w = 2 a_w z / (z + z_mate)",
    unit="m",
    source=_PAIR,
    teeth="z [1]",
    teeth_of_mate="z_mate [1]",
    centre_distance="a_w [m]",
)
def working_pitch_diameter(teeth: int, teeth_of_mate: int, centre_distance: float) -> float:
    """Diameter of the circle that rolls on the mate's without slip."""
    return 2.0 * centre_distance * teeth / (teeth + teeth_of_mate)


@equation(
    "ι",
    "ι = √(d_a,mate² − d_b,mate²) / (2 a_w sin α_wt)",
    unit="1",
    source=_PAIR,
    tip_diameter_of_mate="d_a,mate [m]",
    base_diameter_of_mate="d_b,mate [m]",
    centre_distance="a_w [m]",
    working_pressure_angle="α_wt [rad]",
)
def interference_reach(
    tip_diameter_of_mate: float,
    base_diameter_of_mate: float,
    centre_distance: float,
    working_pressure_angle: float,
) -> float:
    """How much of the line of action, between the tangent points, the mate's tip uses.

    Above 1 the mate's tip passes the tangent point on this gear's base circle and digs into its
    flank: interference.

    Raises:
        OutOfRange: ``tip_diameter_of_mate`` lies inside its base circle.
    """
    reach = curvature_radius_at_diameter(base_diameter_of_mate, tip_diameter_of_mate)
    return reach / (centre_distance * sin(working_pressure_angle))


@equation(
    "d_Nf",
    "d_Nf = √(d_b² + (2 a_w sin α_wt − √(d_a,mate² − d_b,mate²))²), d_b with interference",
    unit="m",
    source=_PAIR,
    base_diameter="d_b [m]",
    tip_diameter_of_mate="d_a,mate [m]",
    base_diameter_of_mate="d_b,mate [m]",
    centre_distance="a_w [m]",
    working_pressure_angle="α_wt [rad]",
)
def start_of_active_profile(
    base_diameter: float,
    tip_diameter_of_mate: float,
    base_diameter_of_mate: float,
    centre_distance: float,
    working_pressure_angle: float,
) -> float:
    """Diameter down to which the mate's tip asks for involute on this gear.

    It is the base diameter where the mate's tip reaches the tangent point or past it.

    Raises:
        OutOfRange: ``tip_diameter_of_mate`` lies inside its base circle.
    """
    reach = curvature_radius_at_diameter(base_diameter_of_mate, tip_diameter_of_mate)
    left_over = centre_distance * sin(working_pressure_angle) - reach
    return diameter_at_curvature_radius(base_diameter, max(0.0, left_over))


@equation(
    "c_F",
    "c_F = (d_Nf − d_Ff) / 2",
    unit="m",
    source=_PAIR,
    start_of_active_profile="d_Nf [m]",
    root_form_diameter="d_Ff [m]",
)
def form_clearance(start_of_active_profile: float, root_form_diameter: float) -> float:
    """Involute in hand below the active profile; negative where the mate's tip meets the fillet."""
    return 0.5 * (start_of_active_profile - root_form_diameter)


@equation(
    "g_a",
    "g_a = min(ρ(d_a), a_w sin α_wt − ρ(d_0,mate)) − ½ d_b tan α_wt, ρ(d_y) = √(d_y² − d_b²) / 2",
    unit="m",
    source=_PAIR,
    tip_diameter="d_a [m]",
    base_diameter="d_b [m]",
    start_of_involute_of_mate="d_0,mate [m]",
    base_diameter_of_mate="d_b,mate [m]",
    centre_distance="a_w [m]",
    working_pressure_angle="α_wt [rad]",
)
def addendum_path(
    tip_diameter: float,
    base_diameter: float,
    start_of_involute_of_mate: float,
    base_diameter_of_mate: float,
    centre_distance: float,
    working_pressure_angle: float,
) -> float:
    """Length of contact between the pitch point and the end of contact at this gear's tip.

    It ends early where the mate has no involute left: at its root form diameter, or at its base
    diameter where the root is not known. Negative where this end lies before the pitch point.

    Raises:
        OutOfRange: ``tip_diameter`` or ``start_of_involute_of_mate`` lies inside its base circle.
    """
    tip_end = curvature_radius_at_diameter(base_diameter, tip_diameter)
    involute_end = centre_distance * sin(working_pressure_angle) - curvature_radius_at_diameter(
        base_diameter_of_mate, start_of_involute_of_mate
    )
    return min(tip_end, involute_end) - 0.5 * base_diameter * tan(working_pressure_angle)


@equation(
    "ε_α",
    "ε_α = (g_a1 + g_a2) / p_bt",
    unit="1",
    source=_PAIR,
    addendum_path_1="g_a1 [m]",
    addendum_path_2="g_a2 [m]",
    transverse_base_pitch="p_bt [m]",
)
def transverse_contact_ratio(
    addendum_path_1: float, addendum_path_2: float, transverse_base_pitch: float
) -> float:
    """Mean number of tooth pairs in contact, in a transverse section.

    Below 1 contact is lost between one pair and the next. With the path at one gear's tip alone
    (the other zero) it is that gear's addendum contact ratio.
    """
    return (addendum_path_1 + addendum_path_2) / transverse_base_pitch


@equation(
    "ε_β",
    "ε_β = b sin β / (π m_n)",
    unit="1",
    source=_PAIR,
    face_width="b [m]",
    helix_angle="β [rad]",
    normal_module="m_n [m]",
)
def overlap_ratio(face_width: float, helix_angle: float, normal_module: float) -> float:
    """Common face width in axial pitches: the further tooth pairs that the helix brings in."""
    return face_width * sin(helix_angle) / (pi * normal_module)


@equation(
    "ε_γ",
    "ε_γ = ε_α + ε_β",
    unit="1",
    source=_PAIR,
    transverse_contact_ratio="ε_α [1]",
    overlap_ratio="ε_β [1]",
)
def total_contact_ratio(transverse_contact_ratio: float, overlap_ratio: float) -> float:
    """Sum of the transverse contact ratio and the overlap ratio."""
    return transverse_contact_ratio + overlap_ratio


@equation(
    "v_t",
    "v_t = ω d_w / 2",
    unit="m/s",
    source=_PAIR,
    angular_speed="ω [rad/s]",
    working_pitch_diameter="d_w [m]",
)
def pitch_line_velocity(angular_speed: float, working_pitch_diameter: float) -> float:
    """Speed of the working pitch circles, at which they roll on each other."""
    return 0.5 * angular_speed * working_pitch_diameter


@equation(
    "b/d_1",
    "b/d_1 = b / d_1",
    unit="1",
    source="definition; common practice, no source",
    face_width="b [m]",
    reference_diameter_of_pinion="d_1 [m]",
)
def face_width_ratio(face_width: float, reference_diameter_of_pinion: float) -> float:
    """Common face width in reference diameters of the pinion."""
    return face_width / reference_diameter_of_pinion


@equation(
    "gcd",
    "gcd = greatest common divisor of z_1 and z_2",
    unit="1",
    source="W. C. Foiles, Gear Frequencies Using the Euclidean Algorithm",
    teeth_1="z_1 [1]",
    teeth_2="z_2 [1]",
)
def hunting_common_factor(teeth_1: int, teeth_2: int) -> int:
    """Common factor of the tooth counts; 1 where every tooth meets every tooth of the mate."""
    return gcd(teeth_1, teeth_2)


@equation(
    "b",
    "b = max(0, min(x_1 + b_1/2, x_2 + b_2/2) − max(x_1 − b_1/2, x_2 − b_2/2))",
    unit="m",
    source="overlap of the two faces along the axis",
    face_width_1="b_1 [m]",
    middle_1="x_1 [m]",
    face_width_2="b_2 [m]",
    middle_2="x_2 [m]",
)
def common_face_width(
    face_width_1: float, middle_1: float, face_width_2: float, middle_2: float
) -> float:
    """Face width over which both gears meet; zero where the faces stand beside each other."""
    end = min(middle_1 + 0.5 * face_width_1, middle_2 + 0.5 * face_width_2)
    start = max(middle_1 - 0.5 * face_width_1, middle_2 - 0.5 * face_width_2)
    return max(0.0, end - start)
