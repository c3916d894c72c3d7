"""What a single value of a spec may be. Each kind reads the text and tells the schema its form."""

import contextlib
import datetime
import difflib
import re
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Annotated, Any, NoReturn, get_args

from pydantic import BaseModel, Field, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from checker.spec.quantity import Quantity, QuantityError, parse_quantity
from checker.spec.units import DIMENSIONS, units_of

UNKNOWN = "unknown"
NONE = "none"
OUT_OF_RANGE = "out of range"
CANNOT_BE_UNKNOWN = f"; it cannot be {UNKNOWN}"


def stated(description: str) -> Any:
    """An optional field of a spec. Left out, it is not shown; nothing is put in its place."""
    return Field(default=None, description=description)


def refused(
    found: str, expected: str, message: str = "unreadable value", hint: str = ""
) -> NoReturn:
    """Refuse a value, saying what is wrong, what was found and what was expected."""
    context = {"found": found, "expected": expected, "message": message, "hint": hint}
    raise PydanticCustomError("value", "{message}; found {found}; expected {expected}", context)


def spelled(value: object) -> str:
    """A value as a person would read it back, for a message."""
    if isinstance(value, dict):
        return "a mapping"
    if isinstance(value, list):
        return "a list"
    if isinstance(value, bool):
        return str(value).lower()
    return repr(value) if isinstance(value, str) else str(value)


