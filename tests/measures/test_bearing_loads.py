"""Life, static safety and ratings of bearings as measures."""

import math

import pytest
from scipy.integrate import quad

from checker.known import Assumption, Known, Unknown
from checker.mechanics import bearing, bearing_load, bearing_sizes

HOUR = 3600.0


def of(design, name):
    return design.subjects.the("bearing", name)


def test_life_over_the_duty_cycle_is_the_damage_sum(solve):
    """Σ q/L of the points, each by L = (C/P)^(10/3) at its speed: ISO 281.

    P swings with the torque, whose amplitude is that of the survey.
    """
    design = solve({})
    rear, shaft = of(design, "prop_rear"), design.subjects.the("shaft", "prop")
    damage = 0.0
    for point in design.points:
        load = design.measure("equivalent_load", rear, point).number
        speed = design.motion.speed("prop", point).number
        torque = design.motion.torque("prop", point).number
        if torque:  # none passes while the clutch overruns
            share = design.measure("alternating_shaft_torque", shaft, point).number / torque
            wear = quad(lambda a, s=share: abs(1 + s * math.sin(a)) ** (10 / 3), 0, math.tau)[0]
            load *= (wear / math.tau) ** 0.3
        revolutions = 1e6 * (62e3 / load) ** (10 / 3)
        damage += point.given("share").number * speed / math.tau / revolutions
    assert design.measure("basic_life", rear).number == pytest.approx(1 / damage)


def test_static_safety_names_its_case(solve):
    design = solve({})
    known = design.measure("static_safety", of(design, "idler_rear"))
    name = "limit torque at take-off"
    limit = next(case for case in design.reactions.cases.limits if case.name == name)
    load = design.reactions.radial(of(design, "idler_rear"), limit).number
    assert known.number == pytest.approx(23.6e3 / load)
    assert name in {leaf.value for leaf in known.leaves()}


def test_axial_share_at_limit_by_hand(solve):
    """Helical pinion at the peak torque: F_a = 2 T tan β / d, against the rating of 10 kN."""
    design = solve({}, "sorrel")
    known = design.measure("axial_share_at_limit", of(design, "input_rear"))
    diameter = 24 * 2.5e-3 / math.cos(math.radians(20.0))
    force = 2 * design.peaks.peak("input").number * math.tan(math.radians(20.0)) / diameter
    assert known.number == pytest.approx(force / 10e3)
    assert "limit torque at take-off" in {leaf.value for leaf in known.leaves()}


def test_kick_back_loads_a_rib_that_no_point_loads(solve):
    """The one rib of an NJ takes the thrust of one sense of torque alone: the reversed one."""
    design = solve(
        {
            "bearings.input_rear.locates": "towards propeller",
            "bearings.input_front.kind": "cylindrical roller NJ",
            "bearings.input_front.locates": "towards engine",
            "bearings.input_front.axial_rating": "9 kN",
        },
        "sorrel",
    )
    front = of(design, "input_front")
    assert not any(design.measure("axial_share", front, each).number for each in design.points)
    kick_back = next(each for each in design.reactions.cases.limits if each.name == "kick-back")
    force = design.reactions.forces.net_axials("input", kick_back)[0].number
    assert force < 0
    known = design.measure("axial_share_at_limit", front)
    assert known.number == pytest.approx(-force / 9e3)
    assert "kick-back" in {leaf.value for leaf in known.leaves()}


def test_pair_is_rated_as_a_set(solve):
    design = solve({}, "sorrel")
    pair = of(design, "prop_thrust")
    cruise = next(point for point in design.points if point.name == "cruise")
    radial = design.measure("radial_force", pair, cruise).number
    axial = design.measure("axial_force", pair, cruise).number
    load = design.measure("equivalent_load", pair, cruise).number
    assert load == pytest.approx(bearing_load.angular_pair_load(radial, axial, math.radians(40.0)))
    assert axial == pytest.approx(abs(design.loads.net_thrust("prop", cruise).number))


def test_sizes_of_a_generic_series_count_wherever_stated_ones_do(review):
    """Series 03 with a bore of 45 mm is 100 x 25 mm, as stated: ISO 15. Every finding stays."""
    sizes = dict.fromkeys(("bearings.lay_front.outside", "bearings.lay_front.width"))
    series = {"bearings.lay_front.generic_series": "03"}
    stated, generic = (
        {
            (finding.rule.id, finding.subject.label): (
                finding.outcome,
                finding.level,
                finding.known and finding.known.value,
            )
            for finding in review(changes, "sorrel").findings
        }
        for changes in ({}, {**sizes, **series})
    )
    assert stated == generic


def test_generic_series_tells_how_deep_its_groove_is(solve):
    """Series 03 has diameter series 3: half the static rating; a light one has a quarter."""
    left_out = dict.fromkeys(
        ("bearings.lay_front.axial_rating", "bearings.lay_front.static_rating")
    )
    design = solve({**left_out, "bearings.lay_front.generic_series": "03"}, "sorrel")
    limit = design.measure("axial_load_limit", of(design, "lay_front"))
    rating = bearing_sizes.generic_ball_static_rating(0.045, 0.100)
    assert limit.number == pytest.approx(0.5 * rating)


