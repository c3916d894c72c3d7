"""From the bytes of a spec file to a located, typed and cross-checked spec."""

import re
from dataclasses import dataclass

from checker.known import Path
from checker.spec.document import Document, survey_document
from checker.spec.fields import spelled
from checker.spec.model import FORMAT, Spec
from checker.spec.problem import Problem, SpecUnreadable
from checker.spec.reading import typed, version_problem
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
    return version_problem(document, "thrustline", FORMAT, "the spec format")


def _typed(document: Document) -> tuple[Spec | None, dict[Path, Problem]]:
    spec, faults = typed(document, Spec)
    version = _version_problem(document) if faults else None
    return spec, faults if version is None else {**faults, ("thrustline",): version}


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
