"""Thrust of shafts and the bearings that stop them."""

from math import atan, cos, degrees, pi, radians, tan
from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.known import Known, Unknown
from checker.measures.design import Design
from checker.spec.loading import load_spec
from checker.train.graph import build_train

REFERENCE = Path(__file__).parents[1] / "reference" / "gears.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(REFERENCE.read_text("utf-8"))["cases"]}
OPPOSITE = {"right": "left", "left": "right"}
BALL = {"kind": "deep groove ball", "locates": "both"}
ROLLER = {"kind": "cylindrical roller NU", "locates": "none"}
ANGULAR = {"kind": "angular contact ball", "locates": "towards propeller"}


def toothed(shaft, teeth, module, angle, hand):
    helix = "none" if angle is None else {"angle": f"{angle} deg", "hand": hand}
    return {
        "shaft": shaft,
        "teeth": teeth,
        "module": f"{module} mm",
        "pressure_angle": "20 deg",
        "helix": helix,
    }


def lay_drive(first=(20.0, "right"), second=(20.0, "right"), bearings=None, hub=False, torque=120):
    """Two steps through a lay shaft, at standard centres, with the lay torque in N m.

    The lay wheel has a reference radius of 80 mm, the lay pinion of 35 mm, as in the case
    compound-shaft-equal-helix; with ``hub`` the wheel turns freely on the lay shaft.
    """
    (angle_1, hand_1), (angle_2, hand_2) = first, second
    beta_1, beta_2 = radians(angle_1 or 0.0), radians(angle_2 or 0.0)
    module_1, module_2 = 160 * cos(beta_1) / 64, 70 * cos(beta_2) / 28
    gears = {
        "pinion": toothed("input", 32, module_1, angle_1, OPPOSITE[hand_1]),
        "lay_wheel": toothed("hub" if hub else "lay", 64, module_1, angle_1, hand_1),
        "lay_pinion": toothed("lay", 28, module_2, angle_2, hand_2),
        "prop_wheel": toothed("prop", 56, module_2, angle_2, OPPOSITE[hand_2]),
    }
    data = {
        "thrustline": 1,
        "drive": {"name": "Test", "installation": "tractor"},
        "engine": {"drives": "input", "rotation": "clockwise", "internal_reduction": "none"},
        "operation": [
            {
                "name": "full",
                "engine_speed": "3000 rpm",
                "power": f"{torque / 2 * 100 * pi} W",
                "thrust": "1000 N",
            }
        ],
        "shafts": {"input": {}, "lay": {}, "prop": {}},
        "gears": gears,
        "meshes": {
            "first": {"driver": "pinion", "driven": "lay_wheel", "centre_distance": "120 mm"},
            "second": {
                "driver": "lay_pinion",
                "driven": "prop_wheel",
                "centre_distance": "105 mm",
            },
        },
        "propeller": {"shaft": "prop"},
        "bearings": {name: {"shaft": "lay", **each} for name, each in (bearings or {}).items()},
    }
    if hub:
        data["shafts"]["hub"] = {"turns_freely_on": "lay"}
        data["clutch"] = {"kind": "sprag", "between": ["hub", "lay"]}
    spec = load_spec(yaml.safe_dump(data, sort_keys=False).encode(), "test.yaml").spec
    return Design(spec, build_train(spec))


def of_shaft(design, name, shaft="lay"):
    return design.measure(name, design.subjects.the("shaft", shaft), design.points[0])


def of_bearing(design, name, bearing):
    return design.measure(name, design.subjects.the("bearing", bearing), design.points[0])


@pytest.mark.parametrize("hub", [False, True])
def test_equal_helix_angles_of_one_hand_leave_a_thrust(hub):
    case = CASES["compound-shaft-equal-helix"]
    design = lay_drive(hub=hub)
    net = of_shaft(design, "net_thrust").number
    assert abs(net) == pytest.approx(case["expected"]["net_thrust_N"], rel=case["tolerance"])
    # T tan(beta) (1/r2 - 1/r1) over T tan(beta) (1/r2 + 1/r1), by hand.
    assert of_shaft(design, "residual_thrust_share").number == pytest.approx(45 / 115)
    assert of_shaft(design, "lay_shaft_hands").value == "same"
    assert of_shaft(design, "is_helical_lay_shaft").value is True
    # Each force acts at its radius: the couples are T tan(beta) twice, by hand.
    couples = of_shaft(design, "axial_couple").number
    assert couples == pytest.approx(2 * 120 * 0.36397, rel=1e-5)