@dataclass(frozen=True)
class _Leaf:
    """A value read by one function; subclasses say how.

    Their ``_read`` takes the value and the end of a message about it: that it may be left unknown,
    that it cannot be, or nothing.
    """

    def _read(self, value: object, otherwise: str) -> object:
        raise NotImplementedError

    def _form(self) -> dict[str, Any]:
        raise NotImplementedError

    def __get_pydantic_core_schema__(
        self, source: object, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        optional = type(None) in get_args(source)

        def read(value: object) -> object:
            required = CANNOT_BE_UNKNOWN if value == UNKNOWN else ""
            return self._read(value, f", or {UNKNOWN}" if optional else required)

        return core_schema.no_info_plain_validator_function(read)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        return self._form()


@dataclass(frozen=True)
class Of(_Leaf):
    """A quantity with unit of one dimension, within limits written as quantities."""

    dimension: str
    at_least: str = ""
    above: str = ""
    at_most: str = ""
    below: str = ""
    or_none: bool = False

    def _read(self, value: object, otherwise: str) -> Quantity | str:
        if self.or_none:
            if value == NONE:
                return NONE
            otherwise = f", {NONE}{otherwise}"
        if self.dimension == "ratio" and isinstance(value, (int, float)):
            value = repr(value)
        if not isinstance(value, str):
            refused(
                spelled(value),
                f"{self._said()} with its unit in one text, such as "
                f"'12 {units_of(self.dimension)[0]}'{otherwise}",
            )
        try:
            quantity = parse_quantity(value, self.dimension)
        except QuantityError as error:
            refused(error.found, error.expected, error.message, error.hint)
        self._check(quantity, otherwise)
        return quantity

    def _check(self, quantity: Quantity, otherwise: str) -> None:
        value = quantity.value
        inside = (
            (not self.at_least or value >= self._limit(self.at_least))
            and (not self.above or value > self._limit(self.above))
            and (not self.at_most or value <= self._limit(self.at_most))
            and (not self.below or value < self._limit(self.below))
        )
        if not inside:
            words = zip(
                ("of at least", "above", "at most", "below"),
                (self.at_least, self.above, self.at_most, self.below),
                strict=True,
            )
            limits = " and ".join(f"{word} {limit}" for word, limit in words if limit)
            expected = f"{self._said()} {limits}{otherwise}"
            refused(spelled(quantity.text), expected, OUT_OF_RANGE)

    def _limit(self, text: str) -> float:
        return parse_quantity(text, self.dimension).value

    def _said(self) -> str:
        return DIMENSIONS[self.dimension].said

    def _form(self) -> dict[str, Any]:
        units = ", ".join(filter(None, units_of(self.dimension)))
        return {
            "type": ["string", "number"] if self.dimension == "ratio" else "string",
            "pattern": r"^\s*[+-]?[0-9.].*$" + (f"|^{NONE}$" if self.or_none else ""),
            "description": f"{self._said()} with its unit ({units})",
        }


@dataclass(frozen=True)
class OnScale(Of):
    """A hardness, within the limits of the scale it is written in."""

    dimension: str = "hardness"

    def _check(self, quantity: Quantity, otherwise: str) -> None:
        Of(quantity.dimension, **_SCALES[quantity.dimension])._check(quantity, otherwise)


_SCALES: dict[str, dict[str, Any]] = {
    "hardness_rockwell_c": {"above": "0 HRC", "at_most": "72 HRC"},
    "hardness_vickers": {"above": "0 HV", "at_most": "1500 HV"},
    "hardness_brinell": {"above": "0 HB", "at_most": "800 HB"},
}


@dataclass(frozen=True)
class Count(_Leaf):
    """A whole number."""

    least: int = 1
    most: int = 100_000

    def _read(self, value: object, otherwise: str) -> int:
        if not isinstance(value, int) or isinstance(value, bool):
            refused(spelled(value), f"a whole number{otherwise}")
        if not self.least <= value <= self.most:
            expected = f"a whole number from {self.least} to {self.most}{otherwise}"
            refused(spelled(value), expected, OUT_OF_RANGE)
        return value

    def _form(self) -> dict[str, Any]:
        return {"type": "integer", "minimum": self.least, "maximum": self.most}


@dataclass(frozen=True)
class Number(_Leaf):
    """A bare number (a ratio or a coefficient)."""

    least: float
    most: float

    def _read(self, value: object, otherwise: str) -> float:
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            refused(spelled(value), f"a bare number without unit{otherwise}")
        if not self.least <= value <= self.most:
            expected = f"a number from {self.least:g} to {self.most:g}{otherwise}"
            refused(spelled(value), expected, OUT_OF_RANGE)
        return float(value)

    def _form(self) -> dict[str, Any]:
        return {"type": "number", "minimum": self.least, "maximum": self.most}


@dataclass(frozen=True)
class Truth(_Leaf):
    """``true`` or ``false``."""

    def _read(self, value: object, otherwise: str) -> bool:
        if not isinstance(value, bool):
            refused(spelled(value), f"true or false{otherwise}")
        return value

    def _form(self) -> dict[str, Any]:
        return {"type": "boolean"}


@dataclass(frozen=True)
class Words(_Leaf):
    """Free text that says something: what only stands for the lack of a text is refused.

    Attributes:
        said: what a message calls it.
        longest: the number of characters it may have.
        or_none: whether ``none`` is an answer here.
    """

    said: str = "a text that says something"
    longest: int = 2000
    or_none: bool = False

    def _read(self, value: object, otherwise: str) -> str:
        if not isinstance(value, str):
            refused(spelled(value), f"a text (put it in quotes){otherwise}")
        word = value.strip().casefold()
        if self.or_none and word == NONE:
            return NONE
        if word in _SAYS_NOTHING:
            none = f", {NONE}" if self.or_none else ""
            refused(spelled(value), f"{self.said}{none}{otherwise}", "this says nothing")
        if len(value) > self.longest:
            refused(f"a text of {len(value)} characters", f"at most {self.longest} characters")
        return value

    def _form(self) -> dict[str, Any]:
        refusing = [word for word in _SAYS_NOTHING if not (self.or_none and word == NONE)]
        return {
            "type": "string",
            "pattern": r"\S",
            "maxLength": self.longest,
            "not": {"enum": refusing},
        }


_SAYS_NOTHING = ("", NONE, "no", "n/a", "na", "nil", "-", "--", "?", "tbd", "tba", "todo", UNKNOWN)


@dataclass(frozen=True)
class Choice(_Leaf):
    """One of a closed list of words."""

    words: tuple[str, ...]

    def _read(self, value: object, otherwise: str) -> str:
        if value not in self.words:
            near = difflib.get_close_matches(str(value), self.words, n=1, cutoff=0.6)
            hint = f"did you mean '{near[0]}'?" if near else ""
            expected = f"one of {', '.join(self.words)}{otherwise}"
            refused(spelled(value), expected, hint=hint)
        return str(value)

    def _form(self) -> dict[str, Any]:
        return {"enum": [*self.words]}


@dataclass(frozen=True)
class Day(_Leaf):
    """A calendar date, ISO 8601."""

    def _read(self, value: object, otherwise: str) -> datetime.date:
        if isinstance(value, str) and _DATE.fullmatch(value):
            with contextlib.suppress(ValueError):  # of a day that its month does not have
                return datetime.date.fromisoformat(value)
        refused(spelled(value), f"a date such as 2026-05-31{otherwise}")

    def _form(self) -> dict[str, Any]:
        return {"type": "string", "format": "date", "pattern": f"^{_DATE.pattern}$"}


_DATE = re.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}")


