"""Load factors of ISO 6336-1, method B: mesh stiffness, K_v, K_Hα and K_Fα.

External gears of steel with solid or stout blanks. Forces in N, lengths in m, stiffness per face
width in N/m2 (1 N/(mm µm) is 1e9 N/m2).
"""

from math import pi, sin, sqrt

from checker.mechanics.equation import OutOfRange, equation

_PART_1 = "ISO 6336-1:2006 (from memory)"
_STIFFNESS = "ISO 6336-1:2006, clause 9, method B (from memory)"
_DYNAMIC = "ISO 6336-1:2006, clause 6, method B (from memory)"
_TRANSVERSE = "ISO 6336-1:2006, clause 8, method B (from memory)"
_LIGHT = 1e5  # N/m: below 100 N/mm the contact is softer and the tooth errors weigh more


@equation(
    "F_t",
    "F_t = 2 |T| / d",
    unit="N",
    source=_PART_1,
    torque="T [N m]",
    reference_diameter="d [m]",
)
def nominal_force(torque: float, reference_diameter: float) -> float:
    """Nominal tangential force at the reference circle [N]."""
    return 2.0 * abs(torque) / reference_diameter


@equation(
    "w_m",
    "w_m = F_t K_A / b",
    unit="N/m",
    source=_PART_1,
    force="F_t [N]",
    application_factor="K_A [1]",
    face_width="b [m]",
)
def line_load(force: float, application_factor: float, face_width: float) -> float:
    """Mean load per face width with the application factor [N/m].

    Raises:
        OutOfRange: ``face_width`` is zero, or no load is carried.
    """
    if face_width <= 0.0:
        raise OutOfRange("face_width: the faces do not meet")
    if force <= 0.0:
        raise OutOfRange("force: the mesh carries no load")
    return force * application_factor / face_width


@equation(
    "w",
    "w = w_0 K",
    unit="N/m",
    source=_PART_1,
    load="w_0 [N/m]",
    factor="K [1]",
)
def load_with_factor(load: float, factor: float) -> float:
    """Load per face width with one more factor on it [N/m]."""
    return load * factor


@equation(
    "c'",
    "c' = c'_100 (w_m / 100 N/mm)^0.25, at most c'_100",
    unit="N/m2",
    source=_STIFFNESS,
    stiffness="c'_100 [N/m2]",
    load="w_m [N/m]",
)
def stiffness_under_load(stiffness: float, load: float) -> float:
    """Stiffness of a pair of teeth at a load per face width; softer below 100 N/mm [N/m2]."""
    return float(stiffness * min(1.0, load / _LIGHT) ** 0.25)


@equation(
    "m_red",
    "m_red = J_1 J_2 / (b (J_1 r_b2² + J_2 r_b1²))",
    unit="kg/m",
    source=_DYNAMIC,
    inertia_1="J_1 [kg m2]",
    base_diameter_1="d_b1 [m]",
    inertia_2="J_2 [kg m2]",
    base_diameter_2="d_b2 [m]",
    face_width="b [m]",
)
def reduced_mass(
    inertia_1: float,
    base_diameter_1: float,
    inertia_2: float,
    base_diameter_2: float,
    face_width: float,
) -> float:
    """Mass of the pair referred to the line of action, per face width [kg/m].

    Raises:
        OutOfRange: ``face_width`` is zero.
    """
    if face_width <= 0.0:
        raise OutOfRange("face_width: the faces do not meet")
    arms = inertia_1 * (0.5 * base_diameter_2) ** 2 + inertia_2 * (0.5 * base_diameter_1) ** 2
    return inertia_1 * inertia_2 / (face_width * arms)


@equation(
    "N",
    "N = ω_1 z_1 √(m_red / c_γα)",
    unit="1",
    source=_DYNAMIC,
    speed="ω_1 [rad/s]",
    teeth="z_1 [1]",
    reduced_mass="m_red [kg/m]",
    mesh_stiffness="c_γα [N/m2]",
)
def resonance_ratio(speed: float, teeth: int, reduced_mass: float, mesh_stiffness: float) -> float:
    """Tooth frequency over the natural frequency of the pair on its mesh stiffness."""
    return speed * teeth * sqrt(reduced_mass / mesh_stiffness)


