"""A remedy clears its finding when it is reviewed again, and a little less does not."""

import datetime
from decimal import Decimal
from pathlib import Path

import pytest

from checker.review.remedy import NOT_REMEDIES, is_remediable, remedies, why_not
from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook
from checker.spec.edit import with_values, written
from checker.spec.parts import MODELS

EXAMPLES = Path(__file__).parents[2] / "examples"
DAY = datetime.date(2026, 6, 1)


def reviewed(source):
    return review_spec(source, "drive.yaml", shipped_rulebook(), DAY)


def finding_of(review, rule, part):
    (found,) = [
        each for each in review.findings if each.rule.id == rule and each.subject.address == part
    ]
    return found


def still_there(review, finding, values):
    again = reviewed(with_values(review.loaded.document, values))
    found = finding_of(again, finding.rule.id, finding.subject.address)
    return found.outcome != "meets" and found.level == finding.level


@pytest.mark.parametrize(
    ("change", "rule", "part", "among"),
    [
        (
            ("face_width: 36 mm", "face_width: 24 mm"),
            "rating.contact",
            "gears.input_pinion",
            "face_width",
        ),
        (
            ("static_rating: 36.5 kN", "static_rating: 6.5 kN"),
            "loads.static-safety",
            "bearings.lay_rear",
            "static_rating",
        ),
    ],
)
def test_a_remedy_clears_and_a_little_less_does_not(change, rule, part, among):
    text = (EXAMPLES / "tansy.yaml").read_text()
    assert change[0] in text
    review = reviewed(text.replace(*change).encode())
    found = finding_of(review, rule, part)
    cures = remedies(review, found)
    assert any(str(each.path[-1]) == among for each in cures)
    for each in cures[:3]:
        assert not still_there(review, found, {each.path: each.after})
        before, after = written(each.before), written(each.after)
        assert (each.share > 0) == (after.number > before.number)
        if before.is_whole:
            back = after.number - (1 if each.share > 0 else -1)
        else:
            back = before.number + (after.number - before.number) * Decimal("0.8")
        if back != before.number:
            assert still_there(review, found, {each.path: before.at(back)})


def test_a_whole_number_is_moved_by_whole_numbers(review, rulebook):
    held = review(rulebook("drive", "computed_ratio", "{caution: {at_least: 2.55}}"))
    (found,) = held.findings
    first, second = remedies(held, found)
    assert (first.path, first.after) == (("gears", "b", "teeth"), 62)  # 61.2/24 is 2.55
    assert (second.path, second.after) == (("gears", "a", "teeth"), 23)  # 60/23.5 is
    assert first.share == pytest.approx(2 / 60)  # less than 1 of 24


def test_what_opens_nothing_else_stands_first(review, rulebook):
    from checker.review.rulebook import Rulebook

    ratio = rulebook("drive", "computed_ratio", "{caution: {at_least: 2.7}}")
    teeth = rulebook("gear", "teeth", "{caution: {between: [18, 62]}}", rule_id="test.teeth")
    held = review(Rulebook((*ratio.rules, *teeth.rules)))
    found = next(each for each in held.findings if each.outcome == "falls short")
    first, second = remedies(held, found)
    assert (first.path, first.opens) == (("gears", "a", "teeth"), ())
    assert [each.rule.id for each in second.opens] == ["test.teeth"]


def test_the_level_of_the_finding_decides(review, rulebook):
    limits = "{warning: {at_least: 2.6}, caution: {at_least: 2.8}}"
    held = review(rulebook("drive", "computed_ratio", limits))
    (found,) = held.findings
    assert found.level == "warning"
    cures = {each.path: each for each in remedies(held, found)}
    assert cures["gears", "b", "teeth"].after == 63  # 63/24 = 2.625, still a caution


def test_what_no_number_clears(review, rulebook):
    held = review(rulebook("gear", "teeth", "{caution: {at_least: 2000}}"))
    assert remedies(held, held.findings[0]) == []


def test_progress_is_told_to_the_end(review, rulebook):
    held = review(rulebook("drive", "computed_ratio", "{caution: {at_least: 2.7}}"))
    told = []
    remedies(held, held.findings[0], lambda done, of: told.append(done / of))
    assert told == sorted(told)
    assert told[-1] == 1.0


def test_only_what_falls_short_by_a_distance_can_be_cleared(review, rulebook):
    short = review(rulebook("drive", "computed_ratio", "{caution: {at_least: 2.7}}")).findings[0]
    silent = review(rulebook("gear", "face_width", "{caution: {at_least: 2 mm}}")).findings[0]
    text = review(rulebook("propeller", "rotation", "{caution: {is: clockwise}}")).findings[0]
    assert [is_remediable(each) for each in (short, silent, text)] == [True, False, False]


def test_what_is_no_choice_is_no_remedy():
    assert why_not(("operation", 3, "altitude")) == "the air is as it is"
    assert why_not(("engine", "stroke"))
    assert why_not(("gears", "a", "teeth")) == ""


def test_every_pattern_names_a_field():
    fields = {name for model in MODELS.values() for name in model.model_fields}
    inner = {
        "friction_coefficient",
        "service_factor",
        "limit_load_factor",
        "failure_probability",
        "factor",
        "target_life",
        "tensile_strength",
        "yield_strength",
        "density_15",
    }
    for pattern, why in NOT_REMEDIES:
        last = pattern.rpartition(".")[2]
        assert why
        assert "*" in last or last in fields | inner, pattern
