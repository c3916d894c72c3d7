"""Tooth root stress of ISO 6336-3, method B, for an external gear cut by a rack-type tool.

The edition is that of 2006. The section is where a tangent at 30 degrees to the tooth's middle
touches the fillet, the load stands at the outer point of single contact of the virtual spur gear.
Undercut tools with protuberance are not covered. Lengths in normal modules inside the functions.
"""

from dataclasses import dataclass
from math import acos, cos, degrees, log, pi, sin, sqrt, tan

from checker.mechanics.equation import OutOfRange, equation
from checker.mechanics.tooth import involute

_PART_3 = "ISO 6336-3:2006, method B (from memory)"
_THIRD = pi / 3.0


@equation(
    "z_n",
    "z_n = z / (cos² β_b cos β)",
    unit="1",
    source=_PART_3,
    teeth="z [1]",
    base_helix_angle="β_b [rad]",
    helix_angle="β [rad]",
)
def virtual_teeth(teeth: int, base_helix_angle: float, helix_angle: float) -> float:
    """Number of teeth of the spur gear that stands for a helical one in its normal section."""
    return teeth / (cos(base_helix_angle) ** 2 * cos(helix_angle))


@equation(
    "ε_αn",
    "ε_αn = ε_α / cos² β_b",
    unit="1",
    source=_PART_3,
    transverse_contact_ratio="ε_α [1]",
    base_helix_angle="β_b [rad]",
)
def virtual_contact_ratio(transverse_contact_ratio: float, base_helix_angle: float) -> float:
    """Contact ratio of the virtual spur pair."""
    return transverse_contact_ratio / cos(base_helix_angle) ** 2


@dataclass(frozen=True, slots=True)
class RootSection:
    """The critical section of the root of the virtual spur gear, in normal modules.

    Attributes:
        chord: s_Fn*, thickness of the tooth there.
        fillet_radius: ρ_F*, radius of the fillet there.
        height: distance from the centre of the gear.
    """

    chord: float
    fillet_radius: float
    height: float


def root_section(
    virtual_teeth: float,
    normal_pressure_angle: float,
    dedendum_factor: float,
    tip_radius_factor: float,
    generating_profile_shift: float,
) -> RootSection:
    """Find where the 30-degree tangent touches the fillet (E, G, H, θ of the standard).

    Raises:
        OutOfRange: ``tip_radius_factor`` leaves no section.
    """
    sine, cosine = sin(normal_pressure_angle), cos(normal_pressure_angle)
    corner = (
        pi / 4.0
        - dedendum_factor * tan(normal_pressure_angle)
        - (1.0 - sine) * tip_radius_factor / cosine
    )
    depth = tip_radius_factor - dedendum_factor + generating_profile_shift
    turn = 2.0 / virtual_teeth * (pi / 2.0 - corner) - _THIRD
    angle = pi / 6.0
    for _ in range(50):
        before = angle
        function = angle - 2.0 * depth / virtual_teeth * tan(angle) + turn
        angle -= function / (1.0 - 2.0 * depth / virtual_teeth / cos(angle) ** 2)
        if abs(angle - before) < 1e-13:
            break
    reach = depth / cos(angle) - tip_radius_factor
    chord = virtual_teeth * sin(_THIRD - angle) + sqrt(3.0) * reach
    radius = tip_radius_factor + 2.0 * depth**2 / (
        cos(angle) * (virtual_teeth * cos(angle) ** 2 - 2.0 * depth)
    )
    if chord <= 0.0 or radius <= 0.0:
        raise OutOfRange("tip_radius_factor: the tool leaves no root section")
    return RootSection(chord, radius, 0.5 * (virtual_teeth * cos(_THIRD - angle) + reach))


_SECTION = {
    "virtual_teeth": "z_n [1]",
    "normal_pressure_angle": "α_n [rad]",
    "dedendum_factor": "h_fP* [1]",
    "tip_radius_factor": "ρ_fP* [1]",
    "generating_profile_shift": "x_E [1]",
}


@equation(
    "s_Fn*",
    "s_Fn* = z_n sin(π/3 − θ) + √3 (G/cos θ − ρ_fP*), θ = (2 G/z_n) tan θ − H",
    unit="1",
    source=_PART_3,
    **_SECTION,
)
def root_chord(
    virtual_teeth: float,
    normal_pressure_angle: float,
    dedendum_factor: float,
    tip_radius_factor: float,
    generating_profile_shift: float,
) -> float:
    """Thickness of the tooth at the critical section, in normal modules.

    Raises:
        OutOfRange: ``tip_radius_factor`` leaves no section.
    """
    return root_section(
        virtual_teeth,
        normal_pressure_angle,
        dedendum_factor,
        tip_radius_factor,
        generating_profile_shift,
    ).chord


