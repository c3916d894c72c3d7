"""Flank deviations that an accuracy grade allows, and what running-in takes off them.

Gears of the AGMA scale are turned into ISO grades, since ISO rates by deviations. Lengths in m; the
standards print micrometres.
"""

from math import cos, sqrt

from checker.mechanics.equation import OutOfRange, equation

_TOLERANCES = "ISO 1328-1:2013, tolerances by formula (from memory)"
_RUNNING_IN = "ISO 6336-1:2006, running-in allowances (from memory)"
_MICRO = 1e-6
_SOFT_STEEL = "through-hardened"


@equation(
    "A",
    "A = grade of ISO 1328-1 and AGMA 2015; A = 17 − Q for the quality number of AGMA 2000",
    unit="1",
    source="AGMA 2015-1 gives its grades as ISO does; 17 − Q is common practice (from memory)",
    standard="standard []",
    grade="grade [1]",
)
def iso_grade(standard: str, grade: int) -> int:
    """Accuracy grade on the ISO scale, on which a small number is good."""
    return 17 - grade if standard == "AGMA 2000" else grade


@equation(
    "Q_v",
    "Q_v = 17 − A",
    unit="1",
    source="common practice between the two scales (from memory)",
    grade="A [1]",
)
def agma_quality(grade: int) -> int:
    """Transmission accuracy number of AGMA 2001, on which a large number is good."""
    return 17 - grade


def _step(grade: int) -> float:
    if not 1 <= grade <= 11:
        raise OutOfRange(f"grade {grade} is outside 1 to 11 of ISO 1328-1")
    return sqrt(2.0) ** (grade - 5) * _MICRO


@equation(
    "f_pT",
    "f_pT = (0.001 d + 0.4 m_n + 5 µm) √2^(A−5), d and m_n in mm",
    unit="m",
    source=_TOLERANCES,
    reference_diameter="d [m]",
    normal_module="m_n [m]",
    grade="A [1]",
)
def single_pitch_tolerance(reference_diameter: float, normal_module: float, grade: int) -> float:
    """Single pitch deviation that a grade allows [m].

    Raises:
        OutOfRange: ``grade`` is outside 1 to 11.
    """
    return (reference_diameter + 400.0 * normal_module + 5.0) * _step(grade)


@equation(
    "f_fαT",
    "f_fαT = (0.55 m_n + 5 µm) √2^(A−5), m_n in mm",
    unit="m",
    source=_TOLERANCES,
    normal_module="m_n [m]",
    grade="A [1]",
)
def profile_form_tolerance(normal_module: float, grade: int) -> float:
    """Profile form deviation that a grade allows [m].

    Raises:
        OutOfRange: ``grade`` is outside 1 to 11.
    """
    return (550.0 * normal_module + 5.0) * _step(grade)


@equation(
    "f_HβT",
    "f_HβT = (0.05 √d + 0.35 √b + 4 µm) √2^(A−5), d and b in mm",
    unit="m",
    source=_TOLERANCES,
    reference_diameter="d [m]",
    face_width="b [m]",
    grade="A [1]",
)
def helix_slope_tolerance(reference_diameter: float, face_width: float, grade: int) -> float:
    """Helix slope deviation that a grade allows [m].

    Raises:
        OutOfRange: ``grade`` is outside 1 to 11.
    """
    size = 0.05 * sqrt(1e3 * reference_diameter) + 0.35 * sqrt(1e3 * face_width) + 4.0
    return size * _step(grade)


@equation(
    "f_ma",
    "f_ma = √(f_Hβ1² + f_Hβ2²)",
    unit="m",
    source="ISO 6336-1:2006, 7.5, mesh misalignment without adjustment (from memory)",
    helix_slope_1="f_Hβ1 [m]",
    helix_slope_2="f_Hβ2 [m]",
)
def manufacturing_misalignment(helix_slope_1: float, helix_slope_2: float) -> float:
    """Misalignment of the flanks that the helix deviations of both gears bring [m]."""
    return sqrt(helix_slope_1**2 + helix_slope_2**2)


@equation(
    "f_pb",
    "f_pb = max(f_pT1, f_pT2) cos α_t",
    unit="m",
    source="ISO 6336-1:2006, 6.5 (from memory)",
    pitch_tolerance_1="f_pT1 [m]",
    pitch_tolerance_2="f_pT2 [m]",
    transverse_pressure_angle="α_t [rad]",
)
def base_pitch_deviation(
    pitch_tolerance_1: float, pitch_tolerance_2: float, transverse_pressure_angle: float
) -> float:
    """Transverse base pitch deviation of the worse gear [m]."""
    return max(pitch_tolerance_1, pitch_tolerance_2) * cos(transverse_pressure_angle)


@equation(
    "f_fα",
    "f_fα = max(f_fαT1, f_fαT2)",
    unit="m",
    source="ISO 6336-1:2006, 6.5 (from memory)",
    form_tolerance_1="f_fαT1 [m]",
    form_tolerance_2="f_fαT2 [m]",
)
def profile_deviation(form_tolerance_1: float, form_tolerance_2: float) -> float:
    """Profile form deviation of the worse gear [m]."""
    return max(form_tolerance_1, form_tolerance_2)


