"""The first-run card: steps clear of resonance and barred ranges, refused on hold."""

import datetime
import math
from pathlib import Path

import pytest

from checker.known import Known, Unknown
from checker.report.first_run_card import card_sheet, html_card, parts_of
from checker.review.first_run import STEPS, OnHold, first_run
from checker.review.review import review_spec
from checker.review.rulebook import Rulebook, shipped_rulebook

EXAMPLES = Path(__file__).parents[2] / "examples"
DAY = datetime.date(2026, 6, 1)
RPM = 60 / math.tau


def reviewed(name, *changes, book=None):
    text = (EXAMPLES / f"{name}.yaml").read_text()
    for before, after in changes:
        assert before in text
        text = text.replace(before, after)
    return review_spec(text.encode(), f"{name}.yaml", book or shipped_rulebook(), DAY)


@pytest.mark.parametrize("name", ["marram", "tansy", "sorrel"])
def test_steps_run_from_idle_to_maximum_continuous(name):
    review = reviewed(name)
    card = first_run(review)
    survey = review.designs[None].survey
    speeds = [each.engine for each in card.steps]
    assert len(speeds) == STEPS
    assert speeds == sorted(speeds)
    assert speeds[0] == pytest.approx(survey.idle)
    assert speeds[-1] == pytest.approx(survey.reference, rel=0.01)
    ratio = review.designs[None].measure(
        "computed_ratio", review.designs[None].subjects.the("drive")
    )
    for step in card.steps:
        assert step.propeller == pytest.approx(step.engine / ratio.number)
        assert step.separation >= 0.2


def test_no_step_stands_in_a_barred_range_or_near_a_resonance():
    # Without rules nothing is on hold: the card of a drive that is barred at low speed.
    stiff = [
        (f"{name}: ", f"{name}: {value} N m/rad #")
        for name, value in (("hot_stiffness", 800), ("cold_stiffness", 800))
    ]
    stiff.append(("dynamic_stiffness: ", "dynamic_stiffness: 800 N m/rad #"))
    review = reviewed("marram", *stiff, book=Rulebook(()))
    card = first_run(review)
    assert card.barred
    for step in card.steps:
        assert not any(low <= step.engine <= high for low, high in card.barred)
    assert len(card.steps) <= STEPS
    told = {part.id: part.lines for part in parts_of(card)}
    assert len(told["barred"]) == len(card.barred)
    assert "rpm at the engine" in told["barred"][0]


def test_speeds_are_not_shown_without_a_survey():
    review = reviewed("marram", ("  stroke: ", "  stroke: unknown #"), book=Rulebook(()))
    card = first_run(review)
    assert isinstance(card.unknown, Unknown)
    assert card.steps == card.barred == ()
    (steps,) = [part.lines for part in parts_of(card) if part.id == "steps"]
    assert "state engine.stroke" in steps[0]


@pytest.mark.parametrize("name", ["marram-troubled", "tansy-troubled", "sorrel-troubled"])
def test_a_drive_on_hold_gets_no_card(name):
    with pytest.raises(OnHold, match="hold"):
        first_run(reviewed(name))


def test_temperatures_have_their_limits():
    card = first_run(reviewed("marram"))
    oil, damper = card.watched
    assert isinstance(oil.computed, Known)
    assert oil.limit.number > oil.computed.number > 300.0
    assert damper.what == "damper"
    told = next(part.lines for part in parts_of(card) if part.id == "watch")
    assert all("stop above" in line for line in told)


def test_what_is_open_stands_on_the_card():
    review = reviewed("tansy", ("twist_limit: 32 deg", "twist_limit: unknown"))
    assert review.disposition == "not for flight"
    card = first_run(review)
    told = next(part.lines for part in parts_of(card) if part.id == "open")
    assert any("not shown" in line and "damper" in line for line in told)


def test_the_sheet_says_what_it_is():
    told = " ".join(card_sheet(first_run(reviewed("tansy")), width=80, colour=False).split())
    assert "an aid to the builder's own plan" in told
    assert "[ ] Aircraft tied down" in told
    assert "No disposition of this sheet permits a run" in told


def test_the_page_escapes_what_the_spec_says():
    review = reviewed("tansy", ("name: Tansy", "name: '<script>alert(1)</script>'"))
    page = html_card(first_run(review))
    assert "<script>alert" not in page
    assert "&lt;script&gt;alert(1)" in page
    assert page == html_card(first_run(review))
