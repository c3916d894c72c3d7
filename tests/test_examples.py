"""The example fleet: three healthy drives, and of each a sister with its faults in the header."""

import datetime
import re
from functools import cache
from pathlib import Path

import pytest

from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook

EXAMPLES = Path(__file__).parents[1] / "examples"
DAY = datetime.date(2026, 6, 1)
HEALTHY = ("marram", "tansy", "sorrel")
TROUBLED = tuple(f"{name}-troubled" for name in HEALTHY)

_FAULT = re.compile(r"^# fault (\d+): (.+?)( \(not shown\))? -> (\S+) on (\S+)$", re.MULTILINE)


@cache
def reviewed(name):
    source = (EXAMPLES / f"{name}.yaml").read_bytes()
    return review_spec(source, name, shipped_rulebook(), DAY)


def faults_of(name):
    """The faults in the header of an example: number, outcome, rule and part."""
    text = (EXAMPLES / f"{name}.yaml").read_text(encoding="utf-8")
    header = text.partition("\nthrustline:")[0]
    assert len(_FAULT.findall(header)) == header.count("# fault"), "a fault line is misspelled"
    return [
        (int(number), "not shown" if silent else "falls short", rule, part)
        for number, _, silent, rule, part in _FAULT.findall(header)
    ]


def outcomes(name, rule, part):
    return {
        finding.outcome
        for finding in reviewed(name).findings
        if finding.rule.id == rule and finding.subject.label == part
    }


PLANTED = [(name, *fault) for name in TROUBLED for fault in faults_of(name)]


@pytest.mark.parametrize("name", HEALTHY)
def test_healthy_drive_has_no_warning_and_no_caution(name):
    open_ones = [
        (finding.rule.id, finding.subject.label, finding.outcome)
        for finding in reviewed(name).open_findings
        if finding.level != "advisory"
    ]
    assert open_ones == []


@pytest.mark.parametrize("name", HEALTHY)
def test_healthy_drive_shows_everything(name):
    silent = {
        finding.rule.id for finding in reviewed(name).findings if finding.outcome == "not shown"
    }
    assert silent == set()


@pytest.mark.parametrize("name", HEALTHY)
def test_healthy_drive_needs_no_deviation(name):
    assert reviewed(name).loaded.spec.deviations == []


@pytest.mark.parametrize(
    ("name", "number", "outcome", "rule", "part"),
    PLANTED,
    ids=[f"{name}-{number}" for name, number, *_ in PLANTED],
)
def test_planted_fault_is_found_and_the_healthy_sister_has_none(name, number, outcome, rule, part):
    assert outcome in outcomes(name, rule, part)
    sister = name.removesuffix("-troubled")
    assert "falls short" not in outcomes(sister, rule, part)
    assert "not shown" not in outcomes(sister, rule, part)


@pytest.mark.parametrize("name", TROUBLED)
def test_troubled_drive_is_on_hold_for_eight_to_twelve_faults(name):
    assert reviewed(name).disposition == "hold"
    numbers = [number for number, *_ in faults_of(name)]
    assert numbers == list(range(1, len(numbers) + 1))
    assert 8 <= len(numbers) <= 12
