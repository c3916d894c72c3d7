"""Rule by part to finding: outcomes, levels, margins, governing points."""

import math

import pytest

from checker.known import Known, Unknown
from checker.measures import registry
from checker.measures.registry import Measure
from checker.review.rule import Limit

RPM = 2 * math.pi / 60


def only(review):
    assert len(review.findings) == 1
    return review.findings[0]


@pytest.mark.parametrize(
    ("teeth", "outcome", "level", "margin"),
    [
        (60, "meets", None, 0.0),
        (61, "falls short", "advisory", -1 / 60),
        (70, "falls short", "advisory", -10 / 60),
        (71, "falls short", "caution", -1 / 70),
        (80, "falls short", "caution", -10 / 70),
        (81, "falls short", "warning", -1 / 80),
    ],
)
def test_the_gravest_level_that_falls_short_governs(
    rulebook, review, teeth, outcome, level, margin
):
    book = rulebook(
        "gear",
        "teeth",
        "{warning: {at_most: 80}, caution: {at_most: 70}, advisory: {at_most: 60}}",
    )
    found = review(book, ("teeth: 60", f"teeth: {teeth}"))
    finding = next(each for each in found.findings if each.subject.name == "b")
    assert (finding.outcome, finding.level) == (outcome, level)
    assert finding.margin == pytest.approx(margin)
    assert finding.place == ("gears", "b", "teeth")


def test_the_worst_operation_point_governs_and_is_named(rulebook, review):
    book = rulebook("shaft", "speed", "{caution: {at_most: 5000 rpm}}")
    finding = next(each for each in review(book).findings if each.subject.name == "in")
    assert (finding.outcome, finding.point) == ("falls short", "climb")
    assert finding.value.number == pytest.approx(5500 * RPM)
    assert finding.margin == pytest.approx(-0.1)


def test_of_points_that_meet_the_least_margin_is_shown(rulebook, review):
    book = rulebook("shaft", "speed", "{caution: {at_most: 6000 rpm}}")
    finding = next(each for each in review(book).findings if each.subject.name == "in")
    assert (finding.outcome, finding.point) == ("meets", "climb")


def test_a_point_that_cannot_be_computed_is_not_shown(rulebook, review):
    book = rulebook("shaft", "speed", "{caution: {at_most: 6000 rpm}}")
    finding = review(book, ("5500 rpm", "unknown")).findings[0]
    assert (finding.outcome, finding.level, finding.point) == ("not shown", "caution", "climb")
    assert finding.place == ("operation", 1, "engine_speed")


def test_temperature_margins_are_in_kelvin(rulebook, review):
    book = rulebook("point", "oil_temperature", "{caution: {at_most: 100 degC}}")
    by_name = {each.subject.name: each for each in review(book).findings}
    assert by_name["cruise"].margin == pytest.approx(10.0)
    assert by_name["climb"].margin == pytest.approx(-5.0)


@pytest.mark.parametrize(
    ("kind", "values", "value", "margin"),
    [
        ("at_least", (2.0,), 3.0, 0.5),
        ("at_most", (2.0,), 3.0, -0.5),
        ("at_least", (0.0,), -0.25, -0.25),
        ("between", (2.0, 4.0), 2.5, 0.25),
        ("between", (2.0, 4.0), 5.0, -0.25),
        ("at_most", (-2.0,), -3.0, 0.5),
    ],
)
def test_margins_are_relative_but_for_a_limit_of_zero(kind, values, value, margin):
    limit = Limit(kind, values, "1", "")
    assert limit.margin(value) == pytest.approx(margin)
    assert limit.met_by(value) == (margin >= 0)


@pytest.mark.parametrize(
    ("kind", "values", "value", "met"),
    [
        ("one_of", ("a", "b"), "b", True),
        ("one_of", ("a", "b"), "c", False),
        ("none_of", ("a", "b"), "b", False),
        ("none_of", ("a", "b"), "c", True),
        ("is", (True,), True, True),
        ("is", (True,), False, False),
    ],
)
def test_words_and_truths_have_no_margin(kind, values, value, met):
    limit = Limit(kind, values, "", "")
    assert limit.met_by(value) is met
    assert limit.margin(value) is None


def test_an_unmet_condition_makes_a_rule_not_apply(rulebook, review):
    book = rulebook(
        "gear", "teeth", "{caution: {at_most: 50}}", "when: [{measure: helix.hand, is: right}]"
    )
    changed = review(book, ("teeth: 24, module: 3 mm, pressure_angle: 20 deg, helix: none",
                            "teeth: 24, helix: {angle: 10 deg, hand: left}"))  # fmt: skip
    outcomes = {each.subject.name: each.outcome for each in changed.findings}
    assert outcomes["a"] == "does not apply"


