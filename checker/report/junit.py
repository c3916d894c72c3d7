"""The report as JUnit XML, which most services that run checks can show.

No standards body keeps that form; this is what its readers agree on: suites, cases, and in a case a
failure, an error or a skip.
"""

from collections.abc import Sequence
from dataclasses import dataclass, fields
from xml.etree.ElementTree import Element, SubElement, indent, tostring

from checker.report import words
from checker.report.results import Failed, Result
from checker.report.since import Since
from checker.report.since_sheet import cleared_text, source_text
from checker.review.finding import Finding
from checker.review.review import Review
from checker.review.rule import LEVELS, Level
from checker.spec.problem import SpecUnreadable
from checker.text import plain


@dataclass(frozen=True, slots=True)
class Counts:
    """How many cases there are, and how many of them are not passed."""

    tests: int
    failures: int
    errors: int
    skipped: int


@dataclass(frozen=True, slots=True)
class Suite:
    """One file, as XML."""

    text: str
    counts: Counts


def suite_of(result: Result, stop_at: Level, since: Since | None) -> Suite:
    """What became of one file: a suite with a case for each rule on each part.

    What is open at or above a level is a failure, and what is broken or could not be read an
    error. What is open below the level passes and says so.

    Args:
        result: what became of it.
        stop_at: that level.
        since: the older report it is held against; then only what became worse is a failure.
    """
    if isinstance(result, Review):
        suite = Element("testsuite", name=plain(result.loaded.document.name))
        _properties(suite, result, since)
        for finding in result.findings:
            _case(suite, finding, result, stop_at, since)
        if since is not None and since.cleared:
            lines = [f"Cleared since {source_text(since)}, or judged no more:"]
            lines += [cleared_text(stood) for stood in since.cleared]
            _text(suite, "system-out", lines)
    else:
        suite = Element("testsuite", name=plain(result.file))
        _unread(suite, result)
    counts = _counts(suite)
    for name, number in _numbers(counts):
        suite.set(name, str(number))
    indent(suite, level=1)
    return Suite(tostring(suite, encoding="unicode"), counts)


def junit_report(suites: Sequence[Suite]) -> str:
    """The whole report.

    Args:
        suites: what each file gives, in order.
    """
    total = [
        f'{field.name}="{sum(getattr(suite.counts, field.name) for suite in suites)}"'
        for field in fields(Counts)
    ]
    inside = "\n".join(f"  {suite.text.rstrip()}" for suite in suites)
    head = '<?xml version="1.0" encoding="UTF-8"?>'
    return f'{head}\n<testsuites name="thrustline" {" ".join(total)}>\n{inside}\n</testsuites>\n'


def _numbers(counts: Counts) -> list[tuple[str, int]]:
    return [(field.name, getattr(counts, field.name)) for field in fields(Counts)]


def _counts(suite: Element) -> Counts:
    cases = suite.findall("testcase")
    found = [{child.tag for child in case} for case in cases]
    failures, errors, skipped = (
        sum(name in tags for tags in found) for name in ("failure", "error", "skipped")
    )
    return Counts(len(cases), failures, errors, skipped)


def _properties(suite: Element, review: Review, since: Since | None) -> None:
    told = [
        ("disposition", review.disposition),
        ("held on", review.on.isoformat()),
        ("sha256", review.sha256),
    ]
    if since is not None:
        told.append(("since", source_text(since)))
        told += [("bear in mind", each) for each in since.old.differences(review.book)]
    properties = SubElement(suite, "properties")
    for name, value in told:
        SubElement(properties, "property", name=name, value=plain(value))


def _case(
    suite: Element, finding: Finding, review: Review, stop_at: Level, since: Since | None
) -> None:
    """One rule on one part."""
    document = review.loaded.document
    case = SubElement(
        suite,
        "testcase",
        classname=plain(finding.rule.id),
        name=words.part_text(finding),
        file=plain(document.name),
        line=str(document.place(finding.place).line),
    )
    if finding.outcome == "broken":
        _told(case, "error", finding, review)
    elif finding.outcome == "does not apply":
        SubElement(case, "skipped", message="does not apply")
    elif finding.is_open and _stops(finding, stop_at, since):
        _told(case, "failure", finding, review)
    elif finding.is_open:
        way = since.way(finding) if since is not None else None
        before = f"{way}; " if way in ("better", "stood before") else ""
        _text(
            case, "system-out", [f"{before}{words.judged_title(finding)}", *_lines(finding, review)]
        )
    elif finding.deviation is not None:
        deviation = finding.deviation
        accepted = (
            f"Accepted by {words.prose(deviation.by)}, from {deviation.date} to "
            f"{deviation.expires}: {words.prose(deviation.reason)}"
        )
        _text(case, "system-out", [words.judged_title(finding), accepted, *_lines(finding, review)])


def _stops(finding: Finding, stop_at: Level, since: Since | None) -> bool:
    at_or_above = LEVELS[: LEVELS.index(stop_at) + 1]
    return finding.level in at_or_above and (since is None or since.made_worse(finding))


def _told(case: Element, tag: str, finding: Finding, review: Review) -> None:
    told = SubElement(case, tag, message=words.judged_title(finding), type=finding.level or "")
    told.text = "\n".join(_lines(finding, review))


def _lines(finding: Finding, review: Review) -> list[str]:
    """What is known of a finding, one thing a line."""
    rule, document = finding.rule, review.loaded.document
    rows = [
        ("Part", words.part_text(finding)),
        ("Judged", words.measure_text(rule)),
        ("Found", words.found_text(finding)),
        *words.details_of(finding),
        ("Place", words.place_text(document, finding.place)),
        ("Besides", words.prose(finding.reason)),
        ("Why", words.prose(rule.why)),
        ("Remedy", words.prose(rule.remedy)),
        ("Source", words.sources_text(rule)),
    ]
    return [f"{label}: {text}" for label, text in rows if text]


def _unread(suite: Element, result: SpecUnreadable | Failed) -> None:
    case = SubElement(suite, "testcase", classname="spec", name="is read", file=plain(result.file))
    if isinstance(result, Failed):
        SubElement(case, "error", message=plain(result.fault), type="internal error")
        return
    lines = str(result).split("\n")
    error = SubElement(case, "error", message=lines[0], type="unreadable")
    error.text = "\n".join(lines)


def _text(parent: Element, tag: str, lines: list[str]) -> None:
    SubElement(parent, tag).text = "\n".join(lines)
