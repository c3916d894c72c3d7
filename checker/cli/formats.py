"""What ``review`` is asked of every spec, and the output made of the answers."""

import datetime
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from checker.report import status
from checker.spec.problem import SpecUnreadable

if TYPE_CHECKING:
    from checker.report.results import Result
    from checker.report.since import OldReport, Since
    from checker.review.rule import Level
    from checker.review.rulebook import Rulebook


@dataclass(frozen=True, slots=True)
class Piece:
    """What one spec gives to the output; it can go from one process to another.

    Attributes:
        content: its part of the output, in the form that the format puts together.
        status: the exit status for it.
        complaints: lines for standard error.
    """

    content: Any
    status: int
    complaints: tuple[str, ...]


@dataclass(frozen=True)
class Work:
    """What is asked of every spec.

    Attributes:
        form: name of the output format.
        book: the rulebook.
        on: date of the review.
        stop_at: lowest level whose open findings give exit status 1.
        everything: whether also what meets or does not apply is told.
        old: the report that the specs are held against, if any.
        alone: whether there is only one spec.
        width: columns of the terminal.
        colour: whether it takes colour.
    """

    form: str
    book: "Rulebook"
    on: datetime.date
    stop_at: "Level"
    everything: bool
    old: "OldReport | None"
    alone: bool
    width: int
    colour: bool

    def result(self, spec: str) -> "Result":
        """What becomes of a spec."""
        from checker.report.results import result_of

        return result_of(spec, self.book, self.on)

    def piece(self, result: "Result") -> Piece:
        """What a result gives to the output."""
        from checker.report.results import status_of

        since = self._since(result)
        content = _FORMATS[self.form].piece(self, result, since)
        return Piece(content, status_of(result, self.stop_at, since), _complaints(result))

    def output(self, pieces: Sequence[Piece]) -> str:
        """The whole output."""
        return _FORMATS[self.form].whole(self, pieces)

    def _since(self, result: "Result") -> "Since | None":
        from checker.report.since import since_old
        from checker.review.review import Review

        if self.old is None or not isinstance(result, Review):
            return None
        return since_old(result, self.old, alone=self.alone)


def worst_of(pieces: Sequence[Piece]) -> int:
    """The exit status for all specs."""
    return status.worst(piece.status for piece in pieces)


def _complaints(result: "Result") -> tuple[str, ...]:
    from checker.report.results import Failed

    if isinstance(result, SpecUnreadable):
        return tuple(str(result).split("\n"))
    if isinstance(result, Failed):
        return (f"{result.file}: internal error: {result.fault}",)
    return ()


def _sheet(work: Work, result: "Result", since: "Since | None") -> str:
    from checker.report.terminal import review_sheet
    from checker.review.review import Review

    if not isinstance(result, Review):
        return ""
    return review_sheet(
        result, width=work.width, colour=work.colour, everything=work.everything, since=since
    )


def _sheets(work: Work, pieces: Sequence[Piece]) -> str:
    return "\n\n".join(piece.content for piece in pieces if piece.content)


def _entry(work: Work, result: "Result", since: "Since | None") -> object:
    from checker.report.json_report import entry

    return entry(result, since)


def _json(work: Work, pieces: Sequence[Piece]) -> str:
    from checker.report.json_report import json_report

    return json_report(
        [piece.content for piece in pieces], work.book, work.on.isoformat(), work.old
    )


def _sarif_part(work: Work, result: "Result", since: "Since | None") -> object:
    from checker.report.sarif import sarif_of

    return sarif_of(result, since, everything=work.everything)


def _sarif(work: Work, pieces: Sequence[Piece]) -> str:
    from checker.report.sarif import sarif_log

    parts = [piece.content for piece in pieces]
    return sarif_log(parts, work.book, work.on.isoformat(), worst_of(pieces), work.old)


def _suite(work: Work, result: "Result", since: "Since | None") -> object:
    from checker.report.junit import suite_of

    return suite_of(result, work.stop_at, since)


def _junit(work: Work, pieces: Sequence[Piece]) -> str:
    from checker.report.junit import junit_report

    return junit_report([piece.content for piece in pieces])


@dataclass(frozen=True, slots=True)
class _Format:
    """A format: what it makes of one result, and of all."""

    piece: Callable[[Work, "Result", "Since | None"], object]
    whole: Callable[[Work, Sequence[Piece]], str]


_FORMATS = {
    "terminal": _Format(_sheet, _sheets),
    "json": _Format(_entry, _json),
    "sarif": _Format(_sarif_part, _sarif),
    "junit": _Format(_suite, _junit),
}
FORMATS = tuple(_FORMATS)
"""Names of the output formats."""
