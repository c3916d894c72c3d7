"""Bearing reactions of whole shafts: by hand, and in balance in space."""

import datetime
import itertools
import math
import re
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from checker.known import Known, Unknown
from checker.measures.design import Design
from checker.spec.loading import load_spec
from checker.train.graph import build_train
from checker.train.load_cases import GYROSCOPIC

EXAMPLES = Path(__file__).parents[2] / "examples"


def design_from(name, *changes):
    text = (EXAMPLES / f"{name}.yaml").read_text(encoding="utf-8")
    for before, after in changes:
        assert before in text
        text = text.replace(before, after, 1)
    spec = load_spec(text.encode(), name).spec
    return Design(spec, build_train(spec))


@pytest.fixture(scope="module")
def marram():
    return design_from("marram")


@pytest.fixture(scope="module")
def sorrel():
    return design_from("sorrel")


def radial(design, bearing, case):
    return design.reactions.radial(design.subjects.the("bearing", bearing), case).number


def test_idler_by_hand(marram):
    """Tangential forces of both meshes add, radial ones cancel, axial ones make a couple."""
    case = marram.reactions.cases.points["take-off"]
    torque = 60e3 / (6000 * math.tau / 60)
    tangential = 2 * torque / (2 * 89.9e-3 * 27 / 68)
    # 20 deg normal, 18 deg helix; the working angles differ between the meshes by a hair
    axial = torque * math.tan(math.radians(18)) / (2.5e-3 * 27 / math.cos(math.radians(18)) / 2)
    radius = 2.5e-3 * 41 / math.cos(math.radians(18)) / 2
    span, to_front = 0.222 - 0.155, 0.222 - 0.188
    across = 2 * tangential * to_front / span
    along = 2 * axial * radius / span
    weight = 1.6 * 9.80665 * to_front / span
    expected = math.hypot(across, along + weight)
    assert radial(marram, "idler_rear", case) == pytest.approx(expected, rel=6e-3)


def test_gyroscopic_couple_goes_through_the_span(marram):
    """Yaw right against yaw left: the vertical reactions differ by 2 C / span."""
    cases = {case.name: case for case in marram.reactions.cases.gyroscopic}
    right = marram.reactions.carried("prop", cases["gyroscopic, yaw right, pitch up"])
    left = marram.reactions.carried("prop", cases["gyroscopic, yaw left, pitch up"])
    couple = 0.52 * 5800 * math.tau / 60 * 27 / 67 * 2.5
    difference = right.up.reactions[0] - left.up.reactions[0]
    assert abs(difference) == pytest.approx(2 * couple / (0.238 - 0.152))
    assert right.right.reactions == pytest.approx(left.right.reactions)


def test_gyroscopic_cases_come_in_both_senses(marram):
    rates = {(case.yaw_rate.number, case.pitch_rate.number) for case in _gyroscopic(marram)}
    assert rates == {(2.5, 1.0), (2.5, -1.0), (-2.5, 1.0), (-2.5, -1.0)}
    assert all(case.load_factor.number == 2.5 for case in _gyroscopic(marram))


def _gyroscopic(design):
    return [case for case in design.reactions.cases.limits if case.kind == GYROSCOPIC]


def test_two_blades_double_the_couple():
    three, two = design_from("marram"), design_from("marram", ("blades: 3", "blades: 2"))
    couples = [
        design.reactions.forces.gyroscopic_couples(_gyroscopic(design)[0])[0].number
        for design in (three, two)
    ]
    assert couples[1] == pytest.approx(2 * couples[0])


@pytest.mark.parametrize(
    ("name", "power", "rpm", "rated_rpm", "share"),
    [
        ("limit torque at take-off", 60e3, 6000, 6000, 0.75),
        # the climb at 5700 rpm asks for more torque than the rating of 51.5 kW at 5800 rpm
        ("limit torque at maximum continuous", 51e3, 5700, 5800, 1.0),
    ],
)  # CS 22.361(a)(1) and (2); (b)(4): a factor of 4 for two cylinders
def test_limit_torque_of_each_rating(marram, name, power, rpm, rated_rpm, share):
    limit = next(case for case in marram.reactions.cases.limits if case.name == name)
    mean = power / (rpm * math.tau / 60)
    assert limit.torque("input").number == pytest.approx(4 * mean)  # once, on the mean
    turning = rated_rpm * math.tau / 60 * 27 / 67
    assert limit.propeller_speed.number == pytest.approx(turning)
    assert limit.load_factor.number == pytest.approx(share * 3.8)
    forces = marram.reactions.forces.on_shaft("prop", limit)
    at_hub = [f for f in forces if f.up and f.station is marram.reactions.forces.blade_plane]
    assert sum(f.up.number for f in at_hub) == pytest.approx(-share * 3.8 * 9.8 * 9.80665)


