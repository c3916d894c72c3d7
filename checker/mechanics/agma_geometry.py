"""Geometry factors I and J of AGMA 908-B89 for external gears cut by a rack-type tool.

The root: a trochoid that the corner of the tool leaves, and the parabola of even strength that
touches it, of the virtual spur gear in the normal section. Load stands at the highest point of
single contact for spur teeth and at the tip for helical ones. Helical pairs whose overlap is 1 or
less (low axial contact ratio) are not covered. From memory; lengths in normal modules where not
said otherwise.
"""

from dataclasses import dataclass
from math import acos, atan, atan2, cos, degrees, hypot, pi, sin, sqrt, tan

from checker.mechanics.equation import OutOfRange, equation
from checker.mechanics.tooth import involute

_AGMA_908 = "AGMA 908-B89 (from memory)"


@equation(
    "ρ_1",
    "spur: ρ_1 = √(r_a1² − r_b1²) − p_b, at the lowest point of single contact; helical: at the"
    " mean radius, √((½ (r_a1 + a_w − r_a2))² − r_b1²); 1 the pinion",
    unit="m",
    source=_AGMA_908,
    tip_diameter="d_a1 [m]",
    base_diameter="d_b1 [m]",
    tip_diameter_of_mate="d_a2 [m]",
    centre_distance="a_w [m]",
    base_pitch="p_b [m]",
    is_spur="spur []",
)
def pinion_curvature(
    tip_diameter: float,
    base_diameter: float,
    tip_diameter_of_mate: float,
    centre_distance: float,
    base_pitch: float,
    is_spur: bool,
) -> float:
    """Radius of curvature of the pinion's flank where contact stress is taken [m].

    Raises:
        OutOfRange: that point lies within the base circle.
    """
    base = 0.5 * base_diameter
    if is_spur:
        radius = sqrt(max(0.0, 0.25 * tip_diameter**2 - base**2)) - base_pitch
    else:
        mean = 0.5 * (0.5 * tip_diameter + centre_distance - 0.5 * tip_diameter_of_mate)
        radius = sqrt(max(0.0, mean**2 - base**2))
    if radius <= 0.0:
        raise OutOfRange("tip_diameter: the point where stress is taken lies in the base circle")
    return radius


@equation(
    "m_N",
    "m_N = b/L_min, L_min of the fractions n_α, n_β of ε_α, ε_β: (ε_α b − n_α n_β p_x)/cos β_b,"
    " from n_α + n_β = 1 on (ε_α b − (1 − n_α)(1 − n_β) p_x)/cos β_b; 1 of spur pairs",
    unit="1",
    source=_AGMA_908,
    transverse_contact_ratio="ε_α [1]",
    overlap_ratio="ε_β [1]",
    base_helix_angle="β_b [rad]",
)
def load_sharing_ratio(
    transverse_contact_ratio: float, overlap_ratio: float, base_helix_angle: float
) -> float:
    """Face width over the least length of the contact lines.

    Raises:
        OutOfRange: a helical pair has an overlap of 1 or less.
    """
    if overlap_ratio == 0.0:
        return 1.0
    if overlap_ratio <= 1.0:
        raise OutOfRange(
            f"overlap_ratio: a helical pair with {overlap_ratio:.3g}, 1 or less, is not covered"
        )
    n_a, n_b = transverse_contact_ratio % 1.0, overlap_ratio % 1.0
    missing = n_a * n_b if n_a + n_b <= 1.0 else (1.0 - n_a) * (1.0 - n_b)
    least = transverse_contact_ratio - missing / overlap_ratio
    return cos(base_helix_angle) / least


@equation(
    "I",
    "I = cos α_wt / ((1/ρ_1 + 1/ρ_2) d_w1 m_N), ρ_2 = a_w sin α_wt − ρ_1",
    unit="1",
    source=_AGMA_908,
    working_pressure_angle="α_wt [rad]",
    pinion_curvature="ρ_1 [m]",
    centre_distance="a_w [m]",
    working_diameter="d_w1 [m]",
    load_sharing_ratio="m_N [1]",
)
def pitting_factor(
    working_pressure_angle: float,
    pinion_curvature: float,
    centre_distance: float,
    working_diameter: float,
    load_sharing_ratio: float,
) -> float:
    """Geometry factor I for pitting resistance.

    Raises:
        OutOfRange: the point where stress is taken lies within the wheel's base circle.
    """
    mates = centre_distance * sin(working_pressure_angle) - pinion_curvature
    if mates <= 0.0:
        raise OutOfRange("pinion_curvature: the point lies in the wheel's base circle")
    curvature = 1.0 / pinion_curvature + 1.0 / mates
    return cos(working_pressure_angle) / (curvature * working_diameter * load_sharing_ratio)


