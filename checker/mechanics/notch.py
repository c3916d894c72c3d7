"""Stress raisers of shafts: theoretical factors K_t, notch sensitivity, fatigue factors K_f.

All factors belong to the nominal stress of the smaller diameter. The curve fits are those of
Roark's Formulas after Peterson's charts; each set of coefficients returns to K = 1 where the notch
reaches the axis and, for a groove in torsion, to K = 2 for a half circle, which tests hold.
"""

import math

from checker.mechanics.equation import OutOfRange, equation

_ROARK = "Roark's Formulas for Stress and Strain after Peterson, curve fit (from memory)"
_NEUBER = "Shigley's Mechanical Engineering Design 10e, Eqs. 6-34 to 6-36 (from memory)"
_SHIGLEY_7_1 = "Shigley's Mechanical Engineering Design, Table 7-1 (partly from memory)"
_DIN_743 = "DIN 743-2:2012 (from memory)"
_KSI = 6.894757293168e6
_INCH = 0.0254

# Coefficients of 1, √x and x with x = h/r, for C1 to C4; a row holds up to its greatest x.
_Row = tuple[float, float, tuple[tuple[float, float, float], ...]]
_SHOULDER_BENDING: tuple[_Row, ...] = (
    (
        0.1,
        2.0,
        (
            (0.947, 1.206, -0.131),
            (0.022, -3.405, 0.915),
            (0.869, 1.777, -0.555),
            (-0.810, 0.422, -0.260),
        ),
    ),
    (
        2.0,
        20.0,
        (
            (1.232, 0.832, -0.008),
            (-3.813, 0.968, -0.260),
            (7.423, -4.868, 0.869),
            (-3.839, 3.070, -0.600),
        ),
    ),
)
_SHOULDER_TORSION: tuple[_Row, ...] = (
    (
        0.25,
        4.0,
        (
            (0.905, 0.783, -0.075),
            (-0.437, -1.969, 0.553),
            (1.557, 1.073, -0.578),
            (-1.061, 0.171, 0.086),
        ),
    ),
)
_GROOVE_BENDING: tuple[_Row, ...] = (
    (
        0.25,
        2.0,
        (
            (0.594, 2.958, -0.520),
            (0.422, -10.545, 2.692),
            (0.501, 14.375, -4.486),
            (-0.613, -6.573, 2.177),
        ),
    ),
    (
        2.0,
        50.0,
        (
            (0.965, 1.926, 0.0),
            (-2.773, -4.414, -0.017),
            (4.785, 4.681, 0.096),
            (-1.995, -2.241, -0.074),
        ),
    ),
)
_GROOVE_TORSION: tuple[_Row, ...] = (
    (
        0.25,
        2.0,
        (
            (0.966, 1.056, -0.022),
            (-0.192, -4.037, 0.674),
            (0.808, 5.321, -1.231),
            (-0.567, -2.364, 0.566),
        ),
    ),
    (
        2.0,
        50.0,
        (
            (1.089, 0.924, 0.018),
            (-1.504, -2.141, -0.047),
            (2.486, 2.289, 0.091),
            (-1.056, -1.104, -0.059),
        ),
    ),
)


def _fitted(rows: tuple[_Row, ...], large: float, small: float, radius: float) -> float:
    """K at D, d and r; a step outside the fit counts as the nearest one inside it."""
    if small >= large:
        raise OutOfRange("small must be below large: there is no step")
    if radius <= 0.0:
        raise OutOfRange("radius must be above zero: a sharp corner has no finite factor")
    depth = (large - small) / 2.0
    bounded = min(max(depth, rows[0][0] * radius), rows[-1][1] * radius)
    x = bounded / radius
    relative = 2.0 * bounded / (small + 2.0 * bounded)
    row = next(row for row in rows if x <= row[1] * (1.0 + 1e-12))
    factors = [a + b * math.sqrt(x) + c * x for a, b, c in row[2]]
    return max(1.0, sum(each * relative**power for power, each in enumerate(factors)))


@equation(
    "K_t",
    "K_t = C₁ + C₂ (2h/D) + C₃ (2h/D)² + C₄ (2h/D)³; h = (D − d)/2, C by h/r",
    unit="1",
    source=_ROARK,
    large="D [m]",
    small="d [m]",
    radius="r [m]",
)
def shoulder_bending(large: float, small: float, radius: float) -> float:
    """K_t of a shoulder fillet in bending.

    A step lower than 0.1 r or higher than 20 r counts as that one.

    Raises:
        OutOfRange: no step, or no fillet.
    """
    return _fitted(_SHOULDER_BENDING, large, small, radius)


