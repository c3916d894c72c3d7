"""Contact stress of ISO 6336-2, method B, for an external pair, with the stress it may reach.

The edition is that of 2006 with Corrigendum 1 of 2008, in which Z_β is 1/√cos β; before, it was
√cos β. Gear "1" below is the gear that is looked at and "2" its mate, whichever drives.
"""

from math import cos, pi, sin, sqrt, tan

from checker.mechanics.equation import OutOfRange, equation

_PART_2 = "ISO 6336-2:2006 with Cor. 1:2008 (from memory)"


@equation(
    "Z_H",
    "Z_H = √(2 cos β_b cos α_wt / (cos² α_t sin α_wt))",
    unit="1",
    source=_PART_2,
    base_helix_angle="β_b [rad]",
    working_pressure_angle="α_wt [rad]",
    transverse_pressure_angle="α_t [rad]",
)
def zone_factor(
    base_helix_angle: float, working_pressure_angle: float, transverse_pressure_angle: float
) -> float:
    """Zone factor: curvature of the flanks at the pitch point."""
    above = 2.0 * cos(base_helix_angle) * cos(working_pressure_angle)
    return sqrt(above / (cos(transverse_pressure_angle) ** 2 * sin(working_pressure_angle)))


@equation(
    "Z_E",
    "Z_E = √(1 / (π ((1 − ν_1²)/E_1 + (1 − ν_2²)/E_2)))",
    unit="√Pa",
    source=_PART_2 + "; AGMA 2001-D04 calls it C_p",
    modulus_1="E_1 [Pa]",
    poisson_1="ν_1 [1]",
    modulus_2="E_2 [Pa]",
    poisson_2="ν_2 [1]",
)
def elasticity_factor(
    modulus_1: float, poisson_1: float, modulus_2: float, poisson_2: float
) -> float:
    """Elasticity factor [√Pa]; 189.8 √MPa for steel on steel at 206 GPa and 0.3."""
    compliance = (1.0 - poisson_1**2) / modulus_1 + (1.0 - poisson_2**2) / modulus_2
    return sqrt(1.0 / (pi * compliance))


@equation(
    "Z_ε",
    "ε_β ≥ 1: √(1/ε_α), else √((4 − ε_α)/3 (1 − ε_β) + ε_β/ε_α)",
    unit="1",
    source=_PART_2,
    transverse_contact_ratio="ε_α [1]",
    overlap_ratio="ε_β [1]",
)
def contact_ratio_factor(transverse_contact_ratio: float, overlap_ratio: float) -> float:
    """Contact ratio factor: length of the contact lines.

    Raises:
        OutOfRange: ``transverse_contact_ratio`` is below 1.
    """
    if transverse_contact_ratio < 1.0:
        raise OutOfRange(
            f"transverse_contact_ratio: at {transverse_contact_ratio:.3g} contact is lost between"
            " pairs, and the rating has no meaning"
        )
    if overlap_ratio >= 1.0:
        return sqrt(1.0 / transverse_contact_ratio)
    spur = (4.0 - transverse_contact_ratio) / 3.0
    return sqrt(spur * (1.0 - overlap_ratio) + overlap_ratio / transverse_contact_ratio)


@equation(
    "Z_β",
    "Z_β = 1/√(cos β)",
    unit="1",
    source=_PART_2,
    helix_angle="β [rad]",
)
def helix_factor(helix_angle: float) -> float:
    """Helix factor for contact."""
    return 1.0 / sqrt(cos(helix_angle))


@equation(
    "M",
    "M = tan α_wt / √((√(d_a1²/d_b1² − 1) − 2π/z_1) (√(d_a2²/d_b2² − 1) − (ε_α − 1) 2π/z_2))",
    unit="1",
    source=_PART_2,
    working_pressure_angle="α_wt [rad]",
    tip_diameter="d_a1 [m]",
    base_diameter="d_b1 [m]",
    teeth="z_1 [1]",
    tip_diameter_of_mate="d_a2 [m]",
    base_diameter_of_mate="d_b2 [m]",
    teeth_of_mate="z_2 [1]",
    transverse_contact_ratio="ε_α [1]",
)
def single_contact_ratio(
    working_pressure_angle: float,
    tip_diameter: float,
    base_diameter: float,
    teeth: int,
    tip_diameter_of_mate: float,
    base_diameter_of_mate: float,
    teeth_of_mate: int,
    transverse_contact_ratio: float,
) -> float:
    """Stress at this gear's inner point of single contact over that at the pitch point (M_1, M_2).

    Raises:
        OutOfRange: the inner point of single contact lies at or beyond a base circle.
    """
    own = sqrt((tip_diameter / base_diameter) ** 2 - 1.0) - 2.0 * pi / teeth
    mates = sqrt((tip_diameter_of_mate / base_diameter_of_mate) ** 2 - 1.0)
    mates -= (transverse_contact_ratio - 1.0) * 2.0 * pi / teeth_of_mate
    if own <= 0.0 or mates <= 0.0:
        raise OutOfRange("teeth: the inner point of single contact lies within a base circle")
    return tan(working_pressure_angle) / sqrt(own * mates)


