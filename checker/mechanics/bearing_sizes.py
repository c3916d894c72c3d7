"""Generic bearings: boundary dimensions of ISO 15 with ratings by the formulas of ISO 281 and 76.

A beginning for a builder without a catalogue. The inner geometry (size and number of the rolling
elements) is a rule of thumb, so that the ratings are those of no maker: usually a tenth below or
above them. The dimensions are from memory of ISO 15; a drawing needs the maker's.
"""

import math

from checker.mechanics.equation import OutOfRange, equation

GENERIC = "generic size, ratings by formula; no maker's"
_ISO_15 = "ISO 15 (from memory)"
_GEOMETRY = "rule of thumb: elements of 0.3 of the section, filling 195 deg (common practice)"

# Outside diameter and width [mm] by bore [mm], for each dimension series.
_SIZES: dict[str, dict[int, tuple[int, int]]] = {
    "10": {
        15: (32, 9),
        17: (35, 10),
        20: (42, 12),
        25: (47, 12),
        30: (55, 13),
        35: (62, 14),
        40: (68, 15),
        45: (75, 16),
        50: (80, 16),
        55: (90, 18),
        60: (95, 18),
        65: (100, 18),
        70: (110, 20),
        75: (115, 20),
        80: (125, 22),
    },
    "02": {
        15: (35, 11),
        17: (40, 12),
        20: (47, 14),
        25: (52, 15),
        30: (62, 16),
        35: (72, 17),
        40: (80, 18),
        45: (85, 19),
        50: (90, 20),
        55: (100, 21),
        60: (110, 22),
        65: (120, 23),
        70: (125, 24),
        75: (130, 25),
        80: (140, 26),
    },
    "03": {
        15: (42, 13),
        17: (47, 14),
        20: (52, 15),
        25: (62, 17),
        30: (72, 19),
        35: (80, 21),
        40: (90, 23),
        45: (100, 25),
        50: (110, 27),
        55: (120, 29),
        60: (130, 31),
        65: (140, 33),
        70: (150, 35),
        75: (160, 37),
        80: (170, 39),
    },
}
SERIES = tuple(_SIZES)

# f_0 of ISO 76 for steps of 0.01 of γ = D_w cos α / D_pw (from memory).
_F0 = (
    *(14.7, 14.9, 15.1, 15.3, 15.5, 15.7, 15.9, 16.1, 16.3, 16.5, 16.4, 16.1, 15.9, 15.6, 15.4),
    *(15.2, 14.9, 14.7, 14.4, 14.2, 14.0, 13.7, 13.5, 13.2, 13.0, 12.8, 12.5, 12.3, 12.1, 11.8),
    *(11.6,),
)
_BALL_SHARE = 0.3
_ROLLER_SHARE = 0.29
_FILLED = math.radians(195.0)
_OSCULATION = 0.52


def _size(series: str, bore: float) -> tuple[int, int]:
    nominal = round(bore * 1e3, 6)
    sizes = _SIZES.get(series)
    if sizes is None:
        raise OutOfRange(f"series {series!r} is not one of " + ", ".join(SERIES))
    if nominal not in sizes:
        raise OutOfRange(f"bore of {nominal:g} mm is not listed in dimension series {series}")
    return sizes[int(nominal)]


@equation("D", "D = table(series, d)", unit="m", source=_ISO_15, series="series []", bore="d [m]")
def generic_outside(series: str, bore: float) -> float:
    """Outside diameter by dimension series of ISO 15 and bore.

    Raises:
        OutOfRange: series or bore not listed.
    """
    return _size(series, bore)[0] / 1e3


@equation("B", "B = table(series, d)", unit="m", source=_ISO_15, series="series []", bore="d [m]")
def generic_width(series: str, bore: float) -> float:
    """Width by dimension series of ISO 15 and bore.

    Raises:
        OutOfRange: series or bore not listed.
    """
    return _size(series, bore)[1] / 1e3


@equation(
    "diameter series",
    "last digit of the dimension series",
    unit="1",
    source=_ISO_15,
    series="series []",
)
def diameter_series(series: str) -> int:
    """Diameter series of a dimension series of ISO 15: 2 of 02.

    Raises:
        OutOfRange: series not listed.
    """
    if series not in _SIZES:
        raise OutOfRange(f"series {series!r} is not one of " + ", ".join(SERIES))
    return int(series[-1])


def _elements(bore: float, outside: float, share: float) -> tuple[float, float, int]:
    """Diameter of the rolling elements [m], their ratio to the pitch circle, and their number."""
    diameter = share * (outside - bore)
    pitch = (bore + outside) / 2.0
    number = math.floor(_FILLED / (2.0 * math.asin(diameter / pitch)) + 1.0)
    return diameter, diameter / pitch, number


