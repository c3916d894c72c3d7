"""The failure table as data and on the sheet."""

import datetime
from pathlib import Path

import pytest
import yaml

from checker.report.failure_table import HEADS, failure_table
from checker.report.terminal import review_sheet
from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook

EXAMPLES = Path(__file__).parents[2] / "examples"


def reviewed(name, change=lambda data: None):
    data = yaml.safe_load((EXAMPLES / f"{name}.yaml").read_text(encoding="utf-8"))
    change(data)
    text = yaml.safe_dump(data, sort_keys=False, allow_unicode=True).encode()
    return review_spec(text, f"{name}.yaml", shipped_rulebook(), datetime.date(2026, 6, 1))


def test_clutch_fails_both_ways_and_every_listed_part_once():
    review = reviewed("marram")
    rows = failure_table(review.designs[None])
    assert [(row.part, row.failure) for row in rows[:2]] == [
        ("clutch", "Locks"),
        ("clutch", "Slips"),
    ]
    listed = [each.part for each in review.loaded.spec.records.single_failures]
    assert [row.part for row in rows[2:]] == listed
    assert all(text for row in rows for text in row.texts)
    assert rows[0].check == "Hand check"
    assert rows[0].interval == "before flight"


def test_without_a_clutch_only_what_is_listed():
    assert all(row.part != "clutch" for row in failure_table(reviewed("tansy").designs[None]))


def test_what_is_left_open_is_empty_and_a_dash_on_the_sheet():
    def change(data):
        del data["clutch"]["failure_evidence"]
        del data["records"]["single_failures"]

    review = reviewed("marram", change)
    rows = failure_table(review.designs[None])
    assert [row.texts[2:] for row in rows] == [("",) * 5, ("",) * 5]
    sheet = review_sheet(review, width=100, colour=False)
    assert "clutch: Locks" in sheet
    assert "Effect on thrust" in sheet.partition("clutch: Locks")[2]


@pytest.mark.parametrize("head", HEADS[2:])
def test_sheet_prints_every_column(head):
    assert head in review_sheet(reviewed("sorrel"), width=100, colour=False)
