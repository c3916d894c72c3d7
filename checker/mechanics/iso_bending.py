"""Tooth root stress of ISO 6336-3, method B, and what a root stands.

The edition is that of 2006; form and stress correction come from the root section.
"""

from math import degrees, log

from checker.mechanics.equation import OutOfRange, equation

_PART_3 = "ISO 6336-3:2006, method B (from memory)"


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
