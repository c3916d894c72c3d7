"""From the bytes of a spec file to a located, typed and cross-checked spec."""

import difflib
import re
import types
import typing
from dataclasses import dataclass
from typing import Any

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from checker.known import Path
from checker.spec.document import Document, read_document
from checker.spec.fields import spelled
from checker.spec.model import FORMAT, Spec
from checker.spec.problem import Problem, SpecUnreadable
from checker.spec.references import reference_problems

_NAME = re.compile(r"[A-Za-z][A-Za-z0-9_ -]{0,60}")
_NAMED_PARTS = ("shafts", "gears", "meshes", "ratio_sets", "bearings", "joints", "seals")


@dataclass(frozen=True)
class LoadedSpec:
    """A spec with the document it was read from."""

    document: Document
    spec: Spec


def load_spec(source: bytes, name: str) -> LoadedSpec:
    """Read a spec.

    Args:
        source: bytes of the file.
        name: name of the file, for messages.

    Raises:
        SpecUnreadable: with every problem found, each with its place.
    """
    document = read_document(source, name)
    _check_format(document)
    names = _name_problems(document)
    try:
        spec = Spec.model_validate(document.data)
    except ValidationError as error:
        problems = [_located(document, detail) for detail in error.errors(include_url=False)]
        raise SpecUnreadable(name, _in_order([*names, *problems])) from None
    problems = [*names, *reference_problems(spec, document)]
    if problems:
        raise SpecUnreadable(name, _in_order(problems))
    return LoadedSpec(document, spec)


def _in_order(problems: list[Problem]) -> tuple[Problem, ...]:
    return tuple(sorted(dict.fromkeys(problems), key=lambda each: (each.line, each.column)))


def _check_format(document: Document) -> None:
    """Refuse what is not a mapping or belongs to another version before judging its fields."""
    data = document.data
    if not isinstance(data, dict):
        raise SpecUnreadable(
            document.name,
            (document.problem((), "not a spec", spelled(data), "a mapping of fields"),),
        )
    expected = f"thrustline: {FORMAT}, the version of the spec format"
    if "thrustline" not in data:
        problem = document.problem((), "no version", "no field 'thrustline'", expected)
        raise SpecUnreadable(document.name, (problem,))
    if data["thrustline"] != FORMAT or isinstance(data["thrustline"], bool):
        problem = document.problem(
            ("thrustline",), "unknown version", spelled(data["thrustline"]), expected
        )
        raise SpecUnreadable(document.name, (problem,))


def _name_problems(document: Document) -> list[Problem]:
    problems = []
    for section in _NAMED_PARTS:
        named = document.data.get(section)
        if not isinstance(named, dict):
            continue
        problems += [
            document.problem(
                (section, name),
                "not a name",
                repr(name),
                "a name of letters, digits, spaces, '_' and '-', beginning with a letter, "
                "at most 61 characters",
                at_key=True,
            )
            for name in named
            if not _NAME.fullmatch(name)
        ]
    return problems


def _located(document: Document, detail: ErrorDetails) -> Problem:
    """One problem of the typed reading, in the builder's words."""
    path = tuple(detail["loc"])
    kind = detail["type"]
    if kind == "missing":
        return document.problem(
            path[:-1], f"field '{path[-1]}' is missing", "nothing", "a value", at_key=True
        )
    if kind == "extra_forbidden":
        hint = _nearest(path)
        return document.problem(
            path, "unknown field", repr(path[-1]), "a known field", hint=hint, at_key=True
        )
    context = detail.get("ctx", {})
    if kind == "value":
        return document.problem(
            path, context["message"], context["found"], context["expected"], context["hint"]
        )
    expected = _EXPECTED.get(kind, detail["msg"]).format(**context)
    return document.problem(path, "unreadable value", spelled(detail["input"]), expected)


_EXPECTED = {
    "model_type": "a mapping of fields",
    "model_attributes_type": "a mapping of fields",
    "dict_type": "a mapping of names to parts",
    "list_type": "a list",
    "string_type": "a text (put it in quotes)",
    "string_too_short": "a text that is not empty",
    "string_too_long": "a text of at most {max_length} characters",
    "too_short": "at least {min_length} entries",
    "too_long": "at most {max_length} entries",
}


def _nearest(path: Path) -> str:
    known = sorted(_fields_at(path[:-1]))
    near = difflib.get_close_matches(str(path[-1]), known, n=1, cutoff=0.6)
    if near:
        return f"did you mean '{near[0]}'?"
    return "known here: " + ", ".join(known)


def _fields_at(path: Path) -> set[str]:
    """Names of the fields that the model at a path has."""
    model: type[BaseModel] | None = Spec
    annotation: Any = Spec
    for step in path:
        if model is not None and isinstance(step, str):
            by_name = {field.alias or name: field for name, field in model.model_fields.items()}
            annotation = by_name[step].annotation if step in by_name else None
        else:
            annotation = _element(annotation)
        model = _model_in(annotation)
    if model is None:
        return set()
    return {field.alias or name for name, field in model.model_fields.items()}


def _element(annotation: Any) -> Any:
    """The type inside a list or a mapping of names."""
    for option in _options(annotation):
        arguments = typing.get_args(option)
        if typing.get_origin(option) in (list, dict) and arguments:
            return arguments[-1]
    return None


def _model_in(annotation: Any) -> type[BaseModel] | None:
    for option in _options(annotation):
        if isinstance(option, type) and issubclass(option, BaseModel):
            return option
    return None


def _options(annotation: Any) -> list[Any]:
    """The alternatives of a union, without their annotations."""
    origin = typing.get_origin(annotation)
    if origin is typing.Annotated:
        return _options(typing.get_args(annotation)[0])
    if origin in (typing.Union, types.UnionType):
        return [inner for option in typing.get_args(annotation) for inner in _options(option)]
    return [annotation]
