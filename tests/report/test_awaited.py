"""What is not shown, by the field that would show it."""

import pytest

from checker.known import Unknown
from checker.report.awaited import awaited_fields, awaited_reasons, may_be_none
from checker.report.awaited_words import hint_lines, reasons_text
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
    assert (group.reasons, group.level) == (("a later version",), "warning")
    assert group.rules == ["sheet.face", "sheet.mass"]
    assert told(awaited_fields(findings)) == [(["gears.b.teeth"], "warning", ["sheet.power"])]


def test_a_reason_stands_beside_a_field_that_all_wait_for_because_of_it(waiting):
    findings = (
        waiting("sheet.mass", "bearings", because="none on the input shaft"),
        waiting("sheet.face", "bearings", because="none on the output shaft"),
        waiting("sheet.mass", "propeller.mass", because="it was not weighed"),
        waiting("sheet.power", "propeller.mass"),
    )
    reasons = {each.fields[0]: each.reasons for each in awaited_fields(findings)}
    assert reasons == {
        ("bearings",): ("none on the input shaft", "none on the output shaft"),
        ("propeller", "mass"): (),
    }


def test_a_reason_that_comes_merged_and_alone_is_told_once(waiting):
    findings = (
        waiting("sheet.mass", "bearings", because="none on the input shaft"),
        waiting("sheet.face", "bearings", because="no survey; none on the input shaft"),
    )
    (group,) = awaited_fields(findings)
    assert reasons_text(group) == "none on the input shaft, no survey"


def test_how_a_value_is_come_by_stands_once_for_all_fields_of_a_kind():
    inertia = [("shafts", name, "inertia") for name in ("in", "out")]
    lines = hint_lines((*inertia, ("engine", "bore"), ("damper", "dynamic_stiffness")))
    assert [line.split(":")[0] for line in lines] == [
        "shafts.in.inertia, shafts.out.inertia",
        "damper.dynamic_stiffness",
    ]
    assert "J = m g r² T² / (4 π² L)" in lines[0]


def test_fields_for_which_none_is_an_answer_stand_apart(waiting):
    findings = (waiting("sheet.power", "clutch", "engine.cylinders", "gears.a.helix"),)
    assert [each.fields for each in awaited_fields(findings)] == [
        (("clutch",), ("gears", "a", "helix")),
        (("engine", "cylinders"),),
    ]


@pytest.mark.parametrize(
    ("field", "answers"),
    [
        ("clutch", True),
        ("vent.catch_bottle", True),
        ("engine.internal_reduction", True),
        ("lubrication.reservoir", True),
        ("gears.helix.helix", True),  # of the gear named helix
        ("gears.helix", False),
        ("clutch.kind", False),
        ("operation.0.power", False),
        ("bearings", False),
        ("no.such.field", False),
    ],
)
def test_none_is_an_answer_for_what_may_be_absent(field, answers):
    assert may_be_none(tuple(field.split("."))) is answers
