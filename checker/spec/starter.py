"""A spec to begin with: every field that a drive of its kind has, unknown until it is stated."""

import json
import re
import textwrap
import typing
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from checker.spec.fields import UNKNOWN, Section
from checker.spec.hints import HINTS
from checker.spec.model import FORMAT, Spec

_WIDTH = 100
_PLAIN = re.compile(r"[A-Za-z][A-Za-z0-9_ -]*|[0-9][0-9.]*(?: [A-Za-z%][A-Za-z0-9/]*)*")
_NOT_PLAIN = ("yes", "no", "on", "off", "true", "false", "null", "y", "n")


@dataclass(frozen=True)
class Written:
    """A value that the starter states, with a word about it.

    Attributes:
        value: what is stated.
        note: what to bear in mind about it, such as that it is only proposed.
    """

    value: object
    note: str = ""


def starter_text(stated: Mapping[str, Any], head: tuple[str, ...]) -> str:
    """A commented spec.

    Args:
        stated: what is known, as a spec holds it; a ``Written`` carries a note. Sections of named
            parts and lists of parts that it leaves out are not written.
        head: lines of comment at the top.
    """
    lines = [f"# {line}".rstrip() for line in head]
    lines.append(f"thrustline: {FORMAT}")
    for name, field in Spec.model_fields.items():
        if name != "thrustline":
            lines += _section(name, field, stated.get(name))
    return "\n".join(lines) + "\n"


def _section(name: str, field: FieldInfo, stated: object) -> Iterator[str]:
    """A field of the spec itself: a part, named parts, or a list of parts."""
    model = _model_in(field.annotation) or _model_in_section(field)
    if model is None or (stated is None and _is_many(field.annotation)):
        return
    yield ""
    yield f"# {field.description}"
    if isinstance(stated, str):
        yield f"{name}: {stated}"
        return
    yield f"{name}:"
    if isinstance(stated, list):
        for index, each in enumerate(stated):
            first, *rest = _fields(model, each, "    ", f"{name}.*", told=index > 0)
            yield first.replace("    ", "  - ", 1)
            yield from rest
    elif _is_many(field.annotation):
        assert isinstance(stated, Mapping)
        for index, (part, each) in enumerate(stated.items()):
            yield f"  {part}:"
            yield from _fields(model, each, "    ", f"{name}.*", told=index > 0)
    else:
        yield from _fields(model, stated or {}, "  ", name)


def _fields(
    model: type[BaseModel], stated: Any, indent: str, place: str, *, told: bool = False
) -> Iterator[str]:
    """Every field of a part, in the order of its model: what is stated, and what is unknown.

    What a field is stands with the first part of its kind; ``told`` is true for the others.
    """
    for name, field in model.model_fields.items():
        key = field.alias or name
        value = stated.get(key)
        note = value.note if isinstance(value, Written) else ""
        value = value.value if isinstance(value, Written) else value
        inner = _inner_model(field, value)
        said = _said(field)
        what = () if told else (said, HINTS.get(f"{place}.{key}", ""))
        comment = "; ".join(filter(None, (*what, note)))
        if inner is not None and not isinstance(value, str):
            yield from _commented(f"{indent}{key}:", comment, indent)
            yield from _fields(inner, value or {}, f"{indent}  ", f"{place}.{key}", told=told)
        else:
            yield from _commented(f"{indent}{key}: {_spelled(value)}", comment, indent)


def _commented(line: str, comment: str, indent: str) -> Iterator[str]:
    """A line with its comment behind it, or before it where that is too long."""
    if not comment:
        yield line
        return
    if len(line) + len(comment) + 4 <= _WIDTH:
        yield f"{line}  # {comment}"
        return
    for part in textwrap.wrap(comment, _WIDTH - len(indent) - 2):
        yield f"{indent}# {part}"
    yield line


def _spelled(value: object) -> str:
    """A value as YAML; text that YAML could read as something else stands in quotes."""
    if value is None:
        return UNKNOWN
    if isinstance(value, str):
        is_plain = _PLAIN.fullmatch(value) and value.lower() not in _NOT_PLAIN
        return value if is_plain else json.dumps(value, ensure_ascii=False)
    if isinstance(value, list):
        return f"[{', '.join(map(_spelled, value))}]"
    return json.dumps(value)


def _said(field: FieldInfo) -> str:
    """What a field is, and that it may be absent on purpose where its description does not say."""
    said = (field.description or "").rstrip(".")
    may_be_none = _model_in_section(field) is not None and "none" not in said
    return f"{said}; none if there is none" if may_be_none else said


def _inner_model(field: FieldInfo, value: object) -> type[BaseModel] | None:
    """The part whose fields are written one by one.

    A part that may be ``none`` stays one word until something in it is stated.
    """
    if _is_many(field.annotation):
        return None
    if _model_in_section(field) is not None and not isinstance(value, Mapping):
        return None
    return _model_in(field.annotation) or _model_in_section(field)


def _model_in_section(field: FieldInfo) -> type[BaseModel] | None:
    return next((each.model for each in field.metadata if isinstance(each, Section)), None)


def _model_in(annotation: Any) -> type[BaseModel] | None:
    """The first part that a type is made of."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    arguments = typing.get_args(annotation)
    return next((found for each in arguments if (found := _model_in(each))), None)


def _is_many(annotation: Any) -> bool:
    """Whether a type is a list or a mapping of names."""
    if typing.get_origin(annotation) in (list, dict):
        return True
    return any(_is_many(each) for each in typing.get_args(annotation))
