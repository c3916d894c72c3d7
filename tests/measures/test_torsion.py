"""Torsional measures of an example: what is computed where nothing is stated, and what follows."""

import pytest

from checker.known import Known, Unknown

STIFFNESS = ("damper.dynamic_stiffness", "damper.hot_stiffness", "damper.cold_stiffness")


def stiff(value):
    return {field: f"{value} N m/rad" for field in STIFFNESS}


def ask(design, kind, name, point=None, part=""):
    subject = design.subjects.the(kind, part)
    return design.measure(name, subject, design.subjects.the("point", point) if point else None)


def test_mesh_and_clutch_stiffness_from_geometry(solve):
    # ISO 6336-1 method B (from memory) on the stated teeth; line contact of the stated rollers
    design = solve({"meshes.first.stiffness": None, "clutch.torsional_stiffness": None})
    mesh = ask(design, "mesh", "mesh_stiffness_used", part="first")
    assert 0.5 < mesh.number / 560e3 < 2.0
    model = design.survey.model
    spring = model.nodes[model.joint("clutch")].stiffness
    assert 5e3 < spring.number < 50e3
    assert {"meshes", "gears"} <= {leaf.path[0] for leaf in mesh.leaves() if leaf.path}


def test_a_clutch_lets_go_once_at_each_firing(solve):  # two cylinders, even: twice in two turns
    design = solve({**stiff(1200), "engine.cylinder_spread": "0 %"})
    assert ask(design, "clutch", "releases_per_cycle", "idle").value == 2
    low, _ = ask(design, "clutch", "chatter_range").value.split(" to ")
    assert low == "1800"
    assert ask(solve({}), "clutch", "chatter_range").value == "none"
    assert ask(solve({}), "clutch", "releases_per_cycle", "idle").value == 0


def test_locked_and_engaged_carry_the_same_until_it_would_let_go(solve):
    design = solve({})
    locked = ask(design, "clutch", "locked_idle_share")
    engaged = ask(design, "mesh", "least_torque_share", "idle", "first")
    assert locked.number == pytest.approx(engaged.number, abs=0.1)  # propeller law for 1.2 kW
    margin = ask(design, "clutch", "locked_run_through_margin")
    damper = ask(design, "damper", "run_through_margin")
    assert margin.number <= damper.number


def test_temperature_follows_the_heat(solve):  # by hand
    design = solve({**stiff(1600), "damper.heat_rating": "60 W"})
    heat = ask(design, "damper", "heat", "idle").number
    found = ask(design, "damper", "computed_temperature", "idle").number
    assert found == pytest.approx(288.15 + (393.15 - 313.15) * heat / 60.0)
    reserve = ask(design, "damper", "computed_reserve", "idle").number
    assert reserve == pytest.approx(393.15 - found)
    share = ask(design, "damper", "heat_share", "idle").number
    assert share == pytest.approx(heat / 60.0)
    unrated = solve({"damper.heat_rating_air": None})
    temperature = ask(unrated, "damper", "computed_temperature", "idle")
    assert any("30 degC" in str(leaf.origin) for leaf in temperature.leaves())


def test_alternating_torque_of_every_part(solve):
    design = solve({})
    for kind, name, part in (
        ("mesh", "alternating_torque", "first"),
        ("shaft", "alternating_shaft_torque", "prop"),
        ("clutch", "alternating_clutch_torque", ""),
        ("damper", "alternating_damper_torque", ""),
    ):
        assert ask(design, kind, name, "cruise", part).number > 0.0
    # The flange of the flywheel bears the firing of the bare engine; behind the damper it is calm.
    flywheel = ask(design, "shaft", "shaft_application_factor", "cruise", "flywheel").number
    clutch = ask(design, "clutch", "clutch_application_factor", "cruise").number
    assert flywheel > 1.3
    assert 1.0 < clutch < 1.1


