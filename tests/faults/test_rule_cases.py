"""Each rule against a design that triggers it and a neighbour that does not."""

import copy
import datetime
from pathlib import Path

import pytest
import yaml

from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook

ROOT = Path(__file__).parents[2]
HERE = Path(__file__).parent
DAY = datetime.date(2026, 6, 1)

CASES = [
    (case, file.stem)
    for file in sorted(HERE.glob("*.yaml"))
    for case in yaml.safe_load(file.read_text(encoding="utf-8"))
]


def changed(base: str, changes: dict) -> bytes:
    """The base spec with some fields set; a value of ``<left out>`` removes the field."""
    data = copy.deepcopy(yaml.safe_load((ROOT / base).read_text(encoding="utf-8")))
    for path, value in changes.items():
        *way, last = [int(step) if step.isdigit() else step for step in path.split(".")]
        inner = data
        for step in way:
            inner = inner[step]
        if value == "<left out>":
            del inner[last]
        else:
            inner[last] = value
    return yaml.safe_dump(data, sort_keys=False, allow_unicode=True).encode()


def outcome(base: str, changes: dict, rule: str, part: str):
    review = review_spec(changed(base, changes), base, shipped_rulebook(), DAY)
    found = [
        finding
        for finding in review.findings
        if finding.rule.id == rule and finding.subject.label == part
    ]
    assert found, f"{rule} gave no finding on {part}"
    return found[0]


@pytest.mark.parametrize(
    ("case", "family"), CASES, ids=[f"{case['rule']}-{case['part']}" for case, _ in CASES]
)
def test_rule_triggers_and_spares_its_neighbour(case, family):
    base, rule, part = case["base"], case["rule"], case["part"]
    triggered = outcome(base, case["trigger"], rule, part)
    assert (triggered.outcome, triggered.level) == (case["outcome"], case["level"])
    spared = outcome(base, case.get("neighbour", {}), rule, part)
    assert spared.outcome == case.get("neighbour_outcome", "meets"), spared.reason


def test_every_rule_has_a_case():
    rules = {rule.id for rule in shipped_rulebook().rules}
    assert rules == {case["rule"] for case, _ in CASES}
