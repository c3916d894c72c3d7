"""Remarks find what they are about, by rule and part or by field."""

import datetime

import pytest

from checker.review.remarks import attach
from checker.spec.edit import field_named
from checker.spec.remarks import Remark

FIXED = {"by": "A. Reader", "date": "2026-05-01", "says": "Why?"}


@pytest.fixture
def reviewed(review, rulebook):
    book = rulebook("point", "oil_temperature", "{caution: {at_most: 100 degC}}")
    return review(book)


def attached(reviewed, **target):
    remark = Remark.model_validate({**FIXED, **target})
    (found,) = attach((remark,), reviewed.findings, reviewed.loaded.document)
    return found


@pytest.mark.parametrize("part", ["operation.1", "operation.climb"])
def test_a_remark_on_a_finding(reviewed, part):
    found = attached(reviewed, rule="test.rule", part=part)
    assert [each.subject.name for each in found.findings] == ["climb"]
    assert found.path == ("operation", 1, "oil_temperature")
    assert not found.is_loose


def test_a_remark_on_a_field_knows_the_findings_that_rest_on_it(reviewed):
    found = attached(reviewed, field="operation.cruise.oil_temperature", answer="It was measured.")
    assert found.path == ("operation", 0, "oil_temperature")
    assert [each.subject.name for each in found.findings] == ["cruise"]
    assert found.is_answered


def test_a_remark_on_a_whole_part_knows_all_that_rests_on_it(reviewed):
    assert len(attached(reviewed, field="operation").findings) == 2
    assert attached(reviewed, field="gears.a.teeth").findings == ()


@pytest.mark.parametrize(
    "target",
    [
        {"rule": "test.rule", "part": "operation.descent"},
        {"rule": "test.other", "part": "operation.climb"},
        {"field": "operation.descent.power"},
        {"field": "gears.a.face_width"},
        {"field": "gears.a.teeth.more"},
        {"field": "operation.9.power"},
    ],
)
def test_a_remark_on_what_is_not_there_is_loose(reviewed, target):
    found = attached(reviewed, **target)
    assert found.is_loose
    assert found.findings == ()


def test_fields_by_name_and_number(reviewed):
    document = reviewed.loaded.document
    assert field_named(document, "operation.1.power") == ("operation", 1, "power")
    assert field_named(document, "operation.climb.power") == ("operation", 1, "power")
    assert field_named(document, "gears.b") == ("gears", "b")


def test_dates_are_dates(reviewed):
    assert attached(reviewed, field="gears.a").remark.date == datetime.date(2026, 5, 1)
