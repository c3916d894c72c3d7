"""The report as SARIF 2.1.0 (OASIS standard, 27 March 2020), for programs that show findings.

Our levels become those of the standard: a warning is an ``error``, a caution a ``warning``, an
advisory a ``note``. What is not shown keeps its level: the standard knows results that are open for
want of information, but takes their level from them, and what nobody states must not weigh less.
"""

import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from urllib.parse import quote

from checker import __version__
from checker.known import Path
from checker.report import status, words
from checker.report.awaited_words import hint_lines
from checker.report.fault import Unopened
from checker.report.fingerprint import fingerprint_of
from checker.report.json_value import Json, json_text
from checker.report.results import STANDARD_INPUT, Failed, Result, file_name
from checker.report.since import OldReport, Since, Stood
from checker.report.since_sheet import cleared_text
from checker.review.digest import rulebook_digest
from checker.review.finding import Finding, Outcome
from checker.review.review import Review
from checker.review.rule import Level, Rule
from checker.review.rulebook import Rulebook
from checker.spec.problem import SpecUnreadable, dotted
from checker.text import plain

SCHEMA = (
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)
FINGERPRINT = "ruleAndPart/v1"
_MOST_RELATED = 20
"""Values beyond these are in the JSON report; the first are the nearest to the one judged."""
_LEVELS: dict[Level, str] = {"warning": "error", "caution": "warning", "advisory": "note"}
_KINDS: dict[Outcome, str] = {"meets": "pass", "does not apply": "notApplicable"}
_BASELINE = {
    "appeared": "new",
    "worse": "updated",
    "better": "updated",
    "stood before": "unchanged",
    None: "unchanged",
}
_ENDINGS = {
    status.CLEAR: "no open finding that counts",
    status.FINDINGS: "open findings that count",
    status.UNREADABLE: "a spec could not be read",
    status.BROKEN: "a rule is broken, or an internal error",
}
_Object = dict[str, Json]


@dataclass(frozen=True, slots=True)
class Sarif:
    """What one file gives to the log.

    Attributes:
        artifact: the file.
        results: what was found.
        notifications: what kept it from being reviewed.
        disposition: the outcome as a whole; empty where there is none.
    """

    artifact: _Object
    results: tuple[_Object, ...] = ()
    notifications: tuple[_Object, ...] = ()
    disposition: str = ""


def sarif_of(result: Result, since: Since | None, *, everything: bool) -> Sarif:
    """What became of one file.

    Args:
        result: what became of it.
        since: the older report it is held against, if any.
        everything: also give what meets its rule or does not apply.
    """
    if isinstance(result, SpecUnreadable):
        return Sarif(_artifact(result.file), notifications=tuple(_problems(result)))
    if isinstance(result, Failed):
        text = f"internal error: {result.fault}"
        return Sarif(
            _artifact(result.file), notifications=(_notification("fault", text, result.file),)
        )
    found = [
        _result(each, result, since)
        for each in result.findings
        if everything or each.is_open or each.outcome == "deviation"
    ]
    gone = [_absent(each, result) for each in since.cleared] if since is not None else []
    file = result.loaded.document.name
    return Sarif(_artifact(file, result.sha256), (*found, *gone), disposition=result.disposition)