def test_take_off_torque_goes_with_take_off_thrust():
    """More thrust in the climb than at take-off: only maximum continuous has it."""
    design = design_from("marram", ("thrust: 1180 N", "thrust: 1600 N"))
    take_off, continuous, *_ = design.reactions.cases.limits
    assert (take_off.thrust.most.number, continuous.thrust.most.number) == (1520.0, 1600.0)


def test_limit_cases_take_the_least_thrust_in_power_as_well(marram):
    """1520 N at take-off, 1180 N in the climb, 740 N in the cruise; no other point counts."""
    take_off, continuous, *_ = marram.reactions.cases.limits
    assert [each.number for each in take_off.thrust.bounds] == [1520.0]
    for case in (continuous, *_gyroscopic(marram)):
        assert [each.number for each in case.thrust.bounds] == [1520.0, 740.0]


def test_limit_cases_count_a_point_that_may_be_in_power():
    design = design_from("marram", ("    kind: taxi\n", ""))
    bounds = [
        [each.number for each in case.thrust.bounds] for case in design.reactions.cases.limits
    ]
    assert bounds[:2] == [[1520.0, 270.0], [1520.0, 270.0]]


def test_point_of_unknown_kind_counts_with_both_ratings():
    change = (
        "    engine_speed: 5700 rpm\n    power: 51 kW",
        "    engine_speed: 3000 rpm\n    power: 51 kW",
    )
    known = design_from("marram", change)
    unknown = design_from("marram", ("    kind: climb\n", ""), change)
    lugging = 4 * 51e3 / (3000 * math.tau / 60)
    torques = [
        [case.torque("input").number for case in design.reactions.cases.limits[:2]]
        for design in (known, unknown)
    ]
    assert torques[0] == pytest.approx([4 * 60e3 / (6000 * math.tau / 60), lugging])
    assert torques[1] == pytest.approx([lugging, lugging])


def test_limit_cases_without_a_take_off_rating_are_a_bound():
    """Not shown, and at best the case that is known."""
    design = design_from("marram", ("  take_off: {power: 60 kW, speed: 6000 rpm}\n", ""))
    names = [case.name for case in design.reactions.cases.least_limits]
    assert "least limit torque at maximum continuous" in names
    assert "least limit torque at take-off" not in names
    safety = design.measure("static_safety", design.subjects.the("bearing", "idler_rear"))
    assert isinstance(safety, Unknown)
    assert safety.at_best is not None
    assert ("engine", "take_off", "power") in safety.missing


def test_reverse_torque_pushes_the_shafts_the_other_way(marram):
    reverse = next(case for case in marram.reactions.cases.limits if "reverse" in case.name)
    assert reverse.torque("prop").number == pytest.approx(-95 * 67 / 27)
    forward = marram.reactions.cases.points["cruise"]
    net = marram.reactions.forces.net_axials
    assert net("input", forward)[0].number > 0 > net("input", reverse)[0].number


def test_net_thrust_is_that_of_the_loads(marram):
    for point in marram.points:
        case = marram.reactions.cases.points[point.name]
        for shaft in ("input", "idler", "prop"):
            (net,) = marram.reactions.forces.net_axials(shaft, case)
            assert net.number == pytest.approx(
                marram.loads.net_thrust(shaft, point).number, abs=1e-9
            )


def test_member_on_a_shaft_loads_it_through_its_bearings(sorrel):
    case = sorrel.reactions.cases.points["cruise"]
    hub = sorrel.reactions.carried("lay_wheel_hub", case)
    lay = sorrel.reactions.carried("lay", case)
    seats = {support.station.number for support in hub.supports}
    passed = [force for force in lay.forces if force.station.number in seats]
    assert sorted(force.right.number for force in passed) == pytest.approx(
        sorted(-each for each in hub.right.reactions)
    )