def test_an_unknown_condition_makes_a_rule_not_shown(rulebook, review):
    book = rulebook(
        "gear", "teeth", "{warning: {at_most: 50}}", "when: [{measure: face_width, at_most: 30 mm}]"
    )
    finding = review(book).findings[0]
    assert (finding.outcome, finding.level) == ("not shown", "warning")
    assert finding.place == ("gears", "a", "face_width")


@pytest.mark.parametrize(
    ("clutch", "outcome"), [("clutch: none\n", "does not apply"), ("", "not shown")]
)
def test_a_part_absent_on_purpose_and_a_part_not_mentioned(rulebook, review, clutch, outcome):
    book = rulebook("clutch", "race_hardness", "{warning: {at_least: 58 HRC}}")
    finding = only(review(book, more=clutch))
    assert finding.outcome == outcome
    assert finding.place == ("clutch",)


def test_a_section_left_out_is_one_finding_on_the_drive(rulebook, review):
    book = rulebook("seal", "runout", "{caution: {at_most: 0.1 mm}}")
    finding = only(review(book))
    assert (finding.outcome, finding.subject.label, finding.place) == (
        "not shown",
        "drive",
        ("seals",),
    )


def test_a_hardness_in_another_scale_is_not_shown(rulebook, review):
    book = rulebook("clutch", "race_hardness", "{warning: {at_least: 58 HRC}}")
    more = "clutch: {between: [crank, in], race_hardness: 650 HV}\n"
    changes = (("{in: {}", "{crank: {}, in: {}"), ("drives: in", "drives: crank"))
    finding = only(review(book, *changes, more=more))
    assert finding.outcome == "not shown"
    assert "HV" in finding.reason
    assert "HRC" in finding.reason


def with_measure(monkeypatch, function):
    registry.measures()
    measure = Measure("made_up", "drive", "1", "made up", False, "", function)
    monkeypatch.setitem(registry._MEASURES, ("drive", "made_up"), measure)


@pytest.mark.parametrize(
    ("best", "outcome"),
    [(0.9, "falls short"), (1.0, "not shown"), (1.1, "not shown"), (5.0, "not shown")],
)
def test_the_best_a_value_can_be_may_fall_short_and_never_meets(
    monkeypatch, rulebook, review, best, outcome
):
    with_measure(
        monkeypatch,
        lambda design, drive: Unknown(because="to come", at_best=Known(best, "1", "S")),
    )
    limits = "{warning: {at_least: 1.0}, caution: {at_least: 1.2}}"
    finding = only(review(rulebook("drive", "made_up", limits)))
    assert (finding.outcome, finding.level) == (outcome, "warning")
    assert finding.reason == "to come"


def test_a_measure_that_fails_is_broken_and_holds_the_review(monkeypatch, rulebook, review):
    def fails(design, drive):
        raise KeyError("inner")

    with_measure(monkeypatch, fails)
    found = review(rulebook("drive", "made_up", "{advisory: {at_least: 1.0}}"))
    assert only(found).outcome == "broken"
    assert "KeyError" in only(found).reason
    assert found.disposition == "hold"


@pytest.mark.parametrize(
    ("limits", "disposition", "reached"),
    [
        ("{warning: {at_most: 10}}", "hold", "warning"),
        ("{caution: {at_most: 10}}", "not for flight", "caution"),
        ("{advisory: {at_most: 10}}", "no open findings", "advisory"),
        ("{warning: {at_most: 100}}", "no open findings", None),
    ],
)
def test_disposition_follows_the_gravest_open_finding(
    rulebook, review, limits, disposition, reached
):
    found = review(rulebook("gear", "teeth", limits))
    assert found.disposition == disposition
    levels = ("warning", "caution", "advisory")
    expected = {
        level: reached is not None and levels.index(reached) <= levels.index(level)
        for level in levels
    }
    assert {level: found.reaches(level) for level in levels} == expected


def test_not_shown_counts_at_the_highest_level(rulebook, review):
    book = rulebook("gear", "face_width", "{warning: {at_least: 1 mm}, advisory: {at_least: 9 mm}}")
    assert review(book).disposition == "hold"


def test_findings_come_worst_first_and_without_ties(rulebook, review):
    book = rulebook("gear", "teeth", "{caution: {at_most: 10}}")
    found = review(book)
    assert [each.subject.name for each in found.findings] == ["b", "a"]


def test_every_ratio_set_is_reviewed(rulebook, review):
    book = rulebook("gear", "teeth", "{caution: {at_most: 59}}")
    sets = "ratio_sets: {low: {ratio: 2.5}, high: {ratio: 2.0, gears: {b: {teeth: 48}}}}\n"
    found = {(each.ratio_set, each.subject.name): each for each in review(book, more=sets).findings}
    assert found["low", "b"].outcome == "falls short"
    assert found["high", "b"].outcome == "meets"
    assert found["high", "b"].place == ("ratio_sets", "high", "gears", "b", "teeth")
