"""What a single value of a spec may be. Each kind reads the text and tells the schema its form."""

import datetime
import math
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Annotated, Any, Literal, NoReturn, get_args

from pydantic import BaseModel, Field, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from checker.spec.quantity import Quantity, QuantityError, parse_quantity
from checker.spec.units import units_of

UNKNOWN = "unknown"
NONE = "none"
_LONGEST_TEXT = 2000


def stated(description: str) -> Any:
    """An optional field of a spec. Left out, it is not shown; nothing is put in its place."""
    return Field(default=None, description=description)


def refused(found: str, expected: str) -> NoReturn:
    """Refuse a value, saying what was found and what was expected."""
    raise PydanticCustomError(
        "value", "{found}, {expected}", {"found": found, "expected": expected}
    )


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
    """A value read by one function; subclasses say how."""

    def read(self, value: Any) -> Any:
        raise NotImplementedError

    def form(self) -> dict[str, Any]:
        raise NotImplementedError

    def __get_pydantic_core_schema__(
        self, source: object, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self.read)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        return self.form()


@dataclass(frozen=True)
class Of(_Leaf):
    """A quantity with unit of one dimension, or ``unknown``."""

    dimension: str
    at_least: float = -math.inf
    above: float = -math.inf

    def read(self, value: Any) -> Quantity | None:
        if value == UNKNOWN:
            return None
        if not isinstance(value, str):
            refused(
                spelled(value),
                f"a {self.dimension} with its unit in one text, such as "
                f"'12 {units_of(self.dimension)[0]}', or unknown",
            )
        try:
            quantity = parse_quantity(value, self.dimension)
        except QuantityError as error:
            refused(error.found, error.expected)
        if quantity.value < self.at_least:
            refused(spelled(value), f"a {self.dimension} that is not negative")
        if quantity.value <= self.above:
            refused(spelled(value), f"a {self.dimension} above zero")
        return quantity

    def form(self) -> dict[str, Any]:
        units = ", ".join(units_of(self.dimension))
        return {
            "type": "string",
            "pattern": r"^(unknown|\s*[+-]?[0-9.].*)$",
            "description": f"{self.dimension} with unit ({units}), or unknown",
        }


@dataclass(frozen=True)
class Count(_Leaf):
    """A whole number, or ``unknown``."""

    least: int = 1
    most: int = 100_000

    def read(self, value: Any) -> int | None:
        if value == UNKNOWN:
            return None
        if not isinstance(value, int) or isinstance(value, bool):
            refused(spelled(value), "a whole number, or unknown")
        if not self.least <= value <= self.most:
            refused(spelled(value), f"a whole number from {self.least} to {self.most}")
        return value

    def form(self) -> dict[str, Any]:
        whole = {"type": "integer", "minimum": self.least, "maximum": self.most}
        return {"anyOf": [whole, {"const": UNKNOWN}]}


@dataclass(frozen=True)
class Number(_Leaf):
    """A bare number (a ratio or a coefficient), or ``unknown``."""

    least: float = -1e6
    most: float = 1e6

    def read(self, value: Any) -> float | None:
        if value == UNKNOWN:
            return None
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            refused(spelled(value), "a bare number without unit, or unknown")
        if not self.least <= value <= self.most:
            refused(spelled(value), f"a number from {self.least:g} to {self.most:g}")
        return float(value)

    def form(self) -> dict[str, Any]:
        bare = {"type": "number", "minimum": self.least, "maximum": self.most}
        return {"anyOf": [bare, {"const": UNKNOWN}]}


@dataclass(frozen=True)
class Truth(_Leaf):
    """``true``, ``false`` or ``unknown``."""

    def read(self, value: Any) -> bool | None:
        if value == UNKNOWN:
            return None
        if not isinstance(value, bool):
            refused(spelled(value), "true, false or unknown")
        return value

    def form(self) -> dict[str, Any]:
        return {"enum": [True, False, UNKNOWN]}


@dataclass(frozen=True)
class Words(_Leaf):
    """Free text, or ``unknown``."""

    def read(self, value: Any) -> str | None:
        if value == UNKNOWN:
            return None
        if not isinstance(value, str):
            refused(spelled(value), "a text (put it in quotes)")
        if not value.strip():
            refused("an empty text", "a text, or unknown")
        if len(value) > _LONGEST_TEXT:
            refused(f"a text of {len(value)} characters", f"at most {_LONGEST_TEXT} characters")
        return value

    def form(self) -> dict[str, Any]:
        return {"type": "string", "minLength": 1, "maxLength": _LONGEST_TEXT}


