"""Influences on what a flank and a root stand: life, film, roughness, hardness, size, notch.

After ISO 6336-2 and -3 of 2006, from memory. Stresses in Pa, roughness in m. Where film, roughness
and size factors fade towards few load cycles, the strength runs on a straight line between static
and endurance strength over the logarithms, so only the end points need factors.
"""

from collections.abc import Mapping
from math import exp, log, sqrt, tan
from types import MappingProxyType

from checker.mechanics.equation import OutOfRange, equation

_PART_2 = "ISO 6336-2:2006 (from memory)"
_PART_3 = "ISO 6336-3:2006 (from memory)"
_MICRO = 1e-6
_FINAL_CYCLES = 1e10
_FINAL_FACTOR = 0.85
_MOST_CYCLES = 1e12  # more than any gear has been tested for, or turns in its life

# Load cycles at the end of the static range, at the knee, and static life factor, no pitting.
_CONTACT: Mapping[str, tuple[float, float, float]] = MappingProxyType(
    {
        "through-hardened": (1e5, 5e7, 1.6),
        "case-carburised": (1e5, 5e7, 1.6),
        "induction-hardened": (1e5, 5e7, 1.6),
        "nitrided": (1e5, 2e6, 1.3),
    }
)
_BENDING: Mapping[str, tuple[float, float, float]] = MappingProxyType(
    {
        "through-hardened": (1e4, 3e6, 2.5),
        "case-carburised": (1e3, 3e6, 2.5),
        "induction-hardened": (1e3, 3e6, 2.5),
        "nitrided": (1e3, 3e6, 1.6),
    }
)


@equation(
    "Z_NT,stat",
    "Z_NT,stat = 1.6 to 1e5 load cycles; nitrided 1.3",
    unit="1",
    source=_PART_2,
    treatment="treatment []",
)
def static_factor_contact(treatment: str) -> float:
    """Life factor of the flank for few load cycles."""
    return _CONTACT[treatment][2]


@equation(
    "Y_NT,stat",
    "Y_NT,stat = 2.5 to 1e3 load cycles (1e4 through-hardened); nitrided 1.6",
    unit="1",
    source=_PART_3,
    treatment="treatment []",
)
def static_factor_bending(treatment: str) -> float:
    """Life factor of the root for few load cycles."""
    return _BENDING[treatment][2]


def _between(
    cycles: float, static: float, endurance: float, knees: tuple[float, float, float]
) -> float:
    """Strength at a number of load cycles: straight over logarithms, then down to 0.85 at 1e10."""
    first, knee, _ = knees
    if cycles <= first:
        return static
    if cycles <= knee:
        slope = log(static / endurance) / log(knee / first)
        return float(endurance * (knee / cycles) ** slope)
    slope = log(1.0 / _FINAL_FACTOR) / log(_FINAL_CYCLES / knee)
    return float(endurance * (knee / cycles) ** slope)


def _cycles(
    stress: float, static: float, endurance: float, knees: tuple[float, float, float]
) -> float:
    """Load cycles that a stress is stood for, the inverse of ``_between``, at most 1e12."""
    first, knee, _ = knees
    if stress > static:
        return 1.0
    if stress > endurance:
        return float(knee * (endurance / stress) ** (log(knee / first) / log(static / endurance)))
    slope = log(1.0 / _FINAL_FACTOR) / log(_FINAL_CYCLES / knee)
    exponent = min(log(_MOST_CYCLES / knee), log(endurance / stress) / slope)
    return knee * exp(exponent)


_LINE = {
    "static_strength": "σ_stat [Pa]",
    "endurance": "σ_G [Pa]",
    "treatment": "treatment []",
}


@equation(
    "σ_HG(N)",
    "σ_HG(N): log-log line from σ_stat at 1e5 to σ_HG at 5e7 (nitrided 2e6), then to 0.85 σ_HG at"
    " 1e10 and on",
    unit="Pa",
    source=_PART_2 + ", Z_NT without pitting; 0.85 at 1e10 as without special experience",
    cycles="N [1]",
    **_LINE,
)
def contact_strength(
    cycles: float, static_strength: float, endurance: float, treatment: str
) -> float:
    """Contact stress that the flank stands for a number of load cycles [Pa]."""
    return _between(cycles, static_strength, endurance, _CONTACT[treatment])


