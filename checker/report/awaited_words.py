"""The words for what keeps findings from being shown."""

from checker.known import Path
from checker.report.awaited import Awaited, may_be_none
from checker.report.words import listed, prose
from checker.spec.document import Document
from checker.spec.hints import hint_of
from checker.spec.problem import dotted
from checker.text import plain

_MOST_RULES = 4
_MOST_REASONS = 3
_MOST_NAMES = 4


def to_state_text(document: Document, fields: tuple[Path, ...]) -> str:
    """Fields to state, each with the line of the part it belongs to, if the spec has that part."""
    names = [
        f"{dotted(path)} (line {document.place(path).line})"
        if stands_in(document, path)
        else dotted(path)
        for path in fields
    ]
    return plain(f"State {', '.join(names)}{or_none_text(fields)}")


def stands_in(document: Document, path: Path) -> bool:
    """Whether the spec has at least the part that a field belongs to."""
    return any(path[:end] in document.marks for end in range(1, len(path) + 1))


def or_none_text(fields: tuple[Path, ...]) -> str:
    """That ``none`` is an answer, where it is one for all of the fields."""
    if not all(map(may_be_none, fields)):
        return ""
    return f", or none {'if' if len(fields) == 1 else 'where'} there is none"


def hint_lines(fields: tuple[Path, ...]) -> list[str]:
    """How the values of fields are come by, where that is not plain; each hint once."""
    hints: dict[str, list[str]] = {}
    for path in fields:
        if hint := hint_of(path):
            hints.setdefault(hint, []).append(dotted(path))
    return [plain(f"{listed(names, _MOST_NAMES)}: {hint}") for hint, names in hints.items()]


def reasons_text(group: Awaited) -> str:
    """What stands in the way of findings, where it is not only a missing field, each once."""
    said = dict.fromkeys(part for reason in group.reasons for part in prose(reason).split("; "))
    return listed(list(said), _MOST_REASONS)


def waiting_text(group: Awaited, for_what: str = "") -> str:
    """Which rules wait."""
    rules = [plain(rule) for rule in group.rules]
    if len(rules) == 1:
        return f"{rules[0]} waits{for_what}"
    return f"{len(rules)} rules wait{for_what} ({listed(rules, _MOST_RULES)})"
