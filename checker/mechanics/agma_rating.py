"""Rating of AGMA 2001-D04: stresses and what they may reach, the second opinion beside ISO.

Everything from memory, in SI units where the standard takes inches, pounds and feet per minute. A
stress here is held against an allowable of this module alone, never of ISO.
"""

from collections.abc import Mapping
from math import sqrt
from types import MappingProxyType

from checker.mechanics.equation import OutOfRange, equation

_AGMA = "ANSI/AGMA 2001-D04 (from memory)"
_KPSI = 6.894757293e6
_STATIC_BENDING, _STATIC_CONTACT = 1e3, 1e4  # fewer load cycles add no strength
_FOOT_PER_MINUTE = 0.00508
_INCH = 0.0254


@equation(
    "K_v",
    "K_v = ((A + √V)/A)^B, A = 50 + 56 (1 − B), B = 0.25 (12 − Q_v)^⅔, V in ft/min",
    unit="1",
    source=_AGMA,
    pitch_line_speed="V [m/s]",
    quality="Q_v [1]",
)
def dynamic_factor(pitch_line_speed: float, quality: int) -> float:
    """Dynamic factor of a transmission accuracy number of 5 to 11; better counts as 11.

    Raises:
        OutOfRange: ``quality`` is below 5, or the speed beyond what it is drawn for.
    """
    if quality < 5:
        raise OutOfRange(f"quality {quality} is below 5")
    number = min(11, quality)
    speed = pitch_line_speed / _FOOT_PER_MINUTE
    b = 0.25 * (12.0 - number) ** (2.0 / 3.0)
    a = 50.0 + 56.0 * (1.0 - b)
    if speed > (a + number - 3.0) ** 2:
        raise OutOfRange(
            f"pitch_line_speed {pitch_line_speed:.3g} m/s is beyond the curve of Q_v {number}"
        )
    return float(((a + sqrt(speed)) / a) ** b)


# A, B (per inch) and C (per inch squared) of the mesh alignment factor by enclosure.
_ALIGNMENT: Mapping[str, tuple[float, float, float]] = MappingProxyType(
    {
        "open gearing": (0.247, 0.0167, -0.765e-4),
        "commercial enclosed": (0.127, 0.0158, -0.930e-4),
        "precision enclosed": (0.0675, 0.0128, -0.926e-4),
        "extra-precision enclosed": (0.00360, 0.0102, -0.822e-4),
    }
)


@equation(
    "K_m",
    "K_m = 1 + C_pf + C_ma; C_pf = max(b/d, 0.5)/10 − 0.025, above 1 in − 0.0375 + 0.0125 b;"
    " C_ma = A + B b + C b² of the enclosure; b in inch",
    unit="1",
    source=_AGMA + ", empirical method, uncrowned teeth, pinion midway between bearings",
    face_width="b [m]",
    pinion_diameter="d [m]",
    enclosure="enclosure []",
)
def load_distribution(face_width: float, pinion_diameter: float, enclosure: str) -> float:
    """Load distribution factor, for face widths up to 17 inches."""
    inches = face_width / _INCH
    proportion = max(0.05, face_width / (10.0 * pinion_diameter)) - 0.025
    if inches > 1.0:
        proportion += 0.0125 * (inches - 1.0)
    a, b, c = _ALIGNMENT[enclosure]
    return 1.0 + proportion + a + b * inches + c * inches**2


@equation(
    "σ_c",
    "σ_c = C_p √(F_t K_o K_v K_s K_m / (d_w1 b I))",
    unit="Pa",
    source=_AGMA,
    elastic_coefficient="C_p [√Pa]",
    force="F_t [N]",
    overload_factor="K_o [1]",
    dynamic_factor="K_v [1]",
    size_factor="K_s [1]",
    load_distribution="K_m [1]",
    pinion_diameter="d_w1 [m]",
    face_width="b [m]",
    pitting_factor="I [1]",
)
def contact_stress(
    elastic_coefficient: float,
    force: float,
    overload_factor: float,
    dynamic_factor: float,
    size_factor: float,
    load_distribution: float,
    pinion_diameter: float,
    face_width: float,
    pitting_factor: float,
) -> float:
    """Contact stress number [Pa].

    Raises:
        OutOfRange: ``face_width`` is zero.
    """
    if face_width <= 0.0:
        raise OutOfRange("face_width: the faces do not meet")
    load = force * overload_factor * dynamic_factor * size_factor * load_distribution
    return elastic_coefficient * sqrt(load / (pinion_diameter * face_width * pitting_factor))