@equation(
    "σ_FG(N)",
    "σ_FG(N): log-log line from σ_stat at 1e3 (through-hardened 1e4) to σ_FG at 3e6, then to 0.85"
    " σ_FG at 1e10 and on",
    unit="Pa",
    source=_PART_3 + ", Y_NT; 0.85 at 1e10 as without special experience",
    cycles="N [1]",
    **_LINE,
)
def bending_strength(
    cycles: float, static_strength: float, endurance: float, treatment: str
) -> float:
    """Root stress that the tooth stands for a number of load cycles [Pa]."""
    return _between(cycles, static_strength, endurance, _BENDING[treatment])


@equation(
    "N_H",
    "σ_HG(N_H) = σ_H, solved for N_H, at most 1e12",
    unit="1",
    source=_PART_2 + ", Z_NT",
    stress="σ_H [Pa]",
    **_LINE,
)
def contact_cycles(
    stress: float, static_strength: float, endurance: float, treatment: str
) -> float:
    """Load cycles to pitting at a contact stress; one above the static strength."""
    return _cycles(stress, static_strength, endurance, _CONTACT[treatment])


@equation(
    "N_F",
    "σ_FG(N_F) = σ_F, solved for N_F, at most 1e12",
    unit="1",
    source=_PART_3 + ", Y_NT",
    stress="σ_F [Pa]",
    **_LINE,
)
def bending_cycles(
    stress: float, static_strength: float, endurance: float, treatment: str
) -> float:
    """Load cycles to a broken tooth at a root stress; one above the static strength."""
    return _cycles(stress, static_strength, endurance, _BENDING[treatment])


def _by_strength(contact_limit: float, soft: float, hard: float) -> float:
    """A coefficient that runs from 850 to 1200 MPa of contact limit."""
    weight = min(1.0, max(0.0, (contact_limit / 1e6 - 850.0) / 350.0))
    return soft + weight * (hard - soft)


@equation(
    "Z_L",
    "Z_L = C + 4 (1 − C)/(1.2 + 134/ν_40)², C = 0.83 to 850 MPa, 0.91 from 1200 MPa, ν_40 in mm²/s",
    unit="1",
    source=_PART_2,
    contact_limit="σ_Hlim [Pa]",
    viscosity_40="ν_40 [m2/s]",
)
def lubricant_factor(contact_limit: float, viscosity_40: float) -> float:
    """Lubricant factor: a thicker oil spares the flank."""
    c = _by_strength(contact_limit, 0.83, 0.91)
    return c + 4.0 * (1.0 - c) / (1.2 + 134e-6 / viscosity_40) ** 2


@equation(
    "Z_v",
    "Z_v = C + 2 (1 − C)/√(0.8 + 32/v), C = 0.85 to 850 MPa, 0.93 from 1200 MPa, v in m/s",
    unit="1",
    source=_PART_2,
    contact_limit="σ_Hlim [Pa]",
    pitch_line_speed="v [m/s]",
)
def velocity_factor(contact_limit: float, pitch_line_speed: float) -> float:
    """Velocity factor: speed builds the film.

    Raises:
        OutOfRange: the gears stand still.
    """
    if pitch_line_speed <= 0.0:
        raise OutOfRange("pitch_line_speed: the gears stand still")
    c = _by_strength(contact_limit, 0.85, 0.93)
    return c + 2.0 * (1.0 - c) / sqrt(0.8 + 32.0 / pitch_line_speed)


@equation(
    "Rz",
    "Rz = 6 Ra",
    unit="m",
    source=_PART_2 + ", approximate relation",
    roughness="Ra [m]",
)
def mean_peak_to_valley(roughness: float) -> float:
    """Mean peak-to-valley roughness Rz of a surface of roughness Ra [m]."""
    return 6.0 * roughness