@dataclass(frozen=True, slots=True)
class Layout:
    """Where the parabola of even strength touches the root, in normal modules.

    Attributes:
        load_angle: φ_nL, of the load against the tooth's chord [rad].
        height: h_F, of the parabola.
        thickness: s_F, of the tooth where they touch.
        fillet_radius: ρ_F, least radius of the fillet.
    """

    load_angle: float
    height: float
    thickness: float
    fillet_radius: float


def layout(
    virtual_teeth: float,
    normal_pressure_angle: float,
    dedendum_factor: float,
    tip_radius_factor: float,
    profile_shift: float,
    thinning: float,
    load_pressure_angle: float,
) -> Layout:
    """Inscribe the parabola of even strength for a load at a pressure angle of the virtual gear.

    Args:
        virtual_teeth: z_n of the gear.
        normal_pressure_angle: α_n [rad].
        dedendum_factor: h_fP* of the tool.
        tip_radius_factor: ρ_fP* of the tool.
        profile_shift: x, nominal.
        thinning: ΔE_sn*, what the teeth are thinned by for backlash.
        load_pressure_angle: pressure angle of the involute at the point of load [rad].

    Raises:
        OutOfRange: the load acts below the root.
    """
    radius = 0.5 * virtual_teeth
    thickness = pi / 2.0 + 2.0 * profile_shift * tan(normal_pressure_angle) - thinning
    # Where the line of the load crosses the middle of the tooth.
    load_angle = tan(load_pressure_angle) - involute(normal_pressure_angle)
    load_angle -= thickness / virtual_teeth
    apex = radius * cos(normal_pressure_angle) / cos(load_angle)
    shift = profile_shift - thinning / (2.0 * tan(normal_pressure_angle))
    fillet = _Fillet(
        radius,
        dedendum_factor - tip_radius_factor - shift,
        tip_radius_factor,
        normal_pressure_angle,
        dedendum_factor,
    )
    low, high = normal_pressure_angle, pi / 2.0 - 1e-9

    def excess(inclination: float) -> float:
        half, height, slope = fillet.point(inclination)
        # The parabola through the apex has the slope x / 2h there.
        return slope * 2.0 * (apex - height) - half

    if excess(high) < 0.0:
        raise OutOfRange("load_pressure_angle: no parabola fits between load and root")
    if excess(low) < 0.0:
        for _ in range(60):
            middle = 0.5 * (low + high)
            if excess(middle) < 0.0:
                low = middle
            else:
                high = middle
    half, height, _ = fillet.point(low)
    if apex <= height:
        raise OutOfRange("load_pressure_angle: the load acts below the root")
    return Layout(load_angle, apex - height, 2.0 * half, fillet.least_radius())


class _Fillet:
    """The fillet of one tooth about its middle line, in normal modules.

    A point is named by the inclination of the tool corner's tangent to the rolling line; it is cut
    when the normal there passes through the pitch point.
    """

    def __init__(
        self, radius: float, centre_depth: float, tip_radius: float, alpha: float, dedendum: float
    ) -> None:
        self.radius = radius
        self.centre_depth = centre_depth
        self.tip_radius = tip_radius
        # Of the corner's centre from the middle of the tool's tooth.
        self.centre_offset = (
            pi / 4.0 - dedendum * tan(alpha) - tip_radius * (1.0 - sin(alpha)) / cos(alpha)
        )

    def point(self, inclination: float) -> tuple[float, float, float]:
        """Half thickness of the tooth, height over the gear's centre, and slope there.

        The slope is that of half thickness over height, positive where the tooth widens downwards.
        """
        sine, cosine = sin(inclination), cos(inclination)
        along = self.centre_depth * cosine / sine
        across, up = along + self.tip_radius * cosine, self.radius - self.centre_depth
        up -= self.tip_radius * sine
        turned = (along - self.centre_offset) / self.radius
        middle = pi / (2.0 * self.radius)
        from_middle = middle - (atan2(across, up) - turned)
        distance = hypot(across, up)
        slope = tan(inclination - turned - middle)
        return distance * sin(from_middle), distance * cos(from_middle), slope

    def least_radius(self) -> float:
        """Radius of the fillet at its deepest point."""
        return self.tip_radius + self.centre_depth**2 / (self.radius + self.centre_depth)


_ROOT = {
    "virtual_teeth": "z_n [1]",
    "normal_pressure_angle": "α_n [rad]",
    "dedendum_factor": "h_fP* [1]",
    "tip_radius_factor": "ρ_fP* [1]",
    "profile_shift": "x [1]",
    "thinning": "ΔE_sn* [1]",
    "load_point_diameter": "d_L* [1]",
}


