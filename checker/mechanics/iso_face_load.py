"""Face load factor of ISO 6336-1: what misaligned flanks make of an even load.

Method C, with a misalignment that may come from elsewhere. Lengths in m, loads per face width in
N/m, stiffness per face width in N/m2 (1 N/(mm µm) is 1e9 N/m2).
"""

from math import sqrt

from checker.mechanics.equation import OutOfRange, equation

_FACE = "ISO 6336-1:2006, clause 7, method C (from memory)"


@equation(
    "f_sh",
    "f_sh = 0.023 µm mm/N w (|1 + K' l s (d_1/d_sh)⁴/d_1² − 0.3| + 0.3) (b/d_1)²",
    unit="m",
    source=_FACE,
    load="w [N/m]",
    arrangement="K' [1]",
    bearing_span="l [m]",
    offset="s [m]",
    pinion_diameter="d_1 [m]",
    shaft_diameter="d_sh [m]",
    face_width="b [m]",
)
def shaft_misalignment(
    load: float,
    arrangement: float,
    bearing_span: float,
    offset: float,
    pinion_diameter: float,
    shaft_diameter: float,
    face_width: float,
) -> float:
    """Misalignment that bending and twist of a pinion between bearings bring [m].

    Args:
        load: load per face width with application and dynamic factor [N/m].
        arrangement: constant for the place of the pinion on its shaft [1].
        bearing_span: distance of the bearings [m].
        offset: distance of the pinion from the middle between them [m].
        pinion_diameter: reference diameter of the pinion [m].
        shaft_diameter: diameter of its shaft [m].
        face_width: common face width [m].

    Raises:
        OutOfRange: ``offset`` puts the pinion outside the bearings.
    """
    if offset >= 0.5 * bearing_span:
        raise OutOfRange("offset: the pinion does not stand between its bearings")
    bending = arrangement * bearing_span * offset / pinion_diameter**2
    bending *= (pinion_diameter / shaft_diameter) ** 4
    # 0.023 µm per N/mm is 0.023e-9 m2/N.
    return 0.023e-9 * load * (abs(0.7 + bending) + 0.3) * (face_width / pinion_diameter) ** 2


@equation(
    "F_βx",
    "F_βx = 1.33 f_sh + f_ma",
    unit="m",
    source=_FACE,
    shaft_misalignment="f_sh [m]",
    manufacturing_misalignment="f_ma [m]",
)
def initial_misalignment(shaft_misalignment: float, manufacturing_misalignment: float) -> float:
    """Misalignment of unmodified flanks before running-in, the worst case of both parts [m]."""
    return 1.33 * shaft_misalignment + manufacturing_misalignment


@equation(
    "K_Hβ",
    "q = F_βy 0.85 c_γα / (2 w); K_Hβ = 1 + q, from q = 1 on 2 √q",
    unit="1",
    source=_FACE,
    misalignment="F_βy [m]",
    mesh_stiffness="c_γα [N/m2]",
    load="w [N/m]",
)
def face_load_factor(misalignment: float, mesh_stiffness: float, load: float) -> float:
    """Greatest over mean load per face width, for contact."""
    quotient = 0.5 * misalignment * 0.85 * mesh_stiffness / load
    return 1.0 + quotient if quotient <= 1.0 else 2.0 * sqrt(quotient)


@equation(
    "K_Fβ",
    "K_Fβ = K_Hβ^N_F, N_F = (b/h)² / (1 + b/h + (b/h)²), b/h at least 3",
    unit="1",
    source=_FACE,
    face_load_factor="K_Hβ [1]",
    face_width="b [m]",
    tooth_height="h [m]",
)
def face_load_factor_bending(
    face_load_factor: float, face_width: float, tooth_height: float
) -> float:
    """Face load factor for bending: a root spreads an uneven load a little."""
    ratio = max(3.0, face_width / tooth_height)
    return float(face_load_factor ** (ratio**2 / (1.0 + ratio + ratio**2)))


@equation(
    "l",
    "l = |x_1 − x_2|",
    unit="m",
    source="distance along the shaft",
    station_1="x_1 [m]",
    station_2="x_2 [m]",
)
def distance_between(station_1: float, station_2: float) -> float:
    """Distance of two stations along a shaft [m]."""
    return abs(station_1 - station_2)


@equation(
    "s",
    "s = |x − (x_1 + x_2)/2|",
    unit="m",
    source="distance along the shaft",
    station="x [m]",
    bearing_1="x_1 [m]",
    bearing_2="x_2 [m]",
)
def offset_from_middle(station: float, bearing_1: float, bearing_2: float) -> float:
    """Distance of a gear from the middle between two bearings [m]."""
    return abs(station - 0.5 * (bearing_1 + bearing_2))
