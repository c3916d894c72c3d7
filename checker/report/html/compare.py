"""What a revision changed, as one HTML file."""

from collections.abc import Sequence
from dataclasses import dataclass

from checker import __version__
from checker.report import words
from checker.report.changes_sheet import HEADINGS, outcome_text, stated_text
from checker.report.page import Section, Shell, page
from checker.report.pictures.picture import Picture
from checker.review.changes import Changes, Moved
from checker.review.digest import rulebook_digest

_SIGNS = {
    "appeared": "warning",
    "worse": "caution",
    "moved": "unknown",
    "better": "advisory",
    "cleared": "meets",
}


@dataclass(frozen=True, slots=True)
class Change:
    """A finding that moved, before and now."""

    title: str
    level: str
    rule: str
    part: str
    before: str
    now: str


@dataclass(frozen=True, slots=True)
class Group:
    """Findings that went one way."""

    id: str
    heading: str
    sign: str
    changes: tuple[Change, ...]


def html_compare(changes: Changes, pictures: Sequence[Picture] = ()) -> str:
    """The comparison of two revisions as one HTML file.

    Args:
        changes: the comparison.
        pictures: both revisions laid over each other.
    """
    groups = [
        Group(way, heading, _SIGNS[way], tuple(map(_change, found)))
        for way, heading in HEADINGS.items()
        if (found := [each for each in changes.of(way) if each.is_open_in_one])  # type: ignore[arg-type]
    ]
    margins = tuple(_change(each) for each in changes.moved if not each.is_open_in_one)
    old, new = changes.old.loaded.document, changes.new.loaded.document
    inputs = [
        (
            each.name,
            stated_text(each.before, old.place(each.old_path).line),
            stated_text(each.after, new.place(each.new_path).line),
        )
        for each in changes.inputs
    ]
    drive = changes.new.loaded.spec.drive
    facts = (
        ("Old", f"{old.name}, revision {changes.old.loaded.spec.drive.revision or 'not stated'}"),
        ("New", f"{new.name}, revision {drive.revision or 'not stated'}"),
        ("Held", f"on {changes.new.on.isoformat()}"),
        (
            "Against",
            words.rulebook_text(changes.new.book, __version__, rulebook_digest(changes.new.book)),
        ),
    )
    contents = [
        Section("dispositions", "Dispositions"),
        *(Section(each.id, each.heading.partition(":")[0]) for each in groups),
        *([Section("margins", "Margins that moved")] if margins else []),
        *([Section("inputs", "Stated values that changed")] if inputs else []),
        *([Section("pictures", "Both laid over each other")] if pictures else []),
    ]
    return page(
        "compare.html.j2",
        Shell(drive.name, "What a revision changed", facts, tuple(contents)),
        changes=changes,
        groups=groups,
        margins=margins,
        inputs=inputs,
        pictures=pictures,
        words=words,
        version=__version__,
    )


def _change(moved: Moved) -> Change:
    finding = moved.shown
    level = finding.level or (moved.before.level if moved.before else None) or ""
    return Change(
        words.prose(finding.rule.title),
        level,
        finding.rule.id,
        words.part_text(finding),
        outcome_text(moved.before),
        outcome_text(moved.after),
    )