@equation(
    "K_ts",
    "K_ts = C₁ + C₂ (2h/D) + C₃ (2h/D)² + C₄ (2h/D)³; h = (D − d)/2, C by h/r",
    unit="1",
    source=_ROARK,
    large="D [m]",
    small="d [m]",
    radius="r [m]",
)
def shoulder_torsion(large: float, small: float, radius: float) -> float:
    """K_ts of a shoulder fillet in torsion.

    A step lower than 0.25 r or higher than 4 r counts as that one.

    Raises:
        OutOfRange: no step, or no fillet.
    """
    return _fitted(_SHOULDER_TORSION, large, small, radius)


@equation(
    "K_t",
    "K_t = C₁ + C₂ (2h/D) + C₃ (2h/D)² + C₄ (2h/D)³; h = (D − d)/2, C by h/r",
    unit="1",
    source=_ROARK,
    large="D [m]",
    small="d [m]",
    radius="r [m]",
)
def groove_bending(large: float, small: float, radius: float) -> float:
    """K_t of a round-bottomed groove in bending.

    Raises:
        OutOfRange: no groove, or no radius.
    """
    return _fitted(_GROOVE_BENDING, large, small, radius)


@equation(
    "K_ts",
    "K_ts = C₁ + C₂ (2h/D) + C₃ (2h/D)² + C₄ (2h/D)³; h = (D − d)/2, C by h/r",
    unit="1",
    source=_ROARK,
    large="D [m]",
    small="d [m]",
    radius="r [m]",
)
def groove_torsion(large: float, small: float, radius: float) -> float:
    """K_ts of a round-bottomed groove in torsion.

    Raises:
        OutOfRange: no groove, or no radius.
    """
    return _fitted(_GROOVE_TORSION, large, small, radius)


@equation("K_f", "K_f = K_t = 2.14, q = 1", unit="1", source=_SHIGLEY_7_1)
def keyway_bending() -> float:
    """K_f of an end-milled keyseat of r/d = 0.02 in bending, fully sensitive."""
    return 2.14


@equation("K_fs", "K_fs = K_ts = 3.0, q = 1", unit="1", source=_SHIGLEY_7_1)
def keyway_torsion() -> float:
    """K_fs of an end-milled keyseat of r/d = 0.02 in torsion, key in place, fully sensitive."""
    return 3.0


@equation("K_f", "K_f = K_t = 3, q = 1", unit="1", source="Kirsch, small hole (from memory)")
def hole_bending() -> float:
    """K_f of a small hole across the stress of bending: an upper bound."""
    return 3.0


@equation("K_fs", "K_fs = K_ts = 4, q = 1", unit="1", source="Kirsch, small hole (from memory)")
def hole_torsion() -> float:
    """K_fs of a small hole in shear, greatest normal stress over nominal shear: upper bound."""
    return 4.0


def _spline_reference(tensile: float) -> float:
    megapascals = tensile / 1e6
    return math.exp(4.2e-7 * megapascals**2)


@equation(
    "K_f",
    "K_f = 1 + 0.49 (β* − 1), β* = exp(4.2e-7 R_m²), R_m in MPa",
    unit="1",
    source=f"{_DIN_743}, involute spline",
    tensile="R_m [Pa]",
)
def spline_bending_fatigue(tensile: float) -> float:
    """Fatigue factor of an involute spline in bending."""
    return 1.0 + 0.49 * (_spline_reference(tensile) - 1.0)


@equation(
    "K_fs",
    "K_fs = 1 + 0.75 (β* − 1), β* = exp(4.2e-7 R_m²), R_m in MPa",
    unit="1",
    source=f"{_DIN_743}, involute spline",
    tensile="R_m [Pa]",
)
def spline_torsion_fatigue(tensile: float) -> float:
    """Fatigue factor of an involute spline in torsion."""
    return 1.0 + 0.75 * (_spline_reference(tensile) - 1.0)


@equation(
    "K_f",
    "K_f = 2.7 (R_m / 1000 MPa)^0.43",
    unit="1",
    source=f"{_DIN_743}, press fit",
    tensile="R_m [Pa]",
)
def press_fit_bending_fatigue(tensile: float) -> float:
    """Fatigue factor at the edge of a press fit in bending."""
    return float(2.7 * (tensile / 1e9) ** 0.43)