def _ball_factor(gamma: float) -> float:
    """f_c of ISO 281 in newtons and millimetres, by Lundberg and Palmgren, reduced by 0.95."""
    ratio = 1.04 * ((1.0 - gamma) / (1.0 + gamma)) ** 1.72
    groove = (2.0 * _OSCULATION / (2.0 * _OSCULATION - 1.0)) ** 0.41
    shape = gamma**0.3 * (1.0 - gamma) ** 1.39 / (1.0 + gamma) ** (1.0 / 3.0)
    return float(0.95 * 39.9 * (1.0 + ratio ** (10.0 / 3.0)) ** -0.3 * shape * groove)


def _roller_factor(gamma: float) -> float:
    """f_c of ISO 281 of radial rollers in newtons and millimetres, reduced by 0.83."""
    ratio = 1.04 * ((1.0 - gamma) / (1.0 + gamma)) ** (143.0 / 108.0)
    shape = gamma ** (2.0 / 9.0) * (1.0 - gamma) ** (29.0 / 27.0) / (1.0 + gamma) ** 0.25
    return float(0.83 * 207.9 * shape * (1.0 + ratio**4.5) ** (-2.0 / 9.0))


@equation(
    "C",
    "C = 1.3 f_c Z^⅔ D_w^1.8; D_w = 0.3 (D − d)",
    unit="N",
    source=f"ISO 281:2007, radial ball bearings (from memory); {_GEOMETRY}",
    bore="d [m]",
    outside="D [m]",
)
def generic_ball_rating(bore: float, outside: float) -> float:
    """Dynamic rating of a generic deep groove ball bearing. Valid up to balls of 25.4 mm.

    Raises:
        OutOfRange: balls above 25.4 mm.
    """
    ball, gamma, number = _elements(bore, outside, _BALL_SHARE)
    if ball > 25.4e-3:
        raise OutOfRange("outside: balls above 25.4 mm have another exponent")
    return float(1.3 * _ball_factor(gamma) * number ** (2.0 / 3.0) * (ball * 1e3) ** 1.8)


@equation(
    "f_0",
    "f_0 = table(γ); γ = D_w / D_pw, D_w = 0.3 (D − d)",
    unit="1",
    source=f"ISO 76:2006 Table 1 (from memory); {_GEOMETRY}",
    bore="d [m]",
    outside="D [m]",
)
def generic_f0(bore: float, outside: float) -> float:
    """Factor f_0 of a generic deep groove ball bearing."""
    gamma = _elements(bore, outside, _BALL_SHARE)[1]
    index = min(int(gamma * 100.0), len(_F0) - 2)
    share = gamma * 100.0 - index
    return _F0[index] + share * (_F0[index + 1] - _F0[index])


@equation(
    "C_0",
    "C_0 = f_0 Z D_w²",
    unit="N",
    source=f"ISO 76:2006, radial ball bearings (from memory); {_GEOMETRY}",
    bore="d [m]",
    outside="D [m]",
)
def generic_ball_static_rating(bore: float, outside: float) -> float:
    """Static rating of a generic deep groove ball bearing."""
    ball, _, number = _elements(bore, outside, _BALL_SHARE)
    return generic_f0(bore, outside) * number * (ball * 1e3) ** 2


@equation(
    "C",
    "C = 1.1 f_c L^(7/9) Z^(3/4) D_w^(29/27); D_w = 0.29 (D − d), L = 0.95 D_w up to 0.55 B",
    unit="N",
    source=f"ISO 281:2007, radial roller bearings (from memory); {_GEOMETRY}",
    bore="d [m]",
    outside="D [m]",
    width="B [m]",
)
def generic_roller_rating(bore: float, outside: float, width: float) -> float:
    """Dynamic rating of a generic cylindrical roller bearing."""
    roller, gamma, number = _elements(bore, outside, _ROLLER_SHARE)
    length = _roller_length(roller, width)
    along = (length * 1e3) ** (7.0 / 9.0) * (roller * 1e3) ** (29.0 / 27.0)
    return float(1.1 * _roller_factor(gamma) * along * number**0.75)


@equation(
    "C_0",
    "C_0 = 44 (1 − γ) Z L D_w",
    unit="N",
    source=f"ISO 76:2006, radial roller bearings (from memory); {_GEOMETRY}",
    bore="d [m]",
    outside="D [m]",
    width="B [m]",
)
def generic_roller_static_rating(bore: float, outside: float, width: float) -> float:
    """Static rating of a generic cylindrical roller bearing."""
    roller, gamma, number = _elements(bore, outside, _ROLLER_SHARE)
    length = _roller_length(roller, width)
    return 44.0 * (1.0 - gamma) * number * length * 1e3 * roller * 1e3


def _roller_length(roller: float, width: float) -> float:
    return min(0.95 * roller, 0.55 * width)
