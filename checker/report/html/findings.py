"""What the rules found, ready for the page: cards of findings, and what is not shown."""

from collections.abc import Sequence
from dataclasses import dataclass

from checker.known import Path
from checker.report import awaited_words, words
from checker.report.awaited import Awaited, description_of
from checker.report.html.calculation import Calculations, Figure
from checker.report.html.lines import PlaceLink, place_link
from checker.review.finding import Finding
from checker.review.review import Review
from checker.review.rule import LEVELS, Level
from checker.spec.document import Document
from checker.spec.hints import hint_of
from checker.spec.papers import Deviation

_SHAPES = {
    "broken": "broken",
    "not shown": "unknown",
    "deviation": "deviation",
    "meets": "meets",
    "does not apply": "idle",
}


@dataclass(frozen=True, slots=True)
class Card:
    """A finding with everything that is said of it.

    Attributes:
        id: of the card in the page.
        number: of the card, from 1 on.
        told: number of the first card of the same rule; on paper only that one is explained.
        finding: the finding.
        shape: the sign that goes with its level or outcome.
        part: the part, in words.
        judged: what the rule judges, in words.
        found: the value, with a link to its calculation.
        asks: the limit.
        margin: by how much it is kept or missed.
        details: words that belong to the value, each with its label.
        place: where the value judged is stated.
        related: the other places involved.
        sources: on whose authority the rule stands.
        deviation: the acceptance, if there is one.
    """

    id: str
    number: int
    told: int
    finding: Finding
    shape: str
    part: str
    judged: str
    found: Figure
    asks: str
    margin: str
    details: tuple[tuple[str, str], ...]
    place: PlaceLink
    related: tuple[PlaceLink, ...]
    sources: tuple[str, ...]
    deviation: Deviation | None


@dataclass(frozen=True, slots=True)
class Group:
    """Cards of one kind under a heading."""

    heading: str
    shape: str
    cards: tuple[Card, ...]


@dataclass(frozen=True, slots=True)
class Field:
    """A field to state: its name, where it belongs, what it states, and how that is come by."""

    name: str
    place: PlaceLink | None
    describes: str
    hint: str


@dataclass(frozen=True, slots=True)
class Waiting:
    """Findings that wait for the same fields.

    Attributes:
        level: the gravest that waits.
        fields: what to state; empty where stating more does not help.
        or_none: that ``none`` is an answer, where it is one.
        reasons: what stands in the way besides.
        findings: what waits: rule and part.
    """

    level: Level
    fields: tuple[Field, ...]
    or_none: str
    reasons: str
    findings: tuple[tuple[Finding, str], ...]


@dataclass(frozen=True, slots=True)
class Line:
    """A finding that is not open, on one line of a table."""

    finding: Finding
    part: str
    found: Figure
    asks: str
    margin: str


def groups(review: Review, calculations: Calculations) -> list[Group]:
    """What is broken and what falls short, the worst first, numbered through."""
    found: list[Group] = []
    number = 1
    for level in (None, *LEVELS):
        picked = [each for each in review.findings if _belongs(each, level)]
        if not picked:
            continue
        cards = cards_of(review, picked, calculations, number)
        number += len(cards)
        found.append(Group(_heading(level, len(cards)), cards[0].shape, cards))
    return found


def _belongs(finding: Finding, level: Level | None) -> bool:
    if level is None:
        return finding.outcome == "broken"
    return finding.outcome == "falls short" and finding.level == level


def _heading(level: Level | None, count: int) -> str:
    return words.broken_heading(count) if level is None else words.level_heading(level, count)


def cards_of(
    review: Review, findings: Sequence[Finding], calculations: Calculations, first: int = 1
) -> tuple[Card, ...]:
    """Findings as cards.

    Args:
        review: the review they belong to.
        findings: the findings.
        calculations: takes up what their values rest on.
        first: number of the first card.
    """
    document = review.loaded.document
    told: dict[str, int] = {}
    return tuple(
        _card(document, finding, calculations, number, told.setdefault(finding.rule.id, number))
        for number, finding in enumerate(findings, first)
    )


def _card(
    document: Document, finding: Finding, calculations: Calculations, number: int, told: int
) -> Card:
    line = line_of(finding, calculations)
    return Card(
        f"f{number}" if finding.deviation is None else f"d{number}",
        number,
        told,
        finding,
        shape_of(finding),
        line.part,
        words.measure_text(finding.rule),
        line.found,
        line.asks,
        line.margin,
        tuple(words.details_of(finding)),
        place_link(document, finding.place),
        tuple(place_link(document, path) for path in finding.related),
        tuple(words.source_text(source) for source in finding.rule.sources),
        finding.deviation,
    )


def shape_of(finding: Finding) -> str:
    """The sign of a finding: of its level where it falls short, of its outcome otherwise."""
    if finding.outcome == "falls short" and finding.level is not None:
        return finding.level
    return _SHAPES[finding.outcome]


def line_of(finding: Finding, calculations: Calculations) -> Line:
    """A finding on one line."""
    known, limit = finding.known, finding.limit
    href = "" if known is None else calculations.href(known, words.asked_text(finding))
    return Line(
        finding,
        words.part_text(finding),
        Figure(words.judged_text(finding), href),
        "" if limit is None else words.limit_text(limit),
        words.margin_text(finding),
    )


def waiting(document: Document, awaited: Sequence[Awaited]) -> list[Waiting]:
    """What is not shown, by what would show it."""
    return [
        Waiting(
            group.level,
            tuple(_field(document, path) for path in group.fields),
            awaited_words.or_none_text(group.fields) if group.fields else "",
            awaited_words.reasons_text(group),
            tuple((each, words.part_text(each)) for each in _each_once(group)),
        )
        for group in awaited
    ]


def _each_once(group: Awaited) -> list[Finding]:
    """The findings that wait; one that waits for several fields stands in the group for each."""
    return list({id(each): each for each in group.findings}.values())


def _field(document: Document, path: Path) -> Field:
    place = place_link(document, path)
    known = awaited_words.stands_in(document, path)
    return Field(place.field, place if known else None, description_of(path), hint_of(path))