@equation(
    "ρ_F*",
    "ρ_F* = ρ_fP* + 2 G² / (cos θ (z_n cos² θ − 2 G))",
    unit="1",
    source=_PART_3,
    **_SECTION,
)
def root_fillet_radius(
    virtual_teeth: float,
    normal_pressure_angle: float,
    dedendum_factor: float,
    tip_radius_factor: float,
    generating_profile_shift: float,
) -> float:
    """Radius of the fillet at the critical section, in normal modules.

    Raises:
        OutOfRange: ``tip_radius_factor`` leaves no section.
    """
    return root_section(
        virtual_teeth,
        normal_pressure_angle,
        dedendum_factor,
        tip_radius_factor,
        generating_profile_shift,
    ).fillet_radius


@equation(
    "d_en*",
    "d_en = 2 √((√(d_an² − d_bn²)/2 − π m_n cos α_n (ε_αn − 1))² + d_bn²/4), d_an = z_n m_n + d_a"
    " − d, d_bn = z_n m_n cos α_n, in normal modules",
    unit="1",
    source=_PART_3,
    virtual_teeth="z_n [1]",
    normal_pressure_angle="α_n [rad]",
    tip_diameter="d_a [m]",
    reference_diameter="d [m]",
    normal_module="m_n [m]",
    virtual_contact_ratio="ε_αn [1]",
)
def load_point_diameter(
    virtual_teeth: float,
    normal_pressure_angle: float,
    tip_diameter: float,
    reference_diameter: float,
    normal_module: float,
    virtual_contact_ratio: float,
) -> float:
    """Diameter of the outer point of single contact of the virtual gear, in normal modules.

    Raises:
        OutOfRange: ``tip_diameter`` lies inside the base circle, or ``virtual_contact_ratio``
            leaves no point above it.
    """
    base = virtual_teeth * cos(normal_pressure_angle)
    tip = virtual_teeth + (tip_diameter - reference_diameter) / normal_module
    if tip <= base:
        raise OutOfRange("tip_diameter lies inside the base circle of the virtual gear")
    pitch = pi * cos(normal_pressure_angle)
    along = 0.5 * sqrt(tip**2 - base**2) - pitch * (virtual_contact_ratio - 1.0)
    if along <= 0.0:
        raise OutOfRange("virtual_contact_ratio leaves no outer point of single contact")
    return 2.0 * sqrt(along**2 + 0.25 * base**2)


def _load_angle(
    virtual_teeth: float,
    normal_pressure_angle: float,
    generating_profile_shift: float,
    load_point_diameter: float,
) -> tuple[float, float]:
    """α_Fen and γ_e: direction of the load against the chord, half tooth angle at the point."""
    pressure = acos(virtual_teeth * cos(normal_pressure_angle) / load_point_diameter)
    half = (0.5 * pi + 2.0 * generating_profile_shift * tan(normal_pressure_angle)) / virtual_teeth
    half += involute(normal_pressure_angle) - involute(pressure)
    return pressure - half, half


_LOADED = {**_SECTION, "load_point_diameter": "d_en* [1]"}


@equation(
    "h_Fe*",
    "h_Fe* = ½ ((cos γ_e − sin γ_e tan α_Fen) d_en* − z_n cos(π/3 − θ) − (G/cos θ − ρ_fP*))",
    unit="1",
    source=_PART_3,
    **_LOADED,
)
def bending_arm(
    virtual_teeth: float,
    normal_pressure_angle: float,
    dedendum_factor: float,
    tip_radius_factor: float,
    generating_profile_shift: float,
    load_point_diameter: float,
) -> float:
    """Bending arm of the load over the critical section, in normal modules.

    Raises:
        OutOfRange: ``tip_radius_factor`` leaves no section, or the load acts below it.
    """
    section = root_section(
        virtual_teeth,
        normal_pressure_angle,
        dedendum_factor,
        tip_radius_factor,
        generating_profile_shift,
    )
    angle, half = _load_angle(
        virtual_teeth, normal_pressure_angle, generating_profile_shift, load_point_diameter
    )
    arm = 0.5 * (cos(half) - sin(half) * tan(angle)) * load_point_diameter - section.height
    if arm <= 0.0:
        raise OutOfRange("load_point_diameter: the load acts below the critical section")
    return arm


