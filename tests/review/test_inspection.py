"""What to look at and when, by what the rules found."""

import datetime
from pathlib import Path

import pytest

from checker.review.inspection import TASKS, TIMES, inspection_plan
from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook

EXAMPLES = Path(__file__).parents[2] / "examples"
DAY = datetime.date(2026, 6, 1)


def plan_of(name, old="", new=""):
    source = (EXAMPLES / f"{name}.yaml").read_text(encoding="utf-8")
    assert old in source
    review = review_spec(source.replace(old, new).encode(), name, shipped_rulebook(), DAY)
    return inspection_plan(review)


def times_of(plan, word):
    return [(each.when, each.earlier) for each in plan if word in each.look]


@pytest.mark.parametrize("name", ["marram", "tansy", "sorrel"])
def test_plan_is_in_order_of_time_and_reaches_every_time(name):
    plan = plan_of(name)
    indices = [TIMES.index(each.when) for each in plan]
    assert indices == sorted(indices)
    assert set(indices) == set(range(len(TIMES)))
    for each in plan:
        assert each.because.outcome != "does not apply"


def test_clutch_is_looked_at_only_where_there_is_one():
    assert times_of(plan_of("marram"), "clutch by hand") == [("before flight", False)]
    assert times_of(plan_of("tansy"), "clutch by hand") == []


def test_circuit_of_a_chip_detector_is_checked_only_where_there_is_one():
    source = (EXAMPLES / "marram.yaml").read_text(encoding="utf-8")
    stated = "chip_detector: true"
    assert stated in source
    assert times_of(plan_of("marram"), "chip detector") == [("before flight", False)]
    assert times_of(plan_of("marram", stated, "chip_detector: false"), "chip detector") == []


def test_open_finding_brings_a_task_forward():
    """A seal that runs out too far: the leak check moves from the first hour to before flight."""
    plan = plan_of("marram", "    runout: 0.05 mm\n", "    runout: 0.2 mm\n")
    early = [each for each in plan if each.earlier and "Oil at the seals" in each.look]
    assert [each.when for each in early] == ["before flight"]
    assert early[0].because.rule.id == "seals.runout"


def test_healthy_seals_are_looked_at_in_their_time():
    plan = plan_of("marram", "pressure_limit: 20 kPa", "pressure_limit: 65 kPa")
    assert ("after the first hour", False) in times_of(plan, "Oil at the seals")


def test_every_task_belongs_to_rules_that_exist():
    rules = [rule.id for rule in shipped_rulebook().rules]
    for task in TASKS:
        assert set(task.usual) <= set(TIMES)
        for name in task.rules:
            open_end = name.endswith((".", "-"))
            assert any(rule.startswith(name) if open_end else rule == name for rule in rules), name