def test_matched_set_is_one_support(sorrel):
    supports = sorrel.reactions.supports("prop")
    assert [len(support.members) for support in supports] == [1, 2]
    assert supports[1].station.number == pytest.approx((0.266 + 0.288) / 2)


@pytest.mark.parametrize("order", [(232, 272, 312), (312, 272, 232), (272, 312, 232)])
def test_middle_of_three_does_not_depend_on_their_order(order):
    rear, front, more = order
    design = design_from(
        "sorrel",
        ("    station: 266 mm\n", f"    station: {rear} mm\n"),
        ("    station: 288 mm\n", f"    station: {front} mm\n"),
        (
            "  prop_thrust:\n",
            "  prop_third:\n    shaft: prop\n    kind: angular contact ball\n"
            f"    station: {more} mm\n    matched_set: propeller pair\n  prop_thrust:\n",
        ),
    )
    sets = [each for each in design.reactions.supports("prop") if len(each.members) == 3]
    assert [each.station.number for each in sets] == pytest.approx([0.272])


STATED_SWING = "  blade_thrust_variation: 0.35\n"
YAWED = "  blade_chord: 110 mm\n  yawed_flow: {angle: 14 deg, airspeed: 32 m/s}\n"


def yawed_couple(thrust, rpm, airspeed, angle, density=1.225, blades=3):
    """v (F/ω + ρ a N c w D²/32) of the propeller of marram, twice that for two blades."""
    speed = rpm * math.tau / 60 * 27 / 67
    through = airspeed / 2 + math.sqrt(
        airspeed**2 / 4 + max(thrust, 0) / (2 * density * math.pi * 1.75**2 / 4)
    )
    chord = density * math.tau * blades * 0.110 * through * 1.75**2 / 32
    size = airspeed * math.sin(math.radians(angle)) * (abs(thrust) / speed + chord)
    return size if blades > 2 else 2 * size


def askew(design, case):
    return design.reactions.forces.yawed_flow(case).number


def test_missing_field_is_named():
    """Neither the swing of the thrust of a blade nor the yawed flow."""
    design = design_from("marram", (STATED_SWING, ""))
    case = design.reactions.cases.points["cruise"]
    value = design.reactions.radial(design.subjects.the("bearing", "prop_thrust"), case)
    assert isinstance(value, Unknown)
    assert value.missing == (("propeller", "blade_thrust_variation"), ("propeller", "yawed_flow"))


@pytest.mark.parametrize(
    ("lacking", "field"),
    [
        ("  blade_chord: 110 mm\n", ("propeller", "blade_chord")),
        ("angle: 14 deg, ", ("propeller", "yawed_flow", "angle")),
        (", airspeed: 32 m/s", ("propeller", "yawed_flow", "airspeed")),
    ],
)
def test_what_yawed_flow_lacks_is_named(lacking, field):
    design = design_from("marram", (STATED_SWING, YAWED.replace(lacking, "")))
    couple = design.reactions.forces.yawed_flow(design.reactions.cases.limits[0])
    assert isinstance(couple, Unknown)
    assert couple.missing == (field,)


def test_yawed_flow_gives_the_moment_that_a_stated_swing_gives():
    """In every case that of the worst flow; at a point that states its own, that of the point."""
    own = ("    airspeed: 82 kt\n", "    airspeed: 82 kt\n    inflow_angle: 3 deg\n")
    design = design_from("marram", (STATED_SWING, YAWED), own)
    cases = design.reactions.cases
    limit = next(case for case in cases.limits if case.name == "limit torque at take-off")
    assert askew(design, limit) == pytest.approx(yawed_couple(1520, 6000, 32, 14), rel=1e-4)
    climb = yawed_couple(1180, 5700, 32, 14)
    assert askew(design, cases.points["climb"]) == pytest.approx(climb, rel=1e-4)
    # 90971 Pa at 900 m in the table of the standard atmosphere, in air of 15 degC
    density = 90971 / (287.053 * 288.15)
    cruise = yawed_couple(740, 5300, 82 * 1852 / 3600, 3, density)
    assert askew(design, cases.points["cruise"]) == pytest.approx(cruise, rel=1e-3)


