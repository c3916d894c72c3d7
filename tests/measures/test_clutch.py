"""Clutch and damper: capacity and contact at the peak, overrunning, place in the train."""

import math
from pathlib import Path

import pytest
import yaml

from checker.known import Known, Unknown
from checker.review.rulebook import shipped_rulebook

_REFERENCE = Path(__file__).parents[1] / "reference" / "loads.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}
RPM = math.tau / 60
# 60 kW at 6000 rpm times 4 for two cylinders in four-stroke, CS-VLA 361(b)(1).
FLOOR = 4 * 60e3 / (6000 * RPM)


def ask(design, name, point=None):
    clutch = design.subjects.the("clutch")
    return design.measure(name, clutch, design.subjects.the("point", point) if point else None)


def test_capacity_is_set_against_the_floor_where_it_is_the_larger(solve):  # by hand
    assert ask(solve({}), "capacity_margin").number == pytest.approx(640 / (1.5 * FLOOR))


def test_capacity_without_a_survey_is_never_shown(solve):  # by hand
    margin = ask(solve({"propeller.inertia": "unknown"}), "capacity_margin")
    assert isinstance(margin, Unknown)
    assert margin.at_best.number == pytest.approx(640 / (1.5 * FLOOR))
    assert ("propeller", "inertia") in margin.missing


def geometric_torque(pressure):
    """By hand from the handbook form p = 0.418 sqrt(F E / (L R)) of steel on steel."""
    radius = 4.5e-3 * 26e-3 / (4.5e-3 + 26e-3)
    force = (pressure / 0.418) ** 2 * 18e-3 * radius / 206e9
    return 14 * 0.026 * math.tan(math.radians(3)) * force


BY_GEOMETRY = {"clutch.rated_torque": "unknown", "clutch.rating_is": "by geometry"}


def test_capacity_by_geometry(solve):
    margin = ask(solve(BY_GEOMETRY), "capacity_margin")
    assert margin.number == pytest.approx(geometric_torque(4200e6) / (1.5 * FLOOR), rel=2e-3)
    origins = [node.origin for node in margin.chain()]
    assert "by the geometry of its elements, as no rated_torque is stated" in origins


def test_geometry_bears_no_more_than_its_maker_allows(solve):
    margin = ask(
        solve({**BY_GEOMETRY, "clutch.contact_pressure_limit": "3800 MPa"}), "capacity_margin"
    )
    assert margin.number == pytest.approx(geometric_torque(3800e6) / (1.5 * FLOOR), rel=2e-3)


def test_capacity_by_geometry_asks_for_what_is_left_out_of_it(solve):
    margin = ask(solve({**BY_GEOMETRY, "clutch.elements": "unknown"}), "capacity_margin")
    assert isinstance(margin, Unknown)
    assert margin.missing == (("clutch", "elements"),)


def test_a_rating_left_out_is_worth_the_geometry_at_best(solve):
    margin = ask(solve({"clutch.rated_torque": "unknown"}), "capacity_margin")
    assert isinstance(margin, Unknown)
    assert margin.missing == (("clutch", "rated_torque"),)
    best = geometric_torque(4200e6) / (1.5 * FLOOR)
    assert margin.at_best.number == pytest.approx(best, rel=2e-3)
    unsurveyed = {"clutch.rated_torque": "unknown", "propeller.inertia": "unknown"}
    margin = ask(solve(unsurveyed), "capacity_margin")
    assert {("clutch", "rated_torque"), ("propeller", "inertia")} <= set(margin.missing)
    assert margin.at_best.number == pytest.approx(best, rel=2e-3)


@pytest.mark.parametrize(("clutches", "usable"), [(1, 1.0), (2, 0.9), (3, 0.8)])
# CL-09 sprag-clutch maker's engineering page
def test_clutches_side_by_side_share_unevenly(solve, clutches, usable):
    single = solve({})
    several = solve({"clutch.rows": clutches})
    capacity = [ask(each, "capacity_margin").number for each in (single, several)]
    assert capacity[1] / capacity[0] == pytest.approx(usable)
    # The most loaded of n carries 1/(n k) of the torque, and the pressure grows as its root.
    pressure = [ask(each, "contact_pressure").number for each in (single, several)]
    assert pressure[1] / pressure[0] == pytest.approx(math.sqrt(1 / (clutches * usable)))


def test_four_clutches_side_by_side_have_no_usable_fraction(solve):
    margin = ask(solve({"clutch.rows": 4}), "capacity_margin")
    assert isinstance(margin, Unknown)
    assert "side by side" in margin.because