@equation(
    "K_fs",
    "K_fs = 0.65 · 2.7 (R_m / 1000 MPa)^0.43",
    unit="1",
    source=f"{_DIN_743}, press fit",
    tensile="R_m [Pa]",
)
def press_fit_torsion_fatigue(tensile: float) -> float:
    """Fatigue factor at the edge of a press fit in torsion."""
    return 0.65 * press_fit_bending_fatigue(tensile)


def _sensitivity(tensile: float, radius: float, first: tuple[float, float, float]) -> float:
    strength = tensile / _KSI
    if not 50.0 <= strength <= 250.0:
        raise OutOfRange(f"tensile of {tensile / 1e6:.0f} MPa is outside 345 to 1724 MPa")
    root = first[0] + first[1] * strength + first[2] * strength**2 - 2.67e-8 * strength**3
    if radius <= 0.0:
        raise OutOfRange("radius must be above zero: a sharp corner has no finite factor")
    return 1.0 / (1.0 + root / math.sqrt(radius / _INCH))


@equation(
    "q",
    "q = 1 / (1 + √a/√r), √a by R_m",
    unit="1",
    source=_NEUBER,
    tensile="R_m [Pa]",
    radius="r [m]",
)
def bending_sensitivity(tensile: float, radius: float) -> float:
    """Notch sensitivity of steel in bending.

    Raises:
        OutOfRange: tensile strength outside 345 to 1724 MPa, or no radius.
    """
    return _sensitivity(tensile, radius, (0.246, -3.08e-3, 1.51e-5))


@equation(
    "q_s",
    "q_s = 1 / (1 + √a/√r), √a by R_m",
    unit="1",
    source=_NEUBER,
    tensile="R_m [Pa]",
    radius="r [m]",
)
def torsion_sensitivity(tensile: float, radius: float) -> float:
    """Notch sensitivity of steel in torsion.

    Raises:
        OutOfRange: tensile strength outside 345 to 1724 MPa, or no radius.
    """
    return _sensitivity(tensile, radius, (0.190, -2.51e-3, 1.35e-5))


@equation(
    "K_f",
    "K_f = 1 + q (K_t − 1)",
    unit="1",
    source="Shigley's Mechanical Engineering Design, Eq. 6-32",
    theoretical="K_t [1]",
    sensitivity="q [1]",
)
def fatigue_factor(theoretical: float, sensitivity: float) -> float:
    """Fatigue factor from the theoretical one and the notch sensitivity."""
    return 1.0 + sensitivity * (theoretical - 1.0)


@equation(
    "d_g",
    "d_g = d − 2 t",
    unit="m",
    source="definition",
    diameter="d [m]",
    depth="t [m]",
)
def groove_diameter(diameter: float, depth: float) -> float:
    """Diameter at the bottom of a groove."""
    return diameter - 2.0 * depth


# Radii [m] in steps of 5 % from 1 um to 20 mm, among which the worst blunter one is sought.
_RADII = tuple(1e-6 * 1.05**step for step in range(204))


@equation(
    "r_k",
    "r_k ≥ r with the greatest K_f = 1 + q (K_t − 1): a sharper corner is never better",
    unit="m",
    source="derived: Neuber's q would let the sharpest corners off, where the fits of K_t end",
    kind="kind []",
    load="load []",
    large="D [m]",
    small="d [m]",
    radius="r [m]",
    tensile="R_m [Pa]",
)
def governing_radius(
    kind: str, load: str, large: float, small: float, radius: float, tensile: float
) -> float:
    """Radius by which a shoulder or groove counts under bending or torsion: its own, or a blunter.

    Raises:
        OutOfRange: no step, no radius, or tensile strength outside 345 to 1724 MPa.
    """
    rows = _FITS[kind, load]
    sensitivity = bending_sensitivity if load == "bending" else torsion_sensitivity

    def factor(corner: float) -> float:
        return fatigue_factor(_fitted(rows, large, small, corner), sensitivity(tensile, corner))

    joins = ((large - small) / 2.0 / row[1] for row in rows)
    return max((radius, *(each for each in (*joins, *_RADII) if each > radius)), key=factor)


_FITS = {
    ("shoulder", "bending"): _SHOULDER_BENDING,
    ("shoulder", "torsion"): _SHOULDER_TORSION,
    ("groove", "bending"): _GROOVE_BENDING,
    ("groove", "torsion"): _GROOVE_TORSION,
}
