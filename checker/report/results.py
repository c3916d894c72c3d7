"""What became of each file given to review: a review, a file not read, or a fault of ours."""

import datetime
import sys
from dataclasses import dataclass
from typing import TYPE_CHECKING

from checker.report import status
from checker.report.beside import with_papers
from checker.report.fault import Unopened, fault_text
from checker.review.review import Review, review_spec
from checker.review.rule import Level
from checker.review.rulebook import Rulebook
from checker.spec.problem import SpecUnreadable
from checker.spec.source import MOST_BYTES

if TYPE_CHECKING:
    from checker.report.since import Since

STANDARD_INPUT = "-"


@dataclass(frozen=True, slots=True)
class Failed:
    """The program itself failed on a file."""

    file: str
    fault: str


Result = Review | SpecUnreadable | Failed


def result_of(spec: str, book: Rulebook, on: datetime.date) -> Result:
    """Review one file; whatever goes wrong becomes its result and keeps no other from its own."""
    try:
        return review_of(spec, book, on)
    except SpecUnreadable as unreadable:
        return unreadable
    except Exception as error:
        return Failed(file_name(spec), fault_text(error))


def review_of(spec: str, book: Rulebook, on: datetime.date) -> Review:
    """Review one file, with the remarks and the sign-off that lie beside it.

    Args:
        spec: path of the file; ``-`` is standard input.
        book: the rulebook.
        on: date of the review.

    Raises:
        SpecUnreadable: the file cannot be opened, or is no spec; or one beside it cannot be read.
    """
    review = review_spec(_source(spec), file_name(spec), book, on)
    return review if spec == STANDARD_INPUT else with_papers(review, spec)


def file_name(spec: str) -> str:
    """What messages call a file."""
    return "standard input" if spec == STANDARD_INPUT else spec


def status_of(result: Result, stop_at: Level, since: "Since | None" = None) -> int:
    """The exit status for one file.

    Args:
        result: what became of it.
        stop_at: lowest level whose open findings count.
        since: the older report it is held against; then only what became worse counts.
    """
    if isinstance(result, SpecUnreadable):
        return status.UNREADABLE
    if isinstance(result, Failed) or result.has_broken:
        return status.BROKEN
    reaches = since.worsens(result, stop_at) if since is not None else result.reaches(stop_at)
    return status.FINDINGS if reaches else status.CLEAR


def _source(spec: str) -> bytes:
    """The bytes of a file, and no more than make it too large."""
    try:
        if spec != STANDARD_INPUT:
            with open(spec, "rb") as file:
                return file.read(MOST_BYTES + 1)
        if sys.stdin is None:
            raise Unopened(file_name(spec), "it is closed")
        return sys.stdin.buffer.read(MOST_BYTES + 1)
    except OSError as error:
        raise Unopened.because_of(file_name(spec), error) from None