def test_yawed_flow_adds_to_every_bearing_of_the_propeller_shaft(marram):
    """0.35 · 1180 N · 0.7 · 1.75 m / 4 through the span, in the plane in which it is worst."""
    straight = design_from("marram", (STATED_SWING, "  blade_thrust_variation: 0\n"))
    share = 0.35 * 1180 * 0.7 * 1.75 / 4 / (0.238 - 0.152)
    for bearing in ("prop_rear", "prop_thrust"):
        loads = [
            radial(each, bearing, each.reactions.cases.points["climb"])
            for each in (marram, straight)
        ]
        assert loads[0] - loads[1] == pytest.approx(share)


def test_yawed_flow_is_the_worst_of_all_planes(marram):
    """Turned about the shaft by hand in steps of a degree, at the hub side of the front bearing."""
    straight = design_from("marram", (STATED_SWING, "  blade_thrust_variation: 0\n"))
    case = straight.reactions.cases.points["climb"]
    carried = straight.reactions.carried("prop", case)
    station = Known(0.238, "m", "x")
    right, up = (bent.moment(0.238, before=False) for bent in (carried.right, carried.up))
    couple = 0.35 * 1180 * 0.7 * 1.75 / 4
    turned_about = max(
        math.hypot(
            right + couple * math.cos(math.radians(angle)),
            up + couple * math.sin(math.radians(angle)),
        )
        for angle in range(360)
    )
    found = marram.reactions.moment("prop", marram.reactions.cases.points["climb"], station)
    assert found.number == pytest.approx(turned_about, rel=2e-4)


@pytest.mark.parametrize("name", ["tansy", "sorrel", "marram"])
def test_yawed_flow_relieves_nothing(name):
    """In no state of load, on no bearing, at no station, in no bolt."""
    text = (EXAMPLES / f"{name}.yaml").read_text(encoding="utf-8")
    stated = next(line for line in text.splitlines(True) if "blade_thrust_variation" in line)
    swings = [f"  blade_thrust_variation: {swing}\n" for swing in (0, 0.2, 0.6)]
    designs = [design_from(name, (stated, swing)) for swing in swings]
    for less, more in itertools.pairwise(designs):
        states = [
            {case.name: case for case in (*cases.points.values(), *cases.limits)}
            for cases in (less.reactions.cases, more.reactions.cases)
        ]
        for name_of_case, case in states[0].items():
            for bearing in less.subjects.all("bearing"):
                before = radial(less, bearing.name, case)
                assert radial(more, bearing.name, states[1][name_of_case]) >= before - 1e-9
        for part, kind in (("static_safety", "bearing"), ("yield_safety", "shaft")):
            for subject in less.subjects.all(kind):
                before, after = less.measure(part, subject), more.measure(part, subject)
                if isinstance(before, Known):
                    assert after.number <= before.number + 1e-9
        for measure in ("mounting_opening_safety", "mounting_slip_safety"):
            housing = less.subjects.the("housing")
            before, after = less.measure(measure, housing), more.measure(measure, housing)
            if isinstance(before, Known):
                assert after.number < before.number


def test_yawed_flow_and_unbalance_pass_on_to_a_shaft_under_the_propeller_shaft():
    """The bearings of the propeller shaft stand on the idler shaft: the same resultant."""
    on_idler = [
        (f"  {name}:\n    shaft: prop\n", f"  {name}:\n    shaft: prop\n    runs_on: idler\n")
        for name in ("prop_rear", "prop_thrust")
    ]
    design = design_from("marram", *on_idler)
    case = design.reactions.cases.points["climb"]
    own, under = (design.reactions.carried(shaft, case) for shaft in ("prop", "idler"))
    for plane in ("yawed", "turning"):
        on_idler, on_case = (getattr(each, plane).reactions for each in (own, under))
        assert max(on_idler) > 0.0
        assert sum(on_case) == pytest.approx(sum(on_idler), abs=1e-9)
        moments = [
            sum(x.station.number * force for x, force in zip(each.supports, forces, strict=True))
            for each, forces in ((own, on_idler), (under, on_case))
        ]
        assert moments[0] == pytest.approx(moments[1], abs=1e-9)