def _profile_allowance(deviation: float, treatment: str, limit: float, speed: float) -> float:
    if treatment != _SOFT_STEEL:
        return min(0.075 * deviation, 3.0 * _MICRO)
    megapascal = limit / 1e6
    worn = min(160.0 * deviation / megapascal, deviation)
    if speed <= 5.0:
        return worn
    return min(worn, (12800.0 if speed <= 10.0 else 6400.0) / megapascal * _MICRO)


def _helix_allowance(deviation: float, treatment: str, limit: float, speed: float) -> float:
    if treatment != _SOFT_STEEL:
        return min(0.15 * deviation, 6.0 * _MICRO)
    megapascal = limit / 1e6
    worn = min(320.0 * deviation / megapascal, deviation)
    if speed <= 5.0:
        return worn
    return min(worn, (25600.0 if speed <= 10.0 else 12800.0) / megapascal * _MICRO)


_PAIR = {
    "treatment_1": "treatment 1 []",
    "contact_limit_1": "σ_Hlim1 [Pa]",
    "treatment_2": "treatment 2 []",
    "contact_limit_2": "σ_Hlim2 [Pa]",
    "pitch_line_speed": "v [m/s]",
}


@equation(
    "f_eff",
    "f_eff = f − ½ (y_1 + y_2); y = 0.075 f, at most 3 µm; through-hardened 160 f / σ_Hlim, at most"
    " f, and 12 800/σ_Hlim µm from 5 m/s, 6 400/σ_Hlim µm from 10 m/s",
    unit="m",
    source=_RUNNING_IN,
    deviation="f [m]",
    **_PAIR,
)
def effective_profile_deviation(
    deviation: float,
    treatment_1: str,
    contact_limit_1: float,
    treatment_2: str,
    contact_limit_2: float,
    pitch_line_speed: float,
) -> float:
    """A pitch or profile deviation less what both gears run in (f_pb eff, f_fα eff) [m]."""
    return deviation - 0.5 * (
        _profile_allowance(deviation, treatment_1, contact_limit_1, pitch_line_speed)
        + _profile_allowance(deviation, treatment_2, contact_limit_2, pitch_line_speed)
    )


@equation(
    "F_βy",
    "F_βy = F_βx − ½ (y_1 + y_2); y = 0.15 F_βx, at most 6 µm; through-hardened 320 F_βx / σ_Hlim,"
    " at most F_βx, and 25 600/σ_Hlim µm from 5 m/s, 12 800/σ_Hlim µm from 10 m/s",
    unit="m",
    source=_RUNNING_IN,
    misalignment="F_βx [m]",
    **_PAIR,
)
def effective_misalignment(
    misalignment: float,
    treatment_1: str,
    contact_limit_1: float,
    treatment_2: str,
    contact_limit_2: float,
    pitch_line_speed: float,
) -> float:
    """Misalignment of the flanks less what both gears run in [m]."""
    return misalignment - 0.5 * (
        _helix_allowance(misalignment, treatment_1, contact_limit_1, pitch_line_speed)
        + _helix_allowance(misalignment, treatment_2, contact_limit_2, pitch_line_speed)
    )


# Worst grade in use up to a pitch-line velocity, spur gears; helical gears stand half as much more.
_GRADE_LIMITS = ((40.0, 4), (20.0, 5), (15.0, 6), (10.0, 7), (6.0, 8))


@equation(
    "A_max",
    "A_max = 9 to 6 m/s, 8 to 10, 7 to 15, 6 to 20, 5 to 40, 4 above; v / 1.5 for helical teeth",
    unit="1",
    source="gear handbooks, accuracy for pitch-line velocity (from memory)",
    pitch_line_speed="v [m/s]",
    is_spur="spur []",
)
def coarsest_grade(pitch_line_speed: float, is_spur: bool) -> int:
    """Coarsest ISO accuracy grade in common use at a pitch-line velocity."""
    speed = pitch_line_speed if is_spur else pitch_line_speed / 1.5
    return next((grade for over, grade in _GRADE_LIMITS if speed > over), 9)


@equation(
    "ΔA",
    "ΔA = A_max − A",
    unit="1",
    source="definition",
    coarsest="A_max [1]",
    grade="A [1]",
)
def grades_in_hand(coarsest: int, grade: int) -> int:
    """Grades by which the teeth are finer than they need to be; negative where too coarse."""
    return coarsest - grade


@equation(
    "A",
    "A = max(A_1, A_2)",
    unit="1",
    source="definition",
    grade_1="A_1 [1]",
    grade_2="A_2 [1]",
)
def coarser_grade(grade_1: int, grade_2: int) -> int:
    """Grade of the coarser gear of a pair, on the ISO scale."""
    return max(grade_1, grade_2)