def test_contact_pressure_after_the_handbook_form(solve):
    # p_max = 0.418 sqrt(F E / (L R)) for steel on steel, handbook form of the line contact.
    force = FLOOR / (14 * 0.026 * math.tan(math.radians(3)))
    radius = 4.5e-3 * 26e-3 / (4.5e-3 + 26e-3)
    by_hand = 0.418 * math.sqrt(force * 206e9 / (18e-3 * radius))
    pressure = ask(solve({}), "contact_pressure")
    assert pressure.number == pytest.approx(by_hand, rel=1e-3)


def test_overrun_is_that_of_the_stopped_engine(solve):  # as CL-11: propeller speed times the ratio
    design = solve({"clutch.overrun_speed_limit": "7200 rpm"})
    overrun = 1450 * 67 / 27
    assert ask(design, "overrun_speed_margin", "descent").number == pytest.approx(7200 / overrun)
    sliding = ask(design, "race_sliding_speed", "descent")
    assert sliding.number == pytest.approx(0.035 * overrun * RPM)
    assert ask(design, "overrun_points").value == 1


@pytest.mark.parametrize(
    ("changes", "damped"),
    [
        ({}, True),
        (
            {"damper.between": ["carrier", "input"], "clutch.between": ["flywheel", "carrier"]},
            False,
        ),
        (
            {
                "damper.between": ["carrier", "input"],
                "clutch.between": ["flywheel", "carrier"],
                "engine.output_damped": True,
                "engine.output_damped_evidence": "Torque meter survey, sheet 7",
            },
            True,
        ),
    ],
)
def test_only_what_is_ahead_of_the_clutch_damps(solve, changes, damped):
    assert ask(solve(changes), "damped").value is damped


def test_an_unstated_damping_is_asked_for(solve):
    changes = {
        "damper": "unknown",
        "engine.output_damped": "unknown",
        "joints.rigid": {"shaft": "flywheel", "to": "carrier"},
    }
    missing = ask(solve(changes), "damped").missing
    assert set(missing) == {("damper",), ("engine", "output_damped")}


def test_a_damped_engine_is_believed_with_evidence_alone(solve):
    behind = {"damper.between": ["carrier", "input"], "clutch.between": ["flywheel", "carrier"]}
    found = ask(solve({**behind, "engine.output_damped": True}), "damped")
    assert found.missing == (("engine", "output_damped_evidence"),)
    # Evidence alone says nothing.
    evidence = {"engine.output_damped_evidence": "Torque meter survey, sheet 7"}
    assert ask(solve({**behind, **evidence}), "damped").value is False


def test_torque_at_the_clutch_behind_the_first_gear(solve):  # tooth counts of sorrel
    design = solve({}, "sorrel")
    meshes = [design.pairs[link.name] for link in design.train.power_path if link.kind == "mesh"]
    first = meshes[0].driven.teeth.number / meshes[0].driver.teeth.number
    assert ask(design, "torque_over_engine").number == pytest.approx(first)


def test_damper_carries_mean_and_peak_at_its_own_shaft(solve):  # by hand
    design = solve({})
    damper = design.subjects.the("damper")
    rated = design.measure("rated_torque_margin", damper)
    assert isinstance(rated, Known)
    assert rated.number == pytest.approx(200 / (FLOOR / 4))
    assert design.measure("peak_torque_margin", damper).number == pytest.approx(620 / FLOOR)


def test_limits_are_those_of_the_sources():  # CL-03, CL-04, CL-13 and PR-08
    def limit(rule, level):
        return shipped_rulebook().rule(rule).limits[level].values[0]

    pressure = CASES["CL-03"]["expected"]
    assert limit("clutch.contact-pressure", "warning") == pressure["maximum_MPa"] * 1e6
    assert limit("clutch.contact-pressure-nominal", "caution") == pressure["nominal_MPa"] * 1e6
    race = CASES["CL-04"]["expected"]
    assert limit("clutch.race-hardness", "caution") == race["race_hardness_HRC"][0]
    assert limit("clutch.race-case-depth", "caution") == pytest.approx(
        race["min_effective_case_depth_mm"] * 1e-3
    )
    assert limit("clutch.race-roughness", "advisory") == pytest.approx(race["max_Rz_um"] * 1e-6)
    # Usual friction of 0.08 at the usual angle under full load leaves the reserve asked for.
    usual = 0.08 / math.tan(math.radians(CASES["CL-13"]["expected"]["typical_at_full_load_deg"]))
    assert limit("clutch.grip", "caution") == pytest.approx(usual, rel=0.01)
    tips = CASES["PR-08"]["expected"]
    assert limit("propeller.tip-mach", "caution") == tips["metal_upper_guidance"]
    assert limit("propeller.tip-mach", "advisory") == tips["wood_or_thick_section_upper_guidance"]