def test_an_order_counts_by_its_torque(solve):
    design = solve({"clutch.torsional_stiffness": "11 kN m/rad"})
    apart = ask(design, "drive", "separation", "take-off")
    inside = {each.symbol: each.value for each in apart.inputs}
    assert inside["q"] == 0.1
    assert inside["nearest"].startswith("order 2 ")
    nearest = min(
        (each for each in design.points if not design.motion.overruns(each).value),
        key=lambda each: ask(design, "drive", "separation", each.name).number,
    )
    worst = ask(design, "drive", "separation", nearest.name)
    cleared = {each.symbol: each.value for each in worst.inputs}["cleared by"]
    assert "speed times" in cleared
    assert "speed times" in ask(design, "drive", "smallest_change").value
    assert ask(solve({}), "drive", "smallest_change").value == "none"


def test_frequencies_lie_between_hot_and_cold(solve):
    design = solve({})
    hot, running, cold = (
        ask(design, "drive", f"lowest_frequency{end}").number for end in ("_hot", "", "_cold")
    )
    assert hot < running < cold
    # The square of the frequency follows the stiffness while the damper twists alone.
    assert (cold / hot) ** 2 == pytest.approx(1.2 * 335 / (0.8 * 240), rel=0.02)
    assert "damper stiffness: +" in ask(design, "drive", "sensitivity").value


def test_marine_formula_stands_beside_for_comparison(solve):
    words = ask(solve(stiff(2400)), "drive", "barred_ranges").value
    assert "marine formula, from memory, for comparison only" in words


def test_a_point_without_power_is_not_shown(solve):
    design = solve({"operation.4.power": None})
    found = ask(design, "mesh", "application_factor", "cruise", "first")
    assert isinstance(found, Unknown)
    assert found.missing == (("operation", 4, "power"),)
    assert isinstance(ask(design, "mesh", "application_factor", "climb", "first"), Known)


def test_two_masses_check_the_model_by_hand(solve):  # DIN 740-2 (from memory)
    design = solve({})
    first = ask(design, "drive", "lowest_frequency").number
    by_hand = ask(design, "drive", "two_mass_frequency").number
    assert by_hand == pytest.approx(first, rel=0.02)
    # Order 1 alone in the damper: T_e J2/(J1 + J2) V
    survey = design.survey
    index, node = survey.points["cruise"], survey.model.joint("damper")
    inertia = [each.inertia.number for each in survey.model.nodes]
    behind = sum(inertia[each] for each in survey.model.behind(node)) / sum(inertia)
    speed, mean = survey.speed[[index]], survey.mean[[index]]
    torque = abs(survey.excitation.of_cylinders((0, 1), speed, mean))[0, 1]
    factor = ask(design, "damper", "resonance_factor", "cruise").number
    found = abs(survey.responses[survey.model.running].torque[0, node, index, 1])
    assert found == pytest.approx(torque * behind * factor, rel=0.1)


def test_a_rigid_propeller_reaches_as_far_as_its_blades_stand_still(solve):
    reach = ask(solve({}), "drive", "rigid_propeller_reach").number
    assert reach == pytest.approx(6 * 1.1 * 5800 / 60 / 112)  # order 6 at 110 % of 5800 rpm


def test_held_speeds_count_like_points(solve):
    held = solve({"engine.dwell_speeds": ["1700 rpm"]})
    assert ask(held, "drive", "dwell_separation").number < 0.2
    assert ask(held, "drive", "smallest_change").value != "none"
    assert ask(solve({}), "drive", "smallest_change").value == "none"
    beyond = ask(solve({"engine.dwell_speeds": ["9000 rpm"]}), "drive", "dwell_outside_barred")
    assert "9000 rpm lies outside the surveyed speeds" in beyond.because
    assert ask(solve({}), "drive", "dwell_outside_barred").value is True


def test_orders_that_cancel_at_the_flange_still_reach_the_crank(solve):
    uneven = {"engine.firing_intervals": ["270 deg", "450 deg"], "engine.cylinder_spread": "0 %"}
    design, top = solve(uneven), 1.1 * 5800 / 60
    # 6 x 270 deg is four and a half turns: of order 6 the flange feels nothing, each throw its own.
    propeller = ask(design, "drive", "rigid_propeller_reach").number
    assert propeller == pytest.approx(5.5 * top / 112)
    assert ask(design, "drive", "rigid_crank_reach").number == pytest.approx(6 * top / 700)
