"""Viscosity grades of the trade: ISO for industrial oils, SAE for engine and for gear oils.

The two SAE scales are different: a gear oil 90 is as thick as an engine oil 40 or 50. Bands are in
mm2/s (cSt), as the standards print them; records and functions in SI units.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from checker.mechanics.equation import equation
from checker.mechanics.oil import CENTISTOKES

_ZERO_CELSIUS = 273.15


@dataclass(frozen=True, slots=True)
class WinterGrade:
    """Cold limits of an engine oil W grade.

    Attributes:
        cranking_viscosity: highest dynamic viscosity at ``cranking_temperature``, Pa s.
        cranking_temperature: K.
        pumping_viscosity: highest dynamic viscosity at ``pumping_temperature``, with no yield
            stress, Pa s.
        pumping_temperature: K.
        viscosity_100: lowest viscosity at 100 °C, m2/s.
    """

    cranking_viscosity: float
    cranking_temperature: float
    pumping_viscosity: float
    pumping_temperature: float
    viscosity_100: float


@dataclass(frozen=True, slots=True)
class GearWinterGrade:
    """Cold limits of a gear oil W grade.

    Attributes:
        temperature: highest temperature at which the oil may reach 150 Pa s, K.
        viscosity_100: lowest viscosity at 100 °C, m2/s.
    """

    temperature: float
    viscosity_100: float


# ISO 3448:1992, midpoints in mm2/s at 40 °C; a grade reaches 10 % to either side.
ISO_VISCOSITY_GRADES: Mapping[str, float] = MappingProxyType(
    {
        f"VG {int(midpoint)}": midpoint
        for midpoint in (
            *(2.2, 3.2, 4.6, 6.8, 10.0, 15.0, 22.0, 32.0, 46.0),
            *(68.0, 100.0, 150.0, 220.0, 320.0, 460.0, 680.0, 1000.0, 1500.0),
        )
    }
)

# SAE J300, January 2015, table 1: mm2/s at 100 °C, lower limit included, upper excluded. The
# bands of 8 to 20 overlap.
ENGINE_GRADES: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        "8": (4.0, 6.1),
        "12": (5.0, 7.1),
        "16": (6.1, 8.2),
        "20": (6.9, 9.3),
        "30": (9.3, 12.5),
        "40": (12.5, 16.3),
        "50": (16.3, 21.9),
        "60": (21.9, 26.1),
    }
)

# SAE J306, February 2019: mm2/s at 100 °C, lower limit included, upper excluded. Before 2005
# there was no 110 or 190, and 90 and 140 reached further.
GEAR_GRADES: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        "65": (3.8, 5.0),
        "70": (5.0, 6.5),
        "75": (6.5, 8.5),
        "80": (8.5, 11.0),
        "85": (11.0, 13.5),
        "90": (13.5, 18.5),
        "110": (18.5, 24.0),
        "140": (24.0, 32.5),
        "190": (32.5, 41.0),
        "250": (41.0, math.inf),
    }
)


def _engine_winter(
    cranking_mpas: float, cranking_celsius: float, centistokes_100: float
) -> WinterGrade:
    kelvin = cranking_celsius + _ZERO_CELSIUS
    # Pumping is limited to 60 Pa s, 5 K below the cranking temperature, in every grade.
    return WinterGrade(
        cranking_mpas / 1000.0, kelvin, 60.0, kelvin - 5.0, centistokes_100 * CENTISTOKES
    )


# SAE J300, January 2015.
ENGINE_WINTER_GRADES: Mapping[str, WinterGrade] = MappingProxyType(
    {
        "0W": _engine_winter(6200, -35, 3.8),
        "5W": _engine_winter(6600, -30, 3.8),
        "10W": _engine_winter(7000, -25, 4.1),
        "15W": _engine_winter(7000, -20, 5.6),
        "20W": _engine_winter(9500, -15, 5.6),
        "25W": _engine_winter(13000, -10, 9.3),
    }
)


# SAE J306, February 2019.
GEAR_WINTER_GRADES: Mapping[str, GearWinterGrade] = MappingProxyType(
    {
        "70W": GearWinterGrade(-55.0 + _ZERO_CELSIUS, 3.8 * CENTISTOKES),
        "75W": GearWinterGrade(-40.0 + _ZERO_CELSIUS, 3.8 * CENTISTOKES),
        "80W": GearWinterGrade(-26.0 + _ZERO_CELSIUS, 8.5 * CENTISTOKES),
        "85W": GearWinterGrade(-12.0 + _ZERO_CELSIUS, 11.0 * CENTISTOKES),
    }
)

# SAE J300, January 2015: lowest viscosity at 150 °C under high shear (HTHS), Pa s.
_HIGH_SHEAR = {
    "8": 1.7e-3,
    "12": 2.0e-3,
    "16": 2.3e-3,
    "20": 2.6e-3,
    "30": 2.9e-3,
    "40": 3.7e-3,
    "50": 3.7e-3,
    "60": 3.7e-3,
}


@equation(
    "VG",
    "0.9 VG ≤ ν_40 ≤ 1.1 VG, in mm²/s",
    unit="",
    source="ISO 3448:1992, table 1 (from public reproductions)",
    viscosity_40="ν_40 [m2/s]",
)
def iso_viscosity_grade(viscosity_40: float) -> str | None:
    """ISO viscosity grade ``VG`` of a viscosity at 40 °C in m2/s, ``None`` between grades.

    The bands do not touch, so some oils have no grade. Source: ISO 3448:1992.
    """
    centistokes = _rounded_centistokes(viscosity_40)
    for grade, midpoint in ISO_VISCOSITY_GRADES.items():
        if round(0.9 * midpoint, 9) <= centistokes <= round(1.1 * midpoint, 9):
            return grade
    return None


@equation(
    "SAE",
    "ν_100 in the band of the grade",
    unit="",
    source="SAE J300, January 2015, table 1 (from a public reproduction)",
    viscosity_100="ν_100 [m2/s]",
)
def engine_oil_grades(viscosity_100: float) -> tuple[str, ...]:
    """Engine oil grades whose band holds a viscosity at 100 °C in m2/s, thinnest first.

    The bands of the thin grades overlap, so there may be two; none below 4.0 and from 26.1 mm2/s.
    Not to be compared with gear oil grades. Source: SAE J300, January 2015.
    """
    return _grades_holding(viscosity_100, ENGINE_GRADES)


@equation(
    "SAE",
    "ν_100 in the band of the grade",
    unit="",
    source="SAE J306, February 2019 (from a public reproduction)",
    viscosity_100="ν_100 [m2/s]",
)
def gear_oil_grade(viscosity_100: float) -> str | None:
    """Gear oil grade of a viscosity at 100 °C in m2/s, ``None`` below 3.8 mm2/s.

    Not to be compared with engine oil grades. Source: SAE J306, February 2019.
    """
    return next(iter(_grades_holding(viscosity_100, GEAR_GRADES)), None)


@equation(
    "η_HS",
    "η_HS of the grade; of a 40 3.5 mPa·s with 0W, 5W or 10W, else 3.7 mPa·s",
    unit="Pa s",
    source="SAE J300, January 2015, table 1 (from a public reproduction)",
    grade="SAE []",
    winter_grade="W []",
)
def high_shear_viscosity(grade: str, winter_grade: str) -> float:
    """Lowest viscosity ``η_HS`` at 150 °C under high shear (HTHS) of an engine oil, in Pa s.

    ``grade`` is the hot grade ("40"), ``winter_grade`` the cold one ("10W"), empty for a
    monograde. Source: SAE J300, January 2015.

    Raises:
        KeyError: ``grade`` is no engine oil grade.
    """
    if grade == "40" and winter_grade in {"0W", "5W", "10W"}:
        return 3.5e-3
    return _HIGH_SHEAR[grade]


def _grades_holding(
    viscosity_100: float, grades: Mapping[str, tuple[float, float]]
) -> tuple[str, ...]:
    centistokes = _rounded_centistokes(viscosity_100)
    return tuple(name for name, (low, high) in grades.items() if low <= centistokes < high)


def _rounded_centistokes(viscosity: float) -> float:
    """In mm2/s, rounded so that an oil stated at a limit lies on it, however it was converted."""
    return round(viscosity / CENTISTOKES, 9)