def sarif_log(
    parts: Sequence[Sarif], book: Rulebook, on: str, exit_status: int, old: OldReport | None
) -> str:
    """The whole log, with one run.

    Args:
        parts: what each file gives, in order.
        book: the rulebook held against them.
        on: date of the review, ISO 8601.
        exit_status: with which the program ends.
        old: the report it is held against, if any.
    """
    found = [result for part in parts for result in part.results]
    used = {result["ruleId"] for result in found}
    rules = sorted((rule for rule in book.rules if rule.id in used), key=lambda rule: rule.id)
    numbers = {rule.id: index for index, rule in enumerate(rules)}
    results: list[Json] = [
        {**result, "ruleIndex": numbers[str(result["ruleId"])]}
        if result["ruleId"] in numbers
        else result  # cleared, of a rule that is no more
        for result in found
    ]
    run: Json = {
        "tool": {
            "driver": {
                "name": "Thrustline",
                "version": __version__,
                "rules": [_rule(rule) for rule in rules],
            }
        },
        "columnKind": "unicodeCodePoints",
        "invocations": [_invocation(parts, exit_status, old.differences(book) if old else ())],
        "artifacts": _each_once(part.artifact for part in parts),
        "results": results,
        "properties": {
            "on": on,
            "rulebook": {"name": book.house or "Thrustline", "sha256": rulebook_digest(book)},
            "dispositions": [part.disposition for part in parts],
            "cautions": list(words.CAUTIONS),
        },
    }
    return json_text({"$schema": SCHEMA, "version": "2.1.0", "runs": [run]})


def _each_once(artifacts: Iterator[_Object]) -> list[Json]:
    """A file given twice is one artifact."""
    found: list[Json] = []
    for each in artifacts:
        if each not in found:
            found.append(each)
    return found


def _invocation(parts: Sequence[Sarif], exit_status: int, differences: tuple[str, ...]) -> _Object:
    return {
        "executionSuccessful": exit_status in (status.CLEAR, status.FINDINGS),
        "exitCode": exit_status,
        "exitCodeDescription": _ENDINGS[exit_status],
        "toolExecutionNotifications": [each for part in parts for each in part.notifications],
        "toolConfigurationNotifications": [
            {"level": "note", "message": _message(each)} for each in differences
        ],
    }


def _rule(rule: Rule) -> _Object:
    """A rule with what a reader of a finding wants to know."""
    why, remedy = words.prose(rule.why), words.prose(rule.remedy)
    sources = words.sources_text(rule)
    wrong_when = words.prose(rule.wrong_when)
    return {
        "id": rule.id,
        "shortDescription": {"text": _literal(f"{words.prose(rule.title)}.")},
        "fullDescription": {"text": _literal(why)},
        "help": {
            "text": _literal(
                f"Why: {why} Remedy: {remedy} Source: {sources}. Misjudges: {wrong_when}."
            )
        },
        "defaultConfiguration": {"level": _LEVELS[rule.highest_level]},
        "properties": {"family": rule.family, "judges": words.measure_text(rule)},
    }


def _result(finding: Finding, review: Review, since: Since | None) -> _Object:
    level = _LEVELS[finding.level] if finding.level is not None else "none"
    result: _Object = {
        "ruleId": finding.rule.id,
        "kind": _KINDS.get(finding.outcome, "fail"),
        "level": level,
        "message": _message(result_text(finding)),
        "locations": [_location(review, finding.place, part=finding.subject.address)],
        "relatedLocations": [
            {**_location(review, path), "id": index, "message": _message(dotted(path))}
            for index, path in enumerate(finding.related[:_MOST_RELATED])
        ],
        "partialFingerprints": {FINGERPRINT: fingerprint_of(finding)},
        "suppressions": [_suppression(finding, review)] if finding.deviation is not None else [],
        "properties": {
            "outcome": finding.outcome,
            "level": finding.level,
            "ratioSet": finding.ratio_set,
            "point": finding.point,
        },
    }
    if since is not None:
        result["baselineState"] = _BASELINE[since.way(finding)]
    return result


def result_text(finding: Finding) -> str:
    """What was found, in sentences, the first of which says it all."""
    sentences = [f"{words.judged_title(finding)}, {words.part_text(finding)}."]
    if finding.known is not None:
        judged = words.measure_text(finding.rule)
        sentences.append(f"{judged[:1].upper()}{judged[1:]}: {words.found_text(finding)}.")
        sentences += [f"{label}: {text}." for label, text in words.details_of(finding)]
    elif finding.outcome == "not shown":
        missing = (finding.place, *finding.related)
        sentences.append(f"To state: {', '.join(map(dotted, missing))}.")
        sentences += [f"{hint}." for hint in hint_lines(missing)]
    if finding.reason:
        sentences.append(f"{words.prose(finding.reason)}.")
    return plain(" ".join(sentences))


