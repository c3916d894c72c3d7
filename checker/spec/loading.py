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
from checker.spec.document import Document, survey_document
from checker.spec.fields import CANNOT_BE_UNKNOWN, UNKNOWN, spelled
from checker.spec.model import FORMAT, Spec
from checker.spec.problem import Problem, SpecUnreadable
from checker.spec.references import NAMED_PARTS, reference_problems

_NAME = re.compile(r"[A-Za-z][A-Za-z0-9_ -]{0,60}")
_NAMED = (*NAMED_PARTS, "ratio_sets")


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
    document = survey_document(source, name)
    _check_root(document)
    told = {each.path for each in document.problems}
    names = [each for each in _name_problems(document) if each.path not in told]
    told |= {each.path for each in names}
    spec, faults = _typed(document)
    faults = {path: each for path, each in faults.items() if path not in told}
    told |= faults.keys()
    references = [each for each in reference_problems(document) if each.path not in told]
    problems = [*document.problems, *names, *faults.values(), *references]
    if spec is None or problems:
        raise SpecUnreadable(name, _in_order(problems))
    return LoadedSpec(document, spec)


def _in_order(problems: list[Problem]) -> tuple[Problem, ...]:
    return tuple(sorted(dict.fromkeys(problems), key=lambda each: (each.line, each.column)))


def _check_root(document: Document) -> None:
    """Refuse what is not a mapping or belongs to another version before judging its fields."""
    problem = None
    if not isinstance(document.data, dict):
        found = spelled(document.data)
        problem = document.problem((), "not a spec", found, "a mapping of fields")
    elif type(document.data.get("thrustline")) is int:
        problem = _version_problem(document)
    if problem is not None:
        raise SpecUnreadable(document.name, _in_order([*document.problems, problem]))


def _version_problem(document: Document) -> Problem | None:
    expected = f"{FORMAT}, the version of the spec format"
    if "thrustline" not in document.data:
        expected = f"thrustline: {expected}"
        return document.problem((), "no version", "no field 'thrustline'", expected)
    stated = document.data["thrustline"]
    if type(stated) is int and stated == FORMAT:
        return None
    return document.problem(("thrustline",), "unknown version", spelled(stated), expected)


def _typed(document: Document) -> tuple[Spec | None, dict[Path, Problem]]:
    """The spec, or what is wrong with its fields, by the path of each."""
    try:
        return Spec.model_validate(document.data), {}
    except ValidationError as error:
        details = error.errors(include_url=False)
    faults = {tuple(detail["loc"]): _located(document, detail) for detail in details}
    version = _version_problem(document)
    return None, faults if version is None else {**faults, ("thrustline",): version}


def _name_problems(document: Document) -> list[Problem]:
    problems = []
    for section in _NAMED:
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
    if detail["input"] == UNKNOWN:
        expected += CANNOT_BE_UNKNOWN
    return document.problem(path, "unreadable value", spelled(detail["input"]), expected)


_EXPECTED = {
    "model_type": "a mapping of fields",
    "model_attributes_type": "a mapping of fields",
    "dict_type": "a mapping of names to parts",
    "list_type": "a list",
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
