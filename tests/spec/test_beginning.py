"""A spec to begin with can be read, says what was answered, and is honest about the rest."""

import datetime
import itertools

import pytest
import yaml

from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook
from checker.spec.beginning import Answers, beginning
from checker.spec.hints import HINTS
from checker.spec.loading import load_spec

DAY = datetime.date(2026, 6, 1)
ARRANGEMENTS = ("single", "idler", "compound")
DAMPERS = (None, "none", "elastomer", "steel spring", "viscous")
CLUTCHES = (None, "none", "roller", "sprag")


def answers(arrangement="single", form="spur", **more):
    return Answers("Heron", arrangement, form, **more)


@pytest.mark.parametrize(
    ("arrangement", "form", "damper", "clutch"),
    list(itertools.product(ARRANGEMENTS, ("spur", "helical"), DAMPERS, CLUTCHES)),
)
def test_every_kind_of_drive_can_be_read(arrangement, form, damper, clutch):
    text = beginning(answers(arrangement, form, ratio=2.3, damper=damper, clutch=clutch))
    spec = load_spec(text.encode(), "heron.yaml").spec
    assert spec.drive.arrangement == arrangement
    for part, kind in ((spec.damper, damper), (spec.clutch, clutch)):
        assert (part if kind in (None, "none") else part.kind) == kind


@pytest.mark.parametrize(
    ("arrangement", "form"), list(itertools.product(ARRANGEMENTS, ("spur", "helical")))
)
def test_it_reviews_at_once_and_claims_nothing(arrangement, form):
    text = beginning(
        answers(arrangement, form, ratio=2.3, damper="elastomer", clutch="sprag", cylinders=4)
    )
    review = review_spec(text.encode(), "heron.yaml", shipped_rulebook(), DAY)
    assert not review.has_broken
    assert review.disposition == "hold"
    assert sum(each.outcome == "not shown" for each in review.findings) > 100
    assert not [
        each.rule.id
        for each in review.findings
        if each.outcome == "falls short" and each.level in ("warning", "caution")
    ]
    arranged = [each for each in review.findings if each.rule.id == "train.arrangement-as-stated"]
    assert [each.outcome for each in arranged] in ([], ["meets"])


def test_what_was_answered_is_stated_and_nothing_else():
    said = answers(
        "compound",
        cylinders=3,
        cycle="two-stroke",
        power="80 hp",
        speed="5200 rpm",
        blades=3,
        diameter="1.7 m",
    )
    spec = yaml.safe_load(beginning(said))
    assert spec["engine"]["take_off"] == {"power": "80 hp", "speed": "5200 rpm"}
    assert (spec["engine"]["cylinders"], spec["engine"]["cycle"]) == (3, "two-stroke")
    assert (spec["propeller"]["blades"], spec["propeller"]["diameter"]) == (3, "1.7 m")
    numbers = [each for each in leaves(spec) if isinstance(each, (int, float))]
    assert numbers == [1, 3, 3]  # the format, cylinders and blades
    quantities = {each for each in leaves(spec) if isinstance(each, str) and each[:1].isdigit()}
    assert quantities == {"80 hp", "5200 rpm", "1.7 m"}


def leaves(node):
    if isinstance(node, dict):
        return [leaf for each in node.values() for leaf in leaves(each)]
    if isinstance(node, list):
        return [leaf for each in node for leaf in leaves(each)]
    return [node]


def test_proposed_teeth_are_said_to_be_proposed():
    text = beginning(answers("idler", ratio=2.2))
    lines = [line for line in text.splitlines() if line.strip().startswith("teeth: ")]
    noted = [line for line in text.splitlines() if "proposed from the ratio wanted" in line]
    assert len(lines) == 3
    assert len(noted) == 3
    assert "2.2 wanted" in text


@pytest.mark.parametrize(
    "name",
    [
        "Heron: the 'second'",
        "x\ny: 1",
        "# no",
        "{a}",
        "null",
        "1.5",
        "\x1b[31m",
        "*a",
        "-",
        "Größe",
    ],
)
def test_a_name_stays_a_name(name):
    text = beginning(Answers(name, "single", "spur"))
    if name == "-":  # says nothing, which the reader of specs refuses
        return
    assert yaml.safe_load(text.replace("\x1b", "\\x1b"))["drive"]["name"]
    assert text.splitlines()[1] == "#"  # the comment at the top is still one line


def test_the_same_answers_give_the_same_text():
    said = answers("idler", "helical", ratio=2.2, damper="elastomer")
    assert beginning(said) == beginning(said)


def test_every_hint_stands_in_some_spec():
    said = answers(damper="elastomer", clutch="sprag", ratio=2.0)
    text = " ".join(beginning(said).replace("#", " ").split())
    for hint in HINTS.values():
        assert hint in text