@equation(
    "C_ay",
    "C_ay = (σ_Hlim/97 − 18.45)²/18 + 1.5 µm, σ_Hlim in MPa; mean of both gears",
    unit="m",
    source=_DYNAMIC,
    contact_limit_1="σ_Hlim1 [Pa]",
    contact_limit_2="σ_Hlim2 [Pa]",
)
def tip_relief_by_running_in(contact_limit_1: float, contact_limit_2: float) -> float:
    """Tip relief that running-in leaves on gears without a stated one [m]."""
    parts = [
        (limit / 97e6 - 18.45) ** 2 / 18.0 + 1.5 for limit in (contact_limit_1, contact_limit_2)
    ]
    return 0.5e-6 * sum(parts)


@equation(
    "B",
    "B = c' f / w_m",
    unit="1",
    source=_DYNAMIC,
    stiffness="c' [N/m2]",
    deviation="f [m]",
    load="w_m [N/m]",
)
def deviation_parameter(stiffness: float, deviation: float, load: float) -> float:
    """Weight of a deviation against the deflection under load (B_p, B_f)."""
    return stiffness * deviation / load


@equation(
    "B_k",
    "B_k = |1 − c' C_a / w_m|, at most 1; 1 from ISO grade 6 on",
    unit="1",
    source=_DYNAMIC,
    stiffness="c' [N/m2]",
    tip_relief="C_a [m]",
    load="w_m [N/m]",
    grade="A [1]",
)
def relief_parameter(stiffness: float, tip_relief: float, load: float, grade: int) -> float:
    """Weight of tip relief against the deflection under load.

    The standard sets no upper bound; a relief beyond twice the deflection counts here as none.
    """
    if grade >= 6:
        return 1.0
    return min(1.0, abs(1.0 - stiffness * tip_relief / load))


@equation(
    "K_v",
    "N ≤ N_S: 1 + N (C_v1 B_p + C_v2 B_f + C_v3 B_k); to 1.15: 1 + C_v1 B_p + C_v2 B_f + C_v4 B_k;"
    " from 1.5: C_v5 B_p + C_v6 B_f + C_v7; between 1.15 and 1.5 a straight line; N_S = 0.85,"
    " 0.5 + 0.35 √(w_m/100 N/mm) below 100 N/mm",
    unit="1",
    source=_DYNAMIC,
    resonance_ratio="N [1]",
    total_contact_ratio="ε_γ [1]",
    pitch_parameter="B_p [1]",
    profile_parameter="B_f [1]",
    relief_parameter="B_k [1]",
    load="w_m [N/m]",
)
def dynamic_factor(
    resonance_ratio: float,
    total_contact_ratio: float,
    pitch_parameter: float,
    profile_parameter: float,
    relief_parameter: float,
    load: float,
) -> float:
    """Dynamic factor: what the teeth's own vibration adds to the load they pass.

    Not for planets, nor where shafts resonate with the mesh.
    """
    c_v = _coefficients(total_contact_ratio)
    b = (pitch_parameter, profile_parameter, relief_parameter)

    def resonance() -> float:
        return 1.0 + c_v[0] * b[0] + c_v[1] * b[1] + c_v[3] * b[2]

    def beyond() -> float:
        return c_v[4] * b[0] + c_v[5] * b[1] + c_v[6]

    limit = 0.85 if load >= _LIGHT else 0.5 + 0.35 * sqrt(load / _LIGHT)
    if resonance_ratio <= limit:
        return 1.0 + resonance_ratio * (c_v[0] * b[0] + c_v[1] * b[1] + c_v[2] * b[2])
    if resonance_ratio <= 1.15:
        return resonance()
    if resonance_ratio >= 1.5:
        return max(1.0, beyond())
    weight = (1.5 - resonance_ratio) / 0.35
    return max(1.0, beyond() + weight * (resonance() - beyond()))