@equation(
    "σ_t",
    "σ_t = F_t K_o K_v K_s K_m K_B / (b m_t J)",
    unit="Pa",
    source=_AGMA,
    force="F_t [N]",
    overload_factor="K_o [1]",
    dynamic_factor="K_v [1]",
    size_factor="K_s [1]",
    load_distribution="K_m [1]",
    rim_factor="K_B [1]",
    face_width="b [m]",
    transverse_module="m_t [m]",
    bending_factor="J [1]",
)
def bending_stress(
    force: float,
    overload_factor: float,
    dynamic_factor: float,
    size_factor: float,
    load_distribution: float,
    rim_factor: float,
    face_width: float,
    transverse_module: float,
    bending_factor: float,
) -> float:
    """Bending stress number [Pa].

    Raises:
        OutOfRange: ``face_width`` is zero.
    """
    if face_width <= 0.0:
        raise OutOfRange("face_width: the faces do not meet")
    load = force * overload_factor * dynamic_factor * size_factor * load_distribution
    return load * rim_factor / (face_width * transverse_module * bending_factor)


@equation(
    "grade",
    "grade 1 for ML, 2 for MQ, 3 for ME",
    unit="1",
    source="AGMA 2001-D04 and ISO 6336-5 describe like qualities, not the same (from memory)",
    quality="quality []",
)
def metallurgical_grade(quality: str) -> int:
    """Metallurgical grade of AGMA nearest to a quality of ISO 6336-5."""
    return ("ML", "MQ", "ME").index(quality) + 1


# kpsi by grade; None where there is no such grade.
_CONTACT_HARD: Mapping[str, tuple[float, float, float]] = MappingProxyType(
    {
        "case-carburised": (180.0, 225.0, 275.0),
        "nitrided": (150.0, 163.0, 175.0),
    }
)


def _induction_contact(grade: int, brinell: float) -> float:
    """Flame or induction hardened: 50 and 54 HRC, here 481 and 543 HB."""
    if brinell < 481.0:
        raise OutOfRange("surface hardness: below 50 HRC of hardened flanks")
    low, high = ((170.0, 175.0), (190.0, 195.0))[grade - 1]
    return high if brinell >= 543.0 else low


@equation(
    "s_ac",
    "s_ac by treatment and grade: carburised 180, 225, 275 kpsi; nitrided 150, 163, 175; induction"
    " 170 to 195; through-hardened 322 HB + 29 100, 349 HB + 34 300 psi",
    unit="Pa",
    source="ANSI/AGMA 2001-D04, Table 3 and Fig. 8 (carburised and induction seen, rest from"
    " memory)",
    treatment="treatment []",
    grade="grade [1]",
    brinell="HB [HB]",
)
def allowable_contact(treatment: str, grade: int, brinell: float) -> float:
    """Allowable contact stress number at 1e7 cycles and 99 % reliability [Pa].

    Raises:
        OutOfRange: the standard gives none for that grade or hardness.
    """
    if treatment in _CONTACT_HARD:
        return _CONTACT_HARD[treatment][grade - 1] * _KPSI
    if grade > 2:
        raise OutOfRange(f"grade: AGMA gives no grade 3 of {treatment} steel")
    if treatment == "induction-hardened":
        return _induction_contact(grade, brinell) * _KPSI
    _within(brinell)
    psi = 322.0 * brinell + 29100.0 if grade == 1 else 349.0 * brinell + 34300.0
    return psi * 1e-3 * _KPSI


@equation(
    "s_at",
    "s_at by treatment and grade: carburised 55, 65, 75 kpsi; nitrided 82.3 HB + 12 150,"
    " 108.6 HB + 15 890 psi of the core; induction 45, 55 kpsi; through-hardened 77.3 HB + 12 800,"
    " 102 HB + 16 400 psi",
    unit="Pa",
    source="ANSI/AGMA 2001-D04, Table 4 and Fig. 9 (from memory)",
    treatment="treatment []",
    grade="grade [1]",
    brinell="HB [HB]",
    core_brinell="HB_core [HB]",
)
def allowable_bending(treatment: str, grade: int, brinell: float, core_brinell: float) -> float:
    """Allowable bending stress number at 1e7 cycles and 99 % reliability [Pa].

    Raises:
        OutOfRange: the standard gives none for that grade or hardness.
    """
    if treatment == "case-carburised":
        return (55.0, 65.0, 75.0)[grade - 1] * _KPSI
    if grade > 2:
        raise OutOfRange(f"grade: AGMA gives no grade 3 of {treatment} steel")
    if treatment == "induction-hardened":
        return (45.0, 55.0)[grade - 1] * _KPSI
    if treatment == "nitrided":
        _within(core_brinell)
        psi = (82.3 * core_brinell + 12150.0, 108.6 * core_brinell + 15890.0)[grade - 1]
        return psi * 1e-3 * _KPSI
    _within(brinell)
    return (77.3 * brinell + 12800.0, 102.0 * brinell + 16400.0)[grade - 1] * 1e-3 * _KPSI


def _within(brinell: float) -> None:
    if not 180.0 <= brinell <= 400.0:
        raise OutOfRange(f"hardness: {brinell:.0f} HB is outside 180 to 400")


