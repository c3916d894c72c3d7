"""Deviations: which finding each accepts, and how each one stands."""

import datetime
from dataclasses import dataclass

from checker.known import Known
from checker.review.finding import Finding
from checker.review.rulebook import Rulebook
from checker.spec.papers import Deviation
from checker.spec.subject import Subject

STANDINGS = (
    "in force",
    "expired",
    "not yet in force",
    "unknown rule",
    "unknown part",
    "unused",
    "not allowed",
    "without mitigation",
)
"""How a deviation can stand; all but the first are findings."""


@dataclass(frozen=True, slots=True)
class Settled:
    """Findings with the accepted ones marked, and the standing of each deviation by its place."""

    findings: list[Finding]
    standings: dict[int, str]


def settle(
    findings: list[Finding],
    deviations: list[Deviation],
    book: Rulebook,
    parts: frozenset[str],
    on: datetime.date,
) -> Settled:
    """Apply the deviations of a spec to its findings.

    Args:
        findings: every finding of the review.
        deviations: what the spec accepts.
        book: the rulebook in force.
        parts: labels of all parts of the drive.
        on: date of the review.
    """
    standings: dict[int, str] = {}
    accepted: dict[tuple[str, str], Deviation] = {}
    for index, deviation in enumerate(deviations):
        standing = _standing(deviation, findings, book, parts, on)
        if standing == "in force":
            accepted[deviation.rule, deviation.part] = deviation
        standings[index] = standing
    return Settled([_settled(finding, accepted) for finding in findings], standings)


def _settled(finding: Finding, accepted: dict[tuple[str, str], Deviation]) -> Finding:
    deviation = accepted.get((finding.rule.id, finding.subject.label))
    if deviation is None or finding.outcome != "falls short":
        return finding
    return finding.accepted(deviation)


def _standing(
    deviation: Deviation,
    findings: list[Finding],
    book: Rulebook,
    parts: frozenset[str],
    on: datetime.date,
) -> str:
    rule = book.rule(deviation.rule)
    used = any(
        finding.rule is rule
        and finding.subject.label == deviation.part
        and finding.outcome == "falls short"
        for finding in findings
    )
    if rule is None:
        standing = "unknown rule"
    elif deviation.part not in parts:
        standing = "unknown part"
    elif deviation.expires < on:
        standing = "expired"
    elif deviation.date > on:
        standing = "not yet in force"
    elif rule.no_deviation:
        standing = "not allowed"
    elif rule.needs_mitigation and deviation.mitigation is None:
        standing = "without mitigation"
    else:
        standing = "in force" if used else "unused"
    return standing


def standing_value(subject: Subject, standings: dict[int, str]) -> Known:
    """The standing of a deviation, as a value that rules can judge."""
    index = subject.path[-1]
    return Known(standings[int(index)], "", "standing", path=subject.path)