@dataclass(frozen=True)
class Choice(_Leaf):
    """One of a closed list of words, or ``unknown``."""

    words: tuple[str, ...]
    also_unknown: bool = True

    def read(self, value: Any) -> str | None:
        if value == UNKNOWN and self.also_unknown:
            return None
        if value not in self.words:
            refused(spelled(value), "one of " + ", ".join(self._all()))
        return str(value)

    def _all(self) -> tuple[str, ...]:
        return (*self.words, UNKNOWN) if self.also_unknown else self.words

    def form(self) -> dict[str, Any]:
        return {"enum": list(self._all())}


@dataclass(frozen=True)
class Day(_Leaf):
    """A calendar date, ISO 8601."""

    def read(self, value: Any) -> datetime.date | None:
        if value == UNKNOWN:
            return None
        try:
            return datetime.date.fromisoformat(value)
        except (TypeError, ValueError):
            refused(spelled(value), "a date such as 2026-05-31")

    def form(self) -> dict[str, Any]:
        return {"type": "string", "format": "date"}


@dataclass(frozen=True)
class Section:
    """A part that may be described, absent on purpose (``none``) or ``unknown``."""

    model: type[BaseModel] = field(repr=False)
    none: bool = True

    def __get_pydantic_core_schema__(
        self, source: object, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        return core_schema.no_info_wrap_validator_function(
            self._read, handler.generate_schema(self.model)
        )

    def _read(self, value: Any, inner: Callable[[Any], Any]) -> Any:
        if value == UNKNOWN:
            return None
        if value == NONE and self.none:
            return NONE
        if isinstance(value, dict):
            return inner(value)
        refused(spelled(value), "a mapping of fields, " + " or ".join(self._words()))

    def _words(self) -> list[str]:
        return [NONE, UNKNOWN] if self.none else [UNKNOWN]

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        inner = handler(schema["schema"])
        return {"anyOf": [inner, {"enum": self._words()}]}


def choices(literal: object) -> tuple[str, ...]:
    """The words of a ``Literal`` type."""
    return get_args(literal)


Nothing = Literal["none"]

Length = Annotated[Quantity | None, Of("length")]
Size = Annotated[Quantity | None, Of("length", above=0.0)]
Angle = Annotated[Quantity | None, Of("angle")]
Speed = Annotated[Quantity | None, Of("speed")]
Turning = Annotated[Quantity | None, Of("angular_speed", at_least=0.0)]
Mass = Annotated[Quantity | None, Of("mass", above=0.0)]
Force = Annotated[Quantity | None, Of("force")]
Torque = Annotated[Quantity | None, Of("torque", at_least=0.0)]
Power = Annotated[Quantity | None, Of("power", at_least=0.0)]
Pressure = Annotated[Quantity | None, Of("pressure")]
Temperature = Annotated[Quantity | None, Of("temperature")]
Duration = Annotated[Quantity | None, Of("time", above=0.0)]
Volume = Annotated[Quantity | None, Of("volume", at_least=0.0)]
Flow = Annotated[Quantity | None, Of("volume_flow", at_least=0.0)]
Inertia = Annotated[Quantity | None, Of("inertia", above=0.0)]
Stiffness = Annotated[Quantity | None, Of("torsional_stiffness", above=0.0)]
KinematicViscosity = Annotated[Quantity | None, Of("kinematic_viscosity", above=0.0)]
Density = Annotated[Quantity | None, Of("density", above=0.0)]
Share = Annotated[Quantity | None, Of("ratio", at_least=0.0)]
Hardness = Annotated[Quantity | None, Of("hardness", above=0.0)]
Area = Annotated[Quantity | None, Of("area", above=0.0)]
Teeth = Annotated[int | None, Count(5, 1000)]
Whole = Annotated[int | None, Count(0)]
Ratio = Annotated[float | None, Number(0.0, 1000.0)]
Coefficient = Annotated[float | None, Number(-10.0, 1000.0)]
Flag = Annotated[bool | None, Truth()]
Text = Annotated[str | None, Words()]
Date = Annotated[datetime.date | None, Day()]
