"""Fatigue, yield and stiffness of shafts, case bolts and clutch duty as measures."""

import itertools
import math

import pytest

from checker.known import Known, Unknown
from checker.measures.misalignment import flank_misalignment
from checker.mechanics import notch
from checker.mechanics import shaft_strength as strength
from checker.train.motion import Motion
from checker.train.peak import RATINGS

STIFF_COUPLING = {"damper.dynamic_stiffness": "2000 N m/rad", "damper.relative_damping": 0.05}


def test_yield_of_a_section_by_hand(solve):
    """A splined end outside the bearings sees torque alone: n = R_e / (√3 τ)."""
    design = solve({}, "tansy")
    known = design.measure("yield_safety", design.subjects.the("shaft", "input"))
    torque = design.peaks.floor("input").number
    shear = 16 * torque / (math.pi * 0.024**3)
    assert known.number == pytest.approx(850e6 / (math.sqrt(3) * shear), rel=1e-6)


def test_fatigue_of_the_spline_by_hand(solve):
    """DE-Goodman in torsion at the end of the spline; K_fs after DIN 743, surface ground."""
    design = solve({}, "tansy")
    known = design.measure("fatigue_safety", design.subjects.the("shaft", "input"))
    peak, mean = design.peaks.peak("input").number, design.peaks.mean("input").number
    factor = notch.spline_torsion_fatigue(1150e6)
    shear = 16 / (math.pi * 0.024**3)
    endurance = strength.endurance_limit(
        1150e6,
        strength.surface_factor(1150e6, "ground"),
        strength.size_factor(0.024),
        0.814,
    )
    root = math.sqrt(3) * factor * shear
    expected = 1 / (root * (peak - mean) / endurance + root * mean / 1150e6)
    # the moment of the tooth force is zero outside the bearings
    assert known.number == pytest.approx(expected, rel=1e-6)


@pytest.mark.parametrize("notch_there", ["keyway", "press fit", "spline", "taper"])
def test_what_is_fitted_counts_under_its_gear(solve, notch_there):
    """A section that is cut at its gear, and one that reaches past it, are equally safe there.

    The torque leaves the lay shaft at the gear, so that the end of the longer section sees none.
    """
    cut = {
        "shafts.lay.sections.2": _section(144, 180, 54, "shoulder"),
        "shafts.lay.sections.3": _section(180, 205, 30, notch_there),
        "shafts.lay.sections.4": _section(205, 254, 30, "none"),
    }
    whole = {**cut, "shafts.lay.sections.3": _section(180, 254, 30, notch_there)}
    whole["shafts.lay.sections.4"] = _section(254, 260, 30, "none")
    fatigue = [
        design.measure("fatigue_safety", design.subjects.the("shaft", "lay")).number
        for design in (solve(cut, "sorrel"), solve(whole, "sorrel"))
    ]
    assert fatigue[1] == pytest.approx(fatigue[0], rel=1e-12)


def _section(start, end, outside, kind):
    return {
        "from": f"{start} mm",
        "to": f"{end} mm",
        "outside": f"{outside} mm",
        "inside": "0 mm",
        "notch": kind,
        "notch_radius": "3 mm",
    }


def test_a_step_that_is_called_plain_is_not_shown(solve):
    changes = {"shafts.idler.sections.0.notch": "none"}
    shaft = solve(changes).subjects.the("shaft", "idler")
    unknown = solve(changes).measure("fatigue_safety", shaft)
    assert isinstance(unknown, Unknown)
    assert unknown.missing == (("shafts", "idler", "sections", 0, "notch"),)


def test_torque_ends_at_the_gear(solve):
    design = solve({})
    case = design.reactions.cases.points["cruise"]
    torque = case.torque("input")
    beyond = design.subjects.the("bearing", "input_front").given("station")
    ahead = design.subjects.the("bearing", "input_rear").given("station")
    assert design.reactions.torque_at("input", torque, beyond).number == 0.0
    assert design.reactions.torque_at("input", torque, ahead) is torque


def test_section_stiffness_of_a_stepped_shaft(solve):
    design = solve({})
    known = design.measure("section_torsional_stiffness", design.subjects.the("shaft", "idler"))
    sections = ((0.022, 0.030), (0.046, 0.042), (0.020, 0.030))
    twist = sum(32 * length / (math.pi * size**4 * 79.3e9) for length, size in sections)
    assert known.number == pytest.approx(1 / twist)


def test_torsional_model_takes_the_sections_where_no_stiffness_is_stated(solve):
    design = solve({"shafts.idler.torsional_stiffness": None})
    shaft = design.subjects.the("shaft", "idler")
    used = design.measure("shaft_stiffness_used", shaft)
    assert used.number == design.measure("section_torsional_stiffness", shaft).number
    assert used.inputs
    assert not isinstance(design.survey, Unknown)


