"""Changes of a healthy example, reviewed or solved."""

import copy
import datetime
from pathlib import Path

import pytest
import yaml

from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook

ROOT = Path(__file__).parents[2]
DAY = datetime.date(2026, 6, 1)


def reviewed(changes, example="marram"):
    """The review of an example with some fields set; a value of ``None`` removes the field."""
    path = ROOT / "examples" / f"{example}.yaml"
    data = copy.deepcopy(yaml.safe_load(path.read_text(encoding="utf-8")))
    for field, value in changes.items():
        *way, last = [int(step) if step.isdigit() else step for step in field.split(".")]
        inner = data
        for step in way:
            inner = inner[step]
        if value is None:
            del inner[last]
        else:
            inner[last] = value
    source = yaml.safe_dump(data, sort_keys=False, allow_unicode=True).encode()
    return review_spec(source, f"{example}.yaml", shipped_rulebook(), DAY)


@pytest.fixture
def review():
    """Reviews an example with changes."""
    return reviewed


@pytest.fixture(scope="session")
def solve_once():
    """Solves an example with changes, for what many tests of a module share."""

    def solved(changes, example="marram"):
        return reviewed(changes, example).designs[None]

    return solved


@pytest.fixture
def solve():
    """Solves an example with changes: the design that measures are asked of."""

    def solved(changes, example="marram"):
        return reviewed(changes, example).designs[None]

    return solved


@pytest.fixture
def outcomes():
    """Outcome of each rule on an example with changes, by rule id and part."""

    def found(changes, example="marram"):
        return {
            (finding.rule.id, finding.subject.label): finding.outcome
            for finding in reviewed(changes, example).findings
        }

    return found