def test_generic_bearing_needs_no_catalogue(solve):
    left_out = ("dynamic_rating", "static_rating", "outside", "width", "f0")
    changes = {f"bearings.input_front.{field}": None for field in left_out}
    design = solve({**changes, "bearings.input_front.generic_series": "03"})
    front = of(design, "input_front")
    known = design.measure("static_safety", front)
    assert isinstance(known, Known)
    notes = [leaf for leaf in known.leaves() if isinstance(leaf.origin, Assumption)]
    assert any("no maker's" in note.origin for note in notes)
    expected = bearing_sizes.generic_ball_static_rating(0.035, 0.080)
    stated = solve({}).measure("static_safety", of(solve({}), "input_front")).number
    assert known.number / stated == pytest.approx(expected / 19e3)


ADJUSTED = {
    "bearings.prop_rear.kind": "tapered roller",
    "bearings.prop_rear.locates": "towards propeller",
    "bearings.prop_rear.contact_angle": "14 deg",
    "bearings.prop_thrust.kind": "tapered roller",
    "bearings.prop_thrust.locates": "towards engine",
    "bearings.prop_thrust.contact_angle": "14 deg",
}


def test_tapered_bearings_share_thrust_with_what_they_induce(solve):
    design = solve(ADJUSTED)
    climb = next(point for point in design.points if point.name == "climb")
    rear, front = of(design, "prop_rear"), of(design, "prop_thrust")
    net = design.loads.net_thrust("prop", climb).number
    forces = [design.measure("axial_force", each, climb).number for each in (rear, front)]
    assert forces[0] - forces[1] == pytest.approx(net)
    induced = [
        bearing_load.tapered_induced_force(
            design.measure("radial_force", each, climb).number, math.radians(14.0)
        )
        for each in (rear, front)
    ]
    assert all(force >= own - 1e-9 for force, own in zip(forces, induced, strict=True))


def test_tapered_bearings_support_at_their_pressure_centres(solve):
    design = solve(ADJUSTED)
    stations = [each.station.number for each in design.reactions.supports("prop")]
    # 14 deg, (40 + 80)/4 and (60 + 130)/4 mm, both outwards
    assert stations == pytest.approx(
        [0.152 - 0.030 * math.tan(math.radians(14)), 0.238 + 0.0475 * math.tan(math.radians(14))]
    )


def test_nobody_carries_thrust_but_the_locating_bearing(solve):
    design = solve({})
    cruise = next(point for point in design.points if point.name == "cruise")
    assert design.measure("axial_force", of(design, "prop_rear"), cruise).number == 0.0
    assert design.measure("axial_force", of(design, "prop_thrust"), cruise).number == pytest.approx(
        abs(design.loads.net_thrust("prop", cruise).number)
    )


def test_reliability_of_all_bearings_is_below_that_of_the_worst(solve):
    design = solve({})
    drive = design.subjects.the("drive")
    lives = [
        design.measure("life_over_target", each).number
        for each in design.subjects.all("bearing")
        if design.measure("rolls_under_load", each).value
    ]
    worst = math.exp(-math.log(1 / 0.9) * (1 / min(lives)) ** 1.5)
    assert 0.9 < design.measure("bearing_reliability", drive).number < worst
    assert bearing.BALL_EXPONENT == 3


def test_life_without_a_survey_is_at_best_that_of_steady_loads(solve):
    design = solve({"engine.inertia": None})
    value = design.measure("basic_life", of(design, "input_front"))
    assert isinstance(value, Unknown)
    assert ("engine", "inertia") in value.missing
    shown = solve({}).measure("basic_life", of(solve({}), "input_front"))
    assert value.at_best.number >= shown.number


def test_modified_life_swings_with_the_torque(solve):
    soft, rough = solve({}), solve({"engine.cylinder_spread": "50 %"})
    lives = [
        each.measure("modified_life_over_target", of(each, "input_rear")) for each in (soft, rough)
    ]
    assert rough.survey.alternating.max() > 1.3 * soft.survey.alternating.max()
    assert lives[1].number < lives[0].number


def test_modified_life_without_a_survey_is_at_best_that_of_steady_loads(solve):
    known = solve({}).measure("modified_life_over_target", of(solve({}), "input_rear"))
    blind = solve({"engine.inertia": None})
    found = blind.measure("modified_life_over_target", of(blind, "input_rear"))
    assert isinstance(found, Unknown)
    assert found.at_best.number >= known.number


def test_a_missing_torque_of_one_case_leaves_the_bound_of_the_others(solve):
    """Without the kick-back the static safety is at best that of all other cases."""
    whole, blind = solve({}), solve({"engine.kick_back_torque": None})
    known = whole.measure("static_safety", of(whole, "input_rear"))
    found = blind.measure("static_safety", of(blind, "input_rear"))
    assert found.missing == (("engine", "kick_back_torque"),)
    assert found.at_best.number >= known.number


def test_a_bearing_that_turns_for_no_share_of_the_time_has_no_life(solve):
    """The hub of sorrel's clutch turns on its shaft in the descent alone."""
    descent = next(
        index for index, each in enumerate(solve({}, "sorrel").points) if each.name == "descent"
    )
    design = solve({f"operation.{descent}.share": "0 %"}, "sorrel")
    turning = [
        each
        for each in design.subjects.all("bearing")
        if isinstance(design.measure("basic_life", each), Unknown)
    ]
    assert turning
    for each in turning:
        for name in ("basic_life", "modified_life_over_target"):
            assert design.measure(name, each).because
