"""The words for what keeps findings from being shown."""

from checker.known import Path
from checker.report.awaited import Awaited, may_be_none
from checker.report.words import listed, prose
from checker.spec.document import Document
from checker.spec.problem import dotted
from checker.text import plain

_MOST_RULES = 4
_MOST_REASONS = 3


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


def reasons_text(group: Awaited) -> str:
    """What stands in the way of findings, where it is not only a missing field."""
    return listed([prose(reason) for reason in group.reasons], _MOST_REASONS)


def waiting_text(group: Awaited, for_what: str = "") -> str:
    """Which rules wait."""
    rules = [plain(rule) for rule in group.rules]
    if len(rules) == 1:
        return f"{rules[0]} waits{for_what}"
    return f"{len(rules)} rules wait{for_what} ({listed(rules, _MOST_RULES)})"
