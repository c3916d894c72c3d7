"""What a rack-type tool (hob, rack cutter, grinding worm) leaves below the involute of a gear.

The tool is the counterpart of the basic rack of ISO 53: straight flanks down to the form dedendum,
then a round tip that reaches the dedendum. Depths and the tip radius are factors, in normal
modules. The generating profile shift is the nominal one less what thinning for backlash takes: the
tool stood that much deeper. Gears cut by a pinion-type shaper, and protuberance tools, have other
roots and are not covered. A gear ground after hobbing has the root of the tool that cut it.
"""

from math import atan2, cos, hypot, pi, sin, sqrt, tan

from checker.mechanics.equation import OutOfRange, equation
from checker.mechanics.tooth import involute, transverse_pressure_angle

_GENERATION = "ISO 21771:2007, generation by a rack-type tool (from memory)"
_HALVINGS = 48  # of a range below 1.6 rad: the last is below 1e-14 rad


@equation(
    "x_E",
    "x_E = x − ΔE_sn / (2 m_n tan α_n)",
    unit="1",
    source=_GENERATION,
    profile_shift="x [1]",
    thickness_reduction="ΔE_sn [m]",
    normal_module="m_n [m]",
    normal_pressure_angle="α_n [rad]",
)
def generating_profile_shift(
    profile_shift: float,
    thickness_reduction: float,
    normal_module: float,
    normal_pressure_angle: float,
) -> float:
    """Profile shift at which the tool stands when it has thinned the teeth for backlash."""
    return profile_shift - thickness_reduction / (2.0 * normal_module * tan(normal_pressure_angle))


@equation(
    "d_f",
    "d_f = d − 2 m_n (h_fP* − x_E)",
    unit="m",
    source=_GENERATION,
    reference_diameter="d [m]",
    normal_module="m_n [m]",
    dedendum_factor="h_fP* [1]",
    generating_profile_shift="x_E [1]",
)
def root_diameter(
    reference_diameter: float,
    normal_module: float,
    dedendum_factor: float,
    generating_profile_shift: float,
) -> float:
    """Root diameter that the tool tip leaves."""
    return reference_diameter - 2.0 * normal_module * (dedendum_factor - generating_profile_shift)


@equation(
    "h",
    "h = (d_a − d_f) / 2",
    unit="m",
    source="ISO 21771:2007, tooth depth (from memory)",
    tip_diameter="d_a [m]",
    root_diameter="d_f [m]",
)
def tooth_height(tip_diameter: float, root_diameter: float) -> float:
    """Height of the tooth from root to tip [m].

    Raises:
        OutOfRange: ``root_diameter`` is not below ``tip_diameter``.
    """
    if root_diameter >= tip_diameter:
        raise OutOfRange("root_diameter is not below the tip diameter")
    return 0.5 * (tip_diameter - root_diameter)


@equation(
    "h_FfP*",
    "h_FfP* = h_fP* − ρ_fP* (1 − sin α_n)",
    unit="1",
    source="ISO 53:1998, basic rack (from memory)",
    dedendum_factor="h_fP* [1]",
    tip_radius_factor="ρ_fP* [1]",
    normal_pressure_angle="α_n [rad]",
)
def form_dedendum_factor(
    dedendum_factor: float, tip_radius_factor: float, normal_pressure_angle: float
) -> float:
    """Depth below the datum line at which the straight flank of the tool ends.

    Raises:
        OutOfRange: ``tip_radius_factor`` needs more than the width of the tool tip.
    """
    half_width = pi / 4.0 - dedendum_factor * tan(normal_pressure_angle)
    fullest = half_width * cos(normal_pressure_angle) / (1.0 - sin(normal_pressure_angle))
    if tip_radius_factor > fullest:
        raise OutOfRange(
            f"a root fillet radius of {tip_radius_factor:.4g} modules does not fit the tip of the"
            f" tool, which has room for {fullest:.4g}"
        )
    return dedendum_factor - tip_radius_factor * (1.0 - sin(normal_pressure_angle))


@equation(
    "x_E,min",
    "x_E,min = h_FfP* − z sin² α_t / (2 cos β)",
    unit="1",
    source=_GENERATION,
    form_dedendum_factor="h_FfP* [1]",
    teeth="z [1]",
    transverse_pressure_angle="α_t [rad]",
    helix_angle="β [rad]",
)
def minimum_profile_shift(
    form_dedendum_factor: float, teeth: int, transverse_pressure_angle: float, helix_angle: float
) -> float:
    """Generating profile shift below which the tool cuts into the involute it has made.

    It is zero at the classic limit, 17.1 teeth for a form dedendum of one module at 20 degrees.
    """
    reach = teeth * sin(transverse_pressure_angle) ** 2 / (2.0 * cos(helix_angle))
    return form_dedendum_factor - reach


@equation(
    "Δx",
    "Δx = x_E − x_E,min",
    unit="1",
    source=_GENERATION,
    generating_profile_shift="x_E [1]",
    minimum_profile_shift="x_E,min [1]",
)
def undercut_margin(generating_profile_shift: float, minimum_profile_shift: float) -> float:
    """Profile shift in hand against undercut; negative where the root is undercut."""
    return generating_profile_shift - minimum_profile_shift