@equation(
    "Y_N",
    "carburised 6.1514 N^−0.1192, nitrided 3.517 N^−0.0817, else 4.9404 N^−0.1045 (250 HB); from"
    " 3e6 1.6831 N^−0.0323 (critical service) or 1.3558 N^−0.0178; N at least 1e3",
    unit="1",
    source=_AGMA + ", stress cycle factor for bending",
    cycles="N [1]",
    treatment="treatment []",
    critical="critical service []",
)
def cycle_factor_bending(cycles: float, treatment: str, critical: bool) -> float:
    """Stress cycle factor for bending; fewer than 1000 cycles count as 1000."""
    cycles = max(cycles, _STATIC_BENDING)
    steep = {
        "case-carburised": (6.1514, -0.1192),
        "induction-hardened": (6.1514, -0.1192),
        "nitrided": (3.517, -0.0817),
    }.get(treatment, (4.9404, -0.1045))
    flat = (1.6831, -0.0323) if critical else (1.3558, -0.0178)
    return float(steep[0] * cycles ** steep[1] if cycles <= 3e6 else flat[0] * cycles ** flat[1])


@equation(
    "Z_N",
    "2.466 N^−0.056 to 1e7, at most 1.47; then the same in critical service or 1.4488 N^−0.023;"
    " N at least 1e4; nitrided 1.249 N^−0.0138 to 1e7",
    unit="1",
    source=_AGMA + ", stress cycle factor for contact",
    cycles="N [1]",
    treatment="treatment []",
    critical="critical service []",
)
def cycle_factor_contact(cycles: float, treatment: str, critical: bool) -> float:
    """Stress cycle factor for contact, at most 1.47; fewer than 1e4 cycles count as 1e4."""
    cycles = max(cycles, _STATIC_CONTACT)
    if cycles <= 1e7 and treatment == "nitrided":
        return float(1.249 * cycles**-0.0138)
    if cycles <= 1e7 or critical:
        return float(min(1.47, 2.466 * cycles**-0.056))
    return float(1.4488 * cycles**-0.023)


@equation(
    "u",
    "u = z_2 / z_1",
    unit="1",
    source="definition",
    pinion_teeth="z_1 [1]",
    wheel_teeth="z_2 [1]",
)
def gear_ratio(pinion_teeth: int, wheel_teeth: int) -> float:
    """Teeth of the wheel over those of the pinion."""
    return wheel_teeth / pinion_teeth


@equation(
    "C_H",
    "C_H = 1 + A (u − 1), A = 0.00898 HB_P/HB_G − 0.00829 from 1.2 to 1.7, 0 below, 0.00698 above;"
    " of the wheel alone",
    unit="1",
    source=_AGMA + ", hardness ratio factor of through-hardened pairs",
    pinion_brinell="HB_P [HB]",
    wheel_brinell="HB_G [HB]",
    ratio="u [1]",
)
def hardness_ratio_factor(pinion_brinell: float, wheel_brinell: float, ratio: float) -> float:
    """Hardness ratio factor of the softer wheel of a through-hardened pair."""
    hardness = pinion_brinell / wheel_brinell
    if hardness < 1.2:
        a = 0.0
    elif hardness > 1.7:
        a = 0.00698
    else:
        a = 0.00898 * hardness - 0.00829
    return 1.0 + a * (ratio - 1.0)


@equation(
    "s",
    "s = s_a Y K / (K_T K_R), K_T = 1",
    unit="Pa",
    source=_AGMA + "; K_T is 1 to 120 °C",
    allowable="s_a [Pa]",
    cycle_factor="Y [1]",
    other_factor="K [1]",
    reliability_factor="K_R [1]",
)
def permissible_stress(
    allowable: float, cycle_factor: float, other_factor: float, reliability_factor: float
) -> float:
    """What a stress number may reach at a life and reliability [Pa]."""
    return allowable * cycle_factor * other_factor / reliability_factor


@equation(
    "f_P",
    "f_P = min(S_F1, S_F2, S_H1², S_H2²)",
    unit="1",
    source="AGMA 2001-D04: S_F is compared with S_H² (from memory)",
    bending_1="S_F1 [1]",
    bending_2="S_F2 [1]",
    contact_1="S_H1 [1]",
    contact_2="S_H2 [1]",
)
def permissible_load_factor(
    bending_1: float, bending_2: float, contact_1: float, contact_2: float
) -> float:
    """Load that a mesh may carry over the load it carries, by one standard."""
    return min(bending_1, bending_2, contact_1**2, contact_2**2)


@equation(
    "P_perm",
    "P_perm = P f_P",
    unit="W",
    source="definition",
    power="P [W]",
    factor="f_P [1]",
)
def permissible_power(power: float, factor: float) -> float:
    """Power that a mesh may carry, from the load it may carry over the load that is there [W]."""
    return power * factor