@equation(
    "ρ_red",
    "ρ_red = ρ_1 ρ_2/(ρ_1 + ρ_2), ρ = ½ d_b tan α_wt",
    unit="m",
    source=_PART_2,
    base_diameter_1="d_b1 [m]",
    base_diameter_2="d_b2 [m]",
    working_pressure_angle="α_wt [rad]",
)
def pitch_point_curvature(
    base_diameter_1: float, base_diameter_2: float, working_pressure_angle: float
) -> float:
    """Relative radius of curvature at the pitch point, transverse [m]."""
    sum_ = base_diameter_1 + base_diameter_2
    return 0.5 * base_diameter_1 * base_diameter_2 / sum_ * tan(working_pressure_angle)


@equation(
    "Z_R",
    "Z_R = (3 µm/Rz_10)^C, Rz_10 = ½ (Rz_1 + Rz_2) (10 mm/ρ_red)^⅓, C = 0.15 to 850 MPa, 0.08 from"
    " 1200 MPa",
    unit="1",
    source=_PART_2,
    contact_limit="σ_Hlim [Pa]",
    roughness_1="Rz_1 [m]",
    roughness_2="Rz_2 [m]",
    curvature="ρ_red [m]",
)
def roughness_factor(
    contact_limit: float, roughness_1: float, roughness_2: float, curvature: float
) -> float:
    """Roughness factor: rough flanks pit earlier."""
    relative = 0.5 * (roughness_1 + roughness_2) * (10e-3 / curvature) ** (1.0 / 3.0)
    return float((3.0 * _MICRO / relative) ** _by_strength(contact_limit, 0.15, 0.08))


@equation(
    "Z_W",
    "Z_W = (1.2 − (HB − 130)/1700) (3 µm/Rz_mate)^0.15 of a flank of 130 to 470 HB against a much"
    " harder, ground one; 1 elsewhere",
    unit="1",
    source=_PART_2,
    treatment="treatment []",
    vickers="HV [HV]",
    treatment_of_mate="treatment of mate []",
    roughness_of_mate="Rz_mate [m]",
)
def hardening_factor(
    treatment: str, vickers: float, treatment_of_mate: str, roughness_of_mate: float
) -> float:
    """Work hardening factor of a soft flank that runs on a hard and smooth one."""
    if treatment != "through-hardened" or treatment_of_mate == "through-hardened":
        return 1.0
    if roughness_of_mate > 6.0 * _MICRO:
        return 1.0
    brinell = min(470.0, max(130.0, 0.95 * vickers))
    smooth = (3.0 * _MICRO / roughness_of_mate) ** 0.15
    return float(max(1.0, (1.2 - (brinell - 130.0) / 1700.0) * smooth))


@equation(
    "Z_X",
    "Z_X = 1 through-hardened and to m_n = 10 mm, nitrided to 7.5 mm",
    unit="1",
    source=_PART_2,
    treatment="treatment []",
    normal_module="m_n [m]",
)
def size_factor_contact(treatment: str, normal_module: float) -> float:
    """Size factor of the flank.

    Raises:
        OutOfRange: ``normal_module`` is larger than that.
    """
    most = {"through-hardened": 1.0, "nitrided": 7.5e-3}.get(treatment, 10e-3)
    if normal_module > most:
        raise OutOfRange(f"normal_module: {1e3 * normal_module:g} mm is outside what is rated here")
    return 1.0


@equation(
    "Y_X",
    "Y_X = 1 to m_n = 5 mm; hardened 1.05 − 0.01 m_n, at least 0.8; through-hardened"
    " 1.03 − 0.006 m_n, at least 0.85; m_n in mm",
    unit="1",
    source=_PART_3,
    treatment="treatment []",
    normal_module="m_n [m]",
)
def size_factor_bending(treatment: str, normal_module: float) -> float:
    """Size factor of the root."""
    millimetres = 1e3 * normal_module
    if treatment == "through-hardened":
        return max(0.85, min(1.0, 1.03 - 0.006 * millimetres))
    return max(0.8, min(1.0, 1.05 - 0.01 * millimetres))