@equation(
    "α_Fen",
    "α_Fen = α_en − γ_e, cos α_en = d_bn/d_en, γ_e = (π/2 + 2 x_E tan α_n)/z_n + inv α_n"
    " − inv α_en",
    unit="rad",
    source=_PART_3,
    virtual_teeth="z_n [1]",
    normal_pressure_angle="α_n [rad]",
    generating_profile_shift="x_E [1]",
    load_point_diameter="d_en* [1]",
)
def load_direction(
    virtual_teeth: float,
    normal_pressure_angle: float,
    generating_profile_shift: float,
    load_point_diameter: float,
) -> float:
    """Angle of the load against the chord of the tooth [rad]."""
    return _load_angle(
        virtual_teeth, normal_pressure_angle, generating_profile_shift, load_point_diameter
    )[0]


@equation(
    "Y_F",
    "Y_F = 6 h_Fe* cos α_Fen / (s_Fn*² cos α_n)",
    unit="1",
    source=_PART_3,
    bending_arm="h_Fe* [1]",
    load_direction="α_Fen [rad]",
    root_chord="s_Fn* [1]",
    normal_pressure_angle="α_n [rad]",
)
def form_factor(
    bending_arm: float, load_direction: float, root_chord: float, normal_pressure_angle: float
) -> float:
    """Tooth form factor: nominal bending stress for the load at the outer point."""
    return 6.0 * bending_arm * cos(load_direction) / (root_chord**2 * cos(normal_pressure_angle))


@equation(
    "q_s",
    "q_s = s_Fn* / (2 ρ_F*)",
    unit="1",
    source=_PART_3,
    root_chord="s_Fn* [1]",
    fillet_radius="ρ_F* [1]",
)
def notch_parameter(root_chord: float, fillet_radius: float) -> float:
    """Notch parameter of the root."""
    return root_chord / (2.0 * fillet_radius)


@equation(
    "Y_S",
    "Y_S = (1.2 + 0.13 L) q_s^(1/(1.21 + 2.3/L)), L = s_Fn*/h_Fe*",
    unit="1",
    source=_PART_3,
    root_chord="s_Fn* [1]",
    bending_arm="h_Fe* [1]",
    notch_parameter="q_s [1]",
)
def stress_correction_factor(
    root_chord: float, bending_arm: float, notch_parameter: float
) -> float:
    """Stress correction factor: what the notch makes of the nominal stress.

    Valid for q_s from 1 to 8.

    Raises:
        OutOfRange: ``notch_parameter`` is outside 1 to 8.
    """
    if not 1.0 <= notch_parameter <= 8.0:
        raise OutOfRange(f"notch_parameter {notch_parameter:.3g} is outside 1 to 8")
    slenderness = root_chord / bending_arm
    exponent = 1.0 / (1.21 + 2.3 / slenderness)
    return float((1.2 + 0.13 * slenderness) * notch_parameter**exponent)


@equation(
    "Y_β",
    "Y_β = 1 − ε_β β / 120°, ε_β at most 1, β at most 30°",
    unit="1",
    source="ISO 6336-3:2006; 2019 adds 1/cos³ β (both from memory)",
    overlap_ratio="ε_β [1]",
    helix_angle="β [rad]",
)
def helix_factor(overlap_ratio: float, helix_angle: float) -> float:
    """Helix factor for bending: the slanting contact line spares the root."""
    return 1.0 - min(1.0, overlap_ratio) * min(30.0, degrees(helix_angle)) / 120.0


@equation(
    "Y_B",
    "Y_B = 1 from s_R/h_t = 1.2 on, 1.6 ln(2.242 h_t/s_R) down to 0.5",
    unit="1",
    source="ISO 6336-3:2006; AGMA 2001-D04 has the same K_B (both from memory)",
    rim_thickness="s_R [m]",
    tooth_height="h_t [m]",
)
def rim_factor(rim_thickness: float, tooth_height: float) -> float:
    """Rim thickness factor: a thin rim bends with the tooth.

    Raises:
        OutOfRange: ``rim_thickness`` is at most half of the tooth height: to be avoided.
    """
    ratio = rim_thickness / tooth_height
    if ratio <= 0.5:
        raise OutOfRange(f"rim_thickness: a rim of {ratio:.2g} tooth heights is outside the rating")
    return 1.0 if ratio >= 1.2 else 1.6 * log(2.242 / ratio)


