"""From plain data with places to a typed model: every problem in the builder's words."""

import difflib
import types
import typing
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from checker.known import Path
from checker.spec.document import Document
from checker.spec.fields import CANNOT_BE_UNKNOWN, UNKNOWN, spelled
from checker.spec.problem import Problem, SpecUnreadable

Model = TypeVar("Model", bound=BaseModel)


def typed(document: Document, model: type[Model]) -> tuple[Model | None, dict[Path, Problem]]:
    """The content of a file as a model, or what is wrong with its fields, by the path of each.

    Args:
        document: the file as plain data.
        model: what it is to be.
    """
    try:
        return model.model_validate(document.data), {}
    except ValidationError as error:
        details = error.errors(include_url=False)
    return None, {tuple(each["loc"]): _located(document, model, each) for each in details}


def version_problem(document: Document, field: str, version: int, what: str) -> Problem | None:
    """What is wrong with the version of the format, which every file states first.

    Args:
        document: the file as plain data.
        field: the field that states it.
        version: the version that can be read.
        what: what the format is of, such as ``the spec format``.
    """
    expected = f"{version}, the version of {what}"
    if field not in document.data:
        expected = f"{field}: {expected}"
        return document.problem((), "no version", f"no field '{field}'", expected)
    stated = document.data[field]
    if type(stated) is int and stated == version:
        return None
    return document.problem((field,), "unknown version", spelled(stated), expected)


def typed_file(
    document: Document, model: type[Model], field: str, version: int, what: str
) -> Model:
    """A whole file as a model.

    Args:
        document: the file as plain data.
        model: what it is to be.
        field: the field that states the version of its format.
        version: the version that can be read.
        what: what the format is of.

    Raises:
        SpecUnreadable: with every problem found, in the order of the file.
    """
    if not isinstance(document.data, dict):
        found = spelled(document.data)
        problem = document.problem((), f"not {what}", found, "a mapping of fields")
        raise SpecUnreadable(document.name, (*document.problems, problem))
    unknown = version_problem(document, field, version, what)
    if unknown is not None:
        raise SpecUnreadable(document.name, (*document.problems, unknown))
    read, faults = typed(document, model)
    problems = [*document.problems, *faults.values()]
    if read is None or problems:
        in_order = sorted(problems, key=lambda each: (each.line, each.column))
        raise SpecUnreadable(document.name, tuple(in_order))
    return read


def _located(document: Document, model: type[BaseModel], detail: ErrorDetails) -> Problem:
    """One problem of the typed reading, in the builder's words."""
    path = tuple(detail["loc"])
    kind = detail["type"]
    if kind == "missing":
        return document.problem(
            path[:-1], f"field '{path[-1]}' is missing", "nothing", "a value", at_key=True
        )
    if kind == "extra_forbidden":
        hint = _nearest(model, path)
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


def _nearest(root: type[BaseModel], path: Path) -> str:
    known = sorted(_fields_at(root, path[:-1]))
    near = difflib.get_close_matches(str(path[-1]), known, n=1, cutoff=0.6)
    if near:
        return f"did you mean '{near[0]}'?"
    return "known here: " + ", ".join(known)


def _fields_at(root: type[BaseModel], path: Path) -> set[str]:
    """Names of the fields that the model at a path has."""
    model: type[BaseModel] | None = root
    annotation: Any = root
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
