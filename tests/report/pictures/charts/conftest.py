"""The designs that are drawn: the examples, healthy and troubled, and one that states little."""

import datetime
from functools import cache
from pathlib import Path

import pytest

from checker.report.pictures.charts import charts
from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook

HERE = Path(__file__)
EXAMPLES = HERE.parents[4] / "examples"
DAY = datetime.date(2026, 6, 1)
NAMES = ("marram", "sorrel", "tansy-troubled", "marram-troubled")


@cache
def reviewed(name):
    source = (EXAMPLES / f"{name}.yaml").read_bytes()
    return review_spec(source, name, shipped_rulebook(), DAY)


@pytest.fixture(scope="session", params=NAMES)
def review(request):
    return reviewed(request.param)


@pytest.fixture(scope="session")
def design(review):
    return next(iter(review.designs.values()))


@pytest.fixture(scope="session")
def little():
    """A design of which hardly anything is known."""
    source = (HERE.parents[2] / "sheet_spec.yaml").read_bytes()
    return review_spec(source, "sheet_spec.yaml", shipped_rulebook(), DAY)


@pytest.fixture(scope="session")
def pictures(review, design):
    return charts(review, design)