def test_opposite_hands_add():
    design = lay_drive(second=(20.0, "left"))
    assert of_shaft(design, "lay_shaft_hands").value == "opposite"
    assert of_shaft(design, "residual_thrust_share").number == pytest.approx(1.0)


@given(
    hand=st.sampled_from(["right", "left"]),
    angle=st.floats(5.0, 25.0),
    torque=st.floats(10.0, 500.0),
)
@settings(max_examples=25, deadline=None)
def test_thrusts_cancel_where_tangent_over_radius_agrees(hand, angle, torque):
    second = degrees(atan(tan(radians(angle)) * 35 / 80))
    design = lay_drive((angle, hand), (second, hand), torque=torque)
    assert of_shaft(design, "net_thrust").number == pytest.approx(0.0, abs=1e-6 * torque)
    assert of_shaft(design, "axial_couple").number > 0.0


def test_the_propeller_shaft_adds_the_pull_of_a_tractor():
    design = lay_drive((None, "right"), (None, "right"))
    assert of_shaft(design, "net_thrust", "prop").number == pytest.approx(1000.0)
    assert of_shaft(design, "axial_load_occurs", "prop").value is True
    assert of_shaft(design, "axial_load_occurs", "lay").value is False
    assert of_shaft(design, "is_helical_lay_shaft").value is False


@pytest.mark.parametrize(
    ("bearings", "towards_propeller", "towards_engine"),
    [
        ({"a": ROLLER, "b": BALL}, 1, 1),
        ({"a": BALL, "b": BALL}, 2, 2),
        ({"a": ROLLER, "b": ROLLER}, 0, 0),
        # A claim beyond the kind does not count.
        ({"a": {**ROLLER, "locates": "both"}, "b": {**ANGULAR, "locates": "both"}}, 0, 0),
        ({"a": ANGULAR, "b": {**ANGULAR, "locates": "towards engine"}}, 1, 1),
        # A matched set counts once, whether each bearing is given its own way or both.
        (
            {
                name: {
                    **ANGULAR,
                    "locates": way,
                    "matched_set": "pair",
                    "set_arrangement": "back-to-back",
                }
                for name, way in (("a", "both"), ("b", "both"))
            },
            1,
            1,
        ),
        (
            {
                name: {
                    **ANGULAR,
                    "locates": way,
                    "matched_set": "pair",
                    "set_arrangement": "face-to-face",
                }
                for name, way in (("a", "towards engine"), ("b", "towards propeller"))
            },
            1,
            1,
        ),
        # A tandem set works one way.
        (
            {
                name: {**ANGULAR, "matched_set": "pair", "set_arrangement": "tandem"}
                for name in ("a", "b")
            },
            1,
            0,
        ),
    ],
)
def test_what_locates_a_shaft(bearings, towards_propeller, towards_engine):
    design = lay_drive(bearings=bearings)
    assert of_shaft(design, "locators_towards_propeller").value == towards_propeller
    assert of_shaft(design, "locators_towards_engine").value == towards_engine
    assert of_shaft(design, "located_ways").value == (towards_propeller > 0) + (towards_engine > 0)


def test_a_shaft_without_listed_bearings_is_not_shown():
    design = lay_drive(bearings={})
    for name in ("locators_towards_engine", "located_ways", "radial_bearings"):
        value = of_shaft(design, name)
        assert isinstance(value, Unknown)
        assert value.missing == (("bearings",),)


def test_members_that_turn_freely_need_bearings_as_well():
    design = lay_drive(hub=True)
    assert of_shaft(design, "needs_bearings", "hub").value is True
    assert of_shaft(design, "needs_bearings", "lay").value is True