# Slip-layer thickness in m: case-hardened, nitrided, and of tempered steel over proof stress.
_SLIP_LAYER = {"case-carburised": 3.0e-6, "induction-hardened": 3.0e-6, "nitrided": 100.5e-6}
_TEMPERED = ((500e6, 28.1e-6), (600e6, 19.4e-6), (800e6, 6.4e-6), (1000e6, 1.4e-6))


def _slip_layer(treatment: str, proof_stress: float) -> float:
    if treatment in _SLIP_LAYER:
        return _SLIP_LAYER[treatment]
    (low, thick), *rest = _TEMPERED
    if proof_stress <= low:
        return thick
    for high, thin in rest:
        if proof_stress <= high:
            return thick + (thin - thick) * (proof_stress - low) / (high - low)
        low, thick = high, thin
    return thick


@equation(
    "Y_δrelT",
    "Y_δrelT = (1 + √(ρ' χ*))/(1 + √(ρ' χ_T*)), χ* = 0.2 (1 + 2 q_s)/mm, q_sT = 2.5; ρ' = 3 µm"
    " hardened, 100.5 µm nitrided, 28.1 to 1.4 µm tempered at 500 to 1000 MPa",
    unit="1",
    source=_PART_3,
    notch_parameter="q_s [1]",
    treatment="treatment []",
    proof_stress="σ_0.2 [Pa]",
)
def notch_sensitivity(notch_parameter: float, treatment: str, proof_stress: float) -> float:
    """Relative notch sensitivity factor of the root, for endurance."""
    layer = _slip_layer(treatment, proof_stress)

    def support(q: float) -> float:
        return 1.0 + sqrt(layer * 200.0 * (1.0 + 2.0 * q))

    return support(notch_parameter) / support(2.5)


@equation(
    "Y_δrelT,stat",
    "Y_δrelT,stat = 0.44 Y_S + 0.12 hardened, 0.20 Y_S + 0.60 nitrided,"
    " (1 + 0.82 (Y_S − 1) k)/(1 + 0.82 k) tempered, k = (300 MPa/σ_0.2)^¼",
    unit="1",
    source=_PART_3,
    stress_correction_factor="Y_S [1]",
    treatment="treatment []",
    proof_stress="σ_0.2 [Pa]",
)
def notch_sensitivity_static(
    stress_correction_factor: float, treatment: str, proof_stress: float
) -> float:
    """Relative notch sensitivity factor of the root, for few load cycles."""
    if treatment == "nitrided":
        return 0.20 * stress_correction_factor + 0.60
    if treatment != "through-hardened":
        return 0.44 * stress_correction_factor + 0.12
    k = 0.82 * (300e6 / proof_stress) ** 0.25
    return float((1.0 + k * (stress_correction_factor - 1.0)) / (1.0 + k))


@equation(
    "Y_RrelT",
    "Y_RrelT = 1.674 − 0.529 (Rz + 1)^0.1, 1.12 below 1 µm; nitrided 4.299 − 3.259 (Rz + 1)^0.0058,"
    " 1.025 below 1 µm; Rz in µm",
    unit="1",
    source=_PART_3,
    roughness="Rz [m]",
    treatment="treatment []",
)
def surface_factor(roughness: float, treatment: str) -> float:
    """Relative surface factor of the root.

    Raises:
        OutOfRange: ``roughness`` is above 40 µm.
    """
    micrometres = roughness / _MICRO
    if micrometres > 40.0:
        raise OutOfRange(f"roughness: Rz of {micrometres:.0f} µm is above 40")
    if treatment == "nitrided":
        if micrometres < 1.0:
            return 1.025
        return float(4.299 - 3.259 * (micrometres + 1.0) ** 0.0058)
    return float(1.12 if micrometres < 1.0 else 1.674 - 0.529 * (micrometres + 1.0) ** 0.1)