@equation(
    "Y_DT",
    "Y_DT = 1 to ε_αn = 2.05 or with grades from 5; −0.666 ε_αn + 2.366 to 2.5, then 0.7",
    unit="1",
    source=_PART_3,
    virtual_contact_ratio="ε_αn [1]",
    grade="A [1]",
)
def deep_tooth_factor(virtual_contact_ratio: float, grade: int) -> float:
    """Deep tooth factor of accurate pairs with a high contact ratio."""
    if virtual_contact_ratio <= 2.05 or grade > 4:
        return 1.0
    return max(0.7, 2.366 - 0.666 * virtual_contact_ratio)


@equation(
    "σ_F0",
    "σ_F0 = F_t/(b m_n) Y_F Y_S Y_ε Y_β Y_B Y_DT",
    unit="Pa",
    source=_PART_3,
    force="F_t [N]",
    face_width="b [m]",
    normal_module="m_n [m]",
    form_factor="Y_F [1]",
    stress_correction_factor="Y_S [1]",
    contact_ratio_factor="Y_ε [1]",
    helix_factor="Y_β [1]",
    rim_factor="Y_B [1]",
    deep_tooth_factor="Y_DT [1]",
)
def nominal_root_stress(
    force: float,
    face_width: float,
    normal_module: float,
    form_factor: float,
    stress_correction_factor: float,
    contact_ratio_factor: float,
    helix_factor: float,
    rim_factor: float,
    deep_tooth_factor: float,
) -> float:
    """Local root stress without load factors [Pa].

    Raises:
        OutOfRange: ``face_width`` is zero.
    """
    if face_width <= 0.0:
        raise OutOfRange("face_width: the faces do not meet")
    tooth = form_factor * stress_correction_factor * contact_ratio_factor * helix_factor
    return force / (face_width * normal_module) * tooth * rim_factor * deep_tooth_factor


@equation(
    "σ_F",
    "σ_F = σ_F0 K_A K_v K_Fβ K_Fα",
    unit="Pa",
    source=_PART_3,
    nominal_stress="σ_F0 [Pa]",
    load_factor="K [1]",
)
def root_stress(nominal_stress: float, load_factor: float) -> float:
    """Local root stress [Pa]."""
    return nominal_stress * load_factor


@equation(
    "σ_FG",
    "σ_FG = σ_Flim Y_ST Y_M Y_δrelT Y_RrelT Y_X / Y_Z, Y_ST = 2",
    unit="Pa",
    source=_PART_3 + "; Y_Z of AGMA 2101, ISO knows damage of 1 % alone",
    bending_limit="σ_Flim [Pa]",
    reversal_factor="Y_M [1]",
    notch_sensitivity="Y_δrelT [1]",
    surface_factor="Y_RrelT [1]",
    size_factor="Y_X [1]",
    reliability_factor="Y_Z [1]",
)
def bending_endurance(
    bending_limit: float,
    reversal_factor: float,
    notch_sensitivity: float,
    surface_factor: float,
    size_factor: float,
    reliability_factor: float,
) -> float:
    """Root stress that the tooth stands at the reference number of load cycles [Pa]."""
    strength = 2.0 * bending_limit * reversal_factor * notch_sensitivity
    return strength * surface_factor * size_factor / reliability_factor


@equation(
    "σ_FG,stat",
    "σ_FG,stat = σ_Flim Y_ST Y_NT,stat Y_δrelT,stat / Y_Z, Y_ST = 2",
    unit="Pa",
    source=_PART_3,
    bending_limit="σ_Flim [Pa]",
    static_life_factor="Y_NT,stat [1]",
    notch_sensitivity="Y_δrelT,stat [1]",
    reliability_factor="Y_Z [1]",
)
def bending_static_strength(
    bending_limit: float,
    static_life_factor: float,
    notch_sensitivity: float,
    reliability_factor: float,
) -> float:
    """Root stress that the tooth stands for few load cycles [Pa]; size and surface do not count."""
    return 2.0 * bending_limit * static_life_factor * notch_sensitivity / reliability_factor


@equation(
    "Y_M",
    "Y_M = 0.7 where the tooth bends both ways in each turn, else 1",
    unit="1",
    source="ISO 6336-5:2003, idler gears; AGMA 2001-D04 has the same (both from memory)",
    is_idler="idler []",
)
def reversal_factor(is_idler: bool) -> float:
    """Share of the bending limit that a tooth bent both ways keeps."""
    return 0.7 if is_idler else 1.0
