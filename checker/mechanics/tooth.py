"""One external cylindrical involute gear, spur (helix angle 0) or helical.

Geometry after ISO 21771:2007 in the normal module. Diameters, angles and thicknesses lie in the
transverse section unless "normal" is said. Factors (addendum, dedendum, profile shift, tip
alteration) are in normal modules. Tooth counts and the helix angle are positive; the hand of the
helix matters to forces alone. Internal gears are not covered.
"""

from math import acos, atan, cos, hypot, pi, tan

from checker.mechanics.equation import OutOfRange, equation

_GEAR = "ISO 21771:2007, individual cylindrical gears (from memory)"


@equation(
    "inv α",
    "inv α = tan α − α",
    unit="rad",
    source="ISO 21771:2007, involute function (from memory)",
    angle="α [rad]",
)
def involute(angle: float) -> float:
    """Involute function: polar angle of the point whose pressure angle is ``angle``."""
    return tan(angle) - angle


@equation(
    "m_t",
    "m_t = m_n / cos β",
    unit="m",
    source=_GEAR,
    normal_module="m_n [m]",
    helix_angle="β [rad]",
)
def transverse_module(normal_module: float, helix_angle: float) -> float:
    """Module in the transverse section."""
    return normal_module / cos(helix_angle)


@equation(
    "α_t",
    "tan α_t = tan α_n / cos β",
    unit="rad",
    source=_GEAR,
    normal_pressure_angle="α_n [rad]",
    helix_angle="β [rad]",
)
def transverse_pressure_angle(normal_pressure_angle: float, helix_angle: float) -> float:
    """Pressure angle at the reference circle in the transverse section."""
    return atan(tan(normal_pressure_angle) / cos(helix_angle))


@equation(
    "β_b",
    "tan β_b = tan β cos α_t",
    unit="rad",
    source=_GEAR,
    helix_angle="β [rad]",
    transverse_pressure_angle="α_t [rad]",
)
def base_helix_angle(helix_angle: float, transverse_pressure_angle: float) -> float:
    """Helix angle on the base cylinder; equal to asin(sin β cos α_n)."""
    return atan(tan(helix_angle) * cos(transverse_pressure_angle))


@equation(
    "d",
    "d = z m_n / cos β",
    unit="m",
    source=_GEAR,
    teeth="z [1]",
    normal_module="m_n [m]",
    helix_angle="β [rad]",
)
def reference_diameter(teeth: int, normal_module: float, helix_angle: float) -> float:
    """Diameter on which module, pressure angle and helix angle are stated."""
    return teeth * normal_module / cos(helix_angle)


@equation(
    "d_b",
    "d_b = d cos α_t",
    unit="m",
    source=_GEAR,
    reference_diameter="d [m]",
    transverse_pressure_angle="α_t [rad]",
)
def base_diameter(reference_diameter: float, transverse_pressure_angle: float) -> float:
    """Diameter of the circle from which the involutes unwind."""
    return reference_diameter * cos(transverse_pressure_angle)


@equation(
    "p_bt",
    "p_bt = π m_t cos α_t",
    unit="m",
    source=_GEAR,
    transverse_module="m_t [m]",
    transverse_pressure_angle="α_t [rad]",
)
def transverse_base_pitch(transverse_module: float, transverse_pressure_angle: float) -> float:
    """Distance of neighbouring flanks along the transverse line of action."""
    return pi * transverse_module * cos(transverse_pressure_angle)


@equation(
    "α_yt",
    "cos α_yt = d_b / d_y",
    unit="rad",
    source=_GEAR,
    base_diameter="d_b [m]",
    diameter="d_y [m]",
)
def pressure_angle_at_diameter(base_diameter: float, diameter: float) -> float:
    """Transverse pressure angle of the involute at a diameter, such as the tip diameter.

    Raises:
        OutOfRange: ``diameter`` lies inside the base circle, where there is no involute.
    """
    if diameter < base_diameter:
        raise OutOfRange(
            f"a diameter of {diameter * 1e3:.4g} mm lies inside the base circle of"
            f" {base_diameter * 1e3:.4g} mm, where a flank has no involute"
        )
    return acos(base_diameter / diameter)


@equation(
    "β_y",
    "tan β_y = tan β d_y / d",
    unit="rad",
    source=_GEAR,
    helix_angle="β [rad]",
    reference_diameter="d [m]",
    diameter="d_y [m]",
)
def helix_angle_at_diameter(
    helix_angle: float, reference_diameter: float, diameter: float
) -> float:
    """Helix angle on a cylinder, such as the tip or the working pitch cylinder.

    The lead is common to all cylinders of a gear, so the tangent grows with the diameter.
    """
    return atan(tan(helix_angle) * diameter / reference_diameter)