@pytest.mark.parametrize("measure", ["fatigue_safety", "gyroscopic_fatigue_safety"])
def test_yawed_flow_reaches_fatigue(measure):
    safety = [
        each.measure(measure, each.subjects.the("shaft", "prop")).number
        for angle in (0, 14)
        for each in [design_from("marram", (STATED_SWING, YAWED.replace("14 deg", f"{angle} deg")))]
    ]
    assert safety[1] < safety[0]


def test_yawed_flow_bends_mesh_and_bearings_away(marram):
    straight = design_from("marram", (STATED_SWING, "  blade_thrust_variation: 0\n"))
    point = marram.subjects.the("point", "climb")
    asked = [("mesh", "second", "bending_slope"), ("mesh", "second", "shaft_slope")]
    asked.append(("bearing", "prop_thrust", "bearing_slope"))
    for kind, name, measure in asked:
        slopes = [
            each.measure(measure, each.subjects.the(kind, name), point).number
            for each in (marram, straight)
        ]
        assert slopes[0] > slopes[1] > 0.0


def test_yawed_flow_keeps_no_bearing_rolling(marram):
    """Straight flight loads a bearing least, so a stated swing shows nothing there."""
    straight = design_from("marram", (STATED_SWING, "  blade_thrust_variation: 0\n"))
    point = marram.subjects.the("point", "cruise")
    margins = [
        each.measure("least_load_margin", each.subjects.the("bearing", "prop_rear"), point).number
        for each in (marram, straight)
    ]
    assert margins[0] == margins[1]


def test_two_blades_in_yawed_flow_pulse():
    design = design_from("marram", (STATED_SWING, YAWED), ("blades: 3", "blades: 2"))
    climb = yawed_couple(1180, 5700, 32, 14, blades=2)
    assert askew(design, design.reactions.cases.points["climb"]) == pytest.approx(climb, rel=1e-4)


def test_stated_swing_held_against_yawed_flow():
    """0.35 · 1520 N · 0.7 · 1.75 m / 4 over the moment of blade elements, at 5800 rpm."""
    design = design_from("marram", (STATED_SWING, STATED_SWING + YAWED))
    found = design.measure("swing_over_yawed_flow", design.subjects.the("propeller")).number
    stated = 0.35 * 1520 * 0.7 * 1.75 / 4
    assert found == pytest.approx(stated / yawed_couple(1520, 5800, 32, 14), rel=1e-4)


def test_stated_swing_of_the_blades_goes_before_yawed_flow(marram):
    design = design_from("marram", (STATED_SWING, STATED_SWING + YAWED))
    for before, after in zip(
        marram.reactions.cases.limits, design.reactions.cases.limits, strict=True
    ):
        assert askew(design, after) == askew(marram, before)


def test_thrust_that_is_not_stated_lies_between_none_and_the_ideal():
    design = design_from("marram", ("    thrust: 740 N\n", ""))
    cases = design.reactions.cases
    ideal = cases.ideal_thrust(design.subjects.the("point", "cruise")).number
    assert ideal > 740
    assert [each.number for each in cases.points["cruise"].thrust.bounds] == [ideal, 0.0]
    continuous = next(case for case in cases.limits if "maximum continuous" in case.name)
    assert [each.number for each in continuous.thrust.bounds] == [1520.0, 0.0]


@pytest.mark.parametrize(
    "lacking", ["    driving: engine\n", "    airspeed: 82 kt\n", "    air_temperature: 15 degC\n"]
)
def test_thrust_without_bounds_is_asked_for(lacking):
    text = (EXAMPLES / "marram.yaml").read_text(encoding="utf-8")
    cruise = text[text.index("  - name: cruise") : text.index("  - name: descent")]
    less = cruise.replace("    thrust: 740 N\n", "").replace(lacking, "")
    assert len(less) < len(cruise) - len("    thrust: 740 N\n")
    design = design_from("marram", (cruise, less))
    thrust = design.reactions.cases.points["cruise"].thrust
    assert [each.missing[0][-1] for each in thrust.bounds] == ["thrust"]


