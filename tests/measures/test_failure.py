"""Both ways in which the clutch fails are reviewed apart; single failures are listed."""

import pytest

from checker.review.rulebook import shipped_rulebook

LOCKED = "clutch.failure_evidence.locked"
SLIP = "clutch.failure_evidence.slip"
# The hand check stands in the records, not in the evidence on either failure.
HALVES = {
    half: {
        rule.id
        for rule in shipped_rulebook().rules
        if rule.id.startswith(f"failure.{half}-") and rule.id != "failure.locked-hand-check"
    }
    for half in ("locked", "slip")
}


@pytest.mark.parametrize(
    ("left_out", "half", "other"), [(LOCKED, "locked", "slip"), (SLIP, "slip", "locked")]
)
def test_evidence_for_one_failure_never_answers_the_other(outcomes, left_out, half, other):
    found = outcomes({left_out: None})
    assert {found[rule, "clutch"] for rule in HALVES[half]} == {"not shown"}
    assert {found[rule, "clutch"] for rule in HALVES[other]} == {"meets"}


def test_without_any_evidence_both_stay_open(outcomes):
    found = outcomes({"clutch.failure_evidence": None})
    both = HALVES["locked"] | HALVES["slip"]
    assert len(both) == 10
    assert {found[rule, "clutch"] for rule in both} == {"not shown"}


def test_a_clutch_that_is_left_out_is_not_shown_and_none_does_not_apply(outcomes):
    rigid = {
        "joints.rigid": {"shaft": "carrier", "to": "input"},
        "lubrication.paths.2.to": "input_rear",
        "lubrication.paths.4.from": "carrier",
        "records.single_failures.4.part": "joints.rigid",
        "states.engine_stopped.keeps_oil": None,
    }
    rules = HALVES["locked"] | HALVES["slip"] | {"failure.locked-hand-check"}
    for clutch, outcome in (("unknown", "not shown"), ("none", "does not apply")):
        found = outcomes({"clutch": clutch, **rigid})
        assert {found[rule, "clutch"] for rule in rules} == {outcome}
        shown = {"not shown": "not shown", "does not apply": "falls short"}[outcome]
        assert found["failure.propeller-runs-free", "drive"] == shown


@pytest.mark.parametrize(
    ("mitigation", "outcome", "standing"),
    [
        (None, "falls short", "without mitigation"),
        ("Flown within glide of the field", "deviation", "in force"),
    ],
)
def test_loss_of_thrust_is_accepted_with_a_mitigation_only(review, mitigation, outcome, standing):
    deviation = {
        "rule": "failure.slip-loss-of-thrust",
        "part": "clutch",
        "reason": "No second path fits",
        "by": "T. Wendover",
        "date": "2026-01-20",
        "expires": "2026-12-31",
    }
    if mitigation:
        deviation["mitigation"] = mitigation
    found = review({f"{SLIP}.mitigation": "none", "deviations": [deviation]}).findings
    by_rule = {finding.rule.id: finding for finding in found}
    assert by_rule["failure.slip-loss-of-thrust"].outcome == outcome
    assert by_rule["records.deviation-stands"].value.value == standing


def test_a_part_left_out_of_the_list_is_named(solve):
    design = solve({"records.single_failures.2.part": "clutch"})
    records = design.subjects.the("records")
    unlisted = design.measure("unlisted_single_failures", records)
    assert [each.value for each in unlisted.inputs] == ["damper"]


def test_an_entry_without_effect_is_pointed_at(solve):
    design = solve({"records.single_failures.4.effect": None})
    described = design.measure("single_failures_described", design.subjects.the("records"))
    assert described.missing == (("records", "single_failures", 4, "effect"),)
