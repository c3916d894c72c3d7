"""What keeps findings from being shown, put together so that a builder sees what to state next."""

from dataclasses import dataclass

from checker.known import Path, Unknown
from checker.review.finding import Finding
from checker.review.rule import LEVELS, Level


@dataclass(frozen=True, slots=True)
class Awaited:
    """Findings that wait for the same things.

    Attributes:
        fields: the spec fields to state; empty where stating more does not help.
        reason: what else stands in the way.
        findings: the findings that wait, once for each field they wait for.
    """

    fields: tuple[Path, ...]
    reason: str
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

    Fields that exactly the same rules wait for stand together.
    """
    waiting: dict[Path, list[Finding]] = {}
    for finding in findings:
        for path in _missing(finding):
            waiting.setdefault(path, []).append(finding)
    together: dict[frozenset[str], list[Path]] = {}
    for path, each in waiting.items():
        together.setdefault(frozenset(finding.rule.id for finding in each), []).append(path)
    groups = [
        Awaited(
            tuple(sorted(paths, key=_as_text)),
            "",
            tuple(finding for path in paths for finding in waiting[path]),
        )
        for paths in together.values()
    ]
    return sorted(groups, key=_order)


def awaited_reasons(findings: tuple[Finding, ...]) -> list[Awaited]:
    """The reasons, other than a missing field, for which findings are not shown."""
    waiting: dict[str, list[Finding]] = {}
    for finding in findings:
        if finding.outcome == "not shown" and not _missing(finding):
            waiting.setdefault(finding.reason, []).append(finding)
    groups = [Awaited((), reason, tuple(each)) for reason, each in waiting.items()]
    return sorted(groups, key=_order)


def _missing(finding: Finding) -> tuple[Path, ...]:
    if finding.outcome == "not shown" and isinstance(finding.value, Unknown):
        return finding.value.missing
    return ()


def _order(group: Awaited) -> tuple[int, int, tuple[tuple[str, ...], ...], str]:
    fields = tuple(_as_text(path) for path in group.fields)
    return LEVELS.index(group.level), -len(group.rules), fields, group.reason


def _as_text(path: Path) -> tuple[str, ...]:
    return tuple(map(str, path))
