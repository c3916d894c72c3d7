"""What a single value of a spec may be. Each kind reads the text and tells the schema its form."""

import datetime
import difflib
import math
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Annotated, Any, NoReturn

from pydantic import BaseModel, Field, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from checker.spec.quantity import Quantity, QuantityError, parse_quantity
from checker.spec.units import DIMENSIONS, units_of

UNKNOWN = "unknown"
NONE = "none"
_LONGEST_TEXT = 2000


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
    """A value read by one function; subclasses say how."""

    def _read(self, value: object) -> object:
        raise NotImplementedError

    def _form(self) -> dict[str, Any]:
        raise NotImplementedError

    def __get_pydantic_core_schema__(
        self, source: object, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self._read)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        return self._form()


@dataclass(frozen=True)
class Of(_Leaf):
    """A quantity with unit of one dimension."""

    dimension: str
    at_least: float = -math.inf
    above: float = -math.inf

    def _read(self, value: object) -> Quantity:
        if self.dimension == "ratio" and isinstance(value, (int, float)):
            value = repr(value)
        if not isinstance(value, str):
            refused(
                spelled(value),
                f"{self._said()} with its unit in one text, such as "
                f"'12 {units_of(self.dimension)[0]}', or unknown",
            )
        try:
            quantity = parse_quantity(value, self.dimension)
        except QuantityError as error:
            refused(error.found, error.expected, error.message, error.hint)
        if quantity.value < self.at_least:
            refused(spelled(value), f"{self._said()} that is not negative")
        if quantity.value <= self.above:
            refused(spelled(value), f"{self._said()} above zero")
        return quantity

    def _said(self) -> str:
        return DIMENSIONS[self.dimension].said

    def _form(self) -> dict[str, Any]:
        units = ", ".join(filter(None, units_of(self.dimension)))
        return {
            "type": ["string", "number"] if self.dimension == "ratio" else "string",
            "pattern": r"^(unknown|\s*[+-]?[0-9.].*)$",
            "description": f"{self._said()} with its unit ({units}), or unknown",
        }


@dataclass(frozen=True)
class Count(_Leaf):
    """A whole number."""

    least: int = 1
    most: int = 100_000

    def _read(self, value: object) -> int:
        if not isinstance(value, int) or isinstance(value, bool):
            refused(spelled(value), "a whole number, or unknown")
        if not self.least <= value <= self.most:
            refused(spelled(value), f"a whole number from {self.least} to {self.most}")
        return value

    def _form(self) -> dict[str, Any]:
        whole = {"type": "integer", "minimum": self.least, "maximum": self.most}
        return {"anyOf": [whole, {"const": UNKNOWN}]}


@dataclass(frozen=True)
class Number(_Leaf):
    """A bare number (a ratio or a coefficient)."""

    least: float = -1e6
    most: float = 1e6

    def _read(self, value: object) -> float:
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            refused(spelled(value), "a bare number without unit, or unknown")
        if not self.least <= value <= self.most:
            refused(spelled(value), f"a number from {self.least:g} to {self.most:g}")
        return float(value)

    def _form(self) -> dict[str, Any]:
        bare = {"type": "number", "minimum": self.least, "maximum": self.most}
        return {"anyOf": [bare, {"const": UNKNOWN}]}


@dataclass(frozen=True)
class Truth(_Leaf):
    """``true`` or ``false``."""

    def _read(self, value: object) -> bool:
        if not isinstance(value, bool):
            refused(spelled(value), "true, false or unknown")
        return value

    def _form(self) -> dict[str, Any]:
        return {"enum": [True, False, UNKNOWN]}


@dataclass(frozen=True)
class Words(_Leaf):
    """Free text."""

    def _read(self, value: object) -> str:
        if not isinstance(value, str):
            refused(spelled(value), "a text (put it in quotes)")
        if not value.strip():
            refused("an empty text", "a text, or unknown")
        if len(value) > _LONGEST_TEXT:
            refused(f"a text of {len(value)} characters", f"at most {_LONGEST_TEXT} characters")
        return value

    def _form(self) -> dict[str, Any]:
        return {"type": "string", "minLength": 1, "maxLength": _LONGEST_TEXT}


@dataclass(frozen=True)
class Choice(_Leaf):
    """One of a closed list of words."""

    words: tuple[str, ...]

    def _read(self, value: object) -> str:
        if value not in self.words:
            near = difflib.get_close_matches(str(value), self.words, n=1, cutoff=0.6)
            hint = f"did you mean '{near[0]}'?" if near else ""
            expected = "one of " + ", ".join((*self.words, UNKNOWN))
            refused(spelled(value), expected, hint=hint)
        return str(value)

    def _form(self) -> dict[str, Any]:
        return {"enum": [*self.words, UNKNOWN]}


@dataclass(frozen=True)
class Day(_Leaf):
    """A calendar date, ISO 8601."""

    def _read(self, value: object) -> datetime.date:
        try:
            return datetime.date.fromisoformat(str(value))
        except ValueError:
            refused(spelled(value), "a date such as 2026-05-31")

    def _form(self) -> dict[str, Any]:
        return {"type": "string", "format": "date"}


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
        return {"anyOf": [inner, {"enum": [NONE, UNKNOWN]}]}


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