def _absent(stood: Stood, review: Review) -> _Object:
    """What an older report found and this review does not."""
    assert stood.level is not None
    return {
        "ruleId": stood.rule,
        "kind": "fail",
        "level": _LEVELS[stood.level],
        "message": _message(f"Cleared, or judged no more: {cleared_text(stood)}."),
        "locations": [_file_location(review.loaded.document.name, stood.part)],
        "partialFingerprints": {FINGERPRINT: stood.fingerprint},
        "suppressions": [],
        "baselineState": "absent",
    }


def _suppression(finding: Finding, review: Review) -> _Object:
    """The acceptance of a finding; it stands in the spec, by name and for a time."""
    deviation = finding.deviation
    assert deviation is not None
    mitigation = f" Mitigation: {words.prose(deviation.mitigation)}" if deviation.mitigation else ""
    deviations = review.loaded.spec.deviations
    index = next(number for number, each in enumerate(deviations) if each is deviation)
    return {
        "kind": "inSource",
        "status": "accepted",
        "justification": f"{words.prose(deviation.reason)}{mitigation} Accepted by "
        f"{words.prose(deviation.by)}, from {deviation.date} to {deviation.expires}.",
        "location": _location(review, ("deviations", index)),
    }


def _problems(unreadable: SpecUnreadable) -> Iterator[_Object]:
    if isinstance(unreadable, Unopened):
        yield _notification("unread", unreadable.problems[0].message, unreadable.file)
        return
    for problem in unreadable.problems:
        said = (
            problem.message,
            f"found {problem.found}" if problem.found else "",
            f"expected {problem.expected}" if problem.expected else "",
            problem.hint,
        )
        text = f"{dotted(problem.path)}: " * bool(problem.path) + "; ".join(filter(None, said))
        yield _notification("unread", text, unreadable.file, (problem.line, problem.column))


def _notification(kind: str, text: str, file: str, place: tuple[int, int] | None = None) -> _Object:
    return {
        "descriptor": {"id": kind},
        "level": "error",
        "message": _message(text),
        "locations": [{"physicalLocation": _physical(file, place)}],
    }


def _artifact(file: str, sha256: str = "") -> _Object:
    roles = ["analysisTarget"]
    if file == file_name(STANDARD_INPUT):
        roles.append("standardStream")
    hashes: _Object = {"hashes": {"sha-256": sha256}} if sha256 else {}
    return {"location": {"uri": uri_of(file)}, "roles": roles, "encoding": "UTF-8", **hashes}


def _location(review: Review, path: Path, part: str = "") -> _Object:
    document = review.loaded.document
    location: _Object = {"physicalLocation": _physical(document.name, document.place(path))}
    if part:
        location["logicalLocations"] = [{"fullyQualifiedName": part, "kind": "object"}]
    return location


def _file_location(file: str, part: str) -> _Object:
    return {
        "physicalLocation": _physical(file, None),
        "logicalLocations": [{"fullyQualifiedName": part, "kind": "object"}],
    }


def _physical(file: str, place: tuple[int, int] | None) -> _Object:
    where: _Object = {"artifactLocation": {"uri": uri_of(file)}}
    if place is not None:
        where["region"] = {"startLine": place[0], "startColumn": place[1]}
    return where


def uri_of(file: str) -> str:
    """A file as a URI reference, relative to the folder in which the program runs.

    >>> uri_of("drives/my drive.yaml")
    'drives/my%20drive.yaml'
    """
    relative = os.path.relpath(file) if os.path.isabs(file) else os.path.normpath(file)
    return quote(os.fsencode(relative.replace(os.sep, "/")))


def _message(text: str) -> _Object:
    return {"text": _literal(text)}


def _literal(text: str) -> str:
    """A text in which nothing is a placeholder or a link (clauses 3.11.5 and 3.11.6)."""
    return text.replace("{", "{{").replace("}", "}}").replace("](", "] (")