@equation(
    "s_n",
    "s_n = m_n (π/2 + 2 x tan α_n) − ΔE_sn",
    unit="m",
    source=_GEAR,
    normal_module="m_n [m]",
    normal_pressure_angle="α_n [rad]",
    profile_shift="x [1]",
    thickness_reduction="ΔE_sn [m]",
)
def normal_tooth_thickness(
    normal_module: float,
    normal_pressure_angle: float,
    profile_shift: float,
    thickness_reduction: float,
) -> float:
    """Tooth thickness on the reference cylinder, in the normal section.

    The reduction makes the backlash: positive is thinner than the profile shift alone gives (the
    thickness allowance of the standard, which is negative, with its sign turned).
    """
    nominal = normal_module * (pi / 2.0 + 2.0 * profile_shift * tan(normal_pressure_angle))
    return nominal - thickness_reduction


@equation(
    "s_t",
    "s_t = s_n / cos β",
    unit="m",
    source=_GEAR,
    normal_tooth_thickness="s_n [m]",
    helix_angle="β [rad]",
)
def transverse_tooth_thickness(normal_tooth_thickness: float, helix_angle: float) -> float:
    """Tooth thickness on the reference circle, in the transverse section."""
    return normal_tooth_thickness / cos(helix_angle)


@equation(
    "s_yt",
    "s_yt = d_y (s_t/d + inv α_t − inv α_yt), cos α_t = d_b/d, cos α_yt = d_b/d_y",
    unit="m",
    source=_GEAR,
    transverse_tooth_thickness="s_t [m]",
    reference_diameter="d [m]",
    base_diameter="d_b [m]",
    diameter="d_y [m]",
)
def tooth_thickness_at_diameter(
    transverse_tooth_thickness: float,
    reference_diameter: float,
    base_diameter: float,
    diameter: float,
) -> float:
    """Transverse tooth thickness, as an arc, at a diameter such as the tip or working pitch one.

    Negative where the flanks have crossed below this diameter: the tooth is pointed before it.

    Raises:
        OutOfRange: ``diameter`` lies inside the base circle.
    """
    narrowing = involute(pressure_angle_at_diameter(base_diameter, diameter)) - involute(
        pressure_angle_at_diameter(base_diameter, reference_diameter)
    )
    return diameter * (transverse_tooth_thickness / reference_diameter - narrowing)


@equation(
    "s_yn",
    "s_yn = s_yt cos β_y",
    unit="m",
    source=_GEAR,
    tooth_thickness="s_yt [m]",
    helix_angle_there="β_y [rad]",
)
def normal_thickness_at_diameter(tooth_thickness: float, helix_angle_there: float) -> float:
    """Normal tooth thickness on the cylinder whose transverse thickness and helix are given."""
    return tooth_thickness * cos(helix_angle_there)


@equation(
    "l*",
    "l* = l / m_n",
    unit="1",
    source="definition: a length in normal modules",
    length="l [m]",
    normal_module="m_n [m]",
)
def in_modules(length: float, normal_module: float) -> float:
    """A length in normal modules: tip thickness, tip clearance, face width, backlash."""
    return length / normal_module


@equation(
    "ρ_y",
    "ρ_y = √(d_y² − d_b²) / 2",
    unit="m",
    source=_GEAR,
    base_diameter="d_b [m]",
    diameter="d_y [m]",
)
def curvature_radius_at_diameter(base_diameter: float, diameter: float) -> float:
    """Transverse radius of curvature of the involute at a diameter.

    It is also the distance, along the line of action, from the tangent point of the base circle.

    Raises:
        OutOfRange: ``diameter`` lies inside the base circle.
    """
    return 0.5 * base_diameter * tan(pressure_angle_at_diameter(base_diameter, diameter))


@equation(
    "d_y",
    "d_y = √(d_b² + 4 ρ_y²)",
    unit="m",
    source=_GEAR,
    base_diameter="d_b [m]",
    curvature_radius="ρ_y [m]",
)
def diameter_at_curvature_radius(base_diameter: float, curvature_radius: float) -> float:
    """Diameter at which the involute has a given transverse radius of curvature."""
    return hypot(base_diameter, 2.0 * curvature_radius)


@equation(
    "d_Na",
    "d_Na = d_a − 2 h_K",
    unit="m",
    source=_GEAR,
    tip_diameter="d_a [m]",
    chamfer_height="h_K [m]",
)
def active_tip_diameter(tip_diameter: float, chamfer_height: float) -> float:
    """Diameter at which the flank ends at the chamfer or rounding of the tip."""
    return tip_diameter - 2.0 * chamfer_height


@equation(
    "l",
    "l = min(l_1, l_2)",
    unit="m",
    source="definition",
    length_1="l_1 [m]",
    length_2="l_2 [m]",
)
def lesser_length(length_1: float, length_2: float) -> float:
    """The lesser of two lengths of the same kind, such as the tooth heights of a pair."""
    return min(length_1, length_2)
