"""The ways of the oil in every attitude; aeration and the vent as it runs."""

import pytest

from checker.known import Unknown


def at(design, name):
    return next(point for point in design.points if point.name == name)


def reached(design, kind, name, point):
    return design.measure("is_reached", design.subjects.the(kind, name), at(design, point))


@pytest.mark.parametrize("example", ["marram", "tansy", "sorrel"])
def test_every_part_is_reached_at_every_point(solve, example):
    design = solve({}, example)
    for kind in ("mesh", "bearing"):
        for part in design.subjects.all(kind):
            for point in design.points:
                assert design.measure("is_reached", part, point).value is True, (part, point)


def test_nose_down_uncovers_the_dipping_wheel(solve):
    """Tansy, lay wheel: tips 8.6 mm over the bottom; least level 14 mm; 41 mm behind the middle.

    At 15° nose down the oil there stands at 14 - 41 tan 15° = 3.0 mm: clear of the teeth.
    """
    design = solve({"operation.5.nose_up": "-15 deg"}, "tansy")
    wheel = design.subjects.the("gear", "lay_wheel")
    assert design.measure("lowest_dip", wheel, at(design, "descent")).value == 0.0
    assert reached(design, "mesh", "first", "descent").value is False
    # what lives on its splash goes dry with it, what is fed by the engine does not
    assert reached(design, "bearing", "input_front", "descent").value is False
    assert reached(design, "bearing", "prop_thrust", "descent").value is True
    assert reached(design, "mesh", "second", "descent").value is True


def test_dip_by_hand(solve):
    """Cruise, 1° nose up: 14 + 41 tan 1° - 8.615 = 6.1 mm at the lay wheel."""
    design = solve({}, "tansy")
    wheel = design.subjects.the("gear", "lay_wheel")
    found = design.measure("lowest_dip", wheel, at(design, "cruise"))
    assert found.number == pytest.approx(6.1e-3, abs=0.1e-3)


def test_a_chain_of_ways_is_followed(solve):
    """Marram: the bearing beside the clutch is fed from the clutch, and that from the pump."""
    design = solve({"operation.3.nose_up": "30 deg"})
    assert reached(design, "bearing", "carrier_front", "climb").value is False
    assert reached(design, "bearing", "carrier_front", "cruise").value is True


def test_a_circle_of_ways_feeds_nothing(solve):
    design = solve(
        {
            "lubrication.paths": [
                {"from": "clutch", "to": "carrier_front", "kind": "channel"},
                {"from": "carrier_front", "to": "clutch", "kind": "channel"},
            ]
        }
    )
    assert reached(design, "bearing", "carrier_front", "climb").value is False


@pytest.mark.parametrize("source", ["sump", "reservoir", "pump", "lay"])
def test_without_pump_nothing_but_a_dip_brings_oil(solve, source):
    way = {"from": source, "to": "prop_rear", "kind": "splash"}
    found = reached(solve({"lubrication.paths": [way]}, "tansy"), "bearing", "prop_rear", "cruise")
    assert isinstance(found, Unknown)
    assert ("lubrication", "paths", 0, "from") in found.missing


@pytest.mark.parametrize("source", ["engine", "engine gallery"])
def test_the_engine_feeds_only_where_the_oil_is_shared(solve, source):
    def fed(shared):
        way = {"from": source, "to": "prop_rear", "kind": "drip"}
        changes = {"lubrication.paths": [way], "lubrication.shared_with_engine": shared}
        return reached(solve(changes, "tansy"), "bearing", "prop_rear", "cruise")

    assert fed(True).value is True
    assert fed(False).value is False
    assert isinstance(fed(None), Unknown)


def test_a_way_of_no_flow_does_not_run(solve):
    design = solve({"lubrication.paths.0.flow": "0 L/min"})
    assert reached(design, "mesh", "first", "cruise").value is False
    assert design.measure("is_supplied", design.subjects.the("mesh", "first")).value is False


def test_an_attitude_that_is_not_stated_is_not_shown(solve):
    found = reached(solve({"operation.3.nose_up": None}), "mesh", "first", "climb")
    assert isinstance(found, Unknown)
    assert found.missing == (("operation", 3, "nose_up"),)


def test_jet_and_rise_by_hand(solve):
    """Marram, first: 0.5 L/min through 0.9 mm is 13.10 m/s; over 22.43 m/s at 6000 rpm, 0.584."""
    design = solve({})
    mesh = design.subjects.the("mesh", "first")
    assert design.measure("jet_speed_share", mesh).number == pytest.approx(0.584, abs=0.001)
    rise = design.measure("oil_rise", mesh, at(design, "take-off"))
    loss, density, capacity, flow = (each.number for each in rise.inputs)
    assert rise.number == pytest.approx(loss / (density * capacity * flow))
    assert flow == pytest.approx(0.5e-3 / 60.0 * 6000.0 / 5800.0)  # rated at 5800 rpm


def test_way_back(solve):
    def way(changes, example):
        design = solve(changes, example)
        return design.measure("way_back", design.subjects.the("lubrication")).value

    assert way({}, "marram") == "drained"
    assert way({"lubrication.paths.11.to": "sump"}, "marram") == "not drained"
    own = {"lubrication.shared_with_engine": False}
    assert way(own, "tansy") == "rests in the case"


def test_bubbles_that_a_tank_clears(solve):
    """Marram cruise: 160 mm, 4.3 L at 2 L/min rest 129 s; a fifth of a millimetre rises."""
    design = solve({})
    found = design.measure(
        "cleared_bubble", design.subjects.the("lubrication"), at(design, "cruise")
    )
    assert found.number == pytest.approx(0.21e-3, abs=0.02e-3)


def test_suction_swells_the_air_in_the_oil(solve):
    def room(pressure):
        design = solve({"operation.3.crankcase_pressure": pressure}, "sorrel")
        lubrication = design.subjects.the("lubrication")
        return design.measure("room_for_growth", lubrication, at(design, "climb")).number

    assert room("-8 kPa") < room("-3 kPa")


def test_pump_inlet_falls_with_height_and_suction(solve):
    def inlet(changes):
        design = solve(changes, "sorrel")
        return design.measure(
            "pump_inlet", design.subjects.the("lubrication"), at(design, "cruise")
        ).number

    assert inlet({"operation.4.altitude": "3000 m"}) < inlet({})
    assert inlet({"operation.4.crankcase_pressure": "-8 kPa"}) < inlet({})


def test_air_comes_into_the_drive_in_a_let_down_without_other_flow(solve):
    design = solve({"operation.5.case_air_flow": "0 L/min"}, "sorrel")
    vent = design.subjects.the("vent")
    assert design.measure("transferred", vent, at(design, "descent")).value == "into the drive"
    assert design.measure("transferred", vent, at(design, "climb")).value == "out of the drive"