def _layout_at(
    virtual_teeth: float,
    normal_pressure_angle: float,
    dedendum_factor: float,
    tip_radius_factor: float,
    profile_shift: float,
    thinning: float,
    load_point_diameter: float,
) -> Layout:
    base = virtual_teeth * cos(normal_pressure_angle)
    if load_point_diameter <= base:
        raise OutOfRange("load_point_diameter lies inside the base circle")
    return layout(
        virtual_teeth,
        normal_pressure_angle,
        dedendum_factor,
        tip_radius_factor,
        profile_shift,
        thinning,
        acos(base / load_point_diameter),
    )


@equation(
    "Y",
    "Y = cos β_w cos β / ((cos φ_nL/cos α_wn) (6 h_F/(s_F² C_h) − tan φ_nL/s_F)), h_F and s_F of"
    " the parabola of even strength, C_h = 1/(1 − √(ω/100 (1 − ω/100))), ω = atan(tan β sin α_n) in"
    " degrees; spur: cos β_w cos β = C_h = 1",
    unit="1",
    source=_AGMA_908,
    **_ROOT,
    helix_angle="β [rad]",
    base_helix_angle="β_b [rad]",
    working_pressure_angle="α_wt [rad]",
)
def tooth_form_factor(
    virtual_teeth: float,
    normal_pressure_angle: float,
    dedendum_factor: float,
    tip_radius_factor: float,
    profile_shift: float,
    thinning: float,
    load_point_diameter: float,
    helix_angle: float,
    base_helix_angle: float,
    working_pressure_angle: float,
) -> float:
    """Tooth form factor Y of AGMA 908 (not the Y_F of ISO, nor Lewis').

    Raises:
        OutOfRange: no parabola fits between load and root.
    """
    found = _layout_at(
        virtual_teeth,
        normal_pressure_angle,
        dedendum_factor,
        tip_radius_factor,
        profile_shift,
        thinning,
        load_point_diameter,
    )
    cosine_wn = sqrt(1.0 - (cos(base_helix_angle) * sin(working_pressure_angle)) ** 2)
    slant = degrees(atan(tan(helix_angle) * sin(normal_pressure_angle))) / 100.0
    spreading = 1.0 / (1.0 - sqrt(slant * (1.0 - slant)))
    working_helix = atan(tan(base_helix_angle) / cos(working_pressure_angle))
    bending = 6.0 * found.height / (found.thickness**2 * spreading)
    bending -= tan(found.load_angle) / found.thickness
    if bending <= 0.0:
        raise OutOfRange("load_point_diameter: the load does not bend the tooth")
    return cos(working_helix) * cos(helix_angle) * cosine_wn / (cos(found.load_angle) * bending)


@equation(
    "K_f",
    "K_f = H + (s_F/ρ_F)^L (s_F/h_F)^M, H = 0.331 − 0.436 α_n, L = 0.324 − 0.492 α_n,"
    " M = 0.261 + 0.545 α_n",
    unit="1",
    source=_AGMA_908 + ", after Dolan and Broghamer",
    **_ROOT,
)
def stress_concentration(
    virtual_teeth: float,
    normal_pressure_angle: float,
    dedendum_factor: float,
    tip_radius_factor: float,
    profile_shift: float,
    thinning: float,
    load_point_diameter: float,
) -> float:
    """Stress correction factor of the root.

    Raises:
        OutOfRange: no parabola fits between load and root.
    """
    found = _layout_at(
        virtual_teeth,
        normal_pressure_angle,
        dedendum_factor,
        tip_radius_factor,
        profile_shift,
        thinning,
        load_point_diameter,
    )
    if min(found.thickness, found.fillet_radius, found.height) <= 0.0:
        raise OutOfRange("thickness: nothing is left of the tooth at its root")
    alpha = normal_pressure_angle
    notch = (found.thickness / found.fillet_radius) ** (0.324 - 0.492 * alpha)
    slender = (found.thickness / found.height) ** (0.261 + 0.545 * alpha)
    return float(0.331 - 0.436 * alpha + notch * slender)


@equation(
    "J",
    "J = Y / (K_f m_N)",
    unit="1",
    source=_AGMA_908,
    tooth_form_factor="Y [1]",
    stress_concentration="K_f [1]",
    load_sharing_ratio="m_N [1]",
)
def bending_factor(
    tooth_form_factor: float, stress_concentration: float, load_sharing_ratio: float
) -> float:
    """Geometry factor J for bending strength."""
    return tooth_form_factor / (stress_concentration * load_sharing_ratio)


@equation(
    "ε_L",
    "ε_L = ε_αn of a spur pair, 1 (load at the tip) of a helical one",
    unit="1",
    source=_AGMA_908,
    virtual_contact_ratio="ε_αn [1]",
    is_spur="spur []",
)
def loading_contact_ratio(virtual_contact_ratio: float, is_spur: bool) -> float:
    """Contact ratio by which the load point comes down from the tip."""
    return virtual_contact_ratio if is_spur else 1.0
