"""The ranking of flanks and roots on the sheet of a review."""

import datetime
from pathlib import Path

import pytest

from checker.report.terminal import review_sheet
from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook

EXAMPLES = Path(__file__).parents[2] / "examples"


def sheet_of(name, before="", after=""):
    source = (EXAMPLES / name).read_text(encoding="utf-8")
    assert before in source
    changed = source.replace(before, after, 1).encode()
    review = review_spec(changed, name, shipped_rulebook(), datetime.date(2026, 6, 1))
    return review_sheet(review, width=100, colour=False)


def section(sheet):
    return sheet.partition("Which gear limits\n")[2].partition("\n\nBear in mind")[0]


def test_limits_stand_from_the_least_load_in_hand_on():
    rows = section(sheet_of("tansy.yaml")).splitlines()
    in_hand = [float(row.split()[-1]) for row in rows[1:9]]
    assert in_hand == sorted(in_hand)
    assert "pitting of input_pinion in first at climb, reached at" in rows[10]


def test_both_standards_and_the_hours_stand_below():
    text = section(sheet_of("tansy.yaml"))
    power, life = text.partition("Power by ISO")[2], text.partition("until 1 % fail")[2]
    assert [row.split()[0] for row in power.splitlines()[1:3]] == ["first", "second"]
    assert all("kW" in row for row in power.splitlines()[1:3])
    assert all(row.count(" h") == 2 for row in life.splitlines()[1:5])


def test_what_restores_a_gear_that_falls_short_is_told():
    text = section(sheet_of("tansy.yaml", "factor: 1.6", "factor: 2.4"))
    for told in ("Face width", "Module", "Hardness", "Helix"):
        assert told in text
    assert text.count("alone would restore it") == 2
    assert "a spur gear has no helix to change" in text


def test_a_root_is_restored_to_the_safety_that_its_rule_asks_for():
    text = section(sheet_of("tansy.yaml", "rim_thickness: 9 mm", "rim_thickness: 2.4 mm"))
    assert "breakage of" in text.partition("To restore")[2]
    assert "to a safety of 1.2" in text


@pytest.mark.parametrize("field", ["failure_probability: 1 %", "target_life: 1000 h"])
def test_no_ranking_without_a_rating(field):
    name, _, _ = field.partition(":")
    sheet = sheet_of("tansy.yaml", field, f"{name}: unknown")
    assert "Which gear limits\n" not in sheet