def test_worse_bound_of_the_thrust_counts_for_each_bearing():
    """The propeller wheel pulls against the propeller, so any thrust relieves the bearings.

    At 62 kW and 4800 rpm the tooth force on the wheel of 36 teeth of 3 mm at 15 deg, by hand.
    """
    design = design_from("sorrel", ("    thrust: 990 N\n", ""))
    cruise = design.subjects.the("point", "cruise")
    torque = 62e3 / (4800 * math.tau / 60) * 37 / 24 * 36 / 23
    gear = torque * math.tan(math.radians(15)) / (3e-3 * 36 / math.cos(math.radians(15)) / 2)
    ideal = design.reactions.cases.ideal_thrust(cruise).number
    nets = design.reactions.forces.net_axials("prop", design.reactions.cases.points["cruise"])
    assert [each.number for each in nets] == pytest.approx([ideal - gear, -gear], rel=6e-3)
    carried = [
        design.measure("axial_force", design.subjects.the("bearing", name), cruise).number
        for name in ("prop_thrust", "prop_thrust_front")
    ]
    assert carried == pytest.approx([gear, gear], rel=6e-3)
    assert gear > abs(ideal - gear)


@pytest.mark.parametrize("name", ["tansy", "sorrel", "marram"])
def test_missing_thrust_improves_nothing(name):
    """Against any thrust between none and the ideal, stated where the engine drives."""
    text = (EXAMPLES / f"{name}.yaml").read_text(encoding="utf-8")
    stated = re.findall(r"    thrust: \d[^\n]*\n", text)
    missing = design_from(name, *((line, "") for line in stated))
    points = [point for point in missing.points if point.raw("driving") == "engine"]
    assert len(stated) == len(points)
    ideal = [missing.reactions.cases.ideal_thrust(point).number for point in points]
    asked = [
        (measure, subject)
        for kind, measures in (
            ("bearing", ("static_safety", "basic_life", "least_load_margin")),
            ("shaft", ("fatigue_safety", "gyroscopic_fatigue_safety", "yield_safety")),
            ("housing", ("mounting_slip_safety", "mounting_opening_safety")),
        )
        for subject in missing.subjects.all(kind)
        for measure in measures
    ]
    for share in (0.0, 0.3, 0.7, 1.0):
        lines = [f"    thrust: {share * each} N\n" for each in ideal]
        design = design_from(name, *zip(stated, lines, strict=True))
        for measure, subject in asked:
            varies = design.measure_named(measure, subject).varies
            for point in points if varies else (None,):
                with_it = design.measure(measure, subject, point)
                without = missing.measure(measure, subject, point)
                if isinstance(without, Known):
                    assert without.number <= with_it.number * (1 + 1e-9), (measure, subject.label)


@pytest.mark.parametrize(("air", "kelvin"), [("15 degC", 288.15), ("-20 degC", 253.15)])
def test_ideal_thrust_is_that_of_the_stated_air(air, kelvin):
    """95 kW, 18 m/s and 1.9 m at sea level: w² (w − V) = P / (2 ρ A), T = P / w."""
    changes = [("power: 60 kW\n    driving", "power: 95 kW\n    driving")]
    changes += [("airspeed: 36 kt", "airspeed: 18 m/s"), ("diameter: 1.75 m", "diameter: 1.9 m")]
    design = design_from(
        "marram",
        *changes,
        ("nose_up: 8 deg\n    air_temperature: 30 degC", f"air_temperature: {air}"),
    )
    point = design.subjects.the("point", "take-off")
    mass_flow = 101325 / (287.053 * kelvin) * math.pi * 1.9**2 / 4
    through = brentq(lambda w: 2 * mass_flow * w**2 * (w - 18) - 95e3, 18, 60)
    found = design.reactions.cases.ideal_thrust(point).number
    assert found == pytest.approx(95e3 / through, rel=1e-5)
    assert found == pytest.approx({288.15: 3001, 253.15: 3092}[kelvin], abs=1)


