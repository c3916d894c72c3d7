"""The closed table of units that a spec may use, and the unit an engineer reads a value in.

A unit belongs to a dimension, and a field asks for a dimension; so ``g`` is a gram for a mass and
standard gravity for an acceleration. Two dimensions are wider than one kind of unit:

* ``module`` takes a length or a diametral pitch, teeth per inch (``8 DP`` is 25.4 mm / 8);
* ``hardness`` takes any of three scales. They do not convert by a factor, so each scale is a
  dimension of its own, and a hardness keeps the dimension of the scale it is written in.

Factors are exact by definition (international yard and pound, 1959; standard gravity, CGPM 1901)
unless a row says otherwise; the table as a whole follows NIST SP 811, appendix B (from memory).
"""

import math
import re
import unicodedata
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

from checker.spec.unit_words import symbol_of_words

_INCH = 0.0254
_FOOT = 0.3048
_POUND = 0.45359237
_GRAVITY = 9.80665
_POUND_FORCE = _POUND * _GRAVITY
_US_GALLON = 231 * _INCH**3
_IMPERIAL_GALLON = 4.54609e-3  # Weights and Measures Act 1985 (from memory)
_MERCURY = 13595.1 * _GRAVITY  # Pa per m, conventional mercury at 0 °C
_WATER = 1000 * _GRAVITY  # Pa per m, conventional water
_TURN = 2 * math.pi
_DEGREE = math.pi / 180


class Dimension(NamedTuple):
    """A kind of quantity: how a message says it, its SI unit, and the kinds it takes in."""

    said: str
    si: str
    includes: tuple[str, ...] = ()