def _coefficients(total: float) -> tuple[float, ...]:
    """C_v1 to C_v7 for a total contact ratio."""
    if total <= 1.5:
        seventh = 0.75
    elif total <= 2.5:
        seventh = 0.875 + 0.125 * sin(pi * (total - 2.0))
    else:
        seventh = 1.0
    if total <= 2.0:
        return 0.32, 0.34, 0.23, 0.90, 0.47, 0.47, seventh
    return (
        0.32,
        0.57 / (total - 0.3),
        0.096 / (total - 1.56),
        (0.57 - 0.05 * total) / (total - 1.44),
        0.47,
        0.12 / (total - 1.74),
        seventh,
    )


def _transverse(
    total_contact_ratio: float, mesh_stiffness: float, deviation: float, load: float
) -> float:
    quotient = mesh_stiffness * deviation / load
    if total_contact_ratio <= 2.0:
        return 0.5 * total_contact_ratio * (0.9 + 0.4 * quotient)
    spread = 2.0 * (total_contact_ratio - 1.0) / total_contact_ratio
    return 0.9 + 0.4 * sqrt(spread) * quotient


@equation(
    "K_Hα",
    "q = c_γα (f_pb − y_α) / w_tH; ε_γ ≤ 2: ½ ε_γ (0.9 + 0.4 q), else"
    " 0.9 + 0.4 √(2 (ε_γ − 1)/ε_γ) q; from 1 to ε_γ/(ε_α Z_ε²)",
    unit="1",
    source=_TRANSVERSE,
    total_contact_ratio="ε_γ [1]",
    transverse_contact_ratio="ε_α [1]",
    contact_ratio_factor="Z_ε [1]",
    mesh_stiffness="c_γα [N/m2]",
    deviation="f_pb − y_α [m]",
    load="w_tH [N/m]",
)
def transverse_factor_contact(
    total_contact_ratio: float,
    transverse_contact_ratio: float,
    contact_ratio_factor: float,
    mesh_stiffness: float,
    deviation: float,
    load: float,
) -> float:
    """Uneven sharing between the pairs in contact, for flanks; the load holds K_A, K_v, K_Hβ."""
    most = total_contact_ratio / (transverse_contact_ratio * contact_ratio_factor**2)
    share = _transverse(total_contact_ratio, mesh_stiffness, deviation, load)
    return max(1.0, min(share, most))


@equation(
    "K_Fα",
    "as K_Hα; from 1 to ε_γ/(0.25 ε_α + 0.75)",
    unit="1",
    source=_TRANSVERSE,
    total_contact_ratio="ε_γ [1]",
    transverse_contact_ratio="ε_α [1]",
    mesh_stiffness="c_γα [N/m2]",
    deviation="f_pb − y_α [m]",
    load="w_tH [N/m]",
)
def transverse_factor_bending(
    total_contact_ratio: float,
    transverse_contact_ratio: float,
    mesh_stiffness: float,
    deviation: float,
    load: float,
) -> float:
    """Uneven sharing between the pairs in contact, for roots; the load holds K_A, K_v, K_Hβ."""
    most = total_contact_ratio / (0.25 * transverse_contact_ratio + 0.75)
    share = _transverse(total_contact_ratio, mesh_stiffness, deviation, load)
    return max(1.0, min(share, most))


@equation(
    "K",
    "K = K_A K_v K_β K_α",
    unit="1",
    source=_PART_1,
    application_factor="K_A [1]",
    dynamic_factor="K_v [1]",
    face_factor="K_β [1]",
    transverse_factor="K_α [1]",
)
def combined_load_factor(
    application_factor: float, dynamic_factor: float, face_factor: float, transverse_factor: float
) -> float:
    """Product of the load factors of a flank or of a root."""
    return application_factor * dynamic_factor * face_factor * transverse_factor


@equation(
    "K_A",
    "K_A = max(K_A,stated, K_A,survey)",
    unit="1",
    source="ISO 6336-1:2006, application factor (from memory): by measurement or by a survey",
    stated="K_A,stated [1]",
    computed="K_A,survey [1]",
)
def larger_application_factor(stated: float, computed: float) -> float:
    """The larger of an application factor stated with its evidence and a computed one."""
    return max(stated, computed)
