"""Deviations: one rule, one part, a named person, a reason, a date and an expiry."""

import pytest

from checker.review.rulebook import Rulebook
from checker.spec.problem import SpecUnreadable

STANDING = (
    "{warning: {none_of: [unknown rule, unknown part, not allowed, without mitigation]}, "
    "caution: {none_of: [expired, not yet in force]}, advisory: {none_of: [unused]}}"
)


def deviation(rule="test.rule", part="gears.b", date="2026-01-10", expires="2026-12-31", more=""):
    return (
        f"deviations:\n  - {{rule: {rule}, part: {part}, reason: shown by test, by: M. Vetch, "
        f"date: {date}, expires: {expires}{more}}}\n"
    )


@pytest.fixture
def book(rulebook):
    """A rule that both gears fall short of, and one that looks at deviations."""

    def build(more=""):
        judged = rulebook("gear", "teeth", "{caution: {at_most: 20}}", more)
        standing = rulebook("deviation", "standing", STANDING, rule_id="test.standing")
        return Rulebook((*judged.rules, *standing.rules))

    return build


def standing(found):
    return next(each for each in found.findings if each.rule.id == "test.standing")


def test_a_deviation_accepts_one_rule_on_one_part_and_stays_visible(book, review):
    found = review(book(), more=deviation())
    outcomes = {each.subject.label: each for each in found.findings if each.rule.id == "test.rule"}
    accepted = outcomes["gears.b"]
    assert (accepted.outcome, accepted.level) == ("deviation", "caution")
    assert accepted.deviation.by == "M. Vetch"
    assert accepted.value.value == 60
    assert outcomes["gears.a"].outcome == "falls short"
    assert standing(found).outcome == "meets"
    assert not accepted.is_open


@pytest.mark.parametrize(
    ("written", "more", "word", "level"),
    [
        (deviation(rule="test.rul"), "", "unknown rule", "warning"),
        (deviation(part="gears.c"), "", "unknown part", "warning"),
        (deviation(expires="2026-05-31"), "", "expired", "caution"),
        (deviation(date="2026-06-02"), "", "not yet in force", "caution"),
        (deviation(part="shafts.in"), "", "unused", "advisory"),
        (deviation(), "no_deviation: true", "not allowed", "warning"),
        (deviation(), "needs_mitigation: true", "without mitigation", "warning"),
    ],
)
def test_a_deviation_that_does_not_stand_is_a_finding(book, review, written, more, word, level):
    found = review(book(more), more=written)
    finding = standing(found)
    assert (finding.outcome, finding.level, finding.value.value) == ("falls short", level, word)
    assert finding.place == ("deviations", 0)
    on_b = [each.outcome for each in found.findings if each.subject.label == "gears.b"]
    assert on_b == ["falls short"]


def test_a_deviation_stands_on_its_last_day(book, review):
    assert standing(review(book(), more=deviation(expires="2026-06-01"))).outcome == "meets"


def test_a_mitigation_makes_it_stand_where_the_rule_asks_for_one(book, review):
    written = deviation(more=", mitigation: glide range is kept")
    assert standing(review(book("needs_mitigation: true"), more=written)).outcome == "meets"


def test_what_is_not_shown_cannot_be_accepted(rulebook, review):
    book = rulebook("gear", "face_width", "{caution: {at_least: 1 mm}}")
    found = review(book, more=deviation())
    assert [each.outcome for each in found.findings] == ["not shown", "not shown"]


def test_without_a_reason_a_deviation_is_refused(book, review):
    with pytest.raises(SpecUnreadable, match="'reason' is missing"):
        review(book(), more=deviation().replace("reason: shown by test, ", ""))


@pytest.mark.parametrize("field", ["date", "expires"])
def test_without_its_dates_a_deviation_is_refused(book, review, field):
    with pytest.raises(SpecUnreadable, match=f"{field}: .* it cannot be unknown"):
        review(book(), more=deviation(**{field: "unknown"}))