DIMENSIONS = {
    "length": Dimension("a length", "m"),
    "module": Dimension("a module", "m", ("length", "diametral_pitch")),
    "diametral_pitch": Dimension("a diametral pitch", "m"),
    "angle": Dimension("an angle", "rad"),
    "speed": Dimension("a speed", "m/s"),
    "angular_speed": Dimension("a rotational speed", "rad/s"),
    "acceleration": Dimension("an acceleration", "m/s2"),
    "mass": Dimension("a mass", "kg"),
    "force": Dimension("a force", "N"),
    "torque": Dimension("a torque", "N m"),
    "power": Dimension("a power", "W"),
    "energy": Dimension("an energy", "J"),
    "pressure": Dimension("a pressure or stress", "Pa"),
    "temperature": Dimension("a temperature", "K"),
    "temperature_difference": Dimension("a temperature difference", "ΔK"),
    "time": Dimension("a time", "s"),
    "frequency": Dimension("a frequency", "Hz"),
    "area": Dimension("an area", "m2"),
    "volume": Dimension("a volume", "m3"),
    "volume_flow": Dimension("a volume flow", "m3/s"),
    "inertia": Dimension("a moment of inertia", "kg m2"),
    "unbalance": Dimension("an unbalance", "kg m"),
    "density": Dimension("a density", "kg/m3"),
    "dynamic_viscosity": Dimension("a dynamic viscosity", "Pa s"),
    "kinematic_viscosity": Dimension("a kinematic viscosity", "m2/s"),
    "torsional_stiffness": Dimension("a torsional stiffness", "N m/rad"),
    "torsional_damping": Dimension("a torsional damping", "N m s/rad"),
    "linear_stiffness": Dimension("a stiffness", "N/m"),
    "heat_transfer": Dimension("a heat transfer coefficient", "W/m2 K"),
    "pressure_speed": Dimension("a pressure times a speed", "W/m2"),
    "ratio": Dimension("a ratio", "1"),
    "hardness": Dimension(
        "a hardness", "", ("hardness_rockwell_c", "hardness_vickers", "hardness_brinell")
    ),
    "hardness_rockwell_c": Dimension("a Rockwell C hardness", "HRC"),
    "hardness_vickers": Dimension("a Vickers hardness", "HV"),
    "hardness_brinell": Dimension("a Brinell hardness", "HB"),
}


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit of the table.

    Attributes:
        symbol: the spelling that messages and reports use; empty for a bare ratio.
        dimension: key of ``DIMENSIONS``.
        factor: SI value of one of it.
        offset: SI value of its zero.
        aliases: other spellings, beside those that ``canonical`` makes equal.
        inverse: true for a unit that counts per length, so that SI is factor / value.
    """

    symbol: str
    dimension: str
    factor: float = 1.0
    offset: float = 0.0
    aliases: tuple[str, ...] = ()
    inverse: bool = False

    def to_si(self, value: float) -> float:
        """Convert a value in this unit to SI.

        Raises:
            ZeroDivisionError: an inverse unit has no zero.
        """
        return self.factor / value if self.inverse else value * self.factor + self.offset

    def from_si(self, value: float) -> float:
        """Convert an SI value to this unit."""
        return self.factor / value if self.inverse else (value - self.offset) / self.factor


def _kind(dimension: str, *rows: tuple[str, float] | tuple[str, float, str]) -> list[Unit]:
    """Units of one dimension from rows of symbol, factor and, between bars, other spellings."""
    return [
        Unit(symbol, dimension, factor, aliases=tuple(other[0].split("|")) if other else ())
        for symbol, factor, *other in rows
    ]


UNITS: tuple[Unit, ...] = (
    *_kind(
        "length",
        ("mm", 1e-3),
        ("cm", 1e-2),
        ("m", 1.0),
        ("um", 1e-6, "micron"),
        ("km", 1e3),
        ("in", _INCH, 'inch|inches|"'),
        ("ft", _FOOT, "foot|feet"),
        ("thou", _INCH / 1000, "mil"),
    ),
    Unit("DP", "diametral_pitch", _INCH, inverse=True),
    *_kind(
        "angle",
        ("deg", _DEGREE, "degree|degrees"),
        ("rad", 1.0),
        ("arcmin", _DEGREE / 60),
    ),
    *_kind(
        "speed",
        ("m/s", 1.0),
        ("km/h", 1 / 3.6, "kph"),
        ("kt", 1852 / 3600, "kts|knot|knots"),
        ("mph", 1609.344 / 3600, "mi/h"),
        ("ft/min", _FOOT / 60, "fpm"),
    ),
    *_kind(
        "angular_speed",
        ("rpm", _TURN / 60, "1/min|r/min|rev/min|min-1"),
        ("rad/s", 1.0),
    ),
    *_kind("acceleration", ("m/s2", 1.0), ("g", _GRAVITY)),
    *_kind(
        "mass",
        ("kg", 1.0),
        ("g", 1e-3),
        ("lb", _POUND, "lbs|lbm"),
        ("oz", _POUND / 16),
    ),
    *_kind(
        "force",
        ("N", 1.0),
        ("kN", 1e3),
        ("daN", 10.0),
        ("lbf", _POUND_FORCE),
        ("kgf", _GRAVITY, "kp"),
    ),
    *_kind(
        "torque",
        ("N m", 1.0),
        ("lbf ft", _POUND_FORCE * _FOOT, "ft lbf|lb ft|ft lb"),
        ("lbf in", _POUND_FORCE * _INCH, "in lbf|lb in|in lb"),
        ("kgf m", _GRAVITY),
        ("oz in", _POUND_FORCE / 16 * _INCH, "ozf in|in oz"),
    ),
    *_kind(
        "power",
        ("kW", 1e3),
        ("W", 1.0),
        ("hp", 550 * _FOOT * _POUND_FORCE, "bhp"),
        ("PS", 75 * _GRAVITY, "CV|cv"),
    ),
    *_kind("energy", ("J", 1.0), ("kJ", 1e3)),
    *_kind(
        "pressure",
        ("kPa", 1e3),
        ("MPa", 1e6, "N/mm2"),
        ("GPa", 1e9),
        ("Pa", 1.0, "N/m2"),
        ("bar", 1e5),
        ("mbar", 100.0),
        ("hPa", 100.0),
        ("psi", _POUND_FORCE / _INCH**2, "lbf/in2"),
        ("ksi", 1000 * _POUND_FORCE / _INCH**2),
        ("in Hg", _MERCURY * _INCH),
        ("mm Hg", _MERCURY / 1000),
        ("in H2O", _WATER * _INCH),
        ("mm H2O", _WATER / 1000),
    ),
    Unit("degC", "temperature", 1.0, 273.15, ("C",)),
    Unit("degF", "temperature", 5 / 9, 459.67 * 5 / 9, ("F",)),
    Unit("K", "temperature"),
    Unit("K", "temperature_difference"),
    *_kind(
        "time",
        ("s", 1.0, "sec"),
        ("min", 60.0),
        ("h", 3600.0, "hr|hour|hours"),
    ),
    *_kind("frequency", ("Hz", 1.0)),
    *_kind(
        "area",
        ("mm2", 1e-6),
        ("cm2", 1e-4),
        ("m2", 1.0),
        ("in2", _INCH**2, "sq in"),
    ),
    *_kind(
        "volume",
        ("L", 1e-3, "l|litre|litres|liter|liters|dm3"),
        ("mL", 1e-6, "ml"),
        ("cm3", 1e-6, "cc|ccm"),
        ("m3", 1.0),
        ("in3", _INCH**3, "cu in"),
        ("US gal", _US_GALLON),
        ("US qt", _US_GALLON / 4),
        ("imp gal", _IMPERIAL_GALLON),
        ("imp qt", _IMPERIAL_GALLON / 4),
    ),
    *_kind(
        "volume_flow",
        ("L/min", 1e-3 / 60, "l/min"),
        ("mL/min", 1e-6 / 60, "ml/min|cm3/min|cc/min"),
        ("m3/s", 1.0),
        ("US gal/min", _US_GALLON / 60),
    ),
    *_kind(
        "inertia",
        ("kg m2", 1.0),
        ("kg cm2", 1e-4),
        ("g cm2", 1e-7),
        ("lb ft2", _POUND * _FOOT**2),
        ("lb in2", _POUND * _INCH**2),
        ("slug ft2", _POUND_FORCE * _FOOT, "lbf ft s2"),
    ),
    *_kind(
        "unbalance",
        ("g mm", 1e-6),
        ("kg m", 1.0),
        ("oz in", _POUND / 16 * _INCH),
    ),
    *_kind(
        "density",
        ("kg/m3", 1.0),
        ("g/cm3", 1e3, "kg/L|kg/l|g/mL|g/ml"),
        ("lb/in3", _POUND / _INCH**3),
    ),
    *_kind("dynamic_viscosity", ("mPa s", 1e-3, "cP"), ("Pa s", 1.0)),
    *_kind("kinematic_viscosity", ("cSt", 1e-6, "mm2/s"), ("m2/s", 1.0)),
    *_kind("torsional_damping", ("N m s/rad", 1.0)),
    *_kind(
        "torsional_stiffness",
        ("N m/rad", 1.0),
        ("kN m/rad", 1e3),
        ("N m/deg", 1 / _DEGREE),
        ("lbf in/rad", _POUND_FORCE * _INCH, "in lbf/rad|lb in/rad|in lb/rad"),
        ("lbf ft/deg", _POUND_FORCE * _FOOT / _DEGREE, "ft lbf/deg|lb ft/deg|ft lb/deg"),
    ),
    *_kind(
        "linear_stiffness",
        ("N/mm", 1e3, "kN/m"),
        ("N/m", 1.0),
        ("lbf/in", _POUND_FORCE / _INCH, "lb/in"),
    ),
    *_kind("heat_transfer", ("W/m2 K", 1.0)),
    *_kind(
        "pressure_speed",
        ("MPa m/s", 1e6, "N/mm2 m/s|W/mm2"),
        ("W/m2", 1.0),
        ("psi ft/min", _POUND_FORCE / _INCH**2 * _FOOT / 60, "psi fpm"),
    ),
    *_kind("ratio", ("%", 1e-2), ("", 1.0)),
    *_kind("hardness_rockwell_c", ("HRC", 1.0)),
    *_kind("hardness_vickers", ("HV", 1.0)),
    *_kind("hardness_brinell", ("HB", 1.0, "HBW")),
)

_LOOKALIKES = str.maketrans({"µ": "u", "μ": "u", "º": "deg", "°": "deg", "−": "-", "”": '"'})
_PRODUCT = re.compile(r"[\s·⋅∙•*^()]+|(?<=[^\W\d])-(?=[^\W\d])")


@lru_cache(maxsize=1024)
def canonical(text: str) -> str:
    """Reduce the spellings of one unit to one: ``N·m``, ``N*m``, ``N-m``; ``m²``, ``m^2``.

    >>> canonical("kg·m²"), canonical("W/(m^2 K)"), canonical("°C"), canonical("min⁻¹")
    ('kgm2', 'W/m2K', 'degC', 'min-1')
    """
    marked = unicodedata.normalize("NFKC", text.translate(_LOOKALIKES)).translate(_LOOKALIKES)
    return _PRODUCT.sub("", marked)


def _table() -> dict[str, dict[str, Unit]]:
    table: dict[str, dict[str, Unit]] = {dimension: {} for dimension in DIMENSIONS}
    for unit in UNITS:
        for spelling in (unit.symbol, *unit.aliases):
            table[unit.dimension][canonical(spelling)] = unit
    for dimension, (_, _, includes) in DIMENSIONS.items():
        for inner in includes:
            table[dimension] |= table[inner]
    return table


_TABLE = _table()


def si_unit(dimension: str) -> str:
    """The SI unit of a dimension, spelled as ``show`` takes it; of a hardness scale, the scale.

    Raises:
        KeyError: there is no such dimension.
    """
    return DIMENSIONS[dimension].si


def unit_named(text: str, dimension: str) -> Unit | None:
    """Find the unit of a dimension by its spelling; ``None`` if the dimension has no such unit.

    Raises:
        KeyError: there is no such dimension.
    """
    return _TABLE[dimension].get(canonical(text))


def units_of(dimension: str) -> tuple[str, ...]:
    """The symbols of the units of a dimension, the usual ones first.

    Raises:
        KeyError: there is no such dimension.
    """
    return tuple(dict.fromkeys(unit.symbol for unit in _TABLE[dimension].values()))


def dimensions_of(text: str) -> tuple[str, ...]:
    """The dimensions in which this text is a unit, without those that only take others in."""
    spelling = canonical(text)
    return tuple(
        name for name, kind in DIMENSIONS.items() if not kind.includes and spelling in _TABLE[name]
    )


def closest(text: str, dimension: str) -> str | None:
    """The unit of a dimension that a misspelled one is most likely meant to be, if any is near."""
    from difflib import get_close_matches

    spelling = canonical(text)
    known = _TABLE[dimension]
    same_letters = [name for name in known if name.lower() == spelling.lower()]
    named = [symbol for symbol in (symbol_of_words(text),) if symbol in known]
    near = same_letters or named or get_close_matches(spelling, known, n=1, cutoff=0.7)
    return known[near[0]].symbol if near else None


# The units a value is read in, each from a magnitude (in SI) upward. A dimension that is not here
# is read in its first unit, and so is zero.
_READ_FROM: dict[str, tuple[tuple[float, str], ...]] = {
    "length": ((0, "um"), (1e-5, "mm"), (10, "m")),
    "mass": ((0, "g"), (1, "kg")),
    "force": ((0, "N"), (1e4, "kN")),
    "power": ((0, "W"), (1e3, "kW")),
    "energy": ((0, "J"), (1e4, "kJ")),
    "pressure": ((0, "Pa"), (100, "kPa"), (1e6, "MPa"), (1e10, "GPa")),
    "time": ((0, "s"), (600, "min"), (7200, "h")),
    "area": ((0, "mm2"), (1e-2, "m2")),
    "volume": ((0, "mL"), (1e-4, "L"), (1, "m3")),
    "volume_flow": ((0, "mL/min"), (1e-3 / 60, "L/min")),
    "inertia": ((0, "kg cm2"), (1e-2, "kg m2")),
    "torsional_stiffness": ((0, "N m/rad"), (1e5, "kN m/rad")),
    "torsional_damping": ((0, "N m s/rad"),),
}


def _readings() -> dict[str, tuple[Unit, tuple[tuple[float, Unit], ...]]]:
    """Of each SI unit, the unit for zero and the units from each magnitude upward."""
    readings = {}
    for dimension, (_, si, includes) in DIMENSIONS.items():
        if not includes and dimension not in {"ratio", "diametral_pitch"}:
            units = _TABLE[dimension]
            usual = next(iter(units.values()))
            rungs = _READ_FROM.get(dimension, ((0, usual.symbol),))
            readings[canonical(si)] = (
                usual,
                tuple((least, units[canonical(symbol)]) for least, symbol in rungs),
            )
    return readings


_READINGS = _readings()


def reading_unit(value: float, unit: str) -> Unit | None:
    """The unit an engineer reads an SI value in; ``None`` where that is the unit given."""
    reading = _READINGS.get(canonical(unit))
    if reading is None:
        return None
    usual, rungs = reading
    return [each for least, each in rungs if abs(value) >= least][-1] if value else usual


def show(value: float, unit: str) -> str:
    """Print an SI value in the unit an engineer reads it in, to four significant digits.

    Digits before the decimal point are all kept. A unit that is not the SI unit of a dimension
    is printed as it is. A temperature is in ``"K"``, a difference of temperatures in ``"ΔK"``.

    >>> show(0.0762, "m"), show(607.4, "rad/s"), show(358.15, "K"), show(12.34567, "ΔK")
    ('76.2 mm', '5800 rpm', '85 degC', '12.35 K')
    """
    chosen = reading_unit(value, unit)
    if chosen is None:
        return _digits(value) if unit in {"1", ""} else f"{_digits(value)} {unit}"
    shown = chosen.from_si(value)
    # Without this, the zero of a scale with an offset would show the noise of the subtraction.
    return f"{_digits(round(shown, 9) if chosen.offset else shown)} {chosen.symbol}"


def _digits(number: float) -> str:
    magnitude = abs(number)
    if not math.isfinite(number):
        return str(number)
    if magnitude and not 1e-4 <= magnitude < 1e7:
        return f"{number:.3e}"
    decimals = max(0, 3 - math.floor(math.log10(magnitude))) if magnitude else 0
    text = f"{number + 0.0:.{decimals}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