@equation(
    "Z_B",
    "Z_B = max(1, M) of a spur gear, 1 from ε_β = 1 on, max(1, M − ε_β (M − 1)) between",
    unit="1",
    source=_PART_2 + "; Z_B of the pinion, Z_D of the wheel",
    single_contact_ratio="M [1]",
    overlap_ratio="ε_β [1]",
)
def single_contact_factor(single_contact_ratio: float, overlap_ratio: float) -> float:
    """Single pair tooth contact factor of one gear (Z_B, Z_D)."""
    if overlap_ratio >= 1.0:
        return 1.0
    return max(1.0, single_contact_ratio - overlap_ratio * (single_contact_ratio - 1.0))


@equation(
    "σ_H0",
    "σ_H0 = Z_H Z_E Z_ε Z_β √(F_t/(d_1 b) (u + 1)/u), u = d_2/d_1",
    unit="Pa",
    source=_PART_2,
    zone_factor="Z_H [1]",
    elasticity_factor="Z_E [√Pa]",
    contact_ratio_factor="Z_ε [1]",
    helix_factor="Z_β [1]",
    force="F_t [N]",
    reference_diameter="d_1 [m]",
    reference_diameter_of_mate="d_2 [m]",
    face_width="b [m]",
)
def nominal_contact_stress(
    zone_factor: float,
    elasticity_factor: float,
    contact_ratio_factor: float,
    helix_factor: float,
    force: float,
    reference_diameter: float,
    reference_diameter_of_mate: float,
    face_width: float,
) -> float:
    """Contact stress at the pitch point without load factors [Pa]; the same for both gears.

    Raises:
        OutOfRange: ``face_width`` is zero.
    """
    if face_width <= 0.0:
        raise OutOfRange("face_width: the faces do not meet")
    curvature = 1.0 / reference_diameter + 1.0 / reference_diameter_of_mate
    factors = zone_factor * elasticity_factor * contact_ratio_factor * helix_factor
    return factors * sqrt(force / face_width * curvature)


@equation(
    "σ_H",
    "σ_H = Z_B σ_H0 √(K_A K_v K_Hβ K_Hα)",
    unit="Pa",
    source=_PART_2,
    single_contact_factor="Z_B [1]",
    nominal_stress="σ_H0 [Pa]",
    load_factor="K [1]",
)
def contact_stress(
    single_contact_factor: float, nominal_stress: float, load_factor: float
) -> float:
    """Contact stress of one gear [Pa]."""
    return single_contact_factor * nominal_stress * sqrt(load_factor)


@equation(
    "σ_HG",
    "σ_HG = σ_Hlim Z_L Z_v Z_R Z_W Z_X / Z_Z",
    unit="Pa",
    source=_PART_2 + "; Z_Z is Y_Z of AGMA 2101, ISO knows damage of 1 % alone",
    contact_limit="σ_Hlim [Pa]",
    lubricant_factor="Z_L [1]",
    velocity_factor="Z_v [1]",
    roughness_factor="Z_R [1]",
    hardening_factor="Z_W [1]",
    size_factor="Z_X [1]",
    reliability_factor="Z_Z [1]",
)
def contact_endurance(
    contact_limit: float,
    lubricant_factor: float,
    velocity_factor: float,
    roughness_factor: float,
    hardening_factor: float,
    size_factor: float,
    reliability_factor: float,
) -> float:
    """Contact stress that the flank stands at the reference number of load cycles [Pa]."""
    film = lubricant_factor * velocity_factor * roughness_factor
    return contact_limit * film * hardening_factor * size_factor / reliability_factor


@equation(
    "σ_HG,stat",
    "σ_HG,stat = σ_Hlim Z_NT,stat Z_W / Z_Z",
    unit="Pa",
    source=_PART_2,
    contact_limit="σ_Hlim [Pa]",
    static_life_factor="Z_NT,stat [1]",
    hardening_factor="Z_W [1]",
    reliability_factor="Z_Z [1]",
)
def contact_static_strength(
    contact_limit: float,
    static_life_factor: float,
    hardening_factor: float,
    reliability_factor: float,
) -> float:
    """Contact stress that the flank stands for few load cycles [Pa]."""
    return contact_limit * static_life_factor * hardening_factor / reliability_factor


@equation(
    "S",
    "S = σ_G / σ",
    unit="1",
    source="ISO 6336-2 and -3:2006, safety factor (from memory)",
    strength="σ_G [Pa]",
    stress="σ [Pa]",
)
def safety_factor(strength: float, stress: float) -> float:
    """Strength over stress (S_H, S_F).

    Raises:
        OutOfRange: ``stress`` is zero.
    """
    if stress <= 0.0:
        raise OutOfRange("stress: the mesh carries no load")
    return strength / stress


@equation(
    "f_P",
    "f_P = S_H²",
    unit="1",
    source="Hertz: load grows with the square of the contact stress",
    contact_safety="S_H [1]",
)
def load_in_hand(contact_safety: float) -> float:
    """Load that brings a flank to its limit over the present load; of a root it is S_F itself."""
    return contact_safety**2