@dataclass(frozen=True)
class Section:
    """A part that may be described, or absent on purpose (``none``)."""

    model: type[BaseModel] = field(repr=False)

    def __get_pydantic_core_schema__(
        self, source: object, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        return core_schema.no_info_wrap_validator_function(
            self._read, handler.generate_schema(self.model)
        )

    @staticmethod
    def _read(value: Any, inner: Callable[[Any], Any]) -> Any:
        if value == NONE:
            return NONE
        if isinstance(value, dict):
            return inner(value)
        refused(spelled(value), f"a mapping of fields, {NONE} or {UNKNOWN}")

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        inner = handler(schema["schema"])
        return {"anyOf": [inner, {"const": NONE}]}


Length = Annotated[Quantity | None, Of("length")]
Extent = Annotated[Quantity | None, Of("length", at_least="0 mm")]
Size = Annotated[Quantity | None, Of("length", above="0 mm")]
Speed = Annotated[Quantity | None, Of("speed")]
Stream = Annotated[Quantity | None, Of("speed", at_least="0 m/s")]
Turning = Annotated[Quantity | None, Of("angular_speed", at_least="0 rpm")]
Mass = Annotated[Quantity | None, Of("mass", above="0 kg")]
Force = Annotated[Quantity | None, Of("force")]
LoadRating = Annotated[Quantity | None, Of("force", above="0 N")]
Torque = Annotated[Quantity | None, Of("torque", at_least="0 N m")]
Power = Annotated[Quantity | None, Of("power", at_least="0 kW")]
Strength = Annotated[Quantity | None, Of("pressure", above="0 MPa")]
Temperature = Annotated[
    Quantity | None, Of("temperature", at_least="-100 degC", at_most="1500 degC")
]
FluidTemperature = Annotated[
    Quantity | None, Of("temperature", at_least="-90 degC", at_most="400 degC")
]
Duration = Annotated[Quantity | None, Of("time", above="0 h")]
Volume = Annotated[Quantity | None, Of("volume", at_least="0 L")]
Flow = Annotated[Quantity | None, Of("volume_flow", at_least="0 L/min")]
Inertia = Annotated[Quantity | None, Of("inertia", above="0 kg m2")]
Stiffness = Annotated[Quantity | None, Of("torsional_stiffness", above="0 N m/rad")]
Damping = Annotated[Quantity | None, Of("torsional_damping", above="0 N m s/rad")]
KinematicViscosity = Annotated[Quantity | None, Of("kinematic_viscosity", above="0 cSt")]
Density = Annotated[Quantity | None, Of("density", at_least="500 kg/m3", at_most="1500 kg/m3")]
Share = Annotated[Quantity | None, Of("ratio", at_least="0 %", at_most="100 %")]
Hardness = Annotated[Quantity | None, OnScale()]
Area = Annotated[Quantity | None, Of("area", above="0 m2")]
Attitude = Annotated[Quantity | None, Of("angle", at_least="-60 deg", at_most="60 deg")]
Surface = Annotated[Quantity | None, Of("area", at_least="0 m2")]
Difference = Annotated[Quantity | None, Of("temperature_difference", at_least="0 K")]
HeatTransfer = Annotated[Quantity | None, Of("heat_transfer", at_least="0 W/m2 K")]
Teeth = Annotated[int | None, Count(5, 1000)]
Whole = Annotated[int | None, Count(0)]
Ratio = Annotated[float | None, Number(0.01, 1000.0)]
Coefficient = Annotated[float | None, Number(0.0, 1000.0)]
ProfileShift = Annotated[float | None, Number(-2.0, 2.0)]
Friction = Annotated[float | None, Number(0.001, 1.5)]
Flag = Annotated[bool | None, Truth()]
Name = Annotated[str, Words("a name", 200)]
Written = Annotated[str, Words()]
Text = Annotated[str | None, Words()]
TextOrNone = Annotated[str | None, Words(or_none=True)]
Date = Annotated[datetime.date | None, Day()]
