"""What is not shown, by the field that would show it."""

import pytest

from checker.known import Unknown
from checker.report.awaited import awaited_fields, awaited_reasons
from checker.review.finding import Finding


@pytest.fixture
def waiting(book):
    """A finding not shown, by rule and what it waits for."""

    def finding(rule, *fields, because=""):
        paths = tuple(tuple(field.split(".")) for field in fields)
        found = book.rule(rule)
        unknown = Unknown(paths, because)
        return Finding(found, None, "not shown", found.highest_level, unknown, reason=because)

    return finding


def told(groups):
    return [([".".join(path) for path in each.fields], each.level, each.rules) for each in groups]


def test_gravest_and_most_wanted_fields_come_first(waiting):
    findings = (
        waiting("sheet.mass", "propeller.mass"),
        waiting("sheet.face", "gears.b.width", "gears.b.teeth"),
        waiting("sheet.face", "gears.a.width"),
        waiting("sheet.power", "gears.b.teeth"),
    )
    assert told(awaited_fields(findings)) == [
        (["gears.b.teeth"], "warning", ["sheet.face", "sheet.power"]),
        (["gears.a.width", "gears.b.width"], "warning", ["sheet.face"]),
        (["propeller.mass"], "caution", ["sheet.mass"]),
    ]


def test_what_stating_more_does_not_help_stands_apart(waiting):
    findings = (
        waiting("sheet.mass", because="a later version"),
        waiting("sheet.face", because="a later version"),
        waiting("sheet.power", "gears.b.teeth", because="a later version"),
    )
    (group,) = awaited_reasons(findings)
    assert (group.reason, group.level) == ("a later version", "warning")
    assert group.rules == ["sheet.face", "sheet.mass"]
    assert told(awaited_fields(findings)) == [(["gears.b.teeth"], "warning", ["sheet.power"])]