def test_the_locating_bearing_gets_the_whole_thrust():
    """The net thrust of the case, 701.943 N, over the rating; 0 where the other way is stopped."""
    both = lay_drive(bearings={"a": ROLLER, "b": {**BALL, "axial_rating": "1403.886 N"}})
    assert of_bearing(both, "axial_share", "b").number == pytest.approx(0.5, rel=1e-5)
    assert of_bearing(both, "axial_share", "a").number == 0.0
    ways = [
        of_bearing(
            lay_drive(bearings={"b": {**BALL, "locates": way, "axial_rating": "1403.886 N"}}),
            "axial_share",
            "b",
        ).number
        for way in ("towards propeller", "towards engine")
    ]
    assert sorted(ways) == pytest.approx([0.0, 0.5], rel=1e-5)


def test_a_tandem_set_shares_the_thrust():
    way = "towards propeller"
    if of_shaft(lay_drive(), "net_thrust").number < 0:
        way = "towards engine"
    tandem = {
        "kind": "angular contact ball",
        "locates": way,
        "matched_set": "pair",
        "set_arrangement": "tandem",
        "axial_rating": "701.943 N",
    }
    design = lay_drive(bearings={"a": tandem, "b": tandem})
    assert of_bearing(design, "axial_share", "a").number == pytest.approx(0.5, rel=1e-5)
    assert of_bearing(design, "set_state", "a").value == "matched"


def test_a_deep_groove_bearing_without_axial_rating_is_taken_as_light():
    """0.25 of the static rating in light series (bearing maker's catalogue page, trade source)."""
    design = lay_drive(bearings={"b": {**BALL, "static_rating": "5615.544 N"}})
    share = of_bearing(design, "axial_share", "b")
    assert share.number == pytest.approx(0.5, rel=1e-5)
    assert any(isinstance(leaf.origin, str) for leaf in share.leaves())


@pytest.mark.parametrize("kind", ["cylindrical roller NUP", "spherical roller"])
def test_other_kinds_must_state_their_axial_rating(kind):
    design = lay_drive(bearings={"b": {"kind": kind, "locates": "both", "static_rating": "20 kN"}})
    share = of_bearing(design, "axial_share", "b")
    assert isinstance(share, Unknown)
    assert ("bearings", "b", "axial_rating") in share.missing


def test_one_way_bearings_need_one_that_holds_against_them():
    alone = lay_drive(bearings={"a": ANGULAR, "b": ROLLER})
    assert of_bearing(alone, "needs_partner", "a").value is True
    assert of_bearing(alone, "has_partner", "a").value is False
    opposed = lay_drive(bearings={"a": ANGULAR, "b": {**ANGULAR, "locates": "towards engine"}})
    assert of_bearing(opposed, "has_partner", "a").value is True


def test_speed_between_the_rings_of_a_hub_bearing():
    """The hub turns with the lay shaft while the clutch grips; by hand 1500 rpm on the lay."""
    sizes = {"bore": "40 mm", "outside": "80 mm", "speed_limit": "3000 rpm"}
    design = lay_drive(bearings={"on_lay": {**BALL, **sizes}}, hub=True)
    assert of_bearing(design, "speed_share", "on_lay").number == pytest.approx(0.5)
    # 25 revolutions per second on a mean diameter of 60 mm.
    assert of_bearing(design, "speed_parameter", "on_lay").number == pytest.approx(25 * 0.06)
    hub = lay_drive(bearings={"on_hub": {**BALL, **sizes, "shaft": "hub"}}, hub=True)
    assert isinstance(of_bearing(hub, "speed_share", "on_hub"), Known)
    assert of_bearing(hub, "speed_share", "on_hub").number == pytest.approx(0.0)


def test_rings_that_turn_together_have_no_speed_between_them(solve):
    """Marram: the clutch locks carrier and input in cruise; without the statement, full speed."""
    for changes, still in (({}, True), ({"bearings.carrier_front.runs_on": None}, False)):
        design = solve(changes)
        cruise = next(point for point in design.points if point.name == "cruise")
        bearing = design.subjects.the("bearing", "carrier_front")
        assert (design.measure("ring_speed", bearing, cruise).number == 0.0) is still
