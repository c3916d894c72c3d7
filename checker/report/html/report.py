"""The review as a page that stands for itself: read on a screen, printed, filed and signed."""

from dataclasses import dataclass
from itertools import groupby

from checker import __version__
from checker.report import paper_words, words
from checker.report.awaited import awaited_fields, awaited_reasons
from checker.report.html.calculation import Calculations, Figure
from checker.report.html.failure import failure_tables
from checker.report.html.findings import (
    Line,
    Waiting,
    cards_of,
    groups,
    line_of,
    shape_of,
    waiting,
)
from checker.report.html.lines import PlaceLink, place_link
from checker.report.html.shown import pictures_of
from checker.report.html.tables import Table, drive_tables
from checker.report.page import Section, Shell, page
from checker.report.pictures.picture import Picture
from checker.review.digest import rulebook_digest
from checker.review.finding import Finding
from checker.review.inspection import inspection_plan
from checker.review.remarks import Attached
from checker.review.review import Disposition, Review
from checker.review.rule import LEVELS
from checker.spec.source import lines_of, text_of

_SECTIONS = (
    ("disposition", "Disposition"),
    ("findings", "Findings"),
    ("not-shown", "Not shown"),
    ("deviations", "Deviations accepted in the spec"),
    ("remarks", "Remarks of reviewers"),
    ("pictures", "Pictures"),
    ("figures", "The drive in figures"),
    ("failures", "How it fails"),
    ("inspections", "What to look at, and when"),
    ("assumptions", "Assumed"),
    ("changes", "Limits changed by the house rulebook"),
    ("met", "What meets its rule"),
    ("idle", "What does not apply"),
    ("sign-off", "Sign-off"),
    ("calculations", "Calculations"),
    ("spec", "The spec"),
)
_ALWAYS = ("disposition", "remarks", "sign-off", "calculations", "spec")
_SHAPES: dict[Disposition, str] = {
    "hold": "warning",
    "not for flight": "caution",
    "no open findings": "idle",
}


@dataclass(frozen=True, slots=True)
class Part:
    """The tables of a drive with one ratio set."""

    heading: str
    tables: tuple[Table, ...]


@dataclass(frozen=True, slots=True)
class Family:
    """What meets the rules of a family."""

    name: str
    lines: tuple[Line, ...]


def html_report(review: Review, pictures: tuple[Picture, ...] = ()) -> str:
    """The whole report as one HTML file.

    The same review always gives the same bytes.

    Args:
        review: the review.
        pictures: what is drawn of it.
    """
    calculations = Calculations(review.loaded.document)
    content = {"pictures": pictures, **_content(review, calculations)}
    there = tuple(
        Section(name, title)
        for name, title in _SECTIONS
        if name in _ALWAYS or content.get(name.replace("-", "_"))
    )
    return page(
        "report.html.j2",
        _shell(review, there),
        **content,
        review=review,
        titles=dict(_SECTIONS),
        shown_in=lambda finding: pictures_of(finding, pictures),
        words=words,
        paper_words=paper_words,
        shape=_SHAPES[review.disposition],
        counts=_counts(review),
        steps=calculations.steps,
        lines=lines_of(text_of(review.source, review.loaded.document.name)),
        version=__version__,
    )


def _content(review: Review, calculations: Calculations) -> dict[str, object]:
    """What stands in the sections, by their names; empty where there is nothing to say."""
    return {
        "findings": groups(review, calculations),
        "not_shown": _not_shown(review),
        "deviations": cards_of(review, _with(review, "deviation"), calculations),
        "remarks": _remarks(review),
        "figures": _figures(review, calculations),
        "failures": failure_tables(next(iter(review.designs.values())), calculations),
        "inspections": [(each, shape_of(each.because)) for each in inspection_plan(review)],
        "assumptions": _assumptions(review, calculations),
        "changes": [words.change_text(each) for each in review.book.changes],
        "met": _families(review, "meets", calculations),
        "idle": _families(review, "does not apply", calculations),
    }


def _shell(review: Review, contents: tuple[Section, ...]) -> Shell:
    """The title block."""
    drive = review.loaded.spec.drive
    against = words.rulebook_text(review.book, __version__, rulebook_digest(review.book))
    facts = (
        ("Revision", words.prose(drive.revision or "")),
        ("Purpose", words.prose(drive.purpose or "")),
        ("Spec", f"{review.loaded.document.name}, sha256 {review.sha256[:12]}"),
        ("Held", f"on {review.on.isoformat()}"),
        ("Against", against),
    )
    stated = tuple((label, text) for label, text in facts if text)
    return Shell(words.prose(drive.name), "Design review", stated, contents)


def _with(review: Review, outcome: str) -> list[Finding]:
    return [each for each in review.findings if each.outcome == outcome]


def _not_shown(review: Review) -> list[tuple[str, list[Waiting]]]:
    """What is not shown at each level, and what no statement would show."""
    document = review.loaded.document
    fields = awaited_fields(review.findings)
    told = [
        (
            f"Not shown at the level {level}",
            waiting(document, [each for each in fields if each.level == level]),
        )
        for level in LEVELS
    ]
    unanswered = waiting(document, awaited_reasons(review.findings))
    told.append(("Not shown, whatever the spec states", unanswered))
    return [(heading, each) for heading, each in told if each]


def _remarks(review: Review) -> list[tuple[Attached, PlaceLink | None]]:
    """What reviewers said, with the place it is about, where that is still there."""
    document = review.loaded.document
    return [
        (each, None if each.path is None else place_link(document, each.path))
        for each in review.remarks
    ]


def _figures(review: Review, calculations: Calculations) -> list[Part]:
    return [
        Part(
            f"The drive{words.set_text(design.subjects.ratio_set)}",
            tuple(drive_tables(design, review.book, calculations)),
        )
        for design in review.designs.values()
    ]


def _assumptions(
    review: Review, calculations: Calculations
) -> list[tuple[str, list[tuple[str, Figure]]]]:
    """What is assumed, by source."""
    by_source: dict[str, list[tuple[str, Figure]]] = {}
    for known in review.assumptions:
        entry = (known.symbol, calculations.figure(known))
        by_source.setdefault(words.prose(str(known.origin)), []).append(entry)
    return sorted(by_source.items())


def _counts(review: Review) -> list[tuple[str, str, tuple[int, ...]]]:
    """How many findings of each level are open or accepted."""
    rows: list[tuple[str, str, tuple[int, ...]]] = []
    for level in LEVELS:
        at = tuple(each for each in review.findings if each.level == level)
        counts = words.outcome_counts(at)
        numbers = tuple(
            counts[each] for each in ("broken", "falls short", "not shown", "deviation")
        )
        rows.append((level, words.LEVEL_MEANS[level], numbers))
    return rows


def _families(review: Review, outcome: str, calculations: Calculations) -> list[Family]:
    """What came out that way, by family."""
    found = sorted(_with(review, outcome), key=lambda each: (each.rule.family, each.rule.id))
    return [
        Family(family, tuple(line_of(each, calculations) for each in of_family))
        for family, of_family in groupby(found, key=lambda each: each.rule.family)
    ]