@equation(
    "d_Ff",
    "d_Ff = √((d sin α_t − 2 m_n (h_FfP* − x_E) / sin α_t)² + (d cos α_t)²);"
    " with undercut: where root fillet and involute cross",
    unit="m",
    source="ISO 21771:2007, root form diameter (from memory); undercut: envelope of the tool tip",
    reference_diameter="d [m]",
    normal_module="m_n [m]",
    normal_pressure_angle="α_n [rad]",
    helix_angle="β [rad]",
    dedendum_factor="h_fP* [1]",
    tip_radius_factor="ρ_fP* [1]",
    generating_profile_shift="x_E [1]",
)
def root_form_diameter(
    reference_diameter: float,
    normal_module: float,
    normal_pressure_angle: float,
    helix_angle: float,
    dedendum_factor: float,
    tip_radius_factor: float,
    generating_profile_shift: float,
) -> float:
    """Diameter at which the root fillet meets the involute: below it there is no involute.

    Without undercut it is the point that the end of the tool's straight flank generates. With
    undercut that point lies beyond the base circle's tangent point, and the fillet crosses the
    involute further out.

    Raises:
        OutOfRange: ``tip_radius_factor`` needs more than the width of the tool tip.
    """
    alpha_t = transverse_pressure_angle(normal_pressure_angle, helix_angle)
    base_diameter = reference_diameter * cos(alpha_t)
    form_dedendum = normal_module * (
        form_dedendum_factor(dedendum_factor, tip_radius_factor, normal_pressure_angle)
        - generating_profile_shift
    )
    twice_curvature = reference_diameter * sin(alpha_t) - 2.0 * form_dedendum / sin(alpha_t)
    if twice_curvature >= 0.0:
        return hypot(twice_curvature, base_diameter)
    fillet = _Fillet(
        reference_diameter / (2.0 * normal_module),
        normal_pressure_angle,
        helix_angle,
        dedendum_factor - tip_radius_factor - generating_profile_shift,
        tip_radius_factor,
    )
    return max(base_diameter, 2.0 * normal_module * fillet.crossing_radius())


class _Fillet:
    """The fillet that the round tool tip envelops, in normal modules.

    A point of the tip is named by the inclination of its tangent in the normal section, from the
    pressure angle (end of the straight flank) to a right angle (deepest point). The tip generates
    at the moment when the normal of the point passes through the pitch point.
    """

    def __init__(
        self, radius: float, alpha_n: float, beta: float, centre_depth: float, tip_radius: float
    ) -> None:
        self.radius = radius
        self.alpha_n = alpha_n
        self.cos_beta = cos(beta)
        self.alpha_t = transverse_pressure_angle(alpha_n, beta)
        self.centre_depth = centre_depth
        self.tip_radius = tip_radius
        # Of the round tip's centre, from where the flank crosses the rolling line.
        straight_end = centre_depth + tip_radius * sin(alpha_n)
        self.centre_offset = straight_end * tan(alpha_n) + tip_radius * cos(alpha_n)

    def point(self, inclination: float) -> tuple[float, float]:
        """Radius, and polar angle from the involute at the reference circle into the space."""
        depth = self.centre_depth + self.tip_radius * sin(inclination)
        offset = (self.centre_offset - self.tip_radius * cos(inclination)) / self.cos_beta
        along = depth * cos(inclination) * self.cos_beta / sin(inclination)
        height = self.radius - depth
        return hypot(along, height), atan2(-along, height) + (offset + along) / self.radius

    def inside_tooth(self, inclination: float) -> bool:
        """Whether the fillet is here inside the base circle or behind the involute."""
        radius, polar = self.point(inclination)
        base_radius = self.radius * cos(self.alpha_t)
        if radius <= base_radius:
            return True
        tangent = sqrt((radius / base_radius) ** 2 - 1.0)
        return polar < involute(self.alpha_t) - (tangent - atan2(tangent, 1.0))

    def crossing_radius(self) -> float:
        """Radius where the fillet of an undercut tooth leaves the tooth through the involute."""
        outside, inside = self.alpha_n, pi / 2.0
        for _ in range(_HALVINGS):
            middle = 0.5 * (outside + inside)
            if self.inside_tooth(middle):
                inside = middle
            else:
                outside = middle
        return self.point(outside)[0]


@equation(
    "Δd_f*",
    "Δd_f* = |d_f − d_f,tool| / (2 m_n)",
    unit="1",
    source="definition: radial difference in normal modules",
    root_diameter="d_f [m]",
    tooled_root_diameter="d_f,tool [m]",
    normal_module="m_n [m]",
)
def root_difference(
    root_diameter: float, tooled_root_diameter: float, normal_module: float
) -> float:
    """How far a root lies from the one its tool leaves, radially, in modules."""
    return abs(root_diameter - tooled_root_diameter) / (2.0 * normal_module)
