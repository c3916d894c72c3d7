"""Quantities as a person writes them: a number, a tolerance where it matters, and a unit."""

import re
from dataclasses import dataclass
from functools import lru_cache
from math import isfinite
from typing import NoReturn

from checker.spec.problem import quoted
from checker.spec.units import DIMENSIONS, Unit, closest, dimensions_of, unit_named, units_of

_LONGEST = 100

_UNSIGNED = r"(?>(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?)"
_NUMBER = rf"[+-]?{_UNSIGNED}"
_QUANTITY = re.compile(
    rf"""\s*(?P<value>{_NUMBER})
    (?: \s*(?:±|\+/-|\+-)\s*(?P<both>{_UNSIGNED})
      | (?:\s+|(?=[+-]))(?P<one>[+-]{_UNSIGNED}|0\.?0*)\s*/\s*(?P<other>[+-]{_UNSIGNED}|0\.?0*)
    )?
    \s*(?P<unit>.*?)\s*""",
    re.VERBOSE | re.DOTALL,
)

# Ways of writing that are refused, each with what is wrong and what to do; the first that fits.
_REFUSED = tuple(
    (re.compile(pattern, re.IGNORECASE), message, hint)
    for pattern, message, hint in (
        (r"\s*$", "the quantity is empty", "write unknown if it is not known"),
        (r"\s*[+-]?\.?(nan|inf(inity)?)\b", "the number is not finite", ""),
        (
            r".*[0-9],[0-9]",
            "a comma stands in the number",
            "write a decimal point, and no separator between thousands",
        ),
        (
            r"\s*[+-]?[0-9]+(\s+[0-9]+)?\s*/\s*[0-9]",
            "the number is a fraction",
            "write a decimal number, such as 0.375 {unit}",
        ),
        (
            rf"\s*{_NUMBER}\s*(-|–|to|\.\.+|…)\s*{_NUMBER}",
            "the quantity is a range",
            "write the middle and a tolerance, such as 60 +/- 2 {unit}",
        ),
        (
            rf"\s*{_NUMBER}(\s+|_|'|’|\.)[0-9]",
            "the number is broken up",
            "write the digits without a gap",
        ),
        (
            rf"\s*{_NUMBER}[^0-9]*(±|\+/-|[+-]\s*\.?[0-9]|/\s*[+-])",
            "the tolerance cannot be read",
            "write it before the unit: 76.20 +/- 0.02 {unit}, or 76.20 +0.1/-0.05 {unit}",
        ),
        (rf"\s*(?!{_NUMBER})", "the quantity does not begin with a number", ""),
    )
)


class QuantityError(ValueError):
    """A text that is not a quantity of the expected dimension.

    Attributes:
        message: what is wrong, as a clause without a full stop.
        found: what is written.
        expected: what could be written instead.
        hint: what to do about it, where that is not plain from the rest.
    """

    def __init__(self, message: str, found: str, expected: str, hint: str = "") -> None:
        super().__init__(message, found, expected, hint)
        self.message = message
        self.found = found
        self.expected = expected
        self.hint = hint

    def __str__(self) -> str:
        hint = f" ({self.hint})" if self.hint else ""
        return f"{self.message}; found {self.found}; expected {self.expected}{hint}"


@dataclass(frozen=True, slots=True)
class Quantity:
    """A physical quantity in SI units, with the text it was read from.

    Attributes:
        value: nominal value in SI.
        minus: how far the lower bound lies below the value, in SI; negative where it lies above.
        plus: how far the upper bound lies above the value, in SI; negative where it lies below.
        unit: the unit as written.
        dimension: the dimension of that unit: for a hardness its scale, for a module a length or
            a diametral pitch.
        text: the quantity as written.
    """

    value: float
    minus: float
    plus: float
    unit: str
    dimension: str
    text: str

    @property
    def nominal(self) -> float:
        """The value without its tolerance, in SI."""
        return self.value

    @property
    def low(self) -> float:
        """The least value within the tolerance, in SI."""
        return self.value - self.minus

    @property
    def high(self) -> float:
        """The greatest value within the tolerance, in SI."""
        return self.value + self.plus


@lru_cache(maxsize=4096)
def parse_quantity(text: str, dimension: str) -> Quantity:
    """Read a quantity such as ``75 hp``, ``76.20 +/- 0.02 mm`` or ``20 +0.1/-0.05 deg``.

    Raises:
        QuantityError: the text is not a quantity of this dimension.
        KeyError: there is no such dimension.

    >>> round(parse_quantity("76.20 +/- 0.02 mm", "length").high, 9)
    0.07622
    """
    match = _QUANTITY.fullmatch(text.replace("−", "-")) if len(text) <= _LONGEST else None
    unit = unit_named(match["unit"], dimension) if match else None
    if match is None or unit is None:
        _refuse(text, match["unit"] if match else "", dimension)
    value, both, one, other, written = match.groups()
    lower = upper = 0.0
    if both is not None:
        lower, upper = -float(both), float(both)
    elif one is not None:
        lower, upper = sorted((float(one), float(other)))
    if unit.inverse and (float(value) <= 0 or lower or upper):
        raise QuantityError(
            f"{unit.symbol} counts teeth per inch",
            quoted(text),
            f"a number above zero without a tolerance, or {_expected('length')}",
        )
    quantity = Quantity(
        unit.to_si(float(value)),
        (0.0 - lower) * unit.factor,
        upper * unit.factor,
        written,
        unit.dimension,
        text,
    )
    _check_physical(quantity, unit)
    return quantity


def _check_physical(quantity: Quantity, unit: Unit) -> None:
    expected = _expected(unit.dimension)
    if not (isfinite(quantity.low) and isfinite(quantity.high)):
        raise QuantityError("the number is not finite", quoted(quantity.text), expected)
    # The slack is for the rounding of -273.15 degC and -459.67 degF.
    if unit.dimension == "temperature" and quantity.low < -1e-9:
        raise QuantityError(
            "the temperature is below absolute zero", quoted(quantity.text), expected
        )


def _refuse(text: str, unit: str, dimension: str) -> NoReturn:
    """Say why a text is no quantity of a dimension."""
    expected = _expected(dimension)
    if len(text) > _LONGEST:
        raise QuantityError("the text is too long for a quantity", quoted(text), expected)
    for pattern, message, hint in _REFUSED:
        if pattern.match(text):
            usual = units_of(dimension)[0]
            raise QuantityError(message, quoted(text), expected, hint.format(unit=usual))
    if not unit:
        raise QuantityError("the unit is missing", quoted(text), expected)
    meant = closest(unit, dimension)
    hint = f"did you mean {meant}?" if meant else ""
    others = [DIMENSIONS[name].said for name in dimensions_of(unit)]
    if others:
        found = f"{quoted(unit)}, {' or '.join(others)}"
        raise QuantityError("the unit is of another kind", found, expected, hint)
    raise QuantityError("the unit is not known", quoted(unit), expected, hint)


def _expected(dimension: str) -> str:
    symbols = ", ".join(symbol or "a bare number" for symbol in units_of(dimension))
    return f"{DIMENSIONS[dimension].said}: {symbols}"