def test_critical_speed_estimates_enclose_it(solve):
    design = solve({})
    shaft = design.subjects.the("shaft", "prop")
    low = design.measure("critical_speed_margin", shaft).number
    fastest = design.greatest("speed", shaft).number
    assert low * fastest <= design.measure("rayleigh_critical_speed", shaft).number


def test_case_bolts_by_hand(solve):
    """Limit torque of both ratings: peak less mean torque, weights under side load.

    The slackest bolts of a wrench's scatter hold, α_A = 1.6 about the mean.
    """
    design = solve({})
    housing = design.subjects.the("housing")
    weight = (27 + 9.8) * 9.80665
    by_rating = []
    for mean, factor in (
        (60e3 / (6000 * math.tau / 60), 0.75 * 3.8),
        (51e3 / (5700 * math.tau / 60), 3.8),  # the climb asks for more torque than the rating
    ):
        torque = mean * (4 * 67 / 27 - 1)  # two meshes: propeller and engine turn alike
        side = math.hypot(factor * weight, 1.33 * weight)
        by_rating.append(torque / (8 * 0.15) + side / 8)
    shear = max(by_rating)
    known = design.measure("mounting_slip_safety", housing)
    held = 0.15 * 24e3 * 2 / 2.6
    assert known.number == pytest.approx(held / shear, rel=0.05)
    assert known.number < held / shear


def case_torque_of(design):
    value = design.measure("mounting_slip_safety", design.subjects.the("housing"))
    return next(abs(node.number) for node in value.chain() if node.symbol == "T_case")


def test_a_rougher_crank_relieves_no_case_bolt(solve):
    """Its pulses ahead of the damper do not stand against the peak of the propeller's shaft."""
    calm, rough = solve({}), solve({"engine.reciprocating_mass": "0.9 kg"})
    assert rough.peaks.peak("flywheel").number > 1.1 * calm.peaks.peak("flywheel").number
    assert rough.peaks.peak("prop").number == calm.peaks.peak("prop").number
    assert case_torque_of(rough) == case_torque_of(calm)


def test_turning_alike_the_mean_stands_against_the_peak(solve):
    design = solve({}, "sorrel")  # the flywheel turns ahead of the damper, outside of the case
    by_rating = [
        design.peaks.peak("prop", rating=each).number - design.peaks.mean("input", each).number
        for each in RATINGS
    ]
    assert any(case_torque_of(design) == pytest.approx(each) for each in by_rating)


def test_turning_against_each_other_both_peaks_add(solve, monkeypatch):
    def against(motion, shaft):
        return Known(-1 if shaft == "prop" else 1, "1", "s", origin="turned round for this test")

    monkeypatch.setattr(Motion, "sense", against)
    design = solve({}, "sorrel")
    by_rating = [
        sum(design.peaks.peak(shaft, rating=each).number for shaft in ("prop", "input"))
        for each in RATINGS
    ]
    assert any(case_torque_of(design) == pytest.approx(each) for each in by_rating)


def test_without_bearings_it_is_open_which_shaft_enters_the_case(solve):
    design = solve({"bearings": {}, "lubrication.paths": None, "records": None, "states": None})
    value = design.measure("mounting_slip_safety", design.subjects.the("housing"))
    assert ("bearings",) in value.missing


def test_clutch_counts_its_torque_cycles(solve):
    design = solve({})
    clutch = design.subjects.the("clutch")
    take_off = next(point for point in design.points if point.name == "take-off")
    # a four-stroke twin at 6000 rpm fires 6000 times a minute
    assert design.measure("torque_cycles_per_hour", clutch, take_off).number == pytest.approx(360e3)
    assert not design.measure("indexes_at_firing", clutch).value


def test_hot_ring_is_looser_by_the_growth_of_its_seat(solve):
    design = solve({})
    known = design.measure(
        "least_outer_interference", design.subjects.the("bearing", "prop_thrust")
    )
    # 130 mm, aluminium 23e-6 against 12.5e-6, 75 K; nothing left of 0 to 16 um
    assert known.number == pytest.approx(0.0 - 0.130 * 10.5e-6 * 75, abs=1e-9)


@pytest.mark.parametrize(
    ("changes", "answer"),
    [
        ({}, True),
        ({"states.engine_stopped.supply": "pump"}, False),
        ({"states.engine_stopped.supply": "none"}, False),
        (
            {
                "states.engine_stopped.supply": "pump",
                "lubrication.pump_driven_by": "propeller side",
            },
            True,
        ),
    ],
)
def test_pump_on_the_engine_side_stands_while_the_propeller_turns(solve, changes, answer):
    design = solve(changes)
    states = design.subjects.the("states")
    assert design.measure("overrunning_supplied", states).value is answer


