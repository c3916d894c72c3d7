"""What the format must carry besides the example fleet: one short spec for each arrangement.

Expected values are worked by hand from the numbers in the specs, by P = T ω and the tooth counts.
"""

import datetime
import math
from functools import cache
from pathlib import Path

import pytest

from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook

HERE = Path(__file__).parent / "specs"
DAY = datetime.date(2026, 6, 1)
RPM = 2.0 * math.pi / 60.0


@cache
def reviewed(name):
    source = (HERE / f"{name}.yaml").read_bytes()
    return review_spec(source, name, shipped_rulebook(), DAY)


def design_of(name, ratio_set=None):
    return reviewed(name).designs[ratio_set]


def found(name, rule, part):
    """The findings of a rule on a part: one, or one for each ratio set."""
    findings = [
        finding
        for finding in reviewed(name).findings
        if finding.rule.id == rule and finding.subject.label == part
    ]
    assert findings, f"{rule} says nothing of {part}"
    return findings


def point_of(design, name):
    return next(point for point in design.points if point.name == name)


@pytest.mark.parametrize("name", sorted(file.stem for file in HERE.glob("*.yaml")))
def test_every_spec_is_judged_without_a_broken_rule(name):
    review = reviewed(name)
    assert review.findings
    assert not review.has_broken, [
        (each.rule.id, each.reason) for each in review.findings if each.outcome == "broken"
    ]


def test_clutch_in_the_propeller_gear_carries_the_torque_of_the_propeller():
    design = design_of("clutch_in_propeller_gear")
    cruise = point_of(design, "cruise")
    engine_torque = 60e3 / (5000 * RPM)
    for shaft in ("prop_gear_hub", "prop"):
        assert design.motion.torque(shaft, cruise).number == pytest.approx(2.5 * engine_torque)
    clutch = design.subjects.the("clutch")
    assert design.measure("torque_over_engine", clutch).number == pytest.approx(2.5)


def test_clutch_in_the_propeller_gear_lets_the_gear_run_with_the_engine():
    design = design_of("clutch_in_propeller_gear")
    descent = point_of(design, "descent")
    assert design.motion.speed("prop", descent).number == pytest.approx(1300 * RPM)
    assert design.motion.speed("prop_gear_hub", descent).number == pytest.approx(1600 / 2.5 * RPM)
    assert design.motion.torque("input", descent).number == 0.0


def test_swapped_ratio_is_reviewed_with_each_set():
    review = reviewed("swapped_ratio")
    assert set(review.designs) == {"fast propeller", "slow propeller"}
    outcomes = {
        each.ratio_set: each.outcome
        for each in found("swapped_ratio", "train.ratio-as-stated", "drive")
    }
    assert outcomes == {"fast propeller": "meets", "slow propeller": "falls short"}


@pytest.mark.parametrize(
    ("ratio_set", "ratio"), [("fast propeller", 59 / 26), ("slow propeller", 61 / 24)]
)
def test_swapped_ratio_sets_the_speed_of_the_propeller(ratio_set, ratio):
    design = design_of("swapped_ratio", ratio_set)
    cruise = point_of(design, "cruise")
    assert design.motion.speed("prop", cruise).number == pytest.approx(5000 / ratio * RPM)


def test_internal_reduction_multiplies_torque_and_turns_the_sense():
    design = design_of("internal_reduction")
    cruise = point_of(design, "cruise")
    assert design.motion.speed("input", cruise).number == pytest.approx(4500 * RPM)
    assert design.motion.torque("input", cruise).number == pytest.approx(60e3 / (4500 * RPM))
    assert design.motion.sense("input").value == -1
    assert design.motion.sense("prop").value == 1
    (finding,) = found("internal_reduction", "train.propeller-sense", "drive")
    assert finding.outcome == "meets"


def test_triangle_has_its_centre_distances():
    design = design_of("triangle")
    for name in ("first", "second"):
        mesh = design.subjects.the("mesh", name)
        assert design.measure("axes_disagreement", mesh).number == 0.0
    idler, prop = (design.subjects.the("shaft", name) for name in ("idler", "prop"))
    assert idler.given("centre.right").number != prop.given("centre.right").number


def test_undamped_three_falls_short_ahead_of_its_clutch():
    (damping,) = found("undamped_three", "clutch.damped-ahead", "clutch")
    assert (damping.outcome, damping.level) == ("falls short", "warning")
    # CS-VLA 361(b): factor 3 for three cylinders; 54 kW at 5300 rpm; service factor 1.5.
    floor = 3.0 * 54e3 / (5300 * RPM)
    (capacity,) = found("undamped_three", "clutch.torque-capacity", "clutch")
    assert capacity.outcome == "falls short"
    assert capacity.known.number == pytest.approx(400 / (1.5 * floor))


def test_clutch_in_the_propeller_gear_is_judged_at_its_own_torque():
    # CS-VLA 361(b): factor 2 for four cylinders; 75 kW at 5200 rpm; ratio 2.5; service factor 1.5.
    floor = 2.5 * 2.0 * 75e3 / (5200 * RPM)
    (capacity,) = found("clutch_in_propeller_gear", "clutch.torque-capacity", "clutch")
    assert capacity.known.number == pytest.approx(1200 / (1.5 * floor))
    (place,) = found("clutch_in_propeller_gear", "clutch.place-in-train", "clutch")
    assert (place.outcome, place.level) == ("falls short", "advisory")


def test_swapped_ratio_has_a_contact_ratio_for_each_set():
    values = {
        each.ratio_set: each.known.number
        for each in found("swapped_ratio", "gears.contact-ratio-spur", "meshes.first")
    }
    assert len(set(values.values())) == 2


def test_damper_that_moves_oil_feeds_the_mesh_and_must_bear_the_oil():
    (supplied,) = found("damper_moves_oil", "oil.mesh-supplied", "meshes.first")
    assert supplied.outcome == "meets"
    for rule in ("oil.damper-elastomer", "damper.temperature-by-maker"):
        (finding,) = found("damper_moves_oil", rule, "damper")
        assert finding.outcome == "falls short"


def test_two_oils_must_not_meet_in_the_crankcase():
    (meeting,) = found("two_oils", "vent.crankcase-same-oil", "vent")
    assert (meeting.outcome, meeting.level) == ("falls short", "warning")
    (sharing,) = found("two_oils", "oil.shared-with-engine", "lubrication")
    assert sharing.outcome == "does not apply"


@pytest.mark.parametrize(
    ("rule", "part"),
    [
        ("oil.temperature", "lubrication"),
        ("oil.hot-viscosity", "lubrication"),
        ("seals.lip-heat", "seals.prop_seal"),
        ("housing.cooling-air", "housing"),
        ("vent.sealed-pressure", "drive"),
    ],
)
def test_case_heated_by_the_engine_falls_short(rule, part):
    (finding,) = found("heat_from_engine", rule, part)
    assert finding.outcome == "falls short"