def test_third_bearing_shares_the_load():
    extra = """  prop_middle:
    shaft: prop
    kind: cylindrical roller NU
    station: 212 mm
    locates: none
  prop_thrust:
"""
    design = design_from("marram", ("  prop_thrust:\n", extra))
    case = design.reactions.cases.points["take-off"]
    carried = design.reactions.carried("prop", case)
    assert len(carried.supports) == 3
    for bent, loads in ((carried.right, "right"), (carried.up, "up")):
        applied = sum(getattr(f, loads).number for f in carried.forces if getattr(f, loads))
        assert sum(bent.reactions) == pytest.approx(-applied, abs=1e-9 * 1e4)


def test_diagram_starts_and_ends_without_moment(marram):
    rows = marram.reactions.diagram("prop", marram.reactions.cases.points["climb"])
    assert rows[0][1] == pytest.approx(0.0, abs=1e-6)
    assert max(moment for _, moment, _ in rows) > 1.0
    torque = 51e3 / (5700 * math.tau / 60) * 67 / 27
    assert {round(each) for *_, each in rows} == {0, round(torque)}


def turned(shaft, case, design):
    """Σ forces and Σ moments about the origin of everything on a shaft, reactions included."""
    carried = design.reactions.carried(shaft, case)
    sums = [0.0, 0.0, 0.0, 0.0]
    scale = 1.0
    for force in carried.forces:
        x = force.station.number
        right, up = (each.number if each else 0.0 for each in (force.right, force.up))
        couple_right = force.couple_right.number if force.couple_right else 0.0
        couple_up = force.couple_up.number if force.couple_up else 0.0
        for index, part in enumerate((right, up, x * right + couple_right, x * up + couple_up)):
            sums[index] += part
            scale = max(scale, abs(part))
    for index, support in enumerate(carried.supports):
        x = support.station.number
        right, up = carried.right.reactions[index], carried.up.reactions[index]
        for place, part in enumerate((right, up, x * right, x * up)):
            sums[place] += part
            scale = max(scale, abs(part))
    return sums, scale


@given(
    st.integers(60, 140),
    st.integers(180, 200),
    st.integers(226, 260),
    st.integers(0, 90),
    st.sampled_from(["take-off", "descent", "cruise"]),
)
@settings(max_examples=12, deadline=None)
def test_shafts_are_always_in_balance(rear, gear, front, aside, point):
    design = design_from(
        "marram",
        ("    station: 152 mm\n", f"    station: {rear} mm\n"),
        (
            "    shaft: prop\n    teeth: 67",
            f"    shaft: prop\n    station: {gear} mm\n    teeth: 67",
        ),
        ("    station: 238 mm\n", f"    station: {front} mm\n"),
        ("up: 232.00 mm", f"up: {100 + aside} mm"),
        ("    station: 188 mm\n    profile_shift: 0.0\n", "    profile_shift: 0.0\n"),
    )
    for case in (design.reactions.cases.points[point], *design.reactions.cases.limits):
        for shaft in ("input", "idler", "prop"):
            sums, scale = turned(shaft, case, design)
            assert all(abs(each) <= 1e-9 * scale for each in sums)


def test_bearings_that_run_on_a_shaft_load_it_however_that_is_stated():
    """By each bearing or for the whole member: the same speed, the same load on what is under."""
    import copy

    import yaml

    from checker.review.review import review_spec
    from checker.review.rulebook import shipped_rulebook

    source = (Path(__file__).parents[2] / "examples" / "sorrel.yaml").read_text()
    for_member = yaml.safe_load(source)
    by_bearing = copy.deepcopy(for_member)
    for name in ("hub_rear", "hub_front"):
        by_bearing["bearings"][name]["runs_on"] = "lay"
    del by_bearing["shafts"]["lay_wheel_hub"]["turns_freely_on"]
    found = []
    for data in (for_member, by_bearing):
        text = yaml.safe_dump(data, sort_keys=False, allow_unicode=True).encode()
        review = review_spec(text, "sorrel", shipped_rulebook(), datetime.date(2026, 6, 1))
        design = review.designs[None]
        case = design.reactions.cases.points["cruise"]
        under = design.subjects.the("bearing", "lay_rear")
        found.append(design.reactions.radial(under, case).number)
    assert found[0] == pytest.approx(found[1], rel=1e-12)
    assert found[0] > 0.0
