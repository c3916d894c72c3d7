"""What keeps a spec from being read: one problem per place, all of a file together."""

from dataclasses import dataclass
from typing import NamedTuple

from checker.known import Path
from checker.text import plain

_SHORT = 60
_LONGEST_FIELD = 200


class Place(NamedTuple):
    """Line and column of a character of a file, both counted from 1."""

    line: int
    column: int


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing in the spec that cannot be read as written.

    Attributes:
        path: the field, from the top of the spec; empty for the file as a whole.
        line: line of the place, counted from 1.
        column: column of the place in characters, counted from 1.
        found: what is written there.
        expected: what could be written instead.
        message: what is wrong, as a clause without a full stop.
        hint: what to do about it, where that is not plain from the rest.
    """

    path: Path
    line: int
    column: int
    found: str
    expected: str
    message: str
    hint: str = ""


class SpecUnreadable(Exception):
    """The spec cannot be read; it holds every problem found, in the order of the file."""

    def __init__(self, file: str, problems: tuple[Problem, ...]) -> None:
        super().__init__(file, problems)
        self.file = file
        self.problems = problems

    def __str__(self) -> str:
        return "\n".join(problem_line(self.file, problem) for problem in self.problems)


def problem_line(file: str, problem: Problem) -> str:
    """Print a problem on one line of plain text: place, field, what is wrong, found, expected."""
    place = f"{file}:{problem.line}:{problem.column}: "
    name = dotted(problem.path)
    if len(name) > _LONGEST_FIELD:
        name = f"{name[:_LONGEST_FIELD]}…"
    field = f"{name}: " if name else ""
    found = f"; found {problem.found}" if problem.found else ""
    expected = f"; expected {problem.expected}" if problem.expected else ""
    hint = f" ({problem.hint})" if problem.hint else ""
    return plain(f"{place}{field}{problem.message}{found}{expected}{hint}")


def dotted(path: Path) -> str:
    """Write a path the way a person names a field: ``gears.pinion.teeth``."""
    return ".".join(map(str, path))


def quoted(text: str) -> str:
    """Put text from the spec in quotes for a message, cut short where it is long."""
    return f"'{text}'" if len(text) <= _SHORT else f"'{text[:_SHORT]}…'"