def test_direct_drive_windmills_its_engine(solve):
    design = solve({}, "tansy")
    states = design.subjects.the("states")
    assert design.measure("restart_possible", states).value
    assert design.measure("torques_agree", states).value
    assert not design.measure("pump_stands", states).value


def test_deflection_at_a_mesh_by_the_handbook(solve):
    """One gear between two bearings: v = F a² b² / (3 E I L) along the force; a stiff mate."""
    even = {f"shafts.input.sections.{index}.outside": "30 mm" for index in range(4)}
    stiff = {f"shafts.lay.sections.{index}.outside": "300 mm" for index in range(5)}
    design = solve({**even, **stiff, "gears.input_pinion.mass": "0.001 g"}, "tansy")
    mesh = design.subjects.the("mesh", "first")
    point = next(each for each in design.points if each.name == "take-off")
    case = design.reactions.cases.points["take-off"]
    pair = design.pairs["first"]
    acting = design.reactions.forces.of_mesh(pair, pair.driver, case)
    force = math.hypot(acting.right.number, acting.up.number)
    rear, front = sorted(each.station.number for each in design.reactions.supports("input"))
    gear = acting.station.number
    bent = force * (gear - rear) ** 2 * (front - gear) ** 2
    bent /= 3 * 206e9 * math.pi / 64 * 0.030**4 * (front - rear)
    assert design.measure("mesh_deflection", mesh, point).number == pytest.approx(bent, rel=1e-3)
    share = design.measure("mesh_deflection_share", mesh, point).number
    assert share == pytest.approx(bent / 1.75e-3, rel=1e-3)


def test_a_member_moves_with_the_shaft_it_turns_on(solve):
    """A stiff hub stands on the straight line between its seats on the bent lay shaft."""
    stiff = {f"shafts.lay_wheel_hub.sections.{index}.outside": "900 mm" for index in (0, 1)}
    design = solve(stiff, "sorrel")
    case, reactions = design.reactions.cases.points["take-off"], design.reactions
    seats = [each.station for each in reactions.supports("lay_wheel_hub")]
    under = [[each.number for each in reactions.deflections("lay", case, seat)] for seat in seats]
    station = design.subjects.the("gear", "lay_wheel").given("station")
    moved = [each.number for each in reactions.deflections("lay_wheel_hub", case, station)]
    tilted = [each.number for each in reactions.slopes("lay_wheel_hub", case, station)]
    span = seats[1].number - seats[0].number
    share = (station.number - seats[0].number) / span
    assert moved == pytest.approx(
        [a + share * (b - a) for a, b in zip(*under, strict=True)], rel=0.01
    )
    assert tilted == pytest.approx([(b - a) / span for a, b in zip(*under, strict=True)], rel=0.01)


def test_bending_agrees_with_the_estimate_of_the_gear_rating(solve):
    """ISO 6336-1 method C, from its own span and diameter, comes to about the same."""
    design = solve({}, "sorrel")
    mesh = design.subjects.the("mesh", "second")
    load = Known(1e5, "N/m", "w", origin="of this test")
    rated = flank_misalignment(design, mesh)(design.pairs["second"], load)
    estimated, bent = (each.number for each in rated.inputs)
    assert bent / estimated == pytest.approx(1.0, abs=0.3)
    assert rated.number == max(estimated, bent)


def test_bending_in_the_gear_rating_is_that_of_the_governing_point(solve):
    """At the line load of the point with the largest tooth force, the slope over the face."""
    design = solve({})
    mesh = design.subjects.the("mesh", "first")
    point = max(design.points, key=lambda each: design.loads.tangential(mesh, each).number)
    width = design.pairs["first"].common_face_width.number
    line = design.loads.tangential(mesh, point).number / width
    load = Known(line, "N/m", "w", origin="of this test")
    bent = flank_misalignment(design, mesh)(design.pairs["first"], load).inputs[1]
    assert bent.number == pytest.approx(design.measure("bending_misalignment", mesh, point).number)


def test_slimmer_mate_raises_the_face_load_factor(solve):
    """The estimate of method C does not know the shaft of the wheel; its bending does."""
    sizes = {f"shafts.prop.sections.{index}.outside": "24 mm" for index in (1, 2, 3)}
    stout, slim = (
        each.measure(
            "face_load_factor",
            each.subjects.the("mesh", "second"),
            next(point for point in each.points if point.name == "climb"),
        ).number
        for each in (solve({}), solve(sizes))
    )
    assert slim > stout


def parted(section, *stations):
    """A section cut at stations, without any stress raiser between its parts."""
    ends = [section["from"], *stations, section["to"]]
    return [{**section, "from": start, "to": end} for start, end in itertools.pairwise(ends)]


