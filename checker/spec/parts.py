"""The kinds of part that rules can look at, and the units of what is stated of them."""

from functools import cache
from typing import Any, get_args

from pydantic import BaseModel

from checker.spec.coupling import Clutch, Damper
from checker.spec.fields import Count, Number, Of
from checker.spec.gearing import Bearing, Gear, Joint, Mesh, Shaft
from checker.spec.oil_side import Housing, Lubrication, Seal, Vent
from checker.spec.papers import Deviation, Monitoring, Records
from checker.spec.power import Drive, Engine, OperationPoint, Propeller
from checker.spec.states import States
from checker.spec.units import DIMENSIONS

MODELS: dict[str, type[BaseModel]] = {
    "drive": Drive,
    "engine": Engine,
    "point": OperationPoint,
    "shaft": Shaft,
    "gear": Gear,
    "mesh": Mesh,
    "bearing": Bearing,
    "joint": Joint,
    "damper": Damper,
    "clutch": Clutch,
    "lubrication": Lubrication,
    "vent": Vent,
    "seal": Seal,
    "housing": Housing,
    "propeller": Propeller,
    "monitoring": Monitoring,
    "states": States,
    "deviation": Deviation,
    "records": Records,
}

HARDNESS = "hardness"
"""Unit of a hardness whose scale the spec chooses."""


def stated_unit(kind: str, name: str) -> str | None:
    """SI unit of a stated field: ``"1"`` for bare numbers, ``""`` for text and truths.

    Args:
        kind: kind of part.
        name: field, with dots into inner parts.

    Returns:
        ``None`` if a part of this kind has no such field with a single value.
    """
    return _units(MODELS[kind]).get(name)


@cache
def _units(model: type[BaseModel]) -> dict[str, str]:
    units: dict[str, str] = {}
    for name, field in model.model_fields.items():
        inner = _inner_model(field.annotation)
        if inner is not None:
            units |= {f"{name}.{below}": unit for below, unit in _units(inner).items()}
        elif not any(get_args(option) for option in get_args(field.annotation)):
            units[name] = _unit_of(field.metadata)
    return units


def _unit_of(marks: list[Any]) -> str:
    for mark in marks:
        if isinstance(mark, Of):
            return HARDNESS if mark.dimension == HARDNESS else DIMENSIONS[mark.dimension].si
        if isinstance(mark, (Count, Number)):
            return "1"
    return ""


def _inner_model(annotation: Any) -> type[BaseModel] | None:
    for option in (annotation, *get_args(annotation)):
        if isinstance(option, type) and issubclass(option, BaseModel):
            return option
    return None
