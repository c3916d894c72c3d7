"""What moves between drive, engine and air: signs, bounds and what stays not shown."""

import math

import pytest

from checker.known import Unknown
from checker.mechanics import air


def ask(design, kind, name, point, part=""):
    at = design.subjects.the("point", point)
    return design.measure(name, design.subjects.the(kind, part), at)


def test_outlet_takes_the_slipstream_by_its_facing(solve):
    """Tansy in cruise: by hand from airspeed, thrust and disc (momentum theory)."""
    pressures = {
        facing: ask(solve({"vent.outlet_faces": facing}, "tansy"), "vent", "end_pressure", "cruise")
        for facing in ("forward", "aft", "sheltered")
    }
    assert pressures["forward"].number == pytest.approx(-pressures["aft"].number)
    assert pressures["sheltered"].number == 0.0
    design = solve({}, "tansy")
    point = design.subjects.the("point", "cruise")
    diameter = design.subjects.the("propeller").given("diameter").number
    pressure = air.pressure(point.given("altitude").number)
    rho = air.density(pressure, point.given("air_temperature").number)
    thrust, airspeed = point.given("thrust").number, point.given("airspeed").number
    dynamic = rho * airspeed**2 / 2 + thrust / (math.pi * diameter**2 / 4)
    assert pressures["forward"].number == pytest.approx(dynamic)


def test_outlet_that_is_not_described_is_not_shown(solve):
    design = solve({"vent.outlet_faces": "unknown"}, "tansy")
    assert isinstance(ask(design, "vent", "end_pressure", "climb"), Unknown)
    assert isinstance(ask(design, "drive", "inside_pressure", "climb"), Unknown)


def test_siphon_runs_only_beyond_the_lift(solve):
    still = solve({}, "sorrel")
    assert ask(still, "vent", "siphoned", "cruise").number == 0.0
    wet = solve({"operation.4.crankcase_pressure": "-6 kPa"}, "sorrel")
    assert ask(wet, "vent", "lift_reserve", "cruise").number < 0.0
    assert ask(wet, "vent", "siphoned", "cruise").number > 0.0


def test_lifted_lip_leaks_inwards_under_suction(solve):
    changes = {"seals.input_seal.lip_faces": "inside", "seals.input_seal.leak_gap": "0.1 mm"}
    design = solve(changes, "sorrel")
    assert ask(design, "seal", "air_leak", "cruise", "input_seal").number < 0.0
    whole = solve({}, "sorrel")
    assert ask(whole, "seal", "air_leak", "cruise", "input_seal").number == 0.0
    silent = solve({"seals.input_seal.lip_faces": "inside"}, "sorrel")
    leak = ask(silent, "seal", "air_leak", "cruise", "input_seal")
    assert ("seals", "input_seal", "leak_gap") in leak.missing


def test_level_of_the_worst_attitude_counts_above_a_lower_statement(solve):
    design = solve({"lubrication.highest_level": "1 mm"})
    highest = design.measure("highest_oil", design.subjects.the("lubrication"))
    assert highest.number == pytest.approx(17.1e-3, abs=5e-5)  # wedge by hand, test_lubrication
    silent = solve({"housing.sump_from": "unknown"})
    bound = silent.measure("highest_oil", silent.subjects.the("lubrication"))
    assert isinstance(bound, Unknown)
    assert bound.at_best.number == pytest.approx(18e-3)


def test_what_is_not_stated_never_improves_the_hottest_oil(solve):
    whole, silent = solve({}), solve({"housing.surface": "unknown"})
    lubrication = silent.subjects.the("lubrication")
    bound = silent.measure("hottest_oil", lubrication)
    known = whole.measure("hottest_oil", whole.subjects.the("lubrication"))
    assert isinstance(bound, Unknown)
    assert bound.at_best.number <= known.number
