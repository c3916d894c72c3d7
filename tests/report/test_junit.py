"""JUnit XML: what stops is a failure, what is broken an error, and any text parses."""

import json
from collections import Counter
from xml.etree import ElementTree

import pytest

from checker.report.fault import Unopened
from checker.report.json_report import entry, json_report
from checker.report.junit import junit_report, suite_of
from checker.report.results import Failed
from checker.report.since import old_report, since_old
from checker.review.rule import LEVELS
from checker.spec.problem import Problem, SpecUnreadable


def parsed(*results, stop_at="caution", since=None):
    text = junit_report([suite_of(result, stop_at, since) for result in results])
    return ElementTree.fromstring(text.encode())


def kind(case) -> str:
    tags = {child.tag for child in case} - {"system-out"}
    return next(iter(tags), "passed")


def case_of(suites, rule, part=None):
    return next(
        each
        for each in suites.iter("testcase")
        if each.get("classname") == rule and part in (None, each.get("name"))
    )


@pytest.mark.parametrize("stop_at", LEVELS)
def test_outcomes_become_cases(review, stop_at):
    suites = parsed(review, stop_at=stop_at)
    at_or_above = LEVELS[: LEVELS.index(stop_at) + 1]
    expected = Counter()
    for finding in review.findings:
        if finding.outcome == "broken":
            expected["error"] += 1
        elif finding.outcome == "does not apply":
            expected["skipped"] += 1
        elif finding.is_open and finding.level in at_or_above:
            expected["failure"] += 1
        else:
            expected["passed"] += 1
    cases = list(suites.iter("testcase"))
    assert Counter(map(kind, cases)) == expected
    assert expected["failure"] > 0
    for element in (suites, suites.find("testsuite")):
        assert int(element.get("tests")) == len(review.findings)
        assert int(element.get("failures")) == expected["failure"]
        assert int(element.get("errors")) == expected["error"]
        assert int(element.get("skipped")) == expected["skipped"]


def test_a_case_is_named_by_rule_and_part(review):
    cases = list(parsed(review).iter("testcase"))
    names = {(each.get("classname"), each.get("name")) for each in cases}
    assert len(names) == len(cases)
    case = case_of(parsed(review), "sheet.ratio", "drive")
    assert (case.get("file"), case.get("line")) == ("sheet_spec.yaml", "4")


def test_a_failure_says_what_and_why(review):
    failure = case_of(parsed(review), "sheet.power").find("failure")
    assert failure.get("type") == "warning"
    assert failure.get("message") == ("Falls short: No point asks more than the rating (warning)")
    lines = failure.text.split("\n")
    assert "Remedy: Lower its power." in lines
    assert "Source: A standard, 3; common practice, no source" in lines
    assert any(line.startswith("Place: sheet_spec.yaml ") for line in lines)


def test_what_is_open_below_the_level_passes_and_says_so(review):
    case = case_of(parsed(review), "sheet.clearance")
    assert kind(case) == "passed"
    assert case.find("system-out").text.startswith("Falls short: The propeller clears the ground")


def test_a_deviation_passes_and_says_so(review):
    text = case_of(parsed(review), "sheet.sense").find("system-out").text
    assert "Accepted by A. Builder, from 2026-05-01 to 2026-12-31: The propeller of" in text


def test_what_is_not_reviewed_is_an_error():
    problem = Problem((), 3, 1, "x", "y", "the <field> is wrong")
    suites = parsed(
        SpecUnreadable("bad.yaml", (problem, problem)),
        Unopened("gone.yaml", "the file cannot be opened"),
        Failed("odd.yaml", "KeyError: 'gear\x1b'"),
    )
    assert [each.get("name") for each in suites] == ["bad.yaml", "gone.yaml", "odd.yaml"]
    assert suites.get("errors") == suites.get("tests") == "3"
    bad, gone, odd = suites.iter("error")
    assert bad.text.count("\n") == 1
    assert bad.get("message").startswith("bad.yaml:3:1: the <field> is wrong")
    assert gone.get("message") == "gone.yaml: the file cannot be opened"
    assert odd.get("message") == r"KeyError: 'gear\x1b'"


def test_only_what_became_worse_fails_since_an_older_report(review_of, spec, book, tmp_path):
    before = review_of(spec)
    after = review_of(
        spec.replace(b"power: 52 kW", b"power: 56 kW").replace(b"distance: 126", b"distance: 129")
    )
    file = tmp_path / "old.json"
    file.write_text(json_report([entry(before)], book, "2026-05-01"), encoding="utf-8")
    since = since_old(after, old_report(str(file)), alone=True)
    suites = parsed(after, stop_at="advisory", since=since)
    failed = {each.get("classname") for each in suites.iter("testcase") if kind(each) == "failure"}
    worse = {each.rule.id for each in after.open_findings if since.made_worse(each)}
    assert failed == worse - {"sheet.broken"}
    assert "sheet.power" in failed
    stood = case_of(suites, "sheet.ratio").find("system-out").text
    assert stood.startswith("stood before; Falls short: ")


def test_what_cleared_is_listed(review_of, spec, book, tmp_path):
    file = tmp_path / "old.json"
    file.write_text(json_report([entry(review_of(spec))], book, "2026-05-01"), encoding="utf-8")
    after = review_of(spec.replace(b"power: 52 kW", b"power: 50 kW"))
    since = since_old(after, old_report(str(file)), alone=True)
    told = parsed(after, since=since).find("testsuite/system-out").text
    assert "or judged no more:" in told
    assert "(sheet.power), drive: falls short at the level warning" in told


@pytest.mark.parametrize(
    "hostile",
    ["<script>&]]>", r"\e[31m", r"\uFFFE\uFFFF", r"\0", r"\u202E", r"\uD800", "]]&gt;", r"\"'<!--"],
)
def test_any_text_parses(review_of, spec, hostile):
    reason = f'"{hostile}"'.encode()
    changed = spec.replace(b"The propeller of the other hand is on order.", reason)
    changed = changed.replace(b"by: A. Builder", b"by: " + reason)
    try:
        review = review_of(changed, name=f"sheet{json.loads(json.dumps(hostile))}.yaml")
    except SpecUnreadable as unreadable:
        suites = parsed(unreadable)
        assert kind(next(suites.iter("testcase"))) == "error"
        return
    suites = parsed(review)
    text = "".join(suites.itertext())
    assert all(character.isprintable() or character == "\n" for character in text.strip())
    assert len(list(suites.iter("testcase"))) == len(review.findings)
