"""Root section of ISO 6336-3, method B, for an external gear cut by a rack-type tool: Y_F and Y_S.

The edition is that of 2006. The section is where a tangent at 30 degrees to the tooth's middle
touches the fillet, the load stands at the outer point of single contact of the virtual spur gear.
Tools with protuberance are not covered. Lengths in normal modules inside the functions.
"""

from dataclasses import dataclass
from math import acos, cos, pi, sin, sqrt, tan

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
