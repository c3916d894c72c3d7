"""What keeps findings from being shown, put together so that a builder sees what to state next."""

from dataclasses import dataclass
from functools import cache
from typing import get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from checker.known import Path, Unknown
from checker.review.finding import Finding
from checker.review.rule import LEVELS, Level
from checker.spec.fields import Section
from checker.spec.model import Spec


@dataclass(frozen=True, slots=True)
class Awaited:
    """Findings that wait for the same things.

    Attributes:
        fields: the spec fields to state; empty where stating more does not help.
        reasons: what stands in the way of every finding, where it is not only a missing field.
        findings: the findings that wait, once for each field they wait for.
    """

    fields: tuple[Path, ...]
    reasons: tuple[str, ...]
    findings: tuple[Finding, ...]

    @property
    def level(self) -> Level:
        """The gravest level that waits."""
        return min((each.rule.highest_level for each in self.findings), key=LEVELS.index)

    @property
    def rules(self) -> list[str]:
        """Ids of the rules that wait, each once, in order of name."""
        return sorted({each.rule.id for each in self.findings})


def awaited_fields(findings: tuple[Finding, ...]) -> list[Awaited]:
    """The missing fields, those that the gravest and the most rules wait for first.

    Fields that exactly the same rules wait for stand together, but for those whose part may be
    absent: ``none`` is an answer for these alone.
    """
    waiting: dict[Path, list[Finding]] = {}
    for finding in findings:
        for path in _missing(finding):
            waiting.setdefault(path, []).append(finding)
    together: dict[tuple[frozenset[str], tuple[str, ...], bool], list[Path]] = {}
    for path, each in waiting.items():
        rules = frozenset(finding.rule.id for finding in each)
        reasons = tuple(dict.fromkeys(finding.reason for finding in each))
        told = () if "" in reasons else reasons
        together.setdefault((rules, told, may_be_none(path)), []).append(path)
    groups = [
        Awaited(
            tuple(sorted(paths, key=_as_text)),
            reasons,
            tuple(finding for path in paths for finding in waiting[path]),
        )
        for (_, reasons, _), paths in together.items()
    ]
    return sorted(groups, key=_order)


def awaited_reasons(findings: tuple[Finding, ...]) -> list[Awaited]:
    """The reasons, other than a missing field, for which findings are not shown."""
    waiting: dict[str, list[Finding]] = {}
    for finding in findings:
        if finding.outcome == "not shown" and not _missing(finding):
            waiting.setdefault(finding.reason, []).append(finding)
    groups = [Awaited((), (reason,), tuple(each)) for reason, each in waiting.items()]
    return sorted(groups, key=_order)


@cache
def may_be_none(path: Path) -> bool:
    """Whether ``none`` is an answer for a field: what it describes may be absent on purpose."""
    field = _field_at(path)
    return field is not None and any(isinstance(mark, Section) for mark in field.metadata)


@cache
def description_of(path: Path) -> str:
    """What a field of the spec states, in the words of its schema; empty for a name."""
    field = _field_at(path)
    return field.description or "" if field is not None else ""


def _field_at(path: Path) -> FieldInfo | None:
    """The field of a path; ``None`` for the name of an entry, and where there is no such field."""
    model: type[BaseModel] | None = Spec
    field: FieldInfo | None = None
    is_name = False
    for step in path:
        if is_name:  # of an entry of a mapping, or the number of one in a list
            is_name, field = False, None
            continue
        fields = model.model_fields if model is not None else {}
        field = fields.get(str(step)) or fields.get(f"{step}_")  # a Python word has a dash behind
        if field is None:
            return None
        options = [field.annotation, *get_args(field.annotation)]
        inner = [kind for each in options for kind in (each, *get_args(each))]
        model = next((each for each in inner if _is_model(each)), None)
        is_name = any(get_origin(each) in (dict, list) for each in options)
    return field


def _is_model(annotation: object) -> bool:
    return isinstance(annotation, type) and issubclass(annotation, BaseModel)


def _missing(finding: Finding) -> tuple[Path, ...]:
    if finding.outcome == "not shown" and isinstance(finding.value, Unknown):
        return finding.value.missing
    return ()


def _order(group: Awaited) -> tuple[int, int, tuple[tuple[str, ...], ...], tuple[str, ...]]:
    fields = tuple(_as_text(path) for path in group.fields)
    return LEVELS.index(group.level), -len(group.rules), fields, group.reasons


def _as_text(path: Path) -> tuple[str, ...]:
    return tuple(map(str, path))
