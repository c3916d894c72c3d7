"""The lines of the spec, as they stand in a page, and the links that lead to them."""

from dataclasses import dataclass

from checker.known import Path
from checker.report import words
from checker.spec.document import Document
from checker.spec.problem import dotted


@dataclass(frozen=True, slots=True)
class PlaceLink:
    """A place of the spec.

    Attributes:
        field: its path in words.
        line: where it stands.
        href: its line in the page.
        text: file, line, column and field, as other reports say it.
    """

    field: str
    line: int
    href: str
    text: str


def line_link(line: int) -> str:
    """Where a line of the spec stands in the page."""
    return f"#L{line}"


def place_link(document: Document, path: Path) -> PlaceLink:
    """A place of the spec, as it is shown."""
    line = document.place(path).line
    return PlaceLink(dotted(path), line, line_link(line), words.place_text(document, path))
