"""Fingerprints: the same as long as a finding is about the same thing."""

from pathlib import Path

import pytest

from checker.report.fingerprint import fingerprint, fingerprint_of, fingerprints_of
from checker.review.rulebook import shipped_rulebook

EXAMPLES = Path(__file__).parents[2] / "examples"
SETS = b"""ratio_sets:
  short: {ratio: 2.5}
  long: {ratio: 2.4, gears: {wheel: {teeth: 58}}}
"""


def of(review) -> set[str]:
    return {fingerprint_of(finding) for finding in review.findings}


def test_it_is_the_one_published():
    """By sha256sum of the text ["gears.contact-ratio-spur", "meshes.first", null]."""
    assert fingerprint("gears.contact-ratio-spur", "meshes.first", None) == PUBLISHED


PUBLISHED = "6c2e656e847a705608489f87595345ce"


def test_it_tells_rule_part_and_ratio_set_apart():
    told = [("a.b", "c", None), ("a.b", "c", "d"), ("a.b", "d", None), ("a.c", "c", None)]
    assert len({fingerprint(*each) for each in told}) == 4


@pytest.mark.parametrize(
    ("old", "new"),
    [
        (b"drive:", b"# a line\n\n\ndrive:"),
        (b"power: 52 kW", b"power: 45 kW"),
        (b"centre_distance: 126", b"backlash: 0.1 mm, centre_distance: 126"),
    ],
)
def test_neither_lines_nor_values_change_it(review_of, spec, old, new):
    changed = spec.replace(old, new)
    assert changed != spec
    assert of(review_of(changed)) == of(review_of(spec))


def test_an_operation_point_keeps_it_behind_a_new_one(review_of, spec):
    new = b"operation:\n  - {name: idle, engine_speed: 2000 rpm, power: 2 kW}\n"
    assert of(review_of(spec)) < of(review_of(spec.replace(b"operation:\n", new)))


def test_a_deviation_keeps_it_behind_a_new_one(review_of, spec, book):
    rules = shipped_rulebook()
    new = b"deviations:\n  - {rule: a.b, part: drive, reason: x, by: B. Other, date: 2026-05-01, "
    new += b"expires: 2026-12-31}\n"
    before = of(review_of(spec, rules=rules))
    assert before <= of(review_of(spec.replace(b"deviations:\n", new), rules=rules))


def test_no_two_findings_of_an_example_share_one(review_of):
    source = (EXAMPLES / "marram-troubled.yaml").read_bytes()
    review = review_of(source, rules=shipped_rulebook())
    assert len(of(review)) == len(review.findings) > 500


def test_what_is_told_once_for_all_ratio_sets_can_be_told_for_each(review_of, spec):
    review = review_of(spec + SETS)
    together = next(each for each in review.findings if each.ratio_set is None)
    single = next(each for each in review.findings if each.ratio_set == "short")
    sets = ["short", "long"]
    rule, part = together.rule.id, together.subject.address
    assert fingerprints_of(together, sets) == (
        fingerprint_of(together),
        fingerprint(rule, part, "short"),
        fingerprint(rule, part, "long"),
    )
    assert fingerprints_of(single, sets) == (
        fingerprint_of(single),
        fingerprint(single.rule.id, single.subject.address, None),
    )