@pytest.mark.parametrize("name", ["yield_safety", "fatigue_safety", "gyroscopic_fatigue_safety"])
def test_a_shaft_in_one_section_is_judged_as_one_cut_at_its_gears(solve_once, name):
    """The largest moment stands at a gear, wherever the sections end."""
    section = {
        "from": "76 mm",
        "to": "232 mm",
        "outside": "30 mm",
        "inside": "0 mm",
        "notch": "none",
        "notch_radius": "0 mm",
    }
    stations = [
        f"{solve_once({}, 'tansy').subjects.the('gear', gear).raw('station').value * 1e3:.6f} mm"
        for gear in ("lay_wheel", "lay_pinion")
    ]
    whole, cut = (
        solve_once({"shafts.lay.sections": sections}, "tansy")
        for sections in ([section], parted(section, *sorted(stations, key=len)))
    )
    one, other = (
        design.measure(name, design.subjects.the("shaft", "lay")).number for design in (whole, cut)
    )
    assert one == pytest.approx(other, rel=1e-12)


def test_tooth_forces_bend_the_shaft_as_hard_as_the_torque_swings(solve_once):
    """Tooth force goes with torque: the bending by it at peak is T_peak/T of that at the mean."""
    design = solve_once(
        {"gears.lay_wheel.mass": "0.001 g", "gears.lay_pinion.mass": "0.001 g"}, "tansy"
    )
    case = design.reactions.cases.points["take-off"]
    peak, mean = design.peaks.peak("lay"), design.peaks.mean("lay")
    station = design.subjects.the("gear", "lay_pinion").given("station")
    swung = design.reactions.cases.at_peak(case, "lay", peak, mean)
    least, most = (design.reactions.moment("lay", each, station).number for each in (case, swung))
    assert most / least == pytest.approx(peak.number / mean.number, rel=1e-6)


def test_gyroscopic_fatigue_of_the_spline_by_hand(solve_once):
    """Torsion alone outside the bearings: mean and swing of maximum continuous."""
    design = solve_once(STIFF_COUPLING, "tansy")
    survey = design.survey
    index = int(abs(survey.speed[:400] - survey.reference).argmin())
    swing = max(survey.alternating[node, index] for node in survey.model.joints_of("input"))
    mean = design.reactions.cases.continuous_torque("input").number
    endurance = strength.endurance_limit(
        1150e6, strength.surface_factor(1150e6, "ground"), strength.size_factor(0.024), 0.814
    )
    root = math.sqrt(3) * notch.spline_torsion_fatigue(1150e6) * 16 / (math.pi * 0.024**3)
    known = design.measure("gyroscopic_fatigue_safety", design.subjects.the("shaft", "input"))
    by_hand = 1 / (root * swing / endurance + root * mean / 1150e6)
    assert swing > 0.3 * mean
    assert known.number == pytest.approx(by_hand, rel=0.01)  # nearest speed of the grid


def test_gyroscopic_fatigue_without_survey_is_at_best_that_of_steady_torque(solve_once):
    shown, open_ = (
        design.measure("gyroscopic_fatigue_safety", design.subjects.the("shaft", "prop"))
        for design in (
            solve_once({}, "tansy"),
            solve_once({"damper.relative_damping": None}, "tansy"),
        )
    )
    assert isinstance(open_, Unknown)
    assert ("damper", "relative_damping") in open_.missing
    assert open_.at_best.number > shown.number


LIMIT_MEASURES = [
    ("yield_safety", "shaft", "lay"),
    ("static_safety", "bearing", "lay_front"),
    ("mounting_slip_safety", "housing", None),
]


@pytest.mark.parametrize(("name", "kind", "part"), LIMIT_MEASURES)
def test_unknown_survey_leaves_the_limit_torque_at_best(solve_once, name, kind, part):
    """What the survey would add is unknown: the floor of the regulations is the least."""
    design = solve_once({"damper.relative_damping": None}, "tansy")
    value = design.measure(name, design.subjects.the(kind, *([part] if part else [])))
    assert isinstance(value, Unknown)
    assert value.at_best is not None
    assert ("damper", "relative_damping") in value.missing


@pytest.mark.parametrize(("name", "kind", "part"), LIMIT_MEASURES)
def test_a_computed_peak_above_the_floor_counts(solve_once, name, kind, part):
    """A stiff coupling with little damping puts a resonance among the speeds of use."""
    calm = solve_once({}, "tansy")
    wild = solve_once(STIFF_COUPLING, "tansy")
    assert wild.peaks.peak("lay").number > 1.2 * wild.peaks.floor("lay").number
    before, after = (
        design.measure(name, design.subjects.the(kind, *([part] if part else []))).number
        for design in (calm, wild)
    )
    assert after < before
