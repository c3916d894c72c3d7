"""A spec with one stated value changed, to be read again like any other."""

import json
import re
from dataclasses import dataclass
from decimal import Decimal

from checker.known import Path
from checker.spec.document import Document
from checker.spec.units import canonical

_NUMBER = re.compile(r"\s*(?P<number>[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?)")
_TOLERANCE = re.compile(r"^(?:\s*(?:±|\+/-|\+-)|\s+[+-][^/]*/|[+-][^/]*/)[^a-zA-Z°%]*")


@dataclass(frozen=True, slots=True)
class Written:
    """A number as it is written: its value and what stands behind it.

    Attributes:
        number: the number.
        rest: tolerance and unit as written; empty for a bare number.
        is_bare: whether it is a number of YAML and no text.
    """

    number: Decimal
    rest: str
    is_bare: bool

    @property
    def is_whole(self) -> bool:
        """Whether it is a count."""
        return self.is_bare and self.number == self.number.to_integral_value()

    @property
    def unit(self) -> str:
        """The unit alone, in the spelling that makes equal ones equal."""
        return canonical(_TOLERANCE.sub("", self.rest).strip())

    def at(self, number: Decimal) -> str | int | float:
        """Another number with the same tolerance and unit, as a spec holds it."""
        plain = number.normalize()
        if self.is_bare:
            return int(plain) if plain == plain.to_integral_value() else float(plain)
        return f"{plain:f}{self.rest}"


def written(stated: object) -> Written | None:
    """A stated value as a number with what stands behind it; ``None`` where it is no number.

    Args:
        stated: a text, number or truth of a spec.

    >>> written("76.20 +/- 0.02 mm").at(Decimal("77"))
    '77 +/- 0.02 mm'
    """
    if isinstance(stated, bool):
        return None
    if isinstance(stated, (int, float)):
        return Written(Decimal(repr(stated)), "", is_bare=True)
    if not isinstance(stated, str):
        return None
    match = _NUMBER.match(stated)
    if match is None:
        return None
    return Written(Decimal(match["number"]), stated[match.end() :].rstrip(), is_bare=False)


def field_named(document: Document, name: str) -> Path | None:
    """The path of a field that a spec holds; entries of a list by number or by their name.

    Args:
        document: the spec.
        name: such as ``gears.pinion.teeth`` or ``operation.climb.power``.
    """
    path: Path = ()
    data = document.data
    for step in name.split("."):
        key: str | int | None = step
        if isinstance(data, list):
            key = _entry(data, step)
        elif not isinstance(data, dict) or step not in data:
            key = None
        if key is None:
            return None
        path, data = (*path, key), data[key]
    return path


def _entry(entries: list[object], step: str) -> int | None:
    if step.isdecimal() and int(step) < len(entries):
        return int(step)
    named = (
        index
        for index, each in enumerate(entries)
        if isinstance(each, dict) and each.get("name") == step
    )
    return next(named, None)


def value_at(document: Document, path: Path) -> object:
    """What a spec states at a path that it holds."""
    data = document.data
    for step in path:
        data = data[step]
    return data


def with_values(document: Document, values: dict[Path, str | int | float]) -> bytes:
    """The spec with other values at some paths, as bytes to be read like any spec.

    It is written as JSON, which is YAML too: what it says is the same, but not where.

    Args:
        document: the spec.
        values: the new value of each field; the mapping or list around it is there already.
    """
    data = document.data
    for path, value in values.items():
        data = _with_value(data, path, value)
    return json.dumps(data, ensure_ascii=False, indent=0).encode()


def _with_value(data: object, path: Path, value: object) -> object:
    """A copy along the path only: what an alias repeats elsewhere stays as it is."""
    if not path:
        return value
    step, *rest = path
    if isinstance(data, list):
        assert isinstance(step, int)
        copied = list(data)
        copied[step] = _with_value(copied[step], tuple(rest), value)
        return copied
    assert isinstance(data, dict)
    inner = data.get(step)
    return {**data, step: _with_value(inner, tuple(rest), value)}
