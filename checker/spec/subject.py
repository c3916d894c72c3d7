"""A part of the spec as something that can be asked for its stated values."""

import datetime
from functools import lru_cache
from typing import Any

from pydantic import BaseModel

from checker.known import Known, Path, Unknown, Value
from checker.spec.fields import NONE
from checker.spec.model import Spec
from checker.spec.quantity import Quantity
from checker.spec.units import DIMENSIONS

_ALIASES = {"from": "from_"}


@lru_cache(maxsize=4096)
def _steps(field: str) -> tuple[str, ...]:
    return tuple(field.split("."))


class Subject:
    """A part of the drive, with its kind, name and place.

    Attributes:
        kind: what rules call it: mesh, gear, shaft ...
        name: its name in the spec; empty where there is only one of its kind.
        path: its place in the spec.
        part: the model with its stated values; ``None`` where the spec leaves it out.
    """

    __slots__ = ("_givens", "_over", "_over_path", "kind", "name", "part", "path")

    def __init__(
        self,
        kind: str,
        name: str,
        path: Path,
        part: BaseModel | None,
        over: BaseModel | None = None,
        over_path: Path = (),
    ) -> None:
        self.kind = kind
        self.name = name
        self.path = path
        self.part = part
        self._over = over
        self._over_path = over_path
        self._givens: dict[tuple[str, str, str], Value] = {}

    @property
    def label(self) -> str:
        """The path as text, such as ``meshes.first``."""
        return ".".join(str(step) for step in self.path) or "drive"

    @property
    def address(self) -> str:
        """What a person asks for it by: its label, an operation point by its name.

        Unlike the label of a point it stays when another one is put before it.
        """
        return f"operation.{self.name}" if self.kind == "point" else self.label

    def given(self, field: str, symbol: str = "", at: str = "value") -> Value:
        """A stated value.

        Args:
            field: name of the field; fields of inner parts with a dot.
            symbol: symbol under which the derivation shows it.
            at: ``value`` as stated, or ``low`` or ``high`` end of its tolerance.
        """
        key = (field, symbol, at)
        if key not in self._givens:
            self._givens[key] = self._given(field, symbol, at)
        return self._givens[key]

    def _given(self, field: str, symbol: str, at: str) -> Value:
        stated, path = self._find(field)
        if stated is None:
            return Unknown((path,))
        symbol = symbol or field.rpartition(".")[2].replace("_", " ")
        if isinstance(stated, Quantity):
            number: float = getattr(stated, at)
            return Known(number, DIMENSIONS[stated.dimension].si, symbol, path=path)
        if isinstance(stated, (int, float)) and not isinstance(stated, bool):
            return Known(stated, "1", symbol, path=path)
        if isinstance(stated, (str, bool)):
            return Known(stated, "", symbol, path=path)
        if isinstance(stated, datetime.date):
            return Known(stated.isoformat(), "", symbol, path=path)
        raise TypeError(f"{self.label}.{field} is not a single value")

    def raw(self, field: str) -> Any:
        """A stated value as the model holds it: a part, a list, ``none``; ``None`` if unknown."""
        return self._find(field)[0]

    def place(self, field: str) -> Path:
        """The path of a field of this part."""
        return self._find(field)[1]

    def _find(self, field: str) -> tuple[Any, Path]:
        steps = _steps(field)
        if self._over is not None and field in type(self._over).model_fields:
            overriding = getattr(self._over, field)
            if overriding is not None:
                return overriding, (*self._over_path, *steps)
        current: Any = self.part
        for step in steps:
            if current is None or current.__class__ is str:  # left out, or none on purpose
                return None, self.path + steps
            current = getattr(current, _ALIASES.get(step, step))
        return current, self.path + steps

    def __repr__(self) -> str:
        return f"Subject({self.kind} {self.label})"


class Subjects:
    """All parts of one drive with one ratio set, by kind and name."""

    def __init__(self, spec: Spec, ratio_set: str | None = None) -> None:
        self.spec = spec
        self.ratio_set = ratio_set
        self.by_kind: dict[str, tuple[Subject, ...]] = {
            "drive": (Subject("drive", "", ("drive",), spec.drive),),
            "engine": (Subject("engine", "", ("engine",), spec.engine),),
            "point": tuple(
                Subject("point", point.name, ("operation", index), point)
                for index, point in enumerate(spec.operation)
            ),
            "gear": self._gears(),
            "propeller": (Subject("propeller", "", ("propeller",), spec.propeller),),
            "deviation": tuple(
                Subject("deviation", f"{each.rule} on {each.part}", ("deviations", index), each)
                for index, each in enumerate(spec.deviations)
            ),
        }
        for kind, field in (
            ("shaft", "shafts"),
            ("mesh", "meshes"),
            ("bearing", "bearings"),
            ("joint", "joints"),
            ("seal", "seals"),
        ):
            named: dict[str, BaseModel] = getattr(spec, field)
            self.by_kind[kind] = tuple(
                Subject(kind, name, (field, name), part) for name, part in named.items()
            )
        for kind in (
            "damper",
            "clutch",
            "lubrication",
            "vent",
            "housing",
            "monitoring",
            "states",
            "records",
        ):
            part = getattr(spec, kind)
            self.by_kind[kind] = (
                Subject(kind, "", (kind,), part if isinstance(part, BaseModel) else None),
            )
        self._by_name = {
            (kind, each.name): each for kind, all_ in self.by_kind.items() for each in all_
        }

    def _gears(self) -> tuple[Subject, ...]:
        overrides = {}
        if self.ratio_set is not None:
            overrides = self.spec.ratio_sets[self.ratio_set].gears
        return tuple(
            Subject(
                "gear",
                name,
                ("gears", name),
                gear,
                overrides.get(name),
                ("ratio_sets", self.ratio_set or "", "gears", name),
            )
            for name, gear in self.spec.gears.items()
        )

    def all(self, kind: str) -> tuple[Subject, ...]:
        """Every part of a kind, in the order of the spec."""
        return self.by_kind[kind]

    def the(self, kind: str, name: str = "") -> Subject:
        """One part by kind and name."""
        return self._by_name[kind, name]

    def presence(self, kind: str) -> bool | None:
        """Whether a part that may be left out on purpose is there.

        Returns:
            ``True`` if described, ``False`` if the spec says ``none``, ``None`` if it says nothing.
        """
        part = getattr(self.spec, kind)
        if part is None:
            return None
        return bool(part != NONE)
